/** The rows of a table -> its bases: rows without a mark join the base above them, those with several marks are as many bases. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import type { SourcePlace } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import { groupBy } from "../units/group-by.js";
import { parseCount } from "../units/index.js";
import type { TakenBase, TakenGroup } from "./base-node.js";
import { scalar } from "./grammar/index.js";
import { markKey } from "./mark-key.js";
import type { Questions } from "./questions.js";
import { bareCell } from "./questions.js";
import type { References } from "./references.js";
import type { Kept, RowValues } from "./row-values.js";
import type { SheetCell, Taken } from "./sheet-cell.js";
import { isOfGroup } from "./sheet-cell.js";

/** What a mark's row, and those below it without a mark, give. */
export interface RowBase extends TakenBase {
  readonly marks: readonly string[];
  readonly kept: readonly Kept[];
  readonly sameAs: RowValues["sameAs"];
  /** Set where its row stands for several bases. */
  readonly isOneOfSeveral?: true;
}

/** Bases with what is wrong with their rows. */
export interface RowBases {
  readonly bases: readonly RowBase[];
  readonly findings: readonly Finding[];
}

interface OpenBase extends RowBase {
  readonly own: Taken[];
  readonly groups: TakenGroup[];
  readonly kept: Kept[];
}

/** Puts rows together. */
export function rowBases(rows: readonly RowValues[], questions: Questions): RowBases {
  const bases: OpenBase[] = [];
  const findings: Finding[] = [];
  for (const values of rows) {
    const base = bases.at(-1);
    if (values.row.kind === "base" || base === undefined) bases.push(openBase(values));
    else for (const fault of addRow(base, values, questions)) findings.push(fault);
  }
  return { bases, findings };
}

function openBase({ row, taken, kept, sameAs }: RowValues): OpenBase {
  const own = taken.filter(({ key }) => !isOfGroup(key));
  const values = taken.filter(({ key }) => isOfGroup(key));
  const marks = row.marks.length > 0 ? row.marks : marksTaken(own);
  return { place: row.place, marks, own, groups: [{ place: row.place, values }], kept: [...kept], sameAs };
}

/** Marks of a cell with several readings, once one is settled; one that is asked about stands as it is written. */
function marksTaken(own: readonly Taken[]): readonly string[] {
  return own.flatMap(({ key, node }) => (key === "mark" && node.kind === "scalar" ? [node.text] : []));
}

function addRow(base: OpenBase, { row, taken, kept }: RowValues, questions: Questions): readonly Finding[] {
  for (const text of kept) base.kept.push(text);
  const notes = taken.filter(({ key }) => key === "note");
  for (const note of notes) base.own.push(note);
  if (row.kind === "more words") return [];
  base.groups.push({ place: row.place, values: taken.filter(({ key }) => isOfGroup(key)) });
  const whole = taken.filter(({ key }) => key !== "note" && !isOfGroup(key));
  if (row.kind === "asked") {
    askMark(base, row.place, whole, questions);
    return [];
  }
  return whole.map(({ node, from }) => {
    const message = `"${from.column.name}" is for the whole base; allowed on a row without a Mark are the rods, their pattern and holes`;
    return errorAt(node.place, "cell-fault", message);
  });
}

function askMark({ marks, own }: OpenBase, place: SourcePlace, whole: readonly Taken[], questions: Questions): void {
  const filled = [...new Set(whole.map(({ from }) => from.column.name))].join(", ");
  const above = marks.at(-1) ?? "the base above";
  const text = `${place.label ?? "the row"} has no mark, and fills ${filled}: a base whose mark is missing, or rods of another size on the plate of ${above}? neither is taken`;
  const emptied = [...new Set(whole.map(({ from }) => bareCell(from.place)))];
  const markAbove = own.find(({ key }) => key === "mark")?.from.place;
  const choices = [
    { line: `cells: { ${cellOfMark(place, markAbove)}: MARK }`, means: "it is a base of its own, MARK being its mark" },
    {
      line: `cells: { ${emptied.map((cell) => `${cell}: "-"`).join(", ")} }`,
      means: `these cells say nothing, and the rods are those of ${above}`,
    },
  ];
  questions.ask("mark", bareCell(place), text, { place, choices });
}

