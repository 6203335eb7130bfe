/** What a title or a note says of all dimensions, as ALL DIMENSIONS IN MM, held against the unit of the job. */
import type { Finding } from "../diagnostics/finding.js";
import { cellInSheet, placeOfCell } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { FoundTable } from "./model.js";
import type { SheetCell } from "./sheet-cell.js";
import type { UsedAnswers } from "./used-answers.js";

/** A length that was taken, and its cell. */
export interface TakenLength {
  readonly node: SourceNode;
  readonly from: SheetCell;
}

/** A table with the lengths that were taken of it, and what they are read with. */
export interface StatedUnits {
  readonly table: FoundTable;
  readonly lengths: readonly TakenLength[];
  readonly answers: UsedAnswers;
  readonly file: string;
  readonly unit: Unit;
}

const SUBJECT = String.raw`\b(?:dimensions?|dims?|dimns?|measurements?|lengths?|sizes|units)\b\.?(?:\s+(?:and|&)\s+\w+)?(?:\s+(?:are|is|all|given|shown|to be))*\s*`;
/** `DIMENSIONS IN M` with a word or sign before the unit, `DIMS MM` without. */
const STATED: readonly RegExp[] = [
  new RegExp(
    `${SUBJECT}(?:in\\b|:|=|-)\\s*(mm|millimet(?:re|er)s?|cm|centimet(?:re|er)s?|m|met(?:re|er)s?|inch(?:es)?|in|ft|feet)\\b`,
    "i",
  ),
  new RegExp(`${SUBJECT}(mm|millimet(?:re|er)s?|inches)\\b`, "i"),
];

/** Units by their first letters. */
const KINDS: readonly (readonly [RegExp, string])[] = [
  [/^(?:mm|milli)/i, "mm"],
  [/^c/i, "cm"],
  [/^m/i, "m"],
  [/^(?:in|ft|feet)/i, "in"],
];

/** An error for each text that states another unit, where bare numbers were taken in that of the job; "-" answers it. */
export function statedUnitFaults(stated: StatedUnits): readonly Finding[] {
  const { table, answers, unit } = stated;
  const others = table.leftOut.flatMap(({ cell }) => {
    const said = unitStated(cell.text);
    return said === null || said === unit || answers.ofCell(cell)?.trim() === "-" ? [] : [{ cell, said }];
  });
  const bare = others.length === 0 ? undefined : firstBare(stated);
  return bare === undefined ? [] : others.map(({ cell, said }) => faultOf(cell, said, bare, stated));
}

/** The unit that a text states for all dimensions; null where it states none. */
function unitStated(text: string): string | null {
  const written = STATED.map((pattern) => pattern.exec(text)?.[1]).find((unit) => unit !== undefined);
  return written === undefined ? null : (KINDS.find(([letters]) => letters.test(written))?.[1] ?? null);
}

const BARE = /^-?\d+(?:\.\d+)?$|^-?(?:\d+[ -])?\d+\/\d+$/;

/** The first that was taken from a number without a unit, under a heading without one. */
function firstBare({ lengths }: StatedUnits): TakenLength | undefined {
  return lengths.find(
    ({ node, from }) => from.column.found.unit === null && node.kind === "scalar" && BARE.test(node.text),
  );
}

const NAMES: Readonly<Record<Unit, string>> = { in: "inches", mm: "millimetres" };

function faultOf(cell: Cell, said: string, bare: TakenLength, { table, file, unit }: StatedUnits): Finding {
  const place = placeOfCell(file, table.sheet, cell, "stated unit");
  const message = `"${cell.text.slice(0, 80)}" says ${said}, and bare numbers are read in ${NAMES[unit]}, as "${bare.from.text}" in ${bare.from.place.cell ?? ""}; allowed is one of the two`;
  const own = said === "mm" || said === "in" ? `units: ${said} where the sheet is right; or ` : "";
  const hint = `answer in the job: ${own}cells: { ${cellInSheet(cell)}: "-" } where its words do not hold`;
  return errorAt(place, "stated-unit-differs", message, hint);
}
