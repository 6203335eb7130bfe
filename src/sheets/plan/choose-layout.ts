/** Which sheet size, plan scale and detail scale give the fewest sheets on which all can be read. */
import type { Scale, SheetSize } from "../sheet-sizes.js";
import { spellingOf } from "../spelling.js";
import type { DetailInput } from "./detail.js";
import { type BaseFigure, figureOf } from "./figures.js";
import { columnWidths } from "./fit-table.js";
import { type Flow, startFlow } from "./flow.js";
import {
  type DetailPlan,
  detailPlans,
  drawingArea,
  layOut,
  type PlanLayout,
  tableColumns,
  viewArea,
} from "./layout.js";
import { planNotes } from "./notes.js";
import { layoutPlanPanel } from "./panel.js";
import type { PlanRequest } from "./request.js";
import { detailNotes, planHead, sheetTitle } from "./sheet-words.js";
import { planScales, planSheets } from "./sizes.js";
import { planTables } from "./tables.js";
import { type Arrangement, arrangePlan, usualSpacing } from "./tiles.js";

/** Between neighbouring working points on paper, in letters: comfortable, and the least that can be read. */
const COMFORT = 7;
const LEAST = 4.8;

/** What a plan would come to: sheets with those of tables, and on which of them free paper is used. */
interface Trial {
  readonly layout: PlanLayout;
  readonly count: number;
  readonly used: readonly boolean[];
}

/** The fewest sheets; of equals the smaller size, then the larger scale of the plan, then of the details. */
export function chooseLayout(request: PlanRequest): PlanLayout {
  const figures = request.plan.bases.map(figureOf);
  const inputs = detailInputs(request);
  const tables = planTables(request, { marks: new Set(), allLines: false });
  const widths = tables.map(columnWidths);
  const flowFor = (sheet: SheetSize) => startFlow(tables, sheet.lettering, widths);
  let best: Trial | null = null;
  for (const arrangement of arrangements(request, figures)) {
    const { sheet } = arrangement;
    const details = detailPlans(inputs, sheet, drawingArea(request, sheet));
    for (const detail of details.length > 0 ? details : [NO_DETAILS]) {
      const layout = { arrangement, detail, sheets: layOut(request, arrangement, detail) };
      if (best !== null && layout.sheets.length >= best.count) continue;
      const trial = tryOut(request, layout, flowFor(sheet));
      if (best === null || trial.count < best.count) best = trial;
    }
  }
  if (best === null) throw new RangeError("no sheets for a plan");
  return centred(request, best);
}

const NO_DETAILS: DetailPlan = { scale: { name: "1:1", factor: 1 }, scales: [], needs: [] };

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
  const apart = usualSpacing(figures.map(({ placed }) => placed.workingPoint));
  const sheets = planSheets(request.job);
  for (const level of [COMFORT, LEAST, 0]) {
    const pairs = sheets.flatMap((sheet) =>
      planScales(unit)
        .filter(({ factor }) => apart * factor >= level * sheet.lettering.small)
        .map((scale) => ({ sheet, scale })),
    );
    if (pairs.length === 0) continue;
    const tried = figures.length > MANY ? pairs.slice(-1) : pairs;
    return tried.map(({ sheet, scale }) => arrangePlan(request, figures, sheet, scale, viewArea(request, sheet)));
  }
  return [];
}

/** Sets the tables without drawing anything. */
function tryOut(request: PlanRequest, layout: PlanLayout, flow: Flow): Trial {
  const { sheet, tiles } = layout.arrangement;
  const used = layout.sheets.map((_, i) => {
    layoutPlanPanel(request, sheet, panelWords(request, layout, i), flow);
    return takeFree(layout, i, flow);
  });
  let count = layout.sheets.length;
  for (; !flow.isEmpty && count < tiles.length + MOST_TABLE_SHEETS; count++) {
    layoutPlanPanel(request, sheet, { title: "SCHEDULES", scale: null, head: [], notes: [] }, flow);
    for (const column of tableColumns(sheet, drawingArea(request, sheet), flow.natural))
      flow.take(column.x1 - column.x0, column.y1 - column.y0, 1);
  }
  return { layout, count, used };
}

const MOST_TABLE_SHEETS = 1000;

function takeFree({ arrangement, sheets }: PlanLayout, index: number, flow: Flow): boolean {
  const columns = (sheets[index]?.free ?? []).flatMap((area) => tableColumns(arrangement.sheet, area, flow.natural));
  return columns.map(({ x0, y0, x1, y1 }) => flow.take(x1 - x0, y1 - y0).length > 0).includes(true);
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
