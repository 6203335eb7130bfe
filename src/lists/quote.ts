/** A quote: what there is to do, counted and weighed, times the shop's own rates. A rate that is not set is named, never guessed. */
import type { RateName, Rates } from "../job/model/rates.js";
import { RATE_NAMES } from "../job/model/rates.js";
import type { RodLot } from "../rods/lots.js";
import type { BaseFacts, PieceFacts } from "../summary/facts.js";
import type { Unit } from "../units/index.js";
import { sumKnown, thousandths } from "./cells.js";
import { type HardwareKind, openHardwareWords } from "./hardware-list.js";
import type { ListCell, ListTable } from "./model.js";
import { isLowerEndOpen, threadedEnds } from "./thread-list.js";

/** What a quote is made of. */
export interface QuoteOf {
  readonly rates: Rates;
  readonly lots: readonly RodLot[];
  readonly hardware: readonly HardwareKind[];
  readonly facts: readonly BaseFacts[];
  /** Names of the deliveries. */
  readonly deliveries: readonly string[];
  readonly status: string;
  /** Numbers of questions without an answer, and marks of bases that are held. */
  readonly openQuestions: readonly string[];
  readonly held: readonly string[];
}

/** What is counted for one rate, in thousandths, and how many things it does not hold for want of a weight. */
interface Counted {
  readonly thousandths: number;
  readonly unknown: number;
}

const known = (value: number): Counted => ({ thousandths: value, unknown: 0 });
const pieces = (count: number): Counted => known(count * 1000);

const WORDS: Readonly<Record<RateName, string>> = {
  perLot: "setting up a lot of rods",
  perBarWeight: "bar as it is cut",
  perCut: "cut of a bar, one for each rod",
  perThreadEnd: "threaded end",
  perBend: "bend",
  perSwedge: "swedged end",
  perWeld: "weld or tack weld on a rod",
  perGalvanizedWeight: "rods that are galvanized",
  perNut: "nut, spares included",
  perWasher: "washer, spares included",
  perPlateWasher: "plate washer",
  perEndPlate: "plate at the lower end of a rod",
  perTemplate: "setting up a template or a piece of one",
  perPlateWeight: "plate of the templates, net",
  perPierce: "pierce",
  perLengthCut: "cut of a template",
  perLengthScribed: "scribed line of a template",
  perHole: "hole of a template",
  perDelivery: "delivery",
};

type CountUnit = "piece" | "weight" | "length";

const COUNTED_IN: Readonly<Record<RateName, CountUnit>> = {
  ...{ perLot: "piece", perBarWeight: "weight", perCut: "piece", perThreadEnd: "piece", perBend: "piece" },
  ...{ perSwedge: "piece", perWeld: "piece", perGalvanizedWeight: "weight", perNut: "piece", perWasher: "piece" },
  ...{ perPlateWasher: "piece", perEndPlate: "piece", perTemplate: "piece", perPlateWeight: "weight" },
  ...{ perPierce: "piece", perLengthCut: "length", perLengthScribed: "length", perHole: "piece", perDelivery: "piece" },
};

function unitWord(name: RateName, unit: Unit): string {
  const counted = COUNTED_IN[name];
  if (counted === "piece") return "each";
  if (counted === "weight") return unit === "in" ? "lb" : "kg";
  return unit === "in" ? "ft" : "m";
}

/** What the job has of everything that may have a rate. */
function countAll(of: QuoteOf): Readonly<Record<RateName, Counted>> {
  const { lots, hardware, deliveries } = of;
  const hardwareCount = (what: HardwareKind["what"]) =>
    pieces(hardware.reduce((sum, kind) => sum + (kind.what === what ? kind.count + (kind.spare ?? 0) : 0), 0));
  const operations = (name: string) =>
    pieces(
      lots.reduce(
        (sum, { detail, total }) => sum + total * detail.operations.filter((each) => each.name === name).length,
        0,
      ),
    );
  return {
    perLot: pieces(lots.length),
    perBarWeight: barWeight(lots, of.rates.unit),
    perCut: pieces(lots.reduce((sum, { total }) => sum + total, 0)),
    perThreadEnd: {
      ...pieces(lots.reduce((sum, lot) => sum + lot.total * threadedEnds(lot).length, 0)),
      unknown: lots.filter(isLowerEndOpen).length,
    },
    perBend: operations("bend"),
    perSwedge: operations("swedge"),
    perWeld: operations("weld"),
    perGalvanizedWeight: barWeight(
      lots.filter(({ detail }) => detail.zincProcess !== null),
      of.rates.unit,
    ),
    perNut: hardwareCount("nut"),
    perWasher: hardwareCount("washer"),
    perPlateWasher: hardwareCount("plate washer"),
    perEndPlate: hardwareCount("plate"),
    ...countPlates(of),
    perDelivery: pieces(deliveries.length),
  };
}

