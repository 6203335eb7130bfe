/** How the plan and the views beside it share the paper: a row of them under it, or a column at its right. */
import { greatestOf } from "../units/extremes.js";
import type { Margins } from "./chains.js";
import type { Block } from "./legend.js";
import type { Area } from "./paper.js";
import type { PaperPoint } from "./scene.js";
import type { Lettering, Scale } from "./sheet-sizes.js";
import type { SideView, ViewSize } from "./side-view.js";
import { textWidth } from "./text-metrics.js";

/** What the plan needs. Real millimetres: everything drawn, and the plate alone. Paper millimetres: what stands around it. */
export interface PlanNeed {
  readonly drawn: ViewSize;
  readonly plate: ViewSize;
  /** Dimension lines, axes and their letters, at a scale of the plan. */
  readonly margins: (factor: number) => Margins;
  /** Paper for the callouts: the width of the widest, and the height of all under each other. */
  readonly callouts: ViewSize;
}

/** One view beside the plan with its place: where it is drawn, and the middle of its title's baseline. */
export interface PlacedSide {
  readonly view: SideView;
  readonly size: ViewSize;
  readonly area: Area;
  readonly title: PaperPoint;
}

/** Where all views of a sheet stand. `plan` is the paper of the plan with all that belongs to it, its title apart. */
export interface ViewsLayout {
  readonly scale: Scale;
  readonly plan: Area;
  readonly sides: readonly PlacedSide[];
  /** Upper left corner of the block that stands in the lower left corner of the room. */
  readonly corner: PaperPoint;
  /** The callouts have room beside or under the plan. */
  readonly comfortable: boolean;
}

/** Between a view and the next one's title or edge. */
const GAP = 7;
/** Between a view and its title. */
const TITLE_GAP = 4;

/** Height of a view's title and of the line under it, with what keeps them off their view. */
export function titleBand({ body, small }: Lettering): number {
  return TITLE_GAP + body + 1.6 + small + 2;
}

/** Baseline of the title over the foot of its band, and of the line under it. */
export function titleBaselines({ small }: Lettering): { readonly title: number; readonly under: number } {
  return { title: small + 3.6, under: 2 };
}

/** What the views of one sheet are arranged from. */
export interface ViewsInput {
  readonly need: PlanNeed;
  readonly sides: readonly SideView[];
  /** Stands in the lower left corner of the room: in the row of views, else under the plan. */
  readonly corner: Block;
  /** Width of what stands over and under the plan, which never runs past its paper. */
  readonly least: number;
  /** Largest first. */
  readonly scales: readonly Scale[];
  readonly lettering: Lettering;
}

/** One choice of sizes for the side views, and the paper that is left of `room` for the plan. */
interface Choice {
  readonly sizes: readonly ViewSize[];
  /** How far from the best sizes. */
  readonly rank: number;
  readonly place: "row" | "column";
  readonly plan: ViewSize;
  readonly scale: Scale;
  readonly comfortable: boolean;
}

/**
 * The arrangements of the views in a room, each the best of its kind: at the largest scale of the plan with the largest
 * side views that leave the callouts their room, and the one that gives the plan most paper; then at the next scales.
 */
export function arrangeViews(room: Area, input: ViewsInput): readonly ViewsLayout[] {
  const choices = allChoices(room, input);
  const factors = [...new Set(choices.map(({ scale }) => scale.factor))].sort((a, b) => b - a).slice(0, MOST_SCALES);
  return factors.flatMap((factor) => {
    const same = choices.filter(({ scale }) => scale.factor === factor);
    const [best, roomiest] = [first(same, isFuller), first(same, isRoomier)];
    const both = best === roomiest ? [best] : [best, roomiest];
    return both.flatMap((choice) => (choice === null ? [] : [placed(room, input, choice)]));
  });
}

const MOST_SCALES = 3;

function first(choices: readonly Choice[], isBefore: (a: Choice, b: Choice) => boolean): Choice | null {
  return choices.reduce<Choice | null>((best, each) => (best === null || isBefore(each, best) ? each : best), null);
}

function isFuller(a: Choice, b: Choice): boolean {
  if (a.comfortable !== b.comfortable) return a.comfortable;
  return a.rank === b.rank ? isRoomier(a, b) : a.rank < b.rank;
}

function isRoomier(a: Choice, b: Choice): boolean {
  return a.plan.width * a.plan.height > b.plan.width * b.plan.height;
}

function allChoices(room: Area, input: ViewsInput): readonly Choice[] {
  const choices: Choice[] = [];
  for (const { sizes, rank } of sizeChoices(input.sides))
    for (const place of PLACES) {
      const plan = planSize(room, input, sizes, place);
      if (plan === null || plan.width < input.least) continue;
      for (const scale of input.scales) {
        const choice = choiceAt(input, { sizes, rank, place, plan, scale });
        if (choice !== null) choices.push(choice);
      }
    }
  return choices;
}

const PLACES = ["row", "column"] as const;

function sizeChoices(sides: readonly SideView[]): readonly Pick<Choice, "sizes" | "rank">[] {
  return sides.reduce<readonly Pick<Choice, "sizes" | "rank">[]>(
    (some, { sizes }) =>
      some.flatMap((one) => sizes.map((size, i) => ({ sizes: [...one.sizes, size], rank: one.rank + i }))),
    [{ sizes: [], rank: 0 }],
  );
}

