/** The pattern of a row's rods from what its columns give: pitches, counts, gauges, a bolt circle; what is open is asked. */
import type { Finding } from "../diagnostics/finding.js";
import type { SourceNode } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Length, Unit } from "../units/index.js";
import { formatLength, parseCount, parseLength } from "../units/index.js";
import { PITCH_ALONE, scalar } from "./grammar/index.js";
import type { Choice, Questions } from "./questions.js";
import type { Taken } from "./sheet-cell.js";

/** What patterns are settled with. */
export interface PatternContext {
  readonly unit: Unit;
  readonly questions: Questions;
  readonly findings: Finding[];
}

/** The values of a group of rods with its pattern made whole, as far as they prove it. */
export function settlePattern(values: readonly Taken[], context: PatternContext): readonly Taken[] {
  const steps = [countOfRods, ofPitchAlone, ofPitches, ofCount, onCircle, onOneLine];
  return steps.reduce((settled, step) => step(settled, context), values);
}

function valueUnder(values: readonly Taken[], key: string): Taken | undefined {
  return values.find((value) => value.key === key);
}

function textOf(value: Taken | undefined): string | null {
  return value?.node.kind === "scalar" && value.origin !== "asked" ? value.node.text : null;
}

function countIn(values: readonly Taken[], key: string): number | null {
  const text = textOf(valueUnder(values, key));
  const count = text === null ? null : parseCount(text, 1, 1_000);
  return count?.ok ? count.value : null;
}

function lengthIn(value: Taken | undefined, unit: Unit): Length | null {
  const text = textOf(value);
  const length = text === null ? null : parseLength(text, unit);
  return length?.ok ? length.value : null;
}

function without(values: readonly Taken[], ...keys: readonly string[]): readonly Taken[] {
  return values.filter(({ key }) => !keys.includes(key));
}

function derived(from: Taken, key: string, node: SourceNode, how: string): Taken {
  return { ...from, key, node, remark: [from.remark, how].filter((words) => words !== "").join("; ") };
}

const isCircle = (values: readonly Taken[]): boolean =>
  valueUnder(values, "pattern.diameter") !== undefined || textOf(valueUnder(values, "pattern.kind")) === "circle";

/** A number of rods is that of a circle where there is one, and else what the pattern is held against. */
function countOfRods(values: readonly Taken[]): readonly Taken[] {
  const [ofRods, ofPattern] = [valueUnder(values, "rods.count"), valueUnder(values, "pattern.count")];
  if (isCircle(values)) {
    if (ofRods === undefined || ofPattern !== undefined || textOf(ofRods) === null) return values;
    return [...values, derived(ofRods, "pattern.count", ofRods.node, "the number of rods on the circle")];
  }
  if (ofPattern === undefined) return values;
  return values.map((value) => (value === ofPattern ? { ...value, key: "rods.count" } : value));
}

/** One spacing is that of both directions where there are four rods; else which way it goes is asked. */
function ofPitchAlone(values: readonly Taken[], context: PatternContext): readonly Taken[] {
  const pitch = valueUnder(values, PITCH_ALONE);
  if (pitch === undefined) return values;
  const rest = without(values, PITCH_ALONE);
  if (textOf(pitch) !== null && countIn(values, "rods.count") === 4) {
    const how = "of four rods, in both directions";
    return [...rest, ...AXES.map((axis) => derived(pitch, `pattern.${axis}`, pitch.node, how))];
  }
  if (countIn(values, "rods.count") === 2) askWhichLine(pitch, context);
  else askBothWays(pitch, context);
  return [...rest, { ...pitch, key: "pattern.kind", origin: "asked" }];
}

function askBothWays({ from, node }: Taken, { questions }: PatternContext): void {
  const written = node.kind === "scalar" ? node.text : from.text;
  const text = `${from.column.name}: "${from.text}" is one spacing from rod to rod, and nothing says how many rods there are in X and in Y`;
  const choices = [
    { answer: `${written} x ${written}`, means: "two lines in X and two in Y, so far apart both ways" },
    { line: `columns: { ${JSON.stringify(from.column.heading)}: note }`, means: "it is not the pattern" },
  ];
  questions.ask("both-ways", from.column.heading, text, { place: from.place, choices });
}

