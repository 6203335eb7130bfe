/** Where everything could stand on a sheet, by arithmetic alone: tables, views, the scale of the plan. */
import { greatestOf, leastOf } from "../units/extremes.js";
import { once, onceFor } from "../units/once.js";
import { banners } from "./banner.js";
import { insideBorder } from "./border.js";
import { type Block, legendBlock } from "./legend.js";
import type { ChainMode } from "./located.js";
import { marksView } from "./marks-view.js";
import { type Fullness, layoutPanels, type Panel, VIEWS_MARGIN } from "./panel.js";
import type { Area } from "./paper.js";
import { nearIn, nearOf, planOf, type Reach } from "./plan-input.js";
import type { PlanInput } from "./plan-view.js";
import type { Prepared } from "./request.js";
import { settingSection } from "./setting-section.js";
import { type Lettering, type Scale, type SheetSize, scales } from "./sheet-sizes.js";
import type { SideView } from "./side-view.js";
import type { Piece } from "./table.js";
import { textWidth } from "./text-metrics.js";
import {
  arrangeViews,
  type PlacedSide,
  type PlanNeed,
  type SideChoice,
  sharesOf,
  sideChoices,
  sideInPocket,
  type ViewsLayout,
} from "./views.js";

/** One way to lay out a sheet. */
export interface Layout {
  readonly sheet: SheetSize;
  readonly mode: ChainMode;
  readonly fullness: Fullness;
  readonly panel: Panel;
  /** Where the tables beside the panel end, with a view under them; null where there is none. */
  readonly floor: number | null;
  readonly frame: Frame;
  readonly plan: PlanInput;
  readonly need: PlanNeed;
  readonly views: ViewsLayout;
  readonly worth: Worth;
}

/** What a layout does for who reads it. */
export interface Worth {
  /** The least rod hole on paper, mm, where it is less than what reads well; on a plan of full size always enough. */
  readonly hole: number;
  /** Share of the plan's paper that the plate takes. */
  readonly share: number;
  /** Holes read, and the plate is large on its paper: no larger sheet is wanted. */
  readonly good: boolean;
}

/** A drawing area with what stands at its head and foot, and the room between for the views. */
export interface Frame {
  readonly area: Area;
  readonly head: readonly Piece[];
  readonly foot: readonly Piece[];
  /** In the lower left corner of the room. */
  readonly corner: Block;
  readonly room: Area;
}

/** A rod hole of less on paper is hard to read, mm. */
const LEAST_HOLE = 4;
/** Share of the plan's paper that a plate takes on a sheet that is not too large for it. */
const LEAST_SHARE = 0.25;
/** A plate so much longer than wide takes this share of the longer side instead. */
const [ELONGATED, LEAST_SIDE] = [2, 0.6];

/** All layouts of a sheet in one chain mode: the largest scale first, then what leaves the signer most of his room. */
export function layoutsOn(request: Prepared, sheet: SheetSize, mode: ChainMode, fullness: Fullness): readonly Layout[] {
  const inside = insideBorder(sheet);
  const panels = layoutPanels(request, sheet, inside, mode, fullness);
  if (panels.length === 0) return [];
  const setting = { request, sheet, mode, fullness, inside, panels };
  const all = scales(request.job.unit);
  const layouts = layoutsAround(setting, "usual", all);
  const largest = greatestOf(layouts.map(scaleOf), 0);
  const larger = all.filter(({ factor }) => factor > largest);
  const closer = nearOf(request).close === null ? [] : layoutsAround(setting, "close", larger);
  return [...closer, ...layouts].sort(isBefore);
}

function scaleOf({ views }: Layout): number {
  return views.scale.factor;
}

/** What the layouts of a sheet have in common. */
interface Setting extends Pick<Layout, "sheet" | "mode" | "fullness"> {
  readonly request: Prepared;
  readonly inside: Area;
  readonly panels: readonly Panel[];
}

/** Those that show so much of base plate and concrete, at these scales. */
function layoutsAround(setting: Setting, reach: Reach, atScales: readonly Scale[]): readonly Layout[] {
  const { request, sheet, mode, fullness, inside, panels } = setting;
  const { lettering } = sheet;
  const { plan, need } = planOf(request)(lettering)(mode)(reach);
  return panels.flatMap((panel) => {
    const frame = frameAround(request, reach, lettering, inside, panel);
    const layouts = sidesBeside(request, panel, lettering, fullness).flatMap(({ pocketed, beside }) => {
      const least = fullness === "cut" ? 0 : Math.max(frame.corner.width, titleWidth(lettering));
      const input = { need, ...beside, corner: frame.corner, least, scales: atScales, lettering };
      const floor = pocketed.length === 0 ? null : (panel.pocket?.y1 ?? null);
      return arrangeViews(frame.room, input).map(
        (views): Layout => ({
          ...{ sheet, mode, fullness, panel, floor, frame, plan, need },
          views: pocketed.length === 0 ? views : { ...views, sides: [...views.sides, ...pocketed] },
          worth: worthOf(request, views, need),
        }),
      );
    });
    return layouts.map((layout) => (layouts.some(isGoodAt(scaleOf(layout))) ? asGood(layout) : layout));
  });
}

