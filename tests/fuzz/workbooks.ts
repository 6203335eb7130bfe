/** Workbooks written by hand, part by part, as ECMA-376 has them: what a spreadsheet can put beside the texts of its cells. */
import { strToU8, zipSync } from "fflate";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = 'xmlns="http://schemas.openxmlformats.org/package/2006/relationships"';

/** A sheet's own XML between its tags, and how the workbook lists it. */
export interface WrittenSheet {
  readonly name: string;
  readonly state?: "hidden" | "veryHidden";
  /** What stands between `<worksheet>` and its end: `cols`, `sheetData`, ... */
  readonly xml: string;
}

/** A workbook of these sheets; `formats` are number formats, styles 1, 2, ... in turn; the style after them strikes out. */
export function writeBook(
  sheets: readonly WrittenSheet[],
  formats: readonly string[] = [],
  shared: readonly string[] = [],
) {
  const of = (path: string, xml: string): [string, Uint8Array] => [path, strToU8(HEAD + xml)];
  const listed = sheets.map(({ name, state }, i) => {
    const hidden = state === undefined ? "" : ` state="${state}"`;
    return `<sheet name="${escaped(name)}" sheetId="${i + 1}"${hidden} r:id="rId${i + 1}"/>`;
  });
  const relation = (id: number, type: string, target: string) =>
    `<Relationship Id="rId${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const relations = [
    ...sheets.map((_, i) => relation(i + 1, "worksheet", `worksheets/sheet${i + 1}.xml`)),
    relation(sheets.length + 1, "styles", "styles.xml"),
    relation(sheets.length + 2, "sharedStrings", "sharedStrings.xml"),
  ];
  const xfs = formats.map((_, i) => `<xf numFmtId="${164 + i}" fontId="0"/>`);
  const styles = `<styleSheet ${MAIN}><numFmts>${formats
    .map((code, i) => `<numFmt numFmtId="${164 + i}" formatCode="${escaped(code)}"/>`)
    .join(
      "",
    )}</numFmts><fonts><font><sz val="11"/></font><font><strike/></font></fonts><cellXfs><xf numFmtId="0" fontId="0"/>${xfs.join("")}<xf numFmtId="0" fontId="1"/></cellXfs></styleSheet>`;
  return zipSync(
    Object.fromEntries([
      of("[Content_Types].xml", '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>'),
      of("xl/workbook.xml", `<workbook ${MAIN} xmlns:r="${OFFICE}"><sheets>${listed.join("")}</sheets></workbook>`),
      of("xl/_rels/workbook.xml.rels", `<Relationships ${PACKAGE}>${relations.join("")}</Relationships>`),
      of("xl/styles.xml", styles),
      of("xl/sharedStrings.xml", `<sst ${MAIN}>${shared.join("")}</sst>`),
      ...sheets.map(({ xml }, i) => of(`xl/worksheets/sheet${i + 1}.xml`, `<worksheet ${MAIN}>${xml}</worksheet>`)),
    ]),
  );
}

/** Text as XML, without the letters that XML cannot hold. */
export function escaped(text: string): string {
  const held = [...text].filter((letter) => letter >= " " || letter === "\t").join("");
  return held.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
}

/** The letters of a column, from 1. */
export function lettersOf(column: number): string {
  const before = Math.floor((column - 1) / 26);
  return `${before > 0 ? lettersOf(before) : ""}${String.fromCharCode(65 + ((column - 1) % 26))}`;
}

/** Rows as sheet data; numbers as numbers where they read as such. `style` is that of every cell. */
export function sheetData(rows: readonly (readonly string[])[], style = 0): string {
  const cell = (text: string, row: number, column: number): string => {
    const at = `r="${lettersOf(column)}${row}"${style === 0 ? "" : ` s="${style}"`}`;
    if (text === "") return "";
    if (/^\d{1,6}(\.\d{1,6})?$/.test(text)) return `<c ${at}><v>${text}</v></c>`;
    return `<c ${at} t="inlineStr"><is><t>${escaped(text)}</t></is></c>`;
  };
  const xml = rows.map(
    (cells, i) => `<row r="${i + 1}">${cells.map((text, j) => cell(text, i + 1, j + 1)).join("")}</row>`,
  );
  return `<sheetData>${xml.join("")}</sheetData>`;
}

const FORMATS = ["0.00", '0.00" mm"', "0%", "# ?/?", "m/d/yyyy", '0" pcs"', "0.0,", "000", '"B"0', ";;;"];

/** A schedule as a workbook; the bits of `choice` hide, strike out and format. */
export function workbookOf(rows: readonly (readonly string[])[], choice: number): Uint8Array {
  const style = (choice & 3) === 0 ? (choice >> 2) % (FORMATS.length + 2) : 0;
  const columns = (choice & 64) === 0 ? "" : '<cols><col min="2" max="3" width="9" hidden="1"/></cols>';
  const data = sheetData(rows, style);
  const xml = columns + ((choice & 128) === 0 ? data : data.replace('<row r="2"', '<row r="2" hidden="1"'));
  const other = { name: "Other", state: "veryHidden" as const, xml: sheetData([["x"]]) };
  return writeBook((choice & 256) === 0 ? [{ name: "Bases", xml }] : [other, { name: "Bases", xml }], FORMATS);
}
