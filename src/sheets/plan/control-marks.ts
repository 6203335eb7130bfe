/** Control points on the plan: a triangle with its point named beside. */
import { pointAt } from "../../geometry/index.js";
import { siteToPlan } from "../../plan/index.js";
import { at, group, line, stroke, text } from "../items.js";
import { type Draft, hasRoom, put } from "../paper.js";
import type { PaperPoint, PathPart } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import { type PlanPage, paperOf } from "./page.js";

const RADIUS = 2.6;

/** Those control points whose place on the plan is known and lies on this sheet; false where there is none. */
export function putControlPoints(draft: Draft, page: PlanPage): boolean {
  const shown = placesOf(page)
    .map(({ name, point }) => ({ name, place: paperOf(page, point) }))
    .filter(({ place }) => isOnSheet(page, place));
  for (const { name, place } of shown) {
    put(draft, group("control-point", [stroke("hole", ...triangle(place))], { name }));
    putName(draft, page, name, place);
  }
  return shown.length > 0;
}

/** Near the window: beside it stand dimensions and bubbles. */
function isOnSheet({ window: { x0, y0, x1, y1 } }: PlanPage, { x, y }: PaperPoint): boolean {
  return x >= x0 && x <= x1 + 10 && y >= y0 - 10 && y <= y1;
}

function placesOf({ request }: PlanPage) {
  const { control, transform } = request.plan;
  return control.flatMap(({ name, plan, northing, easting }) => {
    if (plan.kind === "given") return [{ name, point: pointAt(plan.value.x, plan.value.y) }];
    return transform === null ? [] : [{ name, point: siteToPlan(transform, { northing, easting }) }];
  });
}

function triangle({ x, y }: PaperPoint): readonly PathPart[] {
  const corner = (degrees: number) => {
    const angle = (degrees * Math.PI) / 180;
    return at(x + RADIUS * Math.cos(angle), y + RADIUS * Math.sin(angle));
  };
  const [a, b, c] = [corner(90), corner(210), corner(330)];
  return [
    line(a, b),
    line(b, c),
    line(c, a),
    line(at(x - 0.6, y), at(x + 0.6, y)),
    line(at(x, y - 0.6), at(x, y + 0.6)),
  ];
}

function putName(draft: Draft, page: PlanPage, name: string, { x, y }: PaperPoint): void {
  const letter = page.lettering.small;
  const width = textWidth(name, letter, true);
  for (const place of [
    at(x + RADIUS + 0.8, y - letter / 2),
    at(x - RADIUS - 0.8 - width, y - letter / 2),
    at(x - width / 2, y + RADIUS + 0.8),
    at(x - width / 2, y - RADIUS - letter),
    at(x + RADIUS + 0.8, y + RADIUS),
    at(x + RADIUS + 0.8, y - RADIUS - letter),
  ]) {
    const label = text("label", name, place, letter, { bold: true });
    if (!hasRoom(draft, label)) continue;
    put(draft, label);
    return;
  }
}
