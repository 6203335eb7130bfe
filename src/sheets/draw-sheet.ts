/**
 * One sheet of one template. Sheets are tried from the smallest, scales from the largest; the first on which everything
 * stands clear of everything else is taken. The last sheet always succeeds: what finds no room there is said in tables and
 * notes instead.
 */
import { listed } from "../diagnostics/listed.js";
import type { Extent } from "../geometry/vocabulary.js";
import { servedMarks } from "../job/model/shared.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { banners } from "./banner.js";
import { BORDER, frameOf, insideBorder } from "./border.js";
import { widestCallout } from "./callouts.js";
import { chainMargins } from "./chains.js";
import { checkLines } from "./check-table.js";
import { edgeViewHeight, putEdgeView } from "./edge-view.js";
import { needsHoleTable } from "./hole-table.js";
import { at, group, text } from "./items.js";
import { footPiece } from "./legend.js";
import { type ChainMode, chainModes } from "./located.js";
import { type Neighbour, neighboursOf } from "./neighbours.js";
import { layoutPanels, type Panel } from "./panel.js";
import { type Area, type Draft, put, startDraft, withGaps } from "./paper.js";
import type { View } from "./plan-shapes.js";
import { type Demand, type PlanInput, type PlanPart, putPlan } from "./plan-view.js";
import type { Prepared, SheetRequest } from "./request.js";
import type { Scene, SceneItem } from "./scene.js";
import { type Scale, type SheetSize, scales, sheetSizes } from "./sheet-sizes.js";
import type { Piece } from "./table.js";
import { printable, textWidth } from "./text-metrics.js";
import { scaleWords } from "./title-block.js";

interface Attempt {
  readonly request: Prepared;
  readonly sheet: SheetSize;
  readonly panels: readonly Panel[];
  readonly scale: Scale;
  readonly mode: ChainMode;
  readonly demand: Demand;
  /** Parts of the plan that could not be placed on this sheet at a scale: see `failureKey`. */
  readonly hopeless: Set<string>;
}

/** The same failure would come again under this key. */
function failureKey(part: PlanPart, { scale, mode, demand }: Attempt): string {
  switch (part) {
    case "chains":
      return `${part} ${scale.factor} ${mode}`;
    case "tags":
    case "callouts":
      return `${part} ${scale.factor} ${demand}`;
  }
}

const PARTS: readonly PlanPart[] = ["chains", "tags", "callouts"];

function isHopeless(trial: Attempt): boolean {
  return PARTS.some((part) => trial.hopeless.has(failureKey(part, trial)));
}

/** What is tried on each sheet, in this order; the smallest sheet is taken only when it turns out well. */
const DEMANDS: readonly Demand[] = ["good", "fair"];

/** Draws the sheet of a template. Always gives one, whatever the plate. */
export function drawSheet(request: SheetRequest): Scene {
  const clean = prepare(request);
  const sheets = sheetSizes(clean.job.unit);
  for (const mode of chainModes(clean))
    for (const [i, sheet] of sheets.entries()) {
      const scene = drawOn(clean, sheet, mode, i === 0 ? DEMANDS.slice(0, 1) : DEMANDS);
      if (scene !== null) return scene;
    }
  const largest = sheets.at(-1);
  if (largest === undefined) throw new RangeError("no sheet sizes");
  return drawAnyway(clean, largest);
}

function drawOn(request: Prepared, sheet: SheetSize, mode: ChainMode, demands: readonly Demand[]): Scene | null {
  const panels = layoutPanels(request, sheet, insideBorder(sheet), mode, true);
  const hopeless = new Set<string>();
  if (panels.length === 0) return null;
  for (const demand of demands)
    for (const scale of usableScales(request, sheet)) {
      const trial = { request, sheet, panels, scale, mode, demand, hopeless };
      const scene = isHopeless(trial) ? null : attempt(trial);
      if (scene !== null) return scene;
    }
  return null;
}

function drawAnyway(request: Prepared, sheet: SheetSize): Scene {
  const panels = layoutPanels(request, sheet, insideBorder(sheet), "ends", false);
  for (const mode of ["ends", "overall"] as const)
    for (const scale of scales(request.job.unit)) {
      const scene = attempt({ request, sheet, panels, scale, mode, demand: "anything", hopeless: new Set() });
      if (scene !== null) return scene;
    }
  throw new RangeError("a plate that fits no sheet at any scale");
}

