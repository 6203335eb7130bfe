/** A comparison for a terminal: worst first, one block a template, those without a difference in one list. */
import { counted } from "../checks/words.js";
import type {
  Change,
  Comparison,
  HoleRef,
  HoleSize,
  TemplateComparison,
  TemplateState,
  VerdictKind,
} from "../compare/index.js";
import { VERDICTS } from "../compare/index.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import { greatestOf } from "../units/extremes.js";
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import { formatLength } from "../units/index.js";
import { rodTotals, writeRodsText } from "./compare-rods-text.js";
import { styled, wrap } from "./ledger-text.js";

/** How the terminal shows a comparison. */
export interface CompareTextOptions {
  /** Columns of the terminal. */
  readonly width: number;
  readonly color: boolean;
}

/** What a verdict is called. */
export const VERDICT_LABELS: Readonly<Record<VerdictKind, string>> = {
  recut: "RECUT",
  held: "HELD",
  gone: "GONE",
  "to cut": "TO CUT",
  new: "NEW",
  "marks only": "MARKS ONLY",
  "file only": "FILE ONLY",
  unchanged: "UNCHANGED",
};

/** What a verdict means, in words that follow it. */
export const VERDICT_MEANINGS: Readonly<Record<VerdictKind, string>> = {
  recut: "handed out to be cut in OLD, another plate in NEW: must be cut again",
  held: "held in NEW: nothing to cut by, and the plates that are cut already wait",
  gone: "not in NEW",
  "to cut": "held in OLD, cut by NEW for the first time",
  new: "not in OLD",
  "marks only": "the same plate with other scribed marks: no recut; the plates that are cut bear the old marks",
  "file only": "the same plate and marks, the file written otherwise: no recut",
  unchanged: "the same bytes to cut by",
};

const STYLES: Readonly<Record<VerdictKind, Parameters<typeof styled>[1]>> = {
  recut: "red",
  held: "red",
  gone: "yellow",
  "to cut": "yellow",
  new: "yellow",
  "marks only": "cyan",
  "file only": "dim",
  unchanged: "green",
};

/** The whole comparison; lengths in NEW's unit. */
export const writeCompareText = terminalText(compareText);

function compareText(comparison: Comparison, options: CompareTextOptions): string {
  const { templates } = comparison;
  const shown = templates.filter(({ verdict, changes }) => verdict !== "unchanged" || changes.length > 0);
  const quiet = templates.filter((each) => !shown.includes(each));
  const widths = columnWidths(shown);
  const blocks = VERDICTS.flatMap((kind) => {
    const own = shown.filter(({ verdict }) => verdict === kind);
    if (own.length === 0) return [];
    const heading = `${styled(VERDICT_LABELS[kind], STYLES[kind], options.color)}  ${VERDICT_MEANINGS[kind]}`;
    return [`${[heading, ...verdictLines(own, comparison, widths, options)].join("\n")}\n\n`];
  });
  const rods = writeRodsText(comparison, options);
  return [headingText(comparison, options), ...blocks, quietText(quiet, options), rods, totalsText(comparison)].join(
    "",
  );
}

/** Fewest templates with the same one line that are told together. */
const FEWEST_TOGETHER = 3;

function verdictLines(
  compared: readonly TemplateComparison[],
  comparison: Comparison,
  widths: Widths,
  options: CompareTextOptions,
): string[] {
  const byText = groupBy(compared, (each) => {
    const texts = changeTexts(each, comparison);
    return texts.length === 1 && each.verdict !== "recut" ? (texts[0] ?? "") : `apart ${stateOf(each).mark}`;
  });
  return [...byText].flatMap(([text, group]) =>
    group.length < FEWEST_TOGETHER
      ? group.flatMap((each) => templateLines(each, comparison, widths, options))
      : [`  ${text}:`, ...markLines(group, options.width, "    ")],
  );
}

function markLines(templates: readonly TemplateComparison[], width: number, indent: string): string[] {
  const marks = templates.map((each) => stateOf(each).mark).join(" ");
  return wrap(marks, width - indent.length).map((line) => indent + line);
}

function headingText({ old, new: fresh }: Comparison, { color }: CompareTextOptions): string {
  const side = ({ name, source, job }: Comparison["old"]): string => {
    const released = job.status === "released" ? "" : ", NOT RELEASED";
    return `job ${job.number} revision ${job.revision}, ${job.status}${released}  (${source} ${name})`;
  };
  return `${styled("OLD", "bold", color)}  ${side(old)}\n${styled("NEW", "bold", color)}  ${side(fresh)}\n\n`;
}

