/** Where bases and rods stand: on the plan, and on the site. */
export { crossingsOf as lineCrossing } from "../job/index.js";
export type { CheckDistance } from "./check-distances.js";
export { checkDistances } from "./check-distances.js";
export { concreteOnPlan, contourOnPlan, layPlan, makePlan, placedAlike } from "./make-plan.js";
export { fitTransform, makeTransform } from "./make-transform.js";
export type { PlacedBase, Plan, PlannedRod, SitePoint, SiteTransform } from "./model.js";
export type { CoordinateSystem, LocatedPoint, SettingOutPoint } from "./setting-out-points.js";
export { coordinateSystems, firstFree, locatedPoints, plainPrimes, settingOutPoints } from "./setting-out-points.js";
export type { Motion } from "./transform.js";
export { planToSite, siteToPlan, siteToPlanUnsnapped } from "./transform.js";
