/** The bytes of a summary.json, schema 1 -> its values, or what is wrong with them. */
import * as z from "zod";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { placeInText } from "../readers/text.js";
import type { Summary, SummaryBase, SummaryCheck, SummaryQuestion, SummaryRods } from "../summary/model.js";
import type { SummaryTemplate } from "./model.js";
import type { SummaryPiece } from "./split-summary.js";
import { splitSummary } from "./split-summary.js";

const number = z.number({ error: "is not a finite number" });
const size = number.nonnegative({ error: "is negative" });
const count = number.int({ error: "is not a whole number" }).nonnegative({ error: "is negative" });
const text = z.string({ error: "is not text" });

const file = z.object({
  kind: text,
  path: text.refine(isInside, { error: "is not a path inside the package" }),
  bytes: count,
  sha256: text.regex(/^[0-9a-f]{64}$/, { error: "is not a SHA-256 in hexadecimal" }),
  layers: z.object({ cut: z.array(text), mark: z.array(text) }).exactOptional(),
  piece: text.exactOptional(),
});

const hole = z
  .object({
    tag: text,
    role: z.enum(["rod", "opening", "nail", "grout", "bolt"], {
      error: "is no role; allowed are rod, opening, nail, grout, bolt",
    }),
    x: number,
    y: number,
    diameter: size.exactOptional(),
    width: size.exactOptional(),
    height: size.exactOptional(),
    radius: size.exactOptional(),
    rod: size.exactOptional(),
    made: z.enum(["cut", "drill"], { error: "is neither cut nor drill" }),
  })
  .refine(({ diameter, width, height }) => diameter !== undefined || (width !== undefined && height !== undefined), {
    error: "has neither a diameter nor a width and a height",
  });

const plate = {
  mark: text,
  quantity: count,
  outline: z.object({
    kind: z.enum(["path", "circle"], { error: "is neither path nor circle" }),
    extent: z.tuple([number, number, number, number], { error: "is not a list of four numbers" }),
    area: size,
    perimeter: size,
  }),
  material: z.enum(["steel", "plywood"], { error: "is neither steel nor plywood" }).exactOptional(),
  grade: text.nullable().exactOptional(),
  thickness: size,
  netArea: number,
  weight: z.object({ value: size, unit: z.enum(["lb", "kg"]) }).nullable(),
  cutLength: size,
  pierces: count,
  scribeLength: size.exactOptional(),
  holes: z.array(hole),
};

const piece = z.object({
  ...plate,
  role: z.enum(["template", "lower template", "segment", "splice plate"], { error: "is no role of a piece" }),
  place: z.object({ turn: number, x: number, y: number }).exactOptional(),
});

const template = z.object({
  ...plate,
  bases: z.array(text).exactOptional(),
  heldBy: z.array(text).exactOptional(),
  released: z.boolean().exactOptional(),
  pieces: z.array(piece).exactOptional(),
});

const said = z.object({ by: text, date: text, text });

const check = z.object({
  ...{ rule: text, clause: text, edition: text, subject: text, severity: text },
  ...{ value: number.nullable(), limit: number.nullable(), sense: text.nullable(), margin: number.nullable() },
  ...{ unit: text, status: text, note: text },
  ...{ answer: said.exactOptional(), accepted: said.exactOptional() },
});

const known = size.nullable();
const endPlate = { shape: z.enum(["round", "square"]), size, thickness: size };
const tackWelded = z.literal(true).exactOptional();
const bottom = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("straight") }),
  z.object({ kind: z.literal("nut"), washer: z.object(endPlate).exactOptional(), tackWelded }),
  z.object({ kind: z.literal("plate"), ...endPlate, nuts: count.exactOptional(), tackWelded }),
  z.object({ kind: z.literal("hook"), reach: size, radius: size.exactOptional() }),
  z.object({ kind: z.literal("swedged"), length: size }),
]);

const madeRod = z.object({
  ...{ kind: text.nullable(), overall: known, cutLength: known, lengthBy: z.enum(["given", "worked out"]).nullable() },
  ...{
    fullThread: z.boolean(),
    bottomThread: known,
    threadCallout: text,
    threadClass: text.nullable(),
    threading: text.nullable(),
    bar: known,
  },
  ...{ zincProcess: text.nullable(), endColor: text.nullable() },
  weight: z.object({ value: size, unit: z.enum(["lb", "kg"]) }).nullable(),
  hardware: z.object({
    nut: text.nullable(),
    nuts: z.object({ basePlate: count, levelling: count, template: count, lowerEnd: count }),
    washers: z.object({ basePlate: count, levelling: count, template: count, lowerEnd: count }),
    plates: count,
  }),
});

const rods = z.object({
  ...{ group: text, quantity: count, total: count, size: text, diameter: size, thread: text },
  ...{ grade: text.nullable(), finish: text.nullable() },
  weldable: z.enum(["S1", "weldable"]).exactOptional(),
  ...{ projection: known, embedment: known, length: known, threadLength: known, bottom: bottom.nullable() },
  made: madeRod.exactOptional(),
});

const base = z.object({
  ...{ mark: text, quantity: count, held: z.boolean({ error: "is neither true nor false" }) },
  ...{ template, rods: z.array(rods).exactOptional(), checks: z.array(check), files: z.array(file) },
});

