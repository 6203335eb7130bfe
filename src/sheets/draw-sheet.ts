/**
 * One sheet of one template: the plan, beside or under it the marks on the top face and the setting section, at the right
 * the tables. The smallest sheet is taken on which rod holes read and the plate is large on its paper; the last sheet always
 * succeeds: what finds no room there is said in tables and notes instead.
 */
import { listed } from "../diagnostics/listed.js";
import { servedMarks } from "../job/model/shared.js";
import { once } from "../units/once.js";
import { frameOf } from "./border.js";
import { calloutWords } from "./callouts.js";
import { FOOT_GAP, type Layout, layoutsOn, PLAN_TITLE } from "./choose-layout.js";
import { at, group, text } from "./items.js";
import { type ChainMode, chainModes, leastModes } from "./located.js";
import { type Box, isTaken } from "./occupied.js";
import type { Fullness } from "./panel.js";
import { type Area, type Draft, startDraft, withGaps } from "./paper.js";
import type { View } from "./plan-shapes.js";
import { type BarePlan, type Demand, type PlanPart, putAllCallouts, putBarePlan } from "./plan-view.js";
import { prepare } from "./prepare.js";
import type { Prepared, SheetRequest } from "./request.js";
import type { PaperPoint, Scene, SceneItem } from "./scene.js";
import { type Scale, type SheetSize, sheetSizes } from "./sheet-sizes.js";
import { documentType, statusWords } from "./status-words.js";
import { textWidth } from "./text-metrics.js";
import { scaleWords } from "./title-block.js";
import { type PlacedSide, titleBand, titleBaselines } from "./views.js";

/** Draws the sheet of a template. Always gives one, whatever the plate. */
export function drawSheet(request: SheetRequest): Scene {
  const clean = prepare(request);
  const sheets = sheetSizes(clean.job.unit);
  const chosen = sheets.find(({ name }) => name === clean.job.sheet);
  return (chosen === undefined ? null : drawChosen(clean, chosen)) ?? drawOnSmallest(clean, sheets);
}

/**
 * On the size that the job chose: holes that read before anything that may be left out, and nothing left out that has room.
 * null: it has no room for what must stand on it.
 */
function drawChosen(request: Prepared, sheet: SheetSize): Scene | null {
  const known = SHORTENED.flatMap((fullness) => {
    const { good, others } = stepsOn(request, sheet, fullness);
    return [...good, ...others];
  });
  const steps = known.filter((step) => serves(sheet, request, holeOf(step)));
  const shortened = () => SHORTENED.flatMap((fullness) => leastLayouts(request, sheet, fullness));
  return firstByHole(request, steps) ?? firstLeast(request, shortened());
}

/** With the largest rod holes: before they are drawn smaller, fewer lines stand in chains. */
function firstByHole(request: Prepared, steps: readonly Layout[][]): Scene | null {
  const holes = [...new Set(steps.map(holeOf))].sort((a, b) => b - a);
  for (const hole of holes)
    for (const mode of chainModes(request)) {
      const scene = firstDrawn(
        request,
        steps.filter((step) => holeOf(step) === hole),
        mode,
      );
      if (scene !== null) return scene;
    }
  return null;
}

function holeOf([first]: readonly Layout[]): number {
  return first?.worth.hole ?? 0;
}

const SHORTENED = ["whole", "brief", "bare"] as const;

/** A rod hole of less on paper, mm, is not told from a dot: a larger size is asked for, where there is one (common practice). */
const LEAST_CHOSEN_HOLE = 2;

function serves({ name }: SheetSize, { job }: Prepared, hole: number): boolean {
  return hole >= LEAST_CHOSEN_HOLE || name === sheetSizes(job.unit).at(-1)?.name;
}

/**
 * True where the sheet has room for all that must stand on it. Where a hole table and every callout in the notes have room,
 * nothing needs to be drawn to know that it can be.
 */
