import { pointAt, samePoint } from "../../geometry/index.js";
import type { Base, Missing } from "../../job/model/job.js";
import { dropsOn, isSilent, matters, showsAtEdge, turnedPlates } from "../../orientation/index.js";
import type { WrongPlacement } from "../../orientation/model.js";
import { rodPositions } from "../../patterns/index.js";
import { columnTurn, degreesText } from "../geometry/base-plate-turns.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, compareCounts, keysOf, lacking, notChecked } from "../results.js";
import { isOverCastRods } from "../rods.js";
import { BASE_HOLE, PLATE } from "../takes.js";
import type { Words } from "../words.js";
import { counted, wordsIn } from "../words.js";

/**
 * Every wrong way round of the template (four turns, face up and face down, about the working point; pitches of a bolt circle;
 * laid by its own edges): how far the rods would be off, and who would notice. Then every turn in which the base plate drops on
 * over right rods.
 */
export const wrongPlacement: Rule<"wrong-placement"> = {
  id: "wrong-placement",
  plainName: "plate laid wrong way round",
  title:
    "no wrong way round of template or base plate goes unseen; largest and smallest rod error, and what hides them",
  severity: "advise",
  measured: "the rod error of a template laid down a wrong way round",
  takes: [...PLATE, ...BASE_HOLE, "basePlate.at", "column"],
  clause: () => "every way round, laid over the right one",
  edition: () => "geometry",
  check: (context) => [...templateRows(context), ...basePlateRows(context)],
};

function templateRows(context: CheckContext): readonly RuleResult[] {
  const { base, plate, job } = context;
  const say = wordsIn(job.unit);
  const wrong = plate.wrong.filter(matters);
  const silent = wrong.filter((placement) => isSilent(base, placement));
  const all = countRow(context, wrong, silent, say);
  if (wrong.length === 0 || isOverCastRods(context)) return [all];
  const byError = [...wrong].sort((a, b) => worseFirst(context, a, b));
  const largest = byError.reduce((most, each) => (each.errorTwice > most.errorTwice ? each : most));
  const smallest = byError.reduce((least, each) => (each.errorTwice < least.errorTwice ? each : least));
  return [
    all,
    errorRow("template, largest error", largest, wrong, say),
    errorRow("template, smallest error", smallest, wrong, say),
    ...swapRow(wrong, silent),
  ];
}

/** Of two that are off by the same, the one that fewer people would notice. */
function worseFirst({ base }: CheckContext, a: WrongPlacement, b: WrongPlacement): number {
  const rank = (each: WrongPlacement) => (isSilent(base, each) ? 0 : 2) + (dropsOn(each) ? 0 : 1);
  return rank(a) - rank(b);
}

/** How many ways round neither the outline shows nor, for a plate over cast rods, the rods themselves. */
function countRow(
  context: CheckContext,
  wrong: readonly WrongPlacement[],
  silent: readonly WrongPlacement[],
  say: Words,
): RuleResult {
  const { plate } = context;
  const harmless = plate.wrong.length - wrong.length;
  const counts = `${counted(plate.wrong.length, "wrong way")} round: ${harmless} set the same rods, ${wrong.length - silent.length} show, ${silent.length} do not`;
  const [worst] = [...silent].sort((a, b) => Number(dropsOn(b)) - Number(dropsOn(a)) || b.errorTwice - a.errorTwice);
  const note = worst === undefined ? counts : `${counts}; ${described(worst, silent, say)}`;
  return compareCounts("template", silent.length, "<=", 0, note);
}

/** The error that would go unseen is nothing where the outline shows it, else what the base plate takes up. */
function errorRow(
  subject: string,
  placement: WrongPlacement,
  wrong: readonly WrongPlacement[],
  say: Words,
): RuleResult {
  const note = described(placement, wrong, say);
  if (showsAtEdge(placement)) return compare(subject, placement.errorTwice, ">=", 0, note);
  const { dropsOn: plate, errorTwice } = placement;
  if (plate.kind === "not known")
    return notChecked(subject, `${note}; ${missingWords(plate.missing)}`, { missing: keysOf(plate.missing) });
  return compare(subject, errorTwice, ">=", errorTwice - plate.twice + 1, note);
}

function missingWords(missing: readonly Missing[]): string {
  return missing.map(({ why, key }) => `${why} (${key})`).join("; ");
}

/** Rods of one kind where another belongs. */
function swapRow(wrong: readonly WrongPlacement[], silent: readonly WrongPlacement[]): readonly RuleResult[] {
  const swapping = wrong.filter(({ swapped }) => swapped.length > 0);
  const [first] = swapping;
  if (first === undefined) return [];
  const unseen = silent.filter(({ swapped }) => swapped.length > 0).length;
  const more = swapping.length === 1 ? "" : ` (and ${swapping.length - 1} more)`;
  const note = `${first.way.words}${more}: rods of another kind stand in their places: ${first.swapped.join(", ")}`;
  return [compareCounts("template, rods of another kind", unseen, "<=", 0, note)];
}

