/** What the view from above is drawn from, and the paper that it needs, on a sheet or on a screen. */
import type { Extent } from "../geometry/vocabulary.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { once, onceFor } from "../units/once.js";
import { calloutsOf, widestCallout } from "./callouts.js";
import { chainMargins } from "./chains.js";
import { needsHoleTable } from "./hole-table.js";
import type { ChainMode } from "./located.js";
import { closeNeighboursOf, type Neighbour, type Neighbours, neighboursOf } from "./neighbours.js";
import type { PlanInput } from "./plan-view.js";
import type { Prepared } from "./request.js";
import type { Lettering } from "./sheet-sizes.js";
import type { PlanNeed } from "./views.js";

/** How much of base plate and concrete the plan shows. */
export type Reach = "usual" | "close";

/** `close`: null where they cannot be cut off closer. */
export const nearOf = onceFor((request: Prepared) => {
  const usual = neighboursOf(request);
  return { usual, close: closeNeighboursOf(request, usual) };
});

/** The neighbours within this reach. */
export function nearIn(request: Prepared, reach: Reach): Neighbours {
  const { usual, close } = nearOf(request);
  return reach === "close" && close !== null ? close : usual;
}

const calledOf = onceFor((request: Prepared) => calloutsOf(request));

/** What the plan is drawn from, and the paper that it needs, whatever the sheet. */
export const planOf = onceFor((request: Prepared) =>
  once((lettering: Lettering) =>
    once((mode: ChainMode) =>
      once((reach: Reach) => {
        const plan = planInput(request, lettering, mode, reach);
        return { plan, need: planNeed(request, plan) };
      }),
    ),
  ),
);

function planInput(request: Prepared, lettering: Lettering, mode: ChainMode, reach: Reach): PlanInput {
  const { plate, base, job, measures } = request;
  const { drawn } = nearIn(request, reach);
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
    piece: request.piece,
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
