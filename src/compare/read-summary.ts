/** The text of a summary.json, schema 1 -> its values, or what is wrong with them. */
import { z } from "zod";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { placeInText } from "../readers/text.js";
import type { Summary } from "../summary.js";

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
});

const hole = z
  .object({
    tag: text,
    role: z.enum(["rod", "opening", "nail", "grout"], { error: "is no role; allowed are rod, opening, nail, grout" }),
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

const template = z.object({
  mark: text,
  quantity: count,
  outline: z.object({
    kind: z.enum(["path", "circle"], { error: "is neither path nor circle" }),
    extent: z.tuple([number, number, number, number], { error: "is not a list of four numbers" }),
    area: size,
    perimeter: size,
  }),
  thickness: size,
  netArea: number,
  weight: z.object({ value: size, unit: z.enum(["lb", "kg"]) }).nullable(),
  cutLength: size,
  pierces: count,
  holes: z.array(hole),
});

const check = z.object({
  ...{ rule: text, clause: text, edition: text, subject: text, severity: text },
  ...{ value: number.nullable(), limit: number.nullable(), sense: text.nullable(), margin: number.nullable() },
  ...{ unit: text, status: text, note: text },
  answer: z.object({ by: text, date: text, text }).exactOptional(),
});

const summary = z.object({
  schema: z.literal(1, { error: "is not 1, the schema that this program reads" }),
  job: z.object({
    ...{ number: text, title: text, revision: text, status: text },
    unit: z.enum(["in", "mm"], { error: "is neither in nor mm" }),
    editions: z.record(z.string(), z.string()),
  }),
  bases: z.array(
    z.object({
      mark: text,
      quantity: count,
      held: z.boolean(),
      template,
      checks: z.array(check),
      files: z.array(file),
    }),
  ),
  checks: z.array(check),
  files: z.array(file),
});

/** Forward slashes, no way up, no root: on every system. */
function isInside(path: string): boolean {
  return path !== "" && !/[\\:\0]/.test(path) && path.split("/").every((part) => !["", ".", ".."].includes(part));
}

/** Reads and checks a summary; `file` is its name for findings. Further keys, of later programs, are passed over. */
export function readSummary(json: string, file: string): Outcome<Summary> {
  const parsed = parseJson(json, file);
  if (!parsed.ok) return parsed;
  const read = summary.safeParse(parsed.value);
  if (read.success) return { ok: true, value: read.data, findings: [] };
  return { ok: false, findings: read.error.issues.map((issue) => findingOf(issue, file)) };
}

function parseJson(json: string, file: string): Outcome<unknown> {
  try {
    return { ok: true, value: JSON.parse(json), findings: [] };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    const offset = /at position (\d+)/.exec(error.message)?.[1];
    const place = offset === undefined ? {} : placeInText(json, Number(offset));
    return {
      ok: false,
      findings: [fault("bad-json", { file, ...place }, "is not JSON; the file is cut off or damaged")],
    };
  }
}

function findingOf({ path, message }: z.core.$ZodIssue, file: string): Finding {
  const where = path.reduce<string>((way, key) => {
    if (typeof key === "number") return `${way}[${key}]`;
    return way === "" ? String(key) : `${way}.${String(key)}`;
  }, "");
  return fault("bad-summary", { file, ...(where === "" ? {} : { path: where }) }, message);
}

function fault(code: string, at: Finding["at"], message: string): Finding {
  return { code, severity: "error", at, message };
}
