/** Placement lists: the same layout as a job file that lists its placements, and faults that name the cell. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Job } from "../../../src/job/index.js";
import { readCsv } from "../../../src/readers/csv.js";
import type { Table } from "../../../src/readers/inputs.js";
import { PLACEMENT_HEADINGS, placementMeaningsOf } from "../../../src/schedule/index.js";
import { inches } from "../../../src/units/index.js";
import { faultsOf, jobOf } from "../job/files.js";

const BASE = "rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { thickness: 1/4 } }";

function jobText(placements: string): string {
  return [
    'job: { number: "1" }',
    "units: in",
    "grid:",
    "  x: { names: [1, 2, 1E2], spacing: 25' }",
    "  y: { names: [A, B], at: [0, 20'] }",
    "  others: [{ kind: arc, name: K, center: [0, 0], radius: 30' }]",
    placements,
    "bases:",
    `  - { mark: B1, ${BASE}`,
    `  - { mark: "007", ${BASE}`,
    "",
  ].join("\n");
}

const LISTED = [
  "placements:",
  "  - { base: B1, at: [A-1, B-2] }",
  "  - { base: 007, at: A-1E2, offset: [6, -1/2], turn: 90, topOfConcrete: 99'-6\", bottomOfPlate: 99.625 ft }",
  "  - { base: 007, at: B-K, near: [20', 20'], topOfConcrete: 99.5 ft, delivery: \"02\" }",
].join("\n");

/** Placements without their places, which name the file. */
const layoutOf = (job: Job) => (job.plan?.placements ?? []).map(({ place: _place, ...placement }) => placement);

const csv = (...lines: readonly string[]) => ({ "list.csv": lines.join("\n") });
const WHOLE = csv(
  "Anchor rod plan S-101,,,,,,,,,,",
  "Mark,Line 1,Line 2,Offset X,Offset Y,Turn,T.O.C. (ft),B.O.P. (ft),Near X (ft),Near Y (ft),Pour",
  "B1,A,1,,,,,,,,",
  "B1,B,2,-,0,0,,,,,",
  ",,,,,,,,,,",
  "007,A,1E2,6,-1/2,90,99'-6\",99.625,,,",
  "007,B,K,,,,EL 99.5,,20,20,02",
);

