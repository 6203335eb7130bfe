/** Workbooks that are written, read back by the program's own reader and by another that nobody here wrote (read-excel-file). */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import fc from "fast-check";
import { unzipSync } from "fflate";
import { readSheet } from "read-excel-file/universal";
import sax from "sax";
import { describe, expect, it } from "vitest";
import { readable } from "../../../src/diagnostics/printable.js";
import type { XlsxSheet } from "../../../src/formats/xlsx-writer.js";
import { writeXlsx } from "../../../src/formats/xlsx-writer.js";
import { openWorkbook } from "../../../src/readers/workbook.js";

const sheet = (rows: XlsxSheet["rows"], changes: Partial<XlsxSheet> = {}): XlsxSheet => ({
  name: "Read as",
  title: [],
  columns: [
    { heading: "base", width: 8 },
    { heading: "written", width: 20, isWrapped: true },
  ],
  rows,
  ...changes,
});

async function ownTexts(bytes: Uint8Array): Promise<string[][]> {
  const opened = await openWorkbook(bytes, "a.xlsx");
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return (opened.value.sheets[0]?.rows ?? []).map((row) => row.map(({ text }) => text));
}

describe("cells", () => {
  it("are texts whatever they begin with, and numbers where they are numbers, to both readers", async () => {
    const rows = [
      ["B1", "=1+1"],
      ["+B2", "-A1"],
      ["@x", "_x000D_"],
      ["3/4", "1/4"],
      ["007", "1E2"],
      ["2026-01-02", "1-1/4"],
      [4, null],
    ] as const;
    const bytes = writeXlsx([sheet(rows)]);
    const texts = rows.map((row) => row.map((cell) => (cell === null ? "" : String(cell))));
    expect(await ownTexts(bytes)).toEqual([["base", "written"], ...texts]);
    const other = await readSheet(bytes.slice().buffer as ArrayBuffer);
    expect(other.slice(1)).toEqual(rows.map((row) => [...row]));
  });

  it("hold no formula and no date: every text is an inline string in a cell formatted as text", () => {
    const parts = unzipSync(writeXlsx([sheet([["=HYPERLINK(1)", "3/4"]])]));
    const xml = new TextDecoder().decode(parts["xl/worksheets/sheet1.xml"]);
    expect(xml).not.toMatch(/<f[ >]/);
    expect(xml).toContain('<c r="A2" s="3" t="inlineStr"><is><t>=HYPERLINK(1)</t></is></c>');
    const styles = new TextDecoder().decode(parts["xl/styles.xml"]);
    const formats = [...styles.matchAll(/<xf numFmtId="(\d+)"[^>]*xfId="0"/g)].map(([, format]) => format);
    // 49 is text, 0 general (ECMA-376 part 1, 18.8.30)
    expect(formats).toEqual(["0", "49", "49", "49", "49", "0", "49", "0"]);
  });

  it("keep any text but for signs that act on a reader", async () => {
    const text = fc.oneof(
      fc.string({ unit: "binary", maxLength: 30 }),
      fc.constantFrom("_x000D_", "_x005F_x0041_", "a\nb", " a ", "<&>\"'", "½ Ø"),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(text, { minLength: 1, maxLength: 8 }), async (texts) => {
        const bytes = writeXlsx([sheet(texts.map((each) => [each, "x"]))]);
        const other = await readSheet(bytes.slice().buffer as ArrayBuffer, { trim: false });
        const kept = texts.map((each) => readable(each.replaceAll("\r\n", "\n").replaceAll("\r", "\n")));
        const own = await ownTexts(bytes);
        expect(own.slice(1).map(([cell]) => cell)).toEqual(kept.map((each) => each.trim()));
        expect(other.slice(1).map(([cell]) => cell ?? "")).toEqual(kept);
      }),
      { numRuns: 60 },
    );
  });

  it("of more than a cell may hold are cut, and say how long they were", async () => {
    const bytes = writeXlsx([sheet([["B1", "a".repeat(40_000)]])]);
    const [, row] = await ownTexts(bytes);
    expect(row?.[1]?.length).toBeLessThanOrEqual(32_767);
    expect(row?.[1]).toMatch(/a \.\.\. \(40000 characters\)$/);
  });
});

describe("the workbook", () => {
  it("has its title above, and headings that stay in sight, filter and are printed on every page", () => {
    const parts = unzipSync(writeXlsx([sheet([["B1", "x"]], { title: ["READ AS", "job 1"] })]));
    const xml = new TextDecoder().decode(parts["xl/worksheets/sheet1.xml"]);
    expect(xml).toContain('<pane ySplit="4" topLeftCell="A5" activePane="bottomLeft" state="frozen"/>');
    expect(xml).toContain('<autoFilter ref="A4:B5"/>');
    expect(new TextDecoder().decode(parts["xl/workbook.xml"])).toContain("'Read as'!$4:$4</definedName>");
    for (const [path, part] of Object.entries(parts)) {
      const parser = sax.parser(true);
      parser.onerror = (error) => {
        throw new Error(`${path}: ${error.message}`);
      };
      parser.write(new TextDecoder().decode(part)).close();
    }
  });

  it("gives its sheets names that every spreadsheet takes, none twice", async () => {
    const names = ["Asked", "asked", "a/b:c", "'x'", "", "n".repeat(40)];
    const bytes = writeXlsx(names.map((name) => sheet([], { name })));
    const list = new TextDecoder().decode(unzipSync(bytes)["xl/workbook.xml"]);
    const written = [...list.matchAll(/<sheet name="([^"]*)"/g)].map(([, name]) => name);
    expect(written).toEqual(["Asked", "asked 2", "a-b-c", "x", "Sheet", "n".repeat(31)]);
    expect((await openWorkbook(bytes, "a.xlsx", "asked 2")).ok).toBe(true);
  });

  it("is the same bytes at any time and in any zone", () => {
    const script = `
      const { writeXlsx } = await import(${JSON.stringify(new URL("../../../dist/formats/xlsx-writer.js", import.meta.url).href)});
      const bytes = writeXlsx([{ name: "A", title: ["t"], columns: [{ heading: "h", width: 8 }], rows: [["x"], [1]] }]);
      process.stdout.write((await import("node:crypto")).createHash("sha256").update(bytes).digest("hex"));`;
    const run = (TZ: string): string =>
      execFileSync(process.execPath, ["--input-type=module", "-e", script], {
        encoding: "utf8",
        env: { PATH: process.env.PATH, TZ },
      });
    const own = writeXlsx([{ name: "A", title: ["t"], columns: [{ heading: "h", width: 8 }], rows: [["x"], [1]] }]);
    const hash = createHash("sha256").update(own).digest("hex");
    expect([run("UTC"), run("Pacific/Kiritimati"), run("America/Adak")]).toEqual([hash, hash, hash]);
  });
});
