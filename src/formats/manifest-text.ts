/** The first page of a package as plain text, in lines of at most 96 letters, hashes in lines of their own. */
import { counted } from "../checks/words.js";
import { readable } from "../diagnostics/printable.js";
import type { Summary, SummaryFile } from "../summary/model.js";
import { groupBy } from "../units/group-by.js";

/** What the page says. */
export interface ManifestText {
  readonly job: Summary["job"];
  /** Its own. */
  readonly path: string;
  readonly held: readonly { readonly base: string; readonly template: string }[];
  /** Templates that an open question stops, though the job is released. */
  readonly stopped: readonly string[];
  /** Setting-out files are not to be used. */
  readonly layoutHeld: boolean;
  /** By who opens them. */
  readonly entries: readonly ManifestEntry[];
  readonly titleOf: (kind: string) => string;
}

/** One reader's part. */
export interface ManifestEntry {
  readonly folder: string;
  readonly who: string;
  readonly how: readonly string[];
  readonly first: string | null;
  readonly files: readonly SummaryFile[];
}

/** The page. */
export function writeManifest(text: ManifestText): string {
  const lines = [
    ...headLines(text),
    "",
    ...text.entries.flatMap((entry) => [...entryLines(entry, text), ""]),
    ...hashLines(text),
  ];
  return `${lines.join("\n")}\n`;
}

const WIDTH = 96;

function headLines({ job, held, stopped, layoutHeld }: ManifestText): readonly string[] {
  const title = readable(`${job.number}  ${job.title}`.trimEnd());
  return [
    `START HERE: JOB ${title}`,
    readable(`Revision ${job.revision}, ${job.status}`),
    ...(job.status === "released"
      ? []
      : wrapText("NOT RELEASED: nothing is cut, ordered, made or set by these files until the job is released.", "")),
    ...heldLines(held),
    ...stoppedLines(stopped),
    ...(layoutHeld ? ["HELD: setting-out files. Nobody sets out by them."] : []),
  ];
}

function heldLines(held: ManifestText["held"]): readonly string[] {
  if (held.length === 0) return [];
  const marks = held.map(({ base, template }) => (base === template ? base : `${base} (template ${template})`));
  const words = `HELD, not to be cut: ${held.length === 1 ? "base" : `${held.length} bases,`} ${marks.join(", ")}. Each sheet says why.`;
  return wrapText(readable(words), "");
}

function stoppedLines(stopped: readonly string[]): readonly string[] {
  if (stopped.length === 0) return [];
  const marks = `${counted(stopped.length, "template")}: ${stopped.join(", ")}`;
  const words = `NOT RELEASED for a question that is open: ${marks}. Nothing is cut, ordered, made or set for them until it is answered, or its release accepted by name.`;
  return wrapText(readable(words), "");
}

function entryLines(
  { folder, who, how, first, files }: ManifestEntry,
  { titleOf, path }: ManifestText,
): readonly string[] {
  const [opened, rest] = [
    files.filter(({ path: own }) => own === first),
    files.filter(({ path: own }) => own !== first),
  ];
  const kinds = groupBy([...opened, ...rest], ({ kind }) => kind);
  const top = folder === "" ? [`  ${path}: this page.`, "  summary.json: the whole package for other programs."] : [];
  return [
    `${folder === "" ? "THIS FOLDER" : folder}  FOR: ${who.toUpperCase()}`,
    ...(first === null ? [] : [`  Open first: ${first}`]),
    ...how.flatMap((words) => wrapText(words, "  ")),
    ...top,
    ...[...kinds].flatMap(([kind, own]) => wrapText(`${countWords(own, folder)}: ${titleOf(kind)}`, "  - ", "    ")),
  ];
}

function countWords(files: readonly SummaryFile[], folder: string): string {
  const [only] = files;
  return files.length === 1 && only !== undefined ? only.path.slice(folder.length) : `${files.length} files`;
}

/** As programs that check SHA-256 read them: the hash, two blanks, the path. */
function hashLines({ entries, path, titleOf }: ManifestText): readonly string[] {
  const rows = entries.flatMap(({ files }) =>
    [...groupBy(files, ({ kind }) => kind)].flatMap(([kind, own]) => [
      `# ${titleOf(kind)}`,
      ...own.map((file) => `${file.sha256}  ${file.path}`),
    ]),
  );
  return [
    "EVERY FILE WITH ITS HASH",
    ...wrapText(
      `SHA-256 of every file but this one and summary.json, which lists this one too. To see that none was changed: rodplate proof FOLDER; or, where the system has it, sha256sum -c ${path}.`,
      "",
    ),
    "",
    ...rows,
  ];
}

/** Lines of whole words; the first starts with `lead`, the others with `indent`. */
function wrapText(words: string, lead: string, indent = lead): readonly string[] {
  const lines: string[] = [];
  let line = lead;
  let isEmpty = true;
  for (const word of words.split(" ")) {
    if (!isEmpty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      [line, isEmpty] = [indent, true];
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line];
}
