/** Tags of rods and names of axes, laid over the canvas. */
import type { Placed } from "./stage.js";

/** Room that a tag takes, dots. */
const TAG = { width: 30, height: 17 };

/** Each at its place; of tags that would lie over each other, the nearest. */
export function layTags(tags: HTMLElement, places: readonly Placed[], room: HTMLElement): void {
  while (tags.children.length < places.length) tags.append(document.createElement("span"));
  while (tags.children.length > places.length) tags.lastElementChild?.remove();
  const laid: Placed[] = [];
  const nearest = places.map((place, index) => ({ place, index })).toSorted((a, b) => a.place.depth - b.place.depth);
  for (const { place, index } of nearest) {
    const span = tags.children[index];
    if (!(span instanceof HTMLSpanElement)) continue;
    const isSeen = isInside(place, room) && laid.every((other) => !isOver(place, other));
    span.hidden = !isSeen;
    if (!isSeen) continue;
    laid.push(place);
    span.textContent = place.text;
    span.style.transform = `translate(${place.x}px, ${place.y}px) translate(-50%, ${place.isAxis ? "-50%" : "-130%"})`;
  }
}

function isInside({ x, y }: Placed, { clientWidth, clientHeight }: HTMLElement): boolean {
  return x > 0 && x < clientWidth && y > 0 && y < clientHeight;
}

function isOver(one: Placed, other: Placed): boolean {
  return Math.abs(one.x - other.x) < TAG.width && Math.abs(one.y - other.y) < TAG.height;
}
