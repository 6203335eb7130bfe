/** What a change of the job does to rods that are made already. Embedment and projection together are the rod that is cut (common practice). */
import { describe, expect, it } from "vitest";
import type { Comparison, RodComparison } from "../../../src/compare/index.js";
import { compareSides, countRecuts, countRemade } from "../../../src/compare/index.js";
import { writeCompareText } from "../../../src/formats/compare-text.js";
import type { Base, Bottom, Job, Rod } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/length.js";
import { inches, millimetres, nanometres } from "../../../src/units/length.js";
import { sideOf } from "../../compared-sides.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });

const baseWith = (rod: Partial<Rod>, changes: Partial<Base> = {}): Base =>
  baseFixture({ groups: [groupFixture({}, rod)], ...changes });
const jobWith = (...bases: readonly Base[]): Job => jobFixture({ bases });
const compareJobs = (old: Job, fresh: Job): Comparison => compareSides(sideOf(old), sideOf(fresh));
const compareRod = (old: Partial<Rod>, fresh: Partial<Rod>): Comparison =>
  compareJobs(jobWith(baseWith(old)), jobWith(baseWith(fresh)));

const summed = ({ rods }: Comparison): unknown =>
  rods?.map(({ verdict, changes }) => [verdict, ...changes.map(({ what }) => what)].join(" "));
const only = ({ rods }: Comparison): RodComparison => {
  const [first, ...others] = rods ?? [];
  if (first === undefined || others.length > 0) throw new Error("not one group of rods");
  return first;
};

const PLATE = { shape: "square", size: inches(4), thickness: inches(0.5) } as const;
const lower = (bottom: Bottom) => given(bottom, "job");
const NONE = missing("rods", "not given");
const g = (length: number) => given(inches(length), "job");
const near = (length: number, nm: number) => given(nanometres(inches(length) + nm) as Length, "job");

describe("rods that are made must be made again where the rod is another", () => {
  it.each<[string, Partial<Rod>, Partial<Rod>, string]>([
    ["a longer projection", {}, { projection: g(11) }, "remade projection"],
    ["a shorter embedment", {}, { embedment: g(20) }, "remade embedment"],
    ["another grade", {}, { grade: given("F1554 36", "job") }, "remade grade"],
    ["no zinc", {}, { finish: given("plain" as const, "job") }, "remade finish"],
    ["another size", {}, { size: "1", diameter: inches(1) }, "remade diameter"],
    ["another thread series", {}, { thread: "8UN" }, "remade thread"],
    ["more thread", {}, { threadLength: g(9) }, "remade threadLength"],
    [
      "a hook for a nut",
      {},
      { bottom: given({ kind: "hook", reach: inches(4), radius: null } as const, "job") },
      "remade bottom",
    ],
    ["another length", { length: g(36) }, { length: g(37) }, "remade length"],
    ["more thread at the lower end", { bottomThread: g(3) }, { bottomThread: g(4) }, "remade bottomThread"],
    ["another thread class", {}, { threadClass: given("1A", "job") }, "remade threadClass"],
    ["threads cut that were rolled", {}, { threading: given("cut", "job") }, "remade threading"],
    [
      "another zinc process",
      { zincProcess: given("hot-dip", "job") },
      { zincProcess: given("mechanical", "job") },
      "remade zincProcess",
    ],
    [
      "a nut that is tack welded",
      {},
      { bottom: lower({ kind: "nut", washer: null, tackWelded: true }) },
      "remade bottom",
    ],
    [
      "a plate washer on the nut",
      {},
      { bottom: lower({ kind: "nut", washer: PLATE, tackWelded: false }) },
      "remade bottom",
    ],
    ["a straight end", {}, { bottom: lower({ kind: "straight" }) }, "remade bottom"],
    [
      "one nut under the plate in place of two",
      { bottom: lower({ kind: "plate", nuts: 2, tackWelded: false, ...PLATE }) },
      { bottom: lower({ kind: "plate", nuts: 1, tackWelded: false, ...PLATE }) },
      "remade bottom",
    ],
    [
      "a tighter bend",
      { bottom: lower({ kind: "hook", reach: inches(5), radius: inches(2) }) },
      { bottom: lower({ kind: "hook", reach: inches(5), radius: inches(1.5) }) },
      "remade bottom",
    ],
    [
      "a longer swedged part",
      { bottom: lower({ kind: "swedged", length: inches(6) }) },
      { bottom: lower({ kind: "swedged", length: inches(8) }) },
      "remade bottom",
    ],
    [
      "a projection where no length can be told",
      { embedment: NONE },
      { embedment: NONE, projection: g(11) },
      "remade projection",
    ],
    [
      "projection and embedment that do not make up",
      {},
      { projection: g(11), embedment: g(23) },
      "remade projection embedment",
    ],
  ])("%s", (_, old, fresh, expected) => {
    const comparison = compareRod(old, fresh);
    expect([summed(comparison), countRemade(comparison)]).toEqual([[expected], 24]);
  });

  it.each([
    [0, "unchanged", 0],
    [25, "unchanged", 0],
    [-25, "unchanged", 0],
    [80, "remade projection", 24],
    [-80, "remade projection", 24],
  ])("by %i nm: the rounding of summaries is no change", (nm, expected, count) => {
    const comparison = compareRod({}, { projection: near(9, nm) });
    expect([summed(comparison), countRemade(comparison)]).toEqual([[expected], count]);
  });
});

