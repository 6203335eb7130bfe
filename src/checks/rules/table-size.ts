import { extentOf, extentSize } from "../../geometry/index.js";
import type { Plate } from "../../template/model.js";
import { largestDiameter, patternSides } from "../misfit.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { lengthsOf } from "../proportions.js";
import { compare, lacking } from "../results.js";
import { favouredPair, suspectSlip } from "../slips.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** The plate, or each of its segments and splice plates, lies on the shop's table, either way round, square to it. */
export const tableSize: Rule<"table-size"> = {
  id: "table-size",
  plainName: "template on cutting table",
  title: "longer and shorter side of the template <= those of the shop's table, or of its stock where that is smaller",
  severity: "stop",
  measured: "a side of the template",
  takes: PLATE,
  clause: ({ job: { shop } }) => (shop.table.kind === "given" ? `table: ${shop.table.from}` : "table of the shop file"),
  edition: () => "shop",
  check(context) {
    const { job, plate } = context;
    const { table } = job.shop;
    if (table.kind === "missing") return [lacking("plate", [table])];
    if (plate.parted === null) return onTable(context, table.value, plate, "");
    const pieces = [...plate.parted.segments.map((segment) => segment.plate), ...plate.parted.splices];
    return pieces.flatMap((piece) => onTable(context, table.value, piece, `${piece.mark}, `));
  },
};

/** Both sides of a piece; `name` goes before them. */
function onTable(context: CheckContext, table: Sides, { region }: Plate, name: string): readonly RuleResult[] {
  const [long, short] = longFirst(extentSize(extentOf(region.outer)));
  const [most, least] = longFirst(table);
  const say = wordsIn(context.job.unit);
  const fits = long <= most && short <= least;
  const size = `${say.length(long)} x ${say.length(short)} on a table of ${say.length(most)} x ${say.length(least)}`;
  const note = `${size}${fits ? "" : `${slipWords(context)}${remedy(context)}`}`;
  return [
    compare(`${name}longer side`, 2 * long, "<=", 2 * most, note),
    compare(`${name}shorter side`, 2 * short, "<=", 2 * least, note),
  ];
}

interface Sides {
  readonly x: number;
  readonly y: number;
}

/** The key that cuts it into pieces, or into more of them. */
function remedy({ base: { template }, plate }: CheckContext): string {
  if (template.material !== "steel" || template.use !== "template") return "";
  if (plate.parted === null) return "; template.segments: auto cuts it into segments with splice plates";
  return "; more segments are shorter: template.segments";
}

function longFirst({ x, y }: Sides): readonly [number, number] {
  return x >= y ? [x, y] : [y, x];
}

/** Rods seldom stand farther apart than this many diameters: common practice. */
const MOST_DIAMETERS = 48;

/** The slip that may have made so large a plate: in the pattern, else in the outline as it is given. */
function slipWords(context: CheckContext): string {
  const { job, base, plate } = context;
  const [diameter, pattern] = [largestDiameter(context), patternSides(context)];
  const favoured = favouredPair(lengthsOf(context));
  const apart = { from: 2 * diameter, to: MOST_DIAMETERS * diameter };
  for (const axis of ["x", "y"] as const) {
    const slip = pattern[axis] === 0 ? null : suspectSlip(pattern[axis], apart, job.unit, favoured);
    if (slip !== null) return `; ${axis} of the pattern, ${slip.words}`;
  }
  if (base.template.outline.kind === "auto") return "";
  const sides = extentSize(extentOf(plate.region.outer));
  for (const axis of ["x", "y"] as const) {
    const most = 6 * Math.max(pattern.x, pattern.y, apart.from);
    const slip = suspectSlip(sides[axis], { from: pattern[axis], to: most }, job.unit, favoured);
    if (slip !== null) return `; ${axis} of the outline, ${slip.words}`;
  }
  return "";
}
