/** Turns, moves and zooms by pointer, wheel, two fingers and keys. */
import { moved, turned, type ViewPoint, zoomed } from "./view-point.js";

/** Who holds the view point. */
export interface Eye {
  get(): ViewPoint;
  set(view: ViewPoint): void;
  whole(): void;
}

/** Degrees to a dot of the pointer's way, and to one press of a key. */
const BY_DOT = 0.4;
const BY_KEY = 5;
/** Nearer by a press of a key, and by a dot of the wheel. */
const ZOOM_KEY = 1.15;
const ZOOM_DOT = 1.0015;

interface Touch {
  readonly x: number;
  readonly y: number;
}

/** Listens on an element until what it gives is called. */
export function startOrbit(element: HTMLElement, eye: Eye): () => void {
  const touches = new Map<number, Touch>();
  const end = new AbortController();
  const { signal } = end;
  element.addEventListener(
    "pointerdown",
    (event) => {
      element.setPointerCapture(event.pointerId);
      touches.set(event.pointerId, touchOf(element, event));
    },
    { signal },
  );
  element.addEventListener(
    "pointermove",
    (event) => {
      const before = touches.get(event.pointerId);
      if (before === undefined) return;
      const now = touchOf(element, event);
      const other = [...touches].find(([id]) => id !== event.pointerId)?.[1];
      touches.set(event.pointerId, now);
      const isMove = event.shiftKey || event.buttons === 2 || event.buttons === 4;
      eye.set(afterWay(eye.get(), element, before, now, other ?? null, isMove));
    },
    { signal },
  );
  for (const name of ["pointerup", "pointercancel"] as const)
    element.addEventListener(name, ({ pointerId }) => touches.delete(pointerId), { signal });
  element.addEventListener("contextmenu", (event) => event.preventDefault(), { signal });
  element.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      const dots = event.deltaMode === 0 ? event.deltaY : event.deltaY * 33;
      eye.set(zoomed(eye.get(), ZOOM_DOT ** -dots, placeOf(element, touchOf(element, event))));
    },
    { signal, passive: false },
  );
  element.addEventListener("keydown", (event) => byKey(event, eye), { signal });
  return () => end.abort();
}

function touchOf(element: HTMLElement, { clientX, clientY }: MouseEvent): Touch {
  const { left, top } = element.getBoundingClientRect();
  return { x: clientX - left, y: clientY - top };
}

/** From the middle of the room, in rooms. */
function placeOf({ clientWidth, clientHeight }: HTMLElement, { x, y }: Touch): { right: number; up: number } {
  return { right: x / clientWidth - 0.5, up: 0.5 - y / clientHeight };
}

/** One finger turns; two move and zoom. */
function afterWay(
  view: ViewPoint,
  element: HTMLElement,
  before: Touch,
  now: Touch,
  other: Touch | null,
  isMove: boolean,
): ViewPoint {
  const [x, y] = [now.x - before.x, now.y - before.y];
  const way = { right: x / element.clientWidth, up: -y / element.clientHeight };
  if (other !== null) {
    const by = distance(now, other) / Math.max(1, distance(before, other));
    const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
    return moved(zoomed(view, by, placeOf(element, middle)), way.right / 2, way.up / 2);
  }
  return isMove ? moved(view, way.right, way.up) : turned(view, -x * BY_DOT, y * BY_DOT);
}

function distance(a: Touch, b: Touch): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Arrows turn, with the shift key they move; plus and minus zoom; Home shows the whole. */
function byKey(event: KeyboardEvent, eye: Eye): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const next = afterKey(eye.get(), event);
  if (next === null && event.key !== "Home") return;
  event.preventDefault();
  if (next === null) eye.whole();
  else eye.set(next);
}

function afterKey(view: ViewPoint, { key, shiftKey }: KeyboardEvent): ViewPoint | null {
  const arrow = ARROWS[key];
  if (arrow !== undefined) {
    const [right, up] = arrow;
    return shiftKey ? moved(view, right * 0.04, up * 0.04) : turned(view, right * BY_KEY, up * BY_KEY);
  }
  const middle = { right: 0, up: 0 };
  if (key === "+" || key === "=") return zoomed(view, ZOOM_KEY, middle);
  return key === "-" ? zoomed(view, 1 / ZOOM_KEY, middle) : null;
}
