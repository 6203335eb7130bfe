/** What a tab comes back to when it is loaded again. The browser may refuse to keep it: then it comes back to the beginning. */
import type { ViewName } from "./model.js";
import { VIEWS } from "./model.js";

/** The job that was open, and what was looked at. */
export interface Session {
  readonly id: string;
  readonly view: ViewName;
  readonly base: string | null;
}

const KEY = "rodplate open";
const BEGUN_KEY = "rodplate begun";

/** null: nothing was open. */
export function readSession(): Session | null {
  try {
    const value: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    if (typeof value !== "object" || value === null || !("id" in value) || typeof value.id !== "string") return null;
    const view = VIEWS.find((name) => "view" in value && value.view === name) ?? "template";
    return { id: value.id, view, base: "base" in value && typeof value.base === "string" ? value.base : null };
  } catch {
    return null;
  }
}

/** Put down for the next loading of this tab. */
export function writeSession(session: Session | null): void {
  try {
    if (session === null) sessionStorage.removeItem(KEY);
    else sessionStorage.setItem(KEY, JSON.stringify(session));
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
