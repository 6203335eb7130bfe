/** What a cell gives, as one line of text. */
import type { SourceNode } from "../src/readers/source.js";
import { readCell } from "../src/schedule/grammar/index.js";
import type { CellPart, CellReading, FormName } from "../src/schedule/model.js";
import type { Unit } from "../src/units/index.js";

/** A column of each form: the key that it fills. */
export const KEY_OF_FORM: Readonly<Record<FormName, string>> = {
  text: "template.mark",
  note: "note",
  word: "template.support",
  yesNo: "rods.torqued",
  count: "rods.count",
  mark: "mark",
  length: "rods.embedment",
  lengths: "pattern.x",
  point: "basePlate.at",
  points: "pattern.at",
  elevation: "check.topOfConcrete",
  thickness: "basePlate.thickness",
  rod: "rods.diameter",
  rods: "rods",
  grade: "rods.grade",
  finish: "rods.finish",
  material: "rods",
  pattern: "pattern",
  spacing: "pattern.x",
  pitch: "pattern.pitch.x",
  plate: "basePlate",
  pier: "concrete",
  hole: "baseHole",
  holes: "template.nails",
  washer: "washer",
  nut: "rods.nut",
  bottom: "rods.bottom",
  section: "column",
  outline: "template.outline",
  corner: "template.outline.corner",
  opening: "template.opening",
};

/** Every form. */
export const FORM_NAMES: readonly FormName[] = Object.keys(KEY_OF_FORM).filter(
  (name): name is FormName => name in KEY_OF_FORM,
);

/** Reads a cell of the form's column. */
export function read(
  text: string,
  form: FormName,
  unit: Unit = "in",
  headingUnit: string | null = null,
  key = KEY_OF_FORM[form],
): CellReading {
  return readCell(text, form, { unit, headingUnit, place: { file: "s.csv", line: 2, column: 3 }, key });
}

/** A node as a line: `{x: 1, y: 2}`, `[1, 2]`. */
export function nodeText(node: SourceNode): string {
  if (node.kind === "scalar") return node.text;
  if (node.kind === "list") return `[${node.items.map(nodeText).join(", ")}]`;
  return `{${node.entries.map(({ key, value }) => `${key}: ${nodeText(value)}`).join(", ")}}`;
}

/** `rods.count 4, rods.diameter 1"` */
export function partsText(parts: readonly CellPart[]): string {
  return parts.map(({ key, node }) => `${key} ${nodeText(node)}`).join(", ");
}

/** What the cell gives: its parts, or the kind of what it gives instead with what a person needs of it. */
export function given(reading: CellReading): string {
  switch (reading.kind) {
    case "value":
      return partsText(reading.parts);
    case "blank":
      return "blank";
    case "reference":
      return Object.values(reading.to).join(" ");
    case "choice":
      return `choice: ${reading.readings.map(({ parts }) => partsText(parts)).join(" | ")}`;
    case "fault":
      return `fault: ${reading.message}`;
  }
}