interface Widths {
  readonly mark: number;
  readonly base: number;
}

function columnWidths(templates: readonly TemplateComparison[]): Widths {
  const longest = (words: (state: TemplateState) => string): number =>
    greatestOf(
      templates.map((each) => words(stateOf(each)).length),
      0,
    );
  return { mark: longest(({ mark }) => mark), base: longest(baseWords) };
}

const stateOf = ({ old, new: fresh }: TemplateComparison): TemplateState => {
  const state = fresh ?? old;
  if (state === null) throw new TypeError("a template that is in neither side");
  return state;
};

const baseWords = ({ serves, quantity }: TemplateState): string =>
  `${serves.length > 1 ? "bases" : "base"} ${marksWords(serves)}, ${quantity} off`;

const MOST_MARKS = 8;

function marksWords(marks: readonly string[]): string {
  return listed(marks, MOST_MARKS);
}

function templateLines(
  compared: TemplateComparison,
  comparison: Comparison,
  widths: Widths,
  { width }: CompareTextOptions,
): string[] {
  const state = stateOf(compared);
  const start = `  ${state.mark.padEnd(widths.mark)}  ${baseWords(state).padEnd(widths.base)}  `;
  const lines = changeTexts(compared, comparison).flatMap((text) => wrap(text, width - start.length));
  const [first = "", ...others] = lines;
  return [`${start}${first}`.trimEnd(), ...others.map((line) => " ".repeat(start.length) + line)];
}

function quietText(quiet: readonly TemplateComparison[], { width, color }: CompareTextOptions): string {
  if (quiet.length === 0) return "";
  const heading = `${styled(VERDICT_LABELS.unchanged, STYLES.unchanged, color)}  ${VERDICT_MEANINGS.unchanged}`;
  return `${[heading, ...markLines(quiet, width, "  ")].join("\n")}\n\n`;
}

function totalsText(comparison: Comparison): string {
  const { templates } = comparison;
  const counts = VERDICTS.flatMap((kind) => {
    const count = templates.filter(({ verdict }) => verdict === kind).length;
    return count === 0 ? [] : [`${count} ${kind === "recut" ? "must be recut" : kind}`];
  });
  const recut = templates.filter(({ verdict }) => verdict === "recut");
  const plates = recut.reduce((sum, each) => sum + stateOf(each).quantity, 0);
  const more = plates === 0 ? "" : ` To cut again: ${counted(plates, "plate")}.`;
  return `${counted(templates.length, "template")}: ${counts.join(", ")}.${more}\n${rodTotals(comparison)}\n`;
}

/** What is otherwise in a template, and what that comes to; lengths in the unit of NEW. */
export function changeTexts(
  { changes, verdict, old, new: fresh }: TemplateComparison,
  comparison: Comparison,
): string[] {
  const { unit } = comparison.new.job;
  if (fresh === null)
    return [old?.delivered === true ? "may be cut already: of no use to NEW" : "was held in OLD: not cut"];
  if (old === null) return fresh.held ? ["held: nothing to cut by"] : [];
  const texts = [...moveTexts(changes, unit), ...changes.flatMap((change) => changeText(change, comparison))];
  return verdict === "held" && !fresh.held ? [...texts, "no file to cut by in NEW"] : texts;
}

/** Holes that moved alike are told together. */
function moveTexts(changes: readonly Change[], unit: Unit): string[] {
  const moved = changes.flatMap((change) => (change.what === "hole-moved" ? [change] : []));
  const groups = groupBy(moved, ({ from, to }) =>
    [signed(to.x - from.x, unit), signed(to.y - from.y, unit)].join(", y "),
  );
  return [...groups].map(([way, moves]) => {
    const far = formatLength(moves[0]?.distance ?? 0, unit);
    return `${holesWords(moves)} moved ${far} ${unit} (x ${way})`;
  });
}

function holesWords(holes: readonly HoleRef[]): string {
  const tags = holes.map(({ tag, oldTag }) => (tag === oldTag ? tag : `${tag} (was ${oldTag})`)).join(" ");
  return `hole${holes.length === 1 ? "" : "s"} ${tags}`;
}

function signed(length: number, unit: Unit): string {
  const text = formatLength(length, unit);
  return length > 0 && text !== "0" ? `+${text}` : text;
}

