/** What the two forms of the certificates share. */
import type { CutCertificate } from "../summary/certificate.js";
import type { Surroundings } from "./model.js";

/** Each cut file of the job once, in the order in which they were made: those of a template of several bases stand with each base. */
export function certificatesOf({ facts }: Pick<Surroundings, "facts">): readonly CutCertificate[] {
  const known = new Map<string, CutCertificate>();
  for (const { certificates } of facts)
    for (const each of certificates) if (!known.has(each.path)) known.set(each.path, each);
  return [...known.values()];
}
