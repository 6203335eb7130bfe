import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/index.js";
import { wrongPlacement } from "../../../src/checks/rules/wrong-placement.js";
import type { ColumnShape, OutlineSpec, Pattern, RodGroup } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { groupFixture } from "../../fixture.js";
import type { Changes } from "./context.js";
import { rowsOf } from "./context.js";

const zero = nanometres(0);
const rectangle = (x: number, y: number): Pattern => ({
  kind: "rectangle",
  x: inches(x),
  y: inches(y),
  nx: 2,
  ny: 2,
  perimeter: false,
});
const plate = (x: number, y: number): OutlineSpec => ({
  kind: "rectangle",
  x: inches(x),
  y: inches(y),
  at: { x: zero, y: zero },
  corner: { kind: "square" },
});
const flange = (depthAlong: "x" | "y"): ColumnShape => ({
  kind: "wide flange",
  depth: inches(10),
  width: inches(8),
  flange: inches(0.5),
  web: inches(0.3125),
  depthAlong,
  at: { x: zero, y: zero },
});

function rows(changes: Changes): ReadonlyMap<string, CheckRow> {
  return new Map(rowsOf(wrongPlacement, changes).map((row) => [row.subject, row]));
}

describe("wrong-placement", () => {
  it("names the rod error of a template turned 90 and says that its outline shows it", () => {
    const found = rows({ group: { pattern: rectangle(12, 10) }, template: { outline: plate(17, 15), key: "none" } });
    const largest = found.get("template, largest error");
    // 12 x 10 turned by 90: each rod moves from (6, 5) to (5, 6) or its like, sqrt 2 in off: by hand.
    expect(largest?.value).toEqual({ kind: "length", twice: Math.round(2 * Math.SQRT2 * 25_400_000) });
    expect(largest).toMatchObject({ status: "pass", limit: { twice: 0 } });
    expect(largest?.note).toBe(
      "turned 90 (and 3 more): rods 1.4142 off, base plate does not drop on (at most 1.008 short), the outline shows it",
    );
    expect(found.get("template")).toMatchObject({ status: "pass", value: { count: 0 } });
    expect(found.get("template")?.note).toBe("7 wrong ways round: 3 set the same rods, 4 show, 0 do not");
  });

  it("fails where neither outline nor base plate shows it: 12 x 12-1/2 on a square plate without a key", () => {
    const found = rows({ group: { pattern: rectangle(12, 12.5) }, template: { outline: plate(18, 18), key: "none" } });
    expect(found.get("template")).toMatchObject({ status: "fail", severity: "advise", value: { count: 4 } });
    expect(found.get("template")?.note).toContain("rods 0.3536 off, base plate drops on all the same");
    expect(found.get("template, smallest error")?.status).toBe("fail");
  });

  it("passes where only the base plate shows it, by what it does not take up", () => {
    const found = rows({ group: { pattern: rectangle(12, 10) }, template: { outline: plate(18, 18), key: "none" } });
    expect(found.get("template")?.status).toBe("fail");
    const row = found.get("template, largest error");
    expect(row).toMatchObject({ status: "pass" });
    // sqrt 2 less the clearance (2-1/16 - 1-1/4)/2 = 13/32, by hand; one unit is strictly more.
    const short = Math.round(2 * (Math.SQRT2 - 13 / 32) * 25_400_000);
    expect(row?.margin).toEqual({ kind: "length", twice: short - 1 });
  });

  it("turns on the base-plate hole: drops on at the limit, one nanometre less and it does not", () => {
    // 12 x 12-1/2 turned: 1/4 sqrt 2 = 8 980 256.121 nm off; H - d of 17 960 513 nm takes it up, rounded to the lattice.
    const status = (clearance: number) =>
      rows({
        group: {
          pattern: rectangle(12, 12.5),
          baseHole: given(nanometres(inches(1.25) + clearance), "job"),
        },
        template: { outline: plate(18, 18), key: "none" },
      }).get("template, largest error")?.status;
    expect(status(17_960_513)).toBe("fail");
    expect(status(17_960_511)).toBe("pass");
  });

  it("asks for no more of a pattern that every way round sets alike", () => {
    const found = rows({ group: { pattern: rectangle(12, 12) }, template: { outline: plate(18, 18) } });
    expect([...found.keys()]).toEqual(["template", "base plate"]);
    expect(found.get("template")?.note).toBe("7 wrong ways round: 7 set the same rods, 0 show, 0 do not");
  });

  it("does not know whether the base plate drops on where its hole is not given", () => {
    const baseHole = missing("basePlate.hole", "no base-plate hole is given");
    const found = rows({
      group: { pattern: rectangle(12, 10), baseHole },
      template: { outline: plate(18, 18), key: "none" },
    });
    expect(found.get("template, largest error")).toMatchObject({ status: "not-checked" });
    expect(found.get("template, largest error")?.note).toContain("basePlate.hole");
    expect(found.get("base plate")?.status).toBe("not-checked");
  });

  it("names a base-plate hole that all groups lack once", () => {
    const lacking = () => missing("basePlate.hole", "no base-plate hole is given");
    const groups = [
      groupFixture({ baseHole: lacking() }),
      groupFixture({ letter: "B", pattern: rectangle(6, 6), baseHole: lacking() }),
    ];
    const note = rows({ base: { groups } }).get("base plate")?.note ?? "";
    expect(note.match(/basePlate\.hole/g)).toHaveLength(1);
    expect(note).toMatch(/\(column\)$/);
  });

  it("finds rods of another size in their places", () => {
    const small = groupFixture(
      { letter: "B", pattern: { kind: "points", at: [{ x: inches(8), y: zero }] } },
      { size: "3/4", diameter: inches(0.75) },
    );
    const large = groupFixture({ pattern: { kind: "points", at: [{ x: inches(-8), y: zero }] } });
    const found = rows({ base: { groups: [large, small] }, template: { outline: plate(24, 8) } });
    const row = found.get("template, rods of another kind");
    expect(row?.note).toContain("A1 at B1, B1 at A1");
  });
});

