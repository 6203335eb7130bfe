/** The template of a base: its sheet in the middle, to be typed on; its ledger and what is not on the sheet beside it. */
import type { JSX, TargetedKeyboardEvent } from "preact";
import { useMemo } from "preact/hooks";
import type { LiveBase } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import { BaseLedger } from "../ledger/base-ledger.js";
import { Drawing } from "./drawing.js";
import { HoleList } from "./hole-list.js";
import { Standing } from "./notes.js";
import { Panel } from "./panel.js";
import { PrintSheet } from "./print-sheet.js";

/** Sheet, ledger and fields of the base that is chosen. */
export function TemplateView(): JSX.Element {
  return (
    <div class="template">
      <Heading />
      <Bases />
      <div class="paper">
        <Standing />
        <Drawing />
      </div>
      <div class="beside">
        <details open>
          <summary>Ledger</summary>
          <BaseLedger />
        </details>
        <HoleList />
        <Panel />
        <PrintSheet />
      </div>
    </div>
  );
}

/** The drawing says it to who sees it. */
function Heading(): JSX.Element {
  const mark = usePart(({ sheet }) => sheet?.mark ?? "");
  const template = usePart(({ sheet }) => sheet?.template ?? "");
  return <h2 class="for-readers">{template === "" ? "Template" : `Template ${template} of base ${mark}`}</h2>;
}

const NO_BASES: readonly never[] = [];

function Bases(): JSX.Element {
  const bases = usePart((state) => state.live?.bases ?? NO_BASES);
  const chosen = usePart((state) => state.base);
  const { choose } = useActions();
  return (
    <ul class="bases" aria-label="Bases" onKeyDown={stepAmongBases}>
      {bases.map((base) => (
        <OneBase key={base.path} base={base} isChosen={base.path === chosen} choose={choose} />
      ))}
    </ul>
  );
}

interface OneBaseProps {
  readonly base: LiveBase;
  readonly isChosen: boolean;
  readonly choose: (path: string) => void;
}

/** Drawn again only when it is another: there may be hundreds. */
function OneBase({ base: { path, mark, state }, isChosen, choose }: OneBaseProps): JSX.Element {
  return useMemo(
    () => (
      <li>
        <button
          type="button"
          aria-current={isChosen ? "true" : undefined}
          tabIndex={isChosen ? 0 : -1}
          onClick={() => choose(path)}
        >
          <bdi>{mark}</bdi> {state !== "clear" && <span class={`state ${state}`}>{state}</span>}
        </button>
      </li>
    ),
    [path, mark, state, isChosen, choose],
  );
}

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 };

/** One stop of the tab key for all bases, arrow keys among them: a job may have hundreds. */
function stepAmongBases(event: TargetedKeyboardEvent<HTMLUListElement>): void {
  const buttons = [...event.currentTarget.querySelectorAll("button")];
  const at = event.target instanceof HTMLButtonElement ? buttons.indexOf(event.target) : -1;
  const ends: Readonly<Record<string, number>> = { Home: 0, End: buttons.length - 1 };
  const to = at < 0 ? Number.NaN : (ends[event.key] ?? at + (STEPS[event.key] ?? Number.NaN));
  if (buttons[to] === undefined) return;
  event.preventDefault();
  buttons[to].focus();
}
