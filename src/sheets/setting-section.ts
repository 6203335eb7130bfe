/**
 * Setting section: a schematic cut through one rod, as it stands when the concrete is placed, and beside it as it stands under
 * the column. Not to scale: heights follow the order of things, figures say how much. Everything is set out in letter heights.
 */
import type { RodGroup } from "../job/model/job.js";
import { group } from "./items.js";
import type { Area } from "./paper.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import { placedFigure } from "./section-figure.js";
import type { Figure } from "./section-shapes.js";
import { isStackKnown, standingFigure } from "./section-stack.js";
import type { Lettering } from "./sheet-sizes.js";
import type { SideView, ViewSize } from "./side-view.js";

/** Figures side by side with their tops of concrete on one line, or one under the other. */
interface Arrangement extends ViewSize {
  readonly places: readonly { readonly figure: Figure; readonly x: number; readonly y: number }[];
}

/** The section through a rod of the first group. */
export function settingSection(request: SheetRequest, lettering: Lettering): SideView {
  const [first] = request.base.groups;
  if (first === undefined) throw new RangeError("a base without rods");
  const arrangements = arrange(request, first, lettering);
  const under = underWords(request, first);
  return {
    name: "setting-section",
    title: "SETTING SECTION",
    under: () => under,
    sizes: arrangements.map(({ width, height }) => ({ width, height })),
    draw: (area, size) => {
      const chosen = arrangements.find((each) => each.width === size.width && each.height === size.height);
      return chosen === undefined ? [] : [drawArranged(chosen, area)];
    },
  };
}

function underWords({ base }: SheetRequest, own: RodGroup): string {
  return [
    ...(base.groups.length === 1 ? [] : [`GROUP ${own.letter}, RODS ${own.rod.size}`]),
    ...(isStackKnown(base, own) ? [] : ["GROUT AND BASE PLATE NOT GIVEN"]),
    "NOT TO SCALE",
  ].join("; ");
}

/** Widths of labels in letter heights: on one or two lines, and as narrow as the longest word allows. */
const LABELS = [24, 13] as const;

function arrange(request: SheetRequest, first: RodGroup, { small }: Lettering): readonly Arrangement[] {
  const placed = placedFigure(request, first, small);
  const gap = 2 * small;
  const [wide, narrow] = LABELS.map((width) => standingFigure(request, first, small, width * small));
  if (wide === undefined || narrow === undefined || wide === null || narrow === null) return [alone(placed)];
  return [beside(placed, wide, gap), beside(placed, narrow, gap), below(placed, narrow, gap)];
}

function alone(figure: Figure): Arrangement {
  const { x0, y0, x1, y1 } = figure.extent;
  return { width: x1 - x0, height: y1 - y0, places: [{ figure, x: -x0, y: -y0 }] };
}

function beside(left: Figure, right: Figure, gap: number): Arrangement {
  const [a, b] = [left.extent, right.extent];
  const low = Math.min(a.y0, b.y0);
  const shift = a.x1 - a.x0 + gap;
  return {
    width: shift + b.x1 - b.x0,
    height: Math.max(a.y1, b.y1) - low,
    places: [
      { figure: left, x: -a.x0, y: -low },
      { figure: right, x: shift - b.x0, y: -low },
    ],
  };
}

function below(upper: Figure, lower: Figure, gap: number): Arrangement {
  const [a, b] = [upper.extent, lower.extent];
  const width = Math.max(a.x1 - a.x0, b.x1 - b.x0);
  const height = b.y1 - b.y0 + gap;
  return {
    width,
    height: height + a.y1 - a.y0,
    places: [
      { figure: upper, x: (width - a.x1 - a.x0) / 2, y: height - a.y0 },
      { figure: lower, x: (width - b.x1 - b.x0) / 2, y: -b.y0 },
    ],
  };
}

function drawArranged({ places, width, height }: Arrangement, area: Area): SceneItem {
  const x0 = (area.x0 + area.x1 - width) / 2;
  const y0 = (area.y0 + area.y1 - height) / 2;
  return group(
    "setting-section",
    places.flatMap(({ figure, x, y }) => figure.draw(x0 + x, y0 + y)),
  );
}
