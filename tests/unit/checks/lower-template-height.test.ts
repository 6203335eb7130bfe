import { describe, expect, it } from "vitest";
import { lowerTemplateHeight } from "../../../src/checks/rules/lower-template-height.js";
import type { Bottom, LowerLevel, LowerSpec, Nut } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

// ASME B18.2.2, heavy hex 1-1/4: greatest height 1.251 in.
const nut = given<Nut>(
  { kind: "heavy hex", acrossCorners: inch(2.309), height: inch(1.251) },
  "ASME B18.2.2 heavy hex",
);
const level = (distance: ReturnType<typeof inch>, from: LowerLevel["from"] = "lower ends") =>
  given<LowerLevel>({ from, distance }, "job");
const lower = (at: LowerSpec["level"]): LowerSpec => ({
  thickness: inch(0.25),
  outline: { kind: "auto", corner: { kind: "square" } },
  opening: { kind: "auto" },
  level: at,
});
const ROOM = hasClause("T1-L rods A", "bottom of the rod + lower nut");
const DEPTH = hasClause("T1-L rods A", "embedment and steel");
const THREAD = hasClause("T1-L rods A", "thread at the lower end");

describe("lower-template-height", () => {
  it("does not apply where there is none", () => {
    expect(rowsOf(lowerTemplateHeight).map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  // What stands on the rod under the plate, from its lower end up, then the lower nut. Lengths are worked out and rounded up to
  // 1/8: 9 + 24 + 1.251 + 1/2 to 34-7/8 leaves 0.624 below the nut, and so do the others with theirs.
  it.each<[string, Bottom, number]>([
    ["a straight end", { kind: "straight" }, 1.251],
    ["a nut", { kind: "nut", washer: null, tackWelded: false }, 2 * 1.251 + 0.624],
    [
      "a nut with a plate washer",
      { kind: "nut", washer: { shape: "square", size: inch(3), thickness: inch(0.5) }, tackWelded: false },
      2 * 1.251 + 0.5 + 0.624,
    ],
    [
      "a plate between two nuts",
      { kind: "plate", nuts: 2, tackWelded: false, shape: "square", size: inch(4), thickness: inch(1) },
      3 * 1.251 + 1 + 0.624,
    ],
    [
      "a plate over one nut",
      { kind: "plate", nuts: 1, tackWelded: false, shape: "round", size: inch(4), thickness: inch(1) },
      2 * 1.251 + 1 + 0.624,
    ],
    ["a swedged part", { kind: "swedged", length: inch(6) }, 6 + 1.251],
  ])("stands above %s and its own nut", (_, bottom, needed) => {
    const status = (delta: number) =>
      rowOf(
        lowerTemplateHeight,
        {
          rod: { nut, bottom: given(bottom, "job") },
          template: { lower: lower(level(plus(inch(needed), delta))) },
        },
        ROOM,
      ).status;
    expect([-1, 0, 1].map(status)).toEqual(["fail", "pass", "pass"]);
  });

  testAtLimit({
    name: "below the top of concrete: embedment less depth is the height above the bearing face of the nut",
    rule: lowerTemplateHeight,
    at: (delta) => ({
      rod: {
        nut,
        embedment: given(inch(24), "job"),
        bottom: given({ kind: "nut", washer: null, tackWelded: false } as const, "job"),
      },
      template: { lower: lower(level(plus(inch(24 - 1.251), -delta), "top of concrete")) },
    }),
    passes: 1,
    pick: ROOM,
  });

  testAtLimit({
    name: "all of it lies in the concrete",
    rule: lowerTemplateHeight,
    at: (delta) => ({
      rod: {
        nut,
        bottom: given({ kind: "straight" } as const, "job"),
        embedment: given(inch(11.5), "job"),
      },
      template: { lower: lower(level(plus(inch(11.5 - 0.25 - 1.251), -delta))) },
    }),
    passes: 1,
    pick: DEPTH,
  });

  testAtLimit({
    name: "the thread at the lower end takes the upper nut",
    rule: lowerTemplateHeight,
    at: (delta) => ({
      rod: { nut, bottomThread: given(plus(inch(4 + 0.25 + 1.251), delta), "job") },
      template: { lower: lower(level(inch(4))) },
    }),
    passes: 1,
    pick: (row) => THREAD(row) && row.severity === "ask",
  });

  // 34-7/8 - 33 = 1-7/8 of nut and rod below the embedment, 4 of it below the plate, plate 1/4, nut 1.251.
  testAtLimit({
    name: "that thread is measured from the end of the rod, below its nut",
    rule: lowerTemplateHeight,
    at: (delta) => ({
      rod: { nut, bottomThread: given(plus(inch(1.875 + 4 + 0.25 + 1.251), delta), "job") },
      template: { lower: lower(level(inch(20), "top of concrete")) },
    }),
    passes: 1,
    pick: (row) => THREAD(row) && row.severity === "ask",
  });

  it("asks for its height, the lower end and the thread where they are not given", () => {
    const open = lower(missing("template.lower.above", "no height"));
    expect(rowsOf(lowerTemplateHeight, { template: { lower: open } }).map((row) => row.missing)).toEqual([
      ["template.lower.above"],
    ]);
    const rod = {
      nut,
      bottom: missing("rods.bottom", "no end"),
      bottomThread: missing("rods.bottomThreads", "no thread"),
    };
    const rows = rowsOf(lowerTemplateHeight, { rod, template: { lower: lower(level(inch(4))) } });
    expect(rows.flatMap((row) => row.missing)).toEqual(["rods.bottom", "rods.bottom", "rods.bottomThreads"]);
  });
});
