/** A package against its summary: every file that it lists, what nobody listed, and who signed it. */
import type { PackageSummary } from "../compare/index.js";
import { type Finding, fileFault, type Outcome } from "../diagnostics/finding.js";
import type { SealState } from "../formats/seal.js";
import { MANIFEST_PATH, roleOf, SIGNED, summaryPath as SUMMARY } from "../outputs/index.js";
import {
  type Against,
  type ListedPlate,
  type PackageFile,
  type ProvedFile,
  type ProvedPackage,
  proveFile,
  proveListedFile,
  readCertificates,
} from "../proof/index.js";
import { isUnrenewed, type SignedState } from "../signature/index.js";
import type { CutCertificate } from "../summary/certificate.js";
import type { SummaryFile } from "../summary/model.js";
import { templateOfFile } from "../summary/pieces.js";
import { damageWords, findDamage } from "./listed-file.js";
import { type FoundFile, type PackageFiles, textOf } from "./package-files.js";
import { findSignatures, judgeSignatures, readSignedState, sealOfSummary, signaturePaths } from "./signed-state.js";

/** A file to be proved: its path for people, and the template that a summary lists it for. */
export interface FileToProve {
  readonly path: string;
  readonly listed: ListedPlate | null;
}

/** The same, of a package: `inside` is its path there. */
export interface InsideToProve extends FileToProve {
  readonly inside: string;
}

/** A job goes before a summary. */
export function proveBytes({ path, listed }: FileToProve, bytes: Uint8Array, against: Against | null): ProvedFile {
  return listed !== null && against === null ? proveListedFile(bytes, path, listed) : proveFile(bytes, path, against);
}

/** Entries that are looked at in one folder; a package of 2000 bases has 10,000. */
export const MOST_ENTRIES = 100_000;

/** What is said of a folder or an archive that holds more. */
export const tooManyFiles = (name: string): Outcome<never> => ({
  ok: false,
  findings: [
    fileFault(name, "large-folder", `holds more than ${MOST_ENTRIES} files; name a smaller folder, or the files`),
  ],
});

/** Folders with the first page or a signature of a package whose summary somebody took away. */
export function bereftPackages(found: readonly FoundFile[]): readonly string[] {
  const signs = found.flatMap(({ path, kind }) => {
    const sign = kind === "file" ? PACKAGE_SIGN.exec(path) : null;
    return sign === null ? [] : [sign[1] ?? ""];
  });
  return [...new Set(signs)];
}

const PACKAGE_SIGN = new RegExp(`^(?:(.*)/)?(?:${MANIFEST_PATH.replace(".", "\\.")}|${SIGNED}/[^/]+\\.json)$`);

/** What is said of one. */
export function bereftFault(folder: string): Finding {
  const message = `is a package without its ${SUMMARY}: nothing tells which files were checked; get it back, or name single files to prove`;
  return fileFault(folder, "damaged-package", message);
}

/** True for the name of a cut file. */
export const isDxf = (path: string): boolean => /\.dxf$/i.test(path);

/** A package against its summary, what is still to be proved of it, and what can be signed of it. */
export interface LookedPackage {
  readonly files: readonly InsideToProve[];
  readonly proved: ProvedPackage;
  readonly state: SignedState;
}

/** A file of it is not as it was checked, or a signature is void that nobody of that name has given again. */
export function isNotAsChecked({ files, signatures }: ProvedPackage): boolean {
  return files.some(({ severity }) => severity === "stop") || signatures.some((each) => isUnrenewed(each, signatures));
}

/** How a package and a file in it are called for people. */
export interface PackageNames {
  readonly name: string;
  of(path: string): string;
}

/** Nothing is proved yet of the cut files themselves. */
export function lookAtPackage(folder: PackageFiles, names: PackageNames): Outcome<LookedPackage> {
  const { name } = names;
  const read = readSignedState(folder, names.of(SUMMARY));
  const found = folder.list();
  if (!read.ok || found === null) return read.ok ? tooManyFiles(name) : read;
  const { summary, state } = read.value;
  const seal = sealOfSummary(folder);
  const inFolder = new Map(summaryFiles(summary).map((file) => [file.path, judgeListed(folder, file)]));
  const listed = listedFiles(summary, certificatesIn(folder, summary, inFolder));
  const signatures = new Set(signaturePaths(folder));
  const others = found.filter(({ path }) => path !== SUMMARY && !listed.has(path) && !signatures.has(path));
  const files = [
    judgeSummary(seal),
    ...[...inFolder.values()].map((judged) => withCertificate(judged, listed.get(judged.path))),
    ...others.map(judgeUnlisted),
  ].sort(worstFirst);
  const damage = files.filter(({ severity }) => severity === "stop");
  const { number, revision, status } = summary.job;
  const signed = judgeSignatures(findSignatures(folder), state, damage);
  const proved = { path: name, seal, job: { number, revision, status }, files, signatures: signed };
  return { ok: true, value: { files: toProve(names, found, listed), proved, state }, findings: [] };
}

