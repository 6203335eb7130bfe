/** Which sheet size, plan scale and detail scale give the fewest sheets on which all can be read. */
import type { Point } from "../../geometry/index.js";
import { type ColumnWidths, columnWidths } from "../fit-table.js";
import { type Flow, startFlow } from "../flow.js";
import type { Scale, SheetSize } from "../sheet-sizes.js";
import { spellingOf } from "../spelling.js";
import type { TableText } from "../table.js";
import { blockSize } from "./blocks.js";
import type { DetailInput } from "./detail.js";
import { type BaseFigure, figureOf } from "./figures.js";
import { labelLines } from "./labels.js";
import {
  type DetailPlan,
  detailPlans,
  drawingArea,
  flowOptions,
  layOut,
  type PlanLayout,
  setColumns,
  viewArea,
} from "./layout.js";
import { planNotes } from "./notes.js";
import { layoutPlanPanel } from "./panel.js";
import type { PlanRequest } from "./request.js";
import { detailNotes, planHead, sheetTitle } from "./sheet-words.js";
import { planScales, planSheets } from "./sizes.js";
import { planTables } from "./tables.js";
import { type Arrangement, arrangePlan, usualSpacing } from "./tiles.js";

/** What a base takes on paper beside its label's width and height, in letters: comfortable, and the least that can be read. */
const COMFORT = { x: 1.2, y: 3 };
const LEAST = { x: 0, y: 1.8 };
/** Of the labels, this share is no larger than what the scale is chosen for. */
const USUAL = 0.9;

/** What a plan would come to: sheets with those of tables, and on which of them free paper is used. */
interface Trial {
  readonly layout: PlanLayout;
  readonly count: number;
  readonly used: readonly boolean[];
  /** Nothing runs over the paper that it has. */
  readonly fits: boolean;
}

/** The fewest sheets; of equals the smaller size, then the larger scale of the plan, then of the details. */
export function chooseLayout(request: PlanRequest): PlanLayout {
  const { tables, widths, best } = bestTrial(request);
  if (best === null) throw new RangeError("no sheets for a plan");
  const { sheet } = best.layout.arrangement;
  const layout = { ...best.layout, flow: flowOptions(sheet, true) };
  const whole = tryOut(request, layout, startFlow(tables, sheet.lettering, { ...layout.flow, widths }));
  return centred(request, whole.count > best.count ? best : whole);
}

/** Whether the size of sheet that the job chose, or one that the program may choose, has room for the plan. */
export function hasPlanRoom(request: PlanRequest): boolean {
  return bestTrial(request).best?.fits === true;
}

/** The best of all, with the tables that it was tried with. */
interface Chosen {
  readonly best: Trial | null;
  readonly tables: readonly TableText[];
  readonly widths: readonly ColumnWidths[];
}

function bestTrial(request: PlanRequest): Chosen {
  const figures = request.plan.bases.map(figureOf);
  const inputs = detailInputs(request);
  const tables = planTables(request, { marks: new Set(), allLines: false });
  const widths = tables.map(columnWidths);
  let best: Trial | null = null;
  for (const arrangement of arrangements(request, figures)) {
    const { sheet } = arrangement;
    const flow = flowOptions(sheet, false);
    const details = detailPlans(inputs, sheet, drawingArea(request, sheet));
    for (const detail of details.length > 0 ? details : [NO_DETAILS]) {
      const layout = { arrangement, detail, sheets: layOut(request, arrangement, detail), flow };
      if (best?.fits === true && layout.sheets.length > best.count) continue;
      const trial = tryOut(request, layout, startFlow(tables, sheet.lettering, { ...flow, widths }));
      if (best === null || isBetter(trial, best)) best = trial;
    }
  }
  return { best, tables, widths };
}

/** A plan of this scale shows a base as large as it need be: beyond it, details come first. */
const LARGE_PLAN = 1 / 50;

function isBetter(trial: Trial, best: Trial): boolean {
  if (trial.fits !== best.fits) return trial.fits;
  if (trial.count !== best.count) return trial.count < best.count;
  const [own, other] = [trial.layout, best.layout];
  if (own.arrangement.sheet !== other.arrangement.sheet) return false;
  const [parts, otherParts] = [own.arrangement.tiles.length, other.arrangement.tiles.length];
  if (parts !== otherParts) return parts < otherParts;
  const [plan, otherPlan] = [own.arrangement.scale.factor, other.arrangement.scale.factor];
  if (Math.min(plan, otherPlan) < LARGE_PLAN) return plan > otherPlan;
  const [detail, otherDetail] = [own.detail.scale.factor, other.detail.scale.factor];
  return detail === otherDetail ? plan > otherPlan : detail > otherDetail;
}

const NO_DETAILS: DetailPlan = { scale: { name: "1:1", factor: 1 }, scales: [], needs: [], fits: true };

/** Where nothing stands beside a view, it has the whole sheet. */
function centred(request: PlanRequest, { layout, used }: Trial): PlanLayout {
  const area = viewArea(request, layout.arrangement.sheet);
  const sheets = layout.sheets.map((sheet, i) =>
    sheet.tile !== null && sheet.cells.length === 0 && used[i] !== true ? { ...sheet, view: area, free: [] } : sheet,
  );
  return { ...layout, sheets };
}

