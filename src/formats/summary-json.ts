/**
 * `summary.json`, schema 1, in three pieces so that a job of any size is written base by base: head, one piece a base,
 * tail. Key order is fixed; every hole, group of rods, check and file stands on a line of its own.
 */
import { printableJson } from "../diagnostics/printable.js";
import type { Summary, SummaryBase } from "../summary/model.js";
import { SEALED } from "./seal.js";

/** Up to and including the opening bracket of `bases`. */
export function writeSummaryHead(job: Summary["job"]): string {
  return `{\n  "schema": 1,\n  ${SEALED},\n  "job": ${printableJson(job)},\n  "bases": [`;
}

/** One base; `first` says whether it needs a comma before it. */
export function writeSummaryBase(base: SummaryBase, first: boolean): string {
  const { mark, quantity, held, kind, template, rods, checks, files } = base;
  const { holes, ...plate } = template;
  const start = printableJson({ mark, quantity, held, ...(kind === undefined ? {} : { kind }) }).slice(0, -1);
  const plateStart = printableJson(plate).slice(0, -1);
  return (
    `${first ? "\n" : ",\n"}    ${start},\n      "template": ${plateStart},\n        "holes": ${list(holes, 10)} },\n` +
    `      "rods": ${list(rods, 8)},\n      "checks": ${list(checks, 8)},\n      "files": ${list(files, 8)} }`
  );
}

/** What stands beside the bases. */
export type SummaryTail = Pick<Summary, "checks" | "layoutHeld" | "answersNotUsed" | "questions" | "files">;

/** From the closing bracket of `bases` to the seal: the job's own checks, the answers that answer nothing, questions, and files. */
export function writeSummaryTail({ checks, layoutHeld, answersNotUsed, questions, files }: SummaryTail): string {
  const held = `"layoutHeld": ${list(layoutHeld, 4)}`;
  const said = `"checks": ${list(checks, 4)},\n  ${held},\n  "answersNotUsed": ${list(answersNotUsed, 4)},\n  "questions": ${list(questions, 4)}`;
  return `\n  ],\n  ${said},\n  "files": ${list(files, 4)}`;
}

function list(items: readonly unknown[], indent: number): string {
  if (items.length === 0) return "[]";
  const space = " ".repeat(indent);
  return `[\n${items.map((item) => space + printableJson(item)).join(",\n")}\n${" ".repeat(indent - 2)}]`;
}
