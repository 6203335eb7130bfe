/**
 * The template as it lies on the form, seen from above: plan north up where every place of the base is turned alike, else its
 * own +Y up. Not to scale.
 */
import { planContour } from "../../checks/geometry/measure.js";
import { extentOf, joinExtents, moveContour, turn } from "../../geometry/index.js";
import type { Contour, Extent, Point } from "../../geometry/vocabulary.js";
import type { Base } from "../../job/model/job.js";
import type { Mark } from "../../template/model.js";
import { greatestOf } from "../../units/extremes.js";
import { toMillimetres } from "../../units/index.js";
import { arrowHead, at, circle, group, line, strokeOf, text } from "../items.js";
import { type Area, put, startDraft, withGaps } from "../paper.js";
import { contourParts, holeRadius, onPaper, type View } from "../plan-shapes.js";
import type { PathPart, SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { type Disc, putSurveyTags, type SurveyTag } from "../survey-tags.js";
import { POINT_RADIUS, putPointBeside } from "../working-point.js";
import type { Facing } from "./places.js";
import type { SettingRequest } from "./request.js";

/** The view with what found no room in it. */
export interface PlaceView {
  readonly items: readonly SceneItem[];
  /** Tags of rods that are not beside their holes. */
  readonly lost: readonly string[];
}

/** Radius of the arrow to north, and the paper that axes and tags take around what is drawn. */
const NORTH = 6;
const MARGIN = 13;
/** How far an axis reaches past what is drawn. */
const REACH = 4;
/** Marks that say how the template lies; tags and sizes are lettered anew. */
const SHOWN: ReadonlySet<Mark["kind"]> = new Set(["top", "mark", "north", "grid"]);
/** Beyond this many rods none has a tag: the sheet of the template has them. */
const MOST_TAGS = 40;

/** Draws it as large as the area allows. */
export function drawPlaceView(request: SettingRequest, facing: Facing, area: Area, lettering: Lettering): PlaceView {
  const degrees = facing.kind === "alike" ? facing.turn : 0;
  const move = turn(degrees);
  const shapes = shapesOf(request, (contour) => moveContour(contour, move));
  const view = viewOf(shapes, area);
  const draft = startDraft(area);
  put(draft, ...northItems(facing, area, lettering));
  put(
    draft,
    ...shapeItems(shapes, view),
    ...markItems(request, view, move.apply),
    ...axes(shapes.own, view, degrees, lettering),
  );
  const { holes } = request.plate;
  const discs = holes.map(
    (hole): Disc => ({ center: onPaper(view, move.apply(hole.center)), radius: holeRadius(view, hole) }),
  );
  const rods = holes.filter(({ role }) => role === "rod");
  const tagged = rods.length > MOST_TAGS ? [] : rods;
  const tags = tagged.map((hole): SurveyTag => {
    const center = onPaper(view, move.apply(hole.center));
    const away = move.apply(hole.center);
    const radius = radiusAround({ center, radius: holeRadius(view, hole) }, discs);
    return { tag: hole.tag, center, radius, outward: Math.atan2(away.y, away.x) };
  });
  const point = { center: view.origin, radius: radiusAround({ center: view.origin, radius: POINT_RADIUS }, discs) };
  const turned = holes.map((hole) => ({ ...hole, center: move.apply(hole.center) }));
  const isNamed = putPointBeside(draft, view, turned, lettering, "W.P.");
  const ordered: readonly SurveyTag[] = [
    ...(isNamed ? [] : [{ tag: "W.P.", ...point, outward: (-3 * Math.PI) / 4 }]),
    ...pointers(request, view, move.apply),
    ...tags.toSorted((a, b) => inward(a, view) - inward(b, view)),
  ];
  const lost = putSurveyTags(draft, ordered, discs, lettering.small, "apart");
  return {
    items: [group("place-view", withGaps(draft.items, draft.gaps), { turn: degrees })],
    lost: lost.filter((tag) => rods.some((rod) => rod.tag === tag)),
  };
}

/** From the working point: tags of inner rods, which have the least room, come first. */
function inward({ center }: SurveyTag, { origin }: View): number {
  return Math.round(Math.hypot(center.x - origin.x, center.y - origin.y));
}

/** Of the hole, or of the opening that it lies in the middle of: the tag's leader ends at its edge. */
function radiusAround({ center, radius }: Disc, discs: readonly Disc[]): number {
  const around = discs.filter((disc) => Math.hypot(disc.center.x - center.x, disc.center.y - center.y) < radius);
  return greatestOf(
    around.map((disc) => disc.radius),
    radius,
  );
}

interface Shapes {
  /** In the base's own axes: template, and the concrete that is drawn. */
  readonly own: Extent;
  readonly outline: Contour;
  readonly holes: readonly Contour[];
  readonly concrete: Contour | null;
  readonly extent: Extent;
}

function shapesOf({ plate, base, measures }: SettingRequest, moved: (contour: Contour) => Contour): Shapes {
  const concrete = shownConcrete(base.concrete, measures.extent);
  const own = concrete === null ? measures.extent : joinExtents(measures.extent, extentOf(concrete));
  const drawn = [plate.region.outer, ...(concrete === null ? [] : [concrete])].map(moved);
  return {
    own,
    outline: moved(plate.region.outer),
    concrete: concrete === null ? null : moved(concrete),
    holes: plate.holes.map(({ contour }) => moved(contour)),
    extent: drawn.map(extentOf).reduce(joinExtents, WORKING_POINT),
  };
}

const WORKING_POINT: Extent = { x0: 0, y0: 0, x1: 0, y1: 0 };

/** A slab or a wall that reaches far beyond the template is not drawn. */
function shownConcrete({ shape, at: place }: Base["concrete"], { x0, y0, x1, y1 }: Extent): Contour | null {
  if (shape.kind === "missing") return null;
  const contour = planContour(shape.value, place);
  const more = Math.max(x1 - x0, y1 - y0) / 2;
  const far = extentOf(contour);
  return far.x0 < x0 - more || far.y0 < y0 - more || far.x1 > x1 + more || far.y1 > y1 + more ? null : contour;
}

function viewOf({ extent }: Shapes, area: Area): View {
  const [width, height] = [extent.x1 - extent.x0, extent.y1 - extent.y0];
  const scale = Math.min((area.x1 - area.x0 - 2 * MARGIN) / width, (area.y1 - area.y0 - 2 * MARGIN) / height);
  const middle = at((area.x0 + area.x1) / 2, (area.y0 + area.y1) / 2);
  const [x, y] = [(extent.x0 + extent.x1) / 2, (extent.y0 + extent.y1) / 2];
  return { scale, origin: at(middle.x - x * scale, middle.y - y * scale) };
}

function shapeItems({ outline, holes, concrete }: Shapes, view: View): readonly SceneItem[] {
  return [
    ...(concrete === null ? [] : [strokeOf("concrete", contourParts(view, concrete))]),
    strokeOf("outline", contourParts(view, outline)),
    strokeOf(
      "hole",
      holes.flatMap((contour) => contourParts(view, contour)),
    ),
  ];
}

/** Strokes of the marks that say how it lies, where they are scribed. */
function markItems({ plate }: SettingRequest, view: View, moved: (point: Point) => Point): readonly SceneItem[] {
  return plate.marks
    .filter(({ kind }) => SHOWN.has(kind))
    .map(({ kind, text: words, strokes }) => {
      const parts = strokes.flatMap((points): readonly PathPart[] => {
        const places = points.map((each) => onPaper(view, moved(each)));
        return places.slice(1).map((to, i) => line(places[i] ?? to, to));
      });
      return group("scribed", [strokeOf("scribe-fine", parts)], { kind, text: words });
    });
}

/** Words that point at what tells one way round from another: the piece mark and the notch. */
function pointers({ plate }: SettingRequest, view: View, moved: (point: Point) => Point): readonly SurveyTag[] {
  const pointer = (tag: string, place: Point, radius: number): SurveyTag => {
    const turned = moved(place);
    return { tag, center: onPaper(view, turned), radius, outward: Math.atan2(turned.y, turned.x) };
  };
  const mark = plate.marks.find(({ kind }) => kind === "mark");
  return [
    ...(plate.keyed === null ? [] : [pointer("NOTCH", plate.keyed.at, 1)]),
    ...(mark === undefined || isLegible(mark, view)
      ? []
      : [pointer("PIECE MARK", middleOf(mark), markRadius(mark, view))]),
  ];
}

function middleOf({ extent: { x0, y0, x1, y1 } }: Mark): Point {
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
}

/** Half of its lower side: the leader ends at the letters. */
function markRadius({ extent: { x0, y0, x1, y1 } }: Mark, view: View): number {
  return 0.5 + (Math.min(x1 - x0, y1 - y0) / 2) * view.scale;
}

/** Letters of a mark that are lower on paper are hardly read: words point at them. */
const LEGIBLE = 2.2;

const isLegible = ({ textHeight }: Mark, view: View): boolean => toMillimetres(textHeight) * view.scale >= LEGIBLE;

/** The base's own axes through the working point, past the template, each with its name at its arrow. */
function axes(extent: Extent, view: View, degrees: number, { small }: Lettering) {
  const along = (angle: number, plus: number, minus: number, name: string): readonly SceneItem[] => {
    const [dx, dy] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
    const spotAt = (reach: number) => at(view.origin.x + dx * reach, view.origin.y + dy * reach);
    const [tail, tip] = [spotAt(minus * view.scale - REACH), spotAt(plus * view.scale + REACH + 2)];
    const label = spotAt(plus * view.scale + REACH + 2 + small * 1.2);
    return [
      strokeOf("centre", [line(tail, tip)]),
      arrowHead(tip, dx, dy, 3),
      text("label", name, at(label.x, label.y - small / 2), small, { anchor: "middle", bold: true }),
    ];
  };
  const reach = (value: number, sign: 1 | -1) => (sign > 0 ? Math.max(value, 0) : Math.min(value, 0));
  return [
    ...along(degrees, reach(extent.x1, 1), reach(extent.x0, -1), "+X"),
    ...along(degrees + 90, reach(extent.y1, 1), reach(extent.y0, -1), "+Y"),
  ];
}

/** An arrow to plan north in the upper left corner, where it is the same at every place. */
function northItems(facing: Facing, { x0, y1 }: Area, { small }: Lettering): readonly SceneItem[] {
  if (facing.kind !== "alike") return [];
  const center = at(x0 + NORTH, y1 - NORTH - small * 1.6);
  const tip = at(center.x, center.y + NORTH);
  return [
    group("north", [
      strokeOf("fine", [circle(center, NORTH * 0.6), line(at(center.x, center.y - NORTH), tip)]),
      arrowHead(tip, 0, 1, 4.5),
      text("label", "N", at(center.x, tip.y + small * 0.4), small * 1.2, { anchor: "middle", bold: true }),
    ]),
  ];
}

/** What stands under the view. */
export function placeViewWords(facing: Facing): string {
  switch (facing.kind) {
    case "alike":
      return "FROM ABOVE, TOP SIDE UP, PLAN NORTH UP. NOT TO SCALE";
    case "different":
      return "FROM ABOVE, TOP SIDE UP. PLACES ARE TURNED DIFFERENTLY: SET BY +X AND +Y. NOT TO SCALE";
    case "no layout":
      return "FROM ABOVE, TOP SIDE UP. NORTH NOT GIVEN: ASK THE OFFICE. NOT TO SCALE";
  }
}
