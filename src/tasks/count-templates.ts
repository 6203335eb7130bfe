/** How many of each template are made: as the job says for the template, else as its bases say together. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { nearestWord } from "../diagnostics/nearest.js";
import type { Base, Job, TemplateQuantity } from "../job/index.js";
import { markKey, servedMarks } from "../job/index.js";
import type { ShapedBase } from "../template/index.js";
import { groupBy } from "../units/group-by.js";
import { lastFor } from "../units/once.js";

/** Bases whose templates bear their marks already. */
export type WithShares = readonly ShapedBase[];

/** Gives every template its quantity; what is said of a template that is not there is a fault where the job `isWhole`. */
export function countTemplates(
  job: Job,
  bases: WithShares,
  { isWhole }: { readonly isWhole: boolean },
): {
  readonly value: { readonly job: Job; readonly bases: readonly ShapedBase[] };
  readonly findings: readonly Finding[];
} {
  const asked = new Map(job.templates.map((each) => [markKey(each.mark), each]));
  const sets = groupBy(bases, ({ base }) => markKey(base.template.mark));
  const totals = new Map([...sets].map(([key, set]) => [key, asked.get(key)?.quantity ?? sum(set)]));
  const counted = bases.map((each): ShapedBase => {
    const quantity = totals.get(markKey(each.base.template.mark)) ?? each.base.template.quantity;
    if (quantity === each.base.template.quantity) return each;
    return { ...each, base: withQuantity(each.base, quantity) };
  });
  const summed = [...sets].flatMap(([key, set]) => (asked.has(key) ? [] : summedAlike(set.map(({ base }) => base))));
  const faults = isWhole ? [...unknownTemplates(job.templates, bases), ...twice(job.templates)] : [];
  return { value: { job: withBases(job, counted), bases: counted }, findings: [...faults, ...summed] };
}

const withQuantity = lastFor((base: Base, quantity: number): Base => {
  return { ...base, template: { ...base.template, quantity } };
});

function sum(set: readonly ShapedBase[]): number {
  return set.reduce((total, { base }) => total + base.template.quantity, 0);
}

/** Bases that are not among those made keep what they have: they have faults, and nothing comes of the job. */
function withBases(job: Job, made: readonly ShapedBase[]): Job {
  const byMark = new Map(made.map(({ base }) => [base.mark, base]));
  return { ...job, bases: job.bases.map((base) => byMark.get(base.mark) ?? base) };
}

/** The same number written on every row may be that of the template, and not of each row. */
function summedAlike(set: readonly Base[]): readonly Finding[] {
  const [first, ...others] = set;
  if (first === undefined || others.length === 0) return [];
  const { mark, written } = first.template;
  if (written.quantity === null || others.some(({ template }) => template.written.quantity !== written.quantity))
    return [];
  const total = written.quantity * set.length;
  const marks = listed(servedMarks(first), MOST_MARKS);
  const message = `template ${mark} serves ${marks}, and each of them says ${written.quantity}: ${total} are made, the sum`;
  const hint = `for another number write templates: { ${mark}: { quantity: ${written.quantity} } }`;
  return [{ code: "template-quantity-summed", severity: "warning", at: first.place, message, hint }];
}

const MOST_MARKS = 8;

function unknownTemplates(asked: readonly TemplateQuantity[], bases: WithShares): readonly Finding[] {
  const marks = new Map(bases.map(({ base }) => [markKey(base.template.mark), base.template.mark]));
  const merged = new Map(
    bases.flatMap(({ base: { mark, template } }) =>
      [mark, template.written.mark ?? mark].map((each) => [markKey(each), template.mark] as const),
    ),
  );
  return asked.flatMap(({ mark, place }): Finding[] => {
    if (marks.has(markKey(mark))) return [];
    const other = merged.get(markKey(mark));
    const fault = { code: "unknown-template", severity: "error", at: place } as const;
    if (other !== undefined)
      return [
        { ...fault, message: `no template is marked "${mark}": that of ${mark} is ${other}`, hint: `write ${other}` },
      ];
    const near = nearestWord(mark, [...marks.values()]);
    const message = `no template is marked "${mark}"; allowed are the template marks of the job: ${listed([...marks.values()], MOST_MARKS)}`;
    return [{ ...fault, message, ...(near === undefined ? {} : { hint: `did you mean ${near}?` }) }];
  });
}

function twice(asked: readonly TemplateQuantity[]): readonly Finding[] {
  const seen = new Set<string>();
  return asked.flatMap(({ mark, place }): Finding[] => {
    const key = markKey(mark);
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    const message = `the template "${mark}" stands twice in this list; allowed is one quantity a template`;
    return [{ code: "template-twice", severity: "error", at: place, message }];
  });
}
