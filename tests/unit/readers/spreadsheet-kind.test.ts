/** Spreadsheets handed in where they are not read: each has a sentence of its own, by its name or its first bytes. */
import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { readJob } from "../../../src/job/index.js";
import { readPoints } from "../../../src/readers/points.js";
import { spreadsheetKind } from "../../../src/readers/spreadsheet-kind.js";
import { vocabulary } from "../../../src/tasks/open.js";

const packed = zipSync({ "[Content_Types].xml": strToU8("<Types/>") });
/** The mimetype comes first and is not packed (ODF 1.2 part 3, 3.3). */
const openDocument = zipSync({ mimetype: [strToU8("application/vnd.oasis.opendocument.spreadsheet"), { level: 0 }] });
const compound = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);

describe("what a file is", () => {
  it.each([
    ["a.xlsx", "", "xlsx"],
    ["A.XLSM", "", "xlsm"],
    ["a.xlsb", "", "xlsb"],
    ["a.ods", packed, "ods"],
    ["a.xls", "a,b", "xls"],
    ["a", packed, "xlsx"],
    ["a.yaml", openDocument, "ods"],
    ["a.pdf", "", "pdf"],
    ["a.csv", new TextEncoder().encode("%PDF-1.7\n"), "pdf"],
    ["a.csv", new TextEncoder().encode("%PDF\n"), null],
    ["a.png", "", "picture"],
    ["a.JPEG", "", "picture"],
    ["a.csv", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), "picture"],
    ["a", new Uint8Array([0xff, 0xd8, 0xff, 0xe0]), "picture"],
    ["a", new TextEncoder().encode("GIF size,2\n"), null],
    ["a.csv", compound, "xls"],
    ["a.csv", "PK\u0003\u0004", null],
    ["a.yaml", "units: in", null],
    ["xlsx", "", null],
    ["a.xlsx.csv", "", null],
    ["a", new Uint8Array(), null],
    ["a", new Uint8Array([0x50, 0x4b]), null],
  ] as const)("%s", (name, content, kind) => {
    expect(spreadsheetKind(name, content)).toBe(kind);
  });
});

const WORDS = {
  xlsx: "a workbook (.xlsx)",
  xlsm: "a workbook with macros (.xlsm)",
  xlsb: "a workbook in binary form (.xlsb)",
  ods: "an OpenDocument spreadsheet (.ods)",
  xls: "an old workbook (.xls)",
  pdf: "a print (.pdf)",
  png: "a picture",
} as const;
const INSTEAD: Readonly<Record<string, string>> = {
  pdf: "ask for the sheet that it was printed from",
  png: "ask for the sheet that it was taken of, or type its cells into one",
};
const endings = ["xlsm", "xlsb", "ods", "xls", "pdf", "png"] as const;
const contents = [packed, openDocument, compound, new TextEncoder().encode("a,b\n1,2\n"), new Uint8Array()];

const toldOf = (job: string, text: string | Uint8Array, files: readonly (readonly [string, Uint8Array])[] = []) =>
  readJob(
    { job, files: new Map<string, string | Uint8Array>([[job, text], ...files]) },
    { date: "2026-01-01", vocabulary },
  )
    .findings.map(formatFinding)
    .filter((line) => !line.includes("shop"));

describe.each(endings)("a file .%s", (ending) => {
  it.each(contents.map((content) => [content]))(
    "is told as it is, as job, schedule, placements and points",
    (content) => {
      const name = `s.${ending}`;
      const [job, ...others] = toldOf(name, content);
      expect(others).toEqual([]);
      expect(job).toBe(
        `${name}: this is ${WORDS[ending]}, by its name or its first bytes; a job file is asked, which names a sheet as its schedule: save this one as .xlsx or CSV, and rodplate read FILE --out job.yaml says what is understood of the sheet and writes such a job`,
      );
      const head = "job: { number: '1' }\nunits: in\n";
      const table = `${name}: this is ${WORDS[ending]}, by its name or its first bytes; allowed is .xlsx or CSV: ${INSTEAD[ending] ?? "open it in a spreadsheet and save it as .xlsx"}`;
      expect(toldOf("j.yaml", `${head}schedule: ${name}\n`, [[name, content]])).toContain(table);
      const layout = `${head}grid: { x: { names: [A], at: [0] }, y: { names: [1], at: [0] } }\nplacements: ${name}\nbases: [{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 8, y: 8 }, template: { thickness: 1/4 } }]\n`;
      expect(toldOf("j.yaml", layout, [[name, content]])).toContain(table);
      const points = readPoints(content, name, { unit: "m", order: "PNEZD", jobOrder: null });
      expect(points.findings.map(formatFinding)).toEqual([
        `${name}: this is ${WORDS[ending]}, by its name or its first bytes; allowed is CSV: open it and save the sheet as CSV`,
      ]);
    },
  );
});

describe("a workbook or a table as job", () => {
  it("is told what to do", () => {
    for (const [name, content, words] of [
      ["schedule.xlsx", packed, WORDS.xlsx],
      ["schedule", packed, WORDS.xlsx],
    ] as const) {
      expect(toldOf(name, content)).toEqual([
        `${name}: this is ${words}, by its name or its first bytes; a job file is asked, which names ${name} as its schedule: rodplate read ${name} --out job.yaml says what is understood of the sheet and writes such a job`,
      ]);
    }
    expect(toldOf("s.CSV", "a,b\n1,2\n")).toEqual([
      "s.CSV: this is a table (CSV), by its name; a job file is asked, which names s.CSV as its schedule: rodplate read s.CSV --out job.yaml says what is understood of the sheet and writes such a job",
    ]);
  });
});