function barWeight(lots: readonly RodLot[], unit: Unit): Counted {
  const weights = lots.map(({ detail, total }) =>
    detail.kilograms.kind === "given" ? total * thousandths(detail.kilograms.value, unit) : null,
  );
  const { sum, unknown } = sumKnown(weights);
  return { thousandths: sum, unknown };
}

type OfPlates = Pick<
  Record<RateName, Counted>,
  "perTemplate" | "perPlateWeight" | "perPierce" | "perLengthCut" | "perLengthScribed" | "perHole"
>;

const MM_PER_LENGTH: Readonly<Record<Unit, number>> = { in: 304.8, mm: 1000 };

/** Every piece of every template once, however many bases it serves. */
function countPlates({ facts, rates }: QuoteOf): OfPlates {
  const plates = [
    ...new Map(facts.flatMap(({ pieces: own }) => own.map((piece) => [piece.mark, piece] as const))).values(),
  ];
  const sum = (of: (piece: PieceFacts) => number) => plates.reduce((all, piece) => all + piece.quantity * of(piece), 0);
  const length = (of: (piece: PieceFacts) => number) => known(Math.round((sum(of) / MM_PER_LENGTH[rates.unit]) * 1000));
  const weights = plates.map((piece) =>
    piece.weight === null ? null : piece.quantity * plateThousandths(piece.weight, rates.unit),
  );
  const { sum: weight, unknown } = sumKnown(weights);
  return {
    perTemplate: pieces(plates.length),
    perPlateWeight: { thousandths: weight, unknown },
    perPierce: pieces(sum(({ pierces }) => pierces)),
    perLengthCut: length(({ cutLength }) => cutLength),
    perLengthScribed: length(({ scribeLength }) => scribeLength),
    perHole: pieces(sum(({ holes }) => holes.rod + holes.opening + holes.nail + holes.grout + holes.bolt)),
  };
}

const KG_IN_POUND = 0.45359237;

function plateThousandths({ value, unit }: NonNullable<PieceFacts["weight"]>, wanted: Unit): number {
  return thousandths(unit === "lb" ? value * KG_IN_POUND : value, wanted);
}

/** Thousandths x ten-thousandths, rounded half up to the currency's decimals: a whole number of its smallest part. */
function amountOf(quantity: number, rate: number, decimals: number): number {
  const [product, per] = [BigInt(quantity) * BigInt(rate), 10n ** BigInt(7 - decimals)];
  return Number((2n * product + per) / (2n * per));
}

interface Line {
  readonly name: RateName;
  readonly counted: Counted;
  /** In the smallest part of the currency; null: its rate is not set. */
  readonly amount: number | null;
}