/** The blank cell of a row's mark: in the column of the mark above, or in its row where the bases lie across. */
function cellOfMark(row: SourcePlace, above: SourcePlace | undefined): string {
  const [own, marks] = [bareCell(row), above === undefined ? bareCell(row) : bareCell(above)].map(splitCell);
  const isTurned = row.label?.startsWith("column") === true;
  return isTurned ? `${own?.letters ?? ""}${marks?.row ?? ""}` : `${marks?.letters ?? ""}${own?.row ?? ""}`;
}

function splitCell(cell: string): { readonly letters: string; readonly row: string } {
  return { letters: cell.replace(/\d+$/, ""), row: cell.replace(/^[A-Z]+/, "") };
}

/** Bases that repeat another as a whole take what it has; chains are followed, circles and unknown marks are faults. */
export function withRepeated(bases: readonly RowBase[], references: References): RowBases {
  const byMark = new Map(bases.flatMap((base) => base.marks.map((mark) => [markKey(mark), base] as const)).reverse());
  const findings: Finding[] = [];
  const found = new Map<RowBase, Source>();
  const whole = bases.map((base) => {
    if (base.sameAs === null) return base;
    const source = sourceOf(base, byMark, found);
    if (source.base !== null) return repeat(base, source.base, base.sameAs);
    const { cell, mark } = base.sameAs;
    const message = source.isCircle
      ? `"${cell.text}" leads back to itself; allowed is a base that has its own values`
      : references.unknownMark(cell, mark).message;
    findings.push(errorAt(cell.place, "cell-fault", message));
    return standIns(base, cell);
  });
  return { bases: whole, findings };
}

interface Source {
  readonly base: RowBase | null;
  readonly isCircle: boolean;
}

/** What a chain of bases leads to; every base on the way leads there too, and is found once. */
function sourceOf(base: RowBase, byMark: ReadonlyMap<string, RowBase>, found: Map<RowBase, Source>): Source {
  const passed = new Set<RowBase>();
  let at: RowBase | undefined = base;
  let source: Source | undefined;
  while (at !== undefined && at.sameAs !== null && source === undefined) {
    passed.add(at);
    at = byMark.get(markKey(at.sameAs.mark));
    if (at !== undefined) source = passed.has(at) ? { base: null, isCircle: true } : found.get(at);
  }
  source ??= { base: at ?? null, isCircle: false };
  for (const each of passed) found.set(each, source);
  return source;
}

/** What a row that repeats a base does not take over: what is its own, and how many there are. */
const NOT_REPEATED = new Set(["mark", "quantity", "note", "template.mark", "template.quantity"]);

function repeat(base: RowBase, source: RowBase, { mark, cell }: NonNullable<RowBase["sameAs"]>): RowBase {
  const remark = `as ${mark}`;
  const moved = (values: readonly Taken[]): readonly Taken[] =>
    values.map(
      (value): Taken => ({
        ...value,
        from: { ...cell, column: value.from.column },
        origin: value.origin === "asked" ? "asked" : "base",
        remark: [remark, value.remark].filter((words) => words !== "").join("; "),
      }),
    );
  const own = moved(source.own.filter(({ key }) => !NOT_REPEATED.has(key)));
  const groups = source.groups.map(({ values }) => ({ place: base.place, values: moved(values) }));
  return { ...base, own: [...base.own, ...own], groups };
}

/** So that a base whose reference fails is not asked for all that it lacks. */
function standIns(base: RowBase, from: SheetCell): RowBase {
  const standIn = (key: string): Taken => ({
    ...{ key, from, origin: "asked", remark: "the base that it repeats is not found" },
    node: scalar(from.text, from.place),
  });
  const groups = [{ place: base.place, values: ["rods.diameter", "pattern.kind"].map(standIn) }];
  return { ...base, own: [...base.own, standIn("template.thickness")], groups };
}

