/** What cases begin from: the starters that the program hands out, read from the project's own folder. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { Tree } from "./draw.js";

const text = (path: string): string => readFileSync(`templates/${path}`, "utf8");

/** Job files by name. */
export const STARTERS: ReadonlyMap<string, string> = new Map(
  ["us", "metric", "ring", "layout", "schedule"].map((name) => [name, text(`start/${name}.yaml`)]),
);

/** The files that starters name. */
export const TABLES: ReadonlyMap<string, string> = new Map(
  ["schedule.csv", "placements.csv"].map((name) => [name, text(name)]),
);

export const PLASMA = text("shops/plasma.yaml");

/** The layout, with its placements in a spreadsheet. */
export function layoutWithTable(file: string): string {
  const layout = STARTERS.get("layout") ?? "";
  return layout
    .replace(/placements:\n(?: .*\n)+/, `placements: ${file}\n`)
    .replace(/ {2}- mark: B3[\s\S]*$/, "")
    .replace(/ +quantity: 3\n/, "");
}

/** A starter as plain values. */
export function treeOf(yaml: string): Tree {
  return parse(yaml) as Tree;
}
