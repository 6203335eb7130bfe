/** The certificates of a package, machine form -> values. */
import * as z from "zod";
import type { CutCertificate } from "../summary/certificate.js";

const [text, number, count] = [z.string(), z.number(), z.number().int().nonnegative()];

const match = z.object({
  ...{ turn: number, mirrored: z.boolean(), scale: number, positionError: number, diameterError: number },
  ...{ missing: count, extra: count },
});

const certificate = z.object({
  ...{ kind: text, path: text, bytes: count, sha256: text, held: z.boolean(), plate: text, bases: z.array(text) },
  ...{ version: text.nullable(), unit: text.nullable(), contours: count, holes: count, openings: count },
  extent: z.tuple([number, number, number, number]).nullable(),
  ...{ area: number, netArea: number, cutLength: number, pierces: count, match: match.nullable() },
  ...{ result: z.enum(["pass", "fail", "not proved"]), stops: z.array(text), looks: z.array(text) },
});

const file = z.object({ schema: z.literal(1), certificates: z.array(certificate) });

/** By the path of the file that each certifies; null where the text is no such file. Further keys are passed over. */
export function readCertificates(json: string): ReadonlyMap<string, CutCertificate> | null {
  try {
    const read = file.safeParse(JSON.parse(json));
    return read.success ? new Map(read.data.certificates.map((each) => [each.path, each])) : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