/** Without line breaks and control characters in the job's own words, and with the ledger's lines sorted once. */
function prepare(request: SheetRequest): Prepared {
  const { job, base } = request;
  return {
    ...request,
    job: {
      ...job,
      title: printable(job.title),
      owner: printable(job.owner),
      number: printable(job.number),
      drawnBy: printable(job.drawnBy),
    },
    base: { ...base, note: atMost(printable(base.note), LONGEST_NOTE) },
    lines: checkLines(request.rows, job.unit),
  };
}

const LONGEST_NOTE = 400;

function atMost(words: string, count: number): string {
  const characters = [...words];
  return characters.length <= count ? words : `${characters.slice(0, count - 1).join("")}…`;
}

/** At most three scales, the largest at which the plate itself could stand on the sheet with holes that can be seen. */
function usableScales({ job, measures, plate }: SheetRequest, sheet: SheetSize): readonly Scale[] {
  const { extent } = measures;
  const room = {
    x: sheet.width - BORDER.left - BORDER.other - sheet.panel - 30,
    y: sheet.height - 2 * BORDER.other - 70,
  };
  const holes = plate.holes
    .filter(({ role }) => role === "rod")
    .map(({ shape }) => (shape.kind === "circle" ? shape.diameter / 1e6 : 25));
  const least = leastOf(holes, 1e9);
  return scales(job.unit)
    .filter(({ factor }) => (extent.x1 - extent.x0) * factor <= room.x && (extent.y1 - extent.y0) * factor <= room.y)
    .slice(0, 3)
    .filter(({ factor }) => factor === 1 || least * factor >= LEAST_HOLE);
}

/** A rod hole smaller than this on paper is not readable. */
const LEAST_HOLE = 1.6;

/** The first arrangement of the tables that leaves the views enough room. */
function attempt(trial: Attempt): Scene | null {
  const { request, sheet, panels, scale } = trial;
  const inside = insideBorder(sheet);
  for (const panel of panels) {
    const area: Area = { x0: inside.x0 + 4, y0: inside.y0 + 4, x1: panel.left - 4, y1: inside.y1 - 4 };
    const drawing = drawArea(trial, area, panel.foot);
    if (drawing.kind === "failed") {
      if (drawing.part === null || drawing.part === "callouts") continue;
      trial.hopeless.add(failureKey(drawing.part, trial));
      return null;
    }
    const tables = panel.finish(drawing.unplaced, scale);
    if (tables === null) continue;
    return sceneOf(request, sheet, [frameOf(sheet), ...drawing.items, ...tables]);
  }
  trial.hopeless.add(failureKey("callouts", trial));
  return null;
}

const MOST_NAMED = 8;

function sceneOf(request: SheetRequest, sheet: SheetSize, items: readonly SceneItem[]): Scene {
  const { job, base, plate } = request;
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `${plate.mark} rev ${plate.revision}: setting template for ${listed(servedMarks(base), MOST_NAMED)}, job ${job.number}`,
    description: `Sheet ${request.sheetNumber} of ${request.sheetCount}, size ${sheet.name}. ${job.title}. Status: ${job.status}.${request.held.length > 0 ? " HELD." : ""}`,
    items,
  };
}

/** `part` null: the views do not fit the area. */
type Drawing =
  | { readonly kind: "drawn"; readonly items: readonly SceneItem[]; readonly unplaced: readonly string[] }
  | { readonly kind: "failed"; readonly part: PlanPart | null };

const NO_ROOM: Drawing = { kind: "failed", part: null };

/** Banners at the top, plan, edge view under it, scale bar and legend at the foot. */
function drawArea(trial: Attempt, area: Area, footPieces: readonly Piece[]): Drawing {
  const { request, sheet, scale, demand } = trial;
  const { lettering } = sheet;
  const plan = planInput(trial);
  const draft = startDraft(area);
  const room = putHeadAndFoot(draft, trial, plan, footPieces);
  const stack = stackViews(plan, scale, room, trial);
  if (stack === null) return NO_ROOM;
  putTitle(draft, stack.center, stack.planTitle, PLAN_TITLE, `SCALE ${scaleWords(scale)}`, trial);
  putTitle(draft, stack.center, stack.edgeTitle, "EDGE VIEW", "", trial);
  const { plate, measures, job } = request;
  const edge = putEdgeView(draft, stack.view, plate, measures.extent, stack.edge, job.unit, lettering);
  if (!edge && demand !== "anything") return NO_ROOM;
  const planDraft: Draft = { ...draft, area: { ...area, y0: stack.planBottom, y1: room.y1 }, items: [] };
  const result = putPlan(planDraft, stack.view, plan);
  if (result.kind === "failed") return result;
  return {
    kind: "drawn",
    items: [...draft.items, group("plan", withGaps(planDraft.items, planDraft.gaps), { scale: scale.factor })],
    unplaced: result.unplaced,
  };
}

