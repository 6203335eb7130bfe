/** What drawings, travellers and labels say of a lot of rods, in words. What nobody gave says NOT GIVEN. */
import type { Job } from "../../job/model/job.js";
import { isWeldedOn } from "../../job/model/stack.js";
import type { Input } from "../../job/model/values.js";
import type { Hardware, LengthTerm, RodDetail } from "../../rods/detail/model.js";
import { S1_MARK, weldCaution } from "../../rods/detail/welding.js";
import { orderedGrade, sizeWords } from "../../rods/index.js";
import type { RodLot, RodUse } from "../../rods/lots.js";
import { findGrade } from "../../standards/index.js";
import { groupBy } from "../../units/group-by.js";
import { formatLength, formatWithUnit, type Length, type Unit } from "../../units/index.js";
import { subtract } from "../../units/length.js";
import { POUND_IN_KG } from "../../units/weight.js";
import { printable } from "../text-metrics.js";

/** Said of a value that nobody gave. */
export const NOT_GIVEN = "NOT GIVEN";

/** A label in capitals and what stands after it. */
export interface Paragraph {
  readonly label: string;
  readonly words: string;
}

/** `1-1/4 x 36-1/2, HEADED WITH NUT`; of a bent rod `3/4 x 33 TO HOOK x 4, HOOKED`, as it is ordered. */
export function titleWords(detail: RodDetail, unit: Unit): string {
  const { kind } = detail;
  return `${sizeWords(detail, unit)} x ${titleLength(detail, unit)}, ${kind.kind === "given" ? kind.value.toUpperCase() : `KIND ${NOT_GIVEN}`}`;
}

/** End to end; of a bent rod to the inside of its hook, as ASTM F1554 measures it, and how far the hook reaches. */
function titleLength({ overall, hook, bar }: RodDetail, unit: Unit): string {
  if (overall.kind === "missing") return `LENGTH ${NOT_GIVEN}`;
  const say = (length: Length) => formatLength(length, unit);
  if (hook?.kind !== "given" || bar.kind === "missing") return say(overall.value.value);
  return `${say(subtract(overall.value.value, bar.value))} TO HOOK x ${say(hook.value.reach)}`;
}

/** `F1554 55`, `F1554 55 S1`. */
export function gradeWords(detail: RodDetail): string {
  const grade = orderedGrade(detail);
  return grade.kind === "given" ? printable(grade.value) : `GRADE ${NOT_GIVEN}`;
}

/** `hot-dip galvanized`, without the standard. */
export function finishName(detail: RodDetail): string {
  return finishWords(detail).replace(/,.*/, "");
}

/** `hot-dip galvanized, ASTM F2329`. */
export function finishWords({ finish }: RodDetail): string {
  return finish.kind === "given" ? printable(finish.value) : NOT_GIVEN;
}

/** Of the projecting end: its colour, or that its standard has none; empty where the grade is not given. */
export function colorWords({ endColor, grade }: RodDetail): string {
  if (endColor.kind === "given") return `${endColor.value.toUpperCase()} END`;
  return grade.kind === "given" ? "NO END COLOR" : "";
}

/** `35-1/2 in = projection 9 + embedment 24 + nut 1.251 + ...`. */
export function cutWords({ cut }: RodDetail, unit: Unit): string {
  if (cut.kind === "missing") return `${NOT_GIVEN}: ${cut.why} (${cut.key})`;
  const total = formatWithUnit(cut.value.value, unit);
  const terms = cut.value.terms.filter(({ length }) => length !== 0);
  const [first, second] = terms;
  if (first !== undefined && second === undefined) return `${total}, as given (${first.from})`;
  return `${total} = ${terms.map((term, i) => termWords(term, i === 0, unit)).join(" ")}`;
}

/** Where a part lies is seen in the view. */
function termWords({ words, length }: LengthTerm, isFirst: boolean, unit: Unit): string {
  const sign = length < 0 ? "- " : isFirst ? "" : "+ ";
  const short = words.replace(/^embedment to .*/, "embedment").replace(" at the lower end", "");
  return `${sign}${short} ${formatLength(Math.abs(length) as Length, unit)}`;
}

