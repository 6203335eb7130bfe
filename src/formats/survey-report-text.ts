/** A survey's report as text to be pasted into a message: lines of at most 72 characters, no columns that a proportional font breaks. */
import { readable } from "../diagnostics/printable.js";
import type { ReportItem, SurveyReport } from "../survey/index.js";
import { wrap } from "./ledger-text.js";

const WIDTH = 72;

/** Title, then every part under its heading. */
export function writeSurveyReportText({ title, parts }: SurveyReport, version: string): string {
  const lines = [
    ...wrap(title, WIDTH),
    ...parts.flatMap(({ heading, items }) => ["", ...wrap(heading, WIDTH), ...items.flatMap(itemLines)]),
    "",
    `rodplate ${version}`,
  ];
  return `${lines.map(readable).join("\n")}\n`;
}

function itemLines({ kind, words }: ReportItem): readonly string[] {
  const text = words.replace(/\s+/g, " ");
  if (kind === "paragraph") return wrap(text, WIDTH);
  return wrap(text, WIDTH - 2).map((line, i) => `${i === 0 ? "- " : "  "}${line}`);
}
