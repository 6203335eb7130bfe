/** The column as written, by its dimensions or by its section's name -> its outline in plan. */
import type { SectionOutline } from "../../standards/index.js";
import { findSection } from "../../standards/index.js";
import type { Base, ColumnShape, Input, Offset } from "../model/job.js";
import { given, missing } from "../model/job.js";
import type { BaseDocument } from "../schema/job.js";
import { offsetOf } from "./shapes.js";

type Column = Pick<Base, "column" | "columnName">;

/** `from`: who gave it. A section whose dimensions are not held keeps its name: what needs its outline is then not checked, for that reason. */
export function resolveColumn(column: BaseDocument["column"], from: string): Column {
  if (column === undefined) return { column: missing("column", "no column is given"), columnName: "" };
  const at = offsetOf(column.at);
  if (column.kind !== "section") return { column: given({ ...column, at }, from), columnName: "" };
  return { column: sectionShape(column.name, column.depthAlong, at), columnName: column.name };
}

function sectionShape(name: string, along: "x" | "y" | undefined, at: Offset): Input<ColumnShape> {
  const section = findSection(name);
  if (section.kind !== "found") {
    const why = `the dimensions of ${name} are not kept here: give the column with kind, depth, width, flange and web, or its sides`;
    return missing("column", why);
  }
  const shape = shapeOf(section.outline, along, at);
  if (shape !== null) return given(shape, section.from);
  const what = section.outline.kind === "flanged" ? "depth" : "longer side";
  return missing(
    "column.depthAlong",
    `along which axis the ${what} of ${name} lies is not given, as column: ${name} along x`,
  );
}

/** null where it matters along which axis the section lies and nobody says it. */
function shapeOf(outline: SectionOutline, along: "x" | "y" | undefined, at: Offset): ColumnShape | null {
  switch (outline.kind) {
    case "pipe":
      return { kind: "pipe", diameter: outline.diameter, at };
    case "tube": {
      const { long, short } = outline;
      if (along === undefined && long !== short) return null;
      return along === "y" ? { kind: "tube", x: short, y: long, at } : { kind: "tube", x: long, y: short, at };
    }
    case "flanged": {
      const { depth, width, flange, web } = outline;
      return along === undefined ? null : { kind: "wide flange", depth, width, flange, web, depthAlong: along, at };
    }
  }
}
