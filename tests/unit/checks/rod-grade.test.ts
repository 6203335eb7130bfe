import { describe, expect, it } from "vitest";
import { rodGrade } from "../../../src/checks/rules/rod-grade.js";
import type { Bottom } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres } from "../../../src/units/index.js";
import { groupFixture } from "../../fixture.js";
import { hasClause, inch, onLine, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const SIZES = hasClause("group A", "sizes of the grade");
const WELDING = hasClause("group A", "welding to the rods");
const grade = (name: string) => given(name, "job");
const PLATE = { shape: "square", size: inch(3), thickness: inch(0.5) } as const;

describe("rod-grade", () => {
  // ASTM F1554: 36 and 55 to 4 in, 105 to 3 in. ISO 898-1: to M39 (from memory).
  describe.each([
    ["F1554 36", inch(4), "ASTM F1554", "ask"],
    ["F1554 55", inch(4), "ASTM F1554", "ask"],
    ["F1554 105", inch(3), "ASTM F1554", "ask"],
    ["8.8", millimetres(39), "ISO 898-1", "advise"],
    ["10.9", millimetres(39), "ISO 898-1", "advise"],
  ])("%s", (name, greatest, edition, severity) => {
    testAtLimit({
      name: "its greatest size",
      rule: rodGrade,
      at: (delta) => ({
        group: { pattern: onLine(0) },
        rod: { grade: grade(name), diameter: plus(greatest, delta) },
        base: {
          groups: [groupFixture({ pattern: onLine(0) }, { grade: grade(name), diameter: plus(greatest, delta) })],
        },
      }),
      passes: -1,
      pick: (row) => SIZES(row) && row.edition === edition && row.severity === severity,
    });
  });

  it("says what larger metric rods are", () => {
    const rod = { grade: grade("8.8"), size: "M42", diameter: millimetres(42) };
    const row = rowOf(rodGrade, { rod }, SIZES);
    expect(row.status).toBe("fail");
    expect(row.note).toContain("the standard ends at M39; larger rods are made to its strengths by agreement");
  });

  // ASTM F1554: 36 weldable, 55 with supplement S1 only, 105 not.
  it.each([
    ["F1554 36", false, "pass", "weldable: yes"],
    ["F1554 36", true, "pass", "weldable: yes"],
    ["F1554 55", false, "fail", "the job does not say that they are ordered so (rods.weldable)"],
    ["F1554 55", true, "pass", "only with supplement S1"],
    ["F1554 105", false, "fail", "weldable: no"],
    ["F1554 105", true, "fail", "weldable: no"],
    // ISO 898-1: 8.8 and 10.9 are quenched and tempered (from memory); common practice is not to weld to them.
    ["8.8", true, "fail", "weldable: no"],
    ["10.9", false, "fail", "weldable: no"],
    ["4.6", true, "not-checked", "whether 4.6 is weldable is not kept here"],
    ["A193 B7", true, "not-checked", "A193 B7 is a grade of the shop's own"],
  ])("%s welded, ordered weldable %s: %s", (name, weldable, status, note) => {
    const row = rowOf(rodGrade, { rod: { grade: grade(name), welded: true, weldable } }, WELDING);
    expect(row).toMatchObject({ status, severity: "ask" });
    expect(row.note).toContain(note);
  });

  it.each([
    ["F1554 36", "not-applicable"],
    ["F1554 55", "not-applicable"],
    ["F1554 105", "fail"],
    ["8.8", "fail"],
  ])("%s ordered weldable, nothing welded: %s", (name, status) => {
    const row = rowOf(rodGrade, { rod: { grade: grade(name), weldable: true } }, WELDING);
    expect(row).toMatchObject({ status, severity: "ask" });
  });

  // Tack welds and plates that are welded on are welds: none on grade 105, on 55 with supplement S1 alone (ASTM F1554).
  it.each<readonly [string, Bottom, string]>([
    ["a nut tack welded", { kind: "nut", washer: null, tackWelded: true }, "with a nut tack welded"],
    [
      "the nuts of a plate tack welded",
      { kind: "plate", nuts: 2, tackWelded: true, ...PLATE },
      "with a nut tack welded",
    ],
    ["a plate welded on", { kind: "plate", nuts: 0, tackWelded: false, ...PLATE }, "with a plate welded on"],
  ])("holds %s", (_, bottom, words) => {
    const statusOf = (name: string, weldable: boolean) =>
      rowOf(rodGrade, { rod: { grade: grade(name), bottom: given(bottom, "job"), weldable } }, WELDING);
    expect(statusOf("F1554 36", false).status).toBe("pass");
    expect(statusOf("F1554 55", true).status).toBe("pass");
    expect(statusOf("F1554 55", false).status).toBe("fail");
    expect(statusOf("F1554 105", true)).toMatchObject({ status: "fail", value: { kind: "count", count: 4 } });
    expect(statusOf("F1554 105", true).note).toContain(words);
  });

  it.each<readonly [string, Bottom]>([
    ["a nut", { kind: "nut", washer: null, tackWelded: false }],
    ["a plate between nuts", { kind: "plate", nuts: 2, tackWelded: false, ...PLATE }],
    ["a hook", { kind: "hook", reach: inch(4), radius: null }],
  ])("takes %s for no weld", (_, bottom) => {
    const row = rowOf(rodGrade, { rod: { grade: grade("F1554 105"), bottom: given(bottom, "job") } }, WELDING);
    expect(row.status).toBe("not-applicable");
  });

  it("asks nothing of welding where nothing is welded", () => {
    const row = rowOf(rodGrade, { rod: { grade: grade("F1554 105"), welded: false } }, WELDING);
    expect(row).toMatchObject({ status: "not-applicable", edition: "ASTM F1554" });
    expect(row.note).toContain("rods.welded");
  });

  it("is judged group by group, the rods of each counted", () => {
    const groups = [
      groupFixture({}, { grade: grade("F1554 36"), welded: true }),
      groupFixture({ letter: "B", pattern: onLine(inch(1), inch(3)) }, { grade: grade("F1554 105"), welded: true }),
    ];
    const rows = rowsOf(rodGrade, { base: { groups } }).filter(({ clause }) => clause.startsWith("welding"));
    expect(rows).toMatchObject([
      { subject: "group A", status: "pass" },
      {
        subject: "group B",
        status: "fail",
        measured: "the number of rods that are welded and may not be",
        value: { kind: "count", count: 2 },
        limit: { kind: "count", count: 0 },
      },
    ]);
  });

  // ASTM F1554: A563 A hex to 1-1/2 in, heavy hex above and on galvanized 55; DH heavy hex on 105.
  it.each([
    ["F1554 36", 1.25, "plain", "hex", "pass"],
    ["F1554 36", 1.5, "galvanized", "hex", "pass"],
    ["F1554 36", 1.75, "plain", "hex", "fail"],
    ["F1554 36", 1.25, "plain", "heavy hex", "pass"],
    ["F1554 55", 1.25, "plain", "hex", "pass"],
    ["F1554 55", 1.25, "galvanized", "hex", "fail"],
    ["F1554 55", 1.25, "galvanized", "heavy hex", "pass"],
    ["F1554 105", 0.5, "plain", "hex", "fail"],
    ["F1554 105", 0.5, "plain", "heavy hex", "pass"],
  ] as const)("%s of %d in, %s, with %s nuts: %s", (name, diameter, finish, kind, status) => {
    const nut = given({ kind, acrossCorners: inch(2), height: inch(1) } as const, "job");
    const rod = { grade: grade(name), diameter: inch(diameter), finish: given(finish, "job"), nut };
    const row = rowOf(rodGrade, { rod }, hasClause("group A", "nut recommended with the grade"));
    expect(row).toMatchObject({ status, severity: "ask", edition: "ASTM F1554" });
  });

  it("asks for the finish where the nut hangs on it", () => {
    const rod = { grade: grade("F1554 55"), finish: missing("rods.finish", "no finish is given") };
    const row = rowOf(rodGrade, { rod }, hasClause("group A", "nut recommended with the grade"));
    expect(row).toMatchObject({ status: "not-checked", missing: ["rods.finish"] });
  });

  it("is not checked without a grade", () => {
    const rows = rowsOf(rodGrade, { rod: { grade: missing("rods.grade", "no grade is given"), welded: true } });
    expect(rows.map(({ status, note }) => [status, note])).toEqual(
      Array(3).fill(["not-checked", "no grade is given (rods.grade)"]),
    );
  });
});
