/** Terms of sums that go up a rod: the layers of the column's stack, and the template with its nuts. */
import type { Input } from "../job/model/job.js";
import { given } from "../job/model/job.js";
import type { StackPart } from "../job/model/stack.js";
import { nutHeight } from "../job/model/stack.js";
import { findElevation } from "../standards/index.js";
import type { Length } from "../units/index.js";
import { nanometres } from "../units/index.js";
import type { CheckContext } from "./model.js";
import type { Term } from "./results.js";
import { fixed, plus } from "./results.js";
import type { RodHole } from "./rods.js";

/** Layers of a stack, each added or taken off. */
export function layers(parts: readonly StackPart[], sign: typeof plus): readonly Term[] {
  return parts.map(({ name, height }) => sign(name, height));
}

/** Thickness of the washer between template and nut, on both faces alike: zero where the nut itself bears. */
export function templateWasherOf({ job, base }: CheckContext): Input<Length> {
  const { templateWasher } = job.shop;
  if (templateWasher.kind === "given") return templateWasher.value.thickness;
  return base.template.material === "plywood" ? templateWasher : given(nanometres(0), "no washer");
}

/** From the top of concrete to the top of the nut above the template. */
export function throughTemplate(context: CheckContext, { rod }: RodHole): readonly Term[] {
  const { template } = context.base;
  return [
    plus("height of the underside", template.height),
    fixed("template", template.thickness),
    plus("washer", templateWasherOf(context)),
    plus("upper nut", nutHeight(rod)),
  ];
}

/** A term, or why there is none. */
export type FoundTerm = { readonly found: true; readonly term: Term } | { readonly found: false; readonly why: string };

/** What the top of a rod may stand low or high by, by the placing edition: taken off where it is low, added where it is high. */
export function rodTopTolerance({ job }: CheckContext, side: "low" | "high"): FoundTerm {
  const { placing } = job.editions;
  const found = findElevation(placing);
  if (!found.found) return { found: false, why: `${placing}: no tolerance of rod tops is tabulated` };
  return { found: true, term: fixed(`${side} (${found.clause})`, found.row[side], side === "low" ? -2 : 2) };
}
