/** The rods of a base as the carpenter sets them. */
import type { Input } from "../job/model/job.js";
import { formatLength, type Length, type Unit } from "../units/index.js";
import type { SheetRequest } from "./request.js";
import type { TableText } from "./table.js";

const NONE: ReadonlySet<number> = new Set();

/** What the carpenter sets: rods of each group, their holes, projection and embedment. */
export function rodTable({ base, rods, job }: SheetRequest): TableText {
  const { unit } = job;
  const rows = base.groups.slice(0, MOST_GROUPS).map((own) => {
    const count = rods.filter(({ group }) => group.letter === own.letter).length;
    const { rod } = own;
    return [
      own.letter,
      String(count),
      rod.size,
      `${known(rod.grade)}${rod.finish.kind === "given" && rod.finish.value === "galvanized" ? " GALV." : ""}`,
      formatLength(own.hole.value, unit),
      lengthOrDash(own.baseHole, unit),
      lengthOrDash(rod.projection, unit),
      lengthOrDash(rod.embedment, unit),
    ];
  });
  return {
    name: "rod-table",
    heading: "RODS AND SETTING",
    columns: [
      { title: "GR", share: 0.07, align: "start" },
      { title: "NO", share: 0.07, align: "end" },
      { title: "ROD", share: 0.11, align: "end" },
      { title: "GRADE", share: 0.27, align: "end" },
      { title: "HOLE", share: 0.13, align: "end" },
      { title: "BASE PL", share: 0.13, align: "end" },
      { title: "PROJ", share: 0.1, align: "end" },
      { title: "EMBED", share: 0.12, align: "end" },
    ],
    rows,
    foot: [...moreGroups(base.groups.length), ...settingLines(base.template.height, unit)],
    under: [],
    strong: NONE,
  };
}

const MOST_GROUPS = 8;

function moreGroups(count: number): readonly string[] {
  return count > MOST_GROUPS ? [`+ ${count - MOST_GROUPS} more groups in summary.json`] : [];
}

function settingLines(height: Input<Length>, unit: Unit): readonly string[] {
  const words = height.kind === "given" ? `${formatLength(height.value, unit)} ABOVE T.O.C.` : "HEIGHT NOT GIVEN";
  return [`UNDERSIDE OF TEMPLATE ${words}; PROJECTION IS FROM T.O.C.`];
}

function known(input: Input<string>): string {
  return input.kind === "given" ? input.value : "-";
}

function lengthOrDash(input: Input<Length>, unit: Unit): string {
  return input.kind === "given" ? formatLength(input.value, unit) : "-";
}
