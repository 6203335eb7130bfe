import { baseHoleOf } from "../../job/model/base-hole.js";
import type { Input } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { cutLoss } from "../cutting.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, inBestCase, known, lacking, missingAmong, notTabulated } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

const AS_CUT = "as cut: h - deviation - taper >= d + zinc growth";
const IN_BASE_PLATE = "h <= H";

/** The template's hole against its table (advise), as cut against the rod (stop), and against the base plate's hole (stop). */
export const templateHole: Rule<"template-hole"> = {
  id: "template-hole",
  title: "hole = the table's (advise); as cut h - deviation - taper >= d + zinc growth (stop); h <= H (stop)",
  severity: "advise",
  measured: "the hole of the template",
  clause: (context) => (isOverCastRods(context) ? "set over cast rods: h = H" : "template hole for the rod"),
  edition: ({ job }) => job.editions.templateHoles,
  check(context) {
    const rods = rodHoles(context);
    return [againstTable, asCut, inBasePlate].flatMap((row) => rods.map((rod) => row(context, rod)));
  },
};

function againstTable(context: CheckContext, rod: RodHole): RuleResult {
  const table = isOverCastRods(context) ? baseHoleOf(rod.group, { orTable: true }) : rod.group.tableHole;
  if (table.kind === "missing") return lacking(rod.tag, [table]);
  const say = wordsIn(context.job.unit);
  const [hole, asked] = [say.length(rod.hole), say.length(table.value)];
  const note =
    rod.hole === table.value
      ? `${hole} for rod ${rod.rod.size}: ${table.from}`
      : `${hole} (${rod.group.hole.from}) departs from ${asked} (${table.from}) for rod ${rod.rod.size}`;
  return compare(rod.tag, 2 * rod.hole, "=", 2 * table.value, note);
}

function asCut(context: CheckContext, rod: RodHole): RuleResult {
  const own = { severity: "stop", clause: AS_CUT, edition: "shop" } as const;
  const zinc = rod.rod.zincGrowth;
  const loss = cutLoss(context, rod);
  if (!loss.known && zinc.kind === "missing") return lacking(rod.tag, [zinc], own);
  if (!loss.known) return notTabulated(rod.tag, loss.what, loss.nearest, own);
  const { edition } = loss;
  const say = wordsIn(context.job.unit);
  const note = `${say.length(rod.hole)}${loss.text(say)} against ${rodText(rod, zinc, say.length)}`;
  const value = 2 * rod.hole - loss.twice;
  const growth = zinc.kind === "given" ? zinc.value : 0;
  const row = compare(rod.tag, value, ">=", 2 * (rod.diameter + growth), note, { ...own, edition });
  return inBestCase(row, missingAmong({ "growth by zinc": zinc }));
}

function rodText({ rod, diameter }: RodHole, zinc: Input<Length>, length: (length: number) => string): string {
  if (zinc.kind === "missing") return `${length(diameter)} + zinc (not given)`;
  const finish = rod.finish.kind === "given" && rod.finish.value === "plain" ? "plain" : "zinc";
  return finish === "plain" ? `${length(diameter)}, plain` : `${length(diameter)} + ${length(zinc.value)} zinc`;
}

function inBasePlate({ job }: CheckContext, { tag, hole, group }: RodHole): RuleResult {
  const own = { severity: "stop", clause: IN_BASE_PLATE, edition: "geometry" } as const;
  const needs = known({ hole: group.baseHole });
  if (!needs.all) return lacking(tag, needs.missing, own);
  const say = wordsIn(job.unit);
  const note = `template ${say.length(hole)} against base plate ${say.length(needs.values.hole)}`;
  return compare(tag, 2 * hole, "<=", 2 * needs.values.hole, note, own);
}
