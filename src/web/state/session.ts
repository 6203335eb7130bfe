/** What a tab comes back to when it is loaded again. The browser may refuse to keep it: then it comes back to the beginning. */
import type { PageState, ViewName } from "./model.js";
import { VIEWS } from "./model.js";

/** The job that was open, what was looked at, and answers that were typed and not written yet. */
export interface Session {
  readonly id: string;
  readonly view: ViewName;
  readonly base: string | null;
  readonly drafts: PageState["drafts"];
}

/** Changes with the shape of what is written: what another version of the page wrote is not read. */
const SHAPE = 2;

const KEY = "rodplate open";
const BEGUN_KEY = "rodplate begun";

/** null: nothing was open. */
export function readSession(): Session | null {
  try {
    const value = JSON.parse(sessionStorage.getItem(KEY) ?? "null") as (Session & { readonly shape: number }) | null;
    if (value?.shape !== SHAPE) return null;
    return { ...value, view: VIEWS.find((name) => name === value.view) ?? "template" };
  } catch {
    return null;
  }
}

/** Put down for the next loading of this tab. */
export function writeSession(session: Session | null): void {
  try {
    if (session === null) sessionStorage.removeItem(KEY);
    else sessionStorage.setItem(KEY, JSON.stringify({ shape: SHAPE, ...session }));
  } catch {
    // refused, as the rest of the browser's storage then is, which the job's line tells
  }
}

/** Under which id what the tab had begun is kept; null: nothing, or the browser keeps it not. */
export function readBegunId(): string | null {
  try {
    return sessionStorage.getItem(BEGUN_KEY);
  } catch {
    return null;
  }
}

/** Put down for the next loading of this tab. */
export function writeBegunId(id: string | null): void {
  try {
    if (id === null) sessionStorage.removeItem(BEGUN_KEY);
    else sessionStorage.setItem(BEGUN_KEY, id);
  } catch {
    // refused, as the rest of the browser's storage then is, which is told where something is to be kept
  }
}