/** One of each type that is placed, in the order of the job. */
export function detailInputs({ job, plan, held }: PlanRequest): readonly DetailInput[] {
  const own = new Map<string, { first: (typeof plan.bases)[number]; count: number }>();
  for (const base of plan.bases) {
    const known = own.get(base.placement.mark);
    if (known === undefined) own.set(base.placement.mark, { first: base, count: 1 });
    else known.count += 1;
  }
  return job.bases.flatMap((base) => {
    const found = own.get(base.mark);
    if (found === undefined) return [];
    const { gauge } = spellingOf(job.editions);
    const { first, count } = found;
    return [{ base, rods: first.ownRods, count, held: held.has(base.mark), unit: job.unit, gauge }];
  });
}

/** Plans of so many places are tried on fewer ways: their tables are what counts. */
const MANY = 400;

/** Comfortable scales on every size; those that can just be read where none is comfortable. */
function arrangements(request: PlanRequest, figures: readonly BaseFigure[]): readonly Arrangement[] {
  const { unit } = request.job;
  const label = usualLabel(request, figures);
  for (const besides of [COMFORT, LEAST, null]) {
    const apart = besides === null ? Infinity : spacingInLabels(figures, label, besides);
    const sized = planSheets(request.job).map((sheet) =>
      planScales(unit)
        .filter(({ factor }) => apart * factor >= sheet.lettering.small)
        .map((scale) => ({ sheet, scale })),
    );
    if (sized.every(({ length }) => length === 0)) continue;
    const tried = figures.length > MANY ? [sized.flat().slice(-1)] : sized;
    return tried.flatMap((pairs) =>
      worthwhile(pairs.map(({ sheet, scale }) => arrange(request, figures, sheet, scale))),
    );
  }
  return [];
}

function arrange(request: PlanRequest, figures: readonly BaseFigure[], sheet: SheetSize, scale: Scale): Arrangement {
  return arrangePlan(request, figures, sheet, scale, viewArea(request, sheet));
}

/** A scale smaller than this is taken only where the plan is cut into fewer parts by it. */
const SMALL_SCALE = 1 / 200;

function worthwhile(larger: readonly Arrangement[]): readonly Arrangement[] {
  let fewest = Infinity;
  return larger.filter(({ scale, tiles }) => {
    const isWorth = scale.factor >= SMALL_SCALE || tiles.length < fewest;
    fewest = Math.min(fewest, tiles.length);
    return isWorth;
  });
}

/** Width and height of most labels, in letters. */
function usualLabel(request: PlanRequest, figures: readonly BaseFigure[]): Point {
  const sizes = figures.map((figure) => blockSize({ lines: labelLines(request, figure), letter: 1, boxed: false }));
  const usual = (values: readonly number[]) =>
    values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) * USUAL)] ?? 0;
  return { x: usual(sizes.map(({ width }) => width)), y: usual(sizes.map(({ height }) => height)) };
}

/** Usual distance between neighbours over what a base with its label takes in that direction, millimetres a letter. */
function spacingInLabels(figures: readonly BaseFigure[], label: Point, besides: Point): number {
  const [x, y] = [label.x + besides.x, label.y + besides.y];
  return usualSpacing(figures.map(({ placed: { workingPoint: at } }) => ({ x: at.x / x, y: at.y / y })));
}

/** A screen shows labels a little farther apart than the least that paper has. */
const ROOMY = 1.1;

/** The least scale at which letters of this height can stand beside most bases; 0 where there are not two of them. */
export function readableFactor(request: PlanRequest, figures: readonly BaseFigure[], letter: number): number {
  return (ROOMY * letter) / spacingInLabels(figures, usualLabel(request, figures), LEAST);
}

/** Sets the tables without drawing anything. */
function tryOut(request: PlanRequest, layout: PlanLayout, flow: Flow): Trial {
  const { sheet, tiles } = layout.arrangement;
  const panels: number[] = [];
  const used = layout.sheets.map((_, i) => {
    panels.push(layoutPlanPanel(request, sheet, panelWords(request, layout, i), flow).room);
    return takeFree(layout, i, flow);
  });
  let count = layout.sheets.length;
  for (; !flow.isEmpty && count < tiles.length + MOST_TABLE_SHEETS; count++) {
    layoutPlanPanel(request, sheet, { title: "SCHEDULES", scale: null, head: [], notes: [] }, flow);
    setColumns(sheet, drawingArea(request, sheet), flow, 1);
  }
  const { detail, arrangement } = layout;
  return {
    layout,
    count,
    used,
    fits: flow.isEmpty && detail.fits && arrangement.fits && panels.every((room) => room >= 0),
  };
}

const MOST_TABLE_SHEETS = 1000;

function takeFree({ arrangement, sheets }: PlanLayout, index: number, flow: Flow): boolean {
  const columns = (sheets[index]?.free ?? []).flatMap((area) => setColumns(arrangement.sheet, area, flow));
  return columns.length > 0;
}

function panelWords(request: PlanRequest, layout: PlanLayout, index: number) {
  const sheet = layout.sheets[index];
  const isPlan = sheet !== undefined && sheet.tile !== null;
  const hasControl = request.plan.control.length > 0;
  const nothing = { enlarged: true, spacings: false, marks: 0, distances: 0, unplaced: [] };
  return {
    title: sheetTitle(layout, index),
    scale: null as Scale | null,
    head: isPlan ? planHead(request, layout, index, hasControl) : [],
    notes: [
      ...(isPlan ? planNotes(request, nothing) : []),
      ...((sheet?.cells.length ?? 0) > 0 ? detailNotes(request) : []),
    ],
  };
}
