/** The part of a job file that is a person's, as it is written the first time: known values, and lines to fill in. */
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import type { Unit } from "../units/length.js";
import type { Answer } from "./answer-lines.js";
import { answersOf } from "./answer-lines.js";
import { wrap } from "./ledger-text.js";
import type { ReadAsQuestion } from "./read-as-form.js";
import { yamlNode, yamlScalar } from "./source-yaml.js";

/** What is known of a job that is read from a sheet. */
export interface JobHeadRequest {
  /** The job file as its user names it. */
  readonly name: string;
  /** Path of the JSON Schema for editors, from the job file's folder. */
  readonly schema: string | null;
  /** The sheet's file as the job file names it; sheet and table are "" where none has to be named. */
  readonly file: string;
  readonly sheet: string;
  readonly table: string;
  /** null where it is asked. */
  readonly unit: Unit | null;
  /** What says so. */
  readonly unitBecause: string;
  readonly questions: readonly ReadAsQuestion[];
}

const COMMENT_WIDTH = 110;

/** Ends with an empty line. Signs that cannot be seen stand in comments as escapes. */
export function writeJobHead(request: JobHeadRequest): string {
  const asked = sortQuestions(request.questions, "# ");
  const { unit } = request;
  return [
    ...opening(request),
    "job:",
    told("  number:", "fill in: printed on every sheet"),
    "  title:",
    "  revision:",
    told("  status: preliminary", "preliminary | for approval | released; only a released job may be cut"),
    "",
    ...(unit === null ? [] : [unitLine(request)]),
    ...(asked.get("units") ?? []),
    told(`rules: ${unit === "mm" ? "metric" : "us"}`, "us | metric"),
    told(
      `shop: ${unit === "mm" ? "plasma-metric" : "plasma"}`,
      "how plates are cut: a file of templates/shops, or a path",
    ),
    "",
    "readFrom:",
    `  file: ${yamlScalar(request.file)}`,
    ...(request.sheet === "" ? [] : [`  sheet: ${yamlScalar(request.sheet)}`]),
    ...(request.table === "" ? [] : [`  table: ${yamlScalar(request.table)}`]),
    ...(asked.get("readFrom") ?? []),
    ...[...asked].filter(([key]) => key !== "units" && key !== "readFrom").flatMap(([, lines]) => ["", ...lines]),
    "",
    "",
  ].join("\n");
}

function opening({ name, schema, file }: JobHeadRequest): readonly string[] {
  const said = [
    `What rodplate read understood of ${file}. Down to the line of signs # this file is yours: fill in, answer, add what the sheet`,
    "does not say (grid, placements, defaults, answers of the engineer). It is kept when the sheet is read again:",
  ].join(" ");
  return [
    ...(schema === null ? [] : [`# yaml-language-server: $schema=${shown(schema)}`, "#"]),
    ...comment(shown(said), ""),
    `#   rodplate read ${shown(name)} --out ${shown(name)}`,
    "",
  ];
}

function unitLine({ unit, unitBecause }: JobHeadRequest): string {
  return told(`units: ${unit}`, `of every number that carries none: ${shown(unitBecause)}`);
}

const COMMENTS_FROM = 30;

function told(line: string, words: string): string {
  return `${line.padEnd(COMMENTS_FROM)} # ${words}`;
}

const shown = terminalText((text: string): string => text);

function comment(text: string, indent: string): readonly string[] {
  return wrap(text, COMMENT_WIDTH - indent.length).map((line) => `${indent}# ${line}`);
}

/** Lines that answer, each behind `sign`, under the keys that hold them, by the key at the top. */
function sortQuestions(questions: readonly ReadAsQuestion[], sign: string): ReadonlyMap<string, readonly string[]> {
  const tree: Branch = { below: new Map(), lines: [] };
  for (const [index, question] of questions.entries()) place(tree, question, index + 1, sign);
  const tops = new Map<string, readonly string[]>();
  for (const [key, branch] of tree.below) {
    const lines = branchLines(branch, "  ");
    tops.set(key, key === "readFrom" ? lines : [`${yamlScalar(key)}:`, ...lines]);
  }
  if (tree.lines.length > 0) tops.set("units", tree.lines);
  return tops;
}

interface Branch {
  readonly below: Map<string, Branch>;
  readonly lines: string[];
}

/** Under the key that holds the first of its answers; a question of other answers keeps them as remarks. */
function place(tree: Branch, { cells, text, choices }: ReadAsQuestion, number: number, sign: string): void {
  const first = choices.flatMap(({ line }) => answersOf(line))[0];
  const holders = first?.path.slice(0, -1) ?? ["readFrom"];
  const indent = "  ".repeat(holders.length);
  const branch = holders.reduce<Branch>((at, key) => {
    const next: Branch = at.below.get(key) ?? { below: new Map(), lines: [] };
    at.below.set(key, next);
    return next;
  }, tree);
  const lines = [
    ...comment(questionWords(number, text, cells), indent),
    ...choices.flatMap((choice) => choiceLines(choice, holders, indent, sign)),
  ];
  for (const each of lines) branch.lines.push(each);
}

const MOST_CELLS = 12;

function questionWords(number: number, text: string, cells: readonly string[]): string {
  const bare = cells.map((cell) => cell.slice(cell.lastIndexOf("!") + 1));
  return shown(`${number}. ${text}${cells.length === 0 ? "" : ` (${listed(bare, MOST_CELLS)})`}`);
}

function choiceLines(
  { line, means }: Choice,
  holders: readonly string[],
  indent: string,
  sign: string,
): readonly string[] {
  const said = meaning(means);
  const answers = answersOf(line);
  const isHere = ({ path }: Answer): boolean => path.slice(0, -1).join("\n") === holders.join("\n");
  if (answers.length === 0 || !answers.every(isHere))
    return [`${indent}# or: ${shown(line.replace(/\s+/g, " "))}${said}`];
  return answers.map((answer, index) => `${indent}${sign}${keyAndValue(answer)}${index === 0 ? said : ""}`);
}

type Choice = ReadAsQuestion["choices"][number];

function meaning(means: string): string {
  return means === "" ? "" : `   # ${shown(means.replace(/\s+/g, " "))}`;
}

function keyAndValue({ path, value }: Answer): string {
  return `${yamlScalar(path.at(-1) ?? "")}:${value === null ? "" : ` ${yamlNode(value)}`}`;
}

function branchLines({ below, lines }: Branch, indent: string): readonly string[] {
  const branches = [...below].flatMap(([key, branch]) => [
    `${indent}${yamlScalar(key)}:`,
    ...branchLines(branch, `${indent}  `),
  ]);
  return [...lines, ...branches];
}

/** The same questions as remarks below the marker, where a person's part is kept as it is: to be copied above, under the same keys. */
export function writeQuestionRemarks(questions: readonly ReadAsQuestion[]): string {
  const asked = sortQuestions(questions, "");
  const blocks = [...asked].flatMap(([key, lines]) => (key === "readFrom" ? ["readFrom:", ...lines] : lines));
  return blocks.map((line) => `#   ${line}\n`).join("");
}