const PLAN_TITLE = "PLAN: VIEW FROM TOP, THIS FACE UP";

function planInput({ request, sheet, mode, demand }: Attempt): PlanInput {
  const { plate, base, job, measures } = request;
  const { drawn } = neighboursOf(request);
  return {
    plate,
    base,
    unit: job.unit,
    plateExtent: measures.extent,
    drawn: drawnExtent(measures.extent, drawn),
    neighbours: drawn,
    lettering: sheet.lettering,
    mode,
    tagAll: needsHoleTable(request, mode),
    demand,
  };
}

/** Draws the banners, the scale bar and what else stands at the foot; gives the room between them. */
function putHeadAndFoot(
  draft: Draft,
  { request, sheet }: Attempt,
  plan: PlanInput,
  footPieces: readonly Piece[],
): Area {
  const { area } = draft;
  const width = area.x1 - area.x0;
  let [y0, y1] = [area.y0, area.y1];
  for (const piece of banners(request, width, sheet.lettering)) {
    put(draft, piece.draw(area.x0, y1));
    y1 -= piece.height;
  }
  const { omitted } = neighboursOf(request);
  const bar = footPiece(width, plan.neighbours, omitted, plan.unit, sheet.lettering);
  for (const piece of [bar, ...[...footPieces].reverse()]) {
    y0 += piece.height;
    put(draft, piece.draw(area.x0, y0));
    y0 += FOOT_GAP;
  }
  return { ...area, y0, y1 };
}

const FOOT_GAP = 2.5;

/** Centred under its view, but never past the sides of the area. */
function putTitle(draft: Draft, x: number, y: number, words: string, under: string, { sheet }: Attempt): void {
  const { body, small } = sheet.lettering;
  const { x0, x1 } = draft.area;
  const half = textWidth(words, body, true) / 2;
  const center = Math.min(x1 - half, Math.max(x0 + half, x));
  put(draft, text("heading", words, at(center, y), body, { anchor: "middle", bold: true }));
  if (under !== "") put(draft, text("label", under, at(center, y - small - 1.6), small, { anchor: "middle" }));
}

interface Stack {
  readonly view: View;
  readonly center: number;
  readonly planTitle: number;
  readonly planBottom: number;
  readonly edge: number;
  readonly edgeTitle: number;
}

/** Heights from the top: room for callouts, axis, plan, dimension lines, title, edge view, its title. Spare room is shared. */
function stackViews(plan: PlanInput, scale: Scale, room: Area, { request, sheet }: Attempt): Stack | null {
  const { lettering } = sheet;
  const size = { x: (plan.drawn.x1 - plan.drawn.x0) * scale.factor, y: (plan.drawn.y1 - plan.drawn.y0) * scale.factor };
  const { left, right, above, below } = chainMargins(plan, scale.factor);
  const planTitle = lettering.body + lettering.small + 5;
  const edge = edgeViewHeight(request.plate, scale.factor, lettering);
  const edgeTitle = lettering.body + 4;
  const spareX = room.x1 - room.x0 - left - right - size.x;
  const spareY = room.y1 - room.y0 - above - size.y - below - planTitle - edge - edgeTitle;
  if (spareX < 0 || spareY < 0) return null;
  const callouts = widestCallout(plan.plate, plan.base, plan.unit, lettering.body) + lettering.body * 4 - right;
  const lowX = room.x0 + left + spareX - Math.min(spareX, Math.max(callouts, spareX * 0.6));
  const highY = room.y1 - above - spareY * 0.55;
  const lowY = highY - size.y;
  const planBottom = lowY - below - spareY * 0.1;
  const edgeTop = planBottom - planTitle - spareY * 0.1;
  return {
    view: { scale: scale.factor, origin: at(lowX - plan.drawn.x0 * scale.factor, lowY - plan.drawn.y0 * scale.factor) },
    center: lowX + size.x / 2,
    planTitle: planBottom - lettering.body,
    planBottom,
    edge: edgeTop - edge / 2,
    edgeTitle: edgeTop - edge - lettering.body,
  };
}

function drawnExtent(plate: Extent, neighbours: readonly Neighbour[]): Extent {
  const all = [plate, { x0: 0, y0: 0, x1: 0, y1: 0 }, ...neighbours.map((neighbour) => neighbour.drawn)];
  return {
    x0: leastOf(all.map(({ x0 }) => x0)),
    y0: leastOf(all.map(({ y0 }) => y0)),
    x1: greatestOf(all.map(({ x1 }) => x1)),
    y1: greatestOf(all.map(({ y1 }) => y1)),
  };
}