export function hasRoomOn(request: SheetRequest, name: string): boolean {
  const clean = prepare(request);
  const sheet = sheetSizes(clean.job.unit).find((size) => size.name === name);
  if (sheet === undefined) return false;
  const isSure = (fullness: Fullness) =>
    layoutsOn(clean, sheet, "overall", fullness).some(
      (layout) => serves(sheet, clean, layout.worth.hole) && holdsCallouts(layout),
    );
  return SHORTENED.some(isSure) || drawChosen(clean, sheet) !== null;
}

function holdsCallouts({ panel, plan, views, floor }: Layout): boolean {
  return panel.finish(plan.callouts.map(calloutWords), views.scale, floor) !== null;
}

/** On the smallest sheet that is good, else on the one that serves best. */
function drawOnSmallest(clean: Prepared, sheets: readonly SheetSize[]): Scene {
  const steps = once((sheet: SheetSize) => stepsOn(clean, sheet, "whole"));
  for (const mode of chainModes(clean))
    for (const sheet of sheets) {
      const scene = firstDrawn(clean, steps(sheet).good, mode);
      if (scene !== null) return scene;
    }
  const others = sheets.flatMap((sheet) => steps(sheet).others).sort(isWorthMore);
  return firstByHole(clean, others) ?? drawAnyway(clean, sheets);
}

function firstDrawn(request: Prepared, steps: readonly Layout[][], mode: ChainMode): Scene | null {
  for (const step of steps) {
    const scene = drawStep(request, step, mode);
    if (scene !== null) return scene;
  }
  return null;
}

/** The layouts of a sheet at one scale each; those at the scales that are good on it apart. */
function stepsOn(
  request: Prepared,
  sheet: SheetSize,
  fullness: Fullness,
): { readonly good: Layout[][]; readonly others: Layout[][] } {
  const byScale = new Map<number, Layout[]>();
  const [mode = "ends"] = chainModes(request);
  for (const layout of layoutsOn(request, sheet, mode, fullness)) {
    const { factor } = layout.views.scale;
    byScale.set(factor, [...(byScale.get(factor) ?? []), layout].slice(0, MOST_LAYOUTS));
  }
  const steps = [...byScale.values()];
  return { good: steps.filter(isGood), others: steps.filter((step) => !isGood(step)) };
}

/** Layouts of one scale that are tried. */
const MOST_LAYOUTS = 2;

function isGood([first]: readonly Layout[]): boolean {
  return first?.worth.good ?? false;
}

/** Readable holes first, then the larger share of its paper; a smaller sheet comes first of those that are alike. */
function isWorthMore([a]: readonly Layout[], [b]: readonly Layout[]): number {
  if (a === undefined || b === undefined) return 0;
  return b.worth.hole - a.worth.hole || b.worth.share - a.worth.share;
}

/** Draws at one scale, in the first of its layouts in which everything stands clear of everything else. */
function drawStep(request: Prepared, layouts: readonly Layout[], mode: ChainMode): Scene | null {
  const drawn = drawFirst(request, layouts[0]?.mode === mode ? layouts : inMode(request, layouts, mode));
  return drawn.kind === "drawn" ? drawn.scene : null;
}

/**
 * Good on one of the layouts, else fair on the last that was tried. Only callouts and notes may find room in another layout at
 * one scale: callouts where the plan's paper is wider or higher than any that had no room for them.
 */
function drawFirst(request: Prepared, layouts: readonly Layout[]): Drawn {
  let last: Failed = { kind: "failed", part: "notes", plan: null };
  const crowded: Layout[] = [];
  for (const layout of layouts) {
    if (crowded.some((tried) => isNoRoomier(layout, tried))) continue;
    const drawn = draw(request, layout, "good");
    if (drawn.kind === "drawn") return drawn;
    last = drawn;
    if (last.part === "callouts") crowded.push(layout);
    else if (last.part !== "notes") break;
  }
  const roomiest = crowded.at(-1) ?? layouts.at(-1);
  if (last.part === "chains") return last;
  if (roomiest === undefined) return last;
  const known = last.part === "callouts" ? last.plan : null;
  return draw(request, roomiest, "fair", known);
}

