/** Holds the state of the page and tells who listens. */
import { UNTOUCHED } from "./left.js";
import type { PageState } from "./model.js";
import { NO_WORKS } from "./work.js";

/** The one place of state. */
export interface Store {
  get(): PageState;
  /** What of it changed; the rest stays. */
  set(change: Partial<PageState>): void;
  subscribe(listener: () => void): () => void;
}

const FIRST: PageState = {
  view: "begin",
  job: null,
  live: null,
  base: null,
  sheet: null,
  room: { width: 200, height: 150 },
  pointed: null,
  goal: null,
  drafts: {},
  left: UNTOUCHED,
  keeping: { kind: "kept" },
  kept: [],
  asking: null,
  beginning: { kind: "choice" },
  begun: [],
  works: NO_WORKS,
  changing: false,
  working: false,
  notices: [],
};

/** A store that knows nothing yet. */
export function startStore(): Store {
  let state = FIRST;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set: (change) => {
      state = { ...state, ...change };
      for (const listener of [...listeners]) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}
