/** Proof of files that were dropped: cut files and packages, against the open job where one is to be taken. */
import { counted } from "../../checks/words.js";
import type { Finding, Outcome } from "../../diagnostics/finding.js";
import { printable } from "../../diagnostics/printable.js";
import { drawCutFile } from "../../formats/dxf-picture.js";
import { writeProofJson } from "../../formats/proof-json.js";
import { proofFacts, writeProofText } from "../../formats/proof-text.js";
import {
  type Against,
  againstJob,
  isStop,
  type ProvedFile,
  type ProvedPackage,
  refuseLargeFile,
} from "../../proof/index.js";
import { openArchive } from "../../readers/archive.js";
import { readCutFile } from "../../readers/dxf.js";
import { openPackage } from "../../tasks/package-archive.js";
import { bytesOf } from "../../tasks/package-files.js";
import {
  bereftFault,
  bereftPackages,
  type FileToProve,
  isDxf,
  isNotAsChecked,
  lookAtPackage,
  proveBytes,
} from "../../tasks/prove-package.js";
import { answerFile } from "./answer-file.js";
import { bytesOfDropped, type Dropped, isZip, LARGEST_DROPPED } from "./dropped.js";
import type { ProvedPicture } from "./proof-model.js";
import { Refused } from "./refused.js";
import { causesOf, need, openedJob } from "./refusing.js";
import { shownSignature } from "./shown-signature.js";
import type { TaskWork } from "./task-model.js";

/** So many files are drawn, those with a stop first. */
const MOST_PICTURES = 60;

interface ToProve extends FileToProve {
  readonly size: number;
  read(): Uint8Array | Promise<Uint8Array>;
}

/** Files that cannot be read are told beside those that can. */
export const proveDropped: TaskWork<"proof"> = async ({ dropped, against, date }, tell) => {
  const faults: Finding[] = [];
  const [said, refusals]: [string[], string[]] = [[], []];
  const job = against === null ? null : againstJob(need(await openedJob(against, date), said));
  const [toProve, packages]: [ToProve[], ProvedPackage[]] = [[], []];
  for (const each of dropped) {
    const looked = await filesOf(each).catch(keptRefusal(refusals));
    if (looked === null) continue;
    for (const finding of looked.findings) faults.push(finding);
    for (const file of looked.files) toProve.push(file);
    for (const found of looked.packages) packages.push(found);
  }
  const [proved, bare]: [ProvedPicture[], ProvedFile[]] = [[], []];
  let pictures = 0;
  for (const each of toProve) {
    const one = await proveOne(each, job, pictures < MOST_PICTURES).catch(keptRefusal(refusals));
    if (one !== null) {
      bare.push(one.bare);
      proved.push(one.shown);
      if (one.shown.picture !== null) pictures += 1;
    }
    tell({ done: proved.length, of: toProve.length, what: each.path });
  }
  if (proved.length + packages.length === 0) throw new Refused([...refusals, ...causesOf(faults)], faults);
  const stopped = proved.filter(({ file }) => file.findings.some(isStop));
  const files = [...stopped, ...proved.filter((each) => !stopped.includes(each))];
  const isStopped = stopped.length > 0 || packages.some(isNotAsChecked);
  return {
    ...{ sentence: sentenceOf(files, packages), isStopped, proved: files },
    packages: packages.map((proved) => ({ proved, signatures: proved.signatures.map(shownSignature) })),
    said: [...refusals, ...causesOf(faults), ...said],
    text: writeProofText(bare, packages, { width: 100, color: false }),
    files: [answerFile("proof.json", "The whole proof in machine form", writeProofJson(bare, packages))],
  };
};

/** A refusal of one file among others. */
function keptRefusal(refusals: string[]): (error: unknown) => null {
  return (error) => {
    if (!(error instanceof Refused)) throw error;
    for (const why of error.why) refusals.push(why);
    return null;
  };
}

interface LookedDrop {
  readonly files: readonly ToProve[];
  readonly packages: readonly ProvedPackage[];
  readonly findings: readonly Finding[];
}

