/** The headings of a placement list -> columns with a reader for their cells. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { columnLetters, placeOfCell } from "../readers/cell-place.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import { readCell } from "./grammar/index.js";
import type { FoundColumn, FoundTable, TableAnswers } from "./model.js";
import type { PlacementHeading } from "./placement-headings.js";
import { findPlacementHeading, PLACEMENT_HEADINGS } from "./placement-headings.js";
import { headingText } from "./settled-column.js";
import type { CellReader, ColumnRole, ReadColumn } from "./sheet-cell.js";
import { nearestThree, unusedAnswer } from "./used-answers.js";

/** The columns of a list, and what is wrong with their headings. */
export interface PlacementColumns {
  readonly columns: readonly ReadColumn[];
  readonly findings: readonly Finding[];
}

/** The heading that words stand for, with the group over them or alone. */
export function headingUnder(words: string, group: string): PlacementHeading | undefined {
  return findPlacementHeading(words) ?? (group === "" ? undefined : findPlacementHeading(`${group} ${words}`));
}

/** Every column with what it is read for; one that is not known, or stands twice, is told once. */
export function placementColumns(
  table: FoundTable,
  file: string,
  unit: Unit,
  { columns: answers }: TableAnswers,
  at: Finding["at"],
): PlacementColumns {
  const findings: Finding[] = [...answerFaults(table, answers, at)];
  const seen = new Set<PlacementHeading>();
  const unknown: FoundColumn[] = [];
  const columns = table.columns.map((found, index): ReadColumn => {
    const answer = answerFor(found, answers);
    const heading = answer === undefined ? headingUnder(found.words, found.group) : findPlacementHeading(answer);
    const place = placeOfCell(file, table.sheet, found.cell);
    if (heading === undefined && answer === undefined) unknown.push(found);
    const isTwice = heading !== undefined && seen.has(heading);
    if (isTwice) findings.push(errorAt(place, "heading-twice", `the heading ${heading.name} stands twice`));
    if (heading !== undefined) seen.add(heading);
    const role: ColumnRole =
      heading === undefined || isTwice
        ? { kind: "left out", why: "no heading of placements" }
        : valueRole(heading, found, unit);
    return { index, found, heading: headingText(found), name: heading?.name ?? headingText(found), role };
  });
  return { columns, findings: [...findings, ...unknownHeadings(unknown, table, file)] };
}

function answerFor(found: FoundColumn, answers: TableAnswers["columns"]): string | undefined {
  return [...answers].find(([key]) => isNamed(found, key))?.[1];
}

function isNamed(found: FoundColumn, key: string): boolean {
  const plain = (text: string) =>
    text
      .toLowerCase()
      .replace(/\s+/g, " ")
      .replace(/ ?\/ ?/g, "/")
      .trim();
  const names = [headingText(found), found.words].map(plain);
  return names.includes(plain(key)) || columnLetters(found.cell.column) === key.trim().toUpperCase();
}

/** Answers for no column, and names that are none of ours. */
function answerFaults(table: FoundTable, answers: TableAnswers["columns"], at: Finding["at"]): readonly Finding[] {
  const names = PLACEMENT_HEADINGS.map(({ name }) => name);
  return [...answers].flatMap(([key, name]): Finding[] => {
    const path = [at.path ?? "", "columns", key].filter((step) => step !== "").join(".");
    const fault = (message: string, hint: string): Finding => ({
      ...{ code: "answer-without-match", severity: "error", at: { ...at, path }, message, hint },
    });
    if (!table.columns.some((found) => isNamed(found, key))) {
      const { message, hint = "" } = unusedAnswer(
        "columns",
        key,
        "is no heading of the list",
        table.columns.map(headingText),
      );
      return [fault(message, hint)];
    }
    const isLeftOut = /^(left out|note)$/i.test(name.trim());
    if (isLeftOut || findPlacementHeading(name) !== undefined) return [];
    return [
      fault(
        `"${name}" is no heading of placements; allowed are ${names.join(", ")}, or left out`,
        `the nearest are ${nearestThree(name, names).join(", ")}`,
      ),
    ];
  });
}

const MOST_LISTED = 20;

function unknownHeadings(unknown: readonly FoundColumn[], table: FoundTable, file: string): readonly Finding[] {
  const [first] = unknown;
  if (first === undefined) return [];
  const names = unknown.map((found) =>
    found.words === "" ? `column ${columnLetters(found.cell.column)}` : headingText(found),
  );
  const message = `${names.length === 1 ? "1 heading is" : `${names.length} headings are`} not known and left out: ${listed(names, MOST_LISTED)}`;
  const hint = "columns: { HEADING: NAME } gives one a meaning";
  return [
    { ...errorAt(placeOfCell(file, table.sheet, first.cell), "unknown-heading", message, hint), severity: "warning" },
  ];
}

const LENGTH_UNITS: ReadonlySet<string> = new Set(["in", "ft", "mm", "cm", "m"]);

function valueRole(heading: PlacementHeading, found: FoundColumn, unit: Unit): ColumnRole {
  const { key, formName, words } = heading;
  const headingUnit = found.unit !== null && LENGTH_UNITS.has(found.unit) ? found.unit : null;
  const read: CellReader = (text, place) =>
    readCell(text, formName, { unit, headingUnit, place, key, ...(words === undefined ? {} : { synonyms: words }) });
  return { kind: "value", key, read };
}
