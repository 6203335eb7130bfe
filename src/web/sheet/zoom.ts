/** How the drawing lies in its window: how many times as large as it was drawn, and how far moved, in dots. */

/** 1, 0, 0: as it was drawn, the whole of it in the window. */
export interface Zoom {
  readonly times: number;
  readonly x: number;
  readonly y: number;
}

/** A size in dots. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The whole drawing. */
export const WHOLE: Zoom = { times: 1, x: 0, y: 0 };

/** One press of a key or button. */
export const STEP = 1.25;
const MOST = 16;

/** Larger or smaller by a factor, the point of the window at `x, y` staying where it is. */
export function zoomed(zoom: Zoom, factor: number, at: { readonly x: number; readonly y: number }, size: Size): Zoom {
  const times = Math.min(MOST, Math.max(1, zoom.times * factor));
  const ratio = times / zoom.times;
  return kept({ times, x: at.x - (at.x - zoom.x) * ratio, y: at.y - (at.y - zoom.y) * ratio }, size);
}

/** Moved by so many dots; the drawing always covers its window. */
export function moved({ times, x, y }: Zoom, dx: number, dy: number, size: Size): Zoom {
  return kept({ times, x: x + dx, y: y + dy }, size);
}

function kept({ times, x, y }: Zoom, { width, height }: Size): Zoom {
  const clamp = (value: number, side: number) => Math.min(0, Math.max(side * (1 - times), value)) || 0;
  return { times, x: clamp(x, width), y: clamp(y, height) };
}

/** Moved no farther than is needed for a box of the drawing, in its own dots, to be in the window. */
export function shown(
  zoom: Zoom,
  box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number },
  size: Size,
): Zoom {
  const shift = (low: number, high: number, offset: number, side: number) => {
    const [from, to] = [low * zoom.times + offset, high * zoom.times + offset];
    return from < EDGE ? EDGE - from : to > side - EDGE ? side - EDGE - to : 0;
  };
  return moved(
    zoom,
    shift(box.left, box.right, zoom.x, size.width),
    shift(box.top, box.bottom, zoom.y, size.height),
    size,
  );
}

const EDGE = 12;
