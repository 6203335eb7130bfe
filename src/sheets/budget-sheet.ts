/**
 * The budget of a base as a sheet: how the spare clearance of its trials is spread, what does not drop on, and where worst
 * case and root-sum-square lie; with the terms, what governs, and the cautions.
 */

import type { BudgetRod, Histogram, ReckonedBase } from "../budget/index.js";
import {
  askedForm,
  askedShare,
  BUDGET_CAUTIONS,
  freedomWords,
  governsWords,
  shareWords,
  spareWords,
  specWords,
  targetWords,
  worstWords,
} from "../budget/index.js";
import type { Job } from "../job/model/job.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { formatLength, type Unit } from "../units/index.js";
import { at, fill, group, line, stroke, text } from "./items.js";
import type { Area } from "./paper.js";
import { drawReport, type SheetPlace } from "./report-sheet.js";
import type { Scene, SceneItem, StrokeRole } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { notesPiece, tablePiece } from "./table.js";
import { printable, shorten, textWidth, wrap } from "./text-metrics.js";
import { field } from "./title-block.js";
import { unitWord } from "./unit-word.js";

/** What a budget's sheet is drawn from; `version` is the program's. */
export interface BudgetSheetRequest {
  readonly job: Job;
  readonly budget: ReckonedBase;
  readonly version: string;
  readonly sheet?: SheetPlace | undefined;
}

/** Draws the sheet on the smallest size on which its tables stand. */
export function drawBudgetSheet({ job, budget, version, sheet }: BudgetSheetRequest): Scene {
  return drawReport({
    job,
    version,
    sheet,
    title: `${budget.mark}: budget of position errors, job ${printable(job.number)}`,
    description: `${dropsWords(budget)}. Engineer to decide.`,
    about: field("BUDGET OF BASE, MARK", budget.mark, 0.8, "title"),
    facts: [field("STATUS", job.status.toUpperCase(), 0.36), field("QUANTITY", `QTY ${budget.quantity}`, 0.36)],
    pieces: (width, lettering) => [
      tablePiece(termTable(budget), width, lettering),
      tablePiece(resultTable(budget), width, lettering),
      notesPiece("notes", "NOTES", notesOf(budget), width, lettering),
      notesPiece("cautions", "CAUTIONS", BUDGET_CAUTIONS, width, lettering),
    ],
    picture: (area, lettering) => chart(budget, area, lettering),
  });
}

const column = (title: string, share: number, align: "start" | "end" = "start") => ({ title, share, align });

/** One line a term of a rod size; rods of one size and hole are alike. */
function termTable({ rods, unit }: ReckonedBase) {
  const kinds = new Map(rods.map((rod) => [`${rod.size} ${rod.hole} ${JSON.stringify(rod.terms)}`, rod]));
  const rows = [...kinds.values()].flatMap((rod) => [clearanceRow(rod), ...termRows(rod)]);
  return {
    name: "budget-terms",
    heading: `ERRORS AND CLEARANCE, RADII IN ${unitWord(unit)}`,
    columns: [
      column("ROD", 0.12),
      column("TERM", 0.27),
      column("RADIUS", 0.13, "end"),
      column("", 0.03),
      column("FROM", 0.45),
    ],
    rows,
    foot: [],
    under: [],
    strong: new Set<number>(),
  };

  function clearanceRow({ size, hole, diameter, clearanceTwice }: BudgetRod): readonly string[] {
    return [
      size,
      "clearance",
      formatLength(clearanceTwice / 2, unit),
      "",
      `(${formatLength(hole, unit)} - ${formatLength(diameter, unit)})/2`,
    ];
  }

  function termRows({ size, terms }: BudgetRod): readonly (readonly string[])[] {
    return terms.map(({ name, zone, twice, commonTwice, from }) => [
      size,
      zone === "square" ? `${name}, x and y` : name,
      formatLength((twice + commonTwice) / 2, unit),
      "",
      from,
    ]);
  }
}

