/**
 * The quote, reckoned again by the test: quantities from the other lists of the same package, amounts from rates that the test
 * typed, line by line, and their sum. Invented jobs and rates.
 */
import Papa from "papaparse";
import readXlsxFile from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import type { Inputs } from "../../src/readers/inputs.js";
import { build } from "../../src/tasks/build.js";
import type { Unit } from "../../src/units/index.js";
import { inputsWith } from "../delivered.js";

/** As a shop types them; in ten-thousandths they are whole. */
const RATES = {
  ...{ perLot: "35", perBarWeight: "0.8525", perCut: "1.5", perThreadEnd: "4.25", perBend: "6.005", perSwedge: "7.1" },
  ...{ perGalvanizedWeight: "0.45", perNut: "0.3333", perWasher: "0.1", perPlateWasher: "2.675", perEndPlate: "3.335" },
  ...{ perTemplate: "12", perPlateWeight: "1.115", perPierce: "0.4", perLengthCut: "1.0005", perLengthScribed: "0.55" },
  ...{ perHole: "0.0125", perDelivery: "85" },
} as const;
type RateName = keyof typeof RATES;
const NAMES = Object.keys(RATES) as readonly RateName[];

const THREADS = { in: "threads: 6, bottomThreads: 3", mm: "threads: 150, bottomThreads: 80" } as const;

/** Rods of every lower end, plain and galvanized, two deliveries, templates with and without an opening, one shared. */
function basesIn(unit: Unit): readonly string[] {
  const [size, larger] = unit === "in" ? ["1", "1-1/4"] : ["M24", "M30"];
  const long = (inches: number): number => (unit === "in" ? inches : 25 * inches);
  const grade = unit === "in" ? "36" : "5.6";
  const rods = (diameter: string, more: string) =>
    `rods: { diameter: ${diameter}, grade: ${grade}, projection: ${long(8)}, embedment: ${long(18)}, ${more} }`;
  const thickness = long(0.25) === 0.25 ? "1/4" : "6";
  const template = (mark: string, more: string) => `template: { mark: ${mark}, thickness: ${thickness}${more} }`;
  const rectangle = `pattern: { kind: rectangle, x: ${long(12)}, y: ${long(10)} }`;
  const circle = `pattern: { kind: circle, diameter: ${long(20)}, count: 8, start: straddle }`;
  const hook = `bottom: { kind: hook, reach: ${long(5)} }, threads: ${long(6)}`;
  const plate = `bottom: { kind: plate, shape: square, size: ${long(4)}, thickness: ${long(0.5)} }`;
  return [
    `{ mark: B1, quantity: 5, delivery: truck 1, ${rods(size, `finish: plain, bottom: nut, ${THREADS[unit]}`)}, ${rectangle}, ${template("T1", `, opening: { diameter: ${long(4)} }`)} }`,
    `{ mark: B2, quantity: 3, delivery: truck 2, ${rods(size, `finish: galvanized, bottom: nut, ${THREADS[unit]}`)}, ${rectangle}, ${template("T1", `, opening: { diameter: ${long(4)} }`)} }`,
    `{ mark: B3, quantity: 7, delivery: truck 2, ${rods(larger, `finish: plain, ${hook}`)}, ${circle}, ${template("T3", "")} }`,
    `{ mark: B4, quantity: 2, delivery: truck 1, ${rods(larger, `finish: plain, ${plate}, ${THREADS[unit]}`)}, ${rectangle}, ${template("T4", "")} }`,
    `{ mark: B5, quantity: 3, delivery: truck 3, ${rods(larger, `finish: plain, bottom: { kind: swedged, length: ${long(6)} }, threads: ${long(6)}`)}, ${rectangle}, ${template("T5", ", opening: none")} }`,
  ];
}

type Row = Readonly<Record<string, string>>;

function withRates(unit: Unit, decimals: number): Inputs {
  const inputs = inputsWith(basesIn(unit), { unit });
  const line = NAMES.map((name) => `${name}: ${RATES[name]}`).join(", ");
  const files = [...inputs.files].map(
    ([path, text]) =>
      [
        path,
        path === "job.yaml" ? text : `${String(text)}\nrates: { currency: CUR, decimals: ${decimals}, ${line} }\n`,
      ] as const,
  );
  return { job: inputs.job, files: new Map(files) };
}

const KINDS = ["cut-list-csv", "rod-lists-csv", "quote-csv", "quote-xlsx", "summary"] as const;