/** The plan has no more paper in one than in the other, neither in width nor in height. */
function isNoRoomier({ views: { plan } }: Layout, { views: { plan: other } }: Layout): boolean {
  return plan.x1 - plan.x0 <= other.x1 - other.x0 && plan.y1 - plan.y0 <= other.y1 - other.y0;
}

function inMode(request: Prepared, [first]: readonly Layout[], mode: ChainMode): readonly Layout[] {
  if (first === undefined) return [];
  const { sheet, views, fullness } = first;
  return layoutsOn(request, sheet, mode, fullness)
    .filter(({ views: { scale } }) => scale.factor === views.scale.factor)
    .slice(0, MOST_LAYOUTS);
}

type FailedPart = PlanPart | "notes";

/** On the largest sheet, whatever finds no room left to tables and notes, and of these at last what is in other files. */
function drawAnyway(request: Prepared, sheets: readonly SheetSize[]): Scene {
  for (const fullness of ["whole", "continued", "brief", "bare", "cut"] as const)
    for (const sheet of [...sheets].reverse()) {
      const scene = firstLeast(request, leastLayouts(request, sheet, fullness));
      if (scene !== null) return scene;
    }
  throw new RangeError("a plate that fits no sheet at any scale");
}

/** With as few dimension chains as the hole table allows, callouts that find no room told in the notes. */
function firstLeast(request: Prepared, layouts: readonly Layout[]): Scene | null {
  for (const layout of layouts) {
    const drawn = draw(request, layout, "anything");
    if (drawn.kind === "drawn") return drawn.scene;
  }
  return null;
}

/** Layouts of a sheet, those that serve best first. */
function leastLayouts(request: Prepared, sheet: SheetSize, fullness: Fullness): readonly Layout[] {
  return leastModes(request)
    .flatMap((mode) => layoutsOn(request, sheet, mode, fullness))
    .filter(({ worth }) => fullness === "cut" || serves(sheet, request, worth.hole));
}

type Drawn = { readonly kind: "drawn"; readonly scene: Scene } | Failed;

/** `plan`: what was drawn of it before its callouts found no room. */
interface Failed {
  readonly kind: "failed";
  readonly part: FailedPart;
  readonly plan: BarePlan | null;
}

/** The plan of this layout, taken up from `known` where that is drawn already. */
function draw(request: Prepared, layout: Layout, demand: Demand, known: BarePlan | null = null): Drawn {
  const plan = known ?? putBarePlan(startDraft(layout.views.plan), viewIn(layout), { ...layout.plan, demand });
  if (plan.kind === "failed") return { ...plan, plan: null };
  const result = putAllCallouts(plan, demand);
  if (result.kind === "failed") return { ...result, plan };
  const scene = finishSheet(request, layout, plan, result.unplaced.map(calloutWords));
  return scene === null ? { kind: "failed", part: "notes", plan: null } : { kind: "drawn", scene };
}

/** Banners at the top, the views, scale bar and legend at the foot, tables at the right; null where the notes find no room. */
function finishSheet(
  request: Prepared,
  layout: Layout,
  { draft, view }: BarePlan,
  unplaced: readonly string[],
): Scene | null {
  const { sheet, views, panel } = layout;
  const tables = panel.finish(unplaced, views.scale, layout.floor);
  if (tables === null) return null;
  const items = [
    frameOf(sheet),
    group("plan", withGaps(draft.items, draft.gaps), { scale: views.scale.factor }),
    ...headAndFoot(layout),
    ...planTitle(draft, layout, view),
    ...views.sides.flatMap((side) => sideItems(side, layout)),
    ...tables,
  ];
  return sceneOf(request, sheet, views.scale, items);
}

const MOST_NAMED = 8;

