/** Results of rules: constructors, and the way missing input becomes a not-checked row. Lengths are doubled nanometres. */
import type { Given, Input, Missing, Severity } from "../job/model/job.js";
import { given, keysOfMissing, missing } from "../job/model/job.js";
import type { Length } from "../units/index.js";
import { nanometres } from "../units/index.js";
import type { RuleResult, Sense } from "./model.js";
import { marginOf } from "./run.js";
import type { Words } from "./words.js";

/** What a result may set for itself instead of taking it from its rule. */
export interface Own {
  readonly severity?: Severity;
  readonly clause?: string;
  readonly edition?: string;
  readonly measured?: string;
  /** Of a row that is compared: see `RuleResult`. */
  readonly chosen?: boolean;
}

/** What a row that is not checked may set for itself. */
export interface OwnLack extends Own {
  readonly missing?: readonly string[];
}

/** Two doubled lengths held against each other. */
export function compare(
  subject: string,
  value: number,
  sense: Sense,
  limit: number,
  note: string,
  own: Own = {},
): RuleResult {
  return {
    kind: "compared",
    subject,
    value: { kind: "length", twice: value },
    limit: { kind: "length", twice: limit },
    sense,
    note,
    ...own,
  };
}

/** Two counts held against each other. */
export function compareCounts(
  subject: string,
  value: number,
  sense: Sense,
  limit: number,
  note: string,
  noun?: string,
): RuleResult {
  return {
    kind: "compared",
    subject,
    value: { kind: "count", count: value, ...(noun === undefined ? {} : { noun }) },
    limit: { kind: "count", count: limit },
    sense,
    note,
  };
}

/** The rule has nothing to hold here. */
export function notApplicable(subject: string, note: string, { chosen: _chosen, ...own }: Own = {}): RuleResult {
  return { kind: "not-applicable", subject, note, ...own };
}

/** The rule applies, and something that it needs is not known. */
export function notChecked(subject: string, note: string, { chosen: _chosen, ...own }: OwnLack = {}): RuleResult {
  return { kind: "not-checked", subject, note, ...own };
}

/** A not-checked row that names each missing key and why it is missing. */
export function lacking(subject: string, missing: readonly Missing[], own: Own = {}): RuleResult {
  return notChecked(subject, whyMissing(missing), { ...own, missing: keysOf(missing) });
}

/** The keys that would supply what is missing, each once; none where no key would supply all of it. */
export function keysOf(missing: readonly Missing[]): readonly string[] {
  const keys = missing.map(keysOfMissing);
  return keys.some(({ length }) => length === 0) ? [] : [...new Set(keys.flat())];
}

/** Why each is missing, and the key that would supply it; each once. */
function whyMissing(missing: readonly Missing[]): string {
  return [...new Set(missing.map(({ why, key }) => (key === "" ? why : `${why} (${key})`)))].join("; ");
}

/** A not-checked row for a size that an edition does not hold; `key` chooses another edition. */
export function notTabulated(subject: string, what: string, nearest: readonly string[], key: string): RuleResult {
  const near = nearest.length === 0 ? "" : `; nearest: ${nearest.join(", ")}`;
  return lacking(subject, [missing(key, `${what}${near}`)]);
}

/** One part of a sum: a length, taken so many halves of times, and the figures between which it lies while it is not known. */
export interface Term {
  readonly name: string;
  readonly input: Input<Length>;
  /** 2 adds the length, -2 takes it off, 4 adds it twice, 1 adds half of it. */
  readonly halves: number;
  /** Nanometres; null: it may be as great as it likes. */
  readonly range: { readonly least: number; readonly greatest: number | null };
}

const ANY_LENGTH = { least: 0, greatest: null } as const;

/** A length that is added; `halves` says how often. */
export function plus(name: string, input: Input<Length>, halves = 2): Term {
  return { name, input, halves, range: ANY_LENGTH };
}

/** A length that is taken off. */
export function minus(name: string, input: Input<Length>): Term {
  return plus(name, input, -2);
}

/** The term, no less than this while it is not known. */
export function atLeast(least: Length, term: Term): Term {
  return { ...term, range: { ...term.range, least } };
}

/** A length that is known whatever the job says. */
export function fixed(name: string, length: number, halves = 2): Term {
  return plus(name, given(nanometres(length), name), halves);
}

/** What a row of sums may say beside its figures. */
export interface SumRow extends Own {
  /** Follows the figures: gets twice the value less twice the limit. */
  readonly remark?: (twiceSpare: number) => string;
}

/**
 * Two sums held against each other. Where a part is missing, its best case stands in: a row that fails even so fails, and its
 * note says that it does whatever the part is; every other row with a part missing, and of `=` every one, is not checked.
 */
export function compareSums(
  subject: string,
  [value, sense, limit]: readonly [readonly Term[], Sense, readonly Term[]],
  say: Words,
  { remark, ...own }: SumRow = {},
): RuleResult {
  const missing = [...value, ...limit].flatMap(({ name, input }) =>
    input.kind === "missing" ? [{ name, input }] : [],
  );
  const held = bestSum(value, sense === ">=");
  const asked = bestSum(limit, sense === "<=");
  if (held === null || asked === null || (sense === "=" && missing.length > 0))
    return lacking(
      subject,
      missing.map(({ input }) => input),
      own,
    );
  const figures = `${sumText(value, say)} against ${sumText(limit, say)}`;
  const note = `${figures}${missing.length > 0 ? "" : (remark?.(held - asked) ?? "")}`;
  return inBestCase(compare(subject, held, sense, asked, note, own), missing);
}

