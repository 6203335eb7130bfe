/** Zoom and pan by wheel, fingers, keys and buttons. */
import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { moved, type Size, STEP, shown, WHOLE, type Zoom, zoomed } from "./zoom.js";

/** What the window of a drawing listens with. */
export interface Zooming {
  readonly zoom: Zoom;
  set(change: Zoom | ((now: Zoom) => Zoom)): void;
  by(factor: number): void;
  whole(): void;
  size(): Size;
  readonly listeners: {
    onFocusIn(event: FocusEvent): void;
    onKeyDown(event: KeyboardEvent): void;
    onPointerDown(event: PointerEvent): void;
    onPointerMove(event: PointerEvent): void;
    onPointerUp(event: PointerEvent): void;
    onPointerCancel(event: PointerEvent): void;
  };
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** One press of an arrow, dots. */
const PAN = 40;

/** Listens at the window of a drawing. */
export function useZoom(window: RefObject<HTMLElement | null>): Zooming {
  const [zoom, set] = useState(WHOLE);
  const size = (): Size => ({ width: window.current?.clientWidth ?? 0, height: window.current?.clientHeight ?? 0 });
  const by = (factor: number) =>
    set((now) => zoomed(now, factor, { x: size().width / 2, y: size().height / 2 }, size()));
  useWheel(window, set, size);
  return {
    zoom,
    set,
    by,
    size,
    whole: () => set(WHOLE),
    listeners: {
      onFocusIn: ({ target }) => bringIn(window.current, target, set, size),
      onKeyDown: keysOf(by, set, size, zoom),
      ...usePointers(window, zoom, set, size),
    },
  };
}

/** What gets the keyboard comes into the window, moved no farther than it takes. */
function bringIn(window: HTMLElement | null, target: EventTarget | null, set: SetZoom, size: () => Size): void {
  if (window === null || !(target instanceof Element) || target.closest(".laid") === null) return;
  const [box, room] = [target.getBoundingClientRect(), window.getBoundingClientRect()];
  set((now) => {
    const along = (at: number): number => (at - room.left - now.x) / now.times;
    const down = (at: number): number => (at - room.top - now.y) / now.times;
    const own = { left: along(box.left), right: along(box.right), top: down(box.top), bottom: down(box.bottom) };
    return shown(now, own, size());
  });
}

type SetZoom = (change: Zoom | ((now: Zoom) => Zoom)) => void;

function keysOf(by: (factor: number) => void, set: SetZoom, size: () => Size, { times }: Zoom) {
  return (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
    const arrow = ARROWS[event.key];
    if (event.key === "+" || event.key === "=") by(STEP);
    else if (event.key === "-") by(1 / STEP);
    else if (event.key === "0") set(WHOLE);
    else if (arrow !== undefined && times > 1) set((now) => moved(now, arrow[0] * PAN, arrow[1] * PAN, size()));
    else return;
    event.preventDefault();
  };
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLInputElement || target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement
  );
}

/** The wheel is listened to by hand: a listener of Preact may not keep the page from scrolling. */
function useWheel(window: RefObject<HTMLElement | null>, set: SetZoom, size: () => Size): void {
  useEffect(() => {
    const element = window.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent): void => {
      if (isTyping(event.target)) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const at = { x: event.clientX - box.left, y: event.clientY - box.top };
      set((now) => zoomed(now, Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015)), at, size()));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [window]);
}

interface Touch {
  readonly x: number;
  readonly y: number;
}

/** A drag moves a drawing that is larger than its window; two fingers pinch it. */
function usePointers(window: RefObject<HTMLElement | null>, zoom: Zoom, set: SetZoom, size: () => Size) {
  const touches = useRef(new Map<number, Touch>());
  const place = (event: PointerEvent): Touch => {
    const box = window.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  };
  const forget = (event: PointerEvent): void => void touches.current.delete(event.pointerId);
  return {
    onPointerDown: (event: PointerEvent): void => {
      if (
        event.target instanceof Element &&
        event.target.closest("button, form, a") !== null &&
        event.pointerType === "mouse"
      )
        return;
      touches.current.set(event.pointerId, place(event));
    },
    onPointerMove: (event: PointerEvent): void => {
      const from = touches.current.get(event.pointerId);
      if (from === undefined) return;
      const to = place(event);
      const other = [...touches.current].find(([id]) => id !== event.pointerId)?.[1];
      touches.current.set(event.pointerId, to);
      if (other !== undefined) {
        const ratio =
          Math.hypot(to.x - other.x, to.y - other.y) / Math.max(1, Math.hypot(from.x - other.x, from.y - other.y));
        set((now) => zoomed(now, ratio, { x: (to.x + other.x) / 2, y: (to.y + other.y) / 2 }, size()));
      } else if (zoom.times > 1) set((now) => moved(now, to.x - from.x, to.y - from.y, size()));
    },
    onPointerUp: forget,
    onPointerCancel: forget,
  };
}
