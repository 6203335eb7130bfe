/** MARKS ON TOP FACE: the plate with every stroke that is scribed on it, where it is scribed; nothing is lettered anew. */
import type { Extent } from "../geometry/vocabulary.js";
import type { Mark, Plate } from "../template/model.js";
import { leastOf, toMillimetres, type Unit } from "../units/index.js";
import { at, group, line, strokeOf } from "./items.js";
import type { Area } from "./paper.js";
import { contourParts, onPaper, type View } from "./plan-shapes.js";
import type { SheetRequest } from "./request.js";
import type { PathPart, SceneItem } from "./scene.js";
import { type Lettering, type Scale, scales } from "./sheet-sizes.js";
import type { SideView, ViewSize } from "./side-view.js";
import { scaleWords } from "./title-block.js";

/** The view of a plate's scribing; null for a plate that has none. */
export function marksView({ plate, measures, job }: SheetRequest, lettering: Lettering): SideView | null {
  if (plate.marks.length === 0) return null;
  const { extent } = measures;
  const usable = viewScales(plate, extent, job.unit, lettering);
  const scaleFor = (size: ViewSize) => largestThatFits(usable, extent, size);
  return {
    name: "marks-view",
    title: "MARKS ON TOP FACE",
    under: (size) =>
      `${plate.material === "plywood" || job.shop.marking.how === "paint" ? "PAINTED" : "SCRIBED"}, ${scaleWords(scaleFor(size))}`,
    sizes: usable.map((scale) => sizeAt(extent, scale)),
    draw: (area, size) => drawMarks(plate, extent, area, scaleFor(size)),
  };
}

/** Clear paper around the plate: half its heaviest line and a little more. */
const MARGIN = 1;

/** Longest side of the plate on paper: beyond it the view gains nothing. */
const LONGEST = 260;
/** And at least: below it the view says nothing; where its letters are hardly read it must at least show where they stand. */
const SHORTEST = { legible: 40, dense: 90 };
/** Longest side of the plate on paper that is not made smaller, though its letters would still read. */
const LARGE = 60;
/** Letters on paper that can be read, if not at arm's length. */
const LEGIBLE = 1.5;

/** From the scale at which the smallest letters read as the sheet's own, of a plate of some size, down to the least that says something. */
function viewScales(plate: Plate, extent: Extent, unit: Unit, { small }: Lettering): readonly [Scale, ...Scale[]] {
  const longest = Math.max(extent.x1 - extent.x0, extent.y1 - extent.y0);
  const letters = leastOf(
    plate.marks.filter(({ text }) => text !== "").map(({ textHeight }) => toMillimetres(textHeight)),
    longest,
  );
  const all = scales(unit).filter(({ factor }) => longest * factor <= LONGEST);
  const reads = all.filter(({ factor }) => letters * factor >= small && longest * factor >= LARGE).length;
  const [first, ...others] = all.slice(Math.max(0, reads - 1));
  if (first === undefined) throw new RangeError("a plate that no scale brings on paper");
  const least = (factor: number) => (letters * factor >= LEGIBLE ? SHORTEST.legible : SHORTEST.dense);
  return [first, ...others.filter(({ factor }) => longest * factor >= least(factor))];
}

function sizeAt({ x0, y0, x1, y1 }: Extent, { factor }: Scale): ViewSize {
  return { width: (x1 - x0) * factor + 2 * MARGIN, height: (y1 - y0) * factor + 2 * MARGIN };
}

/** The smallest scale where none fits. */
function largestThatFits(usable: readonly [Scale, ...Scale[]], extent: Extent, { width, height }: ViewSize): Scale {
  const fits = usable.find((scale) => {
    const size = sizeAt(extent, scale);
    return size.width <= width && size.height <= height;
  });
  return fits ?? usable.at(-1) ?? usable[0];
}

function drawMarks(plate: Plate, extent: Extent, area: Area, { factor }: Scale): readonly SceneItem[] {
  const middle = (from: number, to: number) => (from + to) / 2;
  const origin = at(
    middle(area.x0, area.x1) - middle(extent.x0, extent.x1) * factor,
    middle(area.y0, area.y1) - middle(extent.y0, extent.y1) * factor,
  );
  const view: View = { origin, scale: factor };
  const marks = plate.marks.map((mark) =>
    group("scribed", [scribed(view, mark)], { kind: mark.kind, text: mark.text }),
  );
  return [group("marks-view", [...shapeItems(view, plate), ...marks], { scale: factor })];
}

/** The outline and every hole; those that a steel plate has only as a punch mark in a fine line. */
function shapeItems(view: View, plate: Plate): readonly SceneItem[] {
  const isPunched = ({ made }: Plate["holes"][number]) => made === "drill" && plate.material !== "plywood";
  const parts = (punched: boolean) =>
    plate.holes.filter((hole) => isPunched(hole) === punched).flatMap(({ contour }) => contourParts(view, contour));
  const [holes, punched] = [parts(false), parts(true)];
  return [
    strokeOf("outline", contourParts(view, plate.region.outer)),
    ...(holes.length > 0 ? [strokeOf("hole", holes)] : []),
    ...(punched.length > 0 ? [strokeOf("fine", punched)] : []),
  ];
}

/** Letters that are lower on paper are drawn with the finest pen. */
const LEAST_LETTERS = 1.8;

/** Every stroke of a mark, from point to point. */
function scribed(view: View, { strokes, text, textHeight }: Mark): SceneItem {
  const pieces = strokes.flatMap((points): readonly PathPart[] => {
    const places = points.map((point) => onPaper(view, point));
    return places.slice(1).map((to, i) => line(places[i] ?? to, to));
  });
  const isSmall = text !== "" && toMillimetres(textHeight) * view.scale < LEAST_LETTERS;
  return strokeOf(isSmall ? "scribe-fine" : "scribe", pieces);
}
