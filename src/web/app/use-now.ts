/** State of a view that those who act on it find as it is now, not as it was last drawn: a field that is gone takes nothing more. */
import { useRef, useState } from "preact/hooks";

/** What is drawn, what it is at this moment, and how it is set. */
export interface Now<T> {
  readonly drawn: T;
  get(): T;
  set(next: T): void;
}

/** As `useState`, with a look at what was set since. */
export function useNow<T>(first: T): Now<T> {
  const [drawn, draw] = useState(first);
  const now = useRef(first);
  return {
    drawn,
    get: () => now.current,
    set: (next) => {
      now.current = next;
      draw(() => next);
    },
  };
}
