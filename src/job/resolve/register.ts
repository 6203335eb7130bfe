/** The register of questions: from an earlier package's summary.json, or from the register file that it holds. */
import * as z from "zod";
import type { Finding } from "../../diagnostics/finding.js";
import { contentOf } from "../../readers/inputs.js";
import { findNode } from "../../readers/source.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt } from "../document.js";
import {
  compareQuestionNumbers,
  parseQuestionNumber,
  type QuestionRegister,
  questionNumber,
} from "../model/register.js";
import type { JobSources } from "./job-sources.js";

const text = z.string({ error: "is not text" });
const figure = z.number({ error: "is not a number" }).nullable();

const question = z.object({
  number: text.refine(isNumber, { error: "is no number of a question, as Q-7" }),
  ...{ rule: text, clause: text, edition: text, measured: text, text },
  places: z.array(z.object({ mark: text, subjects: z.array(text) }), { error: "is not a list of places" }),
  asked: z
    .array(z.object({ revision: text, value: figure, limit: figure, unit: text, number: text.optional() }))
    .min(1, { error: "is an empty list" }),
  status: z.enum(["open", "answered", "accepted", "closed"], { error: "is no status of a question" }),
  closedIn: text,
});

const register = z.object({
  job: z.object({ number: text, revision: text }),
  questions: z.array(question, { error: "is not a list of questions: the package was made before they were numbered" }),
});

function isNumber(written: string): boolean {
  const number = parseQuestionNumber(written);
  return number !== null && questionNumber(number) === written;
}

/** What the shell hands in where the job names no register: that of the package which stands where the next one goes. */
const HANDED_IN = "the package before";

/** null where the job names none and none was handed in; with faults also where it cannot be read. */
export function readRegister(
  { document, inputs }: JobSources,
  number: string | undefined,
): WithFindings<QuestionRegister | null> {
  const named = findNode(document.root, "questions");
  if (named === undefined) return handedIn(inputs.register, document, number);
  if (named.kind !== "scalar") return { value: null, findings: [] };
  const content = contentOf(inputs.files.get(named.text));
  const fault = (message: string) => ({ value: null, findings: [registerFault(document, message)] });
  if (content === undefined)
    return fault(`there is no file ${named.text}; allowed is the summary.json of an earlier package, or its register`);
  const read = parseRegister(content);
  if (typeof read === "string") return fault(`${named.text} ${read}`);
  if (number !== undefined && read.job !== number)
    return fault(`${named.text} is the register of job ${read.job}, and this is job ${number}`);
  return { value: read, findings: [] };
}

function handedIn(
  content: string | Uint8Array | undefined,
  document: SourceDocument,
  number: string | undefined,
): WithFindings<QuestionRegister | null> {
  if (content === undefined) return { value: null, findings: [] };
  const read = parseRegister(content);
  if (typeof read !== "string") return { value: read.job === (number ?? read.job) ? read : null, findings: [] };
  const message = `${HANDED_IN} ${read}; questions are numbered anew: name a register under questions to go on from it`;
  const { hint: _hint, ...fault } = registerFault(document, message);
  return { value: null, findings: [{ ...fault, severity: "warning" }] };
}

function registerFault(document: SourceDocument, message: string): Finding {
  return faultAt(document, ["questions"], "question-register", message);
}

/** Or what is wrong with it, in words that follow its name. */
function parseRegister(content: string | Uint8Array): QuestionRegister | string {
  const read = register.safeParse(parseJson(content));
  if (!read.success) {
    const [issue] = read.error.issues;
    const at = issue === undefined || issue.path.length === 0 ? "" : ` (${issue.path.join(".")} ${issue.message})`;
    return `is no register of questions${at}`;
  }
  const { job, questions } = read.data;
  const numbers = questions.map((each) => each.number);
  const twice = numbers.find((each, i) => numbers.indexOf(each) !== i);
  if (twice !== undefined) return `has ${twice} twice: the register was changed`;
  const named = questions.map((each) => ({
    ...each,
    asked: each.asked.map((at) => ({ ...at, number: at.number ?? each.number })),
  }));
  const sorted = named.toSorted((a, b) => compareQuestionNumbers(a.number, b.number));
  return { job: job.number, revision: job.revision, questions: sorted };
}

function parseJson(content: string | Uint8Array): unknown {
  try {
    const written = typeof content === "string" ? content : new TextDecoder("utf-8", { fatal: true }).decode(content);
    return JSON.parse(written);
  } catch {
    return null;
  }
}
