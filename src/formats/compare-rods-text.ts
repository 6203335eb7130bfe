/** The rods of a comparison for a terminal: for a rod shop a changed rod is scrap. */

import { counted } from "../checks/words.js";
import type { BottomState, Comparison, RodChange, RodComparison, RodState, RodVerdict } from "../compare/index.js";
import { countRemade, ROD_VERDICTS } from "../compare/index.js";
import type { SummaryEndPlate } from "../summary/model.js";
import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/index.js";
import { formatLength } from "../units/index.js";
import { styled, wrap } from "./ledger-text.js";

/** What a verdict on rods is called. */
export const ROD_LABELS: Readonly<Record<RodVerdict, string>> = {
  remade: "RODS REMADE",
  look: "RODS TO LOOK AT",
  gone: "RODS GONE",
  "set otherwise": "RODS SET OTHERWISE",
  new: "RODS NEW",
  quantity: "RODS, QUANTITY",
  unchanged: "RODS UNCHANGED",
};

/** What it means, in words that follow it. */
export const ROD_MEANINGS: Readonly<Record<RodVerdict, string>> = {
  remade: "other rods in NEW: those made for OLD are scrap unless they serve elsewhere",
  look: "a value is given on one side only: whether the rods made are those is not known",
  gone: "not in NEW",
  "set otherwise": "the same rods, set at another height",
  new: "not in OLD",
  quantity: "the same rods, more or fewer of them",
  unchanged: "the same rods",
};

const STYLES: Readonly<Record<RodVerdict, Parameters<typeof styled>[1]>> = {
  remade: "red",
  look: "yellow",
  gone: "yellow",
  "set otherwise": "yellow",
  new: "yellow",
  quantity: "cyan",
  unchanged: "green",
};

interface RodsTextOptions {
  /** Columns of the terminal. */
  readonly width: number;
  readonly color: boolean;
}

/** Groups that differ, worst first; lengths in NEW's unit. Empty where no rod differs or where rods cannot be compared. */
export function writeRodsText({ rods, new: { job } }: Comparison, { width, color }: RodsTextOptions): string {
  const shown = (rods ?? []).filter(({ verdict }) => verdict !== "unchanged");
  const start =
    greatestOf(
      shown.map((each) => rodHeadWords(each).length),
      0,
    ) + 4;
  const blocks = ROD_VERDICTS.flatMap((kind) => {
    const own = shown.filter(({ verdict }) => verdict === kind);
    if (own.length === 0) return [];
    const heading = `${styled(ROD_LABELS[kind], STYLES[kind], color)}  ${ROD_MEANINGS[kind]}`;
    return [[heading, ...own.flatMap((each) => rodLines(each, start, width, job.unit))].join("\n")];
  });
  return blocks.map((block) => `${block}\n\n`).join("");
}

function rodLines(compared: RodComparison, start: number, width: number, unit: Unit): string[] {
  const text = rodChangeTexts(compared, unit).join("; ");
  const [first = "", ...others] = wrap(text, Math.max(width - start, 20));
  return [
    `  ${rodHeadWords(compared).padEnd(start - 2)}${first}`.trimEnd(),
    ...others.map((line) => " ".repeat(start) + line),
  ];
}

/** What is otherwise in a group of rods. */
export function rodChangeTexts({ changes }: RodComparison, unit: Unit): readonly string[] {
  return changes.map((change) => changeWords(change, unit));
}

/** `B16 A, 4 rods 1-1/4`. */
export function rodHeadWords({ old, new: fresh }: RodComparison): string {
  const state: RodState | null = fresh ?? old;
  return state === null ? "" : `${state.base} ${state.group}, ${counted(state.total, "rod")} ${state.size}`;
}

const NAMES: Readonly<Record<Exclude<RodChange["what"], "bottom" | "quantity">, string>> = {
  diameter: "diameter",
  thread: "thread",
  grade: "grade",
  finish: "finish",
  projection: "projection",
  embedment: "embedment",
  length: "length",
  threadLength: "thread length",
  cutLength: "cut length",
  bottomThread: "thread at the lower end",
  threadClass: "thread class",
  threading: "threading",
  zincProcess: "zinc process",
  hardware: "nuts and washers",
};

function changeWords(change: RodChange, unit: Unit): string {
  switch (change.what) {
    case "quantity": {
      const more = change.to - change.from;
      return `quantity ${change.from} -> ${change.to}: ${more > 0 ? `${more} more to make` : `${-more} too many`}`;
    }
    case "bottom":
      return `bottom ${bottomWords(change.from, unit)} -> ${bottomWords(change.to, unit)}`;
    case "thread":
    case "grade":
    case "finish":
    case "threadClass":
    case "threading":
    case "zincProcess":
    case "hardware":
      return `${NAMES[change.what]} ${change.from ?? NOT_GIVEN} -> ${change.to ?? NOT_GIVEN}`;
    case "diameter":
    case "projection":
    case "embedment":
    case "length":
    case "threadLength":
    case "cutLength":
    case "bottomThread": {
      const [from, to] = [change.from, change.to].map((each) => (each === null ? NOT_GIVEN : formatLength(each, unit)));
      return `${NAMES[change.what]} ${from} -> ${to} ${unit}`;
    }
  }
}

const NOT_GIVEN = "not given";

function bottomWords(bottom: BottomState | null, unit: Unit): string {
  if (bottom === null) return NOT_GIVEN;
  const text = (length: number): string => formatLength(length, unit);
  switch (bottom.kind) {
    case "straight":
      return "straight";
    case "nut": {
      const washer = bottom.washer === undefined ? "" : ` with ${plateWords(bottom.washer, "washer", unit)}`;
      return `nut${washer}${tackWords(bottom)}`;
    }
    case "plate": {
      const nuts = bottom.nuts === undefined ? "" : `, ${bottom.nuts} nut${bottom.nuts === 1 ? "" : "s"}`;
      return `${plateWords(bottom, "plate", unit)}${nuts}${tackWords(bottom)}`;
    }
    case "hook": {
      const radius = bottom.radius === undefined ? "" : `, inside radius ${text(bottom.radius)}`;
      return `hook ${text(bottom.reach)}${radius} ${unit}`;
    }
    case "swedged":
      return `swedged ${text(bottom.length)} ${unit}`;
  }
}

function plateWords({ shape, size, thickness }: SummaryEndPlate, what: string, unit: Unit): string {
  return `${shape} ${what} ${formatLength(size, unit)} x ${formatLength(thickness, unit)} ${unit}`;
}

function tackWords({ tackWelded }: { readonly tackWelded?: true }): string {
  return tackWelded === true ? ", tack welded" : "";
}

/** One line of totals. */
export function rodTotals(comparison: Comparison): string {
  const { rods } = comparison;
  if (rods === null)
    return "Rods are not compared: a package that is older than the list of rods does not say which it has.";
  const sum = (verdict: RodVerdict): number =>
    rods.reduce((total, each) => total + (each.verdict === verdict ? ((each.new ?? each.old)?.total ?? 0) : 0), 0);
  const counts = ROD_VERDICTS.flatMap((kind) => {
    const count = kind === "remade" ? countRemade(comparison) : sum(kind);
    return count === 0 ? [] : [`${count} ${WORDS[kind]}`];
  });
  return `Rods: ${counts.length === 0 ? "none" : counts.join(", ")}.`;
}

const WORDS: Readonly<Record<RodVerdict, string>> = {
  remade: "to be made again",
  look: "to look at",
  gone: "gone",
  "set otherwise": "set otherwise",
  new: "new",
  quantity: "in another quantity",
  unchanged: "unchanged",
};
