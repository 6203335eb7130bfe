/** A package in its folder -> one side of a comparison. Every file that its summary lists is held against size and hash. */
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { PackageSummary, Side, SummaryTemplate, TemplateState } from "../compare/index.js";
import { makeTemplateState, readSummary } from "../compare/index.js";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { roleOf } from "../outputs/index.js";
import type { SummaryFile } from "../summary/model.js";
import type { Unit } from "../units/length.js";
import { attemptReading, chunksOf } from "./file-system.js";
import { fileFault } from "./findings.js";
import type { Damage } from "./listed-file.js";
import { findDamage } from "./listed-file.js";
import { SUMMARY } from "./package-target.js";

/** `name` is the package as the user named it, for findings. */
export function readPackage(folder: string, name: string): Outcome<Side> {
  const read = attemptReading(() => readWhole(folder, name), name);
  return read.ok ? read.value : read;
}

function readWhole(folder: string, name: string): Outcome<Side> {
  const place = name.endsWith(SUMMARY) ? name : join(name, SUMMARY);
  const stat = statSync(join(folder, SUMMARY), { throwIfNoEntry: false });
  if (stat?.isFile() !== true) {
    const message = `there is no ${SUMMARY}: the folder is not a package`;
    return { ok: false, findings: [fileFault(place, "missing-file", message)] };
  }
  const read = readSummary(chunksOf(join(folder, SUMMARY)), place);
  if (!read.ok) return read;
  const summary = read.value;
  const findings = findDamages(folder, place, summary);
  if (findings.length > 0) return { ok: false, findings };
  const templates = summary.bases.map((base) => stateOf(folder, base, summary.job.unit));
  return { ok: true, value: { name, source: "package", job: summary.job, templates }, findings };
}

function findDamages(folder: string, place: string, { bases, files }: PackageSummary): readonly Finding[] {
  const inBases = bases.flatMap((base, index) =>
    base.files.flatMap((file, at) => damageOf(folder, file, place, `bases[${index}].files[${at}]`)),
  );
  return [...inBases, ...files.flatMap((file, at) => damageOf(folder, file, place, `files[${at}]`))];
}

function damageOf(folder: string, file: SummaryFile, place: string, where: string): Finding[] {
  const damage = findDamage(folder, file);
  if (damage === null) return [];
  const message = `${file.path} ${damageWords(damage, file)}`;
  return [{ code: "damaged-package", severity: "error", at: { file: place, path: where }, message }];
}

/** What is wrong with a listed file, in words that follow its path. */
export function damageWords(damage: Damage, { bytes }: SummaryFile): string {
  switch (damage.kind) {
    case "absent":
      return "is listed and is not there";
    case "no-file":
      return "is not a file";
    case "other-size":
      return `has ${damage.bytes} bytes, listed are ${bytes}: it was changed after it was written`;
    case "other-hash":
      return "has another hash than is listed: it was changed after it was written";
  }
}

function stateOf(folder: string, base: SummaryTemplate, unit: Unit): TemplateState {
  const bytesOf = (path: string): Uint8Array => readFileSync(join(folder, path));
  return makeTemplateState(base, { unit, delivered: true, roleOf, bytesOf });
}
