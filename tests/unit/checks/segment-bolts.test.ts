import { describe, expect, it } from "vitest";
import { segmentBolts } from "../../../src/checks/rules/segment-bolts.js";
import type { OutlineSpec, PlanShape } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { readSpliceBolt } from "../../../src/job/resolve/splice-bolt.js";
import { contextOf, inch, isSubject, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = inch(0);
const at = { x: zero, y: zero };
const strip: OutlineSpec = { kind: "rectangle", x: inch(60), y: inch(18), at, corner: { kind: "square" } };
const bolt = (size: string) => {
  const read = readSpliceBolt(size, "in");
  if (!read.ok) throw new Error(read.message);
  return given(read.value, "job");
};
const halves = (size: string) => ({
  outline: strip,
  opening: { kind: "none" } as const,
  segments: { count: 2, bolt: bolt(size) },
});

describe("segment-bolts", () => {
  it("does not apply to a template of one piece", () => {
    expect(rowsOf(segmentBolts).map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  // AISC 360-22 Table J3.4: least edge distance of a bolt; Table J3.3: its standard hole; J3.4: 2-2/3 d between bolts.
  it.each([
    ["1/2", 0.75, 0.5625],
    ["5/8", 0.875, 0.6875],
    ["3/4", 1, 0.8125],
    ["7/8", 1.125, 0.9375],
    ["1", 1.25, 1.125],
  ])("bolts %s keep %s in from joint and edges, in holes of %s in", (size, edge, hole) => {
    const context = contextOf({ template: halves(size) });
    const { parted } = context.plate;
    expect(parted?.bolt.value.hole.value).toBe(inch(hole));
    const row = rowOf(segmentBolts, { template: halves(size) }, isSubject("J1 edge"));
    expect([row.status, row.limit, row.clause]).toEqual([
      "pass",
      { kind: "length", twice: 2 * inch(edge) },
      "Table J3.4",
    ]);
    const spacing = rowOf(segmentBolts, { template: halves(size) }, isSubject("J1 spacing"));
    const diameter = parted?.bolt.value.diameter ?? 0;
    expect(spacing.limit).toEqual({ kind: "length", twice: Math.ceil((16 * diameter) / 3) });
    expect(spacing.status).toBe("pass");
  });

  // Standard holes are 1/16 in over bolts below 1 in and 1/8 over 1 in (AISC 360-22 Table J3.3): a joint shifts 1/8 in, 1/4 in.
  it.each([
    ["5/8", 1 / 8],
    ["3/4", 1 / 8],
    ["1", 1 / 4],
  ])("bolts %s let a segment shift %s in against the placing tolerance, as advice", (size, shift) => {
    const row = rowOf(segmentBolts, { template: halves(size) }, isSubject("bolt play"));
    expect(row).toMatchObject({ severity: "advise", value: { kind: "length", twice: 2 * inch(shift) } });
    const { limit } = row;
    expect(limit?.kind === "length" && row.status).toBe(
      limit?.kind === "length" && limit.twice >= 2 * inch(shift) ? "pass" : "fail",
    );
  });

  // ISO 273, medium series: M12 13.5, M16 17.5, M20 22.
  it.each([
    ["M12", 13.5],
    ["M16", 17.5],
    ["M20", 22],
  ])("%s goes in a hole of %s mm", (size, hole) => {
    expect(bolt(size).value.hole.value).toBe(hole * 1e6);
  });

  testAtLimit({
    name: "heads stand above the concrete with room to finish it",
    rule: segmentBolts,
    at: (delta) => {
      const { nut } = bolt("5/8").value;
      const height = nut.kind === "given" ? nut.value.height : zero;
      return { template: { ...halves("5/8"), height: given(plus(height, inch(1) + delta), "job") } };
    },
    passes: 1,
    pick: isSubject("bolt heads"),
  });

  it("keeps heads off the form that carries the template, not off bearers", () => {
    const row = (support: "form" | "bearers", y: number) =>
      rowOf(
        segmentBolts,
        {
          template: { ...halves("5/8"), support: given(support, "job") },
          concrete: {
            shape: given(
              { kind: "rectangle", x: inch(58), y: inch(y), corner: { kind: "square" } } as PlanShape,
              "job",
            ),
          },
        },
        isSubject("J1 form"),
      ).status;
    expect([row("form", 20), row("form", 12), row("bearers", 12)]).toEqual(["pass", "fail", "not-applicable"]);
  });

  it("keeps bolts off the nuts of rods", () => {
    const row = (x: number) =>
      rowOf(
        segmentBolts,
        {
          shop: { increment: given(inch(99), "shop test") },
          group: {
            pattern: {
              kind: "points",
              at: [
                { x: inch(x), y: inch(7) },
                { x: inch(20), y: zero },
              ],
            },
          },
          template: halves("5/8"),
        },
        isSubject("J1 nuts"),
      ).status;
    expect([row(1), row(4)]).toEqual(["fail", "pass"]);
  });
});
