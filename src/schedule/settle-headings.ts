/** Columns of a table -> what each stands for: by its words, by an answer of the job, by proof; else it is asked, once. */
import type { Finding } from "../diagnostics/finding.js";
import { groupBy } from "../units/group-by.js";
import { readAnswers } from "./heading-answers.js";
import type { LookUp, Meanings } from "./heading-meanings.js";
import { lookUp } from "./heading-meanings.js";
import type { Settling } from "./heading-proofs.js";
import { isTaken, PROOFS } from "./heading-proofs.js";
import { askHeadings, tellUnknown } from "./heading-questions.js";
import type { Doubt, HeadingName } from "./heading-synonyms.js";
import { NOTE, SQUARE } from "./heading-synonyms.js";
import type { Heading } from "./headings.js";
import { headingNamed, OWN_NAMES, plainHeading } from "./headings.js";
import type { FoundColumn, FoundTable, ReadQuestion, TableAnswers } from "./model.js";
import type { KnownHeading, Meant, SettleContext, SettledColumn, Settlement, Vocabulary } from "./settled-column.js";
import { markHeading } from "./sheet-words.js";
import { TableView } from "./table-view.js";
import { holdTwins } from "./twin-columns.js";

/** The columns in their order, what is asked, and what is to be told. */
export interface SettledHeadings<H = Heading> {
  readonly columns: readonly SettledColumn<H>[];
  readonly questions: readonly ReadQuestion[];
  readonly findings: readonly Finding[];
}

const SCHEDULE: Vocabulary<Heading> = { lookUp, named: headingNamed, own: OWN_NAMES, isOurs, unknown: "note" };

/** No print has columns of the setting template. */
function isOurs({ key, name }: Heading): boolean {
  return key.startsWith("template.") && lookUp(name, "").doubt === null;
}

/** What every column of a schedule stands for. The order of the columns decides nothing. */
export function settleHeadings(table: FoundTable, answers: TableAnswers, context: SettleContext): SettledHeadings {
  return settleColumns(table, answers, context, SCHEDULE);
}

/** What every column stands for in a kind of sheet. */
export function settleColumns<H extends KnownHeading>(
  table: FoundTable,
  answers: TableAnswers,
  context: SettleContext,
  vocabulary: Vocabulary<H>,
): SettledHeadings<H> {
  const { file } = context;
  const answered = readAnswers(table, answers, context, vocabulary);
  const view = new TableView(table, context.unit);
  const meanings = isOwnSheet(table, view, vocabulary) ? ownMeaning(vocabulary) : vocabulary.lookUp;
  const first = table.columns.map((column, index): Settlement => {
    const { names, doubt } = ofOneLength(meanings(column.words, column.group), index, view);
    const answer = answered.byColumn.get(index) ?? null;
    return { column, index, names, doubt, settled: answer ?? bySingle(names, column) };
  });
  const settled = settleWithMark(first, view, context, vocabulary);
  const twins = holdTwins(
    settled.map((one) => toColumn(one, vocabulary)),
    view,
    file,
  );
  const asked = askHeadings(settled, twins.asked, view, file);
  const unknown = tellUnknown(settled, table, file, vocabulary.unknown);
  const findings = [...answered.findings, ...twins.findings, ...asked.findings, ...unknown];
  return { columns: twins.columns, questions: asked.questions, findings };
}

/** A sheet made for this program, in its own headings alone: they stand for what they are called, unless no cell of one fits. */
function isOwnSheet<H extends KnownHeading>(
  { columns }: FoundTable,
  view: TableView,
  { own, isOurs, lookUp: meaningsIn }: Vocabulary<H>,
): boolean {
  const headings = columns.flatMap(({ words, group }) => (group === "" ? (own.get(plainHeading(words)) ?? []) : []));
  if (headings.length < columns.length || !headings.some(isOurs)) return false;
  const isOther = (heading: H, index: number) =>
    meaningsIn(heading.name, "").doubt === "form" && view.fitOf(index, heading).isRefusedByAll;
  return !headings.some(isOther);
}

function ownMeaning({ own }: Vocabulary<KnownHeading>): LookUp {
  return (words) => ({ names: [own.get(plainHeading(words))?.name ?? NOTE], doubt: null });
}

function bySingle(names: readonly HeadingName[], column: FoundColumn): Meant | null {
  const [only] = names;
  if (only === undefined)
    return { name: NOTE, how: column.words === "" ? "has no heading" : "is no heading that is known" };
  return names.length === 1 ? { name: only, how: "" } : null;
}

/** A gauge of one length is along one axis, or the same both ways: of no such cell can be said which. */
function ofOneLength(meanings: Meanings, index: number, view: TableView): Meanings {
  const { names, doubt } = meanings;
  const isPattern = names.includes("Pattern pitch") && (doubt === "overall or pitch" || doubt === "shown");
  if (!isPattern || view.isBlank(index)) return meanings;
  const texts = view.textsOf(index);
  const isOne = view.lengthsOf(index).every((length, row) => length !== null || texts[row] === "");
  if (!isOne || texts.some((text) => CENTRES.test(text))) return meanings;
  const axes = names.includes(NOTE) ? ["Pitch X", "Pitch Y", NOTE] : ["X", "Y", "Pitch X", "Pitch Y", SQUARE];
  return { names: axes, doubt: "only asked" };
}

