/** Which further files a job names, so that the shell can hand them in. */
import type { Place } from "../diagnostics/finding.js";
import type { Inputs } from "../readers/inputs.js";
import { findNode } from "../readers/source.js";
import { readYaml } from "../readers/yaml.js";
import { defaultShop } from "./read-job.js";
import { tableName } from "./resolve/plan.js";
import { isShopPath, shopFileName, unitOf } from "./resolve/shop.js";

/** A file that the job names. The shell puts its bytes, or an opened workbook, into `inputs.files` under `key` or `name`. */
export interface RequestedFile {
  readonly name: string;
  /** Set where the same workbook may be asked for with another sheet. */
  readonly key?: string;
  readonly kind: "shop" | "schedule" | "placements" | "base plate";
  /** packaged: `name` is a path in the program's own folder. job: `name` is a path from the job file's folder. */
  readonly relativeTo: "packaged" | "job";
  /** Sheet of a workbook; undefined: the first. */
  readonly sheet?: string;
  /** Where the job names the sheet. */
  readonly sheetAt?: Place;
}

/** The files that the job names, shop first. Empty when the job file cannot be read: `readJob` then says why. */
export function requestedFiles(inputs: Inputs): readonly RequestedFile[] {
  const content = inputs.files.get(inputs.job);
  if (content === undefined || (typeof content === "object" && "kind" in content)) return [];
  const root = readYaml(content, inputs.job);
  if (!root.ok) return [];
  const shop = textOf(root.value, "shop") ?? defaultShop(unitOf(root.value));
  const shopFile: RequestedFile = {
    name: shopFileName(shop),
    kind: "shop",
    relativeTo: isShopPath(shop) ? "job" : "packaged",
  };
  return [
    shopFile,
    ...requestedTable(root.value, "schedule"),
    ...requestedTable(root.value, "placements"),
    ...basePlateFiles(root.value),
  ];
}

/** DXF files that bases name as the second source of their pattern, each once. */
function basePlateFiles(root: Parameters<typeof findNode>[0]): readonly RequestedFile[] {
  const bases = findNode(root, "bases");
  if (bases?.kind !== "list") return [];
  const names = bases.items.flatMap((base) => {
    const name = textOf(base, "basePlate", "from") ?? textOf(base, "basePlate", "from", "file");
    return name === undefined ? [] : [name];
  });
  return [...new Set(names)].map((name) => ({ name, kind: "base plate", relativeTo: "job" }));
}

function requestedTable(root: Parameters<typeof findNode>[0], kind: "schedule" | "placements"): RequestedFile[] {
  const name = textOf(root, kind) ?? textOf(root, kind, "file");
  const sheet = textOf(root, kind, "sheet");
  if (name === undefined) return [];
  const own = kind === "placements" && sheet !== undefined ? { key: tableName(name, sheet) } : {};
  return [{ name, kind, relativeTo: "job", ...own, ...sheetOf(root, kind) }];
}

function sheetOf(
  root: Parameters<typeof findNode>[0],
  kind: "schedule" | "placements",
): Pick<RequestedFile, "sheet" | "sheetAt"> {
  const node = findNode(root, kind, "sheet");
  return node?.kind === "scalar" ? { sheet: node.text, sheetAt: { ...node.place, path: `${kind}.sheet` } } : {};
}

function textOf(root: Parameters<typeof findNode>[0], ...path: readonly string[]): string | undefined {
  const node = findNode(root, ...path);
  return node?.kind === "scalar" ? node.text : undefined;
}
