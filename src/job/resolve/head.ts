/** What a job says of itself, beside its bases and its plan: title block, answers, severities, and its own limits. */
import type { Finding } from "../../diagnostics/finding.js";
import { ownValue } from "../../diagnostics/own-value.js";
import { findNode } from "../../readers/source.js";
import type { Length, Unit } from "../../units/index.js";
import { inches, millimetres, toUnit } from "../../units/index.js";
import type { SourceDocument } from "../document.js";
import { faultAt, placeOf } from "../document.js";
import type { Answer, Given, Job, Severity, TemplateQuantity } from "../model/job.js";
import { given, missing } from "../model/job.js";
import type { Vocabulary } from "../model/vocabulary.js";
import { isRaised } from "../model/vocabulary.js";
import type { HeadDocument } from "../schema/job.js";
import { markKey } from "../schema/marks.js";
import { resolveSurvey } from "../schema/survey.js";
import { budgetFaults, resolveBudget } from "./budget.js";
import type { JobSources } from "./job-sources.js";

/** The part of a job that its head gives. */
export type JobHead = Omit<Job, "unit" | "editions" | "shop" | "bases" | "plan" | "readAs" | "register" | "numbers">;

/** The head with its defaults; `date` is that of a job which names none. */
export function resolveHead(head: HeadDocument, document: SourceDocument, unit: Unit, date: string): JobHead {
  const { job } = head;
  return {
    number: job.number,
    title: job.title ?? "",
    revision: job.revision ?? "-",
    status: job.status ?? "preliminary",
    date: job.date ?? date,
    answers: [
      ...(head.answers ?? []).map((answer) => resolveAnswer(answer, unit, "answered")),
      ...(head.accepted ?? []).map((answer) => resolveAnswer(answer, unit, "accepted")),
    ],
    raised: raisedSeverities(head),
    drawing: { number: job.drawing?.number ?? "", revision: job.drawing?.revision ?? "" },
    revisions: (job.revisions ?? [])
      .map(({ revision, date: day, text, marks }) => ({ revision, date: day, text: text ?? "", marks: marks ?? null }))
      .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
    drawnBy: job.drawnBy ?? "",
    owner: job.owner ?? "",
    tolerances: job.tolerances ?? "",
    sheet: head.sheet ?? null,
    budget: resolveBudget(head.budget),
    survey: resolveSurvey(head.survey),
    lookAlike: resolveLookAlike(head.lookAlike, unit),
    merge: head.merge ?? "none",
    templates: resolveTemplates(head, document),
  };
}

/** In the order of the job file, by the keys as written there. */
function resolveTemplates({ templates = {} }: HeadDocument, document: SourceDocument): readonly TemplateQuantity[] {
  const node = findNode(document.root, "templates");
  if (node?.kind !== "map") return [];
  return node.entries.flatMap(({ key }): TemplateQuantity[] => {
    const own = ownValue(templates, key);
    return own === undefined
      ? []
      : [{ mark: key, quantity: own.quantity, place: placeOf(document, ["templates", key]) }];
  });
}

function resolveAnswer(answer: NonNullable<HeadDocument["answers"]>[number], unit: Unit, kind: Answer["kind"]): Answer {
  const { question = "", mark = "", rule = "", by, date, text, subject, value } = answer;
  const answered =
    value === undefined ? missing("answers.value", "the answer names no value") : given(toUnit(value, unit), "job");
  return { kind, question, mark, rule, by, date, text, subject: subject ?? "", value: answered };
}

/** An answer is to a question by its number, or by mark and rule; by one of them, so that they cannot disagree. */
function answerFaults(head: HeadDocument | null, document: SourceDocument): readonly Finding[] {
  return (["answers", "accepted"] as const).flatMap((key) =>
    (head?.[key] ?? []).flatMap(({ question, mark, rule, subject }, i): Finding[] => {
      const path = [key, i];
      const beside = Object.entries({ mark, rule, subject }).flatMap(([name, text]) =>
        text === undefined ? [] : [name],
      );
      if (question !== undefined && beside.length > 0) {
        const message = `${question} is named beside ${beside.join(", ")}; allowed is the number alone, or mark and rule`;
        return [faultAt(document, [...path, "question"], "answer-twice-named", message)];
      }
      if (question !== undefined) return [];
      const lacking = (["mark", "rule"] as const).filter((name) => (name === "mark" ? mark : rule) === undefined);
      const message = "is required; allowed is the number of the question under question, or mark and rule";
      return lacking.map((name) => faultAt(document, [...path, name], "required", message));
    }),
  );
}

function raisedSeverities({ severities = {} }: HeadDocument): Readonly<Record<string, Severity>> {
  const named = Object.entries(severities);
  return Object.fromEntries(named.flatMap(([id, severity]) => (severity === undefined ? [] : [[id, severity]])));
}

/** 1 in, or 25 mm: the shop's habit, not a code's. */
function resolveLookAlike(written: Length | undefined, unit: Unit): Given<Length> {
  if (written !== undefined) return given(written, "job");
  return unit === "in" ? given(inches(1), "default 1 in") : given(millimetres(25), "default 25 mm");
}

/** Marks of revision rows that are none of the job's, told because such a row may stand on fewer sheets than was meant. */
export function revisionFindings(
  head: HeadDocument | null,
  document: SourceDocument,
  known: ReadonlySet<string>,
): readonly Finding[] {
  const templates = Object.keys(head?.templates ?? {}).map(markKey);
  return (head?.job.revisions ?? []).flatMap(({ marks = [] }, row) =>
    marks.flatMap((mark, i): Finding[] => {
      if (known.has(markKey(mark)) || templates.includes(markKey(mark))) return [];
      const message = `"${mark}" is no base or template of this job: no sheet has this revision for it`;
      const path = ["job", "revisions", row, "marks", i];
      return [{ ...faultAt(document, path, "revision-mark", message), severity: "warning" }];
    }),
  );
}

/** Faults of the head that its schema cannot see. */
export function headFaults(
  head: HeadDocument | null,
  { document, vocabulary }: Pick<JobSources, "document" | "vocabulary">,
): readonly Finding[] {
  const ofBudget = budgetFaults(head?.budget ?? {}).map(({ key, message }) =>
    faultAt(document, ["budget", key], "budget-both", message),
  );
  return [
    ...severityFaults(head, document, vocabulary),
    ...ofBudget,
    ...templateFaults(document),
    ...answerFaults(head, document),
  ];
}

/** A key that every object has a meaning for: no reader of keys hands it on, so that it would be passed over in silence. */
const NO_KEY = "__proto__";

function templateFaults(document: SourceDocument): readonly Finding[] {
  if (findNode(document.root, "templates", NO_KEY) === undefined) return [];
  const message = `"${NO_KEY}" is no key; allowed are template marks: give its bases template.quantity instead`;
  return [faultAt(document, ["templates", NO_KEY], "unknown-template", message)];
}

function severityFaults(
  head: HeadDocument | null,
  document: SourceDocument,
  { rules }: Vocabulary,
): readonly Finding[] {
  return Object.entries(rules).flatMap(([id, own]) => {
    const severity = head?.severities?.[id];
    if (severity === undefined || isRaised(own, severity)) return [];
    const message = `"${severity}" is below the rule's own severity; a severity may be raised, never lowered`;
    return [faultAt(document, ["severities", id], "severity-lowered", message)];
  });
}
