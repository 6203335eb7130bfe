import { describe, expect, it } from "vitest";
import { tableSize } from "../../../src/checks/rules/table-size.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { nanometres } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { inch, isSubject, plus, rowsOf, testAtLimit } from "./context.js";

const at = { x: nanometres(0), y: nanometres(0) };
const outline = (x: Length, y: Length): Changes => ({
  template: { outline: { kind: "rectangle", x, y, at, corner: { kind: "square" } } },
});
const pattern = (x: number, y: number) =>
  ({ kind: "rectangle", x: inch(x), y: inch(y), nx: 2, ny: 2, perimeter: false }) as const;
const auto = { outline: { kind: "auto", corner: { kind: "square" } }, opening: { kind: "none" } } as const;

describe("table-size: the table of the fixture is 60 x 120", () => {
  testAtLimit({
    name: "the longer side, along x",
    rule: tableSize,
    at: (delta) => outline(plus(inch(120), 2 * delta), inch(60)),
    passes: -1,
    pick: isSubject("longer side"),
  });

  testAtLimit({
    name: "the shorter side, along x: the plate lies the other way round",
    rule: tableSize,
    at: (delta) => outline(plus(inch(60), 2 * delta), inch(120)),
    passes: -1,
    pick: isSubject("shorter side"),
  });

  it("a plate may be large where the table is", () => {
    const shop = { table: given({ x: inch(240), y: inch(144) }, "shop big") };
    const rows = rowsOf(tableSize, { ...outline(inch(140), inch(200)), shop });
    expect(rows.map(({ status }) => status)).toEqual(["pass", "pass"]);
    expect(rows[0]?.clause).toBe("table: shop big");
  });

  it.each([
    ["of the pattern, in feet", pattern(144, 10), auto, "x of the pattern, 12 ft where 12 in is meant?"],
    ["of the pattern, in millimetres", pattern(10, 305), auto, "y of the pattern, 305 in where 305 mm is meant?"],
    [
      "of the outline, in feet",
      pattern(12, 10),
      outline(inch(216), inch(16)).template,
      "x of the outline, 18 ft where 18 in is meant?",
    ],
  ] as const)("stops and guesses a slip %s", (_name, given, template, words) => {
    const row = rowsOf(tableSize, { group: { pattern: given }, template: { ...template } }).find(
      isSubject("longer side"),
    );
    expect(row).toMatchObject({ status: "fail", severity: "stop" });
    expect(row?.note).toContain(words);
  });

  it("is not checked where the shop names no table", () => {
    const shop = { table: missing("table of the shop file", "the shop file names no largest plate") };
    expect(rowsOf(tableSize, { shop })).toMatchObject([
      { status: "not-checked", note: "the shop file names no largest plate (table of the shop file)" },
    ]);
  });
});