describe("a placement list", () => {
  const expected = layoutOf(jobOf(jobText(LISTED)));

  it("is the same layout as the placements of a job file", () => {
    expect(layoutOf(jobOf(jobText("placements: list.csv"), WHOLE))).toEqual(expected);
    expect(expected[2]?.bottomOfPlate).toEqual({ kind: "given", value: inches(1195.5), from: "job" });
  });

  it("names a crossing by a letter beside a figure, and levels in metres above a datum", () => {
    const listed = [
      "placements:",
      "  - { base: B1, at: A-1, topOfConcrete: 30.25 m }",
      "  - { base: 007, at: B-2, topOfConcrete: 30.25 m }",
    ].join("\n");
    const rows = csv("Mark,Grid ref.,T.O.C. (mAOD)", "B1,A1,30.25", "007,B 2,30.25");
    expect(layoutOf(jobOf(jobText("placements: list.csv"), rows))).toEqual(layoutOf(jobOf(jobText(listed))));
  });

  it("is at fault where its title states another unit than that of its bare offsets", () => {
    const rows = (offset: string) =>
      csv("SETTING OUT - ALL DIMENSIONS IN METRES", "Mark,Grid,Offset X", `B1,A-1,${offset}`, "007,B-2,");
    const [fault, ...others] = faultsOf(jobText("placements: list.csv"), rows("0.15"));
    expect(fault).toContain('says m, and bare numbers are read in inches, as "0.15" in C3');
    expect(others).toEqual([]);
    expect(jobOf(jobText("placements: list.csv"), rows("0.15 m")).plan?.placements).toHaveLength(2);
  });

  it("comes as a sheet of a workbook that may hold the bases too", () => {
    const rows = [
      ["Mark", "Grid", "Rotation", "TOC", "BOP", "Off X", "Off Y", "Near X", "Near Y", "Truck no."],
      ["B1", "A-1"],
      ["B1", "B-2"],
      ["007", "A-1E2", "90", "99'-6\"", "99.625 ft", "6", "-1/2"],
      ["007", "B-K", "", "99.5 ft", "", "", "", "20'", "20'", "02"],
    ].map((cells, row) => cells.map((text, column) => ({ text, line: row + 1, column: column + 1 })));
    const table: Table = { kind: "table", sheet: "Places", rows };
    const job = jobOf(jobText("placements: { file: job.xlsx, sheet: Places }"), { "job.xlsx#Places": table });
    expect(layoutOf(job)).toEqual(expected);
  });

  it("places each base in its row, for later findings", () => {
    const places = jobOf(jobText("placements: list.csv"), WHOLE).plan?.placements.map(({ place }) => place);
    expect(places?.[2]).toEqual({ file: "list.csv", line: 6, column: 2, path: "row 6 Line 1", cell: "B6" });
  });

  it("that is only warned of is read: its plan is not lost", () => {
    const read = readCsv(String(WHOLE["list.csv"]), "list.csv");
    if (!read.ok) throw new Error("the list is no table");
    const remark = {
      code: "hidden-rows",
      severity: "warning",
      at: { file: "list.csv" },
      message: "row 3 is hidden",
    } as const;
    const table: Table = { ...read.value, remarks: [remark] };
    expect(jobOf(jobText("placements: list.csv"), { ...WHOLE, "list.csv": table }).plan?.placements).toHaveLength(4);
    expect(faultsOf(jobText("placements: list.csv"), { ...WHOLE, "list.csv": table })).toEqual([
      "list.csv: row 3 is hidden",
    ]);
  });

  it.each<[string, ReturnType<typeof csv>, string[]]>([
    [
      "no headings",
      csv("a,b", "B1,A-1"),
      [expect.stringMatching(/^list\.csv: no table was found; a table has a heading Mark/) as unknown as string],
    ],
    [
      "an unknown heading, and the nearest",
      csv("Mark,Grid,Trun", "B1,A-1,90", "007,B-1,0"),
      [
        'list.csv C1 Trun: "Trun" is not a known heading, and a placement keeps no notes; is it Turn? (answer in the job: columns: { "Trun": Turn }, or columns: { "Trun": left out })',
      ],
    ],
    [
      "one line of two",
      csv("Mark,Line 1,Line 2", "B1,A,", "007,,1"),
      [
        "list.csv:2:1 row 2 Line 1: has Line 1 without Line 2; allowed are both, or Grid",
        "list.csv:3:1 row 3 Line 1: has Line 2 without Line 1; allowed are both, or Grid",
      ],
    ],
    [
      "both ways",
      csv("Mark,Grid,Line 1,Line 2", "B1,A-1,A,1", "007,B-1,,"),
      ["list.csv C2 Line 1: is given beside Grid; allowed is Grid, or Line 1 and Line 2"],
    ],
    [
      "no mark",
      csv("Mark,Grid", "B1,A-1", ",B-1"),
      ["list.csv:3:2 row 3 Mark: is required; allowed is a line of text, at most 200 characters"],
    ],
    [
      "no crossing",
      csv("Mark,Grid,Line 1,Line 2", "B1,,,", "007,A-1,,"),
      ["list.csv:2:1 row 2 Line 1: is required; allowed are two grid lines, as A-1, or a list of them"],
    ],
    [
      "what only the whole layout shows: an unknown line, opposite hand, one spot, an unknown base",
      csv("Mark,Grid,Hand", "B1,A-9,", "B1,A-1,opp", "007,A-1,", "B8,B-1,"),
      [
        'list.csv B2 Grid: there is no grid line "9"; allowed are the names in grid (nearest: 2, 1)',
        'list.csv C3 Hand: "opposite" cannot be placed: a base of opposite hand gets a mark of its own, with its pattern mirrored',
        "list.csv B4 Grid: 007 at A-1 stands on one spot with B1 at A-1, list.csv B3 Grid; every base has its own",
        'list.csv A5 Mark: "B8" is no base of this job; allowed is the mark of a base (did you mean B1?)',
      ],
    ],
    [
      "an elevation without a unit, in the cell and in the heading",
      csv("Mark,Grid,TOC,BOP", "B1,A-1,99.5,EL 99.625", "007,B-1,99'-6\",99.625 ft"),
      [
        'list.csv C2 T.O.C.: "99.5" has no unit, which an elevation must say: write 99.5 ft or 99.5 in',
        'list.csv D2 B.O.P.: "99.625" has no unit, which an elevation must say: write 99.625 ft or 99.625 in',
      ],
    ],
    ["the job's own unit in the heading", csv("Mark,Grid,TOC (in)", "B1,A-1,1194", "007,B-1,EL 1194"), []],
    [
      "an elevation and a turn that are none",
      csv("Mark,Grid,TOC,Turn", "B1,A-1,high,9o", "007,B-1,,"),
      [
        'list.csv C2 T.O.C.: "high" cannot be read; allowed is an elevation with its unit, as 99\'-6", 99.5 ft, 12350 mm or 12.35 m',
        'list.csv D2 Turn: "9o" is not an angle: allowed are decimal degrees from -360 to 360, as 45, 22.5 or -30 deg',
      ],
    ],
    [
      "nothing under its headings",
      csv("Mark,Grid"),
      ["job.yaml:7:13 placements: list.csv has no row under its headings; allowed is one or more"],
    ],
  ])("with %s", (_name, list, expectedFaults) => {
    expect(faultsOf(jobText("placements: list.csv"), list)).toEqual(expectedFaults);
  });
});

describe("headings of placement lists", () => {
  it("each way of writing one is found, and stands for one", () => {
    for (const heading of PLACEMENT_HEADINGS)
      for (const name of [heading.name, ...heading.also])
        expect([name, ...placementMeaningsOf(name, "")]).toEqual([name, heading.name]);
  });

  it("the starting list has headings as the table writes them", () => {
    const table = readCsv(
      readFileSync(new URL("../../../templates/placements.csv", import.meta.url), "utf8"),
      "placements.csv",
    );
    const headings = table.ok ? (table.value.rows[0] ?? []).map(({ text }) => text) : [];
    expect(headings).toHaveLength(8);
    expect(headings.map((text) => placementMeaningsOf(text, ""))).toEqual(headings.map((name) => [name]));
  });

  it.each([
    ["TOC", "T.O.C."],
    ["t.o.c. el. (ft)", "T.O.C."],
    ["Grid  x", "Line 1"],
    ["OFFSET-Y (in)", "Offset Y"],
    ["bop", "B.O.P."],
  ])("%s is %s", (text, name) => {
    expect(placementMeaningsOf(text, "")).toEqual([name]);
  });
});
