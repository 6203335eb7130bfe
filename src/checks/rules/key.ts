import type { Rule } from "../model.js";
import { notApplicable, notChecked } from "../verdict.js";

/** Whether a wrong placement shows from the outline alone. Nothing is keyed yet, and the row says so. */
export const key: Rule = {
  id: "key",
  title: "a wrong placement shows from the outline (`key: auto` adds nothing yet and says so)",
  severity: "advise",
  measured: "the key of the template",
  clause: () => "template.key",
  edition: () => "geometry",
  check({ base }) {
    return base.template.key === "none"
      ? [notApplicable("plate", "the job asks for no key")]
      : [
          notChecked(
            "plate",
            "key: auto adds nothing to the outline yet: a turned or turned-over template shows by its marks only",
          ),
        ];
  },
};
