/** A button that keeps the keyboard while it can do nothing; a browser takes it from one that is disabled. */
import type { ComponentChildren, JSX } from "preact";

interface PressProps {
  /** It is there, can be reached, and does nothing for now. */
  readonly isOff: boolean;
  readonly class?: string;
  readonly title?: string | undefined;
  /** Left out where it sends its form. */
  readonly onPress?: () => unknown;
  readonly children: ComponentChildren;
}

/** For what is off for a while because it was pressed, as Undo at the first step, or what long work is begun by. */
export function Press({ isOff, onPress, children, ...rest }: PressProps): JSX.Element {
  return (
    <button
      {...rest}
      type={onPress === undefined ? "submit" : "button"}
      aria-disabled={isOff || undefined}
      onClick={(event) => {
        if (isOff) event.preventDefault();
        else onPress?.();
      }}
    >
      {children}
    </button>
  );
}
