import { describe, expect, it } from "vitest";
import { inches } from "../../../src/units/index.js";
import { faultsOf, jobOf, withBase } from "./files.js";

function columnOf(column: string) {
  const base = jobOf(withBase({ column })).bases[0];
  return { column: base?.column, name: base?.columnName };
}

describe("a column by its section's name", () => {
  it("has the outline that is held, where it is said how it stands", () => {
    const { column, name } = columnOf("W12x65 along y");
    expect(name).toBe("W12x65");
    expect(column).toMatchObject({
      kind: "given",
      from: "AISC Steel Construction Manual, Table 1-1",
      value: { kind: "wide flange", depth: inches(12.1), width: inches(12), depthAlong: "y" },
    });
  });

  it("keeps its name and no outline where it is not said how it stands", () => {
    expect(columnOf("W12x65")).toMatchObject({ name: "W12x65", column: { kind: "missing", key: "column.depthAlong" } });
    expect(columnOf("HSS8x6x1/2")).toMatchObject({ column: { kind: "missing", key: "column.depthAlong" } });
  });

  it("needs no direction where the section looks the same both ways", () => {
    expect(columnOf("HSS8x8x1/2").column).toMatchObject({ value: { kind: "tube", x: inches(8), y: inches(8) } });
    expect(columnOf("PIPE 6 STD").column).toMatchObject({ value: { kind: "pipe", diameter: inches(6.625) } });
  });

  it("lays the longer side of a tube along the axis that is named", () => {
    expect(columnOf("HSS6x8x1/2 along y").column).toMatchObject({ value: { x: inches(6), y: inches(8) } });
    expect(columnOf("HSS6x8x1/2 along x").column).toMatchObject({ value: { x: inches(8), y: inches(6) } });
  });

  it("keeps the name of a section that is not held, and says what would help", () => {
    const { column, name } = columnOf("W36x150 along x");
    expect(name).toBe("W36x150");
    expect(column).toMatchObject({ kind: "missing", key: "column" });
    expect(column?.kind === "missing" ? column.why : "").toContain("W36x150 are not kept");
  });

  it("can stand off the middle", () => {
    const off = columnOf("{ kind: section, name: W12x65, depthAlong: x, at: [0, 3] }");
    expect(off.column).toMatchObject({ value: { at: { x: 0, y: inches(3) } } });
  });

  it.each(["TBD", "12x65", "W12x65 along z", "{ kind: section, name: none }", "{ section: W12x65 }"])(
    "refuses %s",
    (column) => {
      expect(faultsOf(withBase({ column }))).not.toEqual([]);
    },
  );
});

describe("a column by its section's name in a schedule", () => {
  const HEAD = 'job: { number: "1", revision: A }\nunits: in\nschedule: bases.csv\n';
  const sheet = (section: string) =>
    `Mark,Rod dia,X,Y,Column,Template thickness\nB1,3/4,9,9,"${section.replaceAll('"', '""')}",1/4\n`;

  it.each([
    ["W12x65 along y", "W12x65", "wide flange"],
    ["HSS8X8X.500", "HSS8X8X.500", "tube"],
    ['6" STD PIPE', '6" STD PIPE', "pipe"],
    ["HEB-300 along x", "HEB-300", "wide flange"],
    ["pipe 8-5/8", "", "pipe"],
  ])("%s is read as in the job file", (written, name, kind) => {
    const [base] = jobOf(HEAD, { "bases.csv": sheet(written) }).bases;
    expect(base).toMatchObject({ columnName: name, column: { kind: "given", value: { kind } } });
  });

  it.each(["W12x65", "WT6x20", "L4x4x1/4", "2L4x4x1/4", "UB 457x191x67", "HSS 203x203x9.5"])(
    "%s keeps its name where no outline is known",
    (name) => {
      const [base] = jobOf(HEAD, { "bases.csv": sheet(name) }).bases;
      expect(base).toMatchObject({ columnName: name, column: { kind: "missing" } });
    },
  );
});
