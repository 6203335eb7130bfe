/** The layout as it stands now, and how it lies in its window: moved and zoomed as any drawing, and drawn anew where it is looked at closer. */
import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { LivePlan, Room, ScreenLayout, Zoom as Wanted } from "../../tasks/live/plan-model.js";
import { useActions, usePart } from "../app/page.js";
import { useRoom } from "../sheet/use-room.js";
import { useZoom, type Zooming } from "../sheet/use-zoom.js";
import { firstLying, redrawn } from "./plan-zoom.js";

/** The plan, and what its window listens with. */
export interface PlanShown {
  /** null: not drawn yet. */
  readonly plan: LivePlan | null;
  readonly place: RefObject<HTMLElement | null>;
  readonly zooming: Zooming;
}

/** At first as large as its letters can be read beside most bases. */
export function usePlan(): PlanShown {
  const place = useRef<HTMLElement>(null);
  const zooming = useZoom(place);
  const room = useRoom(place);
  const [wanted, want] = useState<Wanted>("readable");
  const plan = useDrawing(room, wanted);
  const drawing = plan?.drawing ?? null;
  const before = useRef<ScreenLayout | null>(null);
  useEffect(() => {
    const last = before.current;
    before.current = drawing;
    if (drawing === null) return;
    if (last === null) zooming.set(firstLying(drawing, zooming.size()));
    else
      zooming.set((now) =>
        redrawn(now, last, drawing, wanted === "readable" ? drawing.times : now.times, zooming.size()),
      );
  }, [drawing]);
  useRedrawing(zooming.zoom.times, drawing, want);
  return { plan, place, zooming };
}

/** Whether lines of a grid are written; null: not known yet. */
export function useHasGrid(): boolean | null {
  const turn = usePart((state) => state.live?.turn);
  const actions = useActions();
  const [hasGrid, tell] = useState<boolean | null>(null);
  useEffect(() => {
    let isCurrent = true;
    void actions.written(["grid"]).then((written) => {
      if (isCurrent) tell(Object.keys(written).length > 0);
    });
    return () => {
      isCurrent = false;
    };
  }, [turn, actions]);
  return hasGrid;
}

/** The drawing of before stands until the next is there. */
function useDrawing(room: Room | null, wanted: Wanted): LivePlan | null {
  const turn = usePart((state) => state.live?.turn);
  const isSettled = usePart((state) => state.live?.isSettled);
  const actions = useActions();
  const [plan, setPlan] = useState<LivePlan | null>(null);
  useEffect(() => {
    let isCurrent = true;
    if (room === null) return;
    void actions.plan(room, wanted).then((found) => {
      if (isCurrent) setPlan(found);
    });
    return () => {
      isCurrent = false;
    };
  }, [turn, isSettled, room, wanted, actions]);
  return plan;
}

/** Milliseconds for which the zoom rests before the plan is drawn for it; the most times that it is drawn at. */
const [REST, MOST] = [150, 12];
/** Nearer than this to what it is drawn for, the plan is not drawn again. */
const NEAR = 0.02;

function useRedrawing(times: number, drawing: ScreenLayout | null, want: (wanted: number) => void): void {
  const drawn = drawing?.times ?? null;
  useEffect(() => {
    if (drawn === null || Math.abs(times / drawn - 1) < NEAR) return;
    const rest = setTimeout(() => want(Math.min(MOST, times)), REST);
    return () => clearTimeout(rest);
  }, [times, drawn]);
}
