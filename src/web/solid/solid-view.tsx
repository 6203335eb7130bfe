/** The template with its rods and nuts, turned about by who looks; and what it measures, in words. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { LiveSolid } from "../../tasks/live/solid.js";
import { NotLoaded } from "../app/later.js";
import { useActions, usePart } from "../app/page.js";
import { isNotLoaded } from "../engine/not-loaded.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import { Turntable } from "./turntable.js";

/** The base that is chosen, as a body. */
export function SolidView(): JSX.Element {
  const base = usePart((state) => state.base);
  const [tries, setTries] = useState(0);
  const [isMissing, setMissing] = useState(false);
  const miss = (error: unknown): void => {
    if (!isNotLoaded(error)) throw error;
    setMissing(true);
  };
  const solid = useSolid(base, tries, miss);
  const [isFlat, setFlat] = useState(false);
  return (
    <section class="solid" aria-labelledby="solid-heading">
      <div class="solid-head">
        <h2 id="solid-heading">
          {solid === null ? "Template in the round" : `Template ${solid.template} in the round`}
        </h2>
        <BaseChoice />
      </div>
      {isMissing ? (
        <NotLoaded
          again={() => {
            setMissing(false);
            setTries(tries + 1);
          }}
        />
      ) : (
        <>
          {isFlat ? (
            <PlanInstead />
          ) : (
            <Turntable solid={solid} base={base ?? ""} onNone={() => setFlat(true)} onFault={miss} />
          )}
          <SolidWords solid={solid} />
        </>
      )}
    </section>
  );
}

/** Asked for anew whenever the job changes; while the base is at fault, as it was last right. */
function useSolid(base: string | null, tries: number, fail: (error: unknown) => void): LiveSolid | null {
  const turn = usePart((state) => state.live?.turn ?? 0);
  const { solid: askSolid } = useActions();
  const [known, setKnown] = useState<{ readonly base: string; readonly solid: LiveSolid } | null>(null);
  useEffect(() => {
    let isStale = false;
    if (base !== null && turn >= 0)
      askSolid(base).then((solid) => {
        if (!isStale && solid !== null) setKnown({ base, solid });
      }, fail);
    return () => {
      isStale = true;
    };
  }, [base, turn, tries]);
  return known?.base === base ? known.solid : null;
}

function BaseChoice(): JSX.Element {
  const bases = usePart((state) => state.live?.bases ?? null);
  const base = usePart((state) => state.base);
  const { choose } = useActions();
  return (
    <label class="solid-base">
      Base{" "}
      <select value={base ?? ""} onChange={(event) => choose(event.currentTarget.value, "solid")}>
        {(bases ?? []).map(({ path, mark, state }) => (
          <option key={path} value={path}>
            {state === "clear" ? mark : `${mark}, ${state}`}
          </option>
        ))}
      </select>
    </label>
  );
}

function PlanInstead(): JSX.Element {
  const sheet = usePart((state) => state.sheet);
  return (
    <div class="solid-stage drawing">
      <p class="solid-none" role="status">
        This browser shows no solids: it has WebGL 2 switched off, or no graphics for it. Here is the plan instead; what
        the body measures stands below.
      </p>
      {sheet !== null && (
        <svg role="img" aria-label={sheet.title} viewBox={`0 0 ${sheet.plan.width} ${sheet.plan.height}`}>
          <SceneItems items={sheet.plan.items} height={sheet.plan.height} />
        </svg>
      )}
    </div>
  );
}

/** Before there is a solid: it comes, or it cannot. */
function Waiting(): JSX.Element {
  const isFaulty = usePart(({ live, base }) => live?.bases.find(({ path }) => path === base)?.state === "faulty");
  return (
    <p class={isFaulty ? "fault" : "soft"}>
      {isFaulty ? "This base is at fault; its solid is shown when that is mended." : "The solid is being made."}
    </p>
  );
}

function SolidWords({ solid }: { readonly solid: LiveSolid | null }): JSX.Element {
  return (
    <div class="solid-words" id="solid-words">
      {solid === null ? (
        <Waiting />
      ) : (
        <>
          <p>{solid.words.join(" ")}</p>
          {solid.lacking.map((words) => (
            <p key={words} class="asked-for">
              {words}
            </p>
          ))}
          <p class="soft">
            Rods are plain bars of nominal diameter, for reference; the sheet and the cut file say what is made.
          </p>
        </>
      )}
    </div>
  );
}
