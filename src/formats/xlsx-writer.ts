/**
 * Tables as an XLSX workbook (ECMA-376, Office Open XML): typed cells, widths, a header row that stays in sight and can be
 * filtered. A text is a text whatever it begins with: no formula and no date is made of it. The same tables give the same
 * bytes anywhere: the archive holds no clock.
 */
import { strToU8, zipSync } from "fflate";
import { readable } from "../diagnostics/printable.js";

/** A text, a number, or an empty cell. */
export type XlsxCell = string | number | null;

/** A column: its heading, and how wide it is in digits of the font. */
export interface XlsxColumn {
  readonly heading: string;
  readonly width: number;
  /** Its texts are broken into lines at its width. */
  readonly isWrapped?: boolean;
}

/** One sheet: lines above the table, its columns, its rows. */
export interface XlsxSheet {
  readonly name: string;
  /** Each stands in the first column and runs over the others; the first is the heading of the page. */
  readonly title: readonly string[];
  readonly columns: readonly XlsxColumn[];
  readonly rows: readonly (readonly XlsxCell[])[];
  /** Sums under the rows: bold, and not in what is filtered. */
  readonly totals?: readonly (readonly XlsxCell[])[];
}

/** Formats of cells, by their place in `STYLES`. */
const STYLE = { plain: 0, title: 1, heading: 2, text: 3, wrapped: 4, number: 5, said: 6, total: 7 } as const;

const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** Format 49 is text, so that what is typed over such a cell stays a text; the quote prefix keeps a leading sign. */
const STYLES = `${DECLARATION}<styleSheet xmlns="${MAIN}"><fonts count="3"><font><sz val="10"/><name val="Arial"/></font><font><b/><sz val="14"/><name val="Arial"/></font><font><b/><sz val="10"/><name val="Arial"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFE6E6E6"/><bgColor indexed="64"/></patternFill></fill></fills><borders count="2"><border><left/><right/><top/><bottom/><diagonal/></border><border><left style="hair"/><right style="hair"/><top style="hair"/><bottom style="hair"/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="8"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="49" fontId="1" fillId="0" borderId="0" xfId="0" quotePrefix="1" applyNumberFormat="1" applyFont="1"/><xf numFmtId="49" fontId="2" fillId="2" borderId="1" xfId="0" quotePrefix="1" applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf><xf numFmtId="49" fontId="0" fillId="0" borderId="1" xfId="0" quotePrefix="1" applyNumberFormat="1" applyBorder="1" applyAlignment="1"><alignment vertical="top"/></xf><xf numFmtId="49" fontId="0" fillId="0" borderId="1" xfId="0" quotePrefix="1" applyNumberFormat="1" applyBorder="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf><xf numFmtId="0" fontId="0" fillId="0" borderId="1" xfId="0" applyBorder="1" applyAlignment="1"><alignment vertical="top"/></xf><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" quotePrefix="1" applyNumberFormat="1"/><xf numFmtId="0" fontId="2" fillId="2" borderId="1" xfId="0" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"><alignment vertical="top"/></xf></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`;

/** The bytes of a workbook; at least one sheet. Names of sheets are made fit, and none twice. */
export function writeXlsx(sheets: readonly XlsxSheet[]): Uint8Array {
  const names = sheetNames(sheets.map(({ name }) => name));
  const parts: [string, string][] = [
    ["[Content_Types].xml", contentTypes(sheets.length)],
    ["_rels/.rels", relations([["officeDocument", "xl/workbook.xml"]])],
    ["xl/workbook.xml", workbookXml(sheets, names)],
    [
      "xl/_rels/workbook.xml.rels",
      relations([
        ...sheets.map((_, index): [string, string] => ["worksheet", `worksheets/sheet${index + 1}.xml`]),
        ["styles", "styles.xml"],
      ]),
    ],
    ["xl/styles.xml", STYLES],
    ...sheets.map((sheet, index): [string, string] => [`xl/worksheets/sheet${index + 1}.xml`, sheetXml(sheet, index)]),
  ];
  return zipSync(Object.fromEntries(parts.map(([path, xml]) => [path, strToU8(xml)])), { mtime: FIRST_DAY, level: 3 });
}

/** The first day that a ZIP archive can name, in the zone of whoever reads it: the same bytes in every zone. */
const FIRST_DAY = "1980-01-01T12:00:00";

function contentTypes(sheets: number): string {
  const parts = Array.from({ length: sheets }, (_, index) => [`worksheets/sheet${index + 1}.xml`, "worksheet"]);
  const overrides = [["workbook.xml", "sheet.main"], ["styles.xml", "styles"], ...parts].map(
    ([path, type]) => `<Override PartName="/xl/${path}" ContentType="${TYPES}.${type}+xml"/>`,
  );
  return `${DECLARATION}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${overrides.join("")}</Types>`;
}

function relations(targets: readonly (readonly [string, string])[]): string {
  const each = targets.map(
    ([type, target], index) => `<Relationship Id="rId${index + 1}" Type="${RELATIONS}/${type}" Target="${target}"/>`,
  );
  return `${DECLARATION}<Relationships xmlns="${PACKAGE}/relationships">${each.join("")}</Relationships>`;
}

function workbookXml(sheets: readonly XlsxSheet[], names: readonly string[]): string {
  const listed = names.map(
    (name, index) => `<sheet name="${escaped(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`,
  );
  const defined = sheets.flatMap((sheet, index) => definedNames(sheet, index, names[index] ?? ""));
  return `${DECLARATION}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${listed.join("")}</sheets><definedNames>${defined.join("")}</definedNames></workbook>`;
}

