/** The working point: a target in which two quarters are filled, and its name beside it. */
import type { Hole } from "../template/model.js";
import { holeCrossed } from "./hole-gaps.js";
import { at, circle, fill, group, line, stroke, text } from "./items.js";
import { countCrossings, crossesText, type TextItem } from "./occupied.js";
import { type Draft, hasRoom, put } from "./paper.js";
import type { View } from "./plan-shapes.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";

/** Of the target, millimetres on paper. */
export const POINT_RADIUS = 1.5;

/** Draws the target and its name, `W.P.` or what the origin is called: beside it where there is room, else farther off with a leader through no hole but its own. */
export function putWorkingPoint(
  draft: Draft,
  view: View,
  holes: readonly Hole[],
  { small }: Lettering,
  name: string,
): void {
  const { x, y } = view.origin;
  const named = { words: name, letter: small };
  const label = besidePoint(draft, view.origin, named) ?? ledAway(draft, view, holes, named) ?? [];
  put(draft, group("working-point", [...targetItems(view.origin), ...label], { x, y }));
}

/** Draws the target, and its name beside it or with a leader that crosses as little as it can, and none of these holes; false where there is no room. */
export function putPointBeside(
  draft: Draft,
  view: View,
  holes: readonly Hole[],
  { small }: Lettering,
  name: string,
): boolean {
  const { origin } = view;
  const named = { words: name, letter: small };
  const label = besidePoint(draft, origin, named) ?? ledAway(draft, view, holes, named);
  put(draft, group("working-point", [...targetItems(origin), ...(label ?? [])], { x: origin.x, y: origin.y }));
  return label !== null;
}

function targetItems(origin: PaperPoint): readonly SceneItem[] {
  return [
    stroke("fine", circle(origin, POINT_RADIUS)),
    fill("bar", ...quarter(origin, 0)),
    fill("bar", ...quarter(origin, Math.PI)),
  ];
}

function quarter(center: PaperPoint, start: number): readonly PaperPoint[] {
  const rim = Array.from({ length: 7 }, (_, k) => {
    const angle = start + (k * Math.PI) / 12;
    return at(center.x + POINT_RADIUS * Math.cos(angle), center.y + POINT_RADIUS * Math.sin(angle));
  });
  return [center, ...rim];
}

/** The name of the point and the height of its letters. */
interface Named {
  readonly words: string;
  readonly letter: number;
}

const QUARTERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

function besidePoint(draft: Draft, { x, y }: PaperPoint, { words, letter }: Named): readonly SceneItem[] | null {
  for (const away of [1.2, 1.9, 2.6])
    for (const [sx, sy] of QUARTERS) {
      const place = at(x + sx * away, sy > 0 ? y + away : y - away - letter);
      const item = text("label", words, place, letter, { anchor: sx > 0 ? "start" : "end" });
      if (hasRoom(draft, item, 0.4)) return [item];
    }
  return null;
}

const LONGEST = 60;

/** The place with the least crossed of the nearest ones; a line from the name to the target's rim. */
function ledAway(draft: Draft, view: View, holes: readonly Hole[], named: Named): readonly SceneItem[] | null {
  let best: { readonly items: readonly SceneItem[]; readonly cost: number } | null = null;
  for (let away = 5; away <= LONGEST && (best === null || away < best.cost); away += 2.5)
    for (const degrees of [225, 315, 135, 45, 205, 335, 155, 25, 245, 295, 115, 65]) {
      const led = ledFrom(draft, view.origin, named, away, (degrees * Math.PI) / 180);
      if (led === null || (best !== null && led.cost >= best.cost)) continue;
      if (!holes.some((hole) => holeCrossed(view, hole, led.rim, led.end))) best = led;
    }
  return best?.items ?? null;
}

function ledFrom(draft: Draft, { x, y }: PaperPoint, { words, letter }: Named, away: number, turn: number) {
  const [dx, dy] = [Math.cos(turn), Math.sin(turn)];
  const end = at(x + dx * away, y + dy * away);
  const item: TextItem = text("label", words, at(end.x + Math.sign(dx), end.y - letter / 2), letter, {
    anchor: dx > 0 ? "start" : "end",
  });
  if (!hasRoom(draft, item, 0.6)) return null;
  const rim = at(x + dx * POINT_RADIUS, y + dy * POINT_RADIUS);
  if (crossesText(draft.taken, rim, end)) return null;
  const { hard, soft } = countCrossings(draft.taken, rim, end);
  return { rim, end, items: [stroke("leader", line(rim, end)), item], cost: away + 6 * hard + soft };
}