function listsOf(unit: Unit, decimals: number) {
  const options = { date: "2026-11-24", version: "0", document: null, outputs: KINDS };
  const built = build(withRates(unit, decimals), options);
  expect(built.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const { files } = built.finish();
  const rows = (key: string): readonly Row[] => {
    const file = files.find(({ path }) => path.endsWith(`_${key}.csv`));
    return Papa.parse<Row>(new TextDecoder().decode(file?.bytes), { header: true, skipEmptyLines: true }).data;
  };
  const workbook = files.find(({ kind }) => kind === "quote-xlsx")?.bytes ?? new Uint8Array();
  return { rows, workbook };
}

/** The column whose heading begins so, summed over rows. */
function sum(rows: readonly Row[], heading: string, times: (row: Row) => number = () => 1): number {
  const column = Object.keys(rows[0] ?? {}).find((name) => name === heading || name.startsWith(`${heading},`));
  expect([heading, column !== undefined || rows.length === 0]).toEqual([heading, true]);
  return rows.reduce((all, row) => all + times(row) * Number(row[column ?? ""]), 0);
}

/** What there is of everything, by the other lists. */
function countedIn(rows: (key: string) => readonly Row[], unit: Unit): Readonly<Record<RateName, number>> {
  const [lots, plates, hardware] = [rows("rods"), rows("plates"), rows("hardware")];
  const only = (list: readonly Row[], column: string, wanted: RegExp) =>
    list.filter((row) => wanted.test(row[column] ?? ""));
  const ordered = (what: string) => sum(only(hardware, "what", RegExp(`^${what}$`)), "to order");
  const per = unit === "in" ? 12 : 1000;
  return {
    perLot: lots.length,
    perBarWeight: sum(lots, "weight total"),
    perCut: sum(lots, "quantity"),
    perThreadEnd: sum(rows("threads"), "ends"),
    perBend: sum(only(lots, "kind", /hook/), "quantity"),
    perSwedge: sum(only(lots, "kind", /swedge/), "quantity"),
    perGalvanizedWeight: sum(only(lots, "finish", /galv|zinc/), "weight total"),
    perNut: ordered("nut"),
    perWasher: ordered("washer"),
    perPlateWasher: ordered("plate washer"),
    perEndPlate: ordered("plate"),
    perTemplate: plates.length,
    perPlateWeight: sum(plates, "weight total"),
    perPierce: sum(plates, "pierces total"),
    perLengthCut: sum(plates, "cut length total") / per,
    perLengthScribed: sum(plates, "scribe length total") / per,
    perHole: sum(plates, "holes and openings each", (row) => Number(row.quantity)),
    perDelivery: new Set(rows("packing").map((row) => row.delivery)).size,
  };
}

/** A decimal as a whole number of its `decimals`-th parts. */
function whole(text: string, decimals: number): bigint {
  const [before = "0", after = ""] = text.split(".");
  expect(after.length).toBeLessThanOrEqual(decimals);
  return BigInt(before + after.padEnd(decimals, "0"));
}

/** Quantity times rate in the smallest parts of the currency, half up. */
function reckoned(quantity: string, rate: string, decimals: number): bigint {
  const per = 10n ** BigInt(7 - decimals);
  return (2n * whole(quantity, 3) * whole(rate, 4) + per) / (2n * per);
}

/** Half of the last place of a length in the list of plates (0.01 in, 0.1 mm), in ft and m. */
const rounding = { in: 0.005 / 12, mm: 0.05 / 1000 } as const;

describe.each([
  ["in", 2],
  ["mm", 2],
  ["in", 0],
  ["mm", 3],
] as const)("a quote in %s, to %i decimals", (unit, decimals) => {
  const { rows, workbook } = listsOf(unit, decimals);
  const lines = new Map(rows("quote").map((row) => [row.key?.replace("rates.", "") ?? "", row] as const));

  it("has the quantities of the other lists", () => {
    const counted = countedIn(rows, unit);
    const expected = NAMES.filter((name) => counted[name] > 0);
    expect(expected.length).toBeGreaterThan(15);
    expect([...lines.keys()].sort()).toEqual([...expected].sort());
    for (const name of expected) {
      const told = Number(lines.get(name)?.quantity);
      const apart = /Length/.test(name) ? 0.0006 + sum(rows("plates"), "quantity") * rounding[unit] : 0.0006;
      expect([name, Math.abs(told - counted[name]) < apart]).toEqual([name, true]);
    }
  });

  it("has quantity times rate in every line, half up, and their sum to the last place", async () => {
    let total = 0n;
    for (const [name, { quantity = "", rate = "", ...line }] of lines) {
      expect([name, Number(rate)]).toEqual([name, Number(RATES[name as RateName])]);
      const amount = reckoned(quantity, RATES[name as RateName], decimals);
      expect([name, whole(line["amount, CUR"] ?? "", decimals)]).toEqual([name, amount]);
      total += amount;
    }
    const [sheet] = await readXlsxFile(workbook.slice().buffer as ArrayBuffer);
    const row = sheet?.data.find((cells) => cells[0] === "TOTAL");
    const said = row?.find((cell) => typeof cell === "number");
    expect(BigInt(Math.round(Number(said) * 10 ** decimals))).toBe(total);
    expect(Number(said)).toBeCloseTo(Number(total) / 10 ** decimals, 6);
  });
});