describe("rods that are made serve on", () => {
  it.each<[string, Partial<Rod>, Partial<Rod>, string]>([
    ["nothing changed", {}, {}, "unchanged"],
    [
      "set higher, the same length by their sum",
      {},
      { projection: g(11), embedment: g(22) },
      "set otherwise projection embedment",
    ],
    [
      "set higher, the same length as given",
      { length: g(36) },
      { length: g(36), projection: g(10) },
      "set otherwise projection",
    ],
    ["wrench room and stick-out are no property of the rod", {}, { wrenchRoom: g(3), stickOut: g(1) }, "unchanged"],
    ["a grade given that was not", { grade: NONE }, {}, "look grade"],
    ["a length given that was not", {}, { length: g(33) }, "look length"],
    ["a thread length no more given", {}, { threadLength: NONE }, "look threadLength"],
    ["a second nut on the base plate", {}, { topNuts: given(2, "job") }, "look hardware"],
    ["no levelling nut", {}, { levellingNuts: given(0, "job") }, "look hardware"],
    ["a thread at the lower end given that was not", {}, { bottomThread: g(3) }, "look bottomThread"],
    ["protectors are no property of the rod", {}, { protectors: true }, "unchanged"],
    ["a projection given that was not", { projection: NONE }, {}, "look projection"],
  ])("%s", (_, old, fresh, expected) => {
    const comparison = compareRod(old, fresh);
    expect([summed(comparison), countRemade(comparison)]).toEqual([[expected], 0]);
  });

  it("inches written as millimetres", () => {
    const [old, metric] = [
      jobFixture(),
      jobFixture({ unit: "mm", bases: [baseWith({ projection: given(millimetres(228.6), "job") })] }),
    ];
    expect(summed(compareJobs(old, metric))).toEqual(["unchanged"]);
    expect(summed(compareJobs(metric, old))).toEqual(["unchanged"]);
  });

  it("their places and the template's holes are not theirs", () => {
    const points = [at(-6, 5), at(6.5, 5), at(6, -5), at(-6, -5)];
    const moved = baseFixture({ groups: [groupFixture({ pattern: { kind: "points", at: points } })] });
    const comparison = compareJobs(jobFixture(), jobWith(moved));
    expect([countRecuts(comparison), summed(comparison)]).toEqual([1, ["unchanged"]]);
  });
});

describe("how many, and of which base", () => {
  it("more and fewer bases, and more rods a base", () => {
    const changes = (fresh: Base) => only(compareJobs(jobFixture(), jobWith(fresh))).changes;
    expect(changes(baseFixture({ quantity: 8 }))).toEqual([{ what: "quantity", from: 24, to: 32 }]);
    expect(changes(baseFixture({ quantity: 5 }))).toEqual([{ what: "quantity", from: 24, to: 20 }]);
    const five = [at(-6, 5), at(0, 5), at(6, 5), at(6, -5), at(-6, -5)];
    const more = baseFixture({ groups: [groupFixture({ pattern: { kind: "points", at: five } })] });
    expect(changes(more)).toEqual([{ what: "quantity", from: 24, to: 30 }]);
  });

  it("a quantity with another rod is told beside it, and those of NEW are made", () => {
    const comparison = compareJobs(jobFixture(), jobWith(baseWith({ projection: g(11) }, { quantity: 8 })));
    expect([summed(comparison), countRemade(comparison)]).toEqual([["remade projection quantity"], 32]);
  });

  it("bases by their mark, else as their templates were matched; those of one side only are new or gone", () => {
    const renamed = jobWith(baseWith({ projection: g(11) }, { mark: "B9" }));
    expect(summed(compareJobs(jobFixture(), renamed))).toEqual(["remade projection"]);
    const both = jobWith(
      baseFixture(),
      baseFixture({ mark: "B2", template: { ...baseFixture().template, mark: "T2" } }),
    );
    expect(summed(compareJobs(jobFixture(), both))).toEqual(["new", "unchanged"]);
    expect(summed(compareJobs(both, jobFixture()))).toEqual(["gone", "unchanged"]);
  });

  it("a group that is put before another renames it, and makes no scrap of its rods", () => {
    const corners = (letter: string, inset: number, rod: Partial<Rod>) => ({
      ...groupFixture(
        {
          pattern: { kind: "points", at: [at(-6 + inset, 5), at(6 - inset, 5), at(6 - inset, -5), at(-6 + inset, -5)] },
        },
        rod,
      ),
      letter,
    });
    const one = baseFixture({ groups: [corners("A", 0, {})] });
    const two = baseFixture({ groups: [corners("A", 3.5, { projection: g(4) }), corners("B", 0, {})] });
    const { rods } = compareJobs(jobWith(one), jobWith(two));
    expect(rods?.map(({ verdict, old, new: fresh }) => [verdict, old?.group, fresh?.group])).toEqual([
      ["new", undefined, "A"],
      ["unchanged", "A", "B"],
    ]);
  });
});

it("is shown worst first, with from and to in NEW's unit, and summed up", () => {
  const old = jobWith(baseFixture(), baseFixture({ mark: "B2", template: { ...baseFixture().template, mark: "T2" } }));
  const fresh = jobWith(
    baseFixture({ quantity: 7 }),
    baseWith({ projection: g(11), grade: NONE }, { mark: "B2", template: { ...baseFixture().template, mark: "T2" } }),
  );
  const text = writeCompareText(compareJobs(old, fresh), { width: 100, color: false });
  expect(text).toMatch(
    /^RODS REMADE .*\n {2}B2 A, 24 rods 1-1\/4 {2}grade F1554 55 -> not given; projection 9 -> 11 in\n/m,
  );
  expect(text).toMatch(/^RODS, QUANTITY .*\n {2}B1 A, 28 rods 1-1\/4 {2}quantity 24 -> 28: 4 more to make\n/m);
  expect(text).toMatch(/\nRods: 24 to be made again, 28 in another quantity\.\n$/);
  expect(text.indexOf("RODS REMADE")).toBeLessThan(text.indexOf("RODS, QUANTITY"));
});
