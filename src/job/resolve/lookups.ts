/** Questions that a job asks of the standards; a table that does not hold a size gives what is missing, with its nearest sizes. */

import { nearestWord } from "../../diagnostics/nearest.js";
import type { NutRow, NutStandard, WasherStandard } from "../../standards/index.js";
import {
  findBaseHole,
  findGrade as findGradeRow,
  findNut as findNutRow,
  findTemplateHole,
  findThread,
  findWasher as findWasherRow,
  washerStandards,
  zincGrowth,
} from "../../standards/index.js";
import type { Length, Unit } from "../../units/index.js";
import { nanometres } from "../../units/index.js";
import type { Given, Input, Nut, Washer } from "../model/job.js";
import { given, missing } from "../model/job.js";

/** A rod whose thread exists. */
export interface FoundRod {
  readonly size: string;
  readonly diameter: Length;
  readonly thread: string;
  readonly system: "us" | "metric";
}

type RodReading =
  | { readonly ok: true; readonly rod: FoundRod }
  | { readonly ok: false; readonly key: "diameter" | "thread"; readonly message: string; readonly hint?: string };

/** The rod of a size as written; a bare number is in `unit`. */
export function findRod(written: string, series: "UNC" | "8UN" | "coarse" | undefined, unit: Unit): RodReading {
  const any = findThread(written, unit);
  if (!any.found) {
    const message = `"${written}" is no rod size with a thread; allowed are 1/4 to 4 in UNC or 8UN, M10 to M100 coarse`;
    return { ok: false, key: "diameter", message, ...nearestHint(any.nearest) };
  }
  const named =
    series === undefined ? any : findThread(any.row.size, "in", series === "coarse" ? "metric coarse" : series);
  if (!named.found) {
    const message = `"${series}" has no thread of size ${any.row.size}; allowed here is ${any.row.series}`;
    return { ok: false, key: "thread", message, ...nearestHint(named.nearest) };
  }
  const { size, diameter, series: thread } = named.row;
  return { ok: true, rod: { size, diameter, thread, system: thread === "metric coarse" ? "metric" : "us" } };
}

function nearestHint(nearest: readonly string[]): { readonly hint?: string } {
  return nearest.length === 0 ? {} : { hint: `nearest: ${nearest.join(", ")}` };
}

function nearestWords(nearest: readonly string[]): string {
  return nearest.length === 0 ? "" : `; nearest sizes: ${nearest.join(", ")}`;
}

/** The printed name of a grade of F1554 or ISO 898-1, or null. */
export function findGrade(written: string): string | null {
  const reading = findGradeRow(written);
  return reading.found ? reading.row.grade : null;
}

/** Growth of the diameter of a galvanized rod: the upper value, 7.0 mil. */
export const ZINC_GROWTH: Given<Length> = given(zincGrowth.greatest, "typical zinc, upper value (3.6 to 7.0 mil)");

/** A nut of a kind by the standard of the rod's system. `chosenBy` goes before the standard in the origin: "job; " or "". */
export function findNut(rod: FoundRod, kind: Nut["kind"], chosenBy: string): Input<Nut> {
  if (rod.system === "metric" && kind === "heavy hex") {
    return missing("rods.nut", `no table of heavy hex nuts is held for ${rod.size}`);
  }
  const standard: NutStandard = rod.system === "metric" ? "ISO 4032" : `ASME B18.2.2 ${kind}`;
  const reading = findNutRow(standard, rod.size);
  if (reading.found) return given(nutOf(kind, reading.row), `${chosenBy}${standard}`);
  return missing("rods.nut", `${standard} does not hold ${rod.size}${nearestWords(reading.nearest)}`);
}

/** Maxima; where a standard tabulates only the least width across corners it is s / cos 30 degrees (geometry). */
function nutOf(kind: Nut["kind"], row: NutRow): Nut {
  const { acrossFlats, height } = row;
  const acrossCorners = row.acrossCorners ?? nanometres(acrossFlats / Math.cos(Math.PI / 6));
  return { kind, acrossCorners, height };
}

