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
  /** What `sideChoices` gives for these. */
  readonly choices: readonly SideChoice[];
  /** Stands in the lower left corner of the room: in the row of views, else under the plan. */
  readonly corner: Block;
  /** Width of what stands over and under the plan, which never runs past its paper. */
  readonly least: number;
  /** Largest first. */
  readonly scales: readonly Scale[];
  readonly lettering: Lettering;
}

/** A size of each side view. */
export interface SideChoice {
  readonly sizes: readonly ViewSize[];
  /** How far from the best sizes. */
  readonly rank: number;
  /** Width of each view and its title. */
  readonly widths: readonly number[];
  /** Of all views with their titles, side by side in a row and under each other in a column. */
  readonly row: ViewSize;
  readonly column: ViewSize;
}

/** Every choice of sizes, the best first. */
export function sideChoices(sides: readonly SideView[], lettering: Lettering): readonly SideChoice[] {
  const all = sides.reduce<readonly Pick<SideChoice, "sizes" | "rank" | "widths">[]>(
    (some, view) =>
      some.flatMap((one) =>
        view.sizes.map((size, i) => ({
          sizes: [...one.sizes, size],
          rank: one.rank + i,
          widths: [...one.widths, cellWidth(view, size, lettering)],
        })),
      ),
    [{ sizes: [], rank: 0, widths: [] }],
  );
  const band = titleBand(lettering);
  return all.map(({ sizes, rank, widths }) => {
    const heights = sizes.map(({ height }) => height + band);
    const gaps = GAP * Math.max(0, sizes.length - 1);
    const row = { width: sum(widths) + gaps, height: greatestOf(heights, 0) };
    return { sizes, rank, widths, row, column: { width: greatestOf(widths, 0), height: sum(heights) + gaps } };
  });
}

/** What a choice of sizes leaves of a room for the plan. */
interface Space {
  readonly side: SideChoice;
  readonly place: "row" | "column";
  readonly plan: ViewSize;
}

/** The plan in such a space at a scale. */
interface Choice extends Space {
  readonly scale: Scale;
  readonly comfortable: boolean;
}

/**
 * The arrangements of the views in a room, each the best of its kind: at the largest scale of the plan with the largest
 * side views that leave the callouts their room, and the one that gives the plan most paper; then at the next scales.
 */
export function arrangeViews(room: Area, input: ViewsInput): readonly ViewsLayout[] {
  const { drawn } = input.need;
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0];
  const inRoom = input.scales.filter(({ factor }) => drawn.width * factor <= width && drawn.height * factor <= height);
  if (inRoom.length === 0) return [];
  const spaces = spacesIn(room, input);
  const layouts: ViewsLayout[] = [];
  let count = 0;
  for (const scale of inRoom) {
    const same = choicesAt(input, spaces, scale);
    if (same.length === 0) continue;
    const [best, roomiest] = [first(same, isFuller), first(same, isRoomier)];
    for (const choice of best === roomiest ? [best] : [best, roomiest])
      if (choice !== null) layouts.push(placed(room, input, choice));
    count += 1;
    if (count === MOST_SCALES) break;
  }
  return layouts;
}

const MOST_SCALES = 3;

function first(choices: readonly Choice[], isBefore: (a: Choice, b: Choice) => boolean): Choice | null {
  return choices.reduce<Choice | null>((best, each) => (best === null || isBefore(each, best) ? each : best), null);
}

function isFuller(a: Choice, b: Choice): boolean {
  if (a.comfortable !== b.comfortable) return a.comfortable;
  return a.side.rank === b.side.rank ? isRoomier(a, b) : a.side.rank < b.side.rank;
}

function isRoomier(a: Choice, b: Choice): boolean {
  return a.plan.width * a.plan.height > b.plan.width * b.plan.height;
}

function spacesIn(room: Area, input: ViewsInput): readonly Space[] {
  const spaces: Space[] = [];
  for (const side of input.choices)
    for (const place of PLACES) {
      const plan = planSize(room, input, side, place);
      if (plan !== null && plan.width >= input.least) spaces.push({ side, place, plan });
    }
  return spaces;
}

