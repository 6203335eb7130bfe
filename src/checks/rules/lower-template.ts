import type { CheckContext, Rule, RuleResult } from "../model.js";
import { notApplicable, spareOf } from "../results.js";
import { rodHoles } from "../rods.js";
import { PLATE } from "../takes.js";
import { cutWeb } from "./cut-web.js";
import { holeEdge } from "./hole-edge.js";
import { holeWeb } from "./hole-web.js";
import { marksRoom } from "./marks-room.js";
import { seatOnPlate } from "./seat-on-plate.js";
import { boltRows, segmentBolts } from "./segment-bolts.js";
import { segmentJoint } from "./segment-joint.js";
import { stockThickness } from "./stock-thickness.js";
import { tableSize } from "./table-size.js";
import { holeAsCut } from "./template-hole.js";

/** The lower template is held to the rules of a template: its holes as cut, webs, edges, seats of nuts, table and stock. */
export const lowerTemplate: Rule<"lower-template"> = {
  id: "lower-template",
  plainName: "lower template as a plate",
  title:
    "lower template: holes as cut, webs, edges, seats of nuts, scribing, table and stock as those of a template; of rows that hold, the tightest of each kind",
  severity: "stop",
  measured: "the lower template",
  takes: [...PLATE, "rods.zincGrowth", "rods.finish", "rods.wrenchRoom", "template.lower"],
  clause: () => "as for a template",
  edition: () => "shop",
  check(context) {
    const lower = lowerContext(context);
    if (lower === null) return [notApplicable("plate", "no lower template is asked for")];
    return ruledLike(lower);
  },
};

/** The same base with its lower template in the place of its template; null where it has none. */
export function lowerContext({ plate: { lower }, ...context }: CheckContext): CheckContext | null {
  const spec = context.base.template.lower;
  if (lower === null || spec === null) return null;
  const { mark, material, thickness } = lower;
  const template = { ...context.base.template, mark, material, thickness, use: "template" } as const;
  return { ...context, base: { ...context.base, template }, plate: lower };
}

const RULES: readonly Rule[] = [
  holeWeb,
  holeEdge,
  seatOnPlate,
  tableSize,
  stockThickness,
  cutWeb,
  marksRoom,
  segmentJoint,
];

function ruledLike(lower: CheckContext): readonly RuleResult[] {
  const asCut = rodHoles(lower).map((rod) => holeAsCut(lower, rod));
  const bolts = boltRows(lower).map((row) => ownedBy(segmentBolts, row, lower));
  const ruled = RULES.map((rule) => rule.check(lower).map((row) => ownedBy(rule, row, lower)));
  return [asCut, ...ruled, bolts].flatMap((rows) =>
    worthTelling(rows).map((row) => ({ ...row, subject: subjectOn(lower.plate.mark, row.subject) })),
  );
}

/** `T1-L A1`; what names a segment of it says so already. */
function subjectOn(mark: string, subject: string): string {
  return subject.startsWith(`${mark}-`) ? subject : `${mark} ${subject}`;
}

/** With what its own rule says of it. */
function ownedBy(rule: Rule, row: RuleResult, context: CheckContext): RuleResult {
  return {
    ...row,
    severity: row.severity ?? rule.severity,
    clause: row.clause ?? rule.clause(context),
    edition: row.edition ?? rule.edition(context),
    measured: row.measured ?? `${rule.measured.replaceAll("the template", "the lower template")}`,
  };
}

/** What fails or is not checked; of what holds only the tightest. */
function worthTelling(rows: readonly RuleResult[]): readonly RuleResult[] {
  const told = rows.filter((row) => row.kind === "not-checked" || (spareOf(row) ?? 0) < 0);
  const held = rows.filter((row) => row.kind === "compared" && (spareOf(row) ?? 0) >= 0);
  const [first, ...others] = held;
  if (first === undefined) return told;
  return [...told, others.reduce((least, row) => ((spareOf(row) ?? 0) < (spareOf(least) ?? 0) ? row : least), first)];
}
