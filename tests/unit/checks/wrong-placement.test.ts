import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/index.js";
import { wrongPlacement } from "../../../src/checks/rules/wrong-placement.js";
import type { ColumnShape, OutlineSpec, Pattern } from "../../../src/job/model/job.js";
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
      "turned 90 (and 3 more): rods 1.4142 off, base plate does not drop on (1.008 short), the outline shows it",
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
  const square = { group: { pattern: rectangle(12, 12) } };

  it("fails where it drops on with the strong axis across", () => {
    const row = rows({ ...square, base: { column: given(flange("y"), "job"), groups: [groupFixture(square.group)] } });
    expect(row.get("base plate")).toMatchObject({ status: "fail", value: { count: 2 } });
    expect(row.get("base plate")?.note).toContain("turned 90: strong axis across; turned 270: strong axis across");
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
    expect(found.get("base plate")?.note).toBe("turned by quarters it does not drop on");
  });

  it("says how far off its place an off-centre column lands", () => {
    const column = given<ColumnShape>({ kind: "pipe", diameter: inches(8), at: { x: inches(1), y: zero } }, "job");
    const found = rows({ base: { column, groups: [groupFixture(square.group)] } });
    // 1 in off the middle: turned by 180 it lands 2 in off, by 90 sqrt 2.
    expect(found.get("base plate")?.note).toContain("turned 90: column 1.4142 off its place; turned 180: column 2 off");
  });

  it("is not checked without a column", () => {
    expect(rows(square).get("base plate")?.note).toContain("drops on turned 90, 180, 270 too");
    expect(rows(square).get("base plate")?.status).toBe("not-checked");
  });
});
