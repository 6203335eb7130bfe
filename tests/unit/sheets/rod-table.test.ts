/** RODS AND SETTING: what is given stands in it, what is given of no group has no column. */
import { describe, expect, it } from "vitest";
import { type Base, given, missing, type Rod } from "../../../src/job/model/job.js";
import { rodTable } from "../../../src/sheets/rod-table.js";
import { textWidth } from "../../../src/sheets/text-metrics.js";
import { inches } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { sheetCase } from "./sheet-case.js";

const b = baseFixture();
const none = (key: string) => missing(key, "not given");

function tableOf(rods: readonly Partial<Rod>[], template: Partial<Base["template"]> = {}, base: Partial<Base> = {}) {
  const groups = rods.map((rod, i) =>
    groupFixture(
      i === 0 ? {} : { letter: "B", pattern: { kind: "points", at: [{ x: inches(0), y: inches(8) }] } },
      rod,
    ),
  );
  const one = baseFixture({ groups, template: { ...b.template, ...template }, ...base });
  return rodTable(sheetCase(jobFixture(), one));
}

const titles = (table: ReturnType<typeof rodTable>) => table.columns.map(({ title }) => title);

describe("rods and setting", () => {
  it("says thread, length and lower end under each group", () => {
    const { under, foot } = tableOf([{ length: given(inches(38), "job") }, { bottom: none("rods.bottom") }]);
    expect(under).toEqual(["THREAD 8, LENGTH 38, LOWER END NUT", "THREAD 8"]);
    expect(foot.join(" ")).toContain("UNDERSIDE OF TEMPLATE 3 ABOVE T.O.C.; PROJECTION FROM T.O.C.");
  });

  it("says once what is the same for all groups", () => {
    const { under, foot } = tableOf([{}, {}]);
    expect(under).toEqual([]);
    expect(foot.join(" ")).toMatch(/^EVERY ROD: THREAD 8, LOWER END NUT; /);
    expect(tableOf([{}]).foot.join(" ")).not.toContain("EVERY ROD");
  });

  it("counts nuts and washers of a rod by where they go", () => {
    expect(tableOf([{}]).foot.join(" ")).toContain(
      "NUTS A ROD: 2 ON TEMPLATE, 1 LEVELING, 1 ON BASE PLATE, 1 AT LOWER END; WASHERS: 1 LEVELING, 1 ON BASE PLATE",
    );
    const over = tableOf([{}], { use: "setting plate over cast rods" }, { levelling: given("shims", "job") });
    expect(over.foot.join(" ")).toContain("NUTS A ROD: 1 ON BASE PLATE, 1 AT LOWER END; WASHERS: 1 ON BASE PLATE");
    expect(over.foot.join(" ")).not.toMatch(/TEMPLATE/);
  });

  it("tells groups apart whose nuts differ", () => {
    const plate = given(
      { kind: "plate", nuts: 2, tackWelded: false, shape: "round", size: inches(4), thickness: inches(1) } as const,
      "job",
    );
    const { foot } = tableOf([{}, { bottom: plate }]);
    expect(foot.join(" ")).toMatch(/A: NUTS A ROD: .*1 AT LOWER END.*B: NUTS A ROD: .*2 AT LOWER END/);
  });

  it("has no column for what is given of no group", () => {
    expect(titles(tableOf([{}]))).toEqual(["GR", "NO", "ROD", "GRADE", "HOLE", "BASE PL", "PROJ", "EMBED"]);
    const nothing = { projection: none("p"), embedment: none("e"), grade: none("g"), finish: none("f") };
    expect(titles(tableOf([nothing]))).toEqual(["GR", "NO", "ROD", "HOLE", "BASE PL"]);
    expect(titles(tableOf([nothing, {}]))).toContain("PROJ");
    const bare = { threadLength: none("t"), bottom: none("b") };
    expect(tableOf([bare]).under).toEqual([]);
  });

  it("says that the template's height is not given", () => {
    expect(tableOf([{}], { height: none("template.height") }).foot.join(" ")).toContain("TEMPLATE HEIGHT NOT GIVEN");
  });

  it("gives each column the room of its widest text, all together the width", () => {
    const { columns, rows } = tableOf([{}, { size: "3/4", grade: given("ISO 898-1 10.9", "job") }]);
    expect(columns.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    columns.forEach(({ title, share }, i) => {
      for (const words of [title, ...rows.map((row) => row[i] ?? "")])
        expect(textWidth(words, 3)).toBeLessThanOrEqual(share * 146 - 1.6);
    });
  });
});
