/** Two jobs or packages -> every template of either, compared, worst first. */

import { groupBy } from "../units/group-by.js";
import { compareRods } from "./compare-rods.js";
import { compareTemplates } from "./compare-templates.js";
import type { Comparison, Side, TemplateComparison, TemplateState } from "./model.js";
import { RECUT_KINDS, VERDICTS } from "./model.js";
import type { Regrouped } from "./regroup.js";
import { regroup } from "./regroup.js";

/** Compares OLD with NEW. Templates are the same by their mark, else by their base, else by being the same plate. */
export function compareSides(old: Side, fresh: Side): Comparison {
  const regrouped = new Map(regroup(old.templates, fresh.templates, isSamePlate).map((each) => [each.fresh, each]));
  const taken = new Set([...regrouped.values()].flatMap(({ parts }) => parts));
  const left = old.templates.filter((state) => !taken.has(state));
  const { pairs, gone, added } = matchTemplates(
    left,
    fresh.templates.filter((state) => !regrouped.has(state)),
  );
  const paired = fresh.templates.flatMap((state) => {
    const [group, before] = [regrouped.get(state), pairs.get(state)];
    if (group !== undefined) return [compareGroup(group)];
    return before === undefined ? [] : [compareTemplates(before, state)];
  });
  const compared: readonly TemplateComparison[] = [
    ...paired,
    ...added.map((state) => compareAdded(state, old.templates)),
    ...gone.map((state) => compareGone(state, paired)),
  ];
  const templates = worstFirst(compared);
  return { old: headOf(old), new: headOf(fresh), templates, rods: compareRods(old, fresh, templates) };
}

/** The same plate under one mark or several: which bases it serves is told once. */
function compareGroup({ old, fresh, change }: Regrouped): TemplateComparison {
  const compared = compareTemplates(old, fresh);
  if (change === null) return compared;
  const others = compared.changes.filter(
    ({ what }) => what !== "serves" && what !== "template-mark" && what !== "base-mark",
  );
  return { ...compared, changes: [change, ...others] };
}

/** A base that shared a template in OLD and has another plate in NEW: what was cut for it no longer serves. */
function compareAdded(state: TemplateState, old: readonly TemplateState[]): TemplateComparison {
  const before = old.find(({ serves }) => serves.length > 1 && serves.includes(state.base));
  if (before === undefined) return { verdict: "new", old: null, new: state, changes: [] };
  const { base, bases, serves, quantity } = state;
  return compareTemplates({ ...before, base, bases, serves, quantity }, state);
}

/**
 * A template of OLD whose base is served by one of NEW that is another plate: told as cut again, but where that one is told so
 * already, or is cut for the first time.
 */
function compareGone(state: TemplateState, paired: readonly TemplateComparison[]): TemplateComparison {
  const gone: TemplateComparison = { verdict: "gone", old: state, new: null, changes: [] };
  const now = paired.find(
    ({ new: fresh }) => fresh !== null && fresh.serves.length > 1 && fresh.serves.includes(state.base),
  );
  if (now === undefined || now.new === null || now.verdict === "recut" || now.verdict === "to cut") return gone;
  const { base, bases, serves, quantity } = state;
  return compareTemplates(state, { ...now.new, base, bases, serves, quantity });
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
  pairServed(pairs, left, fresh);
  pairBy(({ base, role }) => JSON.stringify([base.toUpperCase(), role]));
  pairAlike(pairs, left, fresh);
  return { pairs, gone: [...left], added: fresh.filter((state) => !pairs.has(state)) };
}

/** What was cut for several bases goes on as the same plate that serves most of them, whatever its mark. */
function pairServed(
  pairs: Map<TemplateState, TemplateState>,
  left: Set<TemplateState>,
  fresh: readonly TemplateState[],
): void {
  for (const before of [...left].filter(({ serves }) => serves.length > 1)) {
    const served = new Set(before.serves);
    const common = ({ serves }: TemplateState): number => serves.filter((base) => served.has(base)).length;
    const [next] = fresh
      .filter((state) => !pairs.has(state) && common(state) > 0 && isSamePlate(before, state))
      .sort((a, b) => common(b) - common(a));
    if (next === undefined) continue;
    pairs.set(next, before);
    left.delete(before);
  }
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
