/** The plate seen from its lower edge: thickness, and which face is the top. Stands under the plan, in projection with it. */

import type { Extent } from "../geometry/vocabulary.js";
import type { Plate } from "../template/model.js";
import { toMillimetres, type Unit } from "../units/index.js";
import { extension, lineSpacing, putRuns, type Run } from "./dimension.js";
import { arrowHead, at, group, line, rectangle, stroke, text } from "./items.js";
import { type Draft, put } from "./paper.js";
import { holeRadius, onPaper, type View } from "./plan-shapes.js";
import type { Lettering } from "./sheet-sizes.js";

/** Height that the edge view takes on paper: the thickness, and room for TOP above it and a dimension beside it. */
export function edgeViewHeight(plate: Plate, scale: number, lettering: Lettering): number {
  return toMillimetres(plate.thickness) * scale + 2 * (lettering.body + 4);
}

/** Draws it with its mid-height at `y`; x as in the plan above. False when the thickness finds no room. */
export function putEdgeView(
  draft: Draft,
  view: View,
  plate: Plate,
  extent: Extent,
  y: number,
  unit: Unit,
  lettering: Lettering,
): boolean {
  const low = onPaper(view, { x: extent.x0, y: 0 }).x;
  const high = onPaper(view, { x: extent.x1, y: 0 }).x;
  const half = (toMillimetres(plate.thickness) * view.scale) / 2;
  const outline = stroke("outline", ...rectangle(low, y - half, high, y + half));
  put(draft, group("edge-view", [outline, ...holeLines(view, plate, y, half), ...topArrow(low, y + half, lettering)]));
  const offset = lineSpacing(lettering.body).first;
  const run: Run = {
    p: at(high + offset, y - half),
    q: at(high + offset, y + half),
    value: plate.thickness,
    prefix: "",
    outside: ["q", "p"],
    short: "arrows outside",
  };
  put(draft, group("extensions", [extension(at(high, y - half), run.p), extension(at(high, y + half), run.q)]));
  return putRuns(draft, [run], unit, lettering.body);
}

/** Hole edges seen through the plate, and a centre line through each rod hole line. */
function holeLines(view: View, plate: Plate, y: number, half: number) {
  const rods = new Map(
    plate.holes.filter(({ role }) => role === "rod").map((hole) => [Math.round(hole.center.x * 1e6), hole]),
  );
  const centres = [...rods.values()].map((hole) => {
    const x = onPaper(view, hole.center).x;
    return line(at(x, y - half - 2), at(x, y + half + 2));
  });
  const edges =
    half < 1
      ? []
      : [...rods.values()].flatMap((hole) => {
          const x = onPaper(view, hole.center).x;
          const r = holeRadius(view, hole);
          return [line(at(x - r, y - half), at(x - r, y + half)), line(at(x + r, y - half), at(x + r, y + half))];
        });
  return [
    ...(edges.length > 0 ? [stroke("fine", ...edges)] : []),
    ...(centres.length > 0 ? [stroke("fine", ...centres)] : []),
  ];
}

/** TOP with a leader to the upper face, at the left of the plate. */
function topArrow(low: number, top: number, lettering: Lettering) {
  const letter = lettering.body;
  const level = top + letter * 1.1;
  const [elbow, tip] = [at(low - 2, level), at(low + letter, top)];
  const length = Math.hypot(tip.x - elbow.x, tip.y - elbow.y);
  return [
    stroke("leader", line(at(low - 4.5, level), elbow), line(elbow, tip)),
    arrowHead(tip, (tip.x - elbow.x) / length, (tip.y - elbow.y) / length, 2.4),
    text("label", "TOP", at(low - 5.5, level - letter / 2), letter, { anchor: "end", bold: true }),
  ];
}