/** Two rods stand on one line: along which axis it runs is asked. */
function askWhichLine({ from, node }: Taken, { questions, unit }: PatternContext): void {
  const written = node.kind === "scalar" ? node.text : from.text;
  const text = `${from.column.name}: "${from.text}" is the spacing of two rods, and nothing says whether their line runs along X or along Y`;
  const choices = [
    { answer: `${written} x 0`, means: "on a line along X" },
    { answer: `0 ${unit} x ${written}`, means: "on a line along Y" },
    { line: `columns: { ${JSON.stringify(from.column.heading)}: note }`, means: "it is not the pattern" },
  ];
  questions.ask("which-line", from.column.heading, text, { place: from.place, choices });
}

const AXES = ["x", "y"] as const;
type Axis = (typeof AXES)[number];

/** A pitch and the number of lines give the length overall; of two lines both are one. */
function ofPitches(values: readonly Taken[], context: PatternContext): readonly Taken[] {
  return AXES.reduce((settled, axis) => ofPitch(settled, axis, context), values);
}

function ofPitch(values: readonly Taken[], axis: Axis, context: PatternContext): readonly Taken[] {
  const pitch = valueUnder(values, `pattern.pitch.${axis}`);
  if (pitch === undefined) return values;
  const rest = without(values, `pattern.pitch.${axis}`);
  const length = lengthIn(pitch, context.unit);
  const count = countIn(values, `pattern.n${axis}`) ?? impliedCount(values, axis);
  const text = textOf(pitch);
  if (length === null || text === null) return [...rest, { ...pitch, key: `pattern.${axis}` }];
  if (count === null) {
    askLines(pitch, values, axis, context);
    return [...rest, { ...pitch, key: `pattern.${axis}`, origin: "asked" }];
  }
  const whole = count === 2 ? text : exactly(length * (count - 1), text, context.unit);
  const how = count === 2 ? "of two lines, from one to the other" : `${count - 1} spaces at ${text}: ${whole} overall`;
  return [...rest, derived(pitch, `pattern.${axis}`, scalar(whole, pitch.node.place), how)];
}

