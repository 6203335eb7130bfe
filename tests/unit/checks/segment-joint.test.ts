import { describe, expect, it } from "vitest";
import { segmentJoint } from "../../../src/checks/rules/segment-joint.js";
import type { OutlineSpec, Pattern, SegmentsSpec } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { inch, isSubject, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = inch(0);
const at = { x: zero, y: zero };
const strip: OutlineSpec = { kind: "rectangle", x: inch(60), y: inch(18), at, corner: { kind: "square" } };
const halves: SegmentsSpec = { count: 2, bolt: null };
const points = (...xs: readonly ReturnType<typeof inch>[]): Pattern => ({
  kind: "points",
  at: xs.map((x) => ({ x, y: zero })),
});

describe("segment-joint", () => {
  it("does not apply to a template of one piece", () => {
    expect(rowsOf(segmentJoint).map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  // The shop's increment larger than the plate: the joint stays in the middle. Hole 1-5/16, 1/2 in of steel asked for.
  testAtLimit({
    name: "steel between joint and hole",
    rule: segmentJoint,
    at: (delta) => ({
      shop: { increment: given(inch(99), "shop test") },
      group: { pattern: points(plus(inch(0.5 + 1.3125 / 2), delta), inch(20)) },
      template: { outline: strip, opening: { kind: "none" }, segments: halves },
    }),
    passes: 1,
    pick: isSubject("J1"),
  });

  it("holds a splice plate that comes under a nut, washer or wrench", () => {
    const status = (wrench: number) =>
      rowOf(
        segmentJoint,
        {
          group: { pattern: points(inch(5), inch(20)) },
          rod: { wrenchRoom: given(inch(wrench), "job") },
          shop: { increment: given(inch(99), "shop test") },
          template: { outline: strip, opening: { kind: "none" }, segments: halves },
        },
        isSubject("J1 splice"),
      ).status;
    expect([status(1), status(9)]).toEqual(["pass", "fail"]);
  });

  it("moves a joint as little as clears the rod that stands where it would run", () => {
    const rows = rowsOf(segmentJoint, {
      group: { pattern: points(zero, inch(20)) },
      rod: { wrenchRoom: missing("rods.wrenchRoom", "not given") },
      template: { outline: strip, opening: { kind: "none" }, segments: halves },
    });
    expect(rows.map(({ status }) => status)).toEqual(["pass", "pass", "pass"]);
  });

  it("tells of an outline whose joints leave more pieces than segments", () => {
    const u: OutlineSpec = {
      kind: "polygon",
      corner: { kind: "square" },
      at: [
        [-30, -9],
        [30, -9],
        [30, 20],
        [24, 20],
        [24, 0],
        [-20, 0],
        [-20, 20],
        [-30, 20],
      ].map(([x = 0, y = 0]) => ({ x: inch(x), y: inch(y) })),
    };
    const pieces = (count: number) =>
      rowOf(
        segmentJoint,
        {
          group: { pattern: points(inch(-15), inch(15)) },
          template: { outline: u, opening: { kind: "none" }, segments: { count, bolt: null } },
        },
        isSubject("segments"),
      );
    expect(pieces(2).status).toBe("pass");
  });
});

describe("joints of a ring whose rods leave equal sectors no room", () => {
  // 23 rods and four equal sectors: of the 92 turns at which a joint meets a rod, two are 3.9 degrees apart; a splice plate needs more.
  it("move by themselves between rods, so that every splice plate lies clear", () => {
    const ring: OutlineSpec = { kind: "ring", outer: inch(168), inner: inch(148), at };
    const rows = rowsOf(segmentJoint, {
      group: { pattern: { kind: "circle", diameter: inch(158), count: 23, start: { kind: "straddle" } } },
      rod: { wrenchRoom: missing("rods.wrenchRoom", "not given") },
      template: { outline: ring, opening: { kind: "none" }, segments: { count: 4, bolt: null } },
    });
    expect(rows).toHaveLength(9);
    expect(rows.filter(({ status }) => status !== "pass")).toEqual([]);
  });
});
