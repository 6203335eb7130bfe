/** A press beside a field that is open. */
import type { RefObject } from "preact";
import { useLayoutEffect } from "preact/hooks";

/** Acts on a press of mouse, pen or finger anywhere but in the form, before what is pressed acts. */
export function useAway(form: RefObject<HTMLFormElement | null>, act: () => void): void {
  useLayoutEffect(() => {
    const pressed = ({ target }: PointerEvent): void => {
      const element = form.current;
      if (element !== null && target instanceof Node && !element.contains(target)) act();
    };
    document.addEventListener("pointerdown", pressed, { capture: true });
    return () => document.removeEventListener("pointerdown", pressed, { capture: true });
  });
}
