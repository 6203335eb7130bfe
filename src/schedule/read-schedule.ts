/** Rows of a spreadsheet -> bases, as a job file would have them, with the cell that each value stands in. */
import type { Finding } from "../diagnostics/finding.js";
import { kindMeant } from "../patterns/index.js";
import { nameCell } from "../readers/cell-place.js";
import type { Table } from "../readers/inputs.js";
import type { SourceMap, SourceNode, SourcePlace } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import { formatLength, parseCount, parseLength } from "../units/index.js";
import { map, scalar } from "./cell-forms.js";
import type { Heading } from "./headings.js";
import { findHeading, HEADINGS, headingOf } from "./headings.js";
import type { ReadAs, ReadLine, Schedule } from "./model.js";
import type { HeadingSet, SheetRow } from "./sheet-reading.js";
import { readSheet } from "./sheet-reading.js";

const SHEET: HeadingSet<Heading> = { all: HEADINGS, find: findHeading, mostRows: 20_000 };

/** Reads a schedule. One row is one base; a row with a blank Mark adds rods of another size to the base above it. */
export function readSchedule(table: Table, file: string, unit: Unit): Schedule {
  const isMark = ({ key }: Heading) => key === "mark";
  const sheet = readSheet(table, file, unit, SHEET, isMark, "Mark, Rod dia, ...");
  const reading = new ScheduleReading(unit);
  for (const row of sheet.rows) reading.takeRow(row);
  const bases = reading.finish();
  const lines = sheet.rows.flatMap(({ values }) =>
    values.map(({ heading, node }) => lineOf(values, heading, node, unit)),
  );
  const readAs: ReadAs = { file, sheet: table.sheet, isPlain: true, lines, questions: [] };
  return { bases, readAs, findings: [...sheet.findings, ...reading.findings], headingOf };
}

function lineOf(values: readonly Value[], heading: Heading, node: SourceNode, unit: Unit): ReadLine {
  const mark = values.find((value) => value.heading.key === "mark")?.node;
  const text = node.kind === "scalar" ? node.text : "...";
  return {
    mark: mark?.kind === "scalar" ? mark.text : "",
    cell: nameCell("", { line: node.place.line, column: node.place.column }),
    heading: heading.name,
    written: text,
    key: heading.key,
    taken: text,
    unit: heading.measure === "length" ? unit : "",
    origin: "row",
    remark: "",
  };
}

interface Values {
  readonly [key: string]: SourceNode;
}

interface OpenBase {
  readonly place: SourcePlace;
  readonly own: Values;
  /** Grows with the rows below that have no mark. */
  readonly groups: { readonly place: SourcePlace; readonly values: Values }[];
}

class ScheduleReading {
  readonly findings: Finding[] = [];
  private readonly bases: OpenBase[] = [];

  constructor(private readonly unit: Unit) {}

  takeRow({ values, place }: SheetRow<Heading>): void {
    for (const fault of [...doubleFaults(values), ...spacingFaults(values, this.unit)]) this.findings.push(fault);
    const isContinuation = !values.some(({ heading }) => heading.key === "mark") && this.bases.length > 0;
    if (isContinuation) this.addGroup(values, place);
    else this.addBase(values, place);
  }

  private addBase(values: readonly Value[], place: SourcePlace): void {
    const own = collect(values.filter(({ heading }) => heading.scope === "base"));
    const group = collect(values.filter(({ heading }) => heading.scope === "group"));
    this.bases.push({ place, own, groups: [{ place, values: group }] });
  }

  private addGroup(values: readonly Value[], place: SourcePlace): void {
    for (const { heading, node } of values.filter(({ heading }) => heading.scope === "base")) {
      const message = `"${heading.name}" is for the whole base; allowed on a row without a Mark are the rods, their pattern and holes`;
      this.findings.push(errorAt(node.place, "cell-fault", message));
    }
    const group = { place, values: collect(values.filter(({ heading }) => heading.scope === "group")) };
    this.bases.at(-1)?.groups.push(group);
  }

  finish(): SourceNode[] {
    return this.bases.map((base) => toBase({ ...base, own: withOutline(base.own, base.place) }));
  }
}

interface Value {
  readonly heading: Heading;
  readonly node: SourceNode;
}

/** X and Lines X fill one key: in a row one of them may be filled. */
function doubleFaults(values: readonly Value[]): readonly Finding[] {
  return values.flatMap(({ heading, node }, index) => {
    const first = values.slice(0, index).find(({ heading: { key } }) => key === heading.key);
    if (first === undefined) return [];
    const message = `is filled beside ${first.heading.name}, which says the same; allowed is one of them in a row`;
    return [errorAt(node.place, "cell-fault", message)];
  });
}

