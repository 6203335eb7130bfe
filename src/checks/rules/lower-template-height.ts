import type { Bottom, Input, LowerLevel, RodGroup } from "../../job/model/job.js";
import { nutHeight } from "../../job/model/stack.js";
import { detailRod, rodBelowAnchor, steelBelowEmbedment } from "../../rods/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compareSums, fixed, lacking, minus, notApplicable, plus, type Term } from "../results.js";
import { NUT } from "../takes.js";
import { wordsIn } from "../words.js";

const THREAD = {
  severity: "ask",
  clause: "thread at the lower end reaches above the upper nut",
  measured: "the thread at the lower end of the rod",
} as const;
const DEPTH = {
  clause: "embedment and steel below it >= height + plate + upper nut",
  measured: "the embedment of the rod, for the lower template and its upper nut,",
};

/** The lower template stands clear of what anchors the rods, its nuts run to it, and all of it lies in the concrete. */
export const lowerTemplateHeight: Rule<"lower-template-height"> = {
  id: "lower-template-height",
  plainName: "height of lower template",
  title:
    "underside of the lower template above the lower ends >= what anchors the rods + lower nut (stop); embedment and steel below it >= height + plate + upper nut (stop); thread at the lower end reaches above the upper nut (ask)",
  severity: "stop",
  measured: "the height of the lower template above the lower ends of the rods",
  takes: [
    ...["bottom", "threads", "bottomThreads", "projection", "embedment", "length", "thread", "threading"].map(
      (key) => `rods.${key}`,
    ),
    "template.lower",
    "template.thickness",
    "template.mark",
    "mark",
    ...NUT,
  ],
  clause: () => "underside >= bottom of the rod + lower nut",
  edition: () => "geometry",
  check(context) {
    const { base, plate } = context;
    if (plate.lower === null || base.template.lower === null)
      return [notApplicable("plate", "no lower template is asked for")];
    const { mark } = plate.lower;
    const { level } = base.template.lower;
    return base.groups.flatMap((group) => rowsOf(context, `${mark} rods ${group.letter}`, level, group));
  },
};

function rowsOf(
  { job, base, plate }: CheckContext,
  subject: string,
  level: Input<LowerLevel>,
  group: RodGroup,
): readonly RuleResult[] {
  const { rod } = group;
  if (level.kind === "missing") return [lacking(subject, [level])];
  const { bottom } = rod;
  const say = wordsIn(job.unit);
  const detail = detailRod(job, base, group);
  const steel = plus("steel below it", steelBelowEmbedment(rod, detail));
  const height = heightTerms(level.value, rod.embedment, steel);
  const nut = nutHeight(rod);
  const thickness = plate.lower?.thickness ?? plate.thickness;
  const through = [...height, fixed("lower template", thickness), plus("upper nut", nut)];
  const below = [plus("rod below", rodBelowAnchor(rod, detail)), plus("lower nut", nut)];
  const room =
    bottom.kind === "missing"
      ? lacking(subject, [bottom])
      : compareSums(subject, [height, ">=", [...anchorTerms(bottom.value, nut), ...below]], say);
  return [
    room,
    compareSums(subject, [[plus("embedment", rod.embedment), steel], ">=", through], say, DEPTH),
    compareSums(subject, [[plus("thread at the lower end", rod.bottomThread)], ">=", through], say, THREAD),
  ];
}

/** Of the underside above the lower ends. */
function heightTerms(
  { from, distance }: LowerLevel,
  embedment: RodGroup["rod"]["embedment"],
  steel: Term,
): readonly Term[] {
  if (from === "lower ends") return [fixed("height", distance)];
  return [plus("embedment", embedment), steel, minus("depth", { kind: "given", value: distance, from: "job" })];
}

/** What is on the rod below it, but for the rod that stands out of its lowest nut. */
function anchorTerms(bottom: Bottom, nut: Term["input"]): readonly Term[] {
  switch (bottom.kind) {
    case "straight":
    case "hook":
      return [];
    case "swedged":
      return [fixed("swedged part", bottom.length)];
    case "nut":
      return [
        plus("nut at the lower end", nut),
        ...(bottom.washer === null ? [] : [fixed("plate washer", bottom.washer.thickness)]),
      ];
    case "plate": {
      const nuts =
        bottom.nuts === 0
          ? []
          : [plus(bottom.nuts === 1 ? "nut under the plate" : "nuts of the plate", nut, 2 * bottom.nuts)];
      return [fixed("plate at the lower end", bottom.thickness), ...nuts];
    }
  }
}
