/** A job of one base for who begins from nothing: the head of a starter job, and below it what was typed and nothing else. */
import { yamlScalar } from "../formats/source-yaml.js";
import type { Unit } from "../units/index.js";

/** A pattern as its figures are typed; "" where nothing is. */
export type FirstPattern =
  | { readonly kind: "rectangle"; readonly x: string; readonly y: string; readonly nx: string; readonly ny: string }
  | { readonly kind: "lines"; readonly x: string; readonly y: string }
  | { readonly kind: "circle"; readonly diameter: string; readonly count: string; readonly start: string }
  | { readonly kind: "points"; readonly at: string };

/** What a first template cannot do without, as typed. */
export interface FirstFigures {
  readonly unit: Unit;
  readonly diameter: string;
  readonly pattern: FirstPattern;
  readonly thickness: string;
}

/** The starter whose head is taken, by the unit of bare numbers. */
export const FIRST_STARTER: Readonly<Record<Unit, string>> = { in: "us", mm: "metric" };

/** The job file; `starter`: the text of that starter. */
export function writeFirstJob(starter: string, { diameter, pattern, thickness }: FirstFigures): string {
  return [
    ...openingRemarks(starter),
    "",
    "job:",
    '  number: "000"',
    "  title: New job",
    "  revision: A",
    ...linesOf(starter, "  status"),
    "",
    ...["units", "rules", "shop"].flatMap((key) => linesOf(starter, key)),
    "",
    "bases:",
    "  - mark: B1",
    `    rods: { diameter: ${yamlScalar(diameter.trim())} }`,
    `    pattern: ${patternText(pattern)}`,
    "    template:",
    "      mark: T1",
    `      thickness: ${yamlScalar(thickness.trim())}`,
    "      outline: auto              # sized from the edge rule; or { kind: rectangle, x: 18, y: 18 }",
    "      opening: auto              # to pour and vibrate through; or { diameter: 6 }, none",
    "",
  ].join("\n");
}

/** Without the line that leads an editor to the schema, since the folder of the job is not known. */
function openingRemarks(starter: string): readonly string[] {
  const lines = starter.split("\n");
  const end = lines.findIndex((line) => !line.startsWith("#"));
  const said = lines.slice(0, end).filter((line) => !line.includes("$schema="));
  return said.slice(said.findIndex((line) => line !== "#"));
}

function linesOf(starter: string, key: string): readonly string[] {
  return starter.split("\n").filter((line) => line.startsWith(`${key}:`));
}

/** In braces, as a job file has it: keys that are left to their default are left out. */
export function patternText(pattern: FirstPattern): string {
  const keys = patternKeys(pattern).filter(([, text]) => text !== "");
  return `{ ${[["kind", pattern.kind], ...keys].map(([key, text]) => `${key}: ${text}`).join(", ")} }`;
}

function patternKeys(pattern: FirstPattern): readonly (readonly [string, string])[] {
  switch (pattern.kind) {
    case "rectangle":
      return (["x", "y", "nx", "ny"] as const).map((key) => [key, scalar(pattern[key])]);
    case "lines":
      return (["x", "y"] as const).map((key) => [key, listText(pattern[key])]);
    case "circle":
      return (["diameter", "count", "start"] as const).map((key) => [key, scalar(pattern[key])]);
    case "points":
      return [["at", pointsText(pattern.at)]];
  }
}

function scalar(text: string): string {
  return text.trim() === "" ? "" : yamlScalar(text.trim());
}

/** `-6, 0, 6` -> `[-6, 0, 6]` */
function listText(text: string): string {
  const items = text.split(/[,;\n]/).filter((item) => item.trim() !== "");
  return items.length === 0 ? "" : `[${items.map(scalar).join(", ")}]`;
}

/** `0,8; 0,-8` -> `[[0, 8], [0, -8]]` */
function pointsText(text: string): string {
  const points = text.split(/[;\n]/).filter((point) => point.trim() !== "");
  return points.length === 0
    ? ""
    : `[${points.map((point) => `[${point.split(",").map(scalar).join(", ")}]`).join(", ")}]`;
}
