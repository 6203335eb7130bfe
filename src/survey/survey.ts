/** The surveyor's file against the job: every group as built, worst first. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { Job } from "../job/model/job.js";
import type { PointsFile } from "../readers/points-model.js";
import { surveyGroup } from "./group.js";
import { lineRows } from "./line-rows.js";
import { locatePoints } from "./locate.js";
import type { DesignedRod } from "./match.js";
import { matchPoints } from "./match.js";
import type { GroupSurvey, Survey, SurveyAim, SurveyTerms } from "./model.js";
import { withPlacing } from "./placing.js";

/** The survey of a job's rods; findings say what is asked for, what is in doubt, and what forbids going on. */
export function surveyJob(job: Job, aim: SurveyAim, file: PointsFile, terms: SurveyTerms): Outcome<Survey> {
  const located = locatePoints(file, aim);
  if (!located.ok) return located;
  const matched = matchPoints(file, located.value.places, aim, terms);
  const findings = [...located.findings, ...matched.findings, ...asked(terms, file.file)];
  if (hasErrors(findings)) return { ok: false, findings };
  const targets = new Map<DesignedRod["standing"], DesignedRod[]>(aim.plan.bases.map((base) => [base, []]));
  for (const target of matched.targets) targets.get(target.standing)?.push(target);
  const [groups, notSurveyed]: [Omit<GroupSurvey, "placing">[], { mark: string; at: string }[]] = [[], []];
  for (const [standing, own] of targets) {
    if (own.some((target) => matched.points.has(target))) {
      groups.push(surveyGroup(job, standing, own, matched.points, terms));
    } else notSurveyed.push({ mark: standing.base.mark, at: standing.name.slice(standing.base.mark.length + 1) });
  }
  const rows = lineRows(job, aim.plan, groups);
  const value: Survey = {
    unit: job.unit,
    file: withoutPoints(file),
    system: located.value.system,
    terms,
    groups: worstGroupsFirst(withPlacing(groups, rows)),
    notSurveyed,
    others: matched.others,
    unmatched: matched.unmatched,
    rows,
  };
  return { ok: true, value, findings };
}

function withoutPoints({ points: _, ...file }: PointsFile): Survey["file"] {
  return file;
}

/** What only the surveyor can say. */
function asked({ accuracy, height }: SurveyTerms, file: string): readonly Finding[] {
  const ask = (message: string, hint: string): Finding => ({
    code: "survey-asked",
    severity: "warning",
    at: { file },
    message,
    hint,
  });
  return [
    ...(accuracy.kind === "missing"
      ? [ask("the accuracy of its points is not stated: ask the surveyor", "--accuracy, or survey.accuracy in the job")]
      : []),
    ...(height.kind === "missing"
      ? [
          ask(
            "at what height on the rods they were taken is not stated: ask the surveyor",
            "--height top, or a length above the top of concrete, or survey.height in the job",
          ),
        ]
      : []),
  ];
}

/** What is outside its tolerance comes before what is merely not known. */
function rankOf({ verdict, placing }: GroupSurvey): number {
  if (verdict === "does not fit") return 0;
  if (placing.verdict === "outside") return 1;
  if (verdict === "within measuring uncertainty") return 2;
  return verdict === "not-checked" ? 3 : 4;
}

/** By both verdicts, then by spare, then as they stand on the plan. */
function worstGroupsFirst(groups: readonly GroupSurvey[]): readonly GroupSurvey[] {
  const spare = ({ best }: GroupSurvey): number => best?.spare ?? 0;
  return [...groups].sort((a, b) => rankOf(a) - rankOf(b) || spare(a) - spare(b));
}
