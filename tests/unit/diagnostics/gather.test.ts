/** Findings told once a cause. */
import { describe, expect, it } from "vitest";
import { formatCause } from "../../../src/diagnostics/cause-words.js";
import type { Finding, Place } from "../../../src/diagnostics/finding.js";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { gatherFindings } from "../../../src/diagnostics/gather.js";

function fault(at: Partial<Place>, message: string, hint?: string): Finding {
  const finding: Finding = { code: "bad-value", severity: "error", at: { file: "s.csv", ...at }, message };
  return hint === undefined ? finding : { ...finding, hint };
}

const cell = (name: string, heading: string, sheet = ""): Partial<Place> => {
  const row = Number(/\d+$/.exec(name)?.[0]);
  return { line: row, column: 4, path: `row ${row} ${heading}`, cell: `${sheet}${name}` };
};

const told = (findings: readonly Finding[]): string[] => gatherFindings(findings).map(formatCause);

describe("a place", () => {
  it("of a cell is the spreadsheet's own; of a key, line and column", () => {
    expect(formatFinding(fault(cell("E7", "Rod dia", "Bases!"), "no"))).toBe("s.csv Bases!E7 Rod dia: no");
    expect(formatFinding(fault({ line: 7, column: 5, cell: "E7" }, "no"))).toBe("s.csv E7: no");
    expect(formatFinding(fault({ line: 7, column: 5, path: "row 7", cell: "E7" }, "no"))).toBe("s.csv E7: no");
    expect(formatFinding(fault({ line: 7, column: 5, path: "bases[0].mark" }, "no"))).toBe(
      "s.csv:7:5 bases[0].mark: no",
    );
  });
});

describe("findings of one cause are one", () => {
  const REQUIRED = "is required; allowed is a length";

  it("under one heading, with the rows that neighbour", () => {
    const rows = Array.from({ length: 35 }, (_, index) => fault(cell(`D${index + 5}`, "Rod dia"), REQUIRED));
    expect(told(rows)).toEqual([`s.csv column D Rod dia, 35 rows (D5 to D39): ${REQUIRED}`]);
    const few = [5, 7, 8, 30].map((row) => fault(cell(`D${row}`, "Rod dia", "Bases!"), REQUIRED));
    expect(told(few)).toEqual([`s.csv Bases column D Rod dia, 4 rows (D5, D7 to D8, D30): ${REQUIRED}`]);
    const across = ["D5", "E5", "F5"].map((name) => fault(cell(name, "Rod dia"), REQUIRED));
    expect(told(across)).toEqual([`s.csv row 5 Rod dia, 3 cells (D5, E5, F5): ${REQUIRED}`]);
  });

  it("though each offers an answer by its own name", () => {
    const dates = ["B4", "B5"].map((name) =>
      fault(cell(name, "Rod dia"), `a date; allowed is cells: { ${name}: 3/4 }`),
    );
    expect(told(dates)).toEqual(["s.csv column B Rod dia, 2 rows (B4 to B5): a date; allowed is cells: { B4: 3/4 }"]);
  });

  it("where a column is missing, by rows", () => {
    const rows = [5, 6, 9].map((row) => fault({ line: row, column: 1, path: `row ${row} Rod dia` }, REQUIRED));
    expect(told(rows)).toEqual([`s.csv Rod dia, 3 rows (5 to 6, 9): ${REQUIRED}`]);
  });

  it("whatever the values: the first three are quoted, each with its place and its own hint", () => {
    const words = "is not allowed; allowed is one of plain, galvanized";
    const cells = ["a", "b", "a", 'c" is d', "e"].map((value, index) =>
      fault(cell(`D${index + 5}`, "Finish"), `"${value}" ${words}`, index === 0 ? "did you mean plain?" : undefined),
    );
    expect(told(cells.slice(0, 3))).toEqual([
      `s.csv column D Finish, 3 rows (D5 to D7): "a" in D5 (did you mean plain?), "b" in D6, "a" in D7: ${words}`,
    ]);
    expect(told([...cells.slice(0, 3), ...cells.slice(4)])[0]).toContain('"a" in D7 and 1 more: is not allowed');
    const same = [5, 6].map((row) => fault(cell(`D${row}`, "Finish"), `"a" ${words}`, "did you mean plain?"));
    expect(told(same)).toEqual([`s.csv column D Finish, 2 rows (D5 to D6): "a" ${words} (did you mean plain?)`]);
  });

  it("at one key of many bases, with their number", () => {
    const keys = [0, 1, 4].map((base) =>
      fault({ file: "job.yaml", line: 8 + base, column: 5, path: `bases[${base}].rods.diamter` }, "unknown key"),
    );
    expect(told(keys)).toEqual(["job.yaml bases[].rods.diamter, 3 bases (lines 8, 9, 12): unknown key"]);
    const groups = [0, 1].map((group) =>
      fault({ file: "job.yaml", line: 8, column: 5, path: `bases[2].groups[${group}].rods.x` }, "unknown key"),
    );
    expect(told(groups)).toEqual(["job.yaml bases[].groups[].rods.x, 2 places in 1 base (line 8): unknown key"]);
  });
});

describe("findings of another cause are not hidden", () => {
  it("another heading, message, code, severity, sheet or file", () => {
    const one = fault(cell("D5", "Rod dia"), "no");
    const others: readonly Finding[] = [
      fault(cell("E6", "Grade"), "no"),
      fault(cell("D7", "Rod dia"), "never"),
      { ...fault(cell("D8", "Rod dia"), "no"), code: "other" },
      { ...fault(cell("D9", "Rod dia"), "no"), severity: "warning" },
      fault(cell("D10", "Rod dia", "Other!"), "no"),
      fault({ ...cell("D11", "Rod dia"), file: "t.csv" }, "no"),
    ];
    expect(gatherFindings([one, ...others])).toHaveLength(7);
  });

  it("in a list without lines, as of a summary, names no lines", () => {
    const files = [0, 1].map((index) => fault({ path: `bases[0].files[${index}].path` }, "is not a path"));
    const [one] = told(files);
    expect(one).toBe("s.csv bases[].files[].path, 2 places in 1 base: is not a path");
  });

  it("what stands at no cell and in no list stays alone, in the order of reading", () => {
    const whole = [fault({}, "no"), fault({}, "no"), fault({ line: 1, path: "units" }, "no"), fault({ line: 2 }, "no")];
    expect(told(whole)).toEqual(["s.csv: no", "s.csv: no", "s.csv:1 units: no", "s.csv:2: no"]);
    const mixed = [fault(cell("D5", "A"), "x"), fault(cell("E5", "B"), "y"), fault(cell("D6", "A"), "x")];
    const causes = gatherFindings(mixed);
    expect(causes.map(({ subject, all }) => [subject, all.length])).toEqual([
      ["A", 2],
      ["B", 1],
    ]);
    expect(causes.flatMap(({ all }) => all)).toHaveLength(mixed.length);
  });
});
