/** What scrolls by itself: reached by keyboard, and named. */
import type { ComponentChildren, JSX } from "preact";

/** `look` is the class of its room. */
export function Scrolled({
  look,
  name,
  children,
}: {
  readonly look: "table-room" | "text-room";
  readonly name: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class={look} aria-label={name} tabIndex={0}>
      {children}
    </section>
  );
}