/** The filter's range, and the rows that are printed on every page. */
function definedNames(sheet: XlsxSheet, index: number, name: string): readonly string[] {
  const quoted = escaped(`'${name.replaceAll("'", "''")}'`);
  const header = headerRow(sheet);
  const range = `${quoted}!$A$${header}:$${columnName(sheet.columns.length)}$${header + sheet.rows.length}`;
  return [
    `<definedName name="_xlnm._FilterDatabase" localSheetId="${index}" hidden="1">${range}</definedName>`,
    `<definedName name="_xlnm.Print_Titles" localSheetId="${index}">${quoted}!$${header}:$${header}</definedName>`,
  ];
}

/** A blank row stands between title and table. */
function headerRow({ title }: XlsxSheet): number {
  return title.length === 0 ? 1 : title.length + 2;
}

function sheetXml(sheet: XlsxSheet, index: number): string {
  const { columns, rows, title, totals = [] } = sheet;
  const header = headerRow(sheet);
  const last = columnName(columns.length);
  const widths = columns.map(
    ({ width }, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
  );
  const lines = [
    ...title.map((text, at) => rowXml(at + 1, [text], () => (at === 0 ? STYLE.title : STYLE.said))),
    rowXml(
      header,
      columns.map(({ heading }) => heading),
      () => STYLE.heading,
    ),
    ...rows.map((row, at) => rowXml(header + 1 + at, row, (cell, column) => styleOf(cell, columns[column]))),
    ...totals.map((row, at) => rowXml(header + 1 + rows.length + at, row, totalStyle)),
  ];
  const pane = `<pane ySplit="${header}" topLeftCell="A${header + 1}" activePane="bottomLeft" state="frozen"/><selection pane="bottomLeft" activeCell="A${header + 1}" sqref="A${header + 1}"/>`;
  return [
    `${DECLARATION}<worksheet xmlns="${MAIN}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>`,
    `<dimension ref="A1:${last}${header + rows.length + totals.length}"/>`,
    `<sheetViews><sheetView${index === 0 ? ' tabSelected="1"' : ""} workbookViewId="0">${pane}</sheetView></sheetViews>`,
    `<cols>${widths.join("")}</cols><sheetData>${lines.join("")}</sheetData>`,
    `<autoFilter ref="A${header}:${last}${header + rows.length}"/>`,
    `<pageMargins left="0.4" right="0.4" top="0.5" bottom="0.5" header="0.3" footer="0.3"/>`,
    `<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/>`,
    `<headerFooter><oddFooter>&amp;L&amp;F&amp;R&amp;P / &amp;N</oddFooter></headerFooter></worksheet>`,
  ].join("");
}

function totalStyle(cell: XlsxCell): number {
  return typeof cell === "string" ? STYLE.heading : STYLE.total;
}

function styleOf(cell: XlsxCell, column: XlsxColumn | undefined): number {
  if (typeof cell === "number") return STYLE.number;
  return column?.isWrapped === true ? STYLE.wrapped : STYLE.text;
}

function rowXml(row: number, cells: readonly XlsxCell[], style: (cell: XlsxCell, column: number) => number): string {
  const each = cells.map((cell, column) => cellXml(`${columnName(column + 1)}${row}`, cell, style(cell, column)));
  return `<row r="${row}">${each.join("")}</row>`;
}

/** Blanks that readers of XML may drop. */
const EDGE_OR_DOUBLE_BLANK = /^\s|\s$|\s\s|[\t\r\n]/;

function cellXml(at: string, cell: XlsxCell, style: number): string {
  if (cell === null || cell === "") return `<c r="${at}" s="${style}"/>`;
  if (typeof cell === "number") return `<c r="${at}" s="${style}"><v>${cell}</v></c>`;
  const space = EDGE_OR_DOUBLE_BLANK.test(cell) ? ' xml:space="preserve"' : "";
  return `<c r="${at}" s="${style}" t="inlineStr"><is><t${space}>${escaped(cellText(cell))}</t></is></c>`;
}

/** Most characters of a cell. */
const LONGEST_TEXT = 32_767;
/** What a reader of the format takes for the code of a sign is written so that it stays what it is (ECMA-376, 22.4.2.4). */
const LOOKS_CODED = /_(?=x[0-9A-Fa-f]{4}_)/g;

function cellText(text: string): string {
  const seen = readable(text.replaceAll("\r\n", "\n").replaceAll("\r", "\n")).replace(LOOKS_CODED, "_x005F_");
  if (seen.length <= LONGEST_TEXT) return seen;
  const more = ` ... (${text.length} characters)`;
  return readable(seen.slice(0, LONGEST_TEXT - more.length - 12)) + more;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

/** 1 -> A, 27 -> AA. */
function columnName(column: number): string {
  const before = Math.floor((column - 1) / 26);
  const letter = String.fromCharCode(65 + ((column - 1) % 26));
  return before === 0 ? letter : columnName(before) + letter;
}

/** At most 31 characters, none of `[]:*?/\`, no quote at an end, none twice in any case. */
function sheetNames(wanted: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return wanted.map((name) => {
    const fit =
      readable(name)
        .replace(/[[\]:*?/\\]/g, "-")
        .replace(/^'+|'+$/g, "")
        .slice(0, 31) || "Sheet";
    let unique = fit;
    for (let count = 2; taken.has(unique.toLowerCase()); count += 1) unique = `${fit.slice(0, 27)} ${count}`;
    taken.add(unique.toLowerCase());
    return unique;
  });
}
