/** XLSX reader, on workbooks written by a library that nobody here wrote (write-excel-file). */
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { openWorkbook } from "../../../src/readers/workbook.js";

type WrittenCell = { value: string | number | boolean | Date; format?: string; type?: unknown } | null;

async function workbook(rows: WrittenCell[][], sheet = "Bases"): Promise<Uint8Array> {
  return new Uint8Array(await writeWorkbook(rows as never, { sheet }).toBuffer());
}

async function told(bytes: Uint8Array, sheet?: string): Promise<unknown> {
  const reading = await openWorkbook(bytes, "b.xlsx", sheet);
  return reading.ok ? reading.value.rows : reading.findings.map(formatFinding);
}

/** The workbook with its first sheet's XML changed. */
function changeSheet(bytes: Uint8Array, change: (xml: string) => string): Uint8Array {
  const files = unzipSync(bytes);
  const name = "xl/worksheets/sheet1.xml";
  const xml = new TextDecoder().decode(files[name]);
  return zipSync({ ...files, [name]: strToU8(change(xml)) });
}

describe("cells", () => {
  it("are the texts that a person sees, with row and column", async () => {
    const rows = [
      [{ value: "Mark" }, { value: " Projection " }, null, { value: "Torqued" }],
      [],
      [{ value: "007" }, { value: 9.25 }, null, { value: true }],
      [{ value: "1E2" }, { value: 0.1 + 0.2 }, { value: 1e-7 }, { value: false }],
    ];
    const read = (await told(await workbook(rows))) as { text: string; line: number; column: number }[][];
    expect(read.map((row) => row.map(({ text }) => text))).toEqual([
      ["Mark", "Projection", "", "Torqued"],
      ["", "", "", ""],
      ["007", "9.25", "", "true"],
      ["1E2", "0.3", "0.0000001", "false"],
    ]);
    expect(read[2]?.[1]).toEqual({ text: "9.25", line: 3, column: 2 });
  });

  it("that became a date carry a fault and its cure", async () => {
    const date = { value: new Date(Date.UTC(2026, 2, 4)), type: Date, format: "mm/dd/yyyy" };
    const read = await told(await workbook([[{ value: "X" }], [date]]));
    expect(read).toMatchObject([
      [{ text: "X" }],
      [
        {
          text: "2026-03-04",
          fault:
            "the spreadsheet made a date of what was typed here (2026-03-04); format the column as text and type it again",
        },
      ],
    ]);
  });

  it("of a failed formula carry a fault", async () => {
    const bytes = changeSheet(await workbook([[{ value: "X" }], [{ value: 5 }]]), (xml) =>
      xml.replace(/<c r="A2"[^>]*>.*?<\/c>/, '<c r="A2" t="e"><v>#REF!</v></c>'),
    );
    expect(await told(bytes)).toMatchObject([
      [{ text: "X" }],
      [{ text: "#REF!", fault: "a formula failed here (#REF!); allowed is a value" }],
    ]);
  });
});

describe("what is no readable workbook is told", () => {
  it("a sheet that is not there", async () => {
    expect(await told(await workbook([[{ value: "Mark" }]], "Bases"), "Base")).toEqual([
      'b.xlsx: there is no sheet "Base"; allowed are "Bases" (did you mean Bases?)',
    ]);
  });

  it("an encrypted or old workbook, another file, a damaged one, an empty one", async () => {
    const old = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
    expect(await told(old)).toEqual([
      "b.xlsx: the workbook is encrypted or an old .xls; allowed is .xlsx without a password, or CSV",
    ]);
    expect(await told(strToU8("Mark,Qty\n"))).toEqual(["b.xlsx: the file is not a workbook; allowed is .xlsx, or CSV"]);
    expect(await told((await workbook([[{ value: 1 }]])).slice(0, 300))).toEqual([
      "b.xlsx: the workbook is damaged; allowed is .xlsx as a spreadsheet saves it",
    ]);
    expect(await told(new Uint8Array())).toEqual(["b.xlsx: the file is not a workbook; allowed is .xlsx, or CSV"]);
    expect(await told(zipSync({ "a.txt": strToU8("a") }))).toEqual([expect.stringMatching(/^b\.xlsx: the /)]);
  });

  it("a zip bomb, by the size that it unpacks to", async () => {
    const bomb = zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(200 * 1024 * 1024) });
    expect(bomb.length).toBeLessThan(1024 * 1024);
    expect(await told(bomb)).toEqual(["b.xlsx: the workbook unpacks to 200 MB; at most 64 MB are read"]);
  });

  it("cells outside a sheet", async () => {
    const bytes = await workbook([[{ value: "X" }]]);
    const message =
      "b.xlsx: the workbook names cells outside a sheet; at most 1048576 rows and 16384 columns are allowed";
    for (const place of ["A1048577", "XFE1", "ZZZZZ1", "A1e9"]) {
      expect(await told(changeSheet(bytes, (xml) => xml.replace(/r="A1"/, `r="${place}"`)))).toEqual([message]);
    }
    expect(await told(changeSheet(bytes, (xml) => xml.replace(/<row r="1"/, '<row r="999999999"')))).toEqual([message]);
  });
});
