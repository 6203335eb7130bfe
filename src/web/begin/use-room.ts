/** The room of a drawing on the screen, in paper millimetres, as it is laid out. */
import { useEffect, useState } from "preact/hooks";
import type { Room } from "../../sheets/on-screen.js";

/** Paper millimetres of a screen: 96 dots to the inch, as style sheets have them. */
const MM_PER_DOT = 25.4 / 96;

/** null until it is laid out. */
export function useRoom(place: { readonly current: HTMLElement | null }): Room | null {
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => {
      const { clientWidth, clientHeight } = element;
      if (clientWidth > 0) setRoom({ width: clientWidth * MM_PER_DOT, height: clientHeight * MM_PER_DOT });
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, [place]);
  return room;
}
