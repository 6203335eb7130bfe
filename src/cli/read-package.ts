/** A package in its folder -> one side of a comparison. Every file that its summary lists is held against size and hash. */
import { lstatSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { PackageSummary, Side, SummaryTemplate, TemplateState } from "../compare/index.js";
import { makeTemplateState, readSummary } from "../compare/index.js";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { roleOf } from "../outputs/index.js";
import type { SummaryFile } from "../summary/model.js";
import type { Unit } from "../units/length.js";
import { fileFault } from "./findings.js";
import { chunksOf, SUMMARY } from "./package-target.js";
import { startSha256 } from "./sha256.js";

/** `name` is the package as the user named it, for findings. */
export function readPackage(folder: string, name: string): Outcome<Side> {
  const place = name.endsWith(SUMMARY) ? name : join(name, SUMMARY);
  const stat = statSync(join(folder, SUMMARY), { throwIfNoEntry: false });
  if (stat?.isFile() !== true) {
    const message = `there is no ${SUMMARY}: the folder is not a package`;
    return { ok: false, findings: [fileFault(place, "missing-file", message)] };
  }
  const read = readSummary(chunksOf(join(folder, SUMMARY)), place);
  if (!read.ok) return read;
  const summary = read.value;
  const findings = findDamage(folder, place, summary);
  if (findings.length > 0) return { ok: false, findings };
  const templates = summary.bases.map((base) => stateOf(folder, base, summary.job.unit));
  return { ok: true, value: { name, source: "package", job: summary.job, templates }, findings };
}

function findDamage(folder: string, place: string, { bases, files }: PackageSummary): readonly Finding[] {
  const inBases = bases.flatMap((base, index) =>
    base.files.flatMap((file, at) => damageOf(folder, file, place, `bases[${index}].files[${at}]`)),
  );
  return [...inBases, ...files.flatMap((file, at) => damageOf(folder, file, place, `files[${at}]`))];
}

function damageOf(folder: string, { path, bytes, sha256 }: SummaryFile, place: string, where: string): Finding[] {
  const file = join(folder, path);
  const stat = lstatSync(file, { throwIfNoEntry: false });
  const damage = (message: string): Finding[] => [
    { code: "damaged-package", severity: "error", at: { file: place, path: where }, message: `${path} ${message}` },
  ];
  if (stat === undefined) return damage("is listed and is not there");
  if (!stat.isFile()) return damage("is not a file");
  if (stat.size !== bytes)
    return damage(`has ${stat.size} bytes, listed are ${bytes}: it was changed after it was written`);
  const hash = startSha256();
  for (const chunk of chunksOf(file)) hash.update(chunk);
  return hash.hex() === sha256 ? [] : damage("has another hash than is listed: it was changed after it was written");
}

function stateOf(folder: string, base: SummaryTemplate, unit: Unit): TemplateState {
  const bytesOf = (path: string): Uint8Array => readFileSync(join(folder, path));
  return makeTemplateState(base, { unit, delivered: true, roleOf, bytesOf });
}
