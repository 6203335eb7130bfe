/** XLSX reader, on workbooks written by a library that nobody here wrote (write-excel-file). */
import { strToU8, unzipSync, zipSync } from "fflate";
import { readSheet } from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { openWorkbook } from "../../../src/readers/workbook.js";
import { sheetData, type WrittenSheet, writeBook } from "../../fuzz/workbooks.js";
import { drawFrom } from "../../seed.js";

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
    const bomb = zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(65 * 1024 * 1024) });
    expect(bomb.length).toBeLessThan(1024 * 1024);
    expect(await told(bomb)).toEqual(["b.xlsx: the workbook unpacks to 65 MB; at most 64 MB are read"]);
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

/** Texts of the cells, faults after them, and what is remarked. */
async function opened(bytes: Uint8Array, sheet?: string) {
  const reading = await openWorkbook(bytes, "b.xlsx", sheet);
  if (!reading.ok) return reading.findings.map(formatFinding);
  const { rows, remarks = [], sheet: name } = reading.value;
  const cells = rows.map((row) => row.map(({ text, fault }) => (fault === undefined ? text : `${text} !`)));
  return { name, cells, remarks: remarks.map((remark) => `${remark.severity} ${formatFinding(remark)}`) };
}

const simple = (name: string, text: string, state?: "hidden" | "veryHidden"): WrittenSheet => {
  return { name, xml: sheetData([[text]]), ...(state === undefined ? {} : { state }) };
};

describe("the sheet that is read", () => {
  it("is the first that is shown, and is named where there are others", async () => {
    const book = writeBook([simple("Old", "99", "veryHidden"), simple("Bases", "12"), simple("Notes", "x")]);
    expect(await opened(book)).toEqual({
      name: "Bases",
      cells: [["12"]],
      remarks: [
        'warning b.xlsx: sheet "Bases" is read, the first that is shown; not read: "Old" (hidden), "Notes" (sheet: Bases beside the file\'s name in the job says which is meant)',
      ],
    });
    expect(await opened(book, "Bases")).toEqual({ name: "Bases", cells: [["12"]], remarks: [] });
    expect(await opened(writeBook([simple("Bases", "12")]))).toMatchObject({ name: "Bases", remarks: [] });
  });

  it("is told to be hidden where the job names a hidden one; a workbook that shows none is refused", async () => {
    const book = writeBook([simple("Old", "99", "hidden"), simple("Bases", "12")]);
    const remark = 'warning b.xlsx: sheet "Old" is hidden in the workbook; it is read since the job names it';
    expect(await opened(book, "Old")).toEqual({ name: "Old", cells: [["99"]], remarks: [remark] });
    const none = "b.xlsx: the workbook shows no sheet of cells; allowed is one";
    expect(await opened(writeBook([simple("Old", "99", "veryHidden")]))).toEqual([none]);
  });
});

