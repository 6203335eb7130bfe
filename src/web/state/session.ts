/** What a tab comes back to when it is loaded again. The browser may refuse to keep it: then it comes back to the beginning. */
import type { Beginning } from "./beginning.js";
import type { PageState, ViewName } from "./model.js";
import { VIEWS } from "./model.js";

/** The job that was open, what was looked at, and what was typed that is in no job yet. */
export interface Session {
  /** null: no job was open. */
  readonly id: string | null;
  readonly view: ViewName;
  readonly base: string | null;
  readonly drafts: PageState["drafts"];
  readonly beginning: Beginning;
}

const KEY = "rodplate open";

/** Changes with the shape of what is written: what another version of the page wrote is not read. */
const SHAPE = 2;

/** What is to be found again of a page as it stands. */
export function sessionOf({ job, view, base, drafts, beginning }: PageState): Session {
  return { id: job?.id ?? null, view, base, drafts, beginning: restOf(beginning) };
}

/** What was read of a sheet is read again: it may be much. */
function restOf(beginning: Beginning): Beginning {
  return beginning.kind === "read" ? { ...beginning, going: null, found: null, refused: [] } : beginning;
}

/** null: the tab is new. */
export function readSession(): Session | null {
  try {
    const value = JSON.parse(sessionStorage.getItem(KEY) ?? "null", readBytes) as
      | (Session & { readonly shape?: unknown })
      | null;
    if (value?.shape !== SHAPE) return null;
    return { ...value, view: VIEWS.find((name) => name === value.view) ?? "template" };
  } catch {
    return null;
  }
}

/** Put down for the next loading of this tab; a sheet that is larger than the browser takes is left out. */
export function writeSession(session: Session): void {
  if (put(session) || session.beginning.kind !== "read") return;
  put({ ...session, beginning: { kind: "choice" } });
}

/** False where it is refused, as the rest of the browser's storage may then be, which the job's line tells. */
function put(session: Session): boolean {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ shape: SHAPE, ...session }, writeBytes));
    return true;
  } catch {
    return false;
  }
}

/** Bytes of a workbook, a sign for each. */
function writeBytes(_key: string, value: unknown): unknown {
  if (!(value instanceof Uint8Array)) return value;
  let signs = "";
  for (let at = 0; at < value.length; at += 8192) signs += String.fromCharCode(...value.subarray(at, at + 8192));
  return { bytes: btoa(signs) };
}

function readBytes(_key: string, value: unknown): unknown {
  if (typeof value !== "object" || value === null || !("bytes" in value) || typeof value.bytes !== "string")
    return value;
  return Uint8Array.from(atob(value.bytes), (sign) => sign.charCodeAt(0));
}
