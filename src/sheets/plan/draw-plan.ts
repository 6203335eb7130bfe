/**
 * The anchor-rod plan of a job: plan sheets first, then details, then what is left of the tables. One size for all sheets;
 * details stand beside the plan where there is room, tables run through the free paper of every sheet.
 */
import { banners } from "../banner.js";
import { frameOf } from "../border.js";
import { type Flow, stack, startFlow } from "../flow.js";
import type { Area } from "../paper.js";
import type { Scene, SceneItem } from "../scene.js";
import type { SheetSize } from "../sheet-sizes.js";
import { chooseLayout, detailInputs } from "./choose-layout.js";
import { drawDetail } from "./detail.js";
import { drawingArea, type PlanLayout, setColumns, wholeArea } from "./layout.js";
import { planNotes } from "./notes.js";
import { type LaidOutPanel, layoutPlanPanel, planScaleWords } from "./panel.js";
import { pointsOfTiles } from "./plan-points.js";
import type { PlanRequest } from "./request.js";
import { detailNotes, planHead, sheetTitle } from "./sheet-words.js";
import { isEnlarged } from "./symbols.js";
import { planTables } from "./tables.js";
import { type DrawnWindow, drawWindow } from "./window.js";

/** A sheet but for its number and the number of sheets. */
interface OpenSheet {
  readonly name: string;
  /** As in its title block; "" where nothing on it has a scale. */
  readonly scale: string;
  readonly items: readonly SceneItem[];
  readonly panel: LaidOutPanel;
}

/** Every sheet of the plan, in order. Always at least one. */
export function drawPlanSheets(request: PlanRequest): readonly Scene[] {
  const layout = chooseLayout(request);
  const { sheet } = layout.arrangement;
  const details = drawDetails(request, layout);
  const points = pointsOfTiles(request, layout.arrangement);
  const windows = layout.sheets.map(({ tile, view }) =>
    tile === null ? null : drawWindow(request, layout.arrangement, tile, view, points),
  );
  const allLines = windows.some((window) => window?.hasSpacings === false);
  const flow = startFlow(planTables(request, { marks: details.listed, allLines }), sheet.lettering, layout.flow);
  const sheets = [
    ...layout.sheets.map((_, i) => openSheet(request, layout, i, windows[i] ?? null, details.items[i] ?? [], flow)),
    ...tableSheets(request, sheet, flow),
  ];
  return sheets.map((open, i) => finish(request, sheet, open, i + 1, sheets.length));
}

function finish(request: PlanRequest, sheet: SheetSize, open: OpenSheet, number: number, count: number): Scene {
  const { job } = request;
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `Anchor-rod plan rev ${job.revision}, sheet ${number} of ${count}: ${open.name}, job ${job.number}`,
    description: `Sheet ${number} of ${count}, size ${sheet.name}. ${job.title}. Status: ${job.status}.`,
    listing: { about: open.name.toUpperCase(), scale: open.scale },
    items: [frameOf(sheet), ...open.panel.draw(number, count), ...open.items],
  };
}

/** The plan, its details and the tables beside them. */
function openSheet(
  request: PlanRequest,
  layout: PlanLayout,
  index: number,
  window: DrawnWindow | null,
  details: readonly SceneItem[],
  flow: Flow,
): OpenSheet {
  const { sheet, scale } = layout.arrangement;
  const free = layout.sheets[index]?.free ?? [];
  const title = sheetTitle(layout, index);
  const head = window === null ? [] : planHead(request, layout, index, window.hasControl);
  const notes = [
    ...(window === null ? [] : windowNotes(request, window)),
    ...(details.length > 0 ? detailNotes(request) : []),
  ];
  const shown = window !== null && details.length === 0 ? scale : null;
  const panel = layoutPlanPanel(request, sheet, { title, scale: shown, head, notes }, flow);
  const tables = free.flatMap((area) => tablesIn(sheet, area, flow));
  const items = [...bannerItems(request, sheet), ...(window?.items ?? []), ...details, ...tables];
  return { name: title.toLowerCase(), scale: planScaleWords(shown), items, panel };
}

function windowNotes(request: PlanRequest, window: DrawnWindow): readonly string[] {
  const { page, unlabelled, hasSpacings, unplaced } = window;
  return planNotes(request, { ...unlabelled, enlarged: isEnlarged(page), spacings: !hasSpacings, unplaced });
}

/** Details by sheet, and marks whose rods are left to the coordinate table. */
interface Details {
  readonly items: readonly (readonly SceneItem[])[];
  readonly listed: ReadonlySet<string>;
}

function drawDetails(request: PlanRequest, { arrangement, sheets, detail }: PlanLayout): Details {
  const inputs = detailInputs(request);
  const { lettering } = arrangement.sheet;
  const listed = new Set<string>();
  let next = 0;
  const items = sheets.map(({ cells }) =>
    cells.flatMap((cell) => {
      const [input, scale] = [inputs[next], detail.scales[next]];
      next += 1;
      if (input === undefined || scale === undefined) return [];
      const drawn = drawDetail(input, cell, scale, lettering);
      if (drawn.listed) listed.add(input.base.mark);
      return [drawn.item];
    }),
  );
  return { items, listed };
}

function bannerItems({ job, layoutOpen }: PlanRequest, sheet: SheetSize): readonly SceneItem[] {
  const { lettering } = sheet;
  const area = wholeArea(sheet);
  let top = area.y1;
  return banners({ job, held: [], open: layoutOpen }, area.x1 - area.x0, lettering).map((piece) => {
    const item = piece.draw(area.x0, top);
    top -= piece.height;
    return item;
  });
}

/** Sheets of tables alone, while any table is left. */
function tableSheets(request: PlanRequest, sheet: SheetSize, flow: Flow): readonly OpenSheet[] {
  const sheets: OpenSheet[] = [];
  const area = drawingArea(request, sheet);
  while (!flow.isEmpty) {
    const panel = layoutPlanPanel(request, sheet, { title: "SCHEDULES", scale: null, head: [], notes: [] }, flow);
    const tables = tablesIn(sheet, area, flow, 1);
    if (tables.length === 0 && !flow.isEmpty) throw new RangeError("a row of a table that is higher than a sheet");
    sheets.push({ name: "schedules", scale: "", items: [...bannerItems(request, sheet), ...tables], panel });
  }
  return sheets;
}

function tablesIn(sheet: SheetSize, area: Area, flow: Flow, least?: number): readonly SceneItem[] {
  return setColumns(sheet, area, flow, least).flatMap(({ x, top, pieces }) => stack(pieces, x, top));
}
