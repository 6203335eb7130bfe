/** Rows of the ledger in words: how they stand, what that does, and where a key that is missing is typed in. */
import { limitWords } from "../../checks/words.js";
import type { LiveCheck, LiveLine } from "../../tasks/live/model.js";
import type { Pointed } from "../state/model.js";

const STATUS: Readonly<Record<string, string>> = {
  fail: "fails",
  pass: "passes",
  "not-checked": "not checked",
  "not-applicable": "does not apply",
};

/** How a row stands. */
export function statusWords(status: string): string {
  return STATUS[status] ?? status;
}

const EFFECT: Readonly<Record<string, string>> = {
  stop: "holds the base",
  ask: "asks the engineer",
  advise: "advice only",
};

/** What a row of this severity does where it fails. */
export function severityWords(severity: string): string {
  return EFFECT[severity] ?? severity;
}

/** How a row stands; of one that fails, what that does, and whether somebody answered. */
export function standingWords({ status, severity, answer, accepted }: LiveCheck): string {
  if (status !== "fail") return statusWords(status);
  const said = answer !== undefined ? ", answered" : accepted !== undefined ? ", accepted" : "";
  return `fails, ${severityWords(severity)}${said}`;
}

/** Colour of the word that says how a row stands: one of the states of the page. */
export function stateClass({ status, severity }: Pick<LiveCheck, "status" | "severity">): string {
  if (status !== "fail") return status === "not-checked" ? "asked" : "clear";
  return severity === "stop" ? "held" : severity === "ask" ? "asked" : "advised";
}

/** `2-3/4 in, at least 2.7855 in`; "" where nothing was compared. */
export function figureWords({ found, bound, sense }: LiveCheck): string {
  if (found === "" || (sense !== ">=" && sense !== "<=" && sense !== "=")) return "";
  return `${found}, ${limitWords(sense, bound)}`;
}

/** With a capital. */
export function capital(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

/** Who said what to a row; "" where nobody did. */
export function answerWords({ answer, accepted }: LiveCheck): string {
  const said = answer ?? accepted;
  if (said === undefined) return "";
  const how = answer === undefined ? "Release accepted with the question open, by" : "Answered by";
  return `${how} ${said.by}, ${said.date}: ${said.text}`;
}

/** The field of a key as rows name it: of two that would do the first. */
export function fieldOf(key: string): string {
  return key.split(" or ")[0] ?? key;
}

/** What is pointed at with a line: its subjects, and the holes and edges that they are about. */
export function pointedBy({ check, subjects, tags, edges }: LiveLine): Pointed {
  return { subjects: [...new Set([...subjects, ...tags, ...edges])], rule: check.rule };
}

/** True of a line that is about what is pointed at. */
export function isPointedAt({ check, subjects, tags, edges }: LiveLine, pointed: Pointed | null): boolean {
  if (pointed === null || (pointed.rule !== null && pointed.rule !== check.rule)) return false;
  return pointed.subjects.some((subject) => [subjects, tags, edges].some((list) => list.includes(subject)));
}
