/**
 * What is kept of one reading of a job for the next, so that of a job that is edited only what the edit concerns is read
 * again. Every key says all that its value hangs on: with a memory and without one the same comes out.
 */
import type { Finding } from "../diagnostics/finding.js";
import type { SourceNode } from "../readers/source.js";

/** Values by what they are and by their key. */
export interface Memory {
  /** What was made under this key before, or what `make` makes now. */
  recall<T>(what: string, key: string, make: () => T): T;
  /** What is known under this key; undefined where nothing is. */
  known<T>(what: string, key: string): T | undefined;
  keep<T>(what: string, key: string, value: T): void;
  /** A short key that stands for a long one. */
  short(key: string): string;
  /** The short key of all that an object says, which is written once an object. */
  nameOf<T extends object>(object: T, write: (object: T) => string): string;
  /** Forgets what the last readings did not ask for. To be called once a reading. */
  turn(): void;
}

/** Readings after which a value that nobody asked for is forgotten: taking back a few edits finds everything again. */
const KEPT_TURNS = 24;

/** Something kept, with the reading that last asked for it. */
interface Kept<T> {
  readonly value: T;
  used: number;
}

/** Starts with nothing known. */
export function startMemory(): Memory {
  const values = new Map<string, Map<string, Kept<unknown>>>();
  const shorts = new Map<string, Kept<string>>();
  const names = new WeakMap<object, Kept<string>>();
  let [now, last] = [0, 0];
  const use = <T>(entry: Kept<T>): T => {
    entry.used = now;
    return entry.value;
  };
  const known = <T>(what: string, key: string): T | undefined => {
    const entry = values.get(what)?.get(key);
    return entry && (use(entry) as T);
  };
  const keep = <T>(what: string, key: string, value: T): void => {
    const entries = values.get(what) ?? new Map<string, Kept<unknown>>();
    values.set(what, entries.set(key, { value, used: now }));
  };
  const forget = <T>(map: Map<string, Kept<T>>): void => {
    for (const [key, { used }] of map) if (used < now - KEPT_TURNS) map.delete(key);
  };
  const shortOf = (key: string): Kept<string> => {
    const before = shorts.get(key);
    if (before !== undefined) return before;
    last += 1;
    const made = { value: String(last), used: now };
    shorts.set(key, made);
    return made;
  };
  return {
    known,
    keep,
    recall: (what, key, make) => {
      const before = known<ReturnType<typeof make>>(what, key);
      if (before !== undefined) return before;
      const made = make();
      keep(what, key, made);
      return made;
    },
    short: (key) => use(shortOf(key)),
    nameOf: (object, write) => {
      const name = names.get(object) ?? shortOf(write(object));
      names.set(object, name);
      return use(name);
    },
    turn: () => {
      now += 1;
      if (now % KEPT_TURNS !== 0) return;
      for (const entries of values.values()) forget(entries);
      forget(shorts);
    },
  };
}

const writings = new WeakMap<SourceNode, string>();

/**
 * All that a node says, as a text. Its own parts with their lines from that of the root on: what is equal then differs by its
 * place in the file alone. Of parts that layers give (they have labels) without lines.
 */
export function writingOf(root: SourceNode): string {
  return writingIn(root, root.place.line);
}

function writingIn(node: SourceNode, from: number): string {
  const before = writings.get(node);
  if (before !== undefined) return before;
  const { line, column, label } = node.place;
  const at = label === undefined ? `${line - from}:${column}` : label;
  const made = `${at} ${saidIn(node, from)}`;
  writings.set(node, made);
  return made;
}

function saidIn(node: SourceNode, from: number): string {
  switch (node.kind) {
    case "scalar":
      return node.style === "plain" ? `p${JSON.stringify(node.text)}` : `q${JSON.stringify(node.text)}`;
    case "list":
      return `[${node.items.map((item) => writingIn(item, from)).join()}]`;
    case "map": {
      const entries = node.entries.map(({ key, givenBy = "", place, value }) => {
        const at = place.label === undefined ? `${place.line - from}:${place.column}` : "";
        return `${JSON.stringify(key)} ${givenBy} ${at} ${writingIn(value, from)}`;
      });
      return `{${entries.join()}}`;
    }
  }
}

/** The findings of a base that stood elsewhere, told of where it stands now; null where one of them names a place in its words. */
export function movedFindings(
  findings: readonly Finding[],
  then: { readonly path: string; readonly line: number },
  now: { readonly path: string; readonly line: number },
): readonly Finding[] | null {
  if (findings.length === 0 || (then.path === now.path && then.line === now.line)) return findings;
  const moved = findings.map((finding): Finding | null => {
    const { path = "", line } = finding.at;
    const isOwn = path === then.path || path.startsWith(`${then.path}.`);
    if (!isOwn || line === undefined || /:\d/.test(`${finding.message} ${finding.hint ?? ""}`)) return null;
    const at = { ...finding.at, path: now.path + path.slice(then.path.length), line: line - then.line + now.line };
    return { ...finding, at };
  });
  return moved.every((each) => each !== null) ? moved : null;
}