describe("wrong-placement of the base plate", () => {
  const origin = { x: zero, y: zero };
  const square = { group: { pattern: rectangle(12, 12) } };

  it("fails where it drops on with the strong axis across", () => {
    const row = rows({ ...square, base: { column: given(flange("y"), "job"), groups: [groupFixture(square.group)] } });
    expect(row.get("base plate")).toMatchObject({ status: "fail", value: { count: 2 } });
    expect(row.get("base plate")?.note).toContain("turned 90, 270: strong axis across");
  });

  it("passes where the column is the same", () => {
    const column = given<ColumnShape>({ kind: "tube", x: inches(6), y: inches(6), at: { x: zero, y: zero } }, "job");
    const found = rows({ base: { column, groups: [groupFixture(square.group)] } });
    expect(found.get("base plate")).toMatchObject({ status: "pass" });
  });

  it("passes where it does not drop on turned", () => {
    const group = {
      pattern: {
        kind: "points",
        at: [
          { x: zero, y: zero },
          { x: inches(9), y: inches(2) },
          { x: inches(-3), y: inches(7) },
        ],
      },
    } as const;
    const column = given(flange("y"), "job");
    const found = rows({ base: { column, groups: [groupFixture(group)] } });
    expect(found.get("base plate")?.note).toBe("turned any other way it does not drop on");
  });

  it("says how far off its place an off-centre column lands", () => {
    const column = given<ColumnShape>({ kind: "pipe", diameter: inches(8), at: { x: inches(1), y: zero } }, "job");
    const found = rows({ base: { column, groups: [groupFixture(square.group)] } });
    // 1 in off the middle: turned by 180 it lands 2 in off, by 90 sqrt 2.
    expect(found.get("base plate")?.note).toContain(
      "turned 90, 270: column 1.4142 off its place; turned 180: column 2 off",
    );
  });

  it("is not checked without a column", () => {
    expect(rows(square).get("base plate")?.note).toContain("drops on turned 90, 180, 270 too");
    expect(rows(square).get("base plate")?.status).toBe("not-checked");
  });

  const ring = (count: number, kind: "on-axis" | "straddle", diameter = 18) =>
    ({ kind: "circle", count, diameter: inches(diameter), start: { kind } }) as const;
  const on = (pattern: Pattern, column: ColumnShape, group: Partial<RodGroup> = {}) =>
    rows({ base: { column: given(column, "job"), groups: [groupFixture({ pattern, ...group })] } }).get("base plate");
  const tube = (x: number, y: number): ColumnShape => ({ kind: "tube", x: inches(x), y: inches(y), at: origin });
  const pipe: ColumnShape = { kind: "pipe", diameter: inches(8), at: origin };

  it.each([
    [
      "6 rods, wide flange",
      ring(6, "straddle"),
      flange("y"),
      4,
      "turned 60, 120, 240, 300: column turned 60 degrees out",
    ],
    ["6 rods on the axis, wide flange", ring(6, "on-axis"), flange("x"), 4, "turned 60, 120, 240, 300"],
    [
      "8 rods, wide flange",
      ring(8, "straddle"),
      flange("y"),
      6,
      "turned 45, 135, 225, 315: column turned 45 degrees out",
    ],
    [
      "8 rods, square tube",
      ring(8, "straddle"),
      tube(6, 6),
      4,
      "turned 45, 135, 225, 315: column turned 45 degrees out",
    ],
    [
      "6 rods, square tube",
      ring(6, "straddle"),
      tube(6, 6),
      4,
      "turned 60, 120, 240, 300: column turned 30 degrees out",
    ],
    ["4 rods, rectangular tube", rectangle(12, 12), tube(8, 6), 2, "turned 90, 270: strong axis across"],
    ["3 rods, wide flange", ring(3, "on-axis"), flange("y"), 2, "turned 120, 240: column turned 60 degrees out"],
    ["12 rods, wide flange", ring(12, "straddle"), flange("y"), 10, "(11 ways) too"],
    ["6 rods, pipe", ring(6, "straddle"), pipe, 0, "the column's section is then the same"],
    ["4 rods, square tube", rectangle(12, 12), tube(6, 6), 0, "the column's section is then the same"],
    ["2 rods, wide flange", ring(2, "on-axis"), flange("y"), 0, "drops on turned 180 too"],
  ] as const)("%s", (_, pattern, column, wrong, words) => {
    const row = on(pattern, column);
    expect(row).toMatchObject({ status: wrong === 0 ? "pass" : "fail", value: { count: wrong } });
    expect(row?.note).toContain(words);
  });

  it("finds the turns of a ring that is typed as points, about its own middle", () => {
    const at = Array.from({ length: 5 }, (_, k) => {
      const angle = (2 * Math.PI * k) / 5 + 0.3;
      return { x: inches(4 + 8 * Math.cos(angle)), y: inches(-3 + 8 * Math.sin(angle)) };
    });
    const column: ColumnShape = { ...flange("y"), at: { x: inches(4), y: inches(-3) } };
    const row = on({ kind: "points", at }, column);
    expect(row).toMatchObject({ status: "fail", value: { count: 4 } });
    expect(row?.note).toContain(
      "turned 72, 288: column turned 72 degrees out; turned 144, 216: column turned 36 degrees out",
    );
  });

  it("finds a turn that the clearances take up, and no longer with one nanometre less", () => {
    // 12 x 12-1/2 turned by a quarter: every hole is 1/4 sqrt 2 off its rod, 8 980 256.121 nm.
    const status = (clearance: number) =>
      on(rectangle(12, 12.5), flange("y"), { baseHole: given(nanometres(inches(1.25) + clearance), "job") });
    expect(status(17_960_513)).toMatchObject({ status: "fail", value: { count: 2 } });
    expect(status(17_960_511)).toMatchObject({ status: "pass", value: { count: 0 } });
    expect(status(17_960_511)?.note).toContain("drops on turned 180 too");
  });

  it("finds a turn that is no quarter and no pitch: two rods of six are 1/4 off a hexagon", () => {
    const spots = Array.from({ length: 6 }, (_, k) => {
      const out = k === 1 || k === 4 ? 9.25 : 9;
      return { x: inches(out * Math.cos((k * Math.PI) / 3)), y: inches(out * Math.sin((k * Math.PI) / 3)) };
    });
    expect(on({ kind: "points", at: spots }, flange("y"))).toMatchObject({ status: "fail", value: { count: 4 } });
    const tight = { baseHole: given(inches(1.25 + 1 / 8), "job") };
    expect(on({ kind: "points", at: spots }, flange("y"), tight)).toMatchObject({
      status: "pass",
      value: { count: 0 },
    });
  });

  it("does not turn a plate whose holes do not pass the other rods", () => {
    const spot = (x: number, y: number) => ({ kind: "points", at: [{ x: inches(x), y: inches(y) }] }) as const;
    const large = groupFixture({ pattern: spot(-8, 0) });
    const small = groupFixture(
      { letter: "B", pattern: spot(8, 0), baseHole: given(inches(1.3125), "job") },
      { size: "3/4", diameter: inches(0.75) },
    );
    const turned = (groups: readonly RodGroup[]) =>
      rows({ base: { groups, column: given(flange("y"), "job") } }).get("base plate");
    expect(turned([large, small])?.note).toContain("drops on turned 180 too");
    const tighter = { ...small, baseHole: given(nanometres(inches(1.25) - 1), "job") };
    expect(turned([large, tighter])?.note).toBe("turned any other way it does not drop on");
  });

  it("turns freely on one rod, which only a round column about it hides", () => {
    const one = { kind: "points", at: [origin] } as const;
    expect(on(one, flange("y"))).toMatchObject({ status: "fail", value: { count: 1 } });
    expect(on(one, pipe)).toMatchObject({ status: "pass", value: { count: 0 } });
    expect(on(one, { ...pipe, at: { x: inches(1), y: zero } })?.status).toBe("fail");
  });

  it("does not call a column off its place that the clearances let stand in it", () => {
    // A square with its rods off by up to 1/16: the best middle of the turned plate is off too, the column need not be.
    const at = [
      { x: inches(6.0625), y: inches(6) },
      { x: inches(-6), y: inches(6.0625) },
      { x: inches(-6), y: inches(-6) },
      { x: inches(6), y: inches(-5.9375) },
    ];
    expect(on({ kind: "points", at }, tube(6, 6))).toMatchObject({ status: "pass", value: { count: 0 } });
    expect(on({ kind: "points", at }, pipe)).toMatchObject({ status: "pass", value: { count: 0 } });
  });
});