function sceneOf(request: SheetRequest, sheet: SheetSize, scale: Scale, items: readonly SceneItem[]): Scene {
  const { job, base, plate } = request;
  const status = statusWords(request);
  const warning = status === job.status.toUpperCase() ? "" : `${status}: `;
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `${warning}${plate.mark} rev ${plate.revision}: ${request.piece?.role ?? "setting template"} for ${listed(servedMarks(base), MOST_NAMED)}, job ${job.number}`,
    description: `Sheet ${request.sheetNumber} of ${request.sheetCount}, size ${sheet.name}. ${job.title}. Status: ${status}.`,
    listing: { about: documentType(request), scale: scaleWords(scale) },
    items,
  };
}

/** The banners from the top down, what stands at the foot from the bottom up, scale bar and legend over it. */
function headAndFoot({ frame, views }: Layout): readonly SceneItem[] {
  const { area, head, foot, corner } = frame;
  let [y0, y1] = [area.y0, area.y1];
  const banners = head.map((piece) => {
    const item = piece.draw(area.x0, y1);
    y1 -= piece.height;
    return item;
  });
  const bands = foot.map((piece) => {
    y0 += piece.height + FOOT_GAP;
    return piece.draw(area.x0, y0 - FOOT_GAP);
  });
  return [...banners, ...bands, corner.draw(views.corner.x, views.corner.y)];
}

/** In the middle of its paper, room for the callouts counted in at its right. */
function viewIn({ plan, need, views }: Layout): View {
  const { factor } = views.scale;
  const { plan: area } = views;
  const { left, right, above, below } = need.margins(factor);
  const spareX = area.x1 - area.x0 - left - right - need.drawn.width * factor;
  const spareY = area.y1 - area.y0 - above - below - need.drawn.height * factor;
  const x = area.x0 + left + Math.max(0, spareX - need.callouts.width) / 2;
  const y = area.y0 + below + spareY / 2;
  return { scale: factor, origin: at(x - plan.drawn.x0 * factor, y - plan.drawn.y0 * factor) };
}

/** Under the plan and what belongs to it, as near as there is room. */
function planTitle(draft: Draft, { plan, need, views, sheet }: Layout, view: View): readonly SceneItem[] {
  const { lettering } = sheet;
  const band = titleBand(lettering);
  const under = `SCALE ${scaleWords(views.scale)}`;
  const half = Math.max(textWidth(PLAN_TITLE, lettering.body, true), textWidth(under, lettering.small)) / 2;
  const { x0, x1, y0 } = views.plan;
  const x = Math.min(
    x1 - half,
    Math.max(x0 + half, view.origin.x + ((plan.drawn.x0 + plan.drawn.x1) / 2) * view.scale),
  );
  const isClear = (foot: number) =>
    !isTaken(draft.taken, boxOf({ x0: x - half - 2, x1: x + half + 2, y0: foot, y1: foot + band }));
  let foot = view.origin.y + plan.drawn.y0 * view.scale - need.margins(view.scale).below - band;
  while (foot > y0 - band && !isClear(foot)) foot -= TITLE_STEP;
  const title = at(x, Math.max(foot, y0 - band) + titleBaselines(lettering).title);
  return titleItems(title, PLAN_TITLE, under, sheet, views.plan);
}

const TITLE_STEP = 2;

function boxOf({ x0, y0, x1, y1 }: Area): Box {
  return [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)];
}

function sideItems({ view, size, area, title }: PlacedSide, { sheet }: Layout): readonly SceneItem[] {
  return [...view.draw(area, size), ...titleItems(title, view.title, view.under(size), sheet, area)];
}

/** Centred under its view, but never past the sides of its area. */
function titleItems(
  middle: PaperPoint,
  words: string,
  under: string,
  { lettering }: SheetSize,
  area: Pick<Area, "x0" | "x1">,
): readonly SceneItem[] {
  const { body, small } = lettering;
  const half = Math.max(textWidth(words, body, true), textWidth(under, small)) / 2;
  const x = Math.min(area.x1 - half, Math.max(area.x0 + half, middle.x));
  const lower = middle.y - titleBaselines(lettering).title + titleBaselines(lettering).under;
  return [
    text("heading", words, at(x, middle.y), body, { anchor: "middle", bold: true }),
    text("label", under, at(x, lower), small, { anchor: "middle" }),
  ];
}
