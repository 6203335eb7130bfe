/** The whole package as one archive: the same files, byte for byte, that the command line writes. */
import { type ArchiveWriter, startArchive } from "../../formats/archive-writer.js";
import { newLeanDocument } from "../../formats/lean-document.js";
import { aboutKind, guidePackage, jobOutputs, safeForFileName, summaryPath } from "../../outputs/index.js";
import type { Part } from "../../tasks/growing-files.js";
import { numberQuestions } from "../../tasks/number-questions.js";
import type { OpenedJob } from "../../tasks/opened-job.js";
import { makePackageInParts, type PackageRest } from "../../tasks/package.js";
import { reducedWords, registerWords } from "../../tasks/package-words.js";
import { VERSION } from "../app/version.js";
import type { MadePackage, PackedFile } from "./package-model.js";
import { pdfMaker } from "./pdf-maker.js";
import { Refused } from "./refused.js";
import { need, openedJob } from "./refusing.js";
import type { Progress, TaskKinds, TaskWork } from "./task-model.js";

type PackageAsk = TaskKinds["package"]["ask"];

/** Makes every file of the package; tells how many bases are made, then which document. */
export const makePackageZip: TaskWork<"package"> = async (ask, tell) => {
  const said: string[] = [];
  const opened = need(await openedJob(ask.files, ask.date, ask.register?.register.content ?? null), said);
  const goesOn = registerWords(ask.register?.register ?? null, opened.job, ask.register?.name ?? "");
  if (goesOn !== null) said.push(`${goesOn[0]?.toUpperCase()}${goesOn.slice(1)}.`);
  const chunks: BlobPart[] = [];
  const files = startFiles(startArchive((bytes) => void chunks.push(bytes.slice())));
  const made = fill(opened, ask, files, tell);
  if (made.rest.reduced.length > 0) said.push(`${reducedWords(made.rest.reduced, ask.paper ?? "")}.`);
  const { number, revision, status } = opened.job;
  return {
    name: `${safeForFileName(number)}_rev-${safeForFileName(revision)}.zip`,
    zip: new Blob(chunks, { type: "application/zip" }),
    job: { number, revision, status },
    bases: opened.bases.length,
    ...{ held: made.held, unreleased: status === "released" ? [...made.unreleased] : [], said },
    layoutHeld: made.rest.layoutHeld,
    open: made.rest.questions.filter((question) => question.status === "open").length,
    parts: partsOf(files.list()),
  };
};

interface Filled extends Pick<MadePackage, "held"> {
  readonly unreleased: ReadonlySet<string>;
  readonly rest: PackageRest;
}

function fill(
  opened: OpenedJob,
  { paper, includeHeld }: PackageAsk,
  files: Files,
  tell: (progress: Progress) => void,
): Filled {
  const [bases, kinds] = [opened.bases.length, jobOutputs.map(({ kind }): string => kind)];
  const of = bases + kinds.length;
  tell({ done: 0, of, what: "checking the whole job" });
  const options = { version: VERSION, paper, includeHeld, document: newLeanDocument(), pdf: pdfMaker };
  const made = makePackageInParts(numberQuestions(opened), options);
  const [held, unreleased]: [MadePackage["held"][number][], Set<string>] = [[], new Set()];
  files.grow(made.head);
  let done = 0;
  for (const base of made.bases) {
    for (const { path, kind, bytes } of base.files) files.add(path, kind, bytes);
    files.grow(base.parts);
    const { template } = base.summary;
    if (base.held) held.push({ mark: base.mark, reasons: template.heldBy ?? [] });
    if (template.released === false) unreleased.add(template.mark);
    done += 1;
    tell({ done, of, what: `${done} of ${bases} bases` });
  }
  for (const { path, kind, bytes } of made.documents) {
    files.add(path, kind, bytes);
    tell({ done: bases + Math.max(0, kinds.indexOf(kind)), of, what: path });
  }
  const rest = made.rest();
  files.grow(rest.parts);
  files.end();
  return { held, unreleased, rest };
}

/** The archive as it is filled, and the files that grow until its end. */
interface Files {
  add(path: string, kind: string, bytes: Uint8Array): void;
  grow(parts: readonly Part[]): void;
  end(): void;
  list(): readonly PackedFile[];
}

function startFiles(archive: ArchiveWriter): Files {
  const listed: PackedFile[] = [];
  const growing = new Map<string, { readonly kind: string; readonly parts: Uint8Array[] }>();
  const add: Files["add"] = (path, kind, bytes) => {
    const place = archive.add(path, bytes);
    if (place === null) throw new Refused([TOO_LARGE]);
    listed.push({ path, kind, title: aboutKind(kind)?.title ?? "", bytes: bytes.length, place });
  };
  return {
    add,
    grow: (parts) => {
      for (const { path, kind, bytes } of parts) {
        const known = growing.get(path);
        if (known === undefined) growing.set(path, { kind, parts: [bytes] });
        else known.parts.push(bytes);
      }
    },
    end: () => {
      for (const [path, { kind, parts }] of growing) add(path, kind, joined(parts));
      archive.end();
    },
    list: () => listed,
  };
}

const TOO_LARGE =
  "The package is larger than one ZIP can be: 4 GB, or 65,534 files. Make it with rodplate make, which writes a folder.";

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** By who opens them, as the first page of the package has it. */
function partsOf(files: readonly PackedFile[]): MadePackage["parts"] {
  const known = new Map(files.map((file) => [file.path, file]));
  const guided = guidePackage(
    files.filter(({ path }) => path !== summaryPath),
    aboutKind,
  );
  return guided.map(({ files: own, ...part }) => ({
    ...part,
    files: own.flatMap(({ path }) => known.get(path) ?? []),
  }));
}