function changeText(change: Change, { old, new: fresh }: Comparison): string[] {
  const { unit } = fresh.job;
  const text = (length: number): string => formatLength(length, unit);
  switch (change.what) {
    case "hole-moved":
      return [];
    case "hole-size":
      return [`hole ${change.tag} ${sizeWords(change.from, unit)} -> ${sizeWords(change.to, unit)} ${unit}`];
    case "hole-role":
      return [`hole ${change.tag} is a ${change.to} hole, was a ${change.from} hole`];
    case "hole-made":
      return [`hole ${change.tag} is ${change.to === "drill" ? "punched now, was cut" : "cut now, was punched"}`];
    case "rod-size":
      return [`hole ${change.tag} is for a rod ${rodWords(change.to, unit)}, was ${rodWords(change.from, unit)}`];
    case "tag":
      return change.tag === change.oldTag ? [] : [`hole ${change.tag} was ${change.oldTag}`];
    case "hole-added":
    case "hole-gone": {
      const way = change.what === "hole-added" ? "added at" : "gone from";
      const at = `x ${text(change.at.x)}, y ${text(change.at.y)}`;
      return [`hole ${change.tag} ${way} ${at}: ${sizeWords(change.size, unit)} ${unit}`];
    }
    case "outline":
      return [outlineText(change, unit)];
    case "thickness":
      return [`thickness ${text(change.from)} -> ${text(change.to)} ${unit}`];
    case "material":
      return [`material ${change.from} -> ${change.to}`];
    case "grade":
      return [`material grade ${change.from} -> ${change.to}`];
    case "grade-said":
      return [`material grade ${change.from ?? "not given"} -> ${change.to ?? "not given"}`];
    case "working-point":
      return [
        `the plate lies x ${signed(change.dx, unit)}, y ${signed(change.dy, unit)} ${unit} from where it lay about the working point`,
      ];
    case "marks":
      return [scribedText(old.job.revision, fresh.job.revision)];
    case "file":
      return [change.drawn ? "file written otherwise (unit, layers, origin)" : WITHOUT_CUT_FILES];
    case "held":
      return [change.to ? "held now" : "no longer held"];
    case "quantity":
      return [quantityText(change.from, change.to)];
    case "bases":
      return [`bases ${change.from} -> ${change.to}`];
    case "template-mark":
      return [`template mark ${change.from} -> ${change.to}`];
    case "base-mark":
      return [`base mark ${change.from} -> ${change.to}`];
    case "merged":
      return [`one template now: it was ${marksWords(change.from)}, the same plate`];
    case "split":
      return [`a template of its own now: it was ${change.from}, which served others too`];
    case "serves":
      return [`serves ${marksWords(change.to)}; served ${marksWords(change.from)}`];
  }
}

/** Other bytes of a template of which no cut file of both sides is there. */
const WITHOUT_CUT_FILES =
  "written otherwise; without a cut file of both sides the outline is compared by size, area and perimeter only";

function scribedText(from: string, to: string): string {
  return from === to ? "scribed marks differ" : `scribed marks differ; revision ${from} -> ${to}`;
}

function quantityText(from: number, to: number): string {
  const rest = to > from ? `${to - from} more to cut` : `${from - to} too many`;
  return `quantity ${from} -> ${to}: ${rest}`;
}

function rodWords(rod: number | null, unit: Unit): string {
  return rod === null ? "none" : `${formatLength(rod, unit)} ${unit}`;
}

function sizeWords(size: HoleSize, unit: Unit): string {
  const text = (length: number): string => formatLength(length, unit);
  if (size.kind === "circle") return text(size.diameter);
  return `${text(size.width)} x ${text(size.height)} r ${text(size.radius)}`;
}

function outlineText({ from, to }: Extract<Change, { what: "outline" }>, unit: Unit): string {
  const [before, after] = [overallWords(from, unit), overallWords(to, unit)];
  if (before !== after) return `outline ${before} -> ${after} ${unit}`;
  const [dx, dy] = [to.extent[0] - from.extent[0], to.extent[1] - from.extent[1]];
  const [wayX, wayY] = [signed(dx, unit), signed(dy, unit)];
  if (wayX === "0" && wayY === "0") return `outline ${after} ${unit}: the same size, other corners or sides`;
  return `outline ${after} ${unit} moved x ${wayX}, y ${wayY}`;
}

function overallWords({ kind, extent: [x0, y0, x1, y1] }: TemplateState["outline"], unit: Unit): string {
  const [x, y] = [formatLength(x1 - x0, unit), formatLength(y1 - y0, unit)];
  return kind === "circle" ? `round ${x}` : `${x} x ${y}`;
}
