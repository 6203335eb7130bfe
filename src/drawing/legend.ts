/** Foot of the drawing area: a bar to check the print's scale, and what the phantom lines are. */
import { formatLength, type Unit } from "../units/index.js";
import { at, fill, group, line, rectangle, stroke, text } from "./items.js";
import type { Neighbour } from "./plan-shapes.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { textWidth } from "./text-metrics.js";

/** Height of the foot. */
export function footHeight(lettering: Lettering): number {
  return lettering.small * 2 + 7;
}

/** Steps of 1 in or 25 mm, black and white in turn, with figures under them. */
export function scaleBar(x: number, y: number, unit: Unit, lettering: Lettering): SceneItem {
  const step = unit === "in" ? 25.4 : 25;
  const steps = unit === "in" ? 3 : 3;
  const { small } = lettering;
  const low = y + small + 1.6;
  const high = low + 2;
  const end = x + steps * step;
  const word = unit === "in" ? `${steps} in` : `${steps * 25} mm`;
  const figures = Array.from({ length: steps + 1 }, (_, i) =>
    text("label", i === steps ? word : `${unit === "in" ? i : i * 25}`, at(x + i * step, y), small, {
      anchor: i === 0 ? "start" : "middle",
    }),
  );
  return group("scale-bar", [
    ...Array.from({ length: steps }, (_, i) => i)
      .filter((i) => i % 2 === 0)
      .map((i) =>
        fill(
          "bar",
          at(x + i * step, low),
          at(x + (i + 1) * step, low),
          at(x + (i + 1) * step, high),
          at(x + i * step, high),
        ),
      ),
    stroke("fine", ...rectangle(x, low, end, high)),
    ...figures,
    text("label", `PRINT CHECK: THIS BAR IS ${word.toUpperCase()} LONG`, at(x, high + 1.4), small),
  ]);
}

/** A sample of each phantom line beside what it stands for, right-aligned; whatever was not drawn is named as such. */
export function legend(
  right: number,
  y: number,
  neighbours: readonly Neighbour[],
  omitted: readonly Neighbour[],
  unit: Unit,
  lettering: Lettering,
): SceneItem {
  const { small } = lettering;
  const row = small * 1.9;
  const entries = [
    ...neighbours.map((neighbour) => ({ neighbour, drawn: true })),
    ...omitted.map((neighbour) => ({ neighbour, drawn: false })),
  ];
  const items = entries.flatMap(({ neighbour, drawn }, i) => {
    const words = `${neighbour.name} ${shapeWords(neighbour, unit)}${drawn ? "" : " (NOT DRAWN)"}`;
    const base = y + i * row;
    const left = right - textWidth(words, small);
    const role = neighbour.name === "BASE PLATE" ? "base-plate" : "concrete";
    const sample = drawn ? [stroke(role, line(at(left - 22, base + small / 2), at(left - 2, base + small / 2)))] : [];
    return [text("label", words, at(right, base), small, { anchor: "end" }), ...sample];
  });
  return group("legend", items);
}

function shapeWords({ shape }: Neighbour, unit: Unit): string {
  return shape.kind === "circle"
    ? `Ø${formatLength(shape.diameter, unit)}`
    : `${formatLength(shape.x, unit)} × ${formatLength(shape.y, unit)}`;
}
