/** A signature's file -> its record. */
import * as z from "zod";
import type { SignatureRecord } from "./model.js";

const text = z.string();
const count = z.number().int().nonnegative();
const sha256 = text.regex(/^[0-9a-f]{64}$/);
const rows = z.record(text, text);

const openRows = z.object({ rule: text, bases: z.array(text), rows: count, numbers: z.array(text).default([]) });

const record = z.object({
  rodplateSignature: z.literal(1),
  ...{ by: text, date: text, instant: text, note: text, program: text },
  job: z.object({ number: text, title: text, revision: text, status: text }),
  summary: z.object({ path: text, bytes: count, sha256 }),
  ...{ held: z.array(text), layoutHeld: z.array(text), notChecked: count },
  open: z.array(openRows),
  accepted: z.array(openRows).default([]),
  layout: rows,
  bases: z.array(
    z.object({
      ...{ mark: text, template: text, held: z.boolean(), quantity: text, plate: text, rods: text },
      ...{ cut: text.nullable(), papers: text.nullable(), rows },
    }),
  ),
  files: z.array(z.object({ kind: text, path: text, bytes: count, sha256, bases: z.array(text) })),
});

/** null where the text is no record of this schema. */
export function readSignature(json: string): SignatureRecord | null {
  try {
    const read = record.safeParse(JSON.parse(json));
    return read.success ? read.data : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
