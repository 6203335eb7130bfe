/** Whatever stands in a sheet, reading it ends with what was understood or with findings, and the job that is written can be read. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { writeReadAsCsv } from "../../../../src/formats/read-as-csv.js";
import { writeReadAsText } from "../../../../src/formats/read-as-text.js";
import { writeReadAsXlsx } from "../../../../src/formats/read-as-xlsx.js";
import { toPlain } from "../../../../src/job/document.js";
import type { Cell } from "../../../../src/readers/inputs.js";
import { findNode } from "../../../../src/readers/source.js";
import { readYaml } from "../../../../src/readers/yaml.js";
import { splitJob } from "../../../../src/tasks/job-parts.js";
import { readSheetAsSent } from "../../../../src/tasks/read.js";
import { writeJobAgain, writeNewJob } from "../../../../src/tasks/read-job.js";

const heading = fc.constantFrom(
  "MARK",
  "QTY",
  "ROD SIZE",
  "GAGE",
  "SPACING",
  "BASE PLATE SIZE",
  "GRADE",
  "X",
  "Y",
  "REMARKS",
  "TEMPLATE THK",
  "",
);
const value = fc.oneof(
  fc.constantFrom(
    "B1",
    "B2-B4",
    "DO",
    "SAME AS B1",
    "SEE NOTE 1",
    '1 1/4"Ø',
    "11/4",
    '(4) 3/4"',
    "12x12",
    "18x18 PL 1",
    "1/4",
    "-",
    "TYP",
    "4",
    "",
    "=1+1",
    "a: b #",
    "null",
  ),
  fc.string({ unit: "binary", maxLength: 12 }),
);
const sheet = fc.tuple(
  fc.array(heading, { minLength: 2, maxLength: 8 }),
  fc.array(fc.array(value, { maxLength: 8 }), { maxLength: 6 }),
);

it("is read, shown, written and read back", () => {
  fc.assert(
    fc.property(sheet, fc.constantFrom(null, "in", "mm"), ([headings, body], unit) => {
      const rows = [headings, ...body].map((row, line) =>
        row.map((text, column): Cell => ({ text, line: line + 1, column: column + 1 })),
      );
      const read = readSheetAsSent({ name: "a: b.csv", file: { kind: "table", sheet: "S 1", rows }, job: null, unit });
      if (!read.ok) {
        expect(read.findings.length).toBeGreaterThan(0);
        return;
      }
      const { value: reading } = read;
      writeReadAsText(reading.form, { width: 80, color: false });
      writeReadAsCsv(reading.form);
      writeReadAsXlsx(reading.form, null);
      const job = writeNewJob({ name: "job.yaml", schema: null, file: "a: b.csv" }, reading);
      const parts = splitJob(job);
      expect(parts?.isUnchanged).toBe(true);
      for (const bytes of [job, writeJobAgain(parts?.own ?? job, "job.yaml", reading)]) {
        const back = readYaml(bytes, "job.yaml");
        if (!back.ok) throw new Error(JSON.stringify(back.findings) + new TextDecoder().decode(bytes));
        const bases = findNode(back.value, "bases");
        expect(bases !== undefined).toBe(reading.isUnderstood);
        if (bases?.kind === "list") expect(bases.items.map(toPlain)).toMatchObject(reading.bases.map(markOnly));
      }
    }),
    { numRuns: 300 },
  );
});

function markOnly(base: Parameters<typeof toPlain>[0]) {
  const mark = findNode(base, "mark");
  return mark === undefined ? {} : { mark: toPlain(mark) };
}
