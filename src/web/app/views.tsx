/** The views, in the order in which a job goes through them. A view is one folder beside this one and its line here. */
import type { ComponentType } from "preact";
import { BeginView } from "../begin/begin-view.js";
import { LedgerView } from "../ledger/ledger-view.js";
import { QuestionsView } from "../questions/questions-view.js";
import { TemplateView } from "../sheet/template-view.js";
import { SolidView } from "../solid/solid-view.js";
import type { ViewName } from "../state/model.js";
import { later } from "./later.js";

/** What a view is called, what it shows, and whether it needs an open job. */
export interface ViewPart {
  readonly name: string;
  readonly Part: ComponentType;
  readonly needs: "job" | "nothing";
}

/** Every view. */
export const VIEW_PARTS: Readonly<Record<ViewName, ViewPart>> = {
  begin: { name: "Begin", Part: BeginView, needs: "nothing" },
  template: { name: "Template", Part: TemplateView, needs: "job" },
  schedule: {
    name: "Schedule",
    Part: later(async () => (await import("../schedule/schedule-view.js")).ScheduleView),
    needs: "job",
  },
  plan: { name: "Plan", Part: later(async () => (await import("../plan/plan-view.js")).PlanView), needs: "job" },
  ledger: { name: "Ledger", Part: LedgerView, needs: "job" },
  questions: { name: "Questions", Part: QuestionsView, needs: "job" },
  solid: { name: "Solid", Part: SolidView, needs: "job" },
  package: {
    name: "Package",
    Part: later(async () => (await import("../package/package-view.js")).PackageView),
    needs: "job",
  },
  sign: { name: "Sign", Part: later(async () => (await import("../answers/sign-view.js")).SignView), needs: "nothing" },
  survey: {
    name: "Survey",
    Part: later(async () => (await import("../answers/survey-view.js")).SurveyView),
    needs: "job",
  },
  budget: {
    name: "Budget",
    Part: later(async () => (await import("../answers/budget-view.js")).BudgetView),
    needs: "job",
  },
  proof: {
    name: "Proof",
    Part: later(async () => (await import("../answers/proof-view.js")).ProofView),
    needs: "nothing",
  },
  compare: {
    name: "Compare",
    Part: later(async () => (await import("../answers/compare-view.js")).CompareView),
    needs: "nothing",
  },
};
