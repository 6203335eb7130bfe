/** The read-as table by the cells of the sheet: what each says, everything that was taken for it, and what is told of it. */
import type { Finding } from "../../diagnostics/finding.js";
import type { ReadAsEntry, ReadAsForm } from "../../formats/read-as-form.js";
import type { ReadAnswer } from "../engine/task-model.js";

/** What was taken for a cell: one of our own headings with its value. */
export interface TakenPart {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
}

/** How a cell stands: asked or at fault; doubtful; in other words than written; as written; a heading; no value. */
export type RowState = "asked" | "fault" | "doubt" | "reworded" | "plain" | "heading" | "left";

/** One cell, or one value that no cell gives. */
export interface ReadRow {
  readonly key: string;
  /** Without the sheet that is meant; "" where no cell gives the value. */
  readonly cell: string;
  readonly heading: string;
  readonly written: string;
  readonly marks: readonly string[];
  readonly taken: readonly TakenPart[];
  /** How it was understood, or why it was left out. */
  readonly why: readonly string[];
  readonly told: readonly Finding[];
  readonly state: RowState;
  /** What an answer of the job may say of it: what the cell holds, or what the column under this heading is. */
  readonly answers: "cells" | "columns" | null;
}

/** `Bases!` of the sheet that is meant, which need not be said again; its quotation marks as cells have them. */
export function sheetPrefix({ sheet, entries }: ReadAsForm): string {
  if (sheet === "") return "";
  const first = entries.find(({ cell }) => cell.includes("!"))?.cell ?? "";
  return first.slice(0, first.lastIndexOf("!") + 1);
}

/** Rows in the order of the sheet. */
export function readRows({ form, findings, questions }: ReadAnswer): readonly ReadRow[] {
  const prefix = sheetPrefix(form);
  const bare = (cell: string): string => (cell.startsWith(prefix) ? cell.slice(prefix.length) : cell);
  const told = new Map<string, Finding[]>();
  for (const finding of findings) {
    const cell = bare(finding.at.cell ?? "");
    if (cell !== "") told.set(cell, [...(told.get(cell) ?? []), finding]);
  }
  const asked = new Set(questions.flatMap(({ cells }) => cells.map(bare)));
  const rows = new Map<string, ReadAsEntry[]>();
  for (const entry of form.entries) {
    const key = entry.cell === "" ? `${entry.givenBy} ${entry.name} ${entry.value}` : bare(entry.cell);
    const known = rows.get(key);
    if (known === undefined) rows.set(key, [entry]);
    else known.push(entry);
  }
  return [...rows].map(([key, entries]) => rowOf(key, entries, told.get(key) ?? [], asked.has(key)));
}

function rowOf(key: string, entries: readonly ReadAsEntry[], told: readonly Finding[], isAsked: boolean): ReadRow {
  const [first] = entries;
  const parts = entries.flatMap(({ name, value, unit, key: of }) =>
    of === "" ? [] : [{ name, value, unit: hasUnit(value) ? "" : unit }],
  );
  const named = ofHeading(first?.remark ?? "")?.name ?? "";
  const ofColumn = named === "" ? [] : [{ name: "the column is", value: named, unit: "" }];
  const taken = [...new Map([...ofColumn, ...parts].map((part) => [JSON.stringify(part), part])).values()];
  const { cell = "", heading = "", written = "" } = first ?? {};
  return {
    key,
    cell: cell === "" ? "" : key,
    heading,
    written,
    marks: distinct(entries.flatMap(({ mark }) => (mark === "" ? [] : mark.split(", ")))),
    taken,
    why: distinct(entries.map(whyOf)).filter((words) => !told.some(({ message }) => words.endsWith(message))),
    told,
    state: stateOf(entries, taken, told, isAsked),
    answers: answersOf(entries),
  };
}

/** `9"`, `1'-6`, `300 mm` say theirs themselves. */
const hasUnit = (value: string): boolean => /['"]|[a-z]$/i.test(value);

/** Titles, units and footnotes are none that a job says anything of. */
function answersOf(entries: readonly ReadAsEntry[]): ReadRow["answers"] {
  const [first] = entries;
  if (first === undefined || first.cell === "" || first.heading === "") return null;
  if (ofHeading(first.remark) !== null) return "columns";
  return first.mark === "" ? null : "cells";
}

/** The remark of a heading: which of our own it is, "" where it is none, and what is said beside it; null for other cells. */
function ofHeading(remark: string): { readonly name: string; readonly beside: string } | null {
  const [whole, first = "", beside = ""] = /^heading(?:: ([^;]*))?(?:; (.*))?$/s.exec(remark) ?? [];
  if (whole === undefined) return null;
  return first.startsWith("its ") ? { name: "", beside: whole.slice("heading: ".length) } : { name: first, beside };
}

function whyOf({ givenBy, remark, cell, key }: ReadAsEntry): string {
  const heading = ofHeading(remark);
  if (heading !== null) return heading.beside;
  const by = givenBy === "row" ? "" : cell === "" && key !== "" ? `given by ${givenBy}` : givenBy;
  if (remark.startsWith(givenBy)) return remark;
  return [by, remark].filter((word) => word !== "").join(": ");
}

function stateOf(
  entries: readonly ReadAsEntry[],
  taken: readonly TakenPart[],
  told: readonly Finding[],
  isAsked: boolean,
): RowState {
  if (told.some(({ severity }) => severity === "error")) return "fault";
  if (isAsked || entries.some(({ givenBy }) => givenBy === "asked")) return "asked";
  if (told.length > 0) return "doubt";
  if (entries.some(({ remark }) => ofHeading(remark) !== null)) return "heading";
  if (taken.length === 0) return "left";
  const isAsWritten =
    taken.length === 1 && entries.every(({ remark, written, value }) => remark === "" && written === value);
  return isAsWritten ? "plain" : "reworded";
}

function distinct(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)].filter((text) => text !== "");
}

/** Which rows are shown. */
export const ROW_FILTERS = {
  all: { words: "All cells", has: () => true },
  look: {
    words: "Asked, at fault or doubtful",
    has: (state) => state === "asked" || state === "fault" || state === "doubt",
  },
  reworded: { words: "Taken in other words", has: (state) => state === "reworded" },
  left: { words: "Not taken as a value", has: (state) => state === "left" },
} as const satisfies Readonly<Record<string, { readonly words: string; readonly has: (state: RowState) => boolean }>>;

/** One of them. */
export type RowFilter = keyof typeof ROW_FILTERS;

/** Rows of a filter that hold the words in cell, text or mark. */
export function filteredRows(rows: readonly ReadRow[], filter: RowFilter, words: string): readonly ReadRow[] {
  const { has } = ROW_FILTERS[filter];
  const sought = words.trim().toLowerCase();
  return rows.filter(
    ({ state, cell, written, heading, marks }) =>
      has(state) &&
      (sought === "" ||
        cell.toLowerCase() === sought ||
        written.toLowerCase().includes(sought) ||
        heading.toLowerCase().includes(sought) ||
        marks.some((mark) => mark.toLowerCase() === sought)),
  );
}
