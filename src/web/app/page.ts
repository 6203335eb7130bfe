/** What every part of the page stands on: the state, and what can be done. */
import { createContext } from "preact";
import { useContext, useLayoutEffect, useReducer } from "preact/hooks";
import type { Actions } from "../state/actions.js";
import type { PageState } from "../state/model.js";
import type { Store } from "../state/store.js";

/** Handed down to every part. */
export interface Page {
  readonly store: Store;
  readonly actions: Actions;
}

/** Set once, in `main.tsx`. */
export const PageContext = createContext<Page | null>(null);

/** What can be done. */
export function useActions(): Actions {
  return usePage().actions;
}

/** A part of the state; who uses it is drawn again when it is another one. It listens from the moment that it is drawn. */
export function usePart<T>(part: (state: PageState) => T): T {
  const { store } = usePage();
  const [, again] = useReducer((count: number, _changed: null) => count + 1, 0);
  const now = part(store.get());
  useLayoutEffect(() => {
    let seen = now;
    return store.subscribe(() => {
      const next = part(store.get());
      if (Object.is(next, seen)) return;
      seen = next;
      again(null);
    });
  });
  return now;
}

/** Looks at the state as it is now, for who waited for an action to end. */
export function useLook(): () => PageState {
  return usePage().store.get;
}

function usePage(): Page {
  const page = useContext(PageContext);
  if (page === null) throw new Error("a part of the page stands outside it");
  return page;
}