const PLACES = ["row", "column"] as const;

/** Those in which the plan fits at this scale as the largest of the views; margins are reckoned where there is hope alone. */
function choicesAt(input: ViewsInput, spaces: readonly Space[], scale: Scale): readonly Choice[] {
  const { drawn } = input.need;
  const { factor } = scale;
  const choices: Choice[] = [];
  for (const space of spaces) {
    if (space.plan.width < drawn.width * factor || space.plan.height < drawn.height * factor) continue;
    const choice = choiceAt(input, space, scale);
    if (choice !== null) choices.push(choice);
  }
  return choices;
}

/** Null where the plan does not fit at this scale, or would not be the largest of the views. */
function choiceAt(input: ViewsInput, space: Space, scale: Scale): Choice | null {
  const { need } = input;
  const { factor } = scale;
  const { left, right, above, below } = need.margins(factor);
  const width = space.plan.width - left - right - need.drawn.width * factor;
  const height = space.plan.height - above - below - need.drawn.height * factor;
  if (width < 0 || height < 0) return null;
  const longest = Math.max(need.plate.width, need.plate.height) * factor;
  const { side, place, plan } = space;
  if (!staysSmaller(input, side.sizes, longest)) return null;
  const { callouts } = need;
  return { side, place, plan, scale, comfortable: width >= callouts.width || height >= callouts.height };
}

/** A view of the same plate is not larger than its plan, unless it has no smaller size. */
function staysSmaller({ sides }: ViewsInput, sizes: readonly ViewSize[], longest: number): boolean {
  return sizes.every((size, i) => {
    const view = sides[i];
    if (view?.name !== "marks-view" || size === view.sizes.at(-1)) return true;
    return Math.max(size.width, size.height) <= longest * LARGEST_SIDE;
  });
}

const LARGEST_SIDE = 1.05;

/** What side views and corner leave of the room, titles taken off; null where they do not fit. */
function planSize(
  room: Area,
  { lettering, corner }: ViewsInput,
  side: SideChoice,
  place: Space["place"],
): ViewSize | null {
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0];
  if (place === "row") {
    const lift = rowLift(room, side, corner);
    if (lift === null) return null;
    const foot = Math.max(side.row.height, lift === 0 ? corner.height : 0);
    return { width, height: height - titleBand(lettering) - lift - foot - GAP };
  }
  if (side.sizes.length === 0 || side.column.height > height) return null;
  return { width: width - side.column.width - GAP, height: height - titleBand(lettering) - corner.height - CORNER_GAP };
}

/** How far the row stands over the foot of the room: over the corner where it finds no room beside it. null: too wide. */
function rowLift(room: Area, { row }: SideChoice, corner: Block): number | null {
  const width = room.x1 - room.x0;
  if (corner.width + GAP + row.width <= width) return 0;
  return row.width <= width ? corner.height + CORNER_GAP : null;
}

/** Between the title of the plan and the block under it. */
const CORNER_GAP = 3;

function cellWidth(view: SideView, size: ViewSize, { body, small }: Lettering): number {
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
function placedRow(room: Area, { sides, lettering, corner }: ViewsInput, { side }: Choice): readonly PlacedSide[] {
  const { sizes, widths } = side;
  const lift = rowLift(room, side, corner) ?? 0;
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
  const { sizes } = choice.side;
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

/** The largest of a view's sizes that a pocket of paper holds with its title, at the pocket's middle; null where none does. */
export function sideInPocket(view: SideView, pocket: Area, lettering: Lettering): PlacedSide | null {
  const band = titleBand(lettering);
  const [width, height] = [pocket.x1 - pocket.x0, pocket.y1 - pocket.y0 - GAP - band];
  const size = view.sizes.find((each) => cellWidth(view, each, lettering) <= width && each.height <= height);
  if (size === undefined) return null;
  const y0 = pocket.y0 + band + (height - size.height) / 2;
  const area = { x0: pocket.x0, x1: pocket.x1, y0, y1: y0 + size.height };
  return sideIn(view, size, area, y0 - band, lettering)[0] ?? null;
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