/** A base for each mark of a row, with its share of what is counted. */
export function withOneMark(base: RowBase, questions: Questions, shared: SharedCounts): readonly RowBase[] {
  const { marks } = base;
  if (marks.length < 2) return [base];
  const own = base.own.map((value) => (COUNTED.has(value.key) ? share(value, marks, questions, shared) : value));
  return marks.map((mark) => ({
    ...{ ...base, marks: [mark], isOneOfSeveral: true },
    own: own.filter((value) => !isOtherMark(value, mark)),
  }));
}

const COUNTED = new Set(["quantity", "template.quantity"]);

/** Counts that are as many as the marks of their row, taken as one of each: told once for each column. */
export class SharedCounts {
  private readonly values: Taken[] = [];

  add(value: Taken): void {
    this.values.push(value);
  }

  findings(): readonly Finding[] {
    const byColumn = groupBy(this.values, ({ from }) => from.column.name);
    return [...byColumn].flatMap(([name, [first, ...others]]): Finding[] => {
      if (first === undefined) return [];
      const { from } = first;
      const also =
        others.length === 0
          ? ""
          : `, and so ${listed(
              others.map((one) => bareCell(one.from.place)),
              MOST_NAMED,
            )}`;
      const message = `"${from.text}" on a row of as many marks is taken as 1 of each${also}; where each mark has so many, the job says so, as cells: { ${bareCell(from.place)}: ${from.text.trim()} each }`;
      return [{ ...errorAt(from.place, "count-of-marks", `${name}: ${message}`), severity: "warning" }];
    });
  }
}

const MOST_NAMED = 6;

function isOtherMark({ key, node }: Taken, mark: string): boolean {
  return key === "mark" && node.kind === "scalar" && node.text !== mark;
}

/** A count on a row of several marks: each, or altogether? Proved where it is 1, or as many as there are marks. */
function share(value: Taken, marks: readonly string[], questions: Questions, shared: SharedCounts): Taken {
  const { node, from } = value;
  if (node.kind !== "scalar" || value.origin === "asked") return value;
  const [, number = "", word = ""] =
    /^(\d+)\s*(each|ea\.?|per mark|altogether|total|in all)?$/i.exec(from.text.trim()) ?? [];
  const count = parseCount(number === "" ? node.text : number, 1, 100_000);
  if (!count.ok) return value;
  const counted = (text: string, how: string): Taken => ({
    ...value,
    node: { ...node, text },
    remark: [value.remark, how].filter((words) => words !== "").join("; "),
  });
  if (/^(each|ea|per)/i.test(word)) return counted(String(count.value), `${count.value} of each mark`);
  const each = count.value / marks.length;
  if (word !== "" && Number.isInteger(each)) return counted(String(each), `${each} of each mark`);
  if (count.value === 1) return counted("1", `1 of each of ${marks.length} marks`);
  if (count.value === marks.length) {
    shared.add(value);
    return counted("1", `${count.value} for ${marks.length} marks: 1 of each`);
  }
  return askShare(value, count.value, marks, questions);
}

function askShare(value: Taken, count: number, marks: readonly string[], questions: Questions): Taken {
  const { from } = value;
  const text = `${from.column.name}: "${from.text}" on a row of ${marks.length} marks (${marks.slice(0, 4).join(", ")}${marks.length > 4 ? ", ..." : ""}): of each, or altogether?`;
  const isEven = Number.isInteger(count / marks.length);
  const choices = [
    { answer: `${count} each`, means: `there are ${count} of each mark` },
    ...(isEven ? [{ answer: `${count} altogether`, means: `there are ${count / marks.length} of each mark` }] : []),
  ];
  questions.ask("quantity", from.column.heading, text, { place: from.place, choices });
  return { ...value, node: scalar("1", from.place), origin: "asked", remark: text };
}
