/**
 * Templates that became one, and one that became several: in OLD every base had a template of its own and in NEW they share
 * one, or the other way round. Where the plate is the same, nothing is cut again.
 */
import { groupBy } from "../units/group-by.js";
import type { Change, TemplateState } from "./model.js";

/** A state of OLD for one of NEW, made of the templates or of the part of a template that it was. */
export interface Regrouped {
  /** The states of OLD that it is made of. */
  readonly parts: readonly TemplateState[];
  readonly old: TemplateState;
  readonly fresh: TemplateState;
  /** null: a template that served one of these bases serves more of them now. */
  readonly change: Change | null;
}

const key = (mark: string): string => mark.toUpperCase();

/** Every set of templates that changed its members without changing its plate. `isSamePlate` holds OLD against NEW. */
export function regroup(
  old: readonly TemplateState[],
  fresh: readonly TemplateState[],
  isSamePlate: (old: TemplateState, fresh: TemplateState) => boolean,
): readonly Regrouped[] {
  return [...mergedIn(old, fresh, isSamePlate), ...splitIn(old, fresh, isSamePlate)];
}

type SamePlate = Parameters<typeof regroup>[2];

function mergedIn(old: readonly TemplateState[], fresh: readonly TemplateState[], isSame: SamePlate): Regrouped[] {
  const byBase = statesByBase(old);
  return fresh.flatMap((state): Regrouped[] => {
    const parts = partsOf(state, byBase).filter((part) => part.delivered && isSame(part, state));
    if (state.serves.length < 2 || parts.length === 0) return [];
    const lead = parts.find(({ mark }) => key(mark) === key(state.mark)) ?? parts[0] ?? state;
    const together: TemplateState = {
      ...lead,
      bases: parts.reduce((sum, { bases }) => sum + bases, 0),
      quantity: parts.reduce((sum, { quantity }) => sum + quantity, 0),
      serves: parts.flatMap(({ serves }) => serves),
    };
    const from = parts.map(({ mark }) => mark);
    const change: Change | null = parts.length > 1 ? { what: "merged", from, bases: state.serves } : null;
    return [{ parts, old: { ...together, hashes: firstOther(parts, state) }, fresh: state, change }];
  });
}

/** The hashes of a part that is scribed otherwise than NEW, where there is one: its plates bear the old mark. */
function firstOther(parts: readonly TemplateState[], fresh: TemplateState): TemplateState["hashes"] {
  const differs = ({ hashes }: TemplateState): boolean =>
    [...hashes].some(([kind, hash]) => fresh.hashes.has(kind) && fresh.hashes.get(kind) !== hash);
  return (parts.find(differs) ?? parts[0] ?? fresh).hashes;
}

function splitIn(old: readonly TemplateState[], fresh: readonly TemplateState[], isSame: SamePlate): Regrouped[] {
  const byBase = statesByBase(fresh);
  return old.flatMap((state): Regrouped[] => {
    const parts = state.delivered ? partsOf(state, byBase).filter((part) => isSame(state, part)) : [];
    if (parts.length < 2) return [];
    const others = parts.slice(1).reduce((sum, { quantity }) => sum + quantity, 0);
    return parts.map((part, at): Regrouped => {
      const quantity = at === 0 ? Math.max(0, state.quantity - others) : part.quantity;
      const { base, bases, serves } = part;
      const change: Change = { what: "split", from: state.mark, bases: serves };
      return { parts: [state], old: { ...state, base, bases, serves, quantity }, fresh: part, change };
    });
  });
}

function statesByBase(states: readonly TemplateState[]): ReadonlyMap<string, TemplateState> {
  return new Map(states.flatMap((state) => state.serves.map((base) => [key(base), state])));
}

/** Templates of the other side that serve bases of this one and no others, in its order. */
function partsOf(whole: TemplateState, byBase: ReadonlyMap<string, TemplateState>): readonly TemplateState[] {
  if (whole.serves.length < 2) return [];
  const own = new Set(whole.serves.map(key));
  const found = whole.serves.flatMap((base) => byBase.get(key(base)) ?? []);
  return [...groupBy(found, (state) => state).keys()].filter(({ serves }) =>
    serves.every((base) => own.has(key(base))),
  );
}
