import { describe, expect, it } from "vitest";
import type { Sense } from "../../../src/checks/index.js";
import { atLeast, compareSums, fixed, minus, plus } from "../../../src/checks/results.js";
import { wordsIn } from "../../../src/checks/words.js";
import { given, missing } from "../../../src/job/model/job.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";

const say = wordsIn("in");
const of = (length: number) => given(inches(length), "job");
const unknown = (name: string) => missing(`base.${name}`, `no ${name} is given`);

/** Projection against grout 1-1/2, plate 1-1/2 and a washer. */
function stack(projection: number, washer: Parameters<typeof plus>[1]) {
  const value = [plus("projection", given(nanometres(projection), "job"))];
  return compareSums(
    "A1",
    [value, ">=", [plus("grout", of(1.5)), plus("plate", of(1.5)), plus("washer", washer)]],
    say,
  );
}

describe("sums held against each other", () => {
  it.each([-1, 0, 1])("are compared as doubled lengths when every part is known: limit %i nm", (delta) => {
    expect(stack(inches(3.25) + delta, of(0.25))).toMatchObject({
      kind: "compared",
      value: { kind: "length", twice: 2 * (inches(3.25) + delta) },
      limit: { kind: "length", twice: 2 * inches(3.25) },
    });
  });

  it("say their parts, by how often each is taken", () => {
    const limit = [plus("hole", of(2), 4), fixed("rod", inches(1), -2), plus("washer", of(3), 1)];
    expect(compareSums("A1", [[plus("washer", of(3))], ">=", limit], say)).toMatchObject({
      note: "washer 3 against 2 x hole 2 - rod 1 + washer 3 / 2",
      limit: { twice: 2 * (2 * inches(2) - inches(1)) + inches(3) },
    });
  });

  // Grout 1-1/2 + plate 1-1/2 = 3: less than 3 fails whatever the washer is, 3 and more may pass or fail.
  it.each([
    [-1, "compared"],
    [0, "not-checked"],
    [1, "not-checked"],
  ])("without a part that adds to the need: best case %i nm", (delta, kind) => {
    expect(stack(inches(3) + delta, unknown("washer")).kind).toBe(kind);
  });

  it("that fail all the same say so, and what is missing", () => {
    expect(stack(inches(0.5), unknown("washer"))).toMatchObject({
      limit: { twice: 2 * inches(3) },
      note:
        "projection 1/2 against grout 1-1/2 + plate 1-1/2 + washer (not given); " +
        "it fails whatever the washer is: no washer is given (base.washer)",
    });
  });

  it("name every part that is missing", () => {
    const limit = [plus("grout", of(3)), plus("washer", unknown("washer")), plus("nut", unknown("nut"))];
    const held = (projection: number) => compareSums("A1", [[plus("projection", of(projection))], ">=", limit], say);
    expect(held(1).note).toContain(
      "it fails whatever the washer and the nut are: no washer is given (base.washer); no nut",
    );
    expect(held(4)).toMatchObject({
      kind: "not-checked",
      note: "no washer is given (base.washer); no nut is given (base.nut)",
    });
  });

  // What helps has no greatest figure: nothing can be said without it.
  it.each([
    ["the value itself", [plus("thread", unknown("thread"))], [plus("projection", of(9))]],
    [
      "what is taken off the need",
      [plus("thread", of(1))],
      [plus("projection", of(9)), minus("grout", unknown("grout"))],
    ],
  ])("are not checked without %s", (_, value, limit) => {
    expect(compareSums("A1", [value, ">=", limit], say).kind).toBe("not-checked");
  });

  it.each([
    ["<=", 5, "compared"],
    ["<=", 4, "not-checked"],
    ["=", 5, "not-checked"],
  ] as const)("turn round with the sense: %s, %d", (sense: Sense, value, kind) => {
    const held = compareSums(
      "A1",
      [[plus("reach", of(value)), plus("play", unknown("play"))], sense, [plus("edge", of(4))]],
      say,
    );
    expect(held.kind).toBe(kind);
  });

  it("take a part that has a least figure at that figure", () => {
    const rod = millimetres(24);
    const limit = [atLeast(rod, plus("hole", unknown("hole"), 4)), fixed("rod", rod, -2)];
    const held = (washer: number) => compareSums("A1", [[fixed("washer", washer)], ">=", limit], wordsIn("mm"));
    expect(held(millimetres(24) - 1)).toMatchObject({ kind: "compared", limit: { twice: 2 * rod } });
    expect(held(millimetres(24)).kind).toBe("not-checked");
  });

  it("give a remark what is spare, and none where a part is missing", () => {
    const remark = (spare: number) => `; spare ${say.twice(spare)}`;
    const row = (plate: Parameters<typeof plus>[1]) =>
      compareSums("A1", [[fixed("thread", inches(2))], ">=", [fixed("need", inches(3)), plus("plate", plate)]], say, {
        remark,
        clause: "c",
        measured: "the thread",
      });
    expect(row(of(0))).toMatchObject({
      note: expect.stringContaining("; spare -1"),
      clause: "c",
      measured: "the thread",
    });
    expect(row(unknown("plate")).note).not.toContain("spare");
  });
});
