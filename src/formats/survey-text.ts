/** A survey for a terminal: a table, worst first; then what is behind each group that does not plainly fit. */
import { worstFirst } from "../checks/run.js";
import { terminalText } from "../diagnostics/printable.js";
import type { GroupSurvey, Survey, Verdict } from "../survey/index.js";
import {
  governsWords,
  motionWords,
  placingWords,
  remedyRows,
  remedyWords,
  rounded,
  termsWords,
} from "../survey/index.js";
import { SURVEY_UNIT_NAMES } from "../units/coordinate.js";
import { greatestOf } from "../units/extremes.js";
import { formatWithUnit } from "../units/index.js";
import type { LedgerTextOptions } from "./ledger-text.js";
import { styled, wrap, writeLedgerRowsText } from "./ledger-text.js";

type Style = Parameters<typeof styled>[1];

const STYLES: Readonly<Record<Verdict, Style>> = {
  "does not fit": "red",
  "within measuring uncertainty": "yellow",
  "not-checked": "dim",
  fits: "green",
};

/** Headings of the table of groups. */
export const SURVEY_HEADINGS = [
  "base",
  "at",
  "drops on",
  "placing",
  "spare",
  "shift x",
  "shift y",
  "turn",
  "farthest rod",
] as const;
const RIGHT = new Set([4, 5, 6, 7]);

/** The table of all groups. */
export const writeSurveyTable = terminalText(surveyTable);

