/**
 * Marks of a plate: centre-line ticks, arrows of the type's own axes, TOP, mark and revision, tag and rod size beside each
 * rod hole, punch marks of drilled holes; north and grid names only where they hold for every place that it serves.
 */
import type { Contour, Extent, Point } from "../../geometry/index.js";
import { joinExtents, point, segmentExtent } from "../../geometry/index.js";
import type { Base, Job } from "../../job/model/job.js";
import { servedMarks } from "../../job/model/shared.js";
import type { PlacedRod } from "../../rods/index.js";
import { formatLength } from "../../units/index.js";
import { NM_PER_MM, nanometres } from "../../units/length.js";
import type { Hole, Keyed, Mark, OmittedMark } from "../model.js";
import { seatReach } from "../reach.js";
import { arrange } from "./arrange.js";
import { axisArrows, placeTicks } from "./axes.js";
import type { Disc, Ground } from "./ground.js";
import { bareGround, take } from "./ground.js";
import type { Label } from "./labels.js";
import { canLetter, lettering } from "./lettering.js";
import { heightsToTry } from "./placing.js";
import type { Title } from "./titles.js";
import { whereSet } from "./where-set.js";

/** Marks, and those that found no room. */
export interface PlateMarks {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
}

/** An outline with its key. */
interface MarkedShape {
  readonly outer: Contour;
  readonly keyed: Keyed | null;
}

/** A round rim stays round for marks; what its notch takes is blocked by a box. */
function openShape({ outer, keyed }: MarkedShape): { readonly outer: Contour; readonly blocked: readonly Extent[] } {
  if (keyed === null || keyed.bare.kind === "path" || outer.kind === "circle") return { outer, blocked: [] };
  const notch = outer.segments.filter(({ bulge }) => bulge <= 0).map(segmentExtent);
  return { outer: keyed.bare, blocked: [notch.reduce(joinExtents)] };
}

/** Lays out all marks. A shop that marks nothing still punches the holes that it drills. */
export function layOutMarks(
  job: Job,
  base: Base,
  rods: readonly PlacedRod[],
  shape: MarkedShape,
  holes: readonly Hole[],
): PlateMarks {
  const { marking } = job.shop;
  const { outer, blocked } = openShape(shape);
  const seats = new Map(rods.map(({ tag, group }) => [tag, seatReach(group, job.shop) / 2 / NM_PER_MM]));
  const discs = [...holes.filter(({ role }) => role === "rod")].map((hole) => seatDisc(hole, seats));
  const bare = take(bareGround(outer, holes, discs, marking.clearance / NM_PER_MM), blocked);
  const heights = heightsToTry(marking.textHeight, marking.leastTextHeight);
  const punches = holes.filter(({ made }) => made === "drill").map(punch);
  const notes = holes.filter(({ made }) => made === "drill").flatMap((hole) => drillNote(hole, job, seats));
  if (marking.how === "none") return join([{ marks: punches, omitted: [] }, arrange(bare, notes, [], heights)]);
  const ticks = placeTicks(bare, outer, marking.textHeight / NM_PER_MM);
  const ground = take(
    bare,
    ticks.marks.map(({ extent }) => extent),
  );
  const labels = [...holes.flatMap((hole) => tagLabel(hole, seats)), ...notes];
  const tickEnd = (3 * marking.clearance + 1.5 * marking.textHeight) / NM_PER_MM;
  const titles = [
    ...titlesOf(base.template.mark, job.revision, ground, tickEnd),
    ...whereSet(job.plan, servedMarks(base), ground.extent, tickEnd),
  ];
  const unlettered = [...labels, ...titles].filter(({ text }) => !canLetter(text)).map(notInFont);
  const lettered = arrange(ground, labels.filter(isLettered), titles.filter(isLettered), heights);
  return join([ticks, lettered, { marks: punches, omitted: unlettered }]);
}

function join(parts: readonly PlateMarks[]): PlateMarks {
  return { marks: parts.flatMap(({ marks }) => marks), omitted: parts.flatMap(({ omitted }) => omitted) };
}

function isLettered({ text }: { readonly text: string }): boolean {
  return canLetter(text);
}

function notInFont({ kind, text }: Label | Title): OmittedMark {
  return { kind, text, why: "the single-stroke font has only plain ASCII letters" };
}

function discOf({ center, shape }: Hole): Disc {
  const across = shape.kind === "circle" ? shape.diameter : Math.max(shape.width, shape.height);
  return { center, radius: across / 2 / NM_PER_MM };
}

function seatDisc(hole: Hole, seats: ReadonlyMap<string, number>): Disc {
  const { center, radius } = discOf(hole);
  return { center, radius: Math.max(radius, seats.get(hole.tag) ?? 0) };
}

function tagLabel(hole: Hole, seats: ReadonlyMap<string, number>): readonly Label[] {
  if (hole.rod === null) return [];
  return [{ kind: "tag", text: `${hole.tag} ${hole.rod.size}`, hole: discOf(hole), seat: seatDisc(hole, seats) }];
}

function drillNote(hole: Hole, { unit }: Job, seats: ReadonlyMap<string, number>): readonly Label[] {
  if (hole.shape.kind !== "circle") return [];
  const text = `DRILL ${formatLength(hole.shape.diameter, unit)}`;
  return [{ kind: "punch", text, hole: discOf(hole), seat: seatDisc(hole, seats) }];
}

/** Longest arm of a punch mark from the centre, in mm: common practice. */
const PUNCH_ARM = 3;

/** A cross on the centre of a drilled hole, inside it. */
function punch({ center, shape }: Hole): Mark {
  const across = shape.kind === "circle" ? shape.diameter : Math.min(shape.width, shape.height);
  const arm = Math.min(PUNCH_ARM, across / 4 / NM_PER_MM);
  const at = (dx: number, dy: number): Point => point(center.x + dx * arm, center.y + dy * arm);
  const [left, right, low, high] = [at(-1, 0), at(1, 0), at(0, -1), at(0, 1)];
  return {
    kind: "punch",
    text: "",
    strokes: [
      [left, right],
      [low, high],
    ],
    extent: { x0: left.x, y0: low.y, x1: right.x, y1: high.y },
    textHeight: nanometres(0),
  };
}

/** Mark above the middle, TOP below it, arrows at the ends of their axes, inside the ticks. */
function titlesOf(mark: string, revision: string, { extent }: Ground, tickEnd: number): readonly Title[] {
  const middle = { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
  const quarter = (extent.y1 - extent.y0) / 4;
  const words = revision === "" ? [mark] : [mark, `REV ${revision}`];
  const text = words.join(" ");
  const shapes = (height: number) =>
    words.length > 1 ? [lettering([text], height), lettering(words, height)] : [lettering(words, height)];
  return [
    { kind: "mark", text, shapes, ideal: () => ({ x: middle.x, y: middle.y + quarter }) },
    {
      kind: "top",
      text: "TOP",
      shapes: (height) => [lettering(["TOP"], height)],
      ideal: () => ({ x: middle.x, y: middle.y - quarter }),
    },
    {
      kind: "axis",
      text: "+X",
      shapes: (height) => axisArrows("x", height),
      ideal: (block) => ({ x: extent.x1 - tickEnd - block.width / 2, y: 0 }),
    },
    {
      kind: "axis",
      text: "+Y",
      shapes: (height) => axisArrows("y", height),
      ideal: (block) => ({ x: 0, y: extent.y1 - tickEnd - block.height / 2 }),
    },
  ];
}
