/** What the rows of a whole job come to, gathered as its bases go by: counts, held bases, advice, closest calls, missing keys. */

import type { Unchecked } from "./missing-keys.js";
import { startMissingKeys } from "./missing-keys.js";
import type { CheckRow } from "./model.js";
import { isHolding, isWithoutMargin, tightness } from "./run.js";

/** What is taken of a base; of the layout `mark` is "" and `template` null. */
export interface DigestedBase {
  readonly mark: string;
  readonly quantity: number;
  readonly template: { readonly mark: string; readonly quantity: number } | null;
  /** Why it is held, one sentence each. */
  readonly reasons: readonly string[];
  readonly rows: readonly CheckRow[];
}

/** Counts of rows, whatever they are of. */
export interface RowCounts {
  readonly rows: number;
  readonly passed: number;
  readonly failed: number;
  readonly notChecked: number;
  readonly notApplicable: number;
}

/** Bases, in the order of the job, which are held for the same reasons. */
export interface HeldBases {
  readonly marks: readonly string[];
  readonly templates: readonly string[];
  readonly reasons: readonly string[];
  /** Rows of the first of them that hold it, the worst of each rule; none where another base holds its template. */
  readonly rows: readonly CheckRow[];
}

/** Marks of bases, the first of them, and of how many; `layout` stands for rows of no base. */
export interface CountedMarks {
  readonly first: readonly string[];
  readonly count: number;
}

/** A rule that only advises, with how often it fails and where. */
export interface AdvisedRule {
  readonly rule: string;
  readonly plainName: string;
  readonly rows: number;
  /** Of the layout: `marks` are the subjects of its rows, as `B1 / B2`. */
  readonly ofLayout: boolean;
  readonly marks: CountedMarks;
}

/** A pass with little to spare: rows of one rule with the same figures. */
export interface CloseCall {
  /** The first of them. */
  readonly row: CheckRow;
  /** Of the first base. */
  readonly subjects: readonly string[];
  /** Margin as a share of the limit. */
  readonly share: number;
  readonly marks: CountedMarks;
}

/** Everything that is gathered. */
export interface JobDigest extends RowCounts {
  /** Types of bases, and bases in all. */
  readonly bases: number;
  readonly quantity: number;
  /** Types of templates, and templates in all. */
  readonly templates: number;
  readonly templateQuantity: number;
  /** By their reasons; empty where nothing is held. */
  readonly held: readonly HeldBases[];
  /** Types of bases and of templates that are held. */
  readonly heldBases: number;
  readonly heldTemplates: number;
  readonly advice: readonly AdvisedRule[];
  /** Ten at most, the closest first; see `isWithoutMargin` for what is none. */
  readonly closest: readonly CloseCall[];
  readonly unchecked: Unchecked;
}

/** Takes bases one by one; memory holds counts, reasons and the closest rows alone. */
export interface DigestGatherer {
  add(base: DigestedBase): void;
  /** To be asked when all is added. */
  digest(): JobDigest;
}

/** Starts with nothing. */
export function startDigest(): DigestGatherer {
  const counts = { rows: 0, passed: 0, failed: 0, notChecked: 0, notApplicable: 0, bases: 0, quantity: 0 };
  const templates = new Map<string, number>();
  const held = startHeld();
  const advice = startAdvice();
  const closest = startClosest();
  const missing = startMissingKeys();
  return {
    add: (base) => {
      const { mark, quantity, template, reasons, rows } = base;
      counts.bases += template === null ? 0 : 1;
      counts.quantity += quantity;
      if (template !== null) templates.set(template.mark, template.quantity);
      if (template !== null && reasons.length > 0) held.add(mark, template.mark, base);
      for (const row of rows) countRow(counts, row);
      const name = placeName(mark);
      advice.add(name, rows);
      closest.add(name, rows);
      missing.add(rows);
    },
    digest: () => ({
      ...counts,
      templates: templates.size,
      templateQuantity: [...templates.values()].reduce((sum, quantity) => sum + quantity, 0),
      ...held.list(),
      advice: advice.list(),
      closest: closest.list(),
      unchecked: missing.list(),
    }),
  };
}

/** How rows of no base are told from those of bases. */
export const LAYOUT = "layout";

const placeName = (mark: string): string => (mark === "" ? LAYOUT : mark);

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

function countRow(counts: Mutable<RowCounts>, { status }: CheckRow): void {
  counts.rows += 1;
  if (status === "pass") counts.passed += 1;
  if (status === "fail") counts.failed += 1;
  if (status === "not-checked") counts.notChecked += 1;
  if (status === "not-applicable") counts.notApplicable += 1;
}