function resultTable(budget: ReckonedBase) {
  const { worst, rss, probability, spec, unit, governs } = budget;
  const { held, shifted, free, samples, standardError } = probability;
  const rods = governs.rods.slice(0, 4).map(({ tag, share }) => `${tag} ${Math.round(share * 100)}`);
  return {
    name: "budget-results",
    heading: "DOES THE BASE PLATE DROP ON",
    columns: [column("WHAT", 0.46), column("VALUE", 0.54)],
    rows: [
      ["free to shift and turn", shareWords(free)],
      ["free to shift", shareWords(shifted)],
      ["fixed in its place", shareWords(held)],
      ["standard error, trials, seed", `${shareWords(standardError)}, ${samples}, ${spec.seed}`],
      ["spare, worst case", roomWords(askedForm(worst, spec.plate).spare, unit)],
      ["spare, root sum square", roomWords(askedForm(rss, spec.plate).spare, unit)],
      ["worst case is at", governsWords(budget)],
      ["tightest rod, % of trials", rods.join(", ")],
    ],
    foot: [],
    under: [],
    strong: new Set([["free", "shifted", "held"].indexOf(spec.plate)]),
  };
}

function notesOf(budget: ReckonedBase): readonly string[] {
  const { target, unit, spec } = budget;
  return [
    `Plate ${freedomWords(spec.plate)}. ${specWords(spec)}`,
    `Worst case ${worstWords(budget)}.`,
    ...(target === null ? [] : targetWords(target, unit).map((words) => `${words}.`)),
    ...budget.notes,
  ];
}

/** The bars over spare clearance: filled where the plate does not drop on, open where it does. */
function chart(budget: ReckonedBase, area: Area, lettering: Lettering): readonly SceneItem[] {
  const { heading, body, small } = lettering;
  const top = headLines(budget, area, lettering);
  const frame: Area = {
    x0: area.x0 + small * 7,
    y0: area.y0 + body * 3 + small * 3,
    x1: area.x1 - 2,
    y1: top.y - small * 9,
  };
  const scale = scaleOf(budget, frame);
  return [
    ...top.items,
    group("histogram", [...bars(budget.histogram, scale, frame), ...axes(budget, scale, frame, lettering)], {
      samples: budget.histogram.samples,
      drops: budget.histogram.drops,
    }),
    ...marks(budget, scale, frame, lettering),
    text(
      "label",
      `SPARE CLEARANCE, ${budget.unit}: NEGATIVE DOES NOT DROP ON`,
      at((frame.x0 + frame.x1) / 2, area.y0 + small),
      small,
      {
        anchor: "middle",
      },
    ),
    text("label", "SHARE OF TRIALS", at(area.x0 + heading * 0.9, (frame.y0 + frame.y1) / 2), small, {
      anchor: "middle",
      turn: 90,
    }),
  ];
}

/** `Drops on in 3988 of 4000 trials`. */
function dropsWords(budget: ReckonedBase): string {
  const { samples } = budget.probability;
  return `Drops on in ${Math.round(askedShare(budget) * samples)} of ${samples} trials`;
}

function headLines(budget: ReckonedBase, area: Area, { heading, body, small }: Lettering) {
  const { histogram, spec } = budget;
  const words = [
    `${dropsWords(budget).toUpperCase()} (PLATE ${freedomWords(spec.plate).toUpperCase()}).`,
    `Picture: the first ${histogram.samples} trials, each fitted; in ${histogram.drops} of them the plate drops on. Seed ${spec.seed}. Engineer to decide.`,
  ];
  const title = `BASE ${budget.mark}: SPARE CLEARANCE OF THE BASE PLATE`;
  let y = area.y1 - heading;
  const items: SceneItem[] = [
    text("heading", shorten(title, area.x1 - area.x0, heading, true), at(area.x0, y), heading, { bold: true }),
  ];
  for (const [i, each] of words.entries()) {
    const letter = i === 0 ? body : small;
    for (const part of wrap(each, area.x1 - area.x0, letter, i === 0)) {
      y -= letter * 2;
      items.push(text("note", part, at(area.x0, y), letter, { bold: i === 0 }));
    }
  }
  return { items, y };
}

