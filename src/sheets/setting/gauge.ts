/** Heights that a carpenter measures from the template, worked out of what the job gives. */
import { rodTopTolerance } from "../../checks/stack-terms.js";
import type { Base, Input, RodGroup } from "../../job/model/job.js";
import { given } from "../../job/model/job.js";
import { add, type Length, subtract } from "../../units/length.js";
import type { SheetRequest } from "../request.js";
import { type Range, rangeOf } from "../section-words.js";

type Standing = Pick<Base, "template">;

/** From the top of the template up to the top of the rod: projection less height of the underside less thickness. */
export function gaugeFromTop({ template }: Standing, group: Pick<RodGroup, "rod">): Input<Length> {
  const under = gaugeFromUnderside({ template }, group);
  return under.kind === "missing" ? under : given(subtract(under.value, template.thickness), under.from);
}

/** From the underside of the template up to the top of the rod: projection less height of the underside. */
export function gaugeFromUnderside({ template }: Standing, { rod }: Pick<RodGroup, "rod">): Input<Length> {
  const { projection } = rod;
  if (projection.kind === "missing") return projection;
  if (template.height.kind === "missing") return template.height;
  return given(subtract(projection.value, template.height.value), "projection and height of the template");
}

/** Where the top of the template lies above the top of concrete. */
export function topOfTemplate({ template }: Standing): Input<Length> {
  const { height, thickness } = template;
  return height.kind === "missing" ? height : given(add(height.value, thickness), height.from);
}

/** A height to the top of a rod with the tolerance of rod tops by the placing edition; null where one is not known. */
export function rodTopRange(request: SheetRequest, nominal: Input<Length>): Range | null {
  return rangeOf(nominal, rodTopTolerance(request, "low"), rodTopTolerance(request, "high"));
}
