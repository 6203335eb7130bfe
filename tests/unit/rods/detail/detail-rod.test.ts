/** Rods as a shop makes them, from a base of the fixture: four 1-1/4 in rods of F1554 55, galvanized, 9 in above and 24 in below. */
import { describe, expect, it } from "vitest";
import type { Rod } from "../../../../src/job/model/job.js";
import { given, missing } from "../../../../src/job/model/job.js";
import { detailRod } from "../../../../src/rods/detail/index.js";
import { inches } from "../../../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../../../fixture.js";

const inch = inches;
const detailOf = (rod: Partial<Rod> = {}) => detailRod(jobFixture(), baseFixture(), groupFixture({}, rod));
const bottom = (value: Extract<Rod["bottom"], { kind: "given" }>["value"]) => given(value, "job");

/** A length that is worked out, with its parts. */
function worked(input: ReturnType<typeof detailOf>["overall"]) {
  if (input.kind === "missing") throw new Error(input.why);
  return input.value;
}

describe("length of a rod", () => {
  it("is what projects, is embedded, and the lower end takes, to the shop's step", () => {
    const { overall, cut } = detailOf();
    // 9 + 24 + 1.251 (ASME B18.2.2, greatest height of a 1-1/4 heavy hex nut) + 1/2 = 34.751, up to the eighth: 34.875.
    expect(worked(overall)).toMatchObject({ value: inch(34.875), by: "worked out" });
    expect(worked(cut).value).toBe(inch(34.875));
    expect(worked(overall).terms.map(({ length }) => length)).toEqual(
      [9, 24, 1.251, 0.5, 0, 0.124].map((each) => inch(each)),
    );
  });

  it.each<[string, Partial<Rod>, number]>([
    ["nothing anchors it", { bottom: bottom({ kind: "straight" }) }, 33],
    ["its end is swedged", { bottom: bottom({ kind: "swedged", length: inch(6) }) }, 33],
    [
      "a plate and its nut",
      {
        bottom: bottom({
          kind: "plate",
          nuts: 2,
          tackWelded: false,
          shape: "square",
          size: inch(4),
          thickness: inch(0.75),
        }),
      },
      35.625,
    ],
    ["the job gives it", { length: given(inch(36), "job") }, 36],
  ])("where %s", (_, rod, length) => {
    const { overall, cut } = detailOf(rod);
    expect(worked(overall).value).toBe(inch(length));
    expect(worked(cut).value).toBe(inch(length));
    const sum = worked(overall).terms.reduce((total, each) => total + each.length, 0);
    expect(sum).toBe(worked(overall).value);
  });

  it("is not known where a part is not, and says which key would say it", () => {
    const { overall, cut, kilograms } = detailOf({ embedment: missing("rods.embedment", "no embedment is given") });
    for (const each of [overall, cut, kilograms])
      expect(each).toMatchObject({ kind: "missing", key: "rods.embedment" });
  });
});
