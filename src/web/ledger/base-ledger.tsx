/** The ledger of the base that is shown: what fails, what is not checked and which keys it lacks, what passes, what does not apply. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { counted } from "../../checks/words.js";
import { listed } from "../../diagnostics/listed.js";
import type { LiveBaseView, LiveLine } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import type { Pointed } from "../state/model.js";
import { KeyButtons } from "./key-buttons.js";
import { LedgerLine } from "./ledger-line.js";
import { isPointedAt, pointedBy } from "./row-words.js";

/** Beside the drawing. What is pointed at here is lit there, and the other way round. */
export function BaseLedger(): JSX.Element {
  const sheet = usePart((state) => state.sheet);
  const pointed = usePart((state) => state.pointed);
  const place = useRef<HTMLDivElement>(null);
  const own = useRef<Pointed | null>(null);
  const { point } = useActions();
  useEffect(() => {
    if (pointed !== null && pointed !== own.current) bringToSight(place.current);
  }, [pointed]);
  if (sheet === null) return <p class="soft">No ledger: this base is at fault, or not checked yet.</p>;
  const pointAt = (line: LiveLine | null): void => {
    own.current = line === null ? null : pointedBy(line);
    point(own.current);
  };
  return (
    <div class="base-ledger" ref={place}>
      <Sections sheet={sheet} pointed={pointed} point={pointAt} />
    </div>
  );
}

/** The first line that is lit and shown, where the ledger has a scroll bar of its own: the drawing stays in sight. */
function bringToSight(place: HTMLElement | null): void {
  const room = place?.closest(".beside");
  if (!(room instanceof HTMLElement) || room.scrollHeight <= room.clientHeight) return;
  const lit = [...room.querySelectorAll<HTMLElement>(".check.lit")].find((line) => line.offsetParent !== null);
  if (lit === undefined) return;
  const [line, frame] = [lit.getBoundingClientRect(), room.getBoundingClientRect()];
  if (line.top < frame.top) room.scrollTop -= frame.top - line.top;
  else if (line.bottom > frame.bottom) room.scrollTop += Math.min(line.bottom - frame.bottom, line.top - frame.top);
}

interface SectionProps {
  readonly sheet: LiveBaseView;
  readonly pointed: Pointed | null;
  readonly point: (line: LiveLine | null) => void;
}

function Sections({ sheet, pointed, point }: SectionProps): JSX.Element {
  const of = (status: string): readonly LiveLine[] => sheet.lines.filter(({ check }) => check.status === status);
  const list = (lines: readonly LiveLine[]): JSX.Element => (
    <ul class="checks">
      {lines.map((line) => (
        <LedgerLine
          key={`${line.check.rule} ${line.check.clause} ${line.where}`}
          {...{ line, base: sheet.path, point, isLit: isPointedAt(line, pointed) }}
        />
      ))}
    </ul>
  );
  const [fails, unchecked, passed, apart] = [of("fail"), of("not-checked"), of("pass"), of("not-applicable")];
  const folded = (name: string, lines: readonly LiveLine[], more = ""): JSX.Element | null =>
    lines.length === 0 ? null : (
      <details>
        <summary>
          {name}: {rowsOf(lines)}
          <span class="soft">{aboutPointed(lines, pointed) || more}</span>
        </summary>
        {list(lines)}
      </details>
    );
  return (
    <>
      <p class="counts" role="status">
        {`${rowsOf(fails)} fail, ${rowsOf(unchecked)} not checked, ${rowsOf(passed)} pass`}
      </p>
      {fails.length > 0 && list(fails)}
      <Lacking sheet={sheet} />
      {folded("Not checked", unchecked)}
      {folded("Passed", passed, closest(passed))}
      {folded("Does not apply", apart)}
    </>
  );
}

function rowsOf(lines: readonly LiveLine[]): number {
  return lines.reduce((sum, { subjects }) => sum + subjects.length, 0);
}

/** Lines are worst first. */
function closest([first]: readonly LiveLine[]): string {
  return first === undefined || first.check.share === null ? "" : `, the closest ${first.check.spare}`;
}

function aboutPointed(lines: readonly LiveLine[], pointed: Pointed | null): string {
  const lit = lines.filter((line) => isPointedAt(line, pointed)).length;
  return lit === 0 ? "" : `, ${counted(lit, "line")} pointed at`;
}

const MOST_RULES = 4;

/** Keys that would have most of the rows checked, the best first. */
function Lacking({ sheet: { unchecked, path } }: { readonly sheet: LiveBaseView }): JSX.Element | null {
  const { steps } = unchecked;
  if (steps.length === 0) return null;
  return (
    <section class="lacking" aria-label="What is not checked for want of input">
      <h3>Not checked for want of input: give</h3>
      <ul>
        {steps.map(({ keys, rows, rules }) => (
          <li key={keys.join(" ")}>
            <KeyButtons keys={keys} base={path} />
            <span class="soft">
              {counted(rows, "row")}: {listed(rules, MOST_RULES)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
