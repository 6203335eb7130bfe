/** Columns of a table -> what each stands for: by its words, by an answer of the job, by proof; else it is asked, once. */
import type { Finding } from "../diagnostics/finding.js";
import { readAnswers } from "./heading-answers.js";
import { lookUp } from "./heading-meanings.js";
import type { Settling } from "./heading-proofs.js";
import { PROOFS } from "./heading-proofs.js";
import { askHeadings, tellUnknown } from "./heading-questions.js";
import type { Doubt, HeadingName } from "./heading-synonyms.js";
import { NOTE } from "./heading-synonyms.js";
import { headingNamed, OWN_NAMES, plainHeading } from "./headings.js";
import type { FoundColumn, FoundTable, ReadQuestion, TableAnswers } from "./model.js";
import { isSameThing } from "./same-thing.js";
import type { Meant, SettleContext, SettledColumn, Settlement } from "./settled-column.js";
import { TableView } from "./table-view.js";
import { holdTwins } from "./twin-columns.js";

/** The columns in their order, what is asked, and what is to be told. */
export interface SettledHeadings {
  readonly columns: readonly SettledColumn[];
  readonly questions: readonly ReadQuestion[];
  readonly findings: readonly Finding[];
}

/** What every column of the table stands for. The order of the columns decides nothing. */
export function settleHeadings(table: FoundTable, answers: TableAnswers, context: SettleContext): SettledHeadings {
  const answered = readAnswers(table, answers, context);
  const isOwn = isOwnSheet(table);
  const first = table.columns.map((column, index): Settlement => {
    const { names, doubt } = isOwn ? ownMeaning(column) : lookUp(column.words, column.group);
    const answer = answered.byColumn.get(index) ?? null;
    return { column, index, names, doubt, settled: answer ?? bySingle(names, column) };
  });
  const view = new TableView(table, context.unit);
  const settled = settleByProof(first, view, context);
  const twins = holdTwins(settled.map(toColumn), view, context.file);
  const asked = askHeadings(settled, twins.asked, view, context.file);
  return {
    columns: twins.columns,
    questions: asked.questions,
    findings: [
      ...answered.findings,
      ...twins.findings,
      ...asked.findings,
      ...tellUnknown(settled, twins.columns, table, context.file),
    ],
  };
}

/** A sheet in the program's own headings: they stand for what they are called. */
function isOwnSheet({ columns }: FoundTable): boolean {
  return columns.every(({ words, group }) => group === "" && OWN_NAMES.has(plainHeading(words)));
}

function ownMeaning({ words }: FoundColumn): { readonly names: readonly HeadingName[]; readonly doubt: null } {
  const own = OWN_NAMES.get(plainHeading(words));
  return { names: own === undefined ? [] : [own.name], doubt: null };
}

function bySingle(names: readonly HeadingName[], column: FoundColumn): Meant | null {
  const [only] = names;
  if (only === undefined)
    return { name: NOTE, how: column.words === "" ? "has no heading" : "is no heading that is known" };
  return names.length === 1 ? { name: only, how: "" } : null;
}

/** Rounds of proofs from the same state, until none proves anything more. */
function settleByProof(first: readonly Settlement[], view: TableView, context: SettleContext): readonly Settlement[] {
  const start = stateOf(first, view, context);
  let now = first.map((one) =>
    one.doubt === "narrowest" ? { ...one, settled: one.settled ?? narrow(one, start) } : one,
  );
  for (;;) {
    const state = stateOf(now, view, context);
    const proofs = new Map(now.flatMap((one) => withProof(one, state)));
    const held = withoutRivals(proofs);
    if (held.size === 0) return now;
    now = now.map((one) => ({ ...one, settled: one.settled ?? held.get(one.index) ?? null }));
  }
}

/** One value or several of the same thing: two such columns are no rivals, but held against each other. */
function narrow({ index, names }: Settlement, state: Settling): Meant | null {
  return PROOFS.narrowest(index, names, state);
}

function stateOf(columns: readonly Settlement[], view: TableView, { given, kinds = [] }: SettleContext): Settling {
  const settled = columns.flatMap(({ index, settled }) =>
    settled === null || settled.isLeftOut === true ? [] : [[index, settled.name] as const],
  );
  return {
    view,
    settled: new Map(settled),
    open: new Map(columns.flatMap(({ index, settled, names }) => (settled === null ? [[index, names] as const] : []))),
    given: given ?? new Set(),
    kinds: new Set(kinds.map((kind) => kind.toLowerCase())),
  };
}

function withProof(one: Settlement, state: Settling): readonly (readonly [number, Meant])[] {
  if (one.settled !== null || one.doubt === null) return [];
  const proved = provedOf(one, one.doubt, state);
  return proved === null ? [] : [[one.index, proved]];
}

function provedOf({ index, names }: Settlement, doubt: Doubt, state: Settling): Meant | null {
  if (state.view.isBlank(index)) return { name: names[0] ?? NOTE, how: "no cell holds anything" };
  const free = names.filter((name) => !isGiven(name, index, state));
  const left = free.some((name) => name !== NOTE) || names.includes(NOTE) ? free : names;
  return byElimination(index, names, left, state) ?? PROOFS[doubt](index, left, state);
}

function isGiven(name: HeadingName, index: number, { settled }: Settling): boolean {
  return [...settled].some(([other, meant]) => other !== index && isSameThing(meant, name));
}

/** Other columns give every other meaning. Where it may be none of ours, it then is none. */
function byElimination(
  index: number,
  names: readonly HeadingName[],
  left: readonly HeadingName[],
  { view }: Settling,
): Meant | null {
  if (left.length === names.length) return null;
  const [only, ...others] = left.filter((name) => name !== NOTE);
  if (only === undefined) return { name: NOTE, how: "what it may be has columns of its own" };
  if (names.includes(NOTE) || others.length > 0) return null;
  const heading = headingNamed(only);
  const isFit = heading !== undefined && view.fitOf(index, heading).refusedAt === null;
  return isFit ? { name: only, how: "what else it may be has a column of its own" } : null;
}

/** Two columns that prove to be the same thing in one round prove nothing. */
function withoutRivals(proofs: ReadonlyMap<number, Meant>): ReadonlyMap<number, Meant> {
  const isRival = (index: number, { name }: Meant) =>
    [...proofs].some(([other, proved]) => other !== index && proved.name === name && name !== NOTE);
  return new Map([...proofs].filter(([index, proved]) => !isRival(index, proved)));
}

function toColumn({ column, index, settled }: Settlement): SettledColumn {
  if (settled === null)
    return { column, index, heading: null, as: "asked", how: "may be several things; nothing proves which" };
  const { name, how, isLeftOut } = settled;
  if (isLeftOut === true) return { column, index, heading: null, as: "left out", how };
  const heading = headingNamed(name) ?? null;
  return { column, index, heading, as: heading === null ? "note" : "value", how };
}
