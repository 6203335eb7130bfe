/** The plate in plan: view from the top, with its dimensions, tags and callouts. */

import type { Extent } from "../geometry/vocabulary.js";
import type { Base } from "../job/model/job.js";
import { boltCircleOf } from "../patterns/index.js";
import type { Hole, Plate } from "../template/model.js";
import type { Unit } from "../units/index.js";
import type { Callout } from "./callouts.js";
import { putChains } from "./chains.js";
import { putCornerNumbers } from "./corners.js";
import { putDiagonal } from "./diagonals.js";
import { circle, group, stroke } from "./items.js";
import { jointItems, putJointNames } from "./joints.js";
import { findCallouts, type Ground, groundOf } from "./leaders.js";
import type { ChainMode } from "./located.js";
import { type Neighbour, neighbourItems } from "./neighbours.js";
import { type Draft, put, putAll } from "./paper.js";
import { axisItems, holeItems, outlineItem, type View } from "./plan-shapes.js";
import { isPart, originName, type SheetPiece } from "./request.js";
import type { Lettering } from "./sheet-sizes.js";
import { putTags, type Tagging } from "./tags.js";
import { putWorkingPoint } from "./working-point.js";

/**
 * What a sheet must be to be taken. good: tags at their holes, short leaders. fair: the same with longer leaders and smaller
 * lettering. anything: what finds no room is left to the tables and the notes.
 */
export type Demand = "good" | "fair" | "anything";

/** What the view from above is drawn from. */
export interface PlanInput {
  readonly plate: Plate;
  readonly base: Base;
  readonly unit: Unit;
  readonly plateExtent: Extent;
  /** Everything that is drawn: plate, neighbours, working point. */
  readonly drawn: Extent;
  readonly neighbours: readonly Neighbour[];
  readonly lettering: Lettering;
  readonly mode: ChainMode;
  /** Tags at every hole, for a hole table; otherwise at the rods. */
  readonly tagAll: boolean;
  readonly demand: Demand;
  readonly callouts: readonly Callout[];
  readonly piece: SheetPiece | null;
  /** Callouts and neighbours are groups that tell what they are of, for a drawing that is typed on. */
  readonly tells?: boolean;
}

/** What found no room beside the plan and has to be said in the notes; or the part for which the attempt is given up. */
export type PlanResult =
  | { readonly kind: "drawn"; readonly unplaced: readonly Callout[] }
  | { readonly kind: "failed"; readonly part: PlanPart };

/** Chains and tags depend on lettering and scale alone, callouts on the room around the plan too. */
export type PlanPart = "chains" | "tags" | "callouts";

/** A plan that lacks nothing but its callouts. */
export interface BarePlan {
  readonly kind: "bare";
  readonly draft: Draft;
  readonly view: View;
  readonly input: PlanInput;
  readonly ground: Ground;
}

/** Draws the view from above but for its callouts, or says what found no room. */
export function putBarePlan(draft: Draft, view: View, input: PlanInput): BarePlan | ReturnType<typeof failed> {
  const { plate, lettering, demand } = input;
  const strict = demand !== "anything";
  putShapes(draft, view, input);
  if (!putChains(draft, view, input) && (strict || input.mode !== "overall")) return failed("chains");
  putWorkingPoint(draft, view, plate.holes, lettering, originName(input.piece));
  putDiagonal(draft, view, input);
  if (!putNames(draft, view, input) && strict) return failed("tags");
  const ground = groundOf(draft, isPart(input.piece) ? "never" : "at a toll", input.tells);
  return { kind: "bare", draft, view, input, ground };
}

/** Tags, joints and corners; of a part its corners first, since its bolts stand close beside them. False where a tag or a corner finds no room. */
function putNames(draft: Draft, view: View, input: PlanInput): boolean {
  const { plate, base, lettering, demand } = input;
  const tagged = input.tagAll ? plate.holes : plate.holes.filter(({ role }) => role === "rod");
  const tags = () => putAllTags(draft, view, input, tagged);
  const corners = () => putCornerNumbers(draft, view, base, lettering.small);
  if (isPart(input.piece)) {
    const [areNumbered, areTagged] = [corners(), tags()];
    putJointNames(draft, view, plate, lettering.small);
    return areNumbered && areTagged;
  }
  const areTagged = tags();
  if (!areTagged && demand !== "anything") return false;
  putJointNames(draft, view, plate, lettering.small);
  return corners() && areTagged;
}

/** All tags of one height: in a ring along a bolt circle of many, outward on a few holes, else all to the same side. */
function putAllTags(draft: Draft, view: View, input: PlanInput, holes: readonly Hole[]): boolean {
  const { plate, lettering, demand } = input;
  const reaches = demand === "good" ? [2.2] : [2.2, 6.5, 13];
  return reaches.some((reach) =>
    tagSides(input.base, holes).some((side) =>
      [lettering.body, lettering.small].some((letter) =>
        putTags(draft, view, holes, { letter, side, reach, among: plate.holes, strict: isPart(input.piece) }),
      ),
    ),
  );
}

const FEW_TAGS = 9;

function tagSides({ groups }: Base, holes: readonly Hole[]): readonly Tagging["side"][] {
  const isRound = groups.every(({ pattern }) => boltCircleOf(pattern) !== null);
  if (isRound) return holes.length > FEW_TAGS + 3 ? ["radial"] : ["outward", "radial"];
  return holes.length <= FEW_TAGS ? ["outward"] : ["same"];
}

/** Draws the callouts; those that find no room fail a plan that must be better than anything, and can be tried again. */
export function putAllCallouts({ draft, view, input, ground }: BarePlan, demand: Demand): PlanResult {
  const { callouts, lettering, drawn } = input;
  const size = Math.max(drawn.x1 - drawn.x0, drawn.y1 - drawn.y0) * view.scale;
  const short = Math.max(LONGEST_LEADER * lettering.body, 0.5 * size);
  const worst = { good: short, fair: 2.5 * short, anything: Infinity }[demand];
  const letters = demand === "good" ? [lettering.body] : [lettering.body, lettering.small];
  const all = demand !== "anything";
  const { placed, left } = findCallouts(ground, view, callouts, { letters, worst, all });
  if (left.length > 0 && all) return failed("callouts");
  putAll(draft, placed);
  return { kind: "drawn", unplaced: left };
}

function failed(part: PlanPart): { readonly kind: "failed"; readonly part: PlanPart } {
  return { kind: "failed", part };
}

/** Longest leader on a good sheet, in letter heights; on a large plan, half its side. */
const LONGEST_LEADER = 22;

function putShapes(draft: Draft, view: View, input: PlanInput): void {
  const { plate, base, neighbours, drawn, lettering } = input;
  const diameters = base.groups.flatMap(({ pattern }) => boltCircleOf(pattern)?.diameter ?? []);
  const circles = diameters.map((diameter) => circle(view.origin, (diameter / 2e6) * view.scale));
  put(
    draft,
    group(
      "neighbours",
      neighbours.flatMap((neighbour) => {
        const items = neighbourItems(view, neighbour);
        return input.tells === true ? [group("neighbour", items, { of: neighbour.name })] : items;
      }),
    ),
    group("plate", [outlineItem(view, plate), ...holeItems(view, plate)]),
    ...jointItems(view, plate),
    group("axes", [
      ...axisItems(view, drawn, lettering),
      ...(circles.length > 0 ? [stroke("centre", ...circles)] : []),
    ]),
  );
}
