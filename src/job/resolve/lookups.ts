/** Questions that a job asks of the standards; a table that does not hold a size gives what is missing, with its nearest sizes. */

import { nearestWord } from "../../diagnostics/nearest.js";
import type {
  BaseHoleEdition,
  GradeRow,
  Lookup,
  NutRow,
  NutStandard,
  TemplateHoleEdition,
  ThreadRow,
  ThreadSeries,
  WasherStandard,
} from "../../standards/index.js";
import {
  findBaseHole,
  findNut as findNutRow,
  findTemplateHole,
  findThread,
  findThreadInSeries,
  findWasher as findWasherRow,
  recommendedNut as nutOfGrade,
  threadSpans,
  washerSeries,
  washerStandards,
  zincGrowth,
} from "../../standards/index.js";
import type { Length, Unit } from "../../units/index.js";
import { formatDecimals, nanometres } from "../../units/index.js";
import type { Given, Input, Nut, Rod, Washer } from "../model/job.js";
import { given, missing } from "../model/job.js";

/** What the tables ask of a rod. */
type ThreadedRod = Pick<Rod, "size" | "diameter" | "thread">;

type ThreadReading =
  | { readonly ok: true; readonly thread: ThreadRow }
  | { readonly ok: false; readonly key: "diameter" | "thread"; readonly message: string; readonly hint?: string };

const SERIES = { UNC: "UNC", "8UN": "8UN", coarse: "metric coarse" } as const satisfies Record<string, ThreadSeries>;

/** The thread of a size as written; a bare number is in `unit`. */
export function readThread(written: string, series: keyof typeof SERIES | undefined, unit: Unit): ThreadReading {
  const any = findThread(written, unit);
  if (!any.found) {
    const message = `"${written}" is no rod size with a thread; allowed are ${threadSpans.us} in UNC or 8UN, ${threadSpans.metric} coarse`;
    return { ok: false, key: "diameter", message, ...nearestHint(any.nearest) };
  }
  if (series === undefined) return { ok: true, thread: any.row };
  const named = findThreadInSeries(SERIES[series], any.row.diameter);
  if (named.found) return { ok: true, thread: named.row };
  const message = `"${series}" has no thread of size ${any.row.size}; allowed here is ${any.row.series}`;
  return { ok: false, key: "thread", message, ...nearestHint(named.nearest) };
}

/** True for a rod with a metric thread. */
export function isMetric({ thread }: ThreadedRod): boolean {
  return thread === "metric coarse";
}

function nearestHint(nearest: readonly string[]): { readonly hint?: string } {
  return nearest.length === 0 ? {} : { hint: `nearest: ${nearest.join(", ")}` };
}

function notHeld(
  table: string,
  { size }: ThreadedRod,
  { nearest }: Extract<Lookup<unknown>, { found: false }>,
): string {
  return `${table} does not hold ${size}${nearest.length === 0 ? "" : `; nearest sizes: ${nearest.join(", ")}`}`;
}

/** Growth of the diameter of a galvanized rod: the upper value. */
export const ZINC_GROWTH: Given<Length> = given(
  zincGrowth.greatest,
  `typical zinc, upper value (${mils(zincGrowth.least)} to ${mils(zincGrowth.greatest)} mil)`,
);

function mils(length: Length): string {
  return formatDecimals(1000 * length, "in", 1);
}

/** A nut of a kind by the standard of the rod's system. `chosenBy` goes before the standard in the origin: "job; " or "". */
export function findNut(rod: ThreadedRod, kind: Nut["kind"], chosenBy: string): Input<Nut> {
  if (isMetric(rod) && kind === "heavy hex") {
    return missing("rods.nut", `no table of heavy hex nuts is kept for ${rod.size}`);
  }
  const standard: NutStandard = isMetric(rod) ? "ISO 4032" : `ASME B18.2.2 ${kind}`;
  const reading = findNutRow(standard, rod.diameter);
  if (reading.found) return given(nutOf(kind, reading.row), `${chosenBy}${standard}`);
  return missing("rods.nut", notHeld(standard, rod, reading));
}

/** Maxima; where a standard tabulates only the least width across corners it is s / cos 30 degrees (geometry). */
function nutOf(kind: Nut["kind"], row: NutRow): Nut {
  const { acrossFlats, height } = row;
  const acrossCorners = row.acrossCorners ?? nanometres(acrossFlats / Math.cos(Math.PI / 6));
  return { kind, acrossCorners, height };
}

/** The nut that the grade's standard recommends for a US rod; missing where it hangs on a finish that is not given. */
export function recommendedNut(
  rod: ThreadedRod,
  row: GradeRow,
  finish: "plain" | "galvanized" | undefined,
): Input<Nut> {
  const { grade, system } = row;
  if (system === "metric") return missing("rods.nut", `no nut is recommended for grade ${grade} on ${rod.size}`);
  const kind = nutOfGrade(row, rod.diameter, finish);
  if (kind === "by finish") {
    return missing("rods.finish or rods.nut", `the nut for ${grade} hangs on the finish, which is not given`);
  }
  return findNut(rod, kind, `${grade}; `);
}

