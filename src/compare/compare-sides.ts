/** Two jobs or packages -> every template of either, compared, worst first. */

import { groupBy } from "../units/group-by.js";
import { compareRods } from "./compare-rods.js";
import { compareTemplates } from "./compare-templates.js";
import type { Comparison, Side, TemplateComparison, TemplateState } from "./model.js";
import { RECUT_KINDS, VERDICTS } from "./model.js";

/** Compares OLD with NEW. Templates are the same by their mark, else by their base, else by being the same plate. */
export function compareSides(old: Side, fresh: Side): Comparison {
  const { pairs, gone, added } = matchTemplates(old.templates, fresh.templates);
  const compared: readonly TemplateComparison[] = [
    ...fresh.templates.flatMap((state) => {
      const before = pairs.get(state);
      return before === undefined ? [] : [compareTemplates(before, state)];
    }),
    ...added.map((state): TemplateComparison => ({ verdict: "new", old: null, new: state, changes: [] })),
    ...gone.map((state): TemplateComparison => ({ verdict: "gone", old: state, new: null, changes: [] })),
  ];
  const templates = worstFirst(compared);
  return { old: headOf(old), new: headOf(fresh), templates, rods: compareRods(old, fresh, templates) };
}

/** How many templates that are cut already must be cut again. */
export function countRecuts({ templates }: Comparison): number {
  return templates.filter(({ verdict }) => verdict === "recut").length;
}

/** How many rods of NEW must be made though others were made for OLD in their place. */
export function countRemade({ rods }: Comparison): number {
  return (rods ?? []).reduce((sum, each) => sum + (each.verdict === "remade" ? (each.new?.total ?? 0) : 0), 0);
}

function headOf({ name, source, job }: Side): Comparison["old"] {
  return { name, source, job };
}

function worstFirst(compared: readonly TemplateComparison[]): readonly TemplateComparison[] {
  return VERDICTS.flatMap((kind) => compared.filter(({ verdict }) => verdict === kind));
}

interface TemplateMatch {
  /** NEW to OLD. */
  readonly pairs: ReadonlyMap<TemplateState, TemplateState>;
  readonly gone: readonly TemplateState[];
  readonly added: readonly TemplateState[];
}

function matchTemplates(old: readonly TemplateState[], fresh: readonly TemplateState[]): TemplateMatch {
  const pairs = new Map<TemplateState, TemplateState>();
  const left = new Set(old);
  const pairBy = (keyOf: (state: TemplateState) => string | null): void => {
    const waiting = groupBy(left, keyOf);
    for (const state of fresh) {
      if (pairs.has(state)) continue;
      const before = waiting.get(keyOf(state))?.find((each) => left.has(each));
      if (before === undefined || keyOf(state) === null) continue;
      pairs.set(state, before);
      left.delete(before);
    }
  };
  pairBy(({ mark, base }) => JSON.stringify([mark.toUpperCase(), base.toUpperCase()]));
  pairBy(({ mark }) => mark.toUpperCase());
  pairBy(({ base }) => base.toUpperCase());
  pairAlike(pairs, left, fresh);
  return { pairs, gone: [...left], added: fresh.filter((state) => !pairs.has(state)) };
}

/** A template whose mark and base are both new may be an old one under other names: the same plate, hole by hole. */
function pairAlike(
  pairs: Map<TemplateState, TemplateState>,
  left: Set<TemplateState>,
  fresh: readonly TemplateState[],
): void {
  const waiting = groupBy(left, ({ holes }) => holes.length);
  for (const state of fresh) {
    if (pairs.has(state)) continue;
    const alike = waiting.get(state.holes.length)?.find((each) => left.has(each) && isSamePlate(each, state));
    if (alike === undefined) continue;
    pairs.set(state, alike);
    left.delete(alike);
  }
}

function isSamePlate(old: TemplateState, fresh: TemplateState): boolean {
  return !compareTemplates(old, fresh).changes.some(({ what }) => RECUT_KINDS.has(what));
}
