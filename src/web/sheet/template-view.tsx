/** The template of a base: its sheet in the middle, to be typed on; its ledger and what is not on the sheet beside it. */
import type { JSX } from "preact";
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

const NO_BASES: readonly never[] = [];

function Bases(): JSX.Element {
  const bases = usePart((state) => state.live?.bases ?? NO_BASES);
  const chosen = usePart((state) => state.base);
  const { choose } = useActions();
  return (
    <ul class="bases" aria-label="Bases">
      {bases.map(({ path, mark, state }) => (
        <li key={path}>
          <button type="button" aria-current={path === chosen ? "true" : undefined} onClick={() => choose(path)}>
            <bdi>{mark}</bdi> {state !== "clear" && <span class={`state ${state}`}>{state}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}