/** Rows of what there is; the sum, and what it does not hold. */
export function quoteList(of: QuoteOf): ListTable {
  const { rates } = of;
  const counted = countAll(of);
  const lines = RATE_NAMES.filter((name) => counted[name].thousandths > 0 || counted[name].unknown > 0).map(
    (name): Line => {
      const rate = rates.of[name];
      const amount = rate.kind === "missing" ? null : amountOf(counted[name].thousandths, rate.value, rates.decimals);
      return { name, counted: counted[name], amount };
    },
  );
  const currency = rates.currency.kind === "given" ? rates.currency.value : null;
  const { sum, unknown } = sumKnown(lines.map(({ amount }) => amount));
  const open = lines.filter(({ counted: { unknown: without } }) => without > 0).length;
  const isWhole = unknown === 0 && open === 0;
  const total = unknown === lines.length ? "NO RATE IS SET" : moneyCell(sum, rates.decimals);
  return {
    key: "quote",
    name: "Quote",
    title: "QUOTE",
    columns: [
      { heading: "line", width: 6, isFigure: true },
      { heading: "work", width: 44, isWrapped: true },
      { heading: "quantity", width: 12, isFigure: true },
      { heading: "unit", width: 7 },
      { heading: "rate", width: 12, isFigure: true },
      { heading: currency === null ? "amount" : `amount, ${currency}`, width: 16, isFigure: true },
      { heading: "key", width: 22 },
      { heading: "remark", width: 46, isWrapped: true },
    ],
    rows: lines.map((line, i) => lineRow(line, i + 1, rates)),
    totals: [
      [
        isWhole ? "TOTAL" : "PART",
        isWhole ? null : "sum of what is known, NOT THE TOTAL",
        ...[null, null, null],
        total,
        null,
        [
          ...(unknown === 0 ? [] : [`without ${countWords(unknown, "rate")}`]),
          ...(open === 0 ? [] : [`without all of ${countWords(open, "line")}`]),
        ].join(", "),
      ],
    ],
    views: [],
    remarks: quoteRemarks(of, unknown, currency),
  };
}

function lineRow({ name, counted, amount }: Line, number: number, { of, unit, decimals }: Rates): readonly ListCell[] {
  const rate = of[name];
  const quantity = counted.thousandths / 1000;
  const isPiece = COUNTED_IN[name] === "piece";
  return [
    number,
    WORDS[name],
    { value: quantity, text: isPiece ? String(quantity) : quantity.toFixed(1) },
    unitWord(name, unit),
    rate.kind === "given" ? rateCell(rate.value) : "NOT SET",
    amount === null ? null : moneyCell(amount, decimals),
    `rates.${name}`,
    counted.unknown === 0
      ? ""
      : `without ${countWords(counted.unknown, isPlate(name) ? "piece" : "lot")} of which it is not known`,
  ];
}

function isPlate(name: RateName): boolean {
  return name === "perPlateWeight";
}

function moneyCell(amount: number, decimals: number): ListCell {
  const value = amount / 10 ** decimals;
  return { value, text: value.toFixed(decimals) };
}

/** Two decimals at least. */
function rateCell(rate: number): ListCell {
  const value = rate / 10_000;
  return { value, text: value.toFixed(4).replace(/0{1,2}$/, "") };
}

function countWords(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}

function quoteRemarks(of: QuoteOf, unset: number, currency: string | null): readonly string[] {
  const { status, openQuestions, held, rates } = of;
  return [
    ...(status === "released" ? [] : [`The job is ${status}: it may still change, and with it every quantity here.`]),
    ...(openQuestions.length === 0
      ? []
      : [
          `${countWords(openQuestions.length, "question")} to the engineer of record open: ${openQuestions.join(", ")}. An answer may change quantities.`,
        ]),
    ...(held.length === 0 ? [] : [`Held, and counted here all the same: ${held.join(" ")}.`]),
    ...openHardwareWords(of.lots),
    ...boltWords(of.hardware),
    ...(unset === 0
      ? []
      : [
          `${countWords(unset, "rate")} NOT SET in the shop file, each by the key in its line: what is added up is without ${unset === 1 ? "it" : "them"}, and no total.`,
        ]),
    `${currency === null ? "The currency is not set (rates.currency)" : `Amounts in ${currency}`}; each line is quantity times rate, rounded half up to ${countWords(rates.decimals, "decimal")}, and their sum is that of the lines.`,
    "Quantities are those of the lists: bars as they are cut, without kerf and rests. What has no line has no rate: tax, freight and engineering are not in it.",
  ];
}

function boltWords(hardware: readonly HardwareKind[]): readonly string[] {
  const bolts = hardware.reduce((sum, { what, count }) => sum + (what === "bolt" ? count : 0), 0);
  return bolts === 0
    ? []
    : [`${countWords(bolts, "bolt")} of splice plates: no rate is kept for bolts, they are not in the total.`];
}