describe("what a person does not see is told and read", () => {
  const rows = [
    ["Mark", "X", "Y"],
    ["B1", "12", "8"],
    ["B2", "12", "8"],
    ["B3", "12", "8"],
    ["B4", "12", "8"],
  ];

  it("hidden rows, by a filter, a group or no height", async () => {
    const xml = sheetData(rows)
      .replace('<row r="2"', '<row r="2" hidden="1"')
      .replace('<row r="4"', '<row r="4" hidden="true"')
      .replace('<row r="5"', '<row r="5" ht="0" customHeight="1"');
    expect(await opened(writeBook([{ name: "S", xml }]))).toMatchObject({
      cells: rows,
      remarks: [expect.stringContaining('sheet "S": rows 2, 4 to 5 are hidden; they are read like the others')],
    });
    const empty = sheetData(rows).replace("</sheetData>", '<row r="9" hidden="1"/></sheetData>');
    expect(await opened(writeBook([{ name: "S", xml: empty }]))).toMatchObject({ remarks: [] });
  });

  it("hidden columns", async () => {
    const cols =
      '<cols><col min="2" max="2" width="9" hidden="1"/><col min="7" max="16384" width="9" hidden="1"/></cols>';
    expect(await opened(writeBook([{ name: "S", xml: cols + sheetData(rows) }]))).toMatchObject({
      cells: rows,
      remarks: [expect.stringContaining('sheet "S": column B is hidden; it is read like the others')],
    });
  });

  it("cells that are struck out, whole or in part", async () => {
    const struck = sheetData([
      ["Mark", "X"],
      ["B1", "12"],
    ])
      .replace('<c r="A2"', '<c r="A2" s="1"')
      .replace('<c r="B2"', '<c r="B2" s="1"');
    expect(await opened(writeBook([{ name: "S", xml: struck }]))).toMatchObject({
      cells: [
        ["Mark", "X"],
        ["B1", "12"],
      ],
      remarks: [expect.stringContaining("A2 to B2 are struck out; they are read as if they held")],
    });
    const run = (text: string, strike: string) => `<r><rPr>${strike}<sz val="11"/></rPr><t>${text}</t></r>`;
    const shared = [
      `<si>${run("12", "<strike/>")}${run(" 14", "")}</si>`,
      `<si>${run("12", "<strike/>")}</si>`,
      `<si>${run("12", '<strike val="0"/>')}</si>`,
    ];
    const cell = (at: string, index: number) => `<c r="${at}" t="s"><v>${index}</v></c>`;
    const xml = `<sheetData><row r="1">${cell("A1", 0)}${cell("B1", 1)}${cell("C1", 2)}</row></sheetData>`;
    expect(await opened(writeBook([{ name: "S", xml }], [], shared))).toMatchObject({
      cells: [["12 14 !", "12", "12"]],
      remarks: [expect.stringContaining("B1 is struck out; it is read as if it held")],
    });
  });

  it("decimals beyond those that are shown", async () => {
    const xml = sheetData([["12.4", "12"]], 1);
    expect(await opened(writeBook([{ name: "S", xml }], ["0"]))).toMatchObject({
      cells: [["12.4", "12"]],
      remarks: [expect.stringContaining('sheet "S": A1 shows 12 and holds 12.4; what is held is read')],
    });
  });
});

describe("a number format", () => {
  it("gives its unit, or is a fault", async () => {
    const one = async (code: string) => {
      const read = await openWorkbook(writeBook([{ name: "S", xml: sheetData([["254"]], 1) }], [code]), "b.xlsx");
      return read.ok ? [read.value.rows[0]?.[0]?.text, read.value.rows[0]?.[0]?.fault] : [];
    };
    expect(await one('0.00" mm"')).toEqual(["254 mm", undefined]);
    expect(await one("0.00")).toEqual(["254", undefined]);
    expect(await one("0%")).toEqual([
      "254",
      "254 is held here and its number format shows it as a percentage (0%); allowed is a number format without letters or %, or the unit typed in the cell",
    ]);
    expect(await one('0" pcs"')).toEqual(["254", expect.stringContaining('shows "0 pcs"')]);
  });
});

describe("days", () => {
  // from the calendar, and ECMA-376 part 1, 18.17.4.1: 1 January 1900 is 1, and 1900 is taken for a leap year
  it.each([
    [1, "1900-01-01"],
    [59, "1900-02-28"],
    [61, "1900-03-01"],
    [36_526, "2000-01-01"],
    [36_585, "2000-02-29"],
    [44_561.75, "2021-12-31"],
    [46_085, "2026-03-04"],
    [2_958_465, "9999-12-31"],
    [2_958_466, "a date"],
  ])("%d is %s", async (serial, day) => {
    const xml = `<sheetData><row r="1"><c r="A1" s="1"><v>${serial}</v></c></row></sheetData>`;
    expect(await opened(writeBook([{ name: "S", xml }], ["d-mmm"]))).toMatchObject({ cells: [[`${day} !`]] });
  });
});

