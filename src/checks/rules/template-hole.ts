import { baseHoleOf } from "../../job/model/base-hole.js";
import type { Input } from "../../job/model/job.js";
import { isOfJobFile } from "../../job/model/values.js";
import { findTemplateHole, overCastRodsHole, type TemplateHoleEdition } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import { makingLoss } from "../cutting.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own } from "../results.js";
import { compare, inBestCase, known, lacking, missingAmong, notChecked } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, rodHoles } from "../rods.js";
import { HOLE } from "../takes.js";
import { wordsIn } from "../words.js";

const AS_CUT = "as cut: h - deviation - taper >= d + zinc growth";
const IN_BASE_PLATE = "h <= H";

/** The template's hole against its table (advise), as cut against the rod (stop), and against the base plate's hole (stop). */
export const templateHole: Rule<"template-hole"> = {
  id: "template-hole",
  plainName: "hole size in template",
  title: "hole = the table's (advise); as cut h - deviation - taper >= d + zinc growth (stop); h <= H (stop)",
  severity: "advise",
  measured: "the hole of the template",
  takes: [...HOLE, "rods.zincGrowth", "rods.finish", "template.thickness", "template.material"],
  clause: ({ job }) => TABLE_CLAUSE[job.editions.templateHoles],
  edition: ({ job }) => job.editions.templateHoles,
  check(context) {
    const rods = rodHoles(context);
    return [againstTable, holeAsCut, inBasePlate].flatMap((row) => rods.map((rod) => row(context, rod)));
  },
};

/** ISO 273 has clearance holes of bolts: that a template takes them is common practice, and the row says so. */
const TABLE_CLAUSE: Readonly<Record<TemplateHoleEdition, string>> = {
  "Design Guide 1, 2nd ed.": "s.2.9: template hole for the rod",
  "ISO 273": "medium series (H13); as template hole: common practice",
};

/** The authority of a row: the edition only for what it says. */
function authorityOf(context: CheckContext, { diameter }: RodHole): Own {
  const { templateHoles } = context.job.editions;
  if (isOverCastRods(context)) return overCastRodsHole[templateHoles];
  const reading = findTemplateHole(templateHoles, diameter);
  if (!reading.found || reading.edition === templateHoles) return {};
  return { edition: reading.edition, clause: `template hole ${reading.clause}` };
}

function againstTable(context: CheckContext, rod: RodHole): RuleResult {
  const table = isOverCastRods(context) ? baseHoleOf(rod.group, { orTable: true }) : rod.group.tableHole;
  const own = authorityOf(context, rod);
  const say = wordsIn(context.job.unit);
  const [hole, from] = [say.length(rod.hole), isOfJobFile(rod.group.hole) ? "job" : rod.group.hole.from];
  if (table.kind === "missing")
    return notChecked(rod.tag, `${table.why} (${table.key}); the hole is ${hole}: ${from}`, {
      ...own,
      missing: [table.key],
    });
  const asked = say.length(table.value);
  const note =
    rod.hole === table.value
      ? `${hole} for rod ${rod.rod.size}: ${table.from}`
      : `${hole} (${from}) departs from ${asked} (${table.from}) for rod ${rod.rod.size}${suspectColumn(context, rod)}`;
  return compare(rod.tag, 2 * rod.hole, "=", 2 * table.value, note, own);
}

/** Where the template has the hole that the base plate has, or should have: a guess. */
function suspectColumn(context: CheckContext, { group, hole }: RodHole): string {
  const base = baseHoleOf(group, { orTable: true });
  if (isOverCastRods(context) || base.kind === "missing" || base.value !== hole) return "";
  return "; it is the hole of the base plate: typed in the wrong column?";
}

/** A hole as it is cut, against its rod. What is not known takes nothing from it: a hole that fails without it fails. */
export function holeAsCut(context: CheckContext, rod: RodHole): RuleResult {
  const { edition, twice, text, lack } = makingLoss(context, rod);
  const own = { severity: "stop", clause: AS_CUT, edition } as const;
  const zinc = rod.rod.zincGrowth;
  const say = wordsIn(context.job.unit);
  const note = `${say.length(rod.hole)}${text(say)} against ${rodText(rod, zinc, say.length)}`;
  const value = 2 * rod.hole - twice;
  const limit = 2 * (rod.diameter + (zinc.kind === "given" ? zinc.value : 0));
  const missing = missingAmong({ "growth by zinc": zinc, ...(lack === null ? {} : { deviation: lack }) });
  return inBestCase(compare(rod.tag, value, ">=", limit, note, own), missing);
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