/** Null where the plan does not fit at this scale, or would not be the largest of the views. */
function choiceAt(input: ViewsInput, choice: Omit<Choice, "comfortable">): Choice | null {
  const { need } = input;
  const { factor } = choice.scale;
  const { left, right, above, below } = need.margins(factor);
  const spare = {
    width: choice.plan.width - left - right - need.drawn.width * factor,
    height: choice.plan.height - above - below - need.drawn.height * factor,
  };
  if (spare.width < 0 || spare.height < 0) return null;
  const longest = Math.max(need.plate.width, need.plate.height) * factor;
  if (!staysSmaller(input, choice.sizes, longest)) return null;
  const { callouts } = need;
  return { ...choice, comfortable: spare.width >= callouts.width || spare.height >= callouts.height };
}

/** A view of the same plate is smaller than its plan, unless it has no smaller size. */
function staysSmaller({ sides }: ViewsInput, sizes: readonly ViewSize[], longest: number): boolean {
  return sizes.every((size, i) => {
    const view = sides[i];
    if (view?.name !== "marks-view" || size === view.sizes.at(-1)) return true;
    return Math.max(size.width, size.height) <= longest * LARGEST_SIDE;
  });
}

const LARGEST_SIDE = 1;

/** What side views and corner leave of the room, titles taken off; null where they do not fit. */
function planSize(room: Area, input: ViewsInput, sizes: readonly ViewSize[], place: Choice["place"]): ViewSize | null {
  const { lettering, sides, corner } = input;
  const band = titleBand(lettering);
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0];
  const widths = sizes.map((size, i) => cellWidth(sides[i], size, lettering));
  const heights = sizes.map((size) => size.height + band);
  if (place === "row") {
    const lift = rowLift(room, widths, corner);
    if (lift === null) return null;
    return { width, height: height - band - lift - greatestOf(heights, lift === 0 ? corner.height : 0) - GAP };
  }
  if (sizes.length === 0 || sum(heights) + GAP * (heights.length - 1) > height) return null;
  return { width: width - greatestOf(widths) - GAP, height: height - band - corner.height - CORNER_GAP };
}

/** How far the row stands over the foot of the room: over the corner where it finds no room beside it. null: too wide. */
function rowLift(room: Area, widths: readonly number[], corner: Block): number | null {
  const width = room.x1 - room.x0;
  const views = sum(widths) + GAP * Math.max(0, widths.length - 1);
  if (corner.width + GAP + views <= width) return 0;
  return views <= width ? corner.height + CORNER_GAP : null;
}

/** Between the title of the plan and the block under it. */
const CORNER_GAP = 1;

function cellWidth(view: SideView | undefined, size: ViewSize, { body, small }: Lettering): number {
  if (view === undefined) return size.width;
  return Math.max(size.width, textWidth(view.title, body, true), textWidth(view.under(size), small));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function placed(room: Area, input: ViewsInput, choice: Choice): ViewsLayout {
  const { scale, comfortable, plan } = choice;
  const area = { x0: room.x0, x1: room.x0 + plan.width, y0: room.y1 - plan.height, y1: room.y1 };
  const sides = choice.place === "row" ? placedRow(room, input, choice) : placedColumn(room, input, choice);
  return { scale, plan: area, sides, comfortable, corner: { x: room.x0, y: room.y0 + input.corner.height } };
}

/** Side by side at the right of the corner or over it, spare paper shared, titles on one line. */
function placedRow(room: Area, { sides, lettering, corner }: ViewsInput, { sizes }: Choice): readonly PlacedSide[] {
  const widths = sizes.map((size, i) => cellWidth(sides[i], size, lettering));
  const lift = rowLift(room, widths, corner) ?? 0;
  const from = room.x0 + (lift === 0 ? corner.width : 0);
  const spare = (room.x1 - from - sum(widths)) / widths.length;
  const foot = room.y0 + lift + titleBand(lettering);
  const height = greatestOf(sizes.map((size) => size.height));
  let x = from;
  return sizes.flatMap((size, i) => {
    const width = (widths[i] ?? 0) + spare;
    const area = { x0: x, x1: x + width, y0: foot, y1: foot + height };
    x += width;
    return sideIn(sides[i], size, area, room.y0 + lift, lettering);
  });
}

/** Under each other over the whole height, spare paper shared, each over its title. */
function placedColumn(room: Area, { sides, lettering }: ViewsInput, choice: Choice): readonly PlacedSide[] {
  const band = titleBand(lettering);
  const { sizes } = choice;
  const x0 = room.x0 + choice.plan.width + GAP;
  const spare = (room.y1 - room.y0 - sum(sizes.map(({ height }) => height + band))) / sizes.length;
  let y = room.y1;
  return sizes.flatMap((size, i) => {
    y -= spare / 2;
    const area = { x0, x1: room.x1, y0: y - size.height, y1: y };
    y -= size.height + band + spare / 2;
    return sideIn(sides[i], size, area, area.y0 - band, lettering);
  });
}

function sideIn(
  view: SideView | undefined,
  size: ViewSize,
  area: Area,
  foot: number,
  lettering: Lettering,
): readonly PlacedSide[] {
  if (view === undefined) return [];
  const title = { x: (area.x0 + area.x1) / 2, y: foot + titleBaselines(lettering).title };
  return [{ view, size, area, title }];
}

/** Share of the plan's paper that the plate takes; and that of its longer side, dimension lines taken off the paper. */
export function sharesOf(
  { plan, scale }: ViewsLayout,
  { plate, margins }: PlanNeed,
): { readonly area: number; readonly side: number } {
  const [width, height] = [plan.x1 - plan.x0, plan.y1 - plan.y0];
  const [w, h] = [plate.width * scale.factor, plate.height * scale.factor];
  const { left, right, above, below } = margins(scale.factor);
  return { area: (w * h) / (width * height), side: w >= h ? w / (width - left - right) : h / (height - above - below) };
}