/** Paper places of spares (nanometres) and shares. */
interface ChartScale {
  readonly x: (spare: number) => number;
  readonly y: (share: number) => number;
  readonly least: number;
  readonly most: number;
  readonly top: number;
}

const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1];

function scaleOf({ histogram, worst, rss, spec }: ReckonedBase, frame: Area): ChartScale {
  const { step, from, counts, samples } = histogram;
  const shown = [askedForm(worst, spec.plate).spare, askedForm(rss, spec.plate).spare, 0];
  const ends = [from * step, (from + counts.length) * step, ...shown];
  const least = Math.floor(leastOf(ends) / step) - 0.5;
  const most = Math.ceil(greatestOf(ends) / step) + 0.5;
  const highest = greatestOf(counts) / samples;
  const top = STEPS.map((each) => each * Math.ceil(highest / each)).find((each, i) => each / (STEPS[i] ?? 1) <= 6) ?? 1;
  return {
    x: (spare) => frame.x0 + ((spare / step - least) / (most - least)) * (frame.x1 - frame.x0),
    y: (share) => frame.y0 + (share / top) * (frame.y1 - frame.y0),
    least: least * step,
    most: most * step,
    top,
  };
}

function bars({ step, from, counts, samples }: Histogram, { x, y }: ChartScale, frame: Area): readonly SceneItem[] {
  return counts.flatMap((count, i) => {
    if (count === 0) return [];
    const [left, right] = [x((from + i) * step), x((from + i + 1) * step)];
    const high = y(count / samples);
    const corners = [at(left, frame.y0), at(left, high), at(right, high), at(right, frame.y0)];
    const sides = [
      line(at(left, frame.y0), at(left, high)),
      line(at(left, high), at(right, high)),
      line(at(right, high), at(right, frame.y0)),
    ];
    const data = { fromNm: (from + i) * step, count };
    return [group("bar", from + i < 0 ? [fill("bar", ...corners)] : [stroke("fine", ...sides)], data)];
  });
}

function axes(
  { histogram, unit }: ReckonedBase,
  { x, y, least, most, top }: ChartScale,
  frame: Area,
  { small }: Lettering,
) {
  const share = STEPS.find((each) => top / each <= 6.01) ?? 1;
  const shares = Array.from({ length: Math.round(top / share) + 1 }, (_, i) => i * share);
  const figures = tickSpares(
    histogram.step,
    least,
    most,
    (spare) => textWidth(`${formatLength(spare, unit)}00`, small),
    x,
  );
  return [
    stroke("table-heavy", line(at(frame.x0, frame.y0), at(frame.x1, frame.y0))),
    stroke("fine", line(at(frame.x0, frame.y0), at(frame.x0, frame.y1))),
    ...shares.flatMap((each) => [
      stroke("fine", line(at(frame.x0 - 1, y(each)), at(frame.x0, y(each)))),
      text("label", `${Math.round(each * 100)} %`, at(frame.x0 - 1.8, y(each) - small / 2), small, { anchor: "end" }),
    ]),
    ...figures.flatMap((spare) => [
      stroke("fine", line(at(x(spare), frame.y0 - 1), at(x(spare), frame.y0))),
      text("label", formatLength(spare, unit), at(x(spare), frame.y0 - 2 - small), small, { anchor: "middle" }),
    ]),
  ];
}

