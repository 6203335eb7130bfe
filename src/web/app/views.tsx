/** The views, in the order in which a job goes through them. A view is one folder beside this one and its line here. */
import type { ComponentType } from "preact";
import { BudgetView } from "../answers/budget-view.js";
import { CompareView } from "../answers/compare-view.js";
import { ProofView } from "../answers/proof-view.js";
import { SignView } from "../answers/sign-view.js";
import { SurveyView } from "../answers/survey-view.js";
import { BeginView } from "../begin/begin-view.js";
import { LedgerView } from "../ledger/ledger-view.js";
import { PackageView } from "../package/package-view.js";
import { PlanView } from "../plan/plan-view.js";
import { QuestionsView } from "../questions/questions-view.js";
import { ScheduleView } from "../schedule/schedule-view.js";
import { TemplateView } from "../sheet/template-view.js";
import { SolidView } from "../solid/solid-view.js";
import type { ViewName } from "../state/model.js";

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
  schedule: { name: "Schedule", Part: ScheduleView, needs: "job" },
  plan: { name: "Plan", Part: PlanView, needs: "job" },
  ledger: { name: "Ledger", Part: LedgerView, needs: "job" },
  questions: { name: "Questions", Part: QuestionsView, needs: "job" },
  solid: { name: "Solid", Part: SolidView, needs: "job" },
  package: { name: "Package", Part: PackageView, needs: "job" },
  sign: { name: "Sign", Part: SignView, needs: "nothing" },
  survey: { name: "Survey", Part: SurveyView, needs: "job" },
  budget: { name: "Budget", Part: BudgetView, needs: "job" },
  proof: { name: "Proof", Part: ProofView, needs: "nothing" },
  compare: { name: "Compare", Part: CompareView, needs: "nothing" },
};