/** Title of the plan's view. */
export const PLAN_TITLE = "PLAN: VIEW FROM TOP, THIS FACE UP";

function titleWidth({ body }: Lettering): number {
  return textWidth(PLAN_TITLE, body, true);
}

function isGoodAt(scale: number): (layout: Layout) => boolean {
  return (layout) => layout.worth.good && scaleOf(layout) === scale;
}

/** A plate is not the smaller on its paper where the plan is given that of a view which stands under the tables. */
function asGood(layout: Layout): Layout {
  return { ...layout, worth: { ...layout.worth, good: true } };
}

/** Room for margins before the rest; then a plate that is large on its paper; then scribing that is read; then no paper left bare. */
function isBefore(a: Layout, b: Layout): number {
  const rank = ({ panel, worth }: Layout) => 2 * panel.roomy + (worth.good ? 1 : 0);
  const isFilled = ({ panel, floor }: Layout) => (panel.pocket === null || floor !== null ? 1 : 0);
  return scaleOf(b) - scaleOf(a) || rank(b) - rank(a) || scribingOf(b) - scribingOf(a) || isFilled(b) - isFilled(a);
}

/** Width of the view of the marks. */
function scribingOf({ views }: Layout): number {
  return views.sides.find(({ view }) => view.name === "marks-view")?.size.width ?? 0;
}

interface Sides {
  readonly pocketed: readonly PlacedSide[];
  readonly beside: Beside;
}

/** The side views beside the plan; and, where the column of tables leaves room at its foot, the setting section there. */
function sidesBeside(request: Prepared, { pocket }: Panel, lettering: Lettering, fullness: Fullness): readonly Sides[] {
  if (fullness === "bare" || fullness === "cut") return [{ pocketed: [], beside: NO_SIDES }];
  const { all, others, section } = sidesOf(request)(lettering);
  const placed = pocket === null || section === null ? null : sideInPocket(section, pocket, lettering);
  const usual = { pocketed: [], beside: all };
  return placed === null ? [usual] : [{ pocketed: [placed], beside: others }, usual];
}

/** Views that stand beside the plan, and the sizes that may be chosen of them. */
interface Beside {
  readonly sides: readonly SideView[];
  readonly choices: readonly SideChoice[];
}

/** All side views, of a piece without the setting section, of a plate in segments without the marks that their sheets show; and those that are left where the setting section stands elsewhere. */
const sidesOf = onceFor((request: Prepared) =>
  once((lettering: Lettering) => {
    const section = request.piece === null ? settingSection(request, lettering) : null;
    const marks = request.plate.parted === null ? marksView(request, lettering) : null;
    const others = marks === null ? [] : [marks];
    const beside = (sides: readonly SideView[]): Beside => ({ sides, choices: sideChoices(sides, lettering) });
    return { all: beside(section === null ? others : [...others, section]), others: beside(others), section };
  }),
);

const NOTHING = { width: 0, height: 0 } as const;
const NO_SIDES: Beside = { sides: [], choices: [{ sizes: [], rank: 0, widths: [], row: NOTHING, column: NOTHING }] };

/** Diameter of the smallest rod hole, real millimetres. */
const smallestHole = onceFor(({ plate }: Prepared) =>
  leastOf(
    plate.holes
      .filter(({ role }) => role === "rod")
      .map(({ shape }) => (shape.kind === "circle" ? shape.diameter / 1e6 : Infinity)),
    Infinity,
  ),
);

function worthOf(request: Prepared, views: ViewsLayout, need: PlanNeed): Worth {
  const { factor } = views.scale;
  const hole = factor === 1 ? LEAST_HOLE : Math.min(LEAST_HOLE, smallestHole(request) * factor);
  const { area, side } = sharesOf(views, need);
  const { width, height } = need.plate;
  const isLong = Math.max(width, height) >= ELONGATED * Math.min(width, height);
  const fills = area >= LEAST_SHARE || (isLong && side >= LEAST_SIDE) || factor === 1;
  return { hole, share: area, good: fills && hole >= LEAST_HOLE };
}

function frameAround(request: Prepared, reach: Reach, lettering: Lettering, inside: Area, panel: Panel): Frame {
  const area = {
    x0: inside.x0 + VIEWS_MARGIN,
    y0: inside.y0 + VIEWS_MARGIN,
    x1: panel.left - VIEWS_MARGIN,
    y1: inside.y1 - VIEWS_MARGIN,
  };
  const width = area.x1 - area.x0;
  const head = banners(request, width, lettering);
  const y0 = panel.foot.reduce((y, { height }) => y + height + FOOT_GAP, area.y0);
  const y1 = head.reduce((y, { height }) => y - height, area.y1);
  const corner = cornerOf(request)(lettering)(reach);
  return { area, head, foot: panel.foot, corner, room: { ...area, y0, y1 } };
}

/** Between the pieces at the foot of the drawing area. */
export const FOOT_GAP = 2.5;

const cornerOf = onceFor((request: Prepared) =>
  once((lettering: Lettering) =>
    once((reach: Reach) => {
      const { drawn, omitted } = nearIn(request, reach);
      return legendBlock(drawn, omitted, request.job.unit, lettering);
    }),
  ),
);
