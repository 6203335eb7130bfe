/** A bar of true lengths at the plan's scale, which still holds on a print that was reduced. */
import type { Unit } from "../../units/index.js";
import { at, fill, group, rectangle, stroke, text } from "../items.js";
import type { SceneItem } from "../scene.js";
import type { Lettering, Scale } from "../sheet-sizes.js";

/** Lengths of one step, in feet or metres. */
const STEPS = [1, 2, 5, 10, 20, 50, 100];
const COUNT = 4;
/** A step is at least this long on paper. */
const LEAST = 12;

/** The bar with its lower right corner at x, y. */
export function graphicScale(x: number, y: number, scale: Scale, unit: Unit, { small }: Lettering): SceneItem {
  const perUnit = (unit === "in" ? 304.8 : 1000) * scale.factor;
  const step = STEPS.find((length) => length * perUnit >= LEAST) ?? 100;
  const width = step * perUnit;
  const word = unit === "in" ? "ft" : "m";
  const left = x - COUNT * width - small * 3;
  const [low, high] = [y + small + 1.6, y + small + 3.6];
  const box = (i: number) => {
    const [from, to] = [left + i * width, left + (i + 1) * width];
    return fill("bar", at(from, low), at(to, low), at(to, high), at(from, high));
  };
  const marks = Array.from({ length: COUNT + 1 }, (_, i) => i);
  return group("graphic-scale", [
    ...marks.filter((i) => i % 2 === 0 && i < COUNT).map(box),
    stroke("fine", ...rectangle(left, low, left + COUNT * width, high)),
    ...marks.map((i) =>
      text("label", i === COUNT ? `${i * step} ${word}` : String(i * step), at(left + i * width, y), small, {
        anchor: "middle",
      }),
    ),
    text("label", "PLAN SCALE", at(left, high + 1.4), small),
  ]);
}
