/** What is cut or drilled by: under which names it is delivered, when it is not, and its figures by hand. */
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { buildDelivered, inputsWith, PLYWOOD, STEEL, usBase } from "../delivered.js";

const both = (form?: number): string[] => [usBase("S1", STEEL, form), usBase("P1", PLYWOOD, form)];

/** Kind and name of every file of every base. */
function namesOf(...args: Parameters<typeof buildDelivered>): string[][] {
  const built = buildDelivered(...args);
  expect(built.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  return [...built.bases].map(({ files }) => files.map(({ kind, path }) => `${kind} ${path}`));
}

/** Kind and path of the two cut files of a steel template. */
function cutOf(mark: string, words = ""): readonly string[] {
  const [name, held] = [`${mark}_1-off_PL1-4_steel_rev-A${words}`, words.includes("HELD") ? "held/" : ""];
  return [`cut-joined cut/${held}${name}.dxf`, `cut-r12 cut/${held}lines/${name}_lines.dxf`];
}

const drillOf = (words = ""): string =>
  `drill-list cut/${words.includes("HELD") ? "held/" : ""}P1_1-off_PLY3-4_plywood_rev-A${words}_drill-list.csv`;

describe("the name of a cut file or drill list", () => {
  it.each([
    ["released", ""],
    ["preliminary", "_NOT-RELEASED"],
    ["for approval", "_NOT-RELEASED"],
  ])("of a job that is %s ends in %j", (status, words) => {
    expect(namesOf(inputsWith(both(), { status }))).toEqual([cutOf("S1", words), [drillOf(words)]]);
  });
});

describe("a held base", () => {
  it("has no file to cut or drill by, and takes none from the base beside it", () => {
    expect(namesOf(inputsWith([...both(40), usBase("S2", STEEL)]))).toEqual([[], [], cutOf("S2")]);
  });

  it("says so in their names where they are asked for all the same, and lies apart", () => {
    expect(namesOf(inputsWith([...both(40), usBase("S2", STEEL)]), true)).toEqual([
      cutOf("S1", "_HELD"),
      [drillOf("_HELD")],
      cutOf("S2"),
    ]);
    expect(namesOf(inputsWith(both(40), { status: "preliminary" }), true).flat()).toEqual([
      ...cutOf("S1", "_HELD_NOT-RELEASED"),
      drillOf("_HELD_NOT-RELEASED"),
    ]);
  });
});

describe("a drill list", () => {
  // By hand: 23 x 12 about (1/2, -1/2): left edge at -11, lower edge at -6-1/2; tags go clockwise from the north-west.
  it("gives each hole from the working point, from the left and from the lower edge", () => {
    const [base] = buildDelivered(inputsWith([usBase("P1", PLYWOOD)])).bases;
    const text = new TextDecoder().decode(base?.files.find(({ kind }) => kind === "drill-list")?.bytes);
    const { data } = Papa.parse<Record<string, string>>(text.trimEnd(), { header: true });
    const figures = data.map((row) => [
      row.tag,
      ...["x", "y", "from left edge", "from lower edge", "diameter", "width", "height"].map((name) => row[name]),
    ]);
    expect(figures).toEqual([
      ["BOARD", "-11", "-6.5", "0", "0", "", "23", "12"],
      ["OP1", "0", "0", "11", "6.5", "4", "", ""],
      ["A1", "-4", "4", "7", "10.5", "0.8125", "", ""],
      ["A2", "4", "4", "15", "10.5", "0.8125", "", ""],
      ["A3", "4", "-4", "15", "2.5", "0.8125", "", ""],
      ["A4", "-4", "-4", "7", "2.5", "0.8125", "", ""],
    ]);
    expect(data.map(({ unit, "board thickness": thickness }) => [unit, thickness])).toEqual(
      data.map(() => ["in", "0.75"]),
    );
  });
});

describe("the weight of a steel template, by hand: net area x thickness x density", () => {
  const weightOf = (...args: Parameters<typeof inputsWith>) =>
    [...buildDelivered(inputsWith(...args)).bases].map(({ summary }) => summary.template.weight);
  const circle = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

  // AISC Steel Construction Manual, part 17, weights of building materials: rolled steel 490 lb/ft3 (from memory)
  it("of a job in inches: 490 lb/ft3", () => {
    const cubicInches = (23 * 12 - circle(4) - 4 * circle(13 / 16)) * (1 / 4);
    const [weight] = weightOf([usBase("S1", STEEL)]);
    expect(weight).toEqual({ value: expect.closeTo((cubicInches / 12 ** 3) * 490, 4), unit: "lb" });
  });

  // EN 1993-1-2:2005, 3.2.2: unit mass of steel 7850 kg/m3 (from memory)
  it("of a job in millimetres: 7850 kg/m3", () => {
    const base =
      "{ mark: S1, rods: { diameter: M20 }, pattern: { kind: rectangle, x: 200, y: 200 }, " +
      "template: { thickness: 6, hole: 22, key: none, outline: { kind: rectangle, x: 500, y: 300 }, opening: { diameter: 100 } } }";
    const cubicMetres = (500 * 300 - circle(100) - 4 * circle(22)) * 6 * 1e-9;
    const [weight] = weightOf([base], { unit: "mm" });
    expect(weight).toEqual({ value: expect.closeTo(cubicMetres * 7850, 4), unit: "kg" });
  });
});
