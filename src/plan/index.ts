/** Where bases and rods stand: on the plan, and on the site. */
export { crossingsOf as lineCrossing } from "../job/index.js";
export { concreteOnPlan, contourOnPlan, makePlan, placedAlike, placementMove } from "./make-plan.js";
export { fitTransform, makeTransform } from "./make-transform.js";
export type { PlacedBase, Plan, PlannedRod, SitePoint, SiteTransform } from "./model.js";
export type { Motion } from "./transform.js";
export { planToSite, siteToPlan } from "./transform.js";