/** The nut that the grade's standard recommends for a US rod; missing where it hangs on a finish that is not given. */
export function recommendedNut(rod: FoundRod, grade: string, finish: "plain" | "galvanized" | undefined): Input<Nut> {
  const reading = findGradeRow(grade);
  if (!reading.found || reading.row.system === "metric") {
    return missing("rods.nut", `no nut is recommended for grade ${grade} on ${rod.size}`);
  }
  const { hexUpTo, heavyHexWhenGalvanized } = reading.row;
  if (rod.diameter <= hexUpTo && heavyHexWhenGalvanized && finish === undefined) {
    return missing("rods.finish or rods.nut", `the nut for ${grade} hangs on the finish, which is not given`);
  }
  const heavy = rod.diameter > hexUpTo || (heavyHexWhenGalvanized && finish === "galvanized");
  return findNut(rod, heavy ? "heavy hex" : "hex", `${grade}; `);
}

/** The template hole of the edition. */
export function tableTemplateHole(rod: FoundRod, edition: string): Input<Length> {
  const reading = findTemplateHole(edition, rod.size, rod.diameter);
  if (reading.found) return given(reading.row.hole, `${edition}, ${reading.clause}`);
  return missing("template.hole", `${edition} does not hold ${rod.size}${nearestWords(reading.nearest)}`);
}

/**
 * The template hole of an inch rod under metric rules: no metric table holds it, Design Guide 1's d + 1/16 in does. Missing
 * for every other rod.
 */
export function inchTemplateHole(rod: FoundRod, table: Input<Length>): Input<Length> {
  if (table.kind === "given" || rod.system !== "us") return table;
  const own = tableTemplateHole(rod, INCH_EDITION);
  return own.kind === "given" ? given(own.value, `${own.from}; ${table.why}`) : own;
}

const INCH_EDITION = "Design Guide 1, 2nd ed.";

/** The base-plate hole of the edition. */
export function tableBaseHole(rod: FoundRod, edition: string): Input<Length> {
  const reading = findBaseHole(edition, rod.size);
  if (reading.found) return given(reading.row.hole, edition);
  return missing("basePlate.hole", `${edition} does not hold ${rod.size}${nearestWords(reading.nearest)}`);
}

type WasherReading =
  | { readonly ok: true; readonly washer: Input<Washer> }
  | { readonly ok: false; readonly message: string; readonly hint?: string };

/** A washer by the name of its standard, as `F844`, in the rod's size; without a size only the name is judged. */
export function findWasher(written: string, size: string | null, key: string): WasherReading {
  const standard = washerStandards.find((name) => shortNames(name).includes(plain(written)));
  if (standard === undefined) {
    const near = nearestWord(written, washerStandards);
    const message = `"${written}" is not a washer standard that is held; allowed are ${washerStandards.join("; ")}, or shape, size, thickness`;
    return { ok: false, message, ...(near === undefined ? {} : { hint: `did you mean ${near}?` }) };
  }
  if (size === null) return { ok: true, washer: missing(key, "the rod size is not known") };
  return { ok: true, washer: tabulatedWasher(standard, size, key) };
}

function tabulatedWasher(standard: WasherStandard, size: string, key: string): Input<Washer> {
  const reading = findWasherRow(standard, size);
  if (!reading.found) return missing(key, `${standard} does not hold ${size}${nearestWords(reading.nearest)}`);
  const { outside, thickness } = reading.row;
  const thick = thickness.nominal ?? thickness.greatest;
  const known: Input<Length> =
    thick === null ? missing(`${key}.thickness`, `${standard} gives no thickness`) : given(thick, standard);
  return given({ shape: "round", size: outside, thickness: known }, standard);
}

/** `ASTM F844` is F844 too; `ISO 7090 / DIN 125-B` is both. */
function shortNames(standard: string): readonly string[] {
  const names = [standard, ...standard.split(" / "), standard.replace(/^(ASTM|ASME B18\.21\.1) /, "")];
  return names.map(plain);
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9]/g, "");
}
