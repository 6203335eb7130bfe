/**
 * The key: where a template laid down a wrong way round would set its rods wrong and its outline would not show it, a corner
 * is cut with unequal legs, or an edge notched, near the type's +x +y corner. The smallest cut is taken that can be seen, leaves
 * holes and seats their room, shows every such way, and leaves the outline no symmetry at all.
 */
import type { Contour, Path } from "../../geometry/index.js";
import { pathFaults, twiceDepthInside, twiceEdgeWeb } from "../../geometry/index.js";
import type { Base, Job } from "../../job/model/job.js";
import type { MovedRods } from "../../orientation/index.js";
import { isSilent, matters, outlineProbe, outlineSymmetryOrder, SEEN_TWICE } from "../../orientation/index.js";
import type { PlacedRod } from "../../rods/index.js";
import type { Keyed } from "../model.js";
import type { Opening } from "../openings.js";
import { contourOf } from "../openings.js";
import type { Outline } from "../outline-model.js";
import { leastEdge, needsOf } from "../reach.js";
import type { KeyCut } from "./cuts.js";
import { cornerCuts, edgeCuts, rimCuts } from "./cuts.js";

/** An outline with its key, or without one where none is asked for, needed or possible. */
export interface KeyedOutline {
  readonly contour: Contour;
  readonly keyed: Keyed | null;
}

/** Keys an outline where that is asked for and needed. `moved`: every wrong way round of the bare outline. */
export function keyOutline(
  job: Job,
  base: Base,
  rods: readonly PlacedRod[],
  outline: Outline,
  openings: readonly Opening[],
  moved: readonly MovedRods[],
): KeyedOutline {
  const bare: KeyedOutline = { contour: outline.contour, keyed: null };
  if (base.template.key === "none") return bare;
  const shown = moved.filter(matters);
  if (!isSilentBy(base, outline.contour, shown)) return bare;
  const room = roomKeeper(job, base, rods, outline.contour, openings);
  for (const { contour, ...cut } of cuts(job, outline)) {
    if (!room(contour) || !isSound(contour) || !tellsAll(contour, shown)) continue;
    return { contour, keyed: { ...cut, bare: outline.contour } };
  }
  return bare;
}

/** Candidates, the most wanted first: corner, edge; a round outline has only its rim. */
function* cuts({ unit, shop }: Job, { contour, vertices }: Outline): Generator<KeyCut> {
  if (contour.kind === "circle") yield* rimCuts(contour, unit, shop.smallestCorner.least);
  else {
    yield* cornerCuts(vertices, unit, shop.smallestCorner.least);
    yield* edgeCuts(vertices, unit, shop.smallestCorner.least);
  }
}

function isSound(contour: Path): boolean {
  return pathFaults(contour).length === 0 && outlineSymmetryOrder(contour) === 1;
}

/** True where a way that matters is silent with this outline. */
function isSilentBy(base: Base, contour: Contour, wrong: readonly MovedRods[]): boolean {
  const probe = outlineProbe(contour);
  const outlineTwice = ({ way }: MovedRods) => (probe.isAtLeast(way.move, SEEN_TWICE) ? SEEN_TWICE : 0);
  return wrong.some((each) => isSilent(base, { ...each, outlineTwice: outlineTwice(each) }));
}

function tellsAll(contour: Path, shown: readonly MovedRods[]): boolean {
  const probe = outlineProbe(contour);
  return shown.every(({ way }) => probe.isAtLeast(way.move, SEEN_TWICE));
}

/** Whether a cut outline leaves every hole, seat and opening the room that the rules ask for, or what it had before. */
function roomKeeper(
  job: Job,
  base: Base,
  rods: readonly PlacedRod[],
  bare: Contour,
  openings: readonly Opening[],
): (contour: Contour) => boolean {
  const clear = leastEdge(job, base.template);
  const needs = needsOf(job, base, rods, clear).map(({ center, twice }) => ({
    center,
    twice: Math.min(twice, twiceDepthInside(center, bare)),
  }));
  const webs = openings.map(({ center, shape }) => {
    const contour = contourOf(center, shape);
    return { contour, twice: Math.min(2 * clear, twiceEdgeWeb(contour, bare)) };
  });
  return (contour) =>
    needs.every(({ center, twice }) => twiceDepthInside(center, contour) >= twice) &&
    webs.every((web) => twiceEdgeWeb(web.contour, contour) >= web.twice);
}
