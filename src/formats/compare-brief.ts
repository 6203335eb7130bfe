/** A comparison in a few lines, as `make` shows it of the package before: what must be cut or made again. */

import { counted } from "../checks/words.js";
import type { Comparison, RodComparison, TemplateComparison, VerdictKind } from "../compare/index.js";
import { countRecuts, countRemade } from "../compare/index.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import { styled, wrap } from "./ledger-text.js";

/** How the lines are written. */
export interface CompareBriefOptions {
  readonly width: number;
  readonly color: boolean;
  /** Where the package before is kept now, as the user would name it; null: it is not. */
  readonly kept: string | null;
}

/** Ends with a line break. Loud where something changed and the revision did not. */
export const writeCompareBrief = terminalText(compareBrief);

function compareBrief(comparison: Comparison, options: CompareBriefOptions): string {
  const { old, new: fresh } = comparison;
  const isBad = countRecuts(comparison) + countRemade(comparison) > 0;
  const isSilent = isBad && old.job.revision === fresh.job.revision && old.job.number === fresh.job.number;
  const heading = isSilent ? stillWords(fresh.job.revision) : headingWords(comparison, options);
  const lines = [...templateLines(comparison), ...rodLines(comparison)];
  const told = lines.length === 0 ? ["nothing that was cut must be cut again, and no rods made again"] : lines;
  const [first = "", ...others] = wrap(heading, options.width);
  return [
    styled(first, isBad ? "red" : "bold", options.color),
    ...others.map((line) => styled(line, isBad ? "red" : "bold", options.color)),
    ...told.flatMap((line) => wrap(line, options.width - 4).map((part, at) => `${at === 0 ? "  " : "    "}${part}`)),
    ...(options.kept === null || lines.length === 0 ? [] : [`  more: rodplate compare ${options.kept} ${fresh.name}`]),
    "",
  ].join("\n");
}

function stillWords(revision: string): string {
  return `THE REVISION IS STILL ${revision}, AND THIS PACKAGE IS NOT WHAT WAS CUT OR MADE BY THE ONE BEFORE IT. Give it another revision, or call back what was handed out:`;
}

function headingWords({ old, new: fresh }: Comparison, { kept }: CompareBriefOptions): string {
  const job = old.job.number === fresh.job.number ? "" : `job ${old.job.number} `;
  return `Against ${job}revision ${old.job.revision}, ${kept === null ? "which it replaces" : `kept in ${kept}`}:`;
}

const SHOWN: readonly (readonly [VerdictKind, string])[] = [
  ["recut", "CUT AGAIN"],
  ["held", "held now, plates that are cut wait"],
  ["gone", "gone, plates that are cut are of no use to it"],
  ["to cut", "held before, to be cut now"],
  ["new", "new, to be cut"],
];

function templateLines({ templates }: Comparison): readonly string[] {
  const lines = SHOWN.flatMap(([kind, words]) => {
    const own = templates.filter(({ verdict }) => verdict === kind);
    if (own.length === 0) return [];
    const plates = own.reduce((sum, each) => sum + (each.new ?? each.old ?? NO_PLATE).quantity, 0);
    return [`${words}: ${own.map(markOf).join(", ")} (${counted(plates, "plate")})`];
  });
  const regrouped = templates.flatMap(regroupWords);
  const numbers = templates.filter(({ verdict }) => verdict !== "recut").flatMap(quantityWords);
  return [
    ...lines,
    ...regrouped,
    ...(numbers.length === 0 ? [] : [`plates in another quantity: ${numbers.join(", ")}`]),
  ];
}

const MOST_MARKS = 8;

/** The plates that are cut serve, but bear the marks that they had. */
function regroupWords({ new: fresh, changes }: TemplateComparison): readonly string[] {
  return changes.flatMap((change): string[] => {
    if (change.what === "merged")
      return [
        `same plate, other mark: ${listed(change.from, MOST_MARKS)} are ${fresh?.mark ?? ""} now, for ${listed(change.bases, MOST_MARKS)}`,
      ];
    if (change.what === "split")
      return [
        `same plate, other mark: ${fresh?.mark ?? ""} for ${listed(change.bases, MOST_MARKS)}, was ${change.from}`,
      ];
    return [];
  });
}

const NO_PLATE = { quantity: 0 };

const markOf = (each: TemplateComparison): string => (each.new ?? each.old)?.mark ?? "";

function quantityWords(each: TemplateComparison): readonly string[] {
  return each.changes.flatMap((change) =>
    change.what === "quantity" ? [`${markOf(each)} ${change.from} -> ${change.to}`] : [],
  );
}

function rodLines({ rods }: Comparison): readonly string[] {
  if (rods === null) return ["rods are not compared: the package before does not list them"];
  const line = (words: string, verdict: RodComparison["verdict"]): readonly string[] => {
    const own = rods.filter((each) => each.verdict === verdict);
    return own.length === 0 ? [] : [`${words}: ${own.map(rodWords).join(", ")}`];
  };
  return [
    ...line("RODS MADE AGAIN", "remade"),
    ...line("rods to look at, a value is given now that was not, or no more", "look"),
    ...line("rods gone", "gone"),
    ...line("rods set at another height", "set otherwise"),
    ...line("rods new", "new"),
    ...line("rods in another quantity", "quantity"),
  ];
}

function rodWords({ old, new: fresh, changes }: RodComparison): string {
  const state = fresh ?? old;
  if (state === null) return "";
  const names = changes.map(({ what }) => (what === "threadLength" ? "thread length" : what));
  const why = names.length === 0 ? "" : `: ${names.join(", ")}`;
  return `${state.base} ${state.group} (${counted(state.total, "rod")}${why})`;
}
