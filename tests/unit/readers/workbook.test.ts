/** XLSX reader, on workbooks written by a library that nobody here wrote (write-excel-file). */
import { strToU8, unzipSync, zipSync } from "fflate";
import { readSheet } from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import type { Table } from "../../../src/readers/inputs.js";
import { openWorkbook } from "../../../src/readers/workbook.js";
import { sheetData, type WrittenSheet, writeBook } from "../../fuzz/workbooks.js";
import { drawFrom } from "../../seed.js";

type WrittenCell = { value: string | number | boolean | Date; format?: string; type?: unknown } | null;

async function workbook(rows: WrittenCell[][], sheet = "Bases"): Promise<Uint8Array> {
  return new Uint8Array(await writeWorkbook(rows as never, { sheet }).toBuffer());
}

async function told(bytes: Uint8Array, sheet?: string): Promise<unknown> {
  const reading = await openWorkbook(bytes, "b.xlsx", sheet);
  return reading.ok ? reading.value.sheets[0]?.rows : reading.findings.map(formatFinding);
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
            "the spreadsheet made a date of what was typed here (2026-03-04): 3/4? allowed is what is meant in the job, as cells: { A2: 3/4 }, or the column formatted as text and the value typed again",
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
    expect(await told(zipSync({ "a.txt": strToU8("a") }))).toEqual([
      expect.stringMatching(
        /^b\.xlsx: this is an archive or a document without a workbook in it; .*take the sheet out/,
      ),
    ]);
    expect(await told(zipSync({ "xl/workbook.xml": strToU8("<") }))).toEqual([
      "b.xlsx: the workbook is damaged; allowed is .xlsx as a spreadsheet saves it",
    ]);
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

function changePart(bytes: Uint8Array, name: string, change: (xml: string) => string): Uint8Array {
  const files = unzipSync(bytes);
  return zipSync({ ...files, [name]: strToU8(change(new TextDecoder().decode(files[name]))) });
}

/** Texts of the cells, faults after them, and what is remarked. */
async function opened(bytes: Uint8Array, sheet?: string) {
  const reading = await openWorkbook(bytes, "b.xlsx", sheet);
  if (!reading.ok) return reading.findings.map(formatFinding);
  const [first, ...others] = reading.value.sheets.map(shownTable);
  return others.length === 0 ? first : [first, ...others];
}

function shownTable({ rows, remarks = [], sheet: name }: Table) {
  const cells = rows.map((row) => row.map(({ text, fault }) => (fault === undefined ? text : `${text} !`)));
  return { name, cells, remarks: remarks.map((remark) => `${remark.severity} ${formatFinding(remark)}`) };
}

const simple = (name: string, text: string, state?: "hidden" | "veryHidden"): WrittenSheet => {
  return { name, xml: sheetData([[text]]), ...(state === undefined ? {} : { state }) };
};

describe("the sheets that are read", () => {
  it("are all that hold cells, in their order, hidden ones marked; charts and blank ones are left out", async () => {
    const blank = { name: "Sheet2", xml: "<sheetData/>" };
    const book = writeBook([simple("Old", "99", "veryHidden"), simple("Bases", "12"), blank, simple("Notes", "x")]);
    const read = await openWorkbook(book, "b.xlsx");
    const sheets = read.ok ? read.value.sheets.map(({ sheet, isHidden }) => [sheet, isHidden]) : [];
    expect(sheets).toEqual([
      ["Old", true],
      ["Bases", undefined],
      ["Notes", undefined],
    ]);
    const chart = changePart(book, "xl/_rels/workbook.xml.rels", (xml) =>
      xml.replace('/worksheet" Target="worksheets/sheet2.xml', '/chartsheet" Target="worksheets/sheet2.xml'),
    );
    expect(await opened(chart)).toMatchObject([{ name: "Old" }, { name: "Notes" }]);
    expect(await opened(writeBook([blank]))).toEqual(["b.xlsx: no sheet of the workbook holds a cell; allowed is one"]);
  });

  it("are the one that is named alone, though it is blank, and though another is damaged", async () => {
    const book = writeBook([
      simple("Old", "99"),
      { name: "Broken", xml: "<c" },
      { name: "Blank", xml: "<sheetData/>" },
    ]);
    expect(await opened(book, "Old")).toEqual({ name: "Old", cells: [["99"]], remarks: [] });
    expect(await opened(book, "Blank")).toEqual({ name: "Blank", cells: [], remarks: [] });
    expect(await opened(book)).toEqual([
      'b.xlsx: sheet "Broken": the workbook is damaged; allowed is .xlsx as a spreadsheet saves it',
    ]);
  });

  it("are told to be hidden where the job names a hidden one", async () => {
    const book = writeBook([simple("Old", "99", "hidden"), simple("Bases", "12")]);
    const remark = 'warning b.xlsx: sheet "Old" is hidden in the workbook; it is read since the job names it';
    expect(await opened(book, "Old")).toEqual({ name: "Old", cells: [["99"]], remarks: [remark] });
  });

  it("are proposed where they hold a table: no cover", async () => {
    const table = sheetData([
      ["Mark", "X"],
      ["B1", "12"],
    ]);
    const book = writeBook([simple("Cover", "COLD STORE"), { name: "Bases", xml: table }]);
    expect(await opened(book, "Covers")).toEqual(['b.xlsx: there is no sheet "Covers"; allowed are "Bases"']);
    expect(await opened(writeBook([simple("Cover", "COLD STORE")]), "Covers")).toEqual([
      'b.xlsx: there is no sheet "Covers"; allowed are "Cover" (did you mean Cover?)',
    ]);
  });
});

describe("merged cells", () => {
  const merged = (refs: readonly string[], rows: readonly (readonly string[])[]) =>
    writeBook([
      {
        name: "S",
        xml: `${sheetData(rows)}<mergeCells>${refs.map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`,
      },
    ]);
  const mergesOf = async (bytes: Uint8Array) => {
    const read = await openWorkbook(bytes, "b.xlsx");
    return read.ok ? read.value.sheets[0]?.merges : read.findings;
  };
  const rows = [
    ["ANCHOR RODS", "", "PLATE"],
    ["SIZE", "GRADE", "X"],
    ["1", "55", "12"],
  ];

  it("are told, cut off where nothing stands any more", async () => {
    expect(await mergesOf(merged(["A1:B1", "$C$2:$C$9"], rows))).toEqual([
      { top: 1, left: 1, bottom: 1, right: 2 },
      { top: 2, left: 3, bottom: 3, right: 3 },
    ]);
    expect(await mergesOf(merged(["A9:B9", "A1", "A1:A1", "B2:A1", "A0:B1", "nonsense"], rows))).toBeUndefined();
  });

  it("have together no more cells than the table, however many there are", async () => {
    expect(await mergesOf(merged(Array(2000).fill("A1:C3"), rows))).toHaveLength(1);
    expect(await mergesOf(merged(["A1:XFD1048576"], rows))).toEqual([{ top: 1, left: 1, bottom: 3, right: 3 }]);
  });

  it("hide what stands beneath them", async () => {
    const read = await openWorkbook(merged(["B2:B3"], rows), "b.xlsx");
    const cells = read.ok ? read.value.sheets[0]?.rows.map((row) => row[1]) : [];
    expect(cells?.[1]).toEqual({ text: "GRADE", line: 2, column: 2 });
    expect(cells?.[2]).toEqual({ text: "55", line: 3, column: 2, isHidden: true, remark: "a merged cell covers it" });
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
      remarks: [expect.stringContaining("A2 to B2 are struck out; a row that is struck out whole is left out")],
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
      cells: [["14", "12", "12"]],
      remarks: [
        expect.stringContaining(
          "B1 is struck out; a row that is struck out whole is left out, a single value is asked about",
        ),
      ],
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
      const cell = read.ok ? read.value.sheets[0]?.rows[0]?.[0] : undefined;
      return [cell?.text, cell?.fault];
    };
    expect(await one('0.00" mm"')).toEqual(["254.00 mm", undefined]);
    expect(await one('0.0" mm"')).toEqual(["254.0 mm", undefined]);
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

describe("what is hidden or struck out is marked on its cell", () => {
  const cellsOf = async (bytes: Uint8Array) => {
    const read = await openWorkbook(bytes, "b.xlsx");
    return read.ok ? (read.value.sheets[0]?.rows.flat() ?? []) : [];
  };

  it("by row, by column, in time that grows with the spans", async () => {
    const rows = sheetData([
      ["a", "b"],
      ["c", "d"],
    ]).replace('<row r="2"', '<row r="2" hidden="1"');
    const spans = '<col min="2" max="16384" width="0"/>'.repeat(20_000);
    const cells = await cellsOf(writeBook([{ name: "S", xml: `<cols>${spans}</cols>${rows}` }]));
    expect(cells.map(({ text, isHidden }) => [text, isHidden])).toEqual([
      ["a", undefined],
      ["b", true],
      ["c", true],
      ["d", true],
    ]);
  });

  it("by the font of the cell, unless a part has its own", async () => {
    const run = (text: string, strike: string) => `<r><rPr>${strike}</rPr><t xml:space="preserve">${text}</t></r>`;
    const shared = [`<si><r><t>12</t></r>${run(" 14", "")}</si>`, "<si><t>12</t></si>"];
    const cell = (at: string, index: number) => `<c r="${at}" s="1" t="s"><v>${index}</v></c>`;
    const number = '<c r="C1" s="1"><v>7</v></c><c r="D1" s="1" t="b"><v>1</v></c>';
    const xml = `<sheetData><row r="1">${cell("A1", 0)}${cell("B1", 1)}${number}</row></sheetData>`;
    const cells = await cellsOf(writeBook([{ name: "S", xml }], [], shared));
    expect(cells.map(({ text, isStruck, remark }) => [text, isStruck, remark])).toEqual([
      ["14", undefined, '"12" is struck out and not read'],
      ["12", true, undefined],
      ["7", true, undefined],
      ["true", true, undefined],
    ]);
  });
});

describe("rich text", () => {
  type Part = string | readonly [text: string, how: "struck" | "raised"];
  const HOW = { struck: "<strike/>", raised: '<vertAlign val="superscript"/>' } as const;
  const read = async (...parts: readonly Part[]) => {
    const runs = parts.map((part) => {
      const [text, how] = typeof part === "string" ? [part, ""] : [part[0], HOW[part[1]]];
      return `<r><rPr>${how}</rPr><t xml:space="preserve">${text}</t></r>`;
    });
    const xml = '<sheetData><row r="1"><c r="A1" t="s"><v>0</v></c></row></sheetData>';
    const book = await openWorkbook(writeBook([{ name: "S", xml }], [], [`<si>${runs.join("")}</si>`]), "b.xlsx");
    const cell = book.ok ? book.value.sheets[0]?.rows[0]?.[0] : undefined;
    return [cell?.text, cell?.remark, cell?.fault];
  };

  it("is read without what is struck out, which is named", async () => {
    const remark = (text: string) => `"${text}" is struck out and not read`;
    expect(await read(["1 1/8", "struck"], " 1 1/4")).toEqual(["1 1/4", remark("1 1/8"), undefined]);
    expect(await read("1-", ["1/8", "struck"], "1/4")).toEqual(["1-1/4", remark("1/8"), undefined]);
    expect(await read("F1554 GR ", ["36", "struck"], " 55")).toEqual(["F1554 GR  55", remark("36"), undefined]);
    expect(await read("12", [" ", "struck"])).toEqual(["12", undefined, undefined]);
  });

  it("is asked about where digits meet over what is struck out", async () => {
    const fault =
      'what is left beside the part that is struck out runs together ("3" and "0"); allowed is the text that holds, in the cell or in the job, as cells: { A1: 9 }';
    expect(await read("3", ["6", "struck"], "0")).toEqual(["30", '"6" is struck out and not read', fault]);
  });

  it("with raised digits: a fraction stands apart from its whole number, the number of a note is no digit", async () => {
    expect(await read("1", ["1", "raised"], "/16")).toEqual(["1 1/16", undefined, undefined]);
    expect(await read("1 ", ["3", "raised"], "/4")).toEqual(["1 3/4", undefined, undefined]);
    expect(await read(["3", "raised"], "/4")).toEqual(["3/4", undefined, undefined]);
    expect(await read("HDG", ["2", "raised"])).toEqual(["HDG", '"2" is raised and not read', undefined]);
    expect(await read("12", ["1", "raised"])).toEqual([
      "121",
      undefined,
      expect.stringContaining('"12" bears a raised "1": the number of a note, or a part of the value?'),
    ]);
    expect(await read("1 1/4", ["1", "raised"])).toMatchObject([
      "1 1/41",
      undefined,
      expect.stringContaining('"1 1/4" bears a raised "1"'),
    ]);
    expect(await read("45", ["o", "raised"])).toEqual(["45o", undefined, undefined]);
  });

  it("in its cell, with preserved blanks and readings of foreign signs", async () => {
    const inline = (inner: string) => `<c t="inlineStr"><is>${inner}</is></c>`;
    const cells = [
      '<r><t xml:space="preserve">PL </t></r><r><rPr><b/></rPr><t>1x18x18</t></r>',
      '<r><rPr><strike/></rPr><t>9</t></r><r><rPr/><t xml:space="preserve"> 10 </t></r>',
      '<t>柱脚</t><rPh sb="0" eb="2"><t>ちゅうきゃく</t></rPh>',
      "<t></t>",
      '<t xml:space="preserve">   </t>',
      "<t>two_x000A_lines</t>",
    ];
    const xml = `<sheetData><row>${cells.map(inline).join("")}<c><v>1</v></c></row></sheetData>`;
    expect(await opened(writeBook([{ name: "S", xml }]))).toMatchObject({
      cells: [["PL 1x18x18", "10", "柱脚", "", "", "two\nlines", "1"]],
    });
  });
});

describe("dates that were typed as fractions", () => {
  const faultOf = async (serial: string, type = "n") => {
    const xml = `<sheetData><row r="7"><c r="AB7" s="1" t="${type}"><v>${serial}</v></c></row></sheetData>`;
    const read = await openWorkbook(writeBook([{ name: "S", xml }], ["d-mmm"]), "b.xlsx");
    return read.ok ? read.value.sheets[0]?.rows[6]?.[27]?.fault : undefined;
  };

  it("are told with the day, the fractions that may have been typed, and the line that answers", async () => {
    const words = (day: string, meant: string, first: string) =>
      `the spreadsheet made a date of what was typed here (${day})${meant} allowed is what is meant in the job, as cells: { AB7: ${first} }, or the column formatted as text and the value typed again`;
    expect(await faultOf("46085")).toBe(words("2026-03-04", ": 3/4?", "3/4"));
    expect(await faultOf("46115")).toBe(words("2026-04-03", ": 3/4?", "3/4"));
    expect(await faultOf("46022")).toBe(words("2025-12-31", ";", "3/4"));
    expect(await faultOf("2026-05-08", "d")).toBe(words("2026-05-08", ": 5/8?", "5/8"));
  });
});

describe("cells of every other kind", () => {
  it("shared formulas, errors, columns beyond Z, an empty text", async () => {
    const cells = [
      '<c r="A1"><f t="shared" ref="A1:A2" si="0">B1*2</f><v>12</v></c>',
      '<c r="B1"><f t="shared" si="0"/><v>14</v></c>',
      '<c r="C1" t="str"><f>IF(1,"","")</f><v></v></c>',
      '<c r="D1" t="e"><f>1/0</f><v>#DIV/0!</v></c>',
      '<c r="E1" t="s"><v>9</v></c>',
      '<c r="F1" t="b"><v>0</v></c>',
      '<c r="AB1"><v>1</v></c>',
    ];
    const read = await openWorkbook(
      writeBook([{ name: "S", xml: `<sheetData><row r="1">${cells.join("")}</row></sheetData>` }]),
      "b.xlsx",
    );
    const row = read.ok ? (read.value.sheets[0]?.rows[0] ?? []) : [];
    expect(row.slice(0, 6).map(({ text, fault }) => [text, fault])).toEqual([
      ["12", undefined],
      ["14", undefined],
      ["", undefined],
      ["#DIV/0!", "a formula failed here (#DIV/0!); allowed is a value"],
      ["", "the text of this cell is missing in the workbook; type it again"],
      ["false", undefined],
    ]);
    expect([row.length, row[27]?.text, row[27]?.column]).toEqual([28, "1", 28]);
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

  it("hold over all sheets together; one that is named is read alone", async () => {
    const many = (name: string, row: number) => ({
      name,
      xml: `<sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="${row}"><c r="B${row}"><v>1</v></c></row></sheetData>`,
    });
    const book = writeBook([many("A", 600_000), many("B", 600_000)]);
    expect(await opened(book)).toEqual([
      'b.xlsx: sheet "B" has 600000 rows x 2 columns up to the last cell that holds something; at most 2000000 cells are read of a workbook, and the sheets before it leave 800000: delete what stands far from the table, or name the sheet that is meant in the job: that one alone is then read',
    ]);
    const named = await openWorkbook(book, "b.xlsx", "B");
    expect(named.ok && named.value.sheets.map(({ sheet, rows }) => [sheet, rows.length])).toEqual([["B", 600_000]]);
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