function surveyTable({ groups, unit }: Survey, { color }: Pick<LedgerTextOptions, "color">): string {
  const rows = groups.map((group) => surveyCells(group, unit));
  const widths = SURVEY_HEADINGS.map((heading, i) =>
    greatestOf(
      rows.map((row) => row[i]?.length ?? 0),
      heading.length,
    ),
  );
  const lineOf = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => (RIGHT.has(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join("  ")
      .trimEnd();
  const body = rows.map((row, i) => styled(lineOf(row), styleOf(groups[i]), color));
  return `${[styled(lineOf(SURVEY_HEADINGS), "bold", color), ...body].join("\n")}\n\n`;
}

/** The worse of both verdicts. */
function styleOf(group: GroupSurvey | undefined): Style {
  return group?.placing.verdict === "outside" ? "red" : STYLES[group?.verdict ?? "fits"];
}

/** A group's line in the table. */
export function surveyCells(
  { mark, at, verdict, placing, best, fit, rods }: GroupSurvey,
  unit: Survey["unit"],
): readonly string[] {
  const length = (value: number): string => formatWithUnit(rounded(value, unit), unit);
  const farthest = rods.reduce((far, rod) => (rod.radial > far.radial ? rod : far), rods[0] ?? NO_ROD);
  return [
    mark,
    at,
    verdict === "not-checked" ? "not checked" : verdict,
    placingWords(placing),
    best === null ? "" : length(best.spare),
    length(fit.x),
    length(fit.y),
    fit.turn === null ? "" : `${(Math.round(fit.turn * 1000) / 1000 || 0).toFixed(3)}\u00B0`,
    `${farthest.tag} ${length(farthest.radial)}`,
  ];
}

const NO_ROD = { tag: "", radial: 0 };

/** What a group's answers rest on; both answers, and what would let the plate drop on. */
export const writeSurveyGroup = terminalText(surveyGroup);

function surveyGroup(group: GroupSurvey, { unit }: Survey, options: LedgerTextOptions): string {
  const { mark, at, verdict, placing, rows } = group;
  const wrapped = surveyGroupLines(group, unit).flatMap((line) => {
    const indent = /^ */.exec(line)?.[0] ?? "";
    return wrap(line.trim(), options.width - 4 - indent.length).map(
      (part, i) => `${i === 0 ? "  " : "    "}${indent}${part}`,
    );
  });
  const answers = `${verdict}; placing ${placingWords(placing)}`;
  const head = `${styled(`${mark} ${at}`, "bold", options.color)}  ${styled(answers, styleOf(group), options.color)}`;
  return `${[head, ...wrapped].join("\n")}\n${writeLedgerRowsText("  Checks", worstFirst(rows), options)}`;
}

/** What a group's answers rest on, and what would let its plate drop on; what belongs to the line before is indented. */
export function surveyGroupLines(
  { why, best, fit, spareOnLine, remedies }: GroupSurvey,
  unit: Survey["unit"],
): readonly string[] {
  const length = (value: number): string => formatWithUnit(rounded(value, unit), unit);
  const governs = best === null ? "" : governsWords(best);
  return [
    ...(best === null
      ? []
      : [
          `in its best position ${spareText(best.spare, length)}; governed by ${governs}; plate ${motionWords(best.motion, unit)}`,
        ]),
    `best fit of the rods: ${motionWords(fit, unit)}`,
    ...(spareOnLine === null ? [] : [`standing on line and unturned: ${spareText(spareOnLine, length)}`]),
    ...why,
    ...remedies.flatMap((remedy) => [
      `would let it drop on, engineer to decide: ${remedyWords(remedy, unit)}`,
      ...remedyRows(remedy, unit).map((words) => `    ${words}`),
    ]),
  ];
}

function spareText(spare: number, length: (value: number) => string): string {
  return spare < 0 ? `it is short by ${length(-spare)}` : `${length(spare)} to spare`;
}

/** How the file was read, and what is stated of the survey. */
export const writeSurveyHead = terminalText(surveyHead);

function surveyHead(survey: Survey, { width }: Pick<LedgerTextOptions, "width">): string {
  return `${surveyHeadLines(survey)
    .flatMap((line) => wrap(line, width))
    .join("\n")}\n\n`;
}

/** The same, a sentence each. */
export function surveyHeadLines({ file, system, terms, unit }: Survey): readonly string[] {
  const read = `${file.file}: ${file.order.value} (${file.order.by}), ${SURVEY_UNIT_NAMES[file.unit.value]} (${file.unit.by}), ${file.headed ? "with" : "without"} a heading, ${system} coordinates (by nearness).`;
  const within = `A point without a known name is a rod's when that rod alone lies within ${formatWithUnit(terms.within, unit)}.`;
  return [read, ...termsWords(terms, unit), within];
}

/** Points that are no rod's. */
export const writeSurveyRest = terminalText(surveyRest);

function surveyRest({ unmatched, others, notSurveyed, unit }: Survey, { color, width }: LedgerTextOptions): string {
  const parts = surveyRestParts({ unmatched, others, notSurveyed, unit });
  return parts
    .map(
      ([title, items]) =>
        `${styled(title, "bold", color)}\n${wrapItems(title === "Not surveyed" ? [items.join(", ")] : items, width)}\n`,
    )
    .join("");
}

/** Points that are no rod's, and groups without points: titles with what stands under them. */
export function surveyRestParts({
  unmatched,
  others,
  notSurveyed,
  unit,
}: Pick<Survey, "unmatched" | "others" | "notSurveyed" | "unit">): readonly (readonly [string, readonly string[]])[] {
  const length = (value: number): string => formatWithUnit(rounded(value, unit), unit);
  const control = others.filter(({ kind }) => kind === "control");
  const parts: readonly (readonly [string, readonly string[]])[] = [
    [
      "Unmatched points",
      unmatched.map(({ name, line, why }) => `line ${line}, ${name === "" ? "no name" : name}: ${why}`),
    ],
    [
      "Control points",
      control.map(({ name, north, east }) => `${name}: off by north ${length(north)}, east ${length(east)}`),
    ],
    ["Not surveyed", notSurveyed.map(({ mark, at }) => `${mark} ${at}`)],
  ];
  return parts.filter(([, items]) => items.length > 0);
}

function wrapItems(items: readonly string[], width: number): string {
  return items
    .flatMap((item) => wrap(item, width - 4).map((part, i) => `${i === 0 ? "  " : "    "}${part}\n`))
    .join("");
}