describe("formulas", () => {
  it("stand for the values that were saved with them; without one they are a fault", async () => {
    const xml =
      '<sheetData><row r="1"><c r="A1"><f>6+6</f><v>12</v></c><c r="B1"><f>6+6</f></c><c r="C1"><f>6+6</f><v></v></c><c r="D1" t="str"><f>A1&amp;""</f><v>x</v></c></row></sheetData>';
    expect(await opened(writeBook([{ name: "S", xml }]))).toMatchObject({ cells: [["12", " !", " !", "x"]] });
  });
});

describe("bounds", () => {
  const far = (at: string, row: number): Uint8Array =>
    writeBook([
      {
        name: "S",
        xml: `<sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="${row}"><c r="${at}"><v>1</v></c></row></sheetData>`,
      },
    ]);

  it("count rows and columns up to the last cell that holds something", async () => {
    const words = (rows: number, columns: number) =>
      `b.xlsx: sheet "S" has ${rows} rows x ${columns} columns up to the last cell that holds something; at most 2000000 cells are read: delete what stands far from the table`;
    expect(await opened(far("XFD1048576", 1_048_576))).toEqual([words(1_048_576, 16_384)]);
    expect(await opened(far("B1000001", 1_000_001))).toEqual([words(1_000_001, 2)]);
    const blank = far("A2", 2);
    expect(
      await opened(
        changeSheet(blank, (xml) =>
          xml.replace("</sheetData>", '<row r="1048576"><c r="XFD1048576" s="0"/></row></sheetData>'),
        ),
      ),
    ).toMatchObject({ cells: [["1"], ["1"]] });
  });

  it("refuse a sheet that is no whole XML in time that grows with its length", async () => {
    const damaged = ["b.xlsx: the workbook is damaged; allowed is .xlsx as a spreadsheet saves it"];
    for (const piece of ["<c ", "<c a", '<c a="', "<a>", "<!--", "<row r="])
      expect(await opened(writeBook([{ name: "S", xml: `<sheetData>${piece.repeat(300_000)}` }]))).toEqual(damaged);
    const inside = `<!-- ${"<c ".repeat(300_000)} -->${sheetData([["x"]])}`;
    expect(await opened(writeBook([{ name: "S", xml: inside }]))).toMatchObject({ cells: [["x"]] });
  });

  it("take cells and rows without a place as the next ones, and none out of their order", async () => {
    const data = (rows: string) => writeBook([{ name: "S", xml: `<sheetData>${rows}</sheetData>` }]);
    expect(await opened(data("<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>"))).toMatchObject({
      cells: [
        ["1", "2"],
        ["3", ""],
      ],
    });
    const disorder = [
      "b.xlsx: the workbook is damaged: its cells do not stand in their order; allowed is .xlsx as a spreadsheet saves it",
    ];
    expect(await opened(data('<row r="2"/><row r="1"/>'))).toEqual(disorder);
    expect(await opened(data('<row r="1"><c r="B1"/><c r="A1"/></row>'))).toEqual(disorder);
    expect(await opened(data('<row r="1"><c r="A2"/></row>'))).toEqual(disorder);
  });
});

describe("another reader (read-excel-file) reads the same", () => {
  it("from workbooks of texts, numbers, truths and gaps", async () => {
    const draw = drawFrom(7);
    const value = (): WrittenCell => {
      const kinds = [
        null,
        { value: Math.round(draw() * 1e6) / 1000 },
        { value: `t ${Math.round(draw() * 99)} <&"'` },
        { value: draw() < 0.5 },
      ];
      return kinds[Math.floor(draw() * kinds.length)] ?? null;
    };
    for (let round = 0; round < 12; round++) {
      const bytes = await workbook(Array.from({ length: 6 }, () => Array.from({ length: 5 }, value)));
      const copy = new ArrayBuffer(bytes.length);
      new Uint8Array(copy).set(bytes);
      const theirs = (await readSheet(copy)).map((row) => row.map((cell) => (cell === null ? "" : String(cell))));
      expect(await opened(bytes)).toMatchObject({ cells: theirs });
    }
  });
});
