/** The room of a drawing on the screen, in paper millimetres, as it is laid out. */
import { useEffect, useState } from "preact/hooks";
import type { Room } from "../../sheets/on-screen.js";
import { DOTS_PER_MM } from "./places.js";

/** Tells the room of an element, and whenever it is another; the call back ends it. */
export function watchRoom(element: HTMLElement, tell: (room: Room) => void): () => void {
  let last: Room = { width: 0, height: 0 };
  const watch = new ResizeObserver(() => {
    const { clientWidth, clientHeight } = element;
    const room = { width: clientWidth / DOTS_PER_MM, height: clientHeight / DOTS_PER_MM };
    if (clientWidth === 0 || clientHeight === 0) return;
    if (room.width === last.width && room.height === last.height) return;
    last = room;
    tell(room);
  });
  watch.observe(element);
  return () => watch.disconnect();
}

/** null until it is laid out. */
export function useRoom(place: { readonly current: HTMLElement | null }): Room | null {
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => (place.current === null ? undefined : watchRoom(place.current, setRoom)), [place]);
  return room;
}
