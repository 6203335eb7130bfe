/** Coatings. ASTM F1554: rods and nuts by one process. That long and heavy rods are dipped is common practice. */
import { describe, expect, it } from "vitest";
import { rodCoating } from "../../../src/checks/rules/rod-coating.js";
import type { Rod } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { inches } from "../../../src/units/index.js";
import { shopFixture } from "../../fixture.js";
import type { Changes } from "./context.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const SAME = hasClause("group A", "same process");
const LONGEST = hasClause("group A", "longest rod");
const HEAVIEST = hasClause("group A", "heaviest rod");
const { making } = shopFixture().rodShop;

type Zinc = "plain" | "galvanized" | "hot-dip" | "mechanical";

function coated(rods: Zinc, nuts: "plain" | "hot-dip" | "mechanical" | null): Partial<Rod> {
  const process =
    rods === "hot-dip" || rods === "mechanical" ? given(rods, "job") : missing("rods.zincProcess", "none");
  return {
    finish: given(rods === "plain" ? ("plain" as const) : ("galvanized" as const), "job"),
    zincProcess: process,
    nutFinish: nuts === null ? missing("rods.nutFinish", "none") : given(nuts, "job"),
  };
}

/** Galvanized mechanically, of this length; the shop takes any weight, or any length. */
function inBarrel(length: number, limits: Partial<typeof making>): Changes {
  return {
    rod: { ...coated("mechanical", null), length: given(plus(inch(0), length), "job") },
    shop: { rodShop: { ...shopFixture().rodShop, making: { ...making, ...limits } } },
  };
}

describe("rod-coating", () => {
  it.each<readonly [Zinc, Parameters<typeof coated>[1], string]>([
    ["hot-dip", null, "pass"],
    ["hot-dip", "hot-dip", "pass"],
    ["mechanical", "mechanical", "pass"],
    ["hot-dip", "mechanical", "fail"],
    ["mechanical", "hot-dip", "fail"],
    ["hot-dip", "plain", "fail"],
    ["galvanized", "plain", "fail"],
    ["galvanized", "hot-dip", "pass"],
    ["galvanized", "mechanical", "fail"],
    ["galvanized", null, "pass"],
    ["plain", "plain", "pass"],
    ["plain", "hot-dip", "fail"],
    ["plain", null, "not-applicable"],
  ])("rods %s, nuts %s: %s", (rods, nuts, status) => {
    const row = rowOf(rodCoating, { rod: coated(rods, nuts) }, SAME);
    expect(row).toMatchObject({ status, severity: "ask", edition: "ASTM F1554" });
    if (status === "fail") expect(row.value).toEqual({ kind: "count", count: 4 });
  });

  // Longer than 9 in a rod is dipped whatever the order leaves open; a short one may come either way.
  it("asks for the process of short rods whose nuts are said to be dipped", () => {
    const short = { length: given(inch(9), "job"), size: "1/2", diameter: inches(0.5) };
    const row = rowOf(rodCoating, { rod: { ...coated("galvanized", "hot-dip"), ...short } }, SAME);
    expect(row).toMatchObject({ status: "not-checked", missing: ["rods.zincProcess"] });
  });

  it("asks about plain rods with a zinc process", () => {
    const rod = { ...coated("plain", null), zincProcess: given("hot-dip" as const, "job") };
    expect(rowOf(rodCoating, { rod }, SAME)).toMatchObject({ status: "fail", value: { kind: "count", count: 4 } });
  });

  it("asks for the finish", () => {
    const finish = missing("rods.finish", "no finish is given");
    expect(rowsOf(rodCoating, { rod: { finish } })).toMatchObject([
      { status: "not-checked", missing: ["rods.finish"] },
    ]);
  });

  it.each<Zinc>(["hot-dip", "galvanized", "plain"])("asks no barrel of %s rods", (rods) => {
    expect(rowsOf(rodCoating, { rod: coated(rods, null) })).toHaveLength(1);
  });

  // 9 in, common practice.
  testAtLimit({
    name: "longest rod in the barrel",
    rule: rodCoating,
    at: (delta) => inBarrel(inch(9) + delta, { mechanicalHeaviest: given(100, "shop test") }),
    passes: -1,
    pick: LONGEST,
  });

  // A 1-1/4 bar weighs 4.173 lb a foot (490 lb/ft3 x pi/4 d2); rolled 1-1/4-7 UNC is made of bar of 1.1572, 3.5766 lb a foot:
  // a pound of it is 3.355 in long.
  it("is as long as a pound of its bar", () => {
    const row = rowOf(rodCoating, inBarrel(inch(3), {}), HEAVIEST);
    expect(row).toMatchObject({ status: "pass", severity: "advise", edition: "shop" });
    expect(row.note).toBe("bar of 1 lb at the most; heavier ones are dipped (common practice)");
    const limit = row.limit?.kind === "length" ? row.limit.twice / 2 : 0;
    expect(limit / inches(1)).toBeCloseTo(3.355, 2);
    const status = (length: number) => rowOf(rodCoating, inBarrel(length, {}), HEAVIEST).status;
    expect([status(limit), status(limit + 1)]).toEqual(["pass", "fail"]);
  });

  it("finds an anchor rod in the barrel: long and heavy", () => {
    const rows = rowsOf(rodCoating, { rod: coated("mechanical", null) });
    expect(rows.map(({ status }) => status)).toEqual(["pass", "fail", "fail"]);
  });

  it("is not checked where the bar's length is not known", () => {
    const rod = { ...coated("mechanical", null), embedment: missing("rods.embedment", "none") };
    expect(rowOf(rodCoating, { rod }, LONGEST)).toMatchObject({ status: "not-checked", missing: ["rods.embedment"] });
  });
});
