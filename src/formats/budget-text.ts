/** Budgets for a terminal: a table, worst first, then for each base what it rests on and what would meet its target. */
import type { BaseBudget, ReckonedBase } from "../budget/index.js";
import {
  askedForm,
  askedShare,
  freedomWords,
  governsWords,
  shareWords,
  spareWords,
  specWords,
  targetWords,
  worstWords,
} from "../budget/index.js";
import { terminalText } from "../diagnostics/printable.js";
import { greatestOf } from "../units/extremes.js";
import { formatLength, formatWithUnit } from "../units/index.js";
import type { LedgerTextOptions } from "./ledger-text.js";
import { styled } from "./ledger-text.js";

/** Headings of the table of bases. */
export const BUDGET_HEADINGS = ["base", "qty", "drops on", "+/-", "worst case", "rss", "governs"] as const;

/** The table of all bases. `budgets` are worst first. */
export const writeBudgetTable = terminalText(budgetTable);

function budgetTable(budgets: readonly BaseBudget[], { color }: Pick<LedgerTextOptions, "color">): string {
  const rows = budgets.map(budgetCells);
  const widths = BUDGET_HEADINGS.map((heading, i) =>
    greatestOf(
      rows.map((row) => row[i]?.length ?? 0),
      heading.length,
    ),
  );
  const lineOf = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => (i >= 1 && i <= 5 ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join("  ")
      .trimEnd();
  const body = rows.map((row, i) => {
    const budget = budgets[i];
    return styled(lineOf(row), budget === undefined ? "dim" : styleOf(budget), color);
  });
  return `${[styled(lineOf(BUDGET_HEADINGS), "bold", color), ...body].join("\n")}\n\n`;
}

function styleOf(budget: BaseBudget): Parameters<typeof styled>[1] {
  if (budget.kind === "not-checked") return "dim";
  if (budget.target !== null && !budget.target.met) return "red";
  return askedForm(budget.worst, budget.spec.plate).holds ? "green" : "yellow";
}

/** A base's line in the table. */
export function budgetCells(budget: BaseBudget): readonly string[] {
  const { mark, quantity, unit } = budget;
  if (budget.kind === "not-checked") return [mark, String(quantity), "not checked", "", "", "", budget.why.join("; ")];
  const { worst, rss, spec, probability } = budget;
  return [
    mark,
    String(quantity),
    shareWords(askedShare(budget)),
    shareWords(probability.standardError),
    spareWords(askedForm(worst, spec.plate).spare, unit),
    spareWords(askedForm(rss, spec.plate).spare, unit),
    governsWords(budget),
  ];
}

/** What a base's figures rest on. */
export const writeBudgetBase = terminalText(budgetBase);

function budgetBase(budget: ReckonedBase, { color }: Pick<LedgerTextOptions, "color">): string {
  const lines = budgetLines(budget);
  return `${styled(budget.mark, "bold", color)}\n${lines.map((line) => `  ${line}\n`).join("")}\n`;
}

/** The same, a line each. */
export function budgetLines(budget: ReckonedBase): readonly string[] {
  const { spec, probability, unit, target, notes } = budget;
  const { held, shifted, free, samples } = probability;
  const shares = `fixed in place ${shareWords(held)}, free to shift ${shareWords(shifted)}, to shift and turn ${shareWords(free)}`;
  const certain = askedForm(budget.worst, spec.plate).holds ? "; by the worst case it is certain" : "";
  return [
    `plate ${freedomWords(spec.plate)}; ${shares}; ${samples} trials, seed ${spec.seed}${certain}`,
    `worst case ${worstWords(budget)}`,
    ...termLines(budget),
    specWords(spec),
    ...(target === null ? [] : targetWords(target, unit)),
    ...notes,
  ];
}

function termLines({ rods, unit }: ReckonedBase): readonly string[] {
  const lines = rods.flatMap(({ size, terms }) =>
    terms.map(({ name, twice, commonTwice, from }) => {
      const common = commonTwice === 0 ? "" : `, of it common ${formatLength(commonTwice / 2, unit)}`;
      return `rod ${size}: ${name} ${formatWithUnit((twice + commonTwice) / 2, unit)}${common} (${from})`;
    }),
  );
  return [...new Set(lines)];
}