async function filesOf(dropped: Dropped): Promise<LookedDrop> {
  const { name, blob } = dropped;
  if (await isZip(dropped)) return filesInArchive(await bytesOfDropped(dropped, "package"), name);
  const file: ToProve = { path: name, listed: null, size: blob.size, read: () => bytesOfDropped(dropped, "file") };
  return { files: [file], packages: [], findings: [] };
}

function filesInArchive(bytes: Uint8Array, name: string): LookedDrop {
  const opened = openPackage(bytes, name);
  if (!opened.ok)
    return opened.findings.some(({ code }) => code === "no-package") ? looseFiles(bytes, name) : lost(opened);
  const { files: inside, names } = opened.value;
  const looked = lookAtPackage(inside, names);
  if (!looked.ok) return lost(looked);
  const files = looked.value.files.map((each): ToProve => {
    const size = inside.sizeOf(each.inside);
    return { ...each, size: typeof size === "number" ? size : 0, read: () => bytesOf(inside, each.inside) };
  });
  return { files, packages: [looked.value.proved], findings: looked.findings };
}

const lost = ({ findings }: Outcome<unknown>): LookedDrop => ({ files: [], packages: [], findings });

/** An archive of cut files alone. */
function looseFiles(bytes: Uint8Array, name: string): LookedDrop {
  const archive = openArchive(bytes, name);
  if (!archive.ok) return lost(archive);
  const { entries, read } = archive.value;
  const bereft = bereftPackages(entries.map(({ path }) => ({ path, kind: "file" })));
  const findings = bereft.map((folder) => bereftFault([name, folder].filter((part) => part !== "").join("/")));
  const drawn = entries.filter(({ path, kind }) => kind === "file" && isDxf(path));
  if (drawn.length + findings.length === 0)
    throw new Refused([`${name} holds neither a package nor a DXF file: drop a package, or files to prove`]);
  const files = drawn.map(
    (entry): ToProve => ({
      ...{ path: `${name}/${entry.path}`, listed: null, size: entry.size },
      read: () => read(entry) ?? new Uint8Array(),
    }),
  );
  return { files, packages: [], findings };
}

/** `bare`: as it is in machine form. */
interface ProvedOne {
  readonly bare: ProvedFile;
  readonly shown: ProvedPicture;
}

async function proveOne(each: ToProve, against: Against | null, isDrawn: boolean): Promise<ProvedOne> {
  const refused = refuseLargeFile(each.size, each.path);
  const isTooLarge = refused !== null || each.size > LARGEST_DROPPED.file;
  const bytes = isTooLarge ? new Uint8Array() : await each.read();
  const bare = refused ?? proveBytes(each, bytes, against);
  const file = withoutSigns(bare);
  const facts = proofFacts(file).map(printable);
  if (isTooLarge || !isDrawn) return { bare, shown: { file, facts, picture: null } };
  const layers = against?.layers ?? each.listed?.layers;
  const read = readCutFile(bytes, layers === undefined ? {} : { layers });
  return { bare, shown: { file, facts, picture: drawCutFile(read, file.findings) } };
}

/** Names of layers and files may hold signs that move or hide what stands around them. */
function withoutSigns(file: ProvedFile): ProvedFile {
  const findings = file.findings.map((finding) => ({ ...finding, message: printable(finding.message) }));
  return { ...file, path: printable(file.path), findings };
}

function sentenceOf(files: readonly ProvedPicture[], packages: readonly ProvedPackage[]): string {
  const stopped = files.filter(({ file }) => file.findings.some(isStop)).length;
  const other = packages.filter(isNotAsChecked).length;
  const ofFiles =
    files.length === 0
      ? ""
      : stopped === 0
        ? `Nothing stops ${files.length === 1 ? "the file" : `any of the ${files.length} files`} from being cut; that is for you to judge.`
        : `${stopped} of ${counted(files.length, "file")} ${stopped === 1 ? "is" : "are"} not to be cut as ${stopped === 1 ? "it is" : "they are"}.`;
  if (packages.length === 0) return ofFiles;
  const ofPackages =
    other === 0
      ? "The package is the one that was checked, file by file."
      : "The package is NOT the one that was checked, or a signature is void.";
  return [ofPackages, ofFiles].filter((words) => words !== "").join(" ");
}
