/** What may be welded to, and how such rods are ordered. ASTM F1554: 36 is weldable, 55 with supplement S1 alone, 105 is not. */
import { describe, expect, it } from "vitest";
import type { Bottom, Rod } from "../../../../src/job/model/job.js";
import { given } from "../../../../src/job/model/job.js";
import { barGroups } from "../../../../src/lists/bar-groups.js";
import { rodKind } from "../../../../src/orientation/rod-kind.js";
import { detailRod, orderedGrade } from "../../../../src/rods/detail/index.js";
import { groupLots } from "../../../../src/rods/lots.js";
import { detailParagraphs, gradeWords } from "../../../../src/sheets/rods/rod-words.js";
import { inches } from "../../../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../../../fixture.js";

const TACKED: Bottom = { kind: "nut", washer: null, tackWelded: true };
const detailOf = (grade: string, weldable: boolean, bottom: Bottom = TACKED, rod: Partial<Rod> = {}) =>
  detailRod(
    jobFixture(),
    baseFixture(),
    groupFixture({}, { grade: given(grade, "job"), weldable, bottom: given(bottom, "job"), ...rod }),
  );
const operation = (detail: ReturnType<typeof detailOf>, name: string) =>
  detail.operations.filter((each) => each.name === name).map(({ words }) => words);

describe("rods that are ordered weldable", () => {
  it.each([
    ["F1554 55", true, "F1554 55 S1"],
    ["F1554 55", false, "F1554 55"],
    ["F1554 36", true, "F1554 36"],
    ["F1554 105", true, "F1554 105"],
    ["4.6", true, "4.6 weldable"],
  ])("%s, weldable %s: %s", (grade, weldable, words) => {
    const detail = detailOf(grade, weldable);
    expect(orderedGrade(detail)).toMatchObject({ kind: "given", value: words });
    expect(gradeWords(detail)).toBe(words);
  });

  it("are another lot and another bar than those of the same grade without the supplement", () => {
    const use = (base: string) => ({ base, group: "A", perBase: 4, quantity: 8 });
    const lots = groupLots([
      { detail: detailOf("F1554 55", false), use: use("B1") },
      { detail: detailOf("F1554 55", true), use: use("B2") },
      { detail: detailOf("F1554 55", true), use: use("B3") },
    ]);
    expect(lots.map(({ total }) => total)).toEqual([8, 16]);
    const groups = barGroups(lots, jobFixture().shop.rodShop.stock);
    expect(groups.map(({ grade }) => grade)).toEqual(["F1554 55", "F1554 55 S1"]);
  });

  it("do not take the place of others", () => {
    const kinds = [true, false].map((weldable) => rodKind(groupFixture({}, { weldable })));
    expect(kinds[0]).not.toBe(kinds[1]);
  });

  // ASTM F1554 S1: white paint on the side near the end that is encased (secondary copy).
  it("are marked at their lower end too", () => {
    expect(operation(detailOf("F1554 55", true), "mark")).toEqual([
      "paint the projecting end yellow (F1554 55 S1); white paint on the side of the rod near its lower end (S1)",
    ]);
    expect(operation(detailOf("F1554 55", false), "mark")).toEqual(["paint the projecting end yellow (F1554 55)"]);
    const marks = (weldable: boolean) =>
      detailParagraphs(
        { mark: "R1", detail: detailOf("F1554 55", weldable), uses: [], total: 0 },
        new Set(),
        jobFixture(),
      )
        .filter(({ label }) => label === "MARK")
        .map(({ words }) => words);
    expect(marks(true)).toEqual(["white paint on the side of the rod near its lower end (S1)"]);
    expect(marks(false)).toEqual([]);
  });
});

describe("a weld that is ordered", () => {
  const plate: Bottom = {
    kind: "plate",
    nuts: 0,
    tackWelded: false,
    shape: "square",
    size: inches(4),
    thickness: inches(1),
  };
  it.each([
    ["F1554 36", false, ""],
    ["F1554 55", true, ""],
    ["F1554 55", false, ": NOT WITHOUT S1: ask the engineer"],
    ["F1554 105", true, ": NOT ON THIS GRADE: ask the engineer"],
    // ISO 898-1: quenched and tempered (from memory).
    ["8.8", true, ": NOT ON THIS GRADE: ask the engineer"],
    ["10.9", false, ": NOT ON THIS GRADE: ask the engineer"],
    ["5.6", false, ": only as the engineer approves"],
  ])("on %s, weldable %s", (grade, weldable, caution) => {
    const tack = "tack weld the nut at the lower end to the rod, on its underside";
    expect(operation(detailOf(grade, weldable), "weld")).toEqual([`${tack}${caution}`]);
    const [whole] = operation(detailOf(grade, weldable, plate), "weld");
    expect(whole).toBe(`weld the plate to the lower end, weld as the engineer of record gives it${caution}`);
    const words = detailParagraphs(
      { mark: "R1", detail: detailOf(grade, weldable, plate), uses: [], total: 0 },
      new Set(),
      jobFixture(),
    ).find(({ label }) => label === "WELDS");
    expect(words?.words).toBe(`weld the plate to the lower end, as the engineer of record gives it${caution}`);
  });
});
