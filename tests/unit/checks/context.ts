/** Contexts and rows for rule tests: a base goes through the real pattern and plate stages. */
import { expect, it } from "vitest";
import type { CheckContext, CheckRow, Rule } from "../../../src/checks/index.js";
import { sharedQuestionText } from "../../../src/checks/index.js";
import { runRules } from "../../../src/checks/run.js";
import type { Base, BasePlate, Concrete, Job, RodGroup, Shop, TemplateSpec } from "../../../src/job/model/job.js";
import { placeRods } from "../../../src/rods/index.js";
import { makePlate } from "../../../src/template/index.js";
import type { Length } from "../../../src/units/index.js";
import { inches, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";

export interface Changes {
  readonly job?: Partial<Job>;
  readonly shop?: Partial<Shop>;
  readonly base?: Partial<Base>;
  readonly group?: Partial<RodGroup>;
  readonly rod?: Partial<RodGroup["rod"]>;
  readonly template?: Partial<TemplateSpec>;
  readonly basePlate?: Partial<BasePlate>;
  readonly concrete?: Partial<Concrete>;
}

/** The question that a failing row of the base is. */
export function questionText(row: CheckRow, { job, base }: CheckContext): string {
  return sharedQuestionText([{ base, subjects: [row] }], row, job.unit);
}

/** A context of the fixture with changes. */
export function contextOf(changes: Changes = {}): CheckContext {
  const fixture = baseFixture();
  const base = baseFixture({
    groups: [groupFixture(changes.group, changes.rod)],
    template: { ...fixture.template, ...changes.template },
    basePlate: { ...fixture.basePlate, ...changes.basePlate },
    concrete: { ...fixture.concrete, ...changes.concrete },
    ...changes.base,
  });
  const job = jobFixture({ shop: shopFixture(changes.shop), ...changes.job });
  return throughStages({ ...job, bases: [base] }, base);
}

function throughStages(job: Job, base: Base): CheckContext {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error(rods.findings.map(({ message }) => message).join("; "));
  const plate = makePlate(job, base, rods.value);
  if (!plate.ok) throw new Error(plate.findings.map(({ message }) => message).join("; "));
  return { job, base, rods: rods.value, plate: plate.value };
}

/** Rods at these x positions, on one line. */
export function onLine(...xs: readonly number[]): RodGroup["pattern"] {
  const zero = nanometres(0);
  return { kind: "points", at: xs.map((x) => ({ x: nanometres(x), y: zero })) };
}

/** The rows of one rule. */
export function rowsOf(rule: Rule, changes: Changes = {}): readonly CheckRow[] {
  return runRules([rule], contextOf(changes));
}

/** The only row that is picked; throws when there is none or more than one. */
export function rowOf(rule: Rule, changes: Changes, pick: (row: CheckRow) => boolean): CheckRow {
  const found = rowsOf(rule, changes).filter(pick);
  const [row] = found;
  if (row === undefined || found.length > 1) throw new Error(`${found.length} rows of ${rule.id}`);
  return row;
}

export interface AtLimit {
  readonly name: string;
  readonly rule: Rule;
  /** The context with the held value at its limit plus `delta` nanometres. */
  readonly at: (delta: number) => Changes;
  /** +1: passes above the limit; -1: passes below it; 0: passes on it alone. */
  readonly passes: 1 | -1 | 0;
  readonly pick: (row: CheckRow) => boolean;
}

/** Holds a rule at its limit - 1 nm, at the limit, at + 1 nm. */
export function testAtLimit({ name, rule, at, passes, pick }: AtLimit): void {
  it.each([-1, 0, 1])(`${name}: limit %i nm`, (delta) => {
    const row = rowOf(rule, at(delta), pick);
    const good = passes === 0 ? delta === 0 : delta * passes >= 0;
    expect({ status: row.status, note: row.note }).toEqual({ status: good ? "pass" : "fail", note: row.note });
    expect(row.margin?.kind).toBe("length");
    const margin = row.margin?.kind === "length" ? row.margin.twice : Number.NaN;
    expect(Math.sign(margin)).toBe(passes === 0 ? -Math.abs(delta) + 0 : delta * passes + 0);
  });
}

/** `length` plus nanometres. */
export function plus(length: Length, delta: number): Length {
  return nanometres(length + delta);
}

export const isSubject = (subject: string) => (row: CheckRow) => row.subject === subject;
export const hasClause = (subject: string, clause: string) => (row: CheckRow) =>
  row.subject === subject && row.clause.includes(clause);

export const inch = inches;