/** The template hole of the edition. */
export function tableTemplateHole(rod: ThreadedRod, edition: TemplateHoleEdition): Input<Length> {
  const reading = findTemplateHole(edition, rod.diameter);
  if (reading.found) return given(reading.row.hole, `${reading.edition}, ${reading.clause}`);
  return missing("template.hole or rules.templateHoles", notHeld(edition, rod, reading));
}

/**
 * The template hole of an inch rod under metric rules: no metric table holds it, Design Guide 1's d + 1/16 in does. Missing
 * for every other rod.
 */
export function inchTemplateHole(rod: ThreadedRod, table: Input<Length>): Input<Length> {
  if (table.kind === "given" || isMetric(rod)) return table;
  const own = tableTemplateHole(rod, INCH_EDITION);
  if (own.kind === "missing") return own;
  return given(own.value, `d + 1/16 in by ${own.from}, which the job does not name`);
}

const INCH_EDITION: TemplateHoleEdition = "Design Guide 1, 2nd ed.";

/** The base-plate hole of the edition. */
export function tableBaseHole(rod: ThreadedRod, edition: BaseHoleEdition): Input<Length> {
  const reading = findBaseHole(edition, rod.diameter);
  if (reading.found) return given(reading.row.hole, edition);
  return missing("rules.baseHoles", notHeld(edition, rod, reading));
}

type WasherReading =
  | { readonly ok: true; readonly washer: Input<Washer> }
  | { readonly ok: false; readonly message: string; readonly hint?: string };

/** A washer by the name of its standard, as `F844`, for the rod; without a rod only the name is judged. */
export function findWasher(written: string, rod: ThreadedRod | null, key: string): WasherReading {
  const standard = washerStandards.find((name) => shortNames(name).includes(plain(written)));
  if (standard === undefined) {
    const near = nearestWord(written, washerStandards);
    const message = `"${written}" is not a washer standard that is known; allowed are ${washerStandards.join("; ")}, or shape, size, thickness`;
    return { ok: false, message, ...(near === undefined ? {} : { hint: `did you mean ${near}?` }) };
  }
  if (rod === null) return { ok: true, washer: missing(key, "the rod size is not known") };
  return { ok: true, washer: washerOfSeries(standard, rod, key) };
}

/** A standard of two series says which; where the job names none, the narrow one with the wide one that may come instead. */
function washerOfSeries(standard: WasherStandard, rod: ThreadedRod, key: string): Input<Washer> {
  const open = washerSeries[standard];
  const washer = tabulatedWasher(standard, rod, key);
  if (washer.kind === "missing" || !hasSeries(standard, rod, key)) return washer;
  if (open === undefined) return given({ ...washer.value, series: shortName(standard) }, washer.from);
  const wide = tabulatedWasher(open.wide, rod, key);
  if (wide.kind === "missing") return washer;
  const widest = { ...wide.value, series: unnamed(open.wide) };
  const limits = spanOf(washer.value, wide.value);
  return given({ ...washer.value, ...limits, series: unnamed(open.narrow), widest }, washer.from);
}

/** As thin as the thinner and as thick as the thicker of two washers. */
function spanOf({ limits: a }: Washer, { limits: b }: Washer): Pick<Washer, "limits"> {
  if (a === undefined || b === undefined) return {};
  const [least, greatest] = [nanometres(Math.min(a.least, b.least)), nanometres(Math.max(a.greatest, b.greatest))];
  return { limits: { least, greatest } };
}

/** True where the narrow and the wide washer of the standard differ for this rod. */
function hasSeries(standard: WasherStandard, rod: ThreadedRod, key: string): boolean {
  const series = Object.entries(washerSeries).find(([name, each]) => [name, each.narrow, each.wide].includes(standard));
  if (series === undefined) return false;
  const [narrow, wide] = [series[1].narrow, series[1].wide].map((each) => tabulatedWasher(each, rod, key));
  return narrow?.kind === "given" && wide?.kind === "given" && narrow.value.size !== wide.value.size;
}

function unnamed(standard: WasherStandard): string {
  return `${shortName(standard)}, as no series is named`;
}

function shortName(standard: WasherStandard): string {
  return standard.replace(/^ASTM /, "");
}

function tabulatedWasher(standard: WasherStandard, rod: ThreadedRod, key: string): Input<Washer> {
  const reading = findWasherRow(standard, rod.diameter);
  if (!reading.found) return missing(key, notHeld(standard, rod, reading));
  const { outside, thickness } = reading.row;
  const thick = thickness.nominal ?? thickness.greatest;
  const bare = { shape: "round", size: outside } as const;
  if (thick === null) {
    return given({ ...bare, thickness: missing(`${key}.thickness`, `${standard} gives no thickness`) }, standard);
  }
  const limits = { least: thickness.least ?? thick, greatest: thickness.greatest ?? thick };
  return given({ ...bare, thickness: given(thick, standard), limits }, standard);
}

/** `ASTM F844` is F844 too; `ISO 7090 / DIN 125-B` is both. */
function shortNames(standard: string): readonly string[] {
  const names = [standard, ...standard.split(" / "), standard.replace(/^(ASTM|ASME B18\.21\.1) /, "")];
  return names.map(plain);
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9]/g, "");
}