function startHeld() {
  const groups = new Map<
    string,
    Omit<HeldBases, "marks" | "templates"> & { marks: string[]; templates: Set<string> }
  >();
  return {
    add: (mark: string, template: string, { reasons, rows }: DigestedBase): void => {
      const key = reasons.join("\n");
      const group = groups.get(key) ?? { marks: [], templates: new Set(), reasons, rows: worstHolding(rows) };
      groups.set(key, group);
      group.marks.push(mark);
      group.templates.add(template);
    },
    list: () => {
      const held = [...groups.values()].map((group) => ({ ...group, templates: [...group.templates] }));
      const heldBases = held.reduce((sum, { marks }) => sum + marks.length, 0);
      return { held, heldBases, heldTemplates: new Set(held.flatMap((group) => group.templates)).size };
    },
  };
}

function worstHolding(rows: readonly CheckRow[]): readonly CheckRow[] {
  const holding = rows.filter(isHolding).map((row) => [row.rule, row] as const);
  return [...new Map(holding.toReversed()).values()].toReversed();
}

/** The same for rows of one rule with the same figures. */
function figuresKey({ rule, clause, edition, value, limit, sense }: CheckRow): string {
  return JSON.stringify([rule, clause, edition, value, limit, sense]);
}

/** So many marks of one thing are kept. */
const MOST_MARKS = 24;

interface MarkCounter {
  /** Counts the mark, unless it was the last one: those of a base come one after the other. */
  add(mark: string): void;
  list(): CountedMarks;
}

function startMarks(): MarkCounter {
  const first: string[] = [];
  let [count, last]: [number, string | null] = [0, null];
  return {
    add: (mark) => {
      if (mark === last) return;
      last = mark;
      count += 1;
      if (first.length < MOST_MARKS) first.push(mark);
    },
    list: () => ({ first: [...first], count }),
  };
}

/** `B1, B2 and 7 more`: so many of them at most. */
export function markWords({ first, count }: CountedMarks, most: number, between = ", "): string {
  const shown = first.slice(0, most);
  const more = count - shown.length;
  return `${shown.join(between)}${more > 0 ? ` and ${more} more` : ""}`;
}

function startAdvice() {
  const byRule = new Map<string, Omit<AdvisedRule, "rule" | "rows" | "marks"> & { rows: number; marks: MarkCounter }>();
  return {
    add: (mark: string, rows: readonly CheckRow[]): void => {
      for (const { rule, plainName, status, severity, subject } of rows) {
        if (status !== "fail" || severity !== "advise") continue;
        const known = byRule.get(rule) ?? { plainName, rows: 0, ofLayout: mark === LAYOUT, marks: startMarks() };
        byRule.set(rule, known);
        known.rows += 1;
        known.marks.add(mark === LAYOUT ? subject : mark);
      }
    },
    list: (): readonly AdvisedRule[] =>
      [...byRule]
        .map(([rule, { marks, ...known }]) => ({ ...known, rule, marks: marks.list() }))
        .sort((a, b) => b.marks.count - a.marks.count || b.rows - a.rows),
  };
}

/** So many close calls are kept. */
const MOST_CLOSE = 10;

interface Kept {
  readonly key: string;
  readonly row: CheckRow;
  readonly share: number;
  /** The base that it was met at first. */
  readonly at: string;
  readonly subjects: string[];
  readonly marks: MarkCounter;
}

/** A call that gives way to ten closer ones never comes back, so that the counts of those that stay are whole. */
function startClosest() {
  const kept: Kept[] = [];
  const insert = (call: Kept): void => {
    const place = kept.findIndex(({ share }) => share > call.share);
    kept.splice(place === -1 ? kept.length : place, 0, call);
    if (kept.length > MOST_CLOSE) kept.pop();
  };
  const take = (mark: string, row: CheckRow): void => {
    const share = tightness(row);
    if (kept.length === MOST_CLOSE && share > (kept.at(-1)?.share ?? 0)) return;
    const key = figuresKey(row);
    const known = kept.find((each) => each.key === key);
    if (known === undefined) {
      const marks = startMarks();
      marks.add(mark);
      insert({ key, row, share, at: mark, subjects: [row.subject], marks });
      return;
    }
    known.marks.add(mark);
    if (known.at === mark) known.subjects.push(row.subject);
  };
  return {
    add: (mark: string, rows: readonly CheckRow[]): void => {
      for (const row of rows) if (isClose(row)) take(mark, row);
    },
    list: (): readonly CloseCall[] =>
      kept.map(({ row, share, subjects, marks }) => ({ row, share, subjects, marks: marks.list() })),
  };
}

/** A pass that has a margin which could have been less. */
function isClose(row: CheckRow): boolean {
  return row.status === "pass" && row.margin !== null && !isWithoutMargin(row);
}