/** A spacing of three rods and more is overall or from rod to rod: neither is taken. Of two rods both are one. */
function spacingFaults(values: readonly Value[], unit: Unit): readonly Finding[] {
  return values.flatMap(({ heading, node }) => {
    const written = values.find(({ heading: { key } }) => key === heading.countKey)?.node;
    if (node.kind !== "scalar" || written?.kind !== "scalar") return [];
    const count = parseCount(written.text, 2);
    if (!count.ok || count.value === 2) return [];
    return [errorAt(node.place, "overall-or-pitch", spacingWords(heading, node.text, count.value, unit))];
  });
}

function spacingWords({ name }: Heading, text: string, rods: number, unit: Unit): string {
  const overall = name.replace(/^.* /, "Overall ");
  const pitch = parseLength(text, unit);
  const whole = pitch.ok ? formatLength(pitch.value * (rods - 1), unit) : `${rods - 1} times as much`;
  return (
    `"${text}" with ${rods} rods: from the first to the last, or from rod to rod? allowed is ${overall}: ` +
    `${text} where it is overall, ${whole} where it is from rod to rod`
  );
}

/** The first that is filled keeps the key. */
function collect(values: readonly Value[]): Values {
  const collected: Record<string, SourceNode> = {};
  for (const { heading, node } of values) collected[heading.key] ??= node;
  return collected;
}

/** One group: its holes and washer stand where a base without groups has them. */
const OF_ONE_GROUP: Readonly<Record<string, string>> = {
  hole: "template.hole",
  baseHole: "basePlate.hole",
  washer: "basePlate.washer",
};

function toBase({ place, own, groups }: OpenBase): SourceMap {
  const [only, ...others] = groups.map((group) => ({
    place: group.place,
    values: withKind(group.values, group.place),
  }));
  if (only !== undefined && others.length === 0) {
    const moved = Object.entries(only.values).map(([key, node]) => [OF_ONE_GROUP[key] ?? key, node] as const);
    return nest([...asked(place, "template", "rods"), ...Object.entries(own), ...moved], place);
  }
  const items = [only, ...others].flatMap((group) =>
    group === undefined ? [] : [nest([...asked(group.place, "rods"), ...Object.entries(group.values)], group.place)],
  );
  const whole = nest([...asked(place, "template"), ...Object.entries(own)], place);
  return { ...whole, entries: [...whole.entries, { key: "groups", place, value: { kind: "list", items, place } }] };
}

/** Groups of keys that are there even when no column fills them, so that what they lack is asked for by its heading. */
function asked(place: SourcePlace, ...keys: readonly string[]): (readonly [string, SourceNode])[] {
  return keys.map((key) => [key, map({}, place)] as const);
}

/** A pattern without a kind is the one whose columns are filled. */
function withKind(values: Values, place: SourcePlace): Values {
  const kind = values["pattern.kind"] === undefined ? kindMeant(patternCells(values)) : null;
  return kind === null ? values : { ...values, "pattern.kind": scalar(kind, place) };
}

/** Corners without an outline are those of an automatic one. */
function withOutline(values: Values, place: SourcePlace): Values {
  if (values["template.outline.corner"] === undefined || values["template.outline"] !== undefined) return values;
  return { ...values, "template.outline": map({ kind: scalar("auto", place) }, place) };
}

/** Values by the key of the pattern that they fill. */
function patternCells(values: Values): Values {
  const ofPattern = Object.entries(values).filter(([key]) => key.startsWith(PATTERN));
  return Object.fromEntries(ofPattern.map(([key, node]) => [key.slice(PATTERN.length), node]));
}

const PATTERN = "pattern.";

/** `rods.diameter` and its like -> groups of keys. A key inside a value that is a group already joins it. */
function nest(values: readonly (readonly [string, SourceNode])[], place: SourcePlace): SourceMap {
  return values.reduce<SourceMap>((whole, [key, node]) => insert(whole, key.split("."), node, place), map({}, place));
}

function insert(into: SourceMap, path: readonly string[], node: SourceNode, place: SourcePlace): SourceMap {
  const [key = "", ...rest] = path;
  const present = into.entries.find((entry) => entry.key === key);
  if (rest.length > 0 && present !== undefined && present.value.kind !== "map") return into;
  const held = present?.value.kind === "map" ? present.value : map({}, place);
  const value = rest.length > 0 ? insert(held, rest, node, place) : join(held, node);
  const entry = { key, place: node.place, value };
  return present === undefined
    ? { ...into, entries: [...into.entries, entry] }
    : { ...into, entries: into.entries.map((other) => (other === present ? { ...other, value } : other)) };
}

/** A cell's group of keys joins what another column put there before. */
function join(held: SourceMap, node: SourceNode): SourceNode {
  return node.kind === "map" ? { ...node, entries: [...node.entries, ...held.entries] } : node;
}
