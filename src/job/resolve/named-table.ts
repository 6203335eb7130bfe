/** A spreadsheet as a job names it: its file, and the answers to what was asked about it. */
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import type { BesideTable, TableAnswers } from "../../schedule/index.js";
import type { SourceDocument } from "../document.js";
import { placeOf } from "../document.js";

/** The file of a table, and what the job says beside it. */
export interface NamedTable {
  readonly file: string;
  readonly answers: TableAnswers;
}

/** Reads `schedule`, `placements` or their like, whose form the schema has judged. Keys stay as they are written. */
export function namedTable(node: SourceNode): NamedTable {
  const file = textOf(node.kind === "scalar" ? node : findNode(node, "file")) ?? "";
  const [sheet, table] = [textOf(findNode(node, "sheet")), textOf(findNode(node, "table"))];
  return {
    file,
    answers: {
      ...(sheet === undefined ? {} : { sheet }),
      ...(table === undefined ? {} : { table }),
      columns: textsOf(findNode(node, "columns")),
      notes: notesOf(findNode(node, "notes")),
      cells: textsOf(findNode(node, "cells")),
    },
  };
}

function textOf(node: SourceNode | undefined): string | undefined {
  return node?.kind === "scalar" ? node.text : undefined;
}

function textsOf(node: SourceNode | undefined): ReadonlyMap<string, string> {
  const entries = node?.kind === "map" ? node.entries : [];
  return new Map(entries.flatMap(({ key, value }) => (value.kind === "scalar" ? [[key, value.text] as const] : [])));
}

function notesOf(node: SourceNode | undefined): TableAnswers["notes"] {
  const entries = node?.kind === "map" ? node.entries : [];
  return new Map(entries.map(({ key, value }) => [key, value.kind === "scalar" ? value.text : textsOf(value)]));
}

/** What the job gives beside the table that `key` names. */
export function besideTable(document: SourceDocument, key: "schedule" | "readFrom" | "placements"): BesideTable {
  const [defaults, kinds] = ["defaults", "kinds"].map((name) => findNode(document.root, name));
  const named = kinds?.kind === "map" ? kinds.entries : [];
  const given = [defaults, ...named.map(({ value }) => value)].flatMap((node) => keysIn(node, ""));
  return { given: new Set(given), kinds: named.map((entry) => entry.key), answersAt: placeOf(document, [key]) };
}

/** `rods.diameter` and its like. */
function keysIn(node: SourceNode | undefined, path: string): readonly string[] {
  if (node === undefined) return [];
  if (node.kind !== "map") return [path];
  return node.entries.flatMap(({ key, value }) => keysIn(value, path === "" ? key : `${path}.${key}`));
}
