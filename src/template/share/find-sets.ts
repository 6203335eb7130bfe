/** Which bases one template would serve: those whose plates, made with the mark that they would share, are one piece. */
import { ProgramFault } from "../../diagnostics/program-fault.js";
import type { Base, Job } from "../../job/model/job.js";
import { markKey } from "../../job/schema/marks.js";
import type { BaseWithRods } from "../../rods/model.js";
import { groupBy } from "../../units/group-by.js";
import { lastFor, onceFor } from "../../units/once.js";
import { makePlate } from "../make-plate.js";
import { nameTemplate } from "./name-template.js";
import { plateKey } from "./plate-key.js";

/** Bases with one template, in the order of the job, and its mark. */
export interface TemplateSet {
  readonly mark: string;
  readonly members: readonly BaseWithRods[];
}

/** The sets that the job gives itself: template marks that stand on several bases. */
export function givenSets(bases: readonly BaseWithRods[]): readonly TemplateSet[] {
  return unitsOf(bases).flatMap(({ given, members }) =>
    given === null || members.length < 2 ? [] : [{ mark: given, members }],
  );
}

/**
 * As few templates as there are different plates: every set of two or more bases that one template would serve, those of
 * the job among them. What is alike in rods and holes is looked at closer; a plate is made for each base of it.
 */
export function equalSets(bases: readonly BaseWithRods[], plates: PlateKeys): readonly TemplateSet[] {
  const used = new Set(
    bases.flatMap(({ base: { mark, template } }) => [mark, template.written.mark ?? mark]).map(markKey),
  );
  const order = new Map(bases.map((each, at) => [each, at]));
  const found = [...groupBy(unitsOf(bases), likeness).values()].flatMap((units) => settle(plates, units, order, used));
  return found.sort((a, b) => place(a, order) - place(b, order));
}

type Order = ReadonlyMap<BaseWithRods, number>;

const placeOf = (each: BaseWithRods | undefined, order: Order): number =>
  each === undefined ? -1 : (order.get(each) ?? -1);
const place = ({ members }: TemplateSet, order: Order): number => placeOf(members[0], order);

/** Bases that stay together: those to which the job gives one mark, or a base by itself. */
interface Unit {
  readonly given: string | null;
  readonly members: readonly BaseWithRods[];
}

function unitsOf(bases: readonly BaseWithRods[]): readonly Unit[] {
  const keyOf = ({ base: { mark, template } }: BaseWithRods) =>
    template.written.mark === null ? `base ${markKey(mark)}` : `template ${markKey(template.written.mark)}`;
  return [...groupBy(bases, keyOf).values()].map((members) => {
    return { given: members[0]?.base.template.written.mark ?? null, members };
  });
}

/** What two plates must agree in to be one, as far as it is known without making them. */
function likeness({ members: [first] }: Unit): string {
  if (first === undefined) return "";
  return likenessOf(first.base, first.rods);
}

const likenessOf = lastFor(({ template: { use, material, thickness } }: Base, rods: BaseWithRods["rods"]): string => {
  const holes = rods.map(({ tag, center, group }) => [tag, center.x, center.y, group.hole.value, group.rod.size]);
  return JSON.stringify([use, material, thickness, holes]);
});

/** Sets among units that are alike; a set that falls apart is tried again in parts, each under its own mark. */
function settle(
  plates: PlateKeys,
  units: readonly Unit[],
  order: Order,
  used: ReadonlySet<string>,
): readonly TemplateSet[] {
  const [only] = units;
  if (units.length < 2) {
    const isSet = only !== undefined && only.given !== null && only.members.length > 1;
    return isSet ? [{ mark: only.given, members: only.members }] : [];
  }
  const members = units.flatMap((unit) => unit.members).sort((a, b) => placeOf(a, order) - placeOf(b, order));
  const templates = units.flatMap(({ given }) => given ?? []);
  const mark = nameTemplate({ bases: members.map(({ base }) => base.mark), templates }, used);
  if (mark === null) return units.flatMap((unit) => settle(plates, [unit], order, used));
  if (isOnePlate(members)) return [{ mark, members }];
  const parts = partition(plates, units, { mark, members });
  if (parts.length === 1) return [{ mark, members }];
  return parts.flatMap((part) => settle(plates, part, order, used));
}

/** True of bases that differ in nothing that a plate follows from: none needs to be made to know it. */
function isOnePlate(members: readonly BaseWithRods[]): boolean {
  const [first, ...others] = members.map(({ base }) => inputsOf(base));
  return others.every((each) => each === first);
}

/** Units by their plates; one whose own bases differ stands alone. */
function partition(plates: PlateKeys, units: readonly Unit[], set: TemplateSet): readonly (readonly Unit[])[] {
  const sharedBy = set.members.map(({ base }) => base.mark);
  const keyOf = rememberKeys(plates, (base) => withTemplate(base, set.mark, sharedBy));
  const plateOf = ({ members }: Unit): string => [...new Set(members.map(keyOf))].sort().join("\n");
  const alone = (key: string, { members }: Unit): string =>
    key.includes("\n") ? `${key} ${members[0]?.base.mark ?? ""}` : key;
  return [...groupBy(units, (unit) => alone(plateOf(unit), unit)).values()];
}

/** The base with the mark of a template that it shares with others; the same object for the same mark and others as before. */
export function withTemplate(base: Base, mark: string, sharedBy: readonly string[]): Base {
  const known = lastShared.get(base);
  if (known?.template.mark === mark && isSameList(known.template.sharedBy, sharedBy)) return known;
  const shared = { ...base, template: { ...base.template, mark, sharedBy } };
  lastShared.set(base, shared);
  return shared;
}

const lastShared = new WeakMap<Base, Base>();

function isSameList(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((each, i) => each === b[i]));
}

/** All that the plate of a base follows from, but for the mark of its template. */
const inputsOf = onceFor((base: Base): string =>
  JSON.stringify({ ...base, ...SET_APART, template: { ...base.template, ...SET_APART_OF_TEMPLATE } }),
);

/** Of bases that differ in nothing but their marks and numbers one plate is made. */
function rememberKeys(plates: PlateKeys, asShared: (base: Base) => Base): (each: BaseWithRods) => string {
  const known = new Map<string, string>();
  return ({ base, rods }) => {
    const inputs = inputsOf(base);
    const found = known.get(inputs) ?? plates(asShared(base), rods);
    known.set(inputs, found);
    return found;
  };
}

/** What no plate of one template depends on; the marks of all bases that a template serves are the same for all of them. */
const SET_APART = { place: null, mark: "", quantity: 0, note: "" };
const SET_APART_OF_TEMPLATE = { mark: "", quantity: 0, written: null, sharedBy: null };

/** What the plate of a base is, as a text: the same for plates that are one piece. */
export type PlateKeys = (base: Base, rods: BaseWithRods["rods"]) => string;

/** The plates are made. */
export function madePlateKeys(job: Job): PlateKeys {
  return (base, rods) => {
    const made = makePlate(job, base, rods);
    if (!made.ok) throw new ProgramFault(`base ${base.mark}: a fault that was not found when its shape was made`);
    return plateKey(made.value, base.template.use);
  };
}
