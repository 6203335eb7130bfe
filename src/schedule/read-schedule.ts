/** The sheets of a file -> bases, as a job file would have them, with the cell that each value stands in and what was understood. */
import type { Finding } from "../diagnostics/finding.js";
import { columnLetters, placeOfCell } from "../readers/cell-place.js";
import type { Table } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import { keyInBase, toBaseNode } from "./base-node.js";
import { besideRows } from "./beside-rows.js";
import { SCHEDULE_TABLE } from "./choose-table.js";
import { baseDoubts, totalDoubts } from "./cross-checks.js";
import { meaningsOf } from "./heading-meanings.js";
import { HEADINGS, headingOf } from "./headings.js";
import type { KeptText } from "./kept-notes.js";
import { LONGEST_NOTE, withNote } from "./kept-notes.js";
import type { TableOnSheet } from "./meant-table.js";
import { meantTable } from "./meant-table.js";
import type { BesideTable, FoundTable, ReadAs, ReadQuestion, Schedule, TableAnswers } from "./model.js";
import { isPlainSheet } from "./plain-sheet.js";
import { Questions, yamlText } from "./questions.js";
import { readColumns, readerNamed } from "./read-columns.js";
import type { BaseFates, CellFate } from "./read-lines.js";
import { readLines } from "./read-lines.js";
import { References } from "./references.js";
import type { RowBase } from "./row-bases.js";
import { rowBases, SharedCounts, withOneMark, withRepeated } from "./row-bases.js";
import { rowKinds } from "./row-kinds.js";
import type { RowValues } from "./row-values.js";
import { readRow } from "./row-values.js";
import { settleHeadings } from "./settle-headings.js";
import { settleMarks } from "./settle-marks.js";
import { settlePattern } from "./settle-pattern.js";
import type { ReadColumn, TableRow } from "./sheet-cell.js";
import { statedUnitFaults } from "./stated-unit.js";
import { tableRow } from "./table-rows.js";
import { untakenWords } from "./untaken-words.js";
import { unusedFindings } from "./unused-findings.js";
import { UsedAnswers } from "./used-answers.js";
import { withoutConflicts } from "./without-conflicts.js";

/** Nothing beside the table. */
export const NOTHING_BESIDE: BesideTable = { given: new Set(), kinds: [], answersAt: null };

const MOST_ROWS = 20_000;
/** So many faults end the reading. */
const MOST_FAULTY = 1000;

/** Reads a schedule. One row is one base; a row with a blank Mark adds rods of another size to the base above it. */
export function readSchedule(
  sheets: readonly Table[],
  file: string,
  unit: Unit,
  answers: TableAnswers,
  beside = NOTHING_BESIDE,
): Schedule {
  const known = (words: string, group: string) => meaningsOf(words, group).length > 0;
  const meant = meantTable(sheets, file, answers, SCHEDULE_TABLE, known);
  if (meant.kind === "none") return nothingRead(file, meant.finding, meant.questions);
  return new ScheduleReading(meant.found, file, unit, answers, beside).read(meant.findings);
}

function nothingRead(file: string, finding: Finding, questions: readonly ReadQuestion[]): Schedule {
  const readAs: ReadAs = { file, sheet: "", isPlain: false, lines: [], questions };
  return { bases: [], readAs, findings: [finding], headingOf, columnOf: () => null };
}

class ScheduleReading {
  private readonly findings: Finding[] = [];
  private readonly questions = new Questions();
  private readonly answers: UsedAnswers;
  private readonly table: FoundTable;
  private readonly settled: SettledBase[] = [];
  private columns: readonly ReadColumn[] = [];
  private isMarkAsked = false;

  constructor(
    private readonly found: TableOnSheet,
    private readonly file: string,
    private readonly unit: Unit,
    private readonly given: TableAnswers,
    private readonly beside: BesideTable,
  ) {
    this.table = found.table;
    this.answers = new UsedAnswers(given);
  }