/** In the unit that is written, so that nothing is rounded. */
function exactly(length: number, written: string, unit: Unit): string {
  const isMetric = /(mm|cm|\dm|\sm)$/i.test(written.trim());
  const isInch = /(in\.?|inch(es)?|"|'|ft\.?|feet|foot)$/i.test(written.trim());
  const own: Unit = isMetric ? "mm" : isInch ? "in" : unit;
  const text = `${formatLength(length, own)}${own === unit ? "" : ` ${own}`}`;
  const again = parseLength(text, unit);
  return again.ok && again.value === length ? text : `${formatLength(length, "mm")} mm`;
}

/** Lines in one direction, where the rods and the lines of the other are numbered. */
function impliedCount(values: readonly Taken[], axis: Axis): number | null {
  const rods = countIn(values, "rods.count");
  if (rods === null) return valueUnder(values, "rods.count") === undefined ? 2 : null;
  if (rods === 4) return 2;
  const other = countIn(values, `pattern.n${axis === "x" ? "y" : "x"}`);
  if (other === null || rods % other !== 0 || isPerimeter(values)) return null;
  return rods / other >= 2 ? rods / other : null;
}

function isPerimeter(values: readonly Taken[]): boolean {
  return valueUnder(values, "pattern.perimeter") !== undefined;
}

function askLines(pitch: Taken, values: readonly Taken[], axis: Axis, { questions }: PatternContext): void {
  const { from } = pitch;
  const text = `${from.column.name}: "${from.text}" is from rod to rod, and nothing says how many lines of rods there are in ${axis.toUpperCase()}`;
  const place = from.place;
  const counts = valueUnder(values, "rods.count");
  const own: Choice[] =
    counts === undefined
      ? [{ answer: `2 spaces @ ${textOf(pitch) ?? from.text}`, means: "there are three lines; any other number alike" }]
      : linesOf(countIn(values, "rods.count") ?? 0).map(({ answer, means }) => ({ answer, means }));
  questions.ask("lines", `${from.column.heading}`, text, { place: counts?.from.place ?? place, choices: own });
}

/** Ways in which so many rods stand on a rectangle. */
function linesOf(rods: number): readonly { readonly answer: string; readonly means: string }[] {
  const whole = Array.from({ length: 99 }, (_, index) => index + 2).flatMap((nx) => {
    const ny = rods / nx;
    return Number.isInteger(ny) && ny >= 2
      ? [{ answer: `${nx} x ${ny}`, means: `${nx} lines in X and ${ny} in Y` }]
      : [];
  });
  const around = Array.from({ length: 99 }, (_, index) => index + 3).flatMap((nx) => {
    const ny = (rods + 4) / 2 - nx;
    return Number.isInteger(ny) && ny >= 3
      ? [{ answer: `${nx} x ${ny} perimeter`, means: `${nx} in X and ${ny} in Y, the inside left out` }]
      : [];
  });
  return [...whole, ...around].slice(0, MOST_WAYS);
}

const MOST_WAYS = 6;

/** Gauges and a number of rods: four are two by two; of more the lines must be known. */
function ofCount(values: readonly Taken[], context: PatternContext): readonly Taken[] {
  const rods = countIn(values, "rods.count");
  const [x, y] = AXES.map((axis) => valueUnder(values, `pattern.${axis}`));
  const isGauged =
    x?.node.kind === "scalar" && y?.node.kind === "scalar" && x.origin !== "asked" && y.origin !== "asked";
  if (rods === null || !isGauged || isCircle(values) || isPerimeter(values)) return values;
  const [nx, ny] = AXES.map((axis) => countIn(values, `pattern.n${axis}`));
  const from = valueUnder(values, "rods.count");
  if (from === undefined || (nx !== null && ny !== null) || rods === 4) return values;
  const known = nx ?? ny;
  if (known !== null && known !== undefined && rods % known === 0 && rods / known >= 2) {
    const axis = nx === null ? "x" : "y";
    const how = `${rods} rods on ${known} lines in ${axis === "x" ? "Y" : "X"}: ${rods / known} in ${axis.toUpperCase()}`;
    return [...values, derived(from, `pattern.n${axis}`, scalar(String(rods / known), from.node.place), how)];
  }
  return known === null && linesOf(rods).length > 0 ? askCount(values, from, rods, context) : values;
}

/** The count stays for the lines that are asked, so that it is not held against a pattern that nobody gave. */
function askCount(
  values: readonly Taken[],
  from: Taken,
  rods: number,
  { questions }: PatternContext,
): readonly Taken[] {
  const ways = linesOf(rods);
  const text = `${from.from.column.name}: ${rods} rods with a gauge in X and one in Y: how many lines are there in each?`;
  questions.ask("rod-lines", String(rods), text, { place: from.from.place, choices: [...ways] });
  return values.map((value) => (value === from ? { ...value, origin: "asked" } : value));
}

/** A circle needs its start; gauges beside it are held against it. */
function onCircle(values: readonly Taken[], context: PatternContext): readonly Taken[] {
  const circle = valueUnder(values, "pattern.diameter");
  if (circle === undefined || circle.origin === "asked") return values;
  const [x, y] = AXES.map((axis) => valueUnder(values, `pattern.${axis}`));
  if (x?.node.kind === "scalar" && y?.node.kind === "scalar")
    return circleBesideGauges(values, circle, [x, y], context);
  if (valueUnder(values, "pattern.count") === undefined) return values;
  if (valueUnder(values, "pattern.start") !== undefined) return values;
  askStart(circle, values, context);
  const start: Taken = {
    ...{ ...circle, key: "pattern.start", origin: "asked", remark: "where the first rod stands is asked" },
    node: scalar("on-axis", circle.node.place),
  };
  return [...values, start];
}

/** The answer stands for the whole text of the circle's cell, so it says all that was taken of that cell. */
function askStart(circle: Taken, values: readonly Taken[], { questions }: PatternContext): void {
  const { from } = circle;
  const text = `${from.column.name}: nothing says where the first rod of the bolt circle stands: on an axis, or do two rods straddle it?`;
  const diameter = textOf(circle) ?? from.text;
  const count = valueUnder(values, "pattern.count");
  const before = count?.from === from ? `(${textOf(count) ?? ""}) ON ` : "";
  const written =
    from.column.role.kind === "value" && from.column.role.key === circle.key ? diameter : `${before}${diameter} B.C.`;
  const choices = [
    { answer: `${written} on-axis`, means: "a rod stands on the axis" },
    { answer: `${written} straddle`, means: "two rods straddle the axis" },
  ];
  questions.ask("start", "", text, { place: from.place, choices });
}

/** 1/16 in, to which prints round a diagonal (common practice). */
const ROUNDED = 1_587_500;

/** Four rods on gauges stand on the circle through their corners: it is held against the one that is written. */
function circleBesideGauges(
  values: readonly Taken[],
  circle: Taken,
  [x, y]: readonly [Taken, Taken],
  { unit, findings }: PatternContext,
): readonly Taken[] {
  const [diameter, inX, inY] = [circle, x, y].map((value) => lengthIn(value, unit));
  if (!diameter || !inX || !inY) return without(values, "pattern.x", "pattern.y");
  const through = Math.round(Math.hypot(inX, inY));
  const rods = countIn(values, "rods.count") ?? countIn(values, "pattern.count") ?? 4;
  const where = `${x.from.place.cell ?? "X"} and ${y.from.place.cell ?? "Y"}`;
  if (Math.abs(through - diameter) <= ROUNDED && rods === 4) {
    const agrees = `held against ${where}, whose corners lie on it`;
    return without(values, "pattern.count").map((value) =>
      value === circle ? { ...circle, key: HELD_AGAINST, remark: agrees } : value,
    );
  }
  const why =
    rods === 4
      ? `four rods on ${formatLength(inX, unit)} x ${formatLength(inY, unit)} stand on a circle of ${formatLength(through, unit)} ${unit}`
      : `${rods} rods on a circle have no gauges`;
  const message = `"${circle.from.text}" does not go with ${where}: ${why}; allowed is one of the two`;
  findings.push(errorAt(circle.from.place, "circle-differs", message));
  return without(values, "pattern.x", "pattern.y");
}

/** A value that was only held against others. */
export const HELD_AGAINST = "";

/** Two rods and one gauge stand on a line through the working point. */
function onOneLine(values: readonly Taken[], { unit }: PatternContext): readonly Taken[] {
  if (countIn(values, "rods.count") !== 2 || isCircle(values) || valueUnder(values, "pattern.kind") !== undefined)
    return values;
  const [x, y] = AXES.map((axis) => valueUnder(values, `pattern.${axis}`));
  const along = x === undefined || isZero(x, unit) ? y : isZero(y, unit) ? x : undefined;
  const across = along === x ? y : x;
  const length = lengthIn(along, unit);
  const text = textOf(along);
  if (along === undefined || length === null || length <= 0 || text === null || along.node.kind !== "scalar")
    return values;
  const { place } = along.node;
  const half = halfOf(length, text, unit);
  const ends: SourceNode = { kind: "list", items: [scalar(`-${half}`, place), scalar(half, place)], place };
  const middle: SourceNode = { kind: "list", items: [scalar("0", place)], place };
  const how = `two rods, ${text} apart about the working point`;
  const [axis, other] = along === x ? ["x", "y"] : ["y", "x"];
  const kept = values.filter((value) => value !== along && value !== across && !/^pattern\.n[xy]$/.test(value.key));
  const none = across === undefined ? [] : [{ ...across, key: HELD_AGAINST, remark: "no gauge: two rods on one line" }];
  return [
    ...kept,
    ...none,
    derived(along, `pattern.${axis}`, ends, how),
    derived(along, `pattern.${other}`, middle, how),
  ];
}

function isZero(value: Taken | undefined, unit: Unit): boolean {
  return value === undefined || lengthIn(value, unit) === 0;
}

function halfOf(length: Length, text: string, unit: Unit): string {
  return length % 2 === 0 ? exactly(length / 2, text, unit) : `${(length / 2_000_000).toFixed(7)} mm`;
}