/** Bases of a lot that are written out on its detail. */
const MOST_BASES = 12;

/** `B1: 6 x 4 = 24, B9 group A: 2 x 8 = 16 HELD`: bases, rods of each, all; of many the first, the rest is in the lists. */
export function basesWords(lot: RodLot, held: ReadonlySet<string>): string {
  const { uses } = lot;
  const several = new Map([...groupBy(uses, ({ base }) => base)].map(([base, own]) => [base, own.length > 1]));
  const words = uses.slice(0, MOST_BASES).map((use) => useWords(use, several.get(use.base) === true, held));
  const more = uses.length - words.length;
  if (more === 0) return words.join(", ");
  const isHeld = heldBases({ uses: uses.slice(MOST_BASES) }, held).length;
  return `${words.join(", ")} and ${more} more, in the packing list${isHeld === 0 ? "" : `; ${isHeld} of them HELD`}`;
}

function useWords(
  { base, group, perBase, quantity }: RodUse,
  isOneOfSeveral: boolean,
  held: ReadonlySet<string>,
): string {
  const name = isOneOfSeveral ? `${base} group ${group}` : base;
  return `${name}: ${basesOf({ perBase, quantity })} x ${perBase} = ${quantity}${held.has(base) ? " HELD" : ""}`;
}

/** Number of the drawing of a lot: of the job and its mark, as those of templates are. */
export function rodDrawingNumber({ number }: Pick<Job, "number">, { mark }: Pick<RodLot, "mark">): string {
  return `${printable(number)}-${mark}`;
}

/** How many bases of its mark a use stands on. */
export function basesOf({ perBase, quantity }: Pick<RodUse, "perBase" | "quantity">): number {
  return perBase === 0 ? 0 : quantity / perBase;
}

/** Marks of the bases of a lot that are held. */
export function heldBases({ uses }: Pick<RodLot, "uses">, held: ReadonlySet<string>): readonly string[] {
  return [...new Set(uses.map(({ base }) => base))].filter((base) => held.has(base));
}

/** `each 12.4 lb, all 298 lb`. */
export function weightWords({ detail, total }: RodLot, unit: Unit): string {
  const { kilograms } = detail;
  if (kilograms.kind === "missing") return `weight ${NOT_GIVEN}`;
  const each = unit === "in" ? kilograms.value / POUND_IN_KG : kilograms.value;
  const name = unit === "in" ? "lb" : "kg";
  return `${each.toFixed(each < 10 ? 2 : 1)} ${name} each, ${(each * total).toFixed(each * total < 100 ? 1 : 0)} ${name} all`;
}

/** `rolled on bar ⌀1.115, sheared`. */
export function barWords({ threading, bar, separation }: RodDetail, unit: Unit): string {
  const how = threading.kind === "given" ? `thread ${threading.value}` : `threading ${NOT_GIVEN}`;
  const size = bar.kind === "given" ? `⌀${formatLength(bar.value, unit)}` : NOT_GIVEN;
  return `${size}, ${how}${separation.kind === "given" ? `, bar ${separation.value}` : ""}`;
}

/** Pieces that are alike, on one rod: what and where. */
export interface PiecesOnRod {
  readonly what: Hardware["what"];
  readonly count: number;
  /** `1-1/4 heavy hex nut, ASTM A563 A (base plate, levelling)`. */
  readonly words: string;
}

/** What goes on one rod, alike pieces together. */
export function piecesOnRod(hardware: readonly Hardware[]): readonly PiecesOnRod[] {
  return [...groupBy(hardware, ({ what, words }) => `${what} ${words}`).values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const count = own.reduce((sum, each) => sum + each.count, 0);
    const places = own.map((each) => (own.length > 1 && each.count > 1 ? `${each.place} ${each.count}` : each.place));
    return [{ what: first.what, count, words: `${first.words} (${places.join(", ")})` }];
  });
}