/** An input that is missing, with its name in notes: "washer". */
export interface NamedMissing {
  readonly name: string;
  readonly input: Missing;
}

/** Those of the inputs that are missing, by their names. */
export function missingAmong(inputs: Readonly<Record<string, Input<unknown>>>): readonly NamedMissing[] {
  return Object.entries(inputs).flatMap(([name, input]) => (input.kind === "missing" ? [{ name, input }] : []));
}

/**
 * A row that was worked out with its missing inputs in their best case. It stands when none is missing; when it fails it
 * fails whatever they are, and says so; else it is not checked.
 */
export function inBestCase(row: RuleResult, missing: readonly NamedMissing[]): RuleResult {
  const spare = spareOf(row);
  if (row.kind === "not-checked" && row.missing !== undefined && missing.length > 0) return alsoLacking(row, missing);
  if (missing.length === 0 || row.kind !== "compared" || spare === null) return row;
  if (spare < 0) return { ...row, note: `${row.note}; ${failsWhatever(missing)}` };
  const { value, sense, limit, chosen, ...rest } = row;
  const inputs = missing.map(({ input }) => input);
  return { ...rest, kind: "not-checked", note: whyMissing(inputs), missing: keysOf(inputs) };
}

/** A row that is not checked already, and lacks these too. */
function alsoLacking(row: RuleResult & { readonly kind: "not-checked" }, missing: readonly NamedMissing[]): RuleResult {
  const inputs = missing.map(({ input }) => input);
  const keys = [...new Set([...(row.missing ?? []), ...keysOf(inputs)])];
  return { ...row, note: `${row.note}; ${whyMissing(inputs)}`, missing: keys };
}

/** What a result has to spare, a length doubled; null where nothing was compared. */
export function spareOf(row: RuleResult): number | null {
  if (row.kind !== "compared") return null;
  const margin = marginOf(row.value, row.sense, row.limit);
  return margin.kind === "length" ? margin.twice : margin.count;
}

/**
 * Two rows of one cause, as specified and with a tolerance against it: where both fail the first asks for both, `against` saying
 * with what, and the second is advice, so that one question is put.
 */
export function askOnce(
  [specified, tolerated]: readonly [RuleResult, RuleResult],
  against: string,
  say: Words,
): readonly [RuleResult, RuleResult] {
  const [spare, least] = [spareOf(specified), spareOf(tolerated)];
  if (spare === null || least === null || spare >= 0 || least >= 0) return [specified, tolerated];
  return [
    { ...specified, note: `${specified.note}; ${against} short by ${say.twice(-least)}` },
    { ...tolerated, severity: "advise", note: `${tolerated.note}; asked for with the row as specified` },
  ];
}

/** `it fails whatever the washer is: no washer is given (basePlate.washer)`. */
function failsWhatever(missing: readonly NamedMissing[]): string {
  const names = inWords(missing.map(({ name }) => `the ${name}`));
  const why = whyMissing(missing.map(({ input }) => input));
  return `it fails whatever ${names} ${missing.length === 1 ? "is" : "are"}: ${why}`;
}

/** `a`, `a and b`, `a, b and c`. */
function inWords(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;
}

/** Twice the sum, each missing part at the end of its range that makes the sum greatest or least; null where it has no end. */
function bestSum(terms: readonly Term[], greatest: boolean): number | null {
  let sum = 0;
  for (const { input, halves, range } of terms) {
    const unknown = halves > 0 === greatest ? range.greatest : range.least;
    const length = input.kind === "given" ? input.value : unknown;
    if (length === null) return null;
    sum += halves * length;
  }
  return sum;
}

/** `projection 9 - grout 2`; a part that is not known is named without a figure. */
function sumText(terms: readonly Term[], say: Words): string {
  return terms
    .map(({ name, input, halves }, index) => {
      const sign = halves < 0 ? "- " : index === 0 ? "" : "+ ";
      const times = Math.abs(halves) > 2 ? `${Math.abs(halves) / 2} x ` : "";
      const figure = input.kind === "given" ? ` ${say.length(input.value)}` : " (not given)";
      return `${sign}${times}${name}${figure}${Math.abs(halves) === 1 ? " / 2" : ""}`;
    })
    .join(" ");
}

type NamedInputs = Readonly<Record<string, Input<unknown>>>;
type Values<T extends NamedInputs> = { readonly [K in keyof T]: Extract<T[K], Given<unknown>>["value"] };

/** Every value, or every input that is missing. */
export type Known<T extends NamedInputs> =
  | { readonly all: true; readonly values: Values<T> }
  | { readonly all: false; readonly missing: readonly Missing[] };

/** Takes the values out of the inputs when all of them are given. */
export function known<T extends NamedInputs>(inputs: T): Known<T> {
  const values: Record<string, unknown> = {};
  const missing: Missing[] = [];
  for (const key of Object.keys(inputs)) {
    const input = inputs[key] as Input<unknown>;
    if (input.kind === "given") values[key] = input.value;
    else missing.push(input);
  }
  return missing.length > 0 ? { all: false, missing } : { all: true, values: values as Values<T> };
}
