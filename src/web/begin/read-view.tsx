/** A schedule as it was sent: what is asked of it and answered at one side, every cell and what it was taken as at the other. */
import type { JSX } from "preact";
import { useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import type { Finding } from "../../diagnostics/finding.js";
import { gatherFindings } from "../../diagnostics/gather.js";
import { readable } from "../../diagnostics/printable.js";
import { unitWord } from "../../formats/read-as-form.js";
import { isAtNothing } from "../app/focus-kept.js";
import { useActions } from "../app/page.js";
import type { ReadAnswer } from "../engine/task-model.js";
import type { SheetBeingRead } from "../state/beginning.js";
import { sheetOf } from "./hand-over.js";
import { Questions } from "./read-questions.js";
import { readRows, sheetPrefix } from "./read-rows.js";
import type { Sought } from "./read-table.js";
import { ReadTable } from "./read-table.js";
import { saidHere } from "./said-here.js";
import { SheetField } from "./sheet-field.js";
import { TakeBases } from "./take-bases.js";
import { beginningOf } from "./written.js";

/** The sheet that is read. */
export function ReadView(read: SheetBeingRead): JSX.Element {
  const { sheet, given, going, found, refused, into } = read;
  const rows = useMemo(() => (found === null ? [] : readRows(found)), [found]);
  const writtenIn = useMemo(() => new Map(rows.map(({ cell, written }) => [cell, written])), [rows]);
  const [sought, seek] = useState<Sought>({ filter: "all", words: "" });
  const place = useRef<HTMLElement>(null);
  useNextInFocus(place, found);
  const show = (cell: string): void => {
    seek({ filter: "all", words: cell });
    const rowsShown = place.current?.querySelector<HTMLElement>(".rows");
    rowsShown?.scrollIntoView({ block: "nearest" });
    rowsShown?.focus();
  };
  const hasCells = found !== null && found.form.entries.length > 0;
  return (
    <section
      class={hasCells ? "read-as" : "read-as is-alone"}
      aria-labelledby="read-title"
      aria-busy={going !== null}
      ref={place}
    >
      <div class="asking">
        <h2 id="read-title" tabIndex={-1}>
          <bdi>{readable(sheet.name)}</bdi>, {into === null ? "as it is read" : `read again into ${readable(into.job)}`}
        </h2>
        <p class="soft standing" role="status">
          {going === null ? standingWords(read) : `Reading: ${going.what}`}
        </p>
        <Ways read={read} />
        <Refusals refused={refused} hasAnswers={given.length > 0} />
        {found !== null && (
          <>
            <Questions
              questions={found.questions}
              unit={found.unit}
              prefix={sheetPrefix(found.form)}
              writtenIn={writtenIn}
              given={given}
              show={show}
            />
            <Told found={found} show={show} />
          </>
        )}
        <Answered given={given} />
        {found !== null && (
          <TakeBases found={found} sheetName={sheet.name} isInto={into !== null} isBusy={going !== null} />
        )}
      </div>
      {hasCells && <ReadTable rows={rows} headings={found.headings} sought={sought} seek={seek} />}
    </section>
  );
}

/** What can be done with the sheet as a whole. */
function Ways({ read: { going, found, refused, sheet } }: { readonly read: SheetBeingRead }): JSX.Element {
  const actions = useActions();
  const { begin, stopReading, readAgain } = actions;
  const takeNewer = async ([file]: readonly File[]): Promise<void> => {
    const newer = file === undefined ? null : await sheetOf(file, actions);
    // under its own name where nothing of the one before was understood
    if (newer !== null) await readAgain({ ...newer, name: found === null ? newer.name : sheet.name });
  };
  if (going !== null)
    return (
      <p class="row">
        <progress max={going.of} value={going.done} aria-label="Reading" />
        <button type="button" onClick={stopReading}>
          Cancel
        </button>
      </p>
    );
  return (
    <p class="row">
      {found === null && refused.length === 0 && (
        <button type="button" onClick={() => void readAgain()}>
          Read it
        </button>
      )}
      <SheetField take={(files) => void takeNewer(files)}>
        {found === null ? "Choose another file" : "Read a newer file"}
      </SheetField>
      {found === null && (
        <button type="button" onClick={() => begin({ kind: "paste", text: "" })}>
          Paste its cells
        </button>
      )}
      <button type="button" onClick={() => begin({ kind: "choice" })}>
        Put this sheet away
      </button>
    </p>
  );
}

function standingWords({ found, into }: SheetBeingRead): string {
  if (found === null) return "Not read.";
  const { baseCount, questions, unit, form } = found;
  const sheet = form.sheet === "" ? "" : `Sheet ${form.sheet}. `;
  const open = questions.length === 0 ? "nothing is open" : `${counted(questions.length, "question")} open`;
  if (unit === null) return readable(`${sheet}Nothing is taken before the unit is said; ${open}.`);
  const bases = baseCount === 0 ? "No base yet" : counted(baseCount, "base");
  return readable(`${sheet}${bases}, bare numbers in ${unitWord(unit)} (${because(found, into === null)}); ${open}.`);
}

/** Where there is no job yet, what it will say was answered here. */
function because({ unitBecause }: ReadAnswer, isNew: boolean): string {
  return isNew && unitBecause === "as the job says" ? "as answered" : unitBecause;
}

/** Where what was answered is asked no longer, the next question has the keyboard; after the last, the button that takes the bases. */
function useNextInFocus(place: { readonly current: HTMLElement | null }, found: ReadAnswer | null): void {
  // before anything is painted, so that a key that follows at once meets the focus where it belongs
  useLayoutEffect(() => {
    if (found === null || !isAtNothing()) return;
    for (const next of [".question legend", ".take button:enabled", "h2"]) {
      const element = place.current?.querySelector<HTMLElement>(next) ?? null;
      if (element === null) continue;
      element.focus();
      return;
    }
  }, [found, place]);
}

function Refusals({ refused, hasAnswers }: { readonly refused: readonly string[]; readonly hasAnswers: boolean }) {
  if (refused.length === 0) return null;
  return (
    <div class="refusals" role="alert">
      <h3>{hasAnswers ? "It cannot be read with these answers" : "It cannot be read"}</h3>
      {refused.slice(0, 12).map((why) => (
        <p key={why} class="fault">
          {saidHere(why)}
        </p>
      ))}
      {hasAnswers && <p>Take the last answer back, below.</p>}
    </div>
  );
}

const MOST_CAUSES = 40;
const MOST_CELLS = 8;

/** Faults and doubts that no question asks about, each cause once. */
function Told({ found, show }: { readonly found: ReadAnswer; show(cell: string): void }): JSX.Element | null {
  const { findings, questions, form } = found;
  const prefix = sheetPrefix(form);
  const isAsked = ({ severity, message }: Finding): boolean =>
    severity === "error" && questions.some(({ text }) => text.endsWith(message));
  const causes = gatherFindings(findings).filter(({ first }) => !isAsked(first));
  if (causes.length === 0) return null;
  return (
    <details class="told" open>
      <summary>At fault or doubtful in the sheet ({causes.length})</summary>
      <ul>
        {causes.slice(0, MOST_CAUSES).map(({ first, all, subject }) => (
          <li key={`${first.code} ${first.message} ${first.at.cell ?? ""}`}>
            <span class={first.severity === "error" ? "state held" : "state asked"}>
              {first.severity === "error" ? "at fault" : "doubtful"}
            </span>{" "}
            {subject === "" ? "" : `${readable(subject)}: `}
            {saidHere(`${first.message}${first.hint === undefined ? "" : ` (${first.hint})`}`)}{" "}
            <CellButtons cells={all.flatMap(({ at }) => at.cell ?? [])} prefix={prefix} show={show} />
          </li>
        ))}
      </ul>
      {causes.length > MOST_CAUSES && <p class="soft">and {causes.length - MOST_CAUSES} more</p>}
    </details>
  );
}

/** Places in the sheet that lead to their rows. */
function CellButtons({
  cells,
  prefix,
  show,
}: {
  readonly cells: readonly string[];
  readonly prefix: string;
  show(cell: string): void;
}): JSX.Element {
  const bare = cells.map((cell) => (cell.startsWith(prefix) ? cell.slice(prefix.length) : cell));
  return (
    <span class="told-cells">
      {bare.slice(0, MOST_CELLS).map((cell) => (
        <button key={cell} type="button" class="quiet" onClick={() => show(cell)}>
          {cell}
        </button>
      ))}
      {bare.length > MOST_CELLS && <span class="soft">and {bare.length - MOST_CELLS} more</span>}
    </span>
  );
}

function Answered({ given }: Pick<SheetBeingRead, "given">): JSX.Element | null {
  const { takeBack } = useActions();
  if (given.length === 0) return null;
  return (
    <details class="answered" open>
      <summary>Answered ({given.length})</summary>
      <ol>
        {given.map(({ asked, said }, index) => (
          <li key={`${index} ${asked}`}>
            <span class="soft">{readable(asked)}</span> <bdi>{beginningOf(readable(said), 120)}</bdi>{" "}
            <button type="button" class="quiet" onClick={() => void takeBack(index)}>
              Take back<span class="for-readers"> answer {index + 1}</span>
            </button>
          </li>
        ))}
      </ol>
    </details>
  );
}
