/**
 * The plan of a template for a screen: the view from above alone, at the scale that fills the room that it is given. What a
 * printed sheet says in tables stands beside it on the page.
 */
import type { Callout } from "./callouts.js";
import { type ChainMode, chainModes } from "./located.js";
import { type Area, startDraft, withGaps } from "./paper.js";
import { planOf, type Reach } from "./plan-input.js";
import { type BarePlan, type Demand, putAllCallouts, putBarePlan } from "./plan-view.js";
import { prepare } from "./prepare.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import type { PlanNeed } from "./views.js";

/** Paper millimetres of a screen: those of its style sheets, 96 dots to the inch. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** The plan as it stands in its room. `scale`: paper over real; `origin`: 0,0 of the base on the paper. */
export interface ScreenPlan extends Room {
  readonly items: readonly SceneItem[];
  readonly scale: number;
  readonly origin: { readonly x: number; readonly y: number };
  /** Callouts that found no room beside the plan. */
  readonly unplaced: readonly Pick<Callout, "lines" | "about">[];
}

/** Letters of a screen: the smallest is over 11 dots high from line to line. */
const LETTERS: Lettering = { small: 2.5, body: 2.7, heading: 3.2, title: 4 };

/** Draws the plan into the room. Always gives one: what finds no room is told in words. */
export function drawOnScreen(request: SheetRequest, room: Room): ScreenPlan {
  const modes = chainModes(request);
  for (const demand of ["good", "fair"] as const) {
    const plan = drawIn(request, room, modes[0] ?? "ends", demand);
    if (plan !== null) return plan;
  }
  const last = drawIn(request, room, "overall", "anything") ?? drawIn(request, room, "ends", "anything");
  if (last === null) throw new RangeError("a plate that fits no room at any scale");
  return last;
}

function drawIn(request: SheetRequest, room: Room, mode: ChainMode, demand: Demand): ScreenPlan | null {
  const reach: Reach = "usual";
  const { plan, need } = planOf(prepare(request))(LETTERS)(mode)(reach);
  for (const share of [1, 0.85]) {
    const place = placeIn(room, need, plan.drawn, share);
    const area: Area = { x0: 0, y0: 0, x1: room.width, y1: room.height };
    const bare = putBarePlan(startDraft(area), place, { ...plan, demand, tells: true });
    if (bare.kind === "failed") continue;
    const result = putAllCallouts(bare, demand);
    if (result.kind === "drawn") return finished(room, bare, result.unplaced);
  }
  return null;
}

function finished(room: Room, { draft, view }: BarePlan, left: readonly Callout[]): ScreenPlan {
  const unplaced = left.map(({ lines, about }) => ({ lines, about }));
  return { ...room, items: withGaps(draft.items, draft.gaps), scale: view.scale, origin: view.origin, unplaced };
}

/** In the middle of its room, the callouts' room counted in at its right; `share` of the largest scale that fits. */
function placeIn(room: Room, need: PlanNeed, drawn: Pick<Area, "x0" | "y0">, share: number) {
  const factor = largestScale(room, need) * share;
  const { left, right, above, below } = need.margins(factor);
  const spare = room.width - left - right - need.drawn.width * factor;
  const spareY = room.height - above - below - need.drawn.height * factor;
  const x = left + Math.max(0, spare - need.callouts.width) / 2;
  return { scale: factor, origin: { x: x - drawn.x0 * factor, y: below + spareY / 2 - drawn.y0 * factor } };
}

/** Margins follow from the scale, and the scale from the margins: they agree after a few rounds. */
function largestScale(room: Room, { drawn, margins, callouts }: PlanNeed): number {
  let factor = 0.1;
  for (let round = 0; round < 4; round += 1) {
    const { left, right, above, below } = margins(factor);
    const beside = Math.min(callouts.width, room.width / 3);
    const [wide, high] = [room.width - left - right - beside, room.height - above - below];
    factor = Math.max(1e-4, Math.min(wide / drawn.width, high / drawn.height));
  }
  return factor;
}