  /** `findings` are told of the choice of the table. */
  read(findings: readonly Finding[]): Schedule {
    this.add(findings);
    this.add(this.found.sheet.remarks ?? []);
    const headings = this.settle();
    const rows = this.rows();
    if (rows === null) return nothingRead(this.file, this.tooManyRows(), []);
    const { bases, values } = this.bases(rows);
    const nodes = bases.map((base) => this.node(base));
    this.add(totalDoubts(this.table, bases));
    this.add(besideRows(this.table, this.file));
    this.add(untakenWords(this.table, bases, this.file, this.beside.given));
    const { table, answers, file, unit } = this;
    this.add(statedUnitFaults({ table, lengths: bases.flatMap(lengthsOf), answers, file, unit }));
    this.add(unusedFindings(this.answers, this.table, this.beside.answersAt ?? { file: this.file }));
    const asked = this.questions.finish();
    this.add(asked.findings);
    return {
      bases: nodes,
      readAs: this.readAs([...headings, ...asked.questions], values),
      findings: this.findings,
      headingOf,
      columnOf: (path) => this.lettersOf(headingOf(path)),
    };
  }

  private lettersOf(name: string | null): string | null {
    const column = this.columns.find((each) => each.role.kind === "value" && each.name === name);
    return column === undefined || this.table.isTurned ? null : columnLetters(column.found.cell.column);
  }

  private add(findings: readonly Finding[]): void {
    for (const finding of findings) this.findings.push(finding);
  }

  private settle(): readonly ReadQuestion[] {
    const { given, kinds, answersAt } = this.beside;
    const at = answersAt === null ? {} : { answersAt };
    const context = { file: this.file, unit: this.unit, given, kinds, ...at };
    const { columns, questions, findings } = settleHeadings(this.table, this.given, context);
    this.columns = readColumns(columns, this.unit);
    this.isMarkAsked = questions.some(({ mayGive = [] }) => mayGive.includes("mark"));
    this.add(findings);
    return questions;
  }

  /** The rows that hold something; null where they are too many. */
  private rows(): readonly TableRow[] | null {
    const { table, columns, file, answers, unit } = this;
    const rows: TableRow[] = [];
    for (let index = 0; index < table.rows.length && rows.length <= MOST_ROWS; index++) {
      const row = tableRow(index, { table, columns, file, answers, unit });
      if (row !== null) rows.push(row);
    }
    return rows.length > MOST_ROWS ? null : rows;
  }

  private tooManyRows(): Finding {
    const cell = this.table.rows[MOST_ROWS]?.[0];
    const place = { file: this.file, line: cell?.line ?? 1, column: 1 };
    const message = `the sheet has more than ${MOST_ROWS} rows that hold something; at most ${MOST_ROWS} are read`;
    return errorAt(place, "too-many-rows", message);
  }

  private bases(tableRows: readonly TableRow[]): {
    readonly bases: readonly RowBase[];
    readonly values: readonly RowValues[];
  } {
    const hasMarks = this.columns.some(({ role }) => role.kind === "value" && role.key === "mark");
    if (!hasMarks && !this.isMarkAsked) this.findings.push(this.noMarks());
    const rows = rowKinds(settleMarks(tableRows), hasMarks);
    const references = new References(rows, this.answers);
    const context = {
      ...{ references, questions: this.questions, footnotes: this.table.notes },
      columnNamed: (name: string) => readerNamed(name, this.unit),
    };
    const values: RowValues[] = [];
    for (const [index, row] of rows.entries()) {
      if (this.findings.length >= MOST_FAULTY) break;
      const read = withoutConflicts(readRow(row, index, context));
      this.add(read.findings);
      values.push(read);
    }
    if (this.findings.length >= MOST_FAULTY) this.findings.push(this.manyFaults());
    const put = rowBases(values, this.questions);
    const whole = withRepeated(put.bases, references);
    this.add([...put.findings, ...whole.findings]);
    const shared = new SharedCounts();
    const single = whole.bases.flatMap((base) => withOneMark(base, this.questions, shared));
    this.add(shared.findings());
    return { bases: single, values };
  }

  private noMarks(): Finding {
    const { columns, sheet } = this.table;
    const cell = columns[0]?.cell ?? { text: "", line: 1, column: 1 };
    const unknown = this.columns.filter(({ role }) => role.kind === "note").map(({ heading }) => yamlText(heading));
    const message = "no column is known to hold the marks, and every base needs one";
    const lines = unknown.slice(0, 3).map((heading) => `columns: { ${heading}: Mark }`);
    const hint = `answer in the job: ${lines.length === 0 ? "columns: { HEADING: Mark }" : lines.join("; or ")}`;
    return errorAt(placeOfCell(this.file, sheet, cell), "no-marks", message, hint);
  }

