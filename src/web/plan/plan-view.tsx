/** The plan: the layout of the job as it is drawn and set out, edited where it stands. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Finding } from "../../diagnostics/finding.js";
import type { LivePlan } from "../../tasks/live/plan-model.js";
import { useActions, usePart } from "../app/page.js";
import { firstGrid } from "./grid-edits.js";
import { LayoutDrawing } from "./layout-drawing.js";
import { type FaultsAt, Lines, Placements, Points, Site, Unplaced } from "./plan-tables.js";
import { useHasGrid, usePlan } from "./use-plan.js";

const NO_FINDINGS: readonly Finding[] = [];

/** Where a job has no grid, a first one in place. */
export function PlanView(): JSX.Element {
  const hasGrid = useHasGrid();
  if (hasGrid === null) return <section class="plan" aria-label="Plan" aria-busy="true" />;
  return hasGrid ? <Drawn /> : <NoGrid />;
}

/** The drawing first, what stands in lists beside it. */
function Drawn(): JSX.Element {
  const drawn = usePlan();
  const shown = drawn.plan ?? EMPTY;
  const findings = usePart((state) => state.live?.findings ?? NO_FINDINGS);
  const faultsAt: FaultsAt = (key) =>
    findings.flatMap(({ at: { path = "" }, message }) =>
      path === key || path.startsWith(`${key}[`) || path.startsWith(`${key}.`) ? [message] : [],
    );
  return (
    <section class="plan" aria-label="Plan">
      <h2 class="for-readers">Plan</h2>
      <div class="plan-tools row">{drawn.plan === null ? "\u00a0" : <Said plan={shown} />}</div>
      <LayoutDrawing {...drawn} isFaulty={(key) => faultsAt(key).length > 0} />
      <div class="beside">{drawn.plan !== null && <Beside plan={shown} faultsAt={faultsAt} />}</div>
    </section>
  );
}

function Beside({ plan, faultsAt }: { readonly plan: LivePlan; readonly faultsAt: FaultsAt }): JSX.Element {
  const { written } = plan;
  return (
    <>
      <Held
        plan={plan}
        faults={faultsAt("grid").concat(faultsAt("placements"), faultsAt("site"), faultsAt("control"))}
      />
      <h3>Grid</h3>
      <Lines written={written} faultsAt={faultsAt} />
      <h3>Places</h3>
      <Unplaced plan={plan} />
      <Placements written={written} faultsAt={faultsAt} />
      <h3>North and site</h3>
      <Site written={written} faultsAt={faultsAt} />
      <Points />
    </>
  );
}

const EMPTY: LivePlan = { drawing: null, placements: [], unplaced: [], held: [], written: {} };

/** What the drawing has no room for, in words. */
function Said({ plan: { drawing, placements } }: { readonly plan: LivePlan }): JSX.Element {
  const { marks = 0, distances = 0 } = drawing?.unlabelled ?? {};
  const said = [
    `${placements.length} ${placements.length === 1 ? "base" : "bases"} placed`,
    marks > 0 ? `${marks} without a mark for want of room: zoom in` : "",
    distances > 0 ? `${distances} with * without their distances for want of room` : "",
    ...(drawing === null || drawing.unplaced.length === 0
      ? []
      : [`not on the drawing: ${drawing.unplaced.join(", ")}`]),
  ];
  return (
    <span class="hint" role="status" title={said.filter((words) => words !== "").join("; ")}>
      {said.filter((words) => words !== "").join("; ")}
    </span>
  );
}

function Held({
  plan: { held },
  faults,
}: {
  readonly plan: LivePlan;
  readonly faults: readonly string[];
}): JSX.Element | null {
  if (held.length === 0 && faults.length === 0) return null;
  return (
    <div class="plan-held" role="status">
      {held.length > 0 && <span class="state held">layout held</span>}
      {held.map((why) => (
        <p key={why} class="fault">
          {why}
        </p>
      ))}
      {faults.length > 0 && <p class="fault">The drawing is as the layout was last right: {faults[0]}</p>}
    </div>
  );
}

/** What a plan needs, and a first grid in place. */
function NoGrid(): JSX.Element {
  const { edit } = useActions();
  const unit = usePart((state) => state.live?.unit ?? "in");
  const [x, setX] = useState("");
  const [y, setY] = useState("");
  const example = unit === "in" ? "3 @ 24'-0\"" : "3 @ 7500";
  const start = (event: Event): void => {
    event.preventDefault();
    if (x.trim() !== "" && y.trim() !== "") void edit("a grid started", firstGrid(x, y));
  };
  return (
    <section class="reading no-grid" aria-label="Plan">
      <h2>Plan</h2>
      <p>
        This job has no building grid yet. A plan needs the grid's lines with their spacings, and where each base stands
        on them.
      </p>
      <form class="row" onSubmit={start}>
        <label>
          Spacings of the lines that run north, from west to east
          <input value={x} placeholder={example} onInput={({ currentTarget: { value } }) => setX(value)} />
        </label>
        <label>
          Spacings of the lines that run east, from south to north
          <input value={y} placeholder={example} onInput={({ currentTarget: { value } }) => setY(value)} />
        </label>
        <button type="submit" class="main" disabled={x.trim() === "" || y.trim() === ""}>
          Start the grid
        </button>
      </form>
      <p class="hint">
        Several equal spacings: {example}. Others with commas between them. The lines are named 1, 2, 3 and A, B, C;
        names and spacings can be changed on the drawing.
      </p>
    </section>
  );
}
