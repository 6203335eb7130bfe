/** Rods of every kind for tests of their papers: lots made from jobs by hand. Invented data. */
import type { Bottom, Job, Rod, RodGroup } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { type RodLot, rodLots } from "../../../src/rods/lots.js";
import type { RodPapers } from "../../../src/sheets/rods/rod-details.js";
import { inches, type Length, millimetres, type Unit } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";

const none = missing("rods.test", "not given in this test");

/** Lower ends by name, for a rod of a diameter. */
export function bottomsOf(diameter: Length): Readonly<Record<string, Rod["bottom"]>> {
  const times = (factor: number) => Math.round(diameter * factor) as Length;
  const plate = { shape: "square", size: times(3), thickness: times(0.5) } as const;
  const of = (bottom: Bottom) => given(bottom, "job");
  return {
    straight: of({ kind: "straight" }),
    nut: of({ kind: "nut", washer: null, tackWelded: false }),
    "welded nut": of({ kind: "nut", washer: null, tackWelded: true }),
    "nut and washer": of({ kind: "nut", washer: plate, tackWelded: false }),
    "plate, two nuts": of({ kind: "plate", nuts: 2, tackWelded: false, ...plate }),
    "round plate, one nut": of({ kind: "plate", nuts: 1, tackWelded: true, ...plate, shape: "round" }),
    "welded plate": of({ kind: "plate", nuts: 0, tackWelded: false, ...plate }),
    hook: of({ kind: "hook", reach: times(4.5), radius: null }),
    swedged: of({ kind: "swedged", length: times(8) }),
    "not given": none,
  };
}

/** One rod of a size on one base. */
export function rodGroup(unit: Unit, changes: Partial<Rod> = {}, group: Partial<RodGroup> = {}): RodGroup {
  const size =
    unit === "in"
      ? { size: "1-1/4", diameter: inches(1.25) }
      : {
          size: "M30",
          diameter: millimetres(30),
          thread: "metric coarse" as const,
          threadClass: given("6g", "job"),
          grade: given("8.8", "job"),
        };
  return groupFixture(group, { ...size, ...changes });
}

/** Papers of these groups, each on a base of its own. */
export function papersOf(
  groups: readonly RodGroup[],
  changes: Partial<Job> = {},
  held: readonly string[] = [],
): RodPapers {
  const bases = groups.map((group, i) => ({ ...baseFixture(), mark: `B${i + 1}`, groups: [group] }));
  const job = jobFixture({ ...changes, bases });
  return { job, lots: rodLots(job), held: new Set(held), version: "0" };
}

/** The only lot of the papers. */
export function onlyLot({ lots }: RodPapers): RodLot {
  const [lot] = lots;
  if (lot === undefined || lots.length !== 1) throw new Error("one lot is meant");
  return lot;
}