/** A length from rod to rod says so itself. */
const CENTRES = /c\/c|o\.?c/i;

/** Where no column gives the marks, those that are headed like marks may, so that no bases are taken for one. */
function settleWithMark(
  first: readonly Settlement[],
  view: TableView,
  context: SettleContext,
  vocabulary: Vocabulary<KnownHeading>,
): readonly Settlement[] {
  const settled = settleByProof(first, view, context, vocabulary);
  const isMark = ({ names, settled: meant }: Settlement) =>
    meant === null ? names.includes("Mark") : meant.name === "Mark";
  if (settled.some(isMark)) return settled;
  const mayBe = first.map((one): Settlement => {
    const isHeaded = one.names.length === 0 && one.settled?.isAnswer !== true && markHeading(one.column.words) !== null;
    return isHeaded ? { ...one, names: ["Mark", NOTE], doubt: "which mark", settled: null } : one;
  });
  return mayBe.some((one, index) => one !== first[index]) ? settleByProof(mayBe, view, context, vocabulary) : settled;
}

/** Rounds of proofs from the same state, until none proves anything more. */
function settleByProof(
  first: readonly Settlement[],
  view: TableView,
  context: SettleContext,
  vocabulary: Vocabulary<KnownHeading>,
): readonly Settlement[] {
  const stateOf = (columns: readonly Settlement[]) => settlingOf(columns, view, context, vocabulary);
  const start = stateOf(first);
  let now = first.map((one) =>
    one.doubt === "narrowest" ? { ...one, settled: one.settled ?? narrow(one, start) } : one,
  );
  for (;;) {
    const state = stateOf(now);
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

function settlingOf(
  columns: readonly Settlement[],
  view: TableView,
  { given, kinds = [] }: SettleContext,
  { named }: Vocabulary<KnownHeading>,
): Settling {
  const isCounted = ({ index, settled }: Settlement) => settled?.isLeftOut !== true && !view.isBlank(index);
  const counted = columns.filter(isCounted);
  const open = columns.filter(({ settled }) => settled === null);
  return {
    view,
    named,
    settled: columnsByName(counted.flatMap(({ index, settled }) => (settled === null ? [] : [[settled.name, index]]))),
    open: columnsByName(open.flatMap(({ index, names }) => names.map((name) => [name, index] as const))),
    meanings: new Map(open.map(({ index, names }) => [index, names])),
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
  if (state.view.isBlank(index)) return { name: NOTE, how: "no cell holds anything" };
  const free = names.filter((name) => !isTaken(name, index, state));
  const left = free.some((name) => name !== NOTE) || names.includes(NOTE) ? free : names;
  return byElimination(index, names, left, state) ?? PROOFS[doubt](index, left, state);
}

function columnsByName(
  pairs: readonly (readonly [HeadingName, number])[],
): ReadonlyMap<HeadingName, readonly number[]> {
  const byName = groupBy(pairs, ([name]) => name);
  return new Map([...byName].map(([name, found]) => [name, found.map(([, column]) => column)]));
}

/** Other columns give every other meaning. Where it may be none of ours, it then is none. */
function byElimination(
  index: number,
  names: readonly HeadingName[],
  left: readonly HeadingName[],
  { view, named }: Settling,
): Meant | null {
  if (left.length === names.length) return null;
  const [only, ...others] = left.filter((name) => name !== NOTE);
  if (only === undefined) return { name: NOTE, how: "what it may be has columns of its own" };
  if (names.includes(NOTE) || others.length > 0) return null;
  const heading = named(only);
  const isFit = heading !== undefined && view.fitOf(index, heading).refusedAt === null;
  return isFit ? { name: only, how: "what else it may be has a column of its own" } : null;
}

/** Two columns that prove to be the same thing in one round prove nothing. */
function withoutRivals(proofs: ReadonlyMap<number, Meant>): ReadonlyMap<number, Meant> {
  const byName = columnsByName([...proofs].map(([index, { name }]) => [name, index]));
  return new Map([...proofs].filter(([, { name }]) => name === NOTE || byName.get(name)?.length === 1));
}

function toColumn<H extends KnownHeading>(one: Settlement, { named, unknown }: Vocabulary<H>): SettledColumn<H> {
  const { column, index, settled, names } = one;
  if (settled === null)
    return { column, index, heading: null, as: "asked", how: "may be several things; nothing proves which" };
  const { name, how, isLeftOut, isAnswer, isSquare } = settled;
  const heading = named(name) ?? null;
  const isUnknown = names.length === 0 && isAnswer !== true;
  const isNote = name === NOTE || heading === null;
  if (isLeftOut === true || (isNote && isUnknown && unknown === "left out"))
    return { column, index, heading: null, as: "left out", how };
  return isNote
    ? { column, index, heading: null, as: "note", how }
    : { column, index, heading, as: "value", how, ...(isSquare === true ? { isSquare } : {}) };
}
