/** Answers that a job gives to all of its bases, tried with a base that has nothing else: what a job file would say of them. */
import type { Finding } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { ReadAsQuestion } from "../formats/read-as-form.js";
import type { InputFile } from "../readers/inputs.js";
import type { Unit } from "../units/index.js";
import type { WrittenAnswer } from "./answered-sheet.js";
import { withAnswers } from "./answered-sheet.js";
import { openJob } from "./open.js";

const JOB = "tried.yaml";

/** What is not said is said by these. */
const ELSE: Readonly<Record<Unit, string>> = {
  in: "rules: us\nshop: plasma\ndefaults: { rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 12, y: 12 }, template: { thickness: 1/4 } }\n",
  mm: "rules: metric\nshop: plasma-metric\ndefaults: { rods: { diameter: M20 }, pattern: { kind: rectangle, x: 300, y: 300 }, template: { thickness: 6 } }\n",
};

/** An answer that is at fault, asked again with the words of the job file; `files`: the shops that come with the program. */
export function askFaulty(
  answers: readonly WrittenAnswer[],
  unit: Unit,
  files: ReadonlyMap<string, InputFile>,
): readonly ReadAsQuestion[] {
  const forAll = [...new Map(answers.map((answer) => [answer.path.join("."), answer])).values()].filter(
    ({ path: [first] }) => first === "defaults",
  );
  if (forAll.length === 0) return [];
  const findings = faultsOf(forAll, unit, files);
  return forAll.flatMap((answer): ReadAsQuestion[] => {
    const finding = findings.find(({ at }) => isUnder(at.path ?? "", answer.path.join(".")));
    return finding === undefined ? [] : [questionOf(answer, finding)];
  });
}

function faultsOf(
  answers: readonly WrittenAnswer[],
  unit: Unit,
  files: ReadonlyMap<string, InputFile>,
): readonly Finding[] {
  const head = `job: { number: "0", title: tried, revision: A }\nunits: ${unit}\n${ELSE[unit]}`;
  const text = `${withAnswers(head, answers)}bases:\n  - { mark: B1, template: { mark: T1 } }\n`;
  const opened = openJob({ job: JOB, files: new Map([...files, [JOB, text]]) }, { date: "2026-01-01" });
  return opened.findings.filter((finding) => hasErrors([finding]));
}

const isUnder = (path: string, key: string): boolean =>
  path.startsWith(key) && /^([.[]|$)/.test(path.slice(key.length));

function questionOf({ path }: WrittenAnswer, { message, hint }: Finding): ReadAsQuestion {
  const line = path.reduceRight((inner, key) => (inner === "" ? `${key}:` : `${key}: { ${inner} }`), "");
  const text = `at fault: ${message}${hint === undefined ? "" : ` (${hint})`}`;
  return { cells: [], text, choices: [{ line, means: "" }] };
}