  private manyFaults(): Finding {
    const { line } = this.table.columns[0]?.cell ?? { line: 1 };
    const message = `${MOST_FAULTY} and more faults: what stands further below is not read`;
    return errorAt(placeOfCell(this.file, this.table.sheet, { text: "", line, column: 1 }), "many-faults", message);
  }

  private node(base: RowBase): SourceNode {
    const context = { unit: this.unit, questions: this.questions, findings: this.findings };
    const groups = base.groups.map(({ place, values }) => ({ place, values: settlePattern(values, context) }));
    const settled: RowBase = { ...base, groups };
    this.add(baseDoubts(settled, this.unit));
    const { base: noted, texts } = withNote(settled);
    this.tellFullNote(texts);
    this.settled.push({ base: noted, texts, written: base });
    const own = noted.own.filter(({ key }) => !key.startsWith("check."));
    return toBaseNode({ place: noted.place, own, groups: noted.groups });
  }

  private tellFullNote(texts: readonly KeptText[]): void {
    const [first, ...others] = texts.filter(({ isInNote }) => !isInNote);
    if (first === undefined) return;
    const more = others.length === 0 ? "" : `; ${others.length} more of its texts too`;
    const message = `"${first.words.slice(0, 60)}" is kept in the read-as table alone: the note of the base is full, at ${LONGEST_NOTE} characters${more}`;
    this.findings.push({ ...errorAt(first.from.place, "note-full", message), severity: "warning" });
  }

  private readAs(questions: readonly ReadQuestion[], values: readonly RowValues[]): ReadAs {
    const source = { table: this.found.sheet, found: this.table, columns: this.columns, unit: this.unit, isLength };
    const bases = () => [...this.settled.map(fatesOf), ...values.map(notTakenOf)];
    const isPlain = questions.length === 0 && isPlainSheet(this.table, this.columns, values, this.found.sheet);
    let lines: ReadAs["lines"] | null = null;
    return {
      file: this.file,
      sheet: this.table.sheet,
      isPlain,
      questions,
      get lines() {
        lines ??= readLines({ ...source, bases: bases() });
        return lines;
      },
    };
  }
}

/** A base as its node has it, the texts that its note keeps, and as its rows give it. */
interface SettledBase {
  readonly base: RowBase;
  readonly texts: readonly KeptText[];
  readonly written: RowBase;
}

function notTakenOf({ row, notTaken }: RowValues): BaseFates {
  const fates = notTaken.map((fate): CellFate => ({ kind: "not taken", ...fate }));
  return { mark: row.marks.join(", "), isShared: false, fates };
}

/** What became of the cells of a base; kept texts stand in its note. */
function fatesOf({ base, texts, written }: SettledBase): BaseFates {
  const isAlone = base.groups.length === 1;
  const taken = (values: RowBase["own"]) =>
    values.map((value): CellFate => ({ kind: "taken", taken: value, key: keyInBase(value.key, isAlone) }));
  const kept = texts.map((text): CellFate => ({ kind: "kept", ...text }));
  const own = [...base.own.filter(({ key }) => key !== "note"), ...written.own.filter(({ key }) => key === "note")];
  const groups = base.groups.flatMap(({ values }, index) =>
    values.map((value): CellFate => {
      const key = isAlone ? keyInBase(value.key, true) : `groups[${index}].${value.key}`;
      return { kind: "taken", taken: value, key };
    }),
  );
  return {
    mark: base.marks.join(", "),
    isShared: written.isOneOfSeveral === true,
    fates: [...taken(own), ...groups, ...kept],
  };
}

function lengthsOf({ own, groups }: RowBase): RowBase["own"] {
  const values = [...own, ...groups.flatMap((group) => group.values)];
  return values.filter(({ key, origin }) => origin !== "asked" && isLength(key));
}

const LENGTH_KEYS = new Set(HEADINGS.flatMap(({ key, measure }) => (measure === "length" ? [key] : [])));

function isLength(key: string): boolean {
  const plain = key.replace(/^groups\[\d+\]\./, "");
  return (
    LENGTH_KEYS.has(plain) || /\.(x|y|diameter|thickness|size|depth|width|flange|web|reach|hole|radius)$/.test(plain)
  );
}
