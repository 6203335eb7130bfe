/** Cells with several readings: the rest of the row may prove one; else they are asked about. */
import { parseCount } from "../units/index.js";
import { scalar } from "./grammar/index.js";
import type { PossibleReading } from "./model.js";
import type { Questions } from "./questions.js";
import { isSameValue } from "./same-value.js";
import type { OpenChoice, Taken } from "./sheet-cell.js";

/** What is taken of the choices: the readings that the row proves, stand-ins for those that are asked. */
export function settleChoices(
  open: readonly OpenChoice[],
  taken: readonly Taken[],
  questions: Questions,
): readonly Taken[] {
  if (open.length === 0) return [];
  const isOfMarks = ({ from: { column } }: OpenChoice) => column.role.kind === "value" && column.role.key === "mark";
  const marks = open.filter(isOfMarks).flatMap((choice) => asked(choice, choice.readings, questions));
  return [
    ...marks,
    ...settleOthers(
      open.filter((choice) => !isOfMarks(choice)),
      taken,
      questions,
    ),
  ];
}

/** No other cell says which bases a row stands for; what else it gives may be proved. */
function settleOthers(open: readonly OpenChoice[], taken: readonly Taken[], questions: Questions): readonly Taken[] {
  const possible = combinations(open.map(({ readings }) => readings)).filter((chosen) => agree(chosen, taken));
  return open.flatMap((choice, index) => {
    const left = choice.readings.filter((reading) => possible.some((chosen) => chosen[index] === reading));
    const [only, ...others] = left;
    if (only !== undefined && others.length === 0) return proved(choice, only);
    return asked(choice, left.length === 0 ? choice.readings : left, questions);
  });
}

const MOST_COMBINATIONS = 256;

/** One reading of each, in every way; of very many, none are ruled out. */
function combinations(choices: readonly (readonly PossibleReading[])[]): readonly (readonly PossibleReading[])[] {
  return choices.reduce<readonly (readonly PossibleReading[])[]>(
    (ways, readings) =>
      ways.length * readings.length > MOST_COMBINATIONS
        ? []
        : ways.flatMap((way) => readings.map((reading) => [...way, reading])),
    [[]],
  );
}

/** Readings that say the same of a key wherever it is said, and make as many rods as are written; several marks are several bases. */
function agree(chosen: readonly PossibleReading[], taken: readonly Taken[]): boolean {
  const all = [...taken.filter(({ origin }) => origin !== "asked"), ...chosen.flatMap(({ parts }) => parts)];
  const parts = all.filter(({ key }) => key !== "mark");
  const isOne = parts.every(({ key, node }, index) =>
    parts.slice(0, index).every((other) => other.key !== key || isSameValue(other.node, node)),
  );
  return isOne && isCountKept(new Map(parts.map(({ key, node }) => [key, node.kind === "scalar" ? node.text : ""])));
}

/** True unless the number of rods is written and lines in x and y give another. */
function isCountKept(texts: ReadonlyMap<string, string>): boolean {
  const count = wholeNumber(texts.get("rods.count"));
  const [nx, ny] = [texts.get("pattern.nx"), texts.get("pattern.ny")];
  if (count === null || (nx === undefined && ny === undefined)) return true;
  const [x, y] = [wholeNumber(nx ?? "2"), wholeNumber(ny ?? "2")];
  return x === null || y === null || x * y === count || 2 * (x + y) - 4 === count;
}

function wholeNumber(text: string | undefined): number | null {
  const count = text === undefined ? null : parseCount(text, 1, 1_000);
  return count?.ok ? count.value : null;
}

function proved({ from }: OpenChoice, { parts, how }: PossibleReading): readonly Taken[] {
  const remark = `${how}: other cells of the row rule out the other readings`;
  return parts.map(({ key, node }): Taken => ({ key, node, from, origin: from.isAnswered ? "answer" : "row", remark }));
}

function asked(
  { from, message }: OpenChoice,
  readings: readonly PossibleReading[],
  questions: Questions,
): readonly Taken[] {
  const { place, column } = from;
  const choices = readings.map(({ how }) => ({ answer: how, means: `it is ${how}` }));
  const cause = `${column.index} ${from.text.trim().toLowerCase()}`;
  questions.ask("reading", cause, `${column.name}: ${message}`, { place, choices });
  const keys = [...new Set(readings.flatMap(({ parts }) => parts.map(({ key }) => key)))];
  return keys.map((key): Taken => ({ key, node: scalar(from.text, place), from, origin: "asked", remark: message }));
}