/** Each file once. */
function summaryFiles({ bases, files }: PackageSummary): readonly SummaryFile[] {
  return [...new Map([...bases.flatMap((base) => base.files), ...files].map((file) => [file.path, file])).values()];
}

/** No file lists the summary: it tells by itself whether it was changed. */
function judgeSummary(seal: SealState): PackageFile {
  const path = SUMMARY;
  switch (seal) {
    case "whole":
      return { path, state: "as checked", severity: null, message: "" };
    case "changed":
      return {
        path,
        state: "changed",
        severity: "stop",
        message: "was changed after it was written: its seal is broken",
      };
    case "none": {
      const message = "has no seal, as an earlier program wrote it: whether it was changed is not known";
      return { path, state: "as checked", severity: "advise", message };
    }
  }
}

/** null: the package has none, or they are damaged, which is told of their file. */
function certificatesIn(
  folder: PackageFiles,
  { files }: PackageSummary,
  judged: ReadonlyMap<string, PackageFile>,
): ReadonlyMap<string, CutCertificate> | null {
  const file = files.find(({ kind }) => kind === "certificates-json");
  if (file === undefined || judged.get(file.path)?.severity !== null) return null;
  return readCertificates(textOf(folder, file.path));
}

/** A cut file of a certified package must be the one that its certificate is of. */
function withCertificate(judged: PackageFile, listed: Listed | undefined): PackageFile {
  if (listed?.isCertified !== true || judged.severity !== null) return judged;
  const stop = (message: string): PackageFile => ({ ...judged, state: "changed", severity: "stop", message });
  const { file, certificate } = listed;
  if (certificate === null) return stop("has no certificate: it is none of the cut files that were read back");
  if (certificate.sha256 === file.sha256) return judged;
  return stop(`has another hash in its certificate than in ${SUMMARY}: one of them was changed`);
}

interface Listed {
  readonly file: SummaryFile;
  /** None for files of the job, and for what is not cut; several where the bases of one template say different things of it. */
  readonly plates: readonly ListedPlate[];
  /** A cut file of a package whose cut files have certificates, and its own; null: it has none. */
  readonly isCertified: boolean;
  readonly certificate: CutCertificate | null;
}

function listedFiles(
  { job: { unit }, bases, files }: PackageSummary,
  certificates: ReadonlyMap<string, CutCertificate> | null,
): ReadonlyMap<string, Listed> {
  const none = { plates: [], isCertified: false, certificate: null };
  const listed = new Map<string, Listed>(files.map((file) => [file.path, { file, ...none }]));
  for (const base of bases) {
    for (const file of base.files) {
      const template = templateOfFile(base, file.piece);
      const layers = file.layers ?? { cut: [], mark: [] };
      const plates = listed.get(file.path)?.plates ?? [];
      const certificate = certificates?.get(file.path) ?? null;
      const plate = { base: base.mark, template, unit, layers, certificate };
      const isCut = roleOf(file.kind) === "cut";
      const isNew = isCut && !plates.some((each) => isSamePlate(each, plate));
      const isCertified = isCut && certificates !== null;
      listed.set(file.path, { file, plates: isNew ? [...plates, plate] : plates, isCertified, certificate });
    }
  }
  return listed;
}

/** A file of several bases is proved against each of them: once where they say the same of it. */
function isSamePlate(a: ListedPlate, b: ListedPlate): boolean {
  return JSON.stringify([a.template, a.layers]) === JSON.stringify([b.template, b.layers]);
}

function judgeListed(folder: PackageFiles, file: SummaryFile): PackageFile {
  const damage = findDamage(folder, file);
  if (damage === null) return { path: file.path, state: "as checked", severity: null, message: "" };
  const state = damage.kind === "absent" ? "missing" : "changed";
  return { path: file.path, state, severity: "stop", message: damageWords(damage, file) };
}

/** What somebody laid into the folder is no fault of the package, unless a machine could cut by it. */
function judgeUnlisted({ path, kind }: FoundFile): PackageFile {
  if (kind === "package")
    return {
      path,
      state: "package of its own",
      severity: "advise",
      message: "is a package of its own: prove it by itself",
    };
  const message = `is not listed in ${SUMMARY}: it is none of the files that were checked`;
  return { path, state: "not listed", severity: isDxf(path) ? "stop" : "advise", message };
}

function worstFirst(a: PackageFile, b: PackageFile): number {
  const rank = ({ severity }: PackageFile): number => (severity === "stop" ? 0 : severity === "advise" ? 1 : 2);
  return rank(a) - rank(b) || (a.path < b.path ? -1 : 1);
}

/** The cut files that are there, and any other DXF file that is not listed; what is no file, as a pipe, is not opened. */
function toProve(
  names: PackageNames,
  found: readonly FoundFile[],
  listed: ReadonlyMap<string, Listed>,
): readonly InsideToProve[] {
  return found.flatMap(({ path, kind }) => {
    const loose = !listed.has(path) && isDxf(path) ? [null] : [];
    const wanted = kind === "file" ? [...(listed.get(path)?.plates ?? []), ...loose] : [];
    return wanted.map((plate): InsideToProve => ({ path: names.of(path), inside: path, listed: plate }));
  });
}
