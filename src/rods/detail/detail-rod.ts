/** A rod of a group as the shop makes it. */
import type { Base, Bottom, Job, Rod, RodGroup, RodMaking } from "../../job/model/job.js";
import type { Input } from "../../job/model/values.js";
import { given, missing } from "../../job/model/values.js";
import { findGrade } from "../../standards/index.js";
import { lastFor } from "../../units/once.js";
import { barOf, threadCallout } from "./bar.js";
import { hardwareOf } from "./hardware.js";
import { hookOf } from "./hook.js";
import { kindOf } from "./kind.js";
import { cutOf, embedmentTo, overallOf } from "./lengths.js";
import type { RodDetail } from "./model.js";
import { notesOf } from "./notes.js";
import { operationsOf, type RodToMake } from "./operations.js";
import { weighBar } from "./weights.js";
import { orderedWeldable } from "./welding.js";

/** All rods of the group are alike. Nothing hangs on the template's plate: a base that is held still has its rods. */
export function detailRod(job: Job, base: Base, group: RodGroup): RodDetail {
  return detailOf(group, base, job);
}

/** Rules ask for it at every hole. */
const detailOf = lastFor((group: RodGroup, base: Base, job: Job): RodDetail => {
  const rod = rodToMake(job, base, group);
  return { ...rod, operations: operationsOf(job, rod), notes: notesOf(job, base, rod) };
});

function rodToMake(job: Job, base: Base, group: RodGroup): RodToMake {
  const { rod } = group;
  const { making } = job.shop.rodShop;
  const bar = barOf(job, rod);
  const overall = overallOf(rod, bar.bar, making);
  const hook =
    rod.bottom.kind === "given" && rod.bottom.value.kind === "hook"
      ? hookOf(rod.bottom.value, rod, bar.bar, making)
      : null;
  const cut = cutOf(rod, overall, hook, making);
  const kilograms = weightOf(job, bar.bar, cut);
  const coated: Rod = { ...rod, zincProcess: zincProcessOf(rod, { cut, kilograms }, making) };
  const { size, diameter, thread, threadClass, grade, projection, embedment, bottom, fullThread, protectors } = rod;
  return {
    kind: kindOf(rod),
    ...{ size, diameter, thread, threadCallout: threadCallout(rod), threadClass, grade, bottom, fullThread },
    weldable: orderedWeldable(rod),
    endColor: endColor(rod),
    finish: finishWords(coated),
    zincProcess: rod.finish.kind === "given" && rod.finish.value === "galvanized" ? coated.zincProcess : null,
    ...{ projection, embedment, embedmentTo: embedmentTo(rod) },
    ...threadsOf(rod, overall),
    ...{ hook, overall, cut, ...bar },
    kilograms,
    nut: rod.nut,
    ...hardwareOf(job, base, { ...group, rod: coated }),
    ...{ tackWelds: tackWelds(bottom), protectors },
  };
}

/** Of a rod that is threaded in full both are its whole length. */
function threadsOf(rod: Rod, overall: RodDetail["overall"]): Pick<RodDetail, "topThread" | "bottomThread"> {
  if (!rod.fullThread) return { topThread: rod.threadLength, bottomThread: rod.bottomThread };
  const whole = overall.kind === "missing" ? overall : given(overall.value.value, "threads: full");
  return { topThread: whole, bottomThread: whole };
}

function endColor({ grade }: Rod): Input<string> {
  if (grade.kind === "missing") return grade;
  const found = findGrade(grade.value);
  if (found.found && found.row.colour !== "") return given(found.row.colour, found.edition);
  return missing("rods.grade", `no color is kept for the ends of grade ${grade.value}`);
}

/** As the order says; where it has no preference a rod that is too long or too heavy for the barrel is dipped. */
function zincProcessOf(
  { zincProcess }: Rod,
  { cut, kilograms }: Pick<RodDetail, "cut" | "kilograms">,
  { mechanicalLongest, mechanicalHeaviest }: RodMaking,
): Rod["zincProcess"] {
  if (zincProcess.kind === "given") return zincProcess;
  if (cut.kind === "given" && cut.value.value > mechanicalLongest.value)
    return given("hot-dip", mechanicalLongest.from);
  if (kilograms.kind === "given" && kilograms.value > mechanicalHeaviest.value)
    return given("hot-dip", mechanicalHeaviest.from);
  return zincProcess;
}

/** `plain`, `hot-dip galvanized to ASTM F2329`. */
function finishWords({ finish, zincProcess, thread }: Rod): Input<string> {
  if (finish.kind === "missing" || finish.value === "plain") return finish;
  const { dipped, tumbled } = ZINC_STANDARDS[thread === "metric coarse" ? "metric" : "us"];
  if (zincProcess.kind === "missing")
    return given(`galvanized, hot-dip (${dipped}) or mechanically (${tumbled})`, finish.from);
  const words = { "hot-dip": `hot-dip galvanized, ${dipped}`, mechanical: `mechanically galvanized, ${tumbled}` };
  return given(words[zincProcess.value], zincProcess.from);
}

/** Zinc on fasteners; the ISO ones from memory. */
const ZINC_STANDARDS = {
  us: { dipped: "ASTM F2329", tumbled: "ASTM B695" },
  metric: { dipped: "ISO 10684", tumbled: "ISO 12683" },
} as const;

function weightOf({ shop }: Job, bar: RodDetail["bar"], cut: RodDetail["cut"]): Input<number> {
  if (bar.kind === "missing") return bar;
  if (cut.kind === "missing") return cut;
  const { steel } = shop.density;
  return given(weighBar(bar.value, cut.value.value, steel.value), steel.from);
}

/** A nut that is tack welded is so on the side away from the concrete that bears on it. */
function tackWelds(bottom: Input<Bottom>): readonly string[] {
  if (bottom.kind === "missing") return [];
  const { value } = bottom;
  if (value.kind === "nut" && value.tackWelded) return ["the nut at the lower end to the rod, on its underside"];
  if (value.kind === "plate" && value.tackWelded && value.nuts > 0)
    return ["the nut below the plate to the rod, on its underside"];
  return [];
}
