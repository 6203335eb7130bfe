/**
 * A document as it was written: plain values that remember line and column. Scalars keep their source text, so that marks,
 * numbers, revisions and grades are read as written (`007` stays 007, `1E2` stays 1E2, `yes` stays yes): what a text means
 * is for the schema to decide.
 */
import type { Finding } from "../diagnostics/finding.js";

/** Lines and columns count from 1; `label` replaces the path in findings, as `row 7 Projection` for a spreadsheet. */
export interface SourcePlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly label?: string;
  /** Place of a cell as its spreadsheet names it: `Bases!E7`, or `E7` in a text file. */
  readonly cell?: string;
}

/** A value as its source text. */
export interface SourceScalar {
  readonly kind: "scalar";
  readonly text: string;
  /** quoted: also block scalars. A plain empty scalar, `~` or `null` stands for nothing given. */
  readonly style: "plain" | "quoted";
  readonly place: SourcePlace;
}

/** Items in the order written; `place` is where the list starts. */
export interface SourceList {
  readonly kind: "list";
  readonly items: readonly SourceNode[];
  readonly place: SourcePlace;
}

/** A key with its value. */
export interface SourceEntry {
  readonly key: string;
  /** Where the key stands. */
  readonly place: SourcePlace;
  readonly value: SourceNode;
  /** Who gave the value, where it is not the base's own row: `default`, `kind heavy`, `note 2`. */
  readonly givenBy?: string;
}

/** Entries in the order written; `place` is where the map starts. */
export interface SourceMap {
  readonly kind: "map";
  readonly entries: readonly SourceEntry[];
  readonly place: SourcePlace;
}

/** Any part of a document. */
export type SourceNode = SourceScalar | SourceList | SourceMap;

/** True for what YAML and JSON write where nothing is given. */
export function isNothing(node: SourceNode): boolean {
  return node.kind === "scalar" && node.style === "plain" && ["", "~", "null"].includes(node.text);
}

/** The entry of `key`, when the node is a map that has it. */
export function findEntry(node: SourceNode | undefined, key: string): SourceEntry | undefined {
  return node?.kind === "map" ? node.entries.find((entry) => entry.key === key) : undefined;
}

/** The value at `path` of keys, when there is one that says something. */
export function findNode(node: SourceNode | undefined, ...path: readonly string[]): SourceNode | undefined {
  let at = node;
  for (const key of path) at = findEntry(at, key)?.value;
  return at === undefined || isNothing(at) ? undefined : at;
}

/** An error at a place of a document. */
export function errorAt(place: SourcePlace, code: string, message: string, hint?: string): Finding {
  const { file, line, column, label, cell } = place;
  const named = { ...(label === undefined ? {} : { path: label }), ...(cell === undefined ? {} : { cell }) };
  const at = { file, line, column, ...named };
  return { code, severity: "error", at, message, ...(hint === undefined ? {} : { hint }) };
}
