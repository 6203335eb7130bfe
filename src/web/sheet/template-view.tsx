/** The template of a base: its drawing in the middle, its ledger beside it. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { useActions, usePart } from "../app/page.js";
import { BaseLedger } from "../ledger/base-ledger.js";
import { SceneItems } from "./scene-drawing.js";

/** Paper millimetres of a screen: 96 dots to the inch, as style sheets have them. */
const MM_PER_DOT = 25.4 / 96;

/** Drawing and ledger of the base that is chosen. */
export function TemplateView(): JSX.Element {
  return (
    <div class="template">
      <Bases />
      <Drawing />
      <div class="beside">
        <details open>
          <summary>Ledger</summary>
          <BaseLedger />
        </details>
      </div>
    </div>
  );
}

function Bases(): JSX.Element {
  const bases = usePart((state) => state.live?.bases ?? []);
  const chosen = usePart((state) => state.base);
  const { choose } = useActions();
  return (
    <ul class="bases" aria-label="Bases">
      {bases.map(({ path, mark, state }) => (
        <li key={path}>
          <button type="button" aria-current={path === chosen ? "true" : undefined} onClick={() => choose(path)}>
            {mark} {state !== "clear" && <span class={`state ${state}`}>{state}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}

function Drawing(): JSX.Element {
  const sheet = usePart((state) => state.sheet);
  const place = useRef<HTMLDivElement>(null);
  const { resize } = useActions();
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => {
      const { clientWidth, clientHeight } = element;
      if (clientWidth > 0) void resize({ width: clientWidth * MM_PER_DOT, height: clientHeight * MM_PER_DOT });
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, [resize]);
  return (
    <div class="drawing" ref={place}>
      {sheet !== null && (
        <svg role="img" aria-label={sheet.title} viewBox={`0 0 ${sheet.plan.width} ${sheet.plan.height}`}>
          <title>{sheet.title}</title>
          <desc>{sheet.description}</desc>
          <SceneItems items={sheet.plan.items} height={sheet.plan.height} />
        </svg>
      )}
    </div>
  );
}
