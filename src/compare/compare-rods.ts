/** Rods of both sides -> group by group what differs, and whether the rods that are made already still serve. */
import type { SummaryEndPlate } from "../summary/model.js";
import { groupBy } from "../units/group-by.js";
import type {
  BottomState,
  MadeLength,
  MadeState,
  MadeWord,
  RodChange,
  RodComparison,
  RodLength,
  RodState,
  RodVerdict,
  RodWord,
  Side,
  TemplateComparison,
} from "./model.js";
import { ROD_VERDICTS } from "./model.js";
import { sameLength } from "./same.js";

const LENGTHS: readonly RodLength[] = ["diameter", "projection", "embedment", "length", "threadLength"];
const WORDS: readonly RodWord[] = ["thread", "grade", "finish"];

/**
 * Groups of one base are the same where their rods are alike, else by their letter; bases by their mark, else as their
 * templates were matched. Worst first; null where a side does not list its rods.
 */
export function compareRods(
  old: Side,
  fresh: Side,
  templates: readonly TemplateComparison[],
): readonly RodComparison[] | null {
  if (old.rods === null || fresh.rods === null) return null;
  const { pairs, gone } = pairRods(old.rods, fresh.rods, templates);
  const compared = [
    ...fresh.rods.map((state) => comparePair(pairs.get(state) ?? null, state)),
    ...gone.map((state) => comparePair(state, null)),
  ];
  return ROD_VERDICTS.flatMap((kind) => compared.filter(({ verdict }) => verdict === kind));
}

interface RodMatch {
  /** NEW to OLD. */
  readonly pairs: ReadonlyMap<RodState, RodState>;
  readonly gone: readonly RodState[];
}

function pairRods(
  old: readonly RodState[],
  fresh: readonly RodState[],
  templates: readonly TemplateComparison[],
): RodMatch {
  const waiting = groupBy(old, ({ base }) => base.toUpperCase());
  const baseOf = baseInOld(new Set(waiting.keys()), templates);
  const pairs = new Map<RodState, RodState>();
  for (const isPair of [isAlike, isSameLetter]) {
    for (const state of fresh) {
      const left = waiting.get(baseOf(state)) ?? [];
      const before = pairs.has(state) ? undefined : left.find((each) => isPair(each, state));
      if (before === undefined) continue;
      pairs.set(state, before);
      left.splice(left.indexOf(before), 1);
    }
  }
  return { pairs, gone: [...waiting.values()].flat() };
}

/** The mark in OLD, in capitals, of the base whose rods these are. */
function baseInOld(marks: ReadonlySet<string>, templates: readonly TemplateComparison[]): (state: RodState) => string {
  const renamed = new Map<string, string>();
  for (const { old, new: fresh } of templates)
    if (old !== null && fresh !== null) renamed.set(fresh.base, old.base.toUpperCase());
  return ({ base }) => {
    const mark = base.toUpperCase();
    return marks.has(mark) ? mark : (renamed.get(base) ?? mark);
  };
}

const isSameLetter = (a: RodState, b: RodState): boolean => a.group === b.group;

/** The same in everything but number and letter. */
const isAlike = (a: RodState, b: RodState): boolean => rodChanges(a, b).length === 0;

function comparePair(old: RodState | null, fresh: RodState | null): RodComparison {
  if (old === null || fresh === null) return { verdict: old === null ? "new" : "gone", old, new: fresh, changes: [] };
  const changes = rodChanges(old, fresh);
  const verdict = verdictOf(old, fresh, changes);
  if (old.total === fresh.total) return { verdict, old, new: fresh, changes };
  const quantity: RodChange = { what: "quantity", from: old.total, to: fresh.total };
  return { verdict: verdict === "unchanged" ? "quantity" : verdict, old, new: fresh, changes: [...changes, quantity] };
}

