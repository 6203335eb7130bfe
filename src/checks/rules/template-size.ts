import { largestSettingPlate } from "../../standards/index.js";
import { formatWithUnit } from "../../units/index.js";
import { twiceExtent, wholeOutline } from "../geometry/measure.js";
import type { Rule } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { OUTLINE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Large steel plates tend to warp. */
export const templateSize: Rule<"template-size"> = {
  id: "template-size",
  plainName: "size before plate warps",
  title: `largest side of a steel template <= ${formatWithUnit(largestSettingPlate.value, "in")}, beyond which it tends to warp`,
  severity: "advise",
  measured: "the largest side of the template",
  takes: OUTLINE,
  clause: () => "largest side before a plate tends to warp",
  edition: ({ job }) => job.shop.largestSide.from,
  check({ job, base, plate }) {
    if (base.template.material === "plywood") {
      return [notApplicable("plate", "the guide speaks of steel plates; the template is plywood")];
    }
    const { x0, y0, x1, y1 } = twiceExtent(wholeOutline(plate));
    const say = wordsIn(job.unit);
    const note = `overall ${say.twice(x1 - x0)} x ${say.twice(y1 - y0)}`;
    return [compare("plate", Math.max(x1 - x0, y1 - y0), "<=", 2 * job.shop.largestSide.value, note)];
  },
};
