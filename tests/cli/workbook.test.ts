/** A workbook as a schedule: what of it nobody sees, is said beside the ledger; nothing stops for it. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { sheetData, writeBook } from "../fuzz/workbooks.js";
import { newFolder, runProgram } from "./program.js";

const HEADINGS = ["Mark", "Rod dia", "X", "Y", "Template thk"];
const JOB =
  'job: { number: "1", title: Workbook, revision: A, status: released, date: 2026-11-24 }\nunits: in\nrules: us\nshop: plasma\n';

function writeFiles(x: string, format: string): string {
  const folder = newFolder();
  const rows = (mark: string, at: string) =>
    sheetData([HEADINGS, [mark, "1", at, "12", "1/4"], ["B2", "1", "10", "10", "1/4"]]);
  const xml = rows("B1", x).replace('<row r="3"', '<row r="3" hidden="1"').replace('<c r="C2"', '<c r="C2" s="1"');
  const old = { name: "OLD", state: "veryHidden", xml: rows("X9", "99") } as const;
  writeFileSync(join(folder, "bases.xlsx"), writeBook([old, { name: "Bases", xml }], [format]));
  writeFileSync(join(folder, "job.yaml"), `${JOB}schedule: bases.xlsx\n`);
  return folder;
}

it.each([
  ["check", []],
  ["make", ["--out", "out"]],
] as const)("%s tells it in warnings", async (command, options) => {
  const ran = await runProgram(writeFiles("12", "0.00"), [command, "job.yaml", ...options]);
  expect(ran.status).not.toBe(2);
  const warnings = ran.stderr.split("\n").filter((line) => line.startsWith("warning: "));
  expect(warnings).toEqual([
    expect.stringContaining('bases.xlsx: sheet "Bases": row 3 is hidden; it is read like the others'),
  ]);
  expect(ran.stdout).toContain("2 bases");
});

it("a unit in the number format is that of the value; what is no unit is a fault of the cell", async () => {
  const check = async (x: string, format: string) => runProgram(writeFiles(x, format), ["check", "job.yaml", "--json"]);
  const [inches, millimetres] = [await check("12", "0.00"), await check("304.8", '0.0" mm"')];
  expect(millimetres.stdout).toBe(inches.stdout);
  expect(JSON.parse(inches.stdout).bases).toHaveLength(2);
  const pieces = await check("12", '0" pcs"');
  expect(pieces.status).toBe(2);
  expect(JSON.parse(pieces.stdout).findings).toContainEqual(
    expect.objectContaining({
      code: "cell-fault",
      at: { file: "bases.xlsx", line: 2, column: 3, path: "row 2 X", cell: "Bases!C2" },
    }),
  );
});
