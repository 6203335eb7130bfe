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
import type { Prepared, SheetRequest } from "./request.js";
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

/** Letters of a screen, and smaller ones where a figure finds no room: the font of the smallest is over 11 dots high. */
export const LETTERS: Lettering = { small: 2.5, body: 2.7, heading: 3.2, title: 4 };
const SMALLER: Lettering = { small: 2.25, body: 2.35, heading: 3, title: 3.6 };
const SMALLEST: Lettering = { small: 2.1, body: 2.1, heading: 2.8, title: 3.2 };

/** Draws the plan into the room, without a look at the ledger, which stands beside it. Always gives one: what finds no room is told in words. */
export function drawOnScreen(request: SheetRequest, room: Room): ScreenPlan {
  const prepared = prepare({ ...request, rows: [] });
  const [mode = "ends"] = chainModes(request);
  const inLetters = (letters: Lettering, demands: readonly Demand[]) =>
    demands.map((demand): Attempt => ({ mode, demand, letters, mustTag: true }));
  const attempts: readonly Attempt[] = [
    ...inLetters(LETTERS, ["good", "fair", "anything"]),
    ...inLetters(SMALLER, ["fair", "anything"]),
    ...inLetters(SMALLEST, ["anything"]),
    ...(["ends", "overall"] as const).map((least): Attempt => ({ ...LAST, mode: least, mustTag: true })),
    ...(["overall", "ends"] as const).map((least): Attempt => ({ ...LAST, mode: least })),
  ];
  for (const attempt of attempts) {
    const plan = drawIn(prepared, room, attempt);
    if (plan !== null) return plan;
  }
  throw new RangeError("a plate that fits no room at any scale");
}

interface Attempt {
  readonly mode: ChainMode;
  readonly demand: Demand;
  readonly letters: Lettering;
  /** Without tags the plan is no good. */
  readonly mustTag: boolean;
}

const LAST = { demand: "anything", letters: SMALLER, mustTag: false } as const;

function drawIn(request: Prepared, room: Room, { mode, demand, letters, mustTag }: Attempt): ScreenPlan | null {
  const reach: Reach = "usual";
  const { plan, need } = planOf(request)(letters)(mode)(reach);
  for (const sharing of sharingsOf(room, demand)) {
    const place = placeIn(room, need, plan.drawn, sharing);
    const area: Area = { x0: 0, y0: 0, x1: room.width, y1: room.height };
    const bare = putBarePlan(startDraft(area), place, { ...plan, demand, tells: true });
    if (bare.kind === "failed" || (mustTag && !isTagged(bare))) continue;
    const result = putAllCallouts(bare, demand);
    if (result.kind === "drawn") return finished(room, bare, result.unplaced);
  }
  return null;
}

/**
 * In a room that is higher than wide the callouts stand over and under the plan, else beside it. A search for their room that
 * ends without any takes long: it is made again at a smaller scale only while all is asked for.
 */
function sharingsOf({ width, height }: Room, demand: Demand): readonly Sharing[] {
  const aside = height > 1.15 * width ? 0 : 1 / 3;
  const shares = aside > 0 && demand === "good" ? [1, 0.85] : [1];
  return shares.map((share) => ({ share, aside }));
}

function isTagged({ draft }: BarePlan): boolean {
  return draft.items.some((item) => item.kind === "group" && item.name === "tag");
}

function finished(room: Room, { draft, view }: BarePlan, left: readonly Callout[]): ScreenPlan {
  const unplaced = left.map(({ lines, about }) => ({ lines, about }));
  return { ...room, items: withGaps(draft.items, draft.gaps), scale: view.scale, origin: view.origin, unplaced };
}

/** How much of the largest scale that fits, and of the room's width that is left to callouts. */
interface Sharing {
  readonly share: number;
  readonly aside: number;
}

/** In the middle of its room, the callouts' room counted in at its right. */
function placeIn(room: Room, need: PlanNeed, drawn: Pick<Area, "x0" | "y0">, { share, aside }: Sharing) {
  const factor = largestScale(room, need, aside) * share;
  const { left, right, above, below } = need.margins(factor);
  const spare = room.width - left - right - need.drawn.width * factor;
  const spareY = room.height - above - below - need.drawn.height * factor;
  const x = left + Math.max(0, spare - need.callouts.width) / 2;
  return { scale: factor, origin: { x: x - drawn.x0 * factor, y: below + spareY / 2 - drawn.y0 * factor } };
}

/** Margins follow from the scale, and the scale from the margins: they agree after a few rounds. */
function largestScale(room: Room, { drawn, margins, callouts }: PlanNeed, aside: number): number {
  let factor = 0.1;
  for (let round = 0; round < 4; round += 1) {
    const { left, right, above, below } = margins(factor);
    const beside = Math.min(callouts.width, room.width * aside);
    const [wide, high] = [room.width - left - right - beside, room.height - above - below];
    factor = Math.max(1e-4, Math.min(wide / drawn.width, high / drawn.height));
  }
  return factor;
}
