/** A folder handed to `proof`: a package, every file against its summary; or any folder, every DXF file in it. */
import type { Dirent } from "node:fs";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { PackageSummary } from "../compare/index.js";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { SealState } from "../formats/seal.js";
import { MANIFEST_PATH, roleOf, SIGNED } from "../outputs/index.js";
import { type ListedPlate, type PackageFile, type ProvedPackage, readCertificates } from "../proof/index.js";
import type { SignedState } from "../signature/index.js";
import type { CutCertificate } from "../summary/certificate.js";
import type { SummaryFile } from "../summary/model.js";
import { templateOfFile } from "../summary/pieces.js";
import { attemptReading } from "./file-system.js";
import { fileFault } from "./findings.js";
import { findDamage } from "./listed-file.js";
import { SUMMARY } from "./package-contents.js";
import { damageWords } from "./read-package.js";
import { signaturePaths } from "./signature-files.js";
import { findSignatures, judgeSignatures, readSignedState, sealOfSummary } from "./signed-state.js";

/** A file to be proved: its path for people, and the template that a summary lists it for. */
export interface FileToProve {
  readonly path: string;
  readonly listed: ListedPlate | null;
}

/** What is to be proved of a folder; a folder without a summary may hold packages. */
export interface FolderToProve {
  readonly files: readonly FileToProve[];
  readonly packages: readonly ProvedPackage[];
}

/** `name` is the folder as the user named it, for paths and findings. */
export function lookIntoFolder(folder: string, name: string): Outcome<FolderToProve> {
  const looked = attemptReading(
    () => (existsSync(join(folder, SUMMARY)) ? lookIntoPackage(folder, name) : findDxfFiles(folder, name)),
    name,
  );
  return looked.ok ? looked.value : looked;
}

/** Entries that are looked at in one folder; a package of 2000 bases has 10,000. */
const MOST_ENTRIES = 100_000;

interface Found {
  /** With forward slashes. */
  readonly path: string;
  readonly kind: "file" | "package" | "other";
}

/** Every file below a folder, in a fixed order; links are not followed, and a package of its own is not entered. Null: too many. */
function walk(folder: string): readonly Found[] | null {
  const found: Found[] = [];
  const open = [""];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const entry of readdirSync(join(folder, at), { withFileTypes: true })) {
      const path = `${at}${entry.name}`;
      const kind = kindOf(entry, join(folder, path));
      if (kind === "folder") open.push(`${path}/`);
      else found.push({ path, kind });
      if (found.length + open.length > MOST_ENTRIES) return null;
    }
  }
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}

function kindOf(entry: Dirent, path: string): Found["kind"] | "folder" {
  if (entry.isFile()) return "file";
  if (!entry.isDirectory()) return "other";
  return existsSync(join(path, SUMMARY)) ? "package" : "folder";
}

const isDxf = (path: string): boolean => /\.dxf$/i.test(path);

const refuse = (name: string, code: string, message: string): Outcome<never> => ({
  ok: false,
  findings: [fileFault(name, code, message)],
});

const tooMany = (name: string): Outcome<never> =>
  refuse(name, "large-folder", `holds more than ${MOST_ENTRIES} files; name a smaller folder, or the files`);

function findDxfFiles(folder: string, name: string): Outcome<FolderToProve> {
  const found = walk(folder);
  if (found === null) return tooMany(name);
  const files = found.filter(({ path, kind }) => kind === "file" && isDxf(path));
  const within = found.filter(({ kind }) => kind === "package");
  const bereft = bereftPackages(found).map((path) => bereftFault(join(name, path)));
  if (files.length + within.length + bereft.length === 0) {
    const message = `is a folder without ${SUMMARY} and without a DXF file: name a package, or files to prove`;
    return refuse(name, "nothing-to-prove", message);
  }
  const looked = within.map(({ path }) => lookIntoPackage(join(folder, path), join(name, path)));
  const findings = [...bereft, ...looked.flatMap((each) => each.findings)];
  const known = looked.flatMap((each) => (each.ok ? [each.value] : []));
  const loose = files.map(({ path }): FileToProve => ({ path: join(name, path), listed: null }));
  const value = {
    files: [...loose, ...known.flatMap((each) => each.files)],
    packages: known.flatMap(({ packages }) => packages),
  };
  return { ok: true, value, findings };
}

/** Folders with the first page or a signature of a package whose summary somebody took away. */
function bereftPackages(found: readonly Found[]): readonly string[] {
  const signs = found.flatMap(({ path, kind }) => {
    const sign = kind === "file" ? PACKAGE_SIGN.exec(path) : null;
    return sign === null ? [] : [sign[1] ?? ""];
  });
  return [...new Set(signs)];
}

const PACKAGE_SIGN = new RegExp(`^(?:(.*)/)?(?:${MANIFEST_PATH.replace(".", "\\.")}|${SIGNED}/[^/]+\\.json)$`);

function bereftFault(folder: string): Finding {
  const message = `is a package without its ${SUMMARY}: nothing tells which files were checked; get it back, or name single files to prove`;
  return fileFault(folder, "damaged-package", message);
}

function lookIntoPackage(folder: string, name: string): Outcome<FolderToProve> {
  const looked = lookAtPackage(folder, name);
  return looked.ok ? { ...looked, value: { files: looked.value.files, packages: [looked.value.proved] } } : looked;
}

/** A package's folder against its summary, what is still to be proved of it, and what can be signed of it. */
export interface LookedPackage {
  readonly files: readonly FileToProve[];
  readonly proved: ProvedPackage;
  readonly state: SignedState;
}

/** `name` is the folder as the user named it. */
export function lookAtPackage(folder: string, name: string): Outcome<LookedPackage> {
  const read = readSignedState(folder, join(name, SUMMARY));
  const found = walk(folder);
  if (!read.ok || found === null) return read.ok ? tooMany(name) : read;
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
  return { ok: true, value: { files: toProve(name, found, listed), proved, state }, findings: [] };
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
  folder: string,
  { files }: PackageSummary,
  judged: ReadonlyMap<string, PackageFile>,
): ReadonlyMap<string, CutCertificate> | null {
  const file = files.find(({ kind }) => kind === "certificates-json");
  if (file === undefined || judged.get(file.path)?.severity !== null) return null;
  return readCertificates(readFileSync(join(folder, file.path), "utf8"));
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

function judgeListed(folder: string, file: SummaryFile): PackageFile {
  const damage = findDamage(folder, file);
  if (damage === null) return { path: file.path, state: "as checked", severity: null, message: "" };
  const state = damage.kind === "absent" ? "missing" : "changed";
  return { path: file.path, state, severity: "stop", message: damageWords(damage, file) };
}

/** What somebody laid into the folder is no fault of the package, unless a machine could cut by it. */
function judgeUnlisted({ path, kind }: Found): PackageFile {
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
function toProve(name: string, found: readonly Found[], listed: ReadonlyMap<string, Listed>): readonly FileToProve[] {
  return found.flatMap(({ path, kind }) => {
    const loose = !listed.has(path) && isDxf(path) ? [null] : [];
    const wanted = kind === "file" ? [...(listed.get(path)?.plates ?? []), ...loose] : [];
    return wanted.map((plate): FileToProve => ({ path: join(name, path), listed: plate }));
  });
}
