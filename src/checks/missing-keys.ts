/** Which keys of the job would have most of the rows checked that lack something. */
import type { CheckRow } from "./model.js";

/** Keys that are given together, and what that brings. */
export interface MissingKeys {
  /** As rows name them: `rods.length`, `table of the shop file`. */
  readonly keys: readonly string[];
  /** Rows that are checked then and were not with the keys before. */
  readonly rows: number;
  /** Those with all keys up to here. */
  readonly total: number;
  /** Rules of these rows, in words of the trade. */
  readonly rules: readonly string[];
}

/** Rows that are not checked. */
export interface Unchecked {
  readonly rows: number;
  /** Of them those that no key would have checked. */
  readonly keyless: number;
  /** Which keys to give first: each step has the most rows a key of all that are left. Every key stands in one step. */
  readonly steps: readonly MissingKeys[];
  /** By key: all rows that lack it, alone or beside others; the most first. */
  readonly byKey: readonly { readonly key: string; readonly rows: number }[];
}

interface Lack {
  readonly keys: readonly string[];
  rows: number;
  readonly rules: Set<string>;
}

/** Takes rows as they go by; keeps a count for each set of keys. */
export function startMissingKeys(): { add(rows: readonly CheckRow[]): void; list(): Unchecked } {
  const lacks = new Map<string, Lack>();
  let [rows, keyless] = [0, 0];
  return {
    add: (all) => {
      for (const { status, missing, plainName } of all) {
        if (status !== "not-checked") continue;
        rows += 1;
        if (missing.length === 0) keyless += 1;
        else take(lacks, missing, plainName);
      }
    },
    list: () => ({ rows, keyless, steps: stepsOf([...lacks.values()]), byKey: countKeys(lacks.values()) }),
  };
}

function take(lacks: Map<string, Lack>, missing: readonly string[], plainName: string): void {
  const keys = [...new Set(missing)].sort();
  const name = keys.join("\n");
  const lack = lacks.get(name) ?? { keys, rows: 0, rules: new Set() };
  lacks.set(name, lack);
  lack.rows += 1;
  lack.rules.add(plainName);
}

function countKeys(lacks: Iterable<Lack>): Unchecked["byKey"] {
  const counts = new Map<string, number>();
  for (const { keys, rows } of lacks) for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + rows);
  return [...counts].map(([key, rows]) => ({ key, rows })).sort((a, b) => b.rows - a.rows);
}

/** Greedy: a row may lack two keys, and giving one of them then brings nothing by itself. */
function stepsOf(lacks: readonly Lack[]): readonly MissingKeys[] {
  const given = new Set<string>();
  const steps: MissingKeys[] = [];
  let open = lacks;
  let total = 0;
  while (open.length > 0) {
    const best = bestOf(open, given);
    for (const key of best.keys) given.add(key);
    const isClosed = ({ keys }: Lack): boolean => keys.every((key) => given.has(key));
    const closed = open.filter(isClosed);
    total += best.rows;
    const rules = [...new Set(closed.flatMap((lack) => [...lack.rules]))];
    steps.push({ keys: best.keys, rows: best.rows, total, rules });
    open = open.filter((lack) => !isClosed(lack));
  }
  return steps;
}

/** The keys that bring the most rows a key; of those that bring as many each, the one that brings more in all. */
function bestOf(open: readonly Lack[], given: ReadonlySet<string>): { keys: readonly string[]; rows: number } {
  let best: { keys: readonly string[]; rows: number } = { keys: [], rows: 0 };
  for (const { keys } of open) {
    const fresh = keys.filter((key) => !given.has(key));
    const has = (key: string): boolean => given.has(key) || fresh.includes(key);
    const rows = open.reduce((sum, lack) => sum + (lack.keys.every(has) ? lack.rows : 0), 0);
    const [each, before] = [rows * Math.max(1, best.keys.length), best.rows * fresh.length];
    if (each > before || (each === before && rows > best.rows)) best = { keys: fresh, rows };
  }
  return best;
}
