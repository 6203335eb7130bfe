/** The plan: the layout of the job as it is drawn and set out, edited where it stands. */
import type { JSX } from "preact";
import { useCallback, useEffect, useState } from "preact/hooks";
import type { Finding } from "../../diagnostics/finding.js";
import type { LivePlan, Zoom } from "../../tasks/live/plan-model.js";
import { useActions, usePart } from "../app/page.js";
import { firstGrid } from "./grid-edits.js";
import { LayoutDrawing } from "./layout-drawing.js";
import { type FaultsAt, Lines, Placements, Points, Site, Unplaced } from "./plan-tables.js";

const MM_PER_DOT = 25.4 / 96;
const ZOOMS: readonly number[] = [1, 1.5, 2, 3, 4, 6, 8, 12];

const NO_FINDINGS: readonly Finding[] = [];

/** The drawing first, what stands in lists beside it. */
export function PlanView(): JSX.Element {
  const [room, setRoom] = useState<{ readonly width: number; readonly height: number } | null>(null);
  const [zoom, setZoom] = useState<Zoom>("readable");
  const plan = usePlan(room, zoom);
  const findings = usePart((state) => state.live?.findings ?? NO_FINDINGS);
  const resize = useCallback((width: number, height: number) => {
    if (width > 0 && height > 0)
      setRoom((before) => (before?.width === width && before.height === height ? before : { width, height }));
  }, []);
  const faultsAt: FaultsAt = (key) =>
    findings.flatMap(({ at: { path = "" }, message }) =>
      path === key || path.startsWith(`${key}[`) || path.startsWith(`${key}.`) ? [message] : [],
    );
  const hasGrid = plan !== null && Object.keys(plan.written).some((key) => key.startsWith("grid."));
  if (plan !== null && !hasGrid) return <NoGrid />;
  const shown = plan ?? EMPTY;
  return (
    <section class="plan" aria-label="Plan">
      <h2 class="for-readers">Plan</h2>
      <div class="plan-tools row">
        <Zooms times={shown.drawing?.times ?? 1} setZoom={setZoom} />
        <Said plan={shown} />
      </div>
      <LayoutDrawing plan={shown} isFaulty={(key) => faultsAt(key).length > 0} resize={resize} />
      <div class="beside">
        <Held
          plan={shown}
          faults={faultsAt("grid").concat(faultsAt("placements"), faultsAt("site"), faultsAt("control"))}
        />
        <h3>Grid</h3>
        <Lines written={shown.written} faultsAt={faultsAt} />
        <h3>Places</h3>
        <Unplaced plan={shown} />
        <Placements written={shown.written} faultsAt={faultsAt} />
        <h3>North and site</h3>
        <Site written={shown.written} faultsAt={faultsAt} />
        <Points />
      </div>
    </section>
  );
}

const EMPTY: LivePlan = { drawing: null, placements: [], unplaced: [], held: [], written: {} };

/** The layout as it stands now, drawn in so many times the room; the one before while it is drawn. */
function usePlan(room: { readonly width: number; readonly height: number } | null, zoom: Zoom): LivePlan | null {
  const turn = usePart((state) => state.live?.turn);
  const isSettled = usePart((state) => state.live?.isSettled);
  const actions = useActions();
  const [plan, setPlan] = useState<LivePlan | null>(null);
  useEffect(() => {
    let isCurrent = true;
    const { width, height } = room ?? { width: 600, height: 400 };
    void actions.plan({ width: width * MM_PER_DOT, height: height * MM_PER_DOT }, zoom).then((found) => {
      if (isCurrent) setPlan(found);
    });
    return () => {
      isCurrent = false;
    };
  }, [turn, isSettled, room, zoom, actions]);
  return plan;
}

function Zooms({ times, setZoom }: { readonly times: number; setZoom(zoom: Zoom): void }): JSX.Element {
  const closer = ZOOMS.find((each) => each > times * 1.05);
  const farther = ZOOMS.findLast((each) => each < times * 0.95);
  return (
    <>
      <button type="button" disabled={closer === undefined} onClick={() => setZoom(closer ?? 1)}>
        Closer
      </button>
      <button type="button" disabled={farther === undefined} onClick={() => setZoom(farther ?? 1)}>
        Farther
      </button>
      <button type="button" disabled={times <= 1} onClick={() => setZoom(1)}>
        Whole plan
      </button>
    </>
  );
}

/** What the drawing has no room for, in words. */
function Said({ plan: { drawing, placements } }: { readonly plan: LivePlan }): JSX.Element {
  const { marks = 0, distances = 0 } = drawing?.unlabelled ?? {};
  const said = [
    `${placements.length} ${placements.length === 1 ? "base" : "bases"} placed`,
    marks > 0 ? `${marks} without a mark for want of room: go closer` : "",
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