/** "turned 90 (and 3 more): rods 1.4142 off, base plate does not drop on (1.008 short), outline shows it". */
function described(placement: WrongPlacement, among: readonly WrongPlacement[], say: Words): string {
  const alike = among.filter((other) => sameOutcome(other, placement)).length - 1;
  const more = alike === 0 ? "" : ` (and ${alike} more)`;
  const edge = showsAtEdge(placement) ? "the outline shows it" : "the outline does not show it";
  return `${placement.way.words}${more}: rods ${say.twice(placement.errorTwice)} off, ${dropWords(placement, say)}, ${edge}`;
}

function sameOutcome(a: WrongPlacement, b: WrongPlacement): boolean {
  return a.errorTwice === b.errorTwice && dropsOn(a) === dropsOn(b) && showsAtEdge(a) === showsAtEdge(b);
}

function dropWords({ dropsOn: plate }: WrongPlacement, say: Words): string {
  if (plate.kind === "not known") return "whether the base plate drops on is not known";
  if (plate.twice > 0) return `base plate does not drop on (at most ${say.twice(plate.twice)} short)`;
  if (plate.shiftTwice === 0) return "base plate drops on all the same";
  return `base plate drops on, ${say.twice(plate.shiftTwice)} off its place`;
}

/** The base plate turned over rods that are right: whether it drops on with the column turned or off its place. */
function basePlateRows({ base, rods, job }: CheckContext): readonly RuleResult[] {
  const unknown = base.groups.flatMap(({ baseHole }) => (baseHole.kind === "missing" ? [baseHole] : []));
  const byKey = new Map(unknown.map((missing) => [`${missing.key} ${missing.why}`, missing]));
  const noColumn = base.column.kind === "missing" ? [base.column] : [];
  if (byKey.size > 0) return [lacking(BASE_PLATE, [...byKey.values(), ...noColumn])];
  const { x, y } = base.column.kind === "given" ? base.column.value.at : base.basePlate.at;
  const turned = turnedPlates(base, rods, pointAt(x, y));
  if (turned === "any") return [onOneRod(base)];
  if (turned.length === 0) return [compareCounts(BASE_PLATE, 0, "<=", 0, "turned any other way it does not drop on")];
  const drops = `drops on turned ${listed(turned.map(({ degrees }) => degreesText(degrees)))} too`;
  if (base.column.kind === "missing") return [columnUnknown(drops, base.column)];
  const { value: column } = base.column;
  const say = wordsIn(job.unit);
  const wrong = turned.flatMap((plate) => {
    const { same, how } = columnTurn(plate, column);
    return same ? [] : [{ degrees: degreesText(plate.degrees), how: how(say) }];
  });
  const words = wrong.length === 0 ? SAME : alikeTurns(wrong);
  return [compareCounts(BASE_PLATE, wrong.length, "<=", 0, `${drops}; ${words}`)];
}

const BASE_PLATE = "base plate";
const SAME = "the column's section is then the same; what else is fixed to column or plate is not known";

function columnUnknown(drops: string, { why, key }: Missing): RuleResult {
  return notChecked(BASE_PLATE, `${drops}; whether that shows is not known: ${why} (${key})`, { missing: [key] });
}

/** A plate on one rod turns freely; only a round column about that rod is the same whichever way. */
function onOneRod({ column, groups }: Base): RuleResult {
  const drops = "one rod: the base plate drops on turned any way";
  if (column.kind === "missing") return columnUnknown(drops, column);
  const [rod] = groups.flatMap(({ pattern }) => rodPositions(pattern));
  const { kind, at } = column.value;
  const isSame = kind === "pipe" && rod !== undefined && samePoint(pointAt(at.x, at.y), rod);
  const words = isSame ? SAME : "nothing but sight and layout lines keep the column's axes and place";
  return compareCounts(BASE_PLATE, isSame ? 0 : 1, "<=", 0, `${drops}; ${words}`);
}

const MOST_TURNS = 8;

/** "60, 120, 180"; of many the first and last ones and how many. */
function listed(turns: readonly string[]): string {
  if (turns.length <= MOST_TURNS) return turns.join(", ");
  return `${turns.slice(0, 3).join(", ")} ... ${turns.at(-1)} (${turns.length} ways)`;
}

/** "turned 60, 120: column turned 60 degrees out; turned 90, 270: strong axis across". */
function alikeTurns(wrong: readonly { readonly degrees: string; readonly how: string }[]): string {
  const byHow = new Map<string, string[]>();
  for (const { degrees, how } of wrong) byHow.set(how, [...(byHow.get(how) ?? []), degrees]);
  return [...byHow].map(([how, turns]) => `turned ${listed(turns)}: ${how}`).join("; ");
}
