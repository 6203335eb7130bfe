/** The job file: parsed once, with the files that it names, so that the shell can hand them in. */
import type { Outcome, Place } from "../diagnostics/finding.js";
import type { Inputs, ParsedFile } from "../readers/inputs.js";
import { contentOf } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import { spreadsheetFault, spreadsheetKind } from "../readers/spreadsheet-kind.js";
import { readYaml } from "../readers/yaml.js";
import { defaultShop } from "./resolve/named-shop.js";
import { tableName } from "./resolve/plan.js";
import { isShopPath, shopFileName, unitOf } from "./resolve/shop.js";

/** A job file that was parsed. Put into `inputs.files` in the place of its bytes, it is not parsed again. */
export interface JobFile extends ParsedFile {
  readonly name: string;
  /** The files that it names, shop first; none where it cannot be read: `readJob` then says why. */
  readonly requests: readonly RequestedFile[];
}

/** A file that the job names. The shell puts its bytes, or an opened workbook, into `inputs.files` under `key` or `name`. */
export interface RequestedFile {
  readonly name: string;
  /** Set where the same workbook may be asked for with another sheet. */
  readonly key?: string;
  readonly kind: "shop" | "schedule" | "placements" | "base plate" | "questions" | "answers";
  /** packaged: `name` is a path in the program's own folder. job: `name` is a path from the job file's folder. */
  readonly relativeTo: "packaged" | "job";
  /** Where the job names it; undefined for the shop of a job that names none. */
  readonly at?: Place;
  /** Sheet of a workbook; undefined: all of them. */
  readonly sheet?: string;
  /** Where the job names the sheet. */
  readonly sheetAt?: Place;
}

/** Parses a job file; `name` is that of its findings. `read`: what reads a text that is no spreadsheet. */
export function readJobFile(
  content: string | Uint8Array,
  name: string,
  read: (content: string | Uint8Array, name: string) => Outcome<SourceNode> = readYaml,
): JobFile {
  const root = readRoot(content, name, read);
  return { kind: "parsed", name, content, root, requests: root.ok ? requestsOf(root.value) : [] };
}

/** The files that the job names, shop first. Empty when the job file cannot be read: `readJob` then says why. */
export function requestedFiles(inputs: Inputs): readonly RequestedFile[] {
  const root = jobRoot(inputs);
  return root?.ok ? requestsOf(root.value) : [];
}

/** The job file's values, parsed here unless it was handed in parsed; null where there is none, or a spreadsheet. */
export function jobRoot({ job, files }: Inputs): Outcome<SourceNode> | null {
  const file = files.get(job);
  if (typeof file === "object" && "kind" in file && file.kind === "parsed") return file.root;
  const content = contentOf(file);
  return content === undefined ? null : readRoot(content, job);
}

/** A spreadsheet is what a job file names, and none itself. */
function readRoot(content: string | Uint8Array, name: string, read: typeof readYaml = readYaml): Outcome<SourceNode> {
  const kind = spreadsheetKind(name, content);
  if (kind !== null) return { ok: false, findings: [spreadsheetFault(name, kind, insteadOf(name, kind === "xlsx"))] };
  if (!/\.(csv|tsv)$/i.test(name)) return read(content, name);
  const message = `this is a table (CSV), by its name; ${insteadOf(name, true)}`;
  return { ok: false, findings: [{ code: "spreadsheet-kind", severity: "error", at: { file: name }, message }] };
}

function insteadOf(name: string, isRead: boolean): string {
  const reads = `rodplate read ${isRead ? name : "FILE"} --out job.yaml says what is understood of the sheet and writes such a job`;
  if (isRead) return `a job file is asked, which names ${name} as its schedule: ${reads}`;
  return `a job file is asked, which names a sheet as its schedule: save this one as .xlsx or CSV, and ${reads}`;
}

function requestsOf(root: SourceNode): readonly RequestedFile[] {
  const shop = textOf(root, "shop") ?? defaultShop(unitOf(root));
  const shopFile: RequestedFile = {
    name: shopFileName(shop),
    kind: "shop",
    relativeTo: isShopPath(shop) ? "job" : "packaged",
    ...placeIn(root, "shop"),
  };
  return [
    shopFile,
    ...requestedTable(root, findNode(root, "schedule") === undefined ? "readFrom" : "schedule"),
    ...requestedTable(root, "placements"),
    ...basePlateFiles(root),
    ...namedFile(root, "questions", "questions"),
    ...namedFile(root, "answersFrom", "answers"),
  ];
}

function namedFile(root: SourceNode, key: string, kind: "questions" | "answers"): RequestedFile[] {
  const name = textOf(root, key);
  return name === undefined ? [] : [{ name, kind, relativeTo: "job", ...placeIn(root, key) }];
}

/** DXF files that bases, kinds and defaults name as the second source of their pattern, each once. */
function basePlateFiles(root: SourceNode): readonly RequestedFile[] {
  const requests = partsOfBases(root).flatMap((base): RequestedFile[] => {
    const path = textOf(base, "basePlate", "from") === undefined ? FROM_FILE : FROM;
    const name = textOf(base, ...path);
    return name === undefined ? [] : [{ name, kind: "base plate", relativeTo: "job", ...placeIn(base, ...path) }];
  });
  return [...new Map(requests.reverse().map((request) => [request.name, request])).values()].reverse();
}

function partsOfBases(root: SourceNode): readonly SourceNode[] {
  const [defaults, kinds, bases] = ["defaults", "kinds", "bases"].map((key) => findNode(root, key));
  return [
    ...(bases?.kind === "list" ? bases.items : []),
    ...(kinds?.kind === "map" ? kinds.entries.map(({ value }) => value) : []),
    ...(defaults === undefined ? [] : [defaults]),
  ];
}

const FROM = ["basePlate", "from"] as const;
const FROM_FILE = [...FROM, "file"] as const;

type TableKey = "schedule" | "readFrom" | "placements";

function requestedTable(root: SourceNode, key: TableKey): RequestedFile[] {
  const name = textOf(root, key) ?? textOf(root, key, "file");
  const sheet = textOf(root, key, "sheet");
  if (name === undefined) return [];
  const kind = key === "placements" ? key : "schedule";
  const own = kind === "placements" && sheet !== undefined ? { key: tableName(name, sheet) } : {};
  const at = placeIn(root, ...(textOf(root, key) === undefined ? [key, "file"] : [key]));
  return [{ name, kind, relativeTo: "job", ...at, ...own, ...sheetOf(root, key) }];
}

function sheetOf(root: SourceNode, kind: TableKey): Pick<RequestedFile, "sheet" | "sheetAt"> {
  const node = findNode(root, kind, "sheet");
  return node?.kind === "scalar" ? { sheet: node.text, sheetAt: { ...node.place, path: `${kind}.sheet` } } : {};
}

function placeIn(root: SourceNode, ...path: readonly string[]): Pick<RequestedFile, "at"> {
  const node = findNode(root, ...path);
  return node?.kind === "scalar" ? { at: { ...node.place, path: path.join(".") } } : {};
}

function textOf(root: SourceNode, ...path: readonly string[]): string | undefined {
  const node = findNode(root, ...path);
  return node?.kind === "scalar" ? node.text : undefined;
}
