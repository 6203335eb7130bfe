/** The parts of a workbook beside its sheets: which sheets there are, how cells are formatted, the texts that they share. */
import { builtInFormat } from "./number-format.js";
import { scanXml, type XmlAttributes } from "./xml-scan.js";

/** A sheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  readonly isHidden: boolean;
  readonly relation: string;
}

/** What the workbook says of itself: its sheets, and whether its dates count from 1904. */
export interface WorkbookList {
  readonly sheets: readonly ListedSheet[];
  readonly from1904: boolean;
}

/** Reads `xl/workbook.xml`; null where it is no XML. */
export function readWorkbookList(xml: string): WorkbookList | null {
  const sheets: ListedSheet[] = [];
  let from1904 = false;
  const isWhole = scanXml(xml, {
    open: (name, attributes) => {
      if (name === "workbookPr") from1904 = isOn(attributes.get("date1904"));
      if (name === "sheet") sheets.push(listedSheet(attributes));
    },
    ...{ close: () => undefined, text: () => undefined },
  });
  return isWhole ? { sheets, from1904 } : null;
}

function listedSheet(attributes: XmlAttributes): ListedSheet {
  const state = attributes.get("state") ?? "visible";
  return { name: attributes.get("name") ?? "", isHidden: state !== "visible", relation: attributes.get("id") ?? "" };
}

/** True for what XML writes where something is so. */
export function isOn(value: string | undefined): boolean {
  return value === "1" || value === "true";
}

/** Another part of the archive that a part leans on. */
export interface Relation {
  /** Path in the archive. */
  readonly path: string;
  /** Last word of its type: worksheet, chartsheet, styles, sharedStrings, ... */
  readonly type: string;
}

/** Reads a part's relations by their ids; null where it is no XML. */
export function readRelations(xml: string): ReadonlyMap<string, Relation> | null {
  const relations = new Map<string, Relation>();
  const isWhole = scanXml(xml, {
    open: (name, attributes) => {
      if (name !== "Relationship") return;
      const target = attributes.get("Target") ?? "";
      const path = target.startsWith("/") ? target.slice(1) : `xl/${target.replace(/^\.\//, "")}`;
      relations.set(attributes.get("Id") ?? "", { path, type: (attributes.get("Type") ?? "").replace(/^.*\//, "") });
    },
    ...{ close: () => undefined, text: () => undefined },
  });
  return isWhole ? relations : null;
}

/** How cells of one style look. */
export interface CellStyle {
  readonly format: string;
  readonly isStruck: boolean;
}

/** Reads `xl/styles.xml`: the styles that cells name by number; null where it is no XML. */
export function readStyles(xml: string): readonly CellStyle[] | null {
  const formats = new Map<number, string>();
  const struckFonts: boolean[] = [];
  const styles: { readonly format: number; readonly font: number }[] = [];
  const open: string[] = [];
  const isWhole = scanXml(xml, {
    open: (name, attributes) => {
      const parent = open.at(-1);
      open.push(name);
      if (name === "numFmt") formats.set(numberOf(attributes.get("numFmtId")), attributes.get("formatCode") ?? "");
      else if (name === "font" && parent === "fonts") struckFonts.push(false);
      else if (name === "strike" && open.includes("fonts")) struckFonts[struckFonts.length - 1] = isStrike(attributes);
      else if (name === "xf" && parent === "cellXfs")
        styles.push({ format: numberOf(attributes.get("numFmtId")), font: numberOf(attributes.get("fontId")) });
    },
    close: () => void open.pop(),
    text: () => undefined,
  });
  if (!isWhole) return null;
  return styles.map(({ format, font }) => {
    return { format: formats.get(format) ?? builtInFormat(format), isStruck: struckFonts[font] === true };
  });
}

function numberOf(text: string | undefined): number {
  return Number(text ?? 0);
}

/** `<strike/>` is on unless it says otherwise. */
function isStrike(attributes: XmlAttributes): boolean {
  return isOn(attributes.get("val") ?? "1");
}

/** A part of a text that is written otherwise than the rest. */
export interface TextRun {
  readonly text: string;
  /** Null: as the cell's own style says. */
  readonly isStruck: boolean | null;
  /** Written above the line, as the number of a note or the upper half of a fraction. */
  readonly isRaised: boolean;
}

/** A text of a cell in its parts; one part where all of it is written alike. */
export type CellText = readonly TextRun[];

/** Gathers a text from its runs, as shared and inline texts hold them. Readings of foreign signs (rPh) are left out. */
export class TextRuns {
  private runs: TextRun[] = [];
  private isStruck: boolean | null = null;
  private isRaised = false;
  private isText = false;
  private inReading = false;

  open(name: string, attributes: XmlAttributes): void {
    if (name === "rPh") this.inReading = true;
    else if (name === "r") this.begin(null);
    else if (name === "rPr") this.isStruck = false;
    else if (name === "strike") this.isStruck = isStrike(attributes);
    else if (name === "vertAlign") this.isRaised = attributes.get("val") === "superscript";
    else if (name === "t") this.isText = !this.inReading;
  }

  close(name: string): void {
    if (name === "rPh") this.inReading = false;
    else if (name === "t") this.isText = false;
    else if (name === "r") this.begin(null);
  }

  text(text: string): void {
    const { isStruck, isRaised } = this;
    if (this.isText) this.runs.push({ text, isStruck, isRaised });
  }

  private begin(isStruck: boolean | null): void {
    this.isStruck = isStruck;
    this.isRaised = false;
  }

  /** The text so far; begins anew. */
  take(): CellText {
    const joined = joinAlike(this.runs);
    this.runs = [];
    this.begin(null);
    return joined;
  }
}

function joinAlike(runs: readonly TextRun[]): CellText {
  return runs.reduce<TextRun[]>((joined, run) => {
    const last = joined.at(-1);
    const isAlike = last?.isStruck === run.isStruck && last.isRaised === run.isRaised;
    const text = unescaped(run.text);
    if (isAlike) joined[joined.length - 1] = { ...last, text: last.text + text };
    else joined.push({ ...run, text });
    return joined;
  }, []);
}

/** `_x000D_` stands for a letter that XML cannot hold (ECMA-376 part 1, 22.9.2.19, ST_Xstring). */
function unescaped(text: string): string {
  return text.replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** Reads `xl/sharedStrings.xml`, `most` texts at most; null where it is no XML. */
export function readSharedTexts(xml: string, most: number): readonly CellText[] | null {
  const texts: CellText[] = [];
  const runs = new TextRuns();
  const isWhole = scanXml(xml, {
    open: (name, attributes) => runs.open(name, attributes),
    close: (name) => {
      runs.close(name);
      if (name === "si" && texts.length < most) texts.push(runs.take());
    },
    text: (text) => runs.text(text),
  });
  return isWhole ? texts : null;
}
