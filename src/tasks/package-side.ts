/**
 * A package -> one side of a comparison, and what people did to it. Every file that its summary lists is held against size
 * and hash.
 */
import type { PackageSummary, Side, StateSource } from "../compare/index.js";
import { makeRodStates, readSummary, startTemplateStates } from "../compare/index.js";
import { type Finding, fileFault, type Outcome } from "../diagnostics/finding.js";
import { roleOf, summaryPath as SUMMARY } from "../outputs/index.js";
import type { SummaryFile } from "../summary/model.js";
import type { Unit } from "../units/length.js";
import { type Damage, damageWords, findDamage } from "./listed-file.js";
import { bytesOf, type PackageFiles } from "./package-files.js";

/** A package as a side of a comparison. What cannot be trusted of it is not in the side, but told. */
export interface PackageReading {
  readonly side: Side;
  /**
   * What is wrong with its files. An error where a template is cut or drilled by a file that was changed: the side then takes
   * what the summary says; a warning where only papers were changed, or something is missing or was added.
   */
  readonly faults: readonly Finding[];
}

/** `name` is the package as the user named it, `place` its summary, for findings. Not ok only where its summary cannot be read. */
export function packageSide(inside: PackageFiles, name: string, place: string): Outcome<PackageReading> {
  if (typeof inside.sizeOf(SUMMARY) !== "number") {
    const message = `there is no ${SUMMARY}: the folder is not a package`;
    return { ok: false, findings: [fileFault(place, "missing-file", message)] };
  }
  const read = readSummary(inside.chunks(SUMMARY), place);
  if (!read.ok) return read;
  const { job, bases } = read.value;
  const damaged = findDamages(inside, read.value);
  const paths = new Set(damaged.map(({ file }) => file.path));
  const states = startTemplateStates();
  const source = sourceOf(inside, job.unit, paths);
  for (const base of bases) states.add(base, source);
  const side: Side = { name, source: "package", job, templates: states.list(), rods: makeRodStates(bases, job.unit) };
  return { ok: true, value: { side, faults: damaged.map((each) => damageFinding(each, place)) }, findings: [] };
}

interface Damaged {
  readonly file: SummaryFile;
  readonly damage: Damage;
  /** In the summary. */
  readonly where: string;
}

/** A file of a template that serves several bases stands with each of them, and is looked at once. */
function findDamages(inside: PackageFiles, { bases, files }: PackageSummary): readonly Damaged[] {
  const seen = new Set<string>();
  const inBases = bases.flatMap((base, index) =>
    base.files.flatMap((file, at) => {
      const entry = JSON.stringify([file.path, file.bytes, file.sha256]);
      if (seen.has(entry)) return [];
      seen.add(entry);
      return damageOf(inside, file, `bases[${index}].files[${at}]`);
    }),
  );
  return [...inBases, ...files.flatMap((file, at) => damageOf(inside, file, `files[${at}]`))];
}

function damageOf(inside: PackageFiles, file: SummaryFile, where: string): readonly Damaged[] {
  const damage = findDamage(inside, file);
  return damage === null ? [] : [{ file, damage, where }];
}

/** A file that is gone was what the summary says of it; one that was changed may have been anything when it was cut by. */
function damageFinding({ file, damage, where }: Damaged, place: string): Finding {
  const at = { file: place, path: where };
  const words = `${file.path} ${damageWords(damage, file)}`;
  const isMaking = isMadeBy(file);
  if (damage.kind === "absent") {
    const message = `${words}${isMaking ? `; compared by what ${SUMMARY} says of it` : ""}`;
    return { code: "damaged-package", severity: "warning", at, message };
  }
  if (!isMaking)
    return { code: "damaged-package", severity: "warning", at, message: `${words}; nothing is read from it` };
  const message = `${words}, and what was cut by it is not known`;
  return { code: "damaged-package", severity: "error", at, message, hint: HOW_ON };
}

const HOW_ON = "compare with the job file of that revision instead, or put back the file as it was";

/** True for a file that a template is cut or drilled by; only cut files list layers. */
function isMadeBy({ kind, layers }: SummaryFile): boolean {
  const role = roleOf(kind);
  return role === "cut" || role === "drill" || (role === null && layers !== undefined);
}

function sourceOf(inside: PackageFiles, unit: Unit, damaged: ReadonlySet<string>): StateSource {
  const read = (path: string): Uint8Array | null => (damaged.has(path) ? null : bytesOf(inside, path));
  return { unit, delivered: true, roleOf, bytesOf: read };
}