const asked = z.object({
  ...{ number: text, bases: z.array(text), rule: text },
  status: z.enum(["open", "answered", "accepted", "closed"], { error: "is no state of a question" }),
});

/** Everything but the bases. */
const rest = z.object({
  schema: z.literal(1, { error: "is not 1, the schema that this program reads" }),
  job: z.object({
    ...{ number: text, title: text, revision: text, status: text },
    unit: z.enum(["in", "mm"], { error: "is neither in nor mm" }),
    editions: z.record(z.string(), z.string()),
  }),
  bases: z.array(z.never({ error: "is not a base" })),
  checks: z.array(check),
  layoutHeld: z.array(text).exactOptional(),
  questions: z.array(asked).exactOptional(),
  files: z.array(file),
});

/** A base as it was read, with its ledger. */
export type LedgerBase = z.output<typeof base>;

/** What a comparison takes from a summary: all but the ledger, which is most of it. */
export interface PackageSummary {
  readonly job: Summary["job"];
  readonly bases: readonly PackageBase[];
  readonly files: Summary["files"];
  /** Rows of the layout, and why it is held. */
  readonly checks: Summary["checks"];
  readonly layoutHeld: readonly string[];
  /** None in packages of programs that did not number them. */
  readonly questions: readonly Pick<SummaryQuestion, "number" | "bases" | "rule" | "status">[];
}

/** A base as a summary has it; without rods in packages of programs that did not list them. */
export type PackageBase = SummaryTemplate & { readonly rods?: readonly SummaryRods[] };

/** Forward slashes, no way up, no root: on every system. */
function isInside(path: string): boolean {
  return path !== "" && !/[\\:\0]/.test(path) && path.split("/").every((part) => !["", ".", ".."].includes(part));
}

/**
 * Reads and checks a summary, handed in as it comes from the disk; `file` is its name for findings. Further keys, of later
 * programs, are passed over. `each` is handed every base with its ledger, which is not kept.
 */
export function readSummary(
  chunks: Iterable<Uint8Array>,
  file: string,
  each?: (base: LedgerBase) => void,
): Outcome<PackageSummary> {
  const findings: Finding[] = [];
  const bases: PackageBase[] = [];
  let index = 0;
  for (const piece of splitSummary(chunks)) {
    if (piece.kind === "rest") {
      const whole = readPiece(piece, rest, file, [], findings);
      if (findings.length > 0 || whole === null) return { ok: false, findings };
      const { job, files, checks, layoutHeld = [], questions = [] } = whole;
      return { ok: true, value: { job, bases, files, checks, layoutHeld, questions }, findings };
    }
    const read = readPiece(piece, base, file, ["bases", index], findings);
    if (read !== null) {
      each?.(read);
      bases.push(withoutChecks(read));
    }
    index += 1;
  }
  throw new Error("a summary has a rest, if an empty one");
}

/** A package of a program whose templates served one base each does not list bases. */
function withoutChecks({ checks: _, template: own, ...others }: z.output<typeof base>): PackageBase {
  return { ...others, template: { ...own, bases: own.bases ?? [others.mark] } };
}

/** A base of a job as it is read from its summary: the same keys in the same order, so that a job and its package are signed alike. */
export function baseAsRead(written: SummaryBase): LedgerBase {
  return base.parse(JSON.parse(JSON.stringify(written)));
}

/** The same of rows of the ledger. */
export function checksAsRead(written: readonly SummaryCheck[]): Summary["checks"] {
  return z.array(check).parse(JSON.parse(JSON.stringify(written)));
}

/** null, and a finding for each fault, where the piece is no JSON or not of this schema. */
function readPiece<T extends z.ZodType>(
  { text: json, line }: SummaryPiece,
  schema: T,
  file: string,
  path: readonly PropertyKey[],
  findings: Finding[],
): z.output<T> | null {
  const value = parseJson(json);
  if (!value.ok) {
    const place = placeInText(json, value.offset);
    findings.push(fault("bad-json", { file, ...place, line: line + place.line - 1 }, BAD_JSON));
    return null;
  }
  const read = schema.safeParse(value.value, { error: () => "is missing, or not what a summary has there" });
  if (read.success) return read.data;
  for (const issue of read.error.issues) findings.push(findingOf(issue, file, path));
  return null;
}

const BAD_JSON = "is not JSON from here on; the file is cut off or damaged";

/** The value, or the place of the fault: the end, where the parser does not tell. */
function parseJson(
  json: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly offset: number } {
  try {
    return { ok: true, value: JSON.parse(json) };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return { ok: false, offset: Number(/at position (\d+)/.exec(error.message)?.[1] ?? json.length) };
  }
}

function findingOf({ path, message }: z.core.$ZodIssue, file: string, before: readonly PropertyKey[]): Finding {
  const where = [...before, ...path].reduce<string>((way, key) => {
    if (typeof key === "number") return `${way}[${key}]`;
    return way === "" ? String(key) : `${way}.${String(key)}`;
  }, "");
  return fault("bad-summary", { file, ...(where === "" ? {} : { path: where }) }, message);
}

function fault(code: string, at: Finding["at"], message: string): Finding {
  return { code, severity: "error", at, message };
}