/** Multiples of a power of two of the bin's step, so wide apart that their figures stand clear; 0 is one of them. */
function tickSpares(
  step: number,
  least: number,
  most: number,
  width: (spare: number) => number,
  x: (spare: number) => number,
) {
  for (let every = step; ; every *= 2) {
    const first = Math.ceil(least / every);
    const all = Array.from({ length: Math.floor(most / every) - first + 1 }, (_, i) => (first + i) * every || 0);
    const widest = greatestOf(all.map(width), 0);
    if (x(every) - x(0) >= widest || all.length <= 2) return all;
  }
}

/** `0.125 in to spare`, `short by 0.718 in`. */
function roomWords(spare: number, unit: Unit): string {
  const size = spareWords(Math.abs(spare), unit).replace(/^\+/, "");
  return spare < 0 ? `short by ${size}` : `${size} to spare`;
}

/** The same in capitals, its unit as it is written. */
function roomCapitals(spare: number, unit: Unit): string {
  return roomWords(spare, unit)
    .toUpperCase()
    .replace(/ (IN|MM)\b/, (word) => word.toLowerCase());
}

interface Mark {
  readonly words: string;
  readonly spare: number;
  readonly role: StrokeRole;
}

interface PlacedMark extends Mark {
  readonly x: number;
  readonly toRight: boolean;
  readonly level: number;
  readonly width: number;
}

function marksOf({ worst, rss, spec, histogram, unit }: ReckonedBase): readonly Mark[] {
  const [least, square] = [askedForm(worst, spec.plate).spare, askedForm(rss, spec.plate).spare];
  return [
    { words: "DROPS ON FROM HERE", spare: 0, role: "outline" },
    { words: `WORST CASE ${roomCapitals(least, unit)}`, spare: least, role: "centre" },
    { words: `RSS ${roomCapitals(square, unit)}`, spare: square, role: "concrete" },
    { words: `MEAN ${roomCapitals(histogram.mean, unit)}`, spare: histogram.mean, role: "base-plate" },
  ];
}

/** Zero, worst case, root sum square and mean as lines through the bars, each named above, the one farthest right lowest. */
function marks(budget: ReckonedBase, { x }: ChartScale, frame: Area, { small }: Lettering): readonly SceneItem[] {
  const ordered = marksOf(budget).toSorted((a, b) => b.spare - a.spare);
  const placed = ordered.map((mark, i): PlacedMark => {
    const width = textWidth(mark.words, small);
    const level = frame.y1 + small * (0.8 + i * 2);
    return { ...mark, x: x(mark.spare), width, level, toRight: x(mark.spare) + 1 + width <= frame.x1 };
  });
  return placed.map((mark) => {
    const others = placed.filter((other) => other !== mark && crosses(mark, other));
    const label = text("label", mark.words, at(mark.x + (mark.toRight ? 1 : -1), mark.level), small, {
      anchor: mark.toRight ? "start" : "end",
    });
    const data = { spareNm: Math.round(mark.spare) };
    return group("mark", [stroke(mark.role, ...broken(mark, others, frame.y0, small)), label], data);
  });
}

const CLEAR = 0.9;

/** The line of one mark runs through the name of the other. */
function crosses({ x, level }: PlacedMark, other: PlacedMark): boolean {
  const from = other.toRight ? other.x + 1 : other.x - 1 - other.width;
  return level > other.level && x > from - CLEAR && x < from + other.width + CLEAR;
}

/** The line from the axis up to its own name, left out where it would run through another. */
function broken({ x, level }: PlacedMark, others: readonly PlacedMark[], bottom: number, small: number) {
  const gaps = others.map((other) => other.level).toSorted((a, b) => a - b);
  const ends = [bottom, ...gaps.flatMap((gap) => [gap - CLEAR, gap + small + CLEAR]), level + small];
  return gaps
    .map((_, i) => [ends[2 * i] ?? 0, ends[2 * i + 1] ?? 0] as const)
    .concat([[ends.at(-2) ?? bottom, level + small]])
    .filter(([from, to]) => to > from)
    .map(([from, to]) => line(at(x, from), at(x, to)));
}
