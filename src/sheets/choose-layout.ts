/** Where everything could stand on a sheet, by arithmetic alone: tables, views, the scale of the plan. */
import type { Extent } from "../geometry/vocabulary.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { banners } from "./banner.js";
import { insideBorder } from "./border.js";
import { calloutsOf, widestCallout } from "./callouts.js";
import { chainMargins } from "./chains.js";
import { needsHoleTable } from "./hole-table.js";
import { type Block, legendBlock } from "./legend.js";
import type { ChainMode } from "./located.js";
import { marksView } from "./marks-view.js";
import { type Neighbour, neighboursOf } from "./neighbours.js";
import { once, onceFor } from "./once.js";
import { type Fullness, layoutPanels, type Panel, VIEWS_MARGIN } from "./panel.js";
import type { Area } from "./paper.js";
import type { PlanInput } from "./plan-view.js";
import type { Prepared } from "./request.js";
import { settingSection } from "./setting-section.js";
import { type Lettering, type SheetSize, scales } from "./sheet-sizes.js";
import type { SideView } from "./side-view.js";
import type { Piece } from "./table.js";
import { arrangeViews, type PlanNeed, sharesOf, sideChoices, type ViewsLayout } from "./views.js";

/** One way to lay out a sheet. */
export interface Layout {
  readonly sheet: SheetSize;
  readonly mode: ChainMode;
  readonly fullness: Fullness;
  readonly panel: Panel;
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
export const LEAST_HOLE = 4;
/** Share of the plan's paper that a plate takes on a sheet that is not too large for it. */
const LEAST_SHARE = 0.25;
/** A plate so much longer than wide takes this share of the longer side instead. */
const [ELONGATED, LEAST_SIDE] = [2, 0.6];

/** All layouts of a sheet in one chain mode: the largest scale first, then the one that is simplest for the tables. */
export function layoutsOn(request: Prepared, sheet: SheetSize, mode: ChainMode, fullness: Fullness): readonly Layout[] {
  const { lettering } = sheet;
  const inside = insideBorder(sheet);
  const panels = layoutPanels(request, sheet, inside, mode, fullness);
  if (panels.length === 0) return [];
  const { plan, need } = planOf(request)(lettering)(mode);
  const beside = fullness === "bare" ? NO_SIDES : sidesOf(request)(lettering);
  const usual = scales(request.job.unit);
  const layouts = panels.flatMap((panel) => {
    const frame = frameAround(request, lettering, inside, panel);
    const input = { need, ...beside, corner: frame.corner, scales: usual, lettering };
    return arrangeViews(frame.room, input).map(
      (views): Layout => ({
        ...{ sheet, mode, fullness, panel, frame, plan, need, views },
        worth: worthOf(request, views, need),
      }),
    );
  });
  const roomy = ({ panel }: Layout) => (panel.roomy ? 1 : 0);
  return layouts.sort((a, b) => b.views.scale.factor - a.views.scale.factor || roomy(b) - roomy(a));
}

/** The views beside the plan, and the sizes that may be chosen of them. */
const sidesOf = onceFor((request: Prepared) =>
  once((lettering: Lettering) => {
    const sides = sideViews(request, lettering);
    return { sides, choices: sideChoices(sides, lettering) };
  }),
);

const NO_SIDES: ReturnType<ReturnType<typeof sidesOf>> = { sides: [], choices: [{ sizes: [], rank: 0, widths: [] }] };

function sideViews(request: Prepared, lettering: Lettering): readonly SideView[] {
  const marks = marksView(request, lettering);
  return [...(marks === null ? [] : [marks]), settingSection(request, lettering)];
}

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

function frameAround(request: Prepared, lettering: Lettering, inside: Area, panel: Panel): Frame {
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
  const corner = cornerOf(request)(lettering);
  return { area, head, foot: panel.foot, corner, room: { ...area, y0, y1 } };
}

/** Between the pieces at the foot of the drawing area. */
export const FOOT_GAP = 2.5;

const nearOf = onceFor((request: Prepared) => neighboursOf(request));
const calledOf = onceFor((request: Prepared) => calloutsOf(request));

const cornerOf = onceFor((request: Prepared) =>
  once((lettering: Lettering) => {
    const { drawn, omitted } = nearOf(request);
    return legendBlock(drawn, omitted, request.job.unit, lettering);
  }),
);

/** What the plan is drawn from, and the paper that it needs, whatever the sheet. */
const planOf = onceFor((request: Prepared) =>
  once((lettering: Lettering) =>
    once((mode: ChainMode) => {
      const plan = planInput(request, lettering, mode);
      return { plan, need: planNeed(request, plan) };
    }),
  ),
);

function planInput(request: Prepared, lettering: Lettering, mode: ChainMode): PlanInput {
  const { plate, base, job, measures } = request;
  const { drawn } = nearOf(request);
  return {
    plate,
    base,
    unit: job.unit,
    plateExtent: measures.extent,
    drawn: drawnExtent(measures.extent, drawn),
    neighbours: drawn,
    lettering,
    mode,
    tagAll: needsHoleTable(request, mode),
    demand: "good",
    callouts: calledOf(request),
  };
}

/** Lettered size of a callout's block: lines are 1.7 letters apart, and stand clear of their neighbours. */
const [LEADING, CLEARANCE] = [1.7, 4];

function planNeed({ measures }: Prepared, plan: PlanInput): PlanNeed {
  const { body } = plan.lettering;
  const { extent } = measures;
  const { drawn } = plan;
  const { callouts } = plan;
  const heights = callouts.map(({ lines }) => lines.length * LEADING * body + CLEARANCE);
  return {
    drawn: { width: drawn.x1 - drawn.x0, height: drawn.y1 - drawn.y0 },
    plate: { width: extent.x1 - extent.x0, height: extent.y1 - extent.y0 },
    margins: once((factor: number) => chainMargins(plan, factor)),
    callouts: {
      width: widestCallout(callouts, body) + 4 * body,
      height: heights.reduce((sum, height) => sum + height, 0),
    },
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