function rodChanges(old: RodState, fresh: RodState): readonly RodChange[] {
  const words = WORDS.filter((what) => old[what] !== fresh[what]);
  const lengths = LENGTHS.filter((what) => !sameKnown(old[what], fresh[what]));
  const ordered: readonly RodChange[] = [
    ...words.map((what): RodChange => ({ what, from: old[what], to: fresh[what] })),
    ...lengths.map((what): RodChange => ({ what, from: old[what], to: fresh[what] })),
    ...(sameBottom(old.bottom, fresh.bottom) ? [] : [{ what: "bottom" as const, from: old.bottom, to: fresh.bottom }]),
  ];
  if (old.made === null || fresh.made === null) return ordered;
  const apart = [...ordered, ...madeChanges(old.made, fresh.made, ["bottomThread"], SAID_APART)];
  return apart.length > 0 ? apart : madeChanges(old.made, fresh.made, ["cutLength"], ["threading"]);
}

const SAID_APART: readonly MadeWord[] = ["threadClass", "zincProcess", "hardware"];

function madeChanges(
  old: MadeState,
  fresh: MadeState,
  ofLengths: readonly MadeLength[],
  ofWords: readonly MadeWord[],
): readonly RodChange[] {
  const lengths = ofLengths.filter((what) => !sameKnown(old[what], fresh[what]));
  const words = ofWords.filter((what) => old[what] !== fresh[what]);
  return [
    ...lengths.map((what): RodChange => ({ what, from: old[what], to: fresh[what] })),
    ...words.map((what): RodChange => ({ what, from: old[what], to: fresh[what] })),
  ];
}

function sameKnown(a: number | null, b: number | null): boolean {
  return a === null || b === null ? a === b : sameLength(a, b);
}

function sameBottom(a: BottomState | null, b: BottomState | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.kind === "nut" && b.kind === "nut")
    return samePlate(a.washer ?? null, b.washer ?? null) && a.tackWelded === b.tackWelded;
  if (a.kind === "plate" && b.kind === "plate")
    return samePlate(a, b) && a.nuts === b.nuts && a.tackWelded === b.tackWelded;
  if (a.kind === "hook" && b.kind === "hook")
    return sameLength(a.reach, b.reach) && sameKnown(a.radius ?? null, b.radius ?? null);
  if (a.kind === "swedged" && b.kind === "swedged") return sameLength(a.length, b.length);
  return a.kind === b.kind;
}

function samePlate(a: SummaryEndPlate | null, b: SummaryEndPlate | null): boolean {
  if (a === null || b === null) return a === b;
  return a.shape === b.shape && sameLength(a.size, b.size) && sameLength(a.thickness, b.thickness);
}

/** Another height alone makes no other rod: its length does. */
function verdictOf(old: RodState, fresh: RodState, changes: readonly RodChange[]): RodVerdict {
  if (changes.length === 0) return "unchanged";
  const isHeight = ({ what }: RodChange): boolean => what === "projection" || what === "embedment";
  const isOpen = ({ from, to }: RodChange): boolean => from === null || to === null;
  const isOnIt = ({ what }: RodChange): boolean => what === "hardware";
  const isOther = changes.some((each) => !isHeight(each) && !isOpen(each) && !isOnIt(each));
  const [before, after] = barLengths(old, fresh);
  if (isOther || (before !== null && after !== null && !sameLength(before, after))) return "remade";
  const isMoved = changes.some((each) => isHeight(each) && !isOpen(each));
  if (isMoved && (before === null || after === null)) return "remade";
  return changes.some((each) => isOpen(each) || isOnIt(each)) ? "look" : "set otherwise";
}

/** The lengths of both where the job gives them for both, else embedment and projection together; null where neither is known. */
function barLengths(old: RodState, fresh: RodState): readonly [number | null, number | null] {
  if (old.length !== null && fresh.length !== null) return [old.length, fresh.length];
  const sum = ({ projection, embedment }: RodState): number | null =>
    projection === null || embedment === null ? null : projection + embedment;
  return [sum(old), sum(fresh)];
}