/** `3 NUTS`. */
export function countWords(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`.toUpperCase();
}

/** What is welded, and what may not be; empty where there is nothing to say. */
export function weldWords(detail: RodDetail): string {
  const { tackWelds, grade, weldable: ordered } = detail;
  if (tackWelds.length > 0 || isWeldedPlate(detail)) return orderedWelds(detail);
  const found = grade.kind === "given" ? findGrade(grade.value) : null;
  const weldable = found?.found === true ? found.row.weldable : "";
  const source = found?.found === true && found.row.system === "metric" ? "common practice" : "ASTM F1554";
  if (weldable === "no") return `none, no tack weld on this grade (${source})`;
  if (ordered === null && weldable.startsWith("only")) return `none; only with supplement S1 (${source})`;
  return "";
}

function isWeldedPlate({ bottom }: RodDetail): boolean {
  return bottom.kind === "given" && isWeldedOn(bottom.value);
}

function orderedWelds(detail: RodDetail): string {
  const plate = isWeldedPlate(detail) ? ["weld the plate to the lower end, as the engineer of record gives it"] : [];
  const caution = weldCaution(detail);
  const welds = [...plate, ...detail.tackWelds.map((place) => `tack weld ${place}`)].join("; ");
  return caution === "" ? welds : `${welds}: ${caution}`;
}

/** A hook that is known is told by the view and the sum of the bar. */
function hookWords({ hook }: RodDetail): readonly string[] {
  return hook?.kind === "missing" ? [`${NOT_GIVEN}: ${hook.why} (${hook.key})`] : [];
}

/** Tolerances without the name of their standard, which stands before them, and the other notes. */
export function toleranceNotes({ notes }: RodDetail): {
  readonly tolerances: readonly string[];
  readonly others: readonly string[];
} {
  const isTolerance = (note: string) => note.endsWith(F1554_ENDING) && /\+|at least/.test(note);
  return {
    tolerances: notes.filter(isTolerance).map((note) => note.slice(0, -F1554_ENDING.length)),
    others: notes.filter((note) => !isTolerance(note)),
  };
}

const F1554_ENDING = " (ASTM F1554).";

/** Everything that nobody gave, each key once. */
export function missingWords(detail: RodDetail): readonly string[] {
  const { kind, grade, finish, projection, embedment, topThread, bottomThread, overall, threadClass, bottom, hook } =
    detail;
  const inputs: readonly (Input<unknown> | null)[] = [kind, bottom, overall, projection, embedment, topThread];
  const all = [...inputs, bottomThread, grade, finish, threadClass, hook, ...detail.open];
  return [...new Set(all.flatMap((each) => (each?.kind === "missing" ? each.key.split(", ") : [])))];
}

function toleranceWords(own: readonly string[], general: string): string {
  if (own.length > 0)
    return `ASTM F1554: ${own.map((each) => each.charAt(0).toLowerCase() + each.slice(1)).join("; ")}`;
  return general === "" ? "NOT SPECIFIED" : printable(general);
}

/** Paragraphs of a detail, in the order of the shop. */
export function detailParagraphs(
  lot: RodLot,
  held: ReadonlySet<string>,
  { unit, tolerances: general }: Pick<Job, "unit" | "tolerances">,
): readonly Paragraph[] {
  const { detail } = lot;
  const { tolerances } = toleranceNotes(detail);
  const lacks = missingWords(detail);
  const of = (label: string, words: readonly string[]): readonly Paragraph[] =>
    words.join("") === "" ? [] : [{ label, words: words.join("; ") }];
  return [
    ...of("CUT LENGTH", [cutWords(detail, unit)]),
    ...of("BAR", [barWords(detail, unit), weightWords(lot, unit)]),
    ...of("HOOK", hookWords(detail)),
    ...of("FINISH", [finishWords(detail)]),
    ...piecesOnRod(detail.hardware).map(({ count, what, words }) => ({
      label: `${countWords(count, what)} A ROD`,
      words,
    })),
    ...of("WELDS", [weldWords(detail)]),
    ...of("MARK", detail.weldable === "S1" ? [S1_MARK] : []),
    ...of("TOLERANCES", [toleranceWords(tolerances, general)]),
    ...of("BASES", [basesWords(lot, held)]),
    ...of(NOT_GIVEN, lacks.length === 0 ? [] : [lacks.join(", ")]),
  ];
}
