/** A few cases of every class of the fuzz; `npm run fuzz` draws the many. Drawn from the seed of all tests. */
import { beforeAll, describe, expect, it } from "vitest";
import { runProgram } from "../../src/cli/run.js";
import { SEED } from "../seed.js";
import { allClasses } from "./classes.js";
import type { FuzzClass } from "./model.js";
import { runClass } from "./run-class.js";

const CASES: readonly (readonly [string, number])[] = [
  ["job files", 30],
  ["odd but valid geometry, cut files read by another reader", 12],
  ["shop files", 20],
  ["words of the language", 40],
  ["schedule and placement CSV", 16],
  ["XLSX", 16],
  ["read", 14],
  ["survey points", 20],
  ["summary.json", 30],
  ["DXF", 60],
  ["command line", 6],
];

describe("hostile input is answered or refused, never thrown at", () => {
  let classes: readonly FuzzClass[] = [];

  beforeAll(async () => {
    classes = await allClasses(runProgram);
  });

  it("has every class", () => {
    expect(classes.map(({ name }) => name)).toEqual(CASES.map(([name]) => name));
  });

  it.each(CASES)("%s", async (name, cases) => {
    const fuzz = classes.find((each) => each.name === name);
    if (fuzz === undefined) throw new Error(`no class ${name}`);
    const { ends, faults } = await runClass(fuzz, SEED, 0, cases);
    expect(faults.map(({ index, error }) => `case ${index}, seed ${SEED}: ${error}`)).toEqual([]);
    expect(ends.ok + ends.held + ends.fault).toBe(cases);
    expect(ends.fault).toBeLessThan(cases);
  });
});

describe("the reader of cut files", () => {
  it("tells a plate that is not the one asked for", async () => {
    const { holdAgainst } = await import("./plates.js");
    const known = { holes: [[0, 0]], diameter: 10, width: 40, height: 30, area: 1200 } as const;
    const file = (x: number, diameter: number): string =>
      `0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nOUTLINE\n70\n1\n10\n0\n20\n0\n10\n40\n20\n0\n10\n40\n20\n30\n10\n0\n20\n30\n0\nCIRCLE\n8\nHOLES\n10\n${x}\n20\n15\n40\n${diameter / 2}\n0\nENDSEC\n0\nEOF\n`;
    expect(() => holdAgainst(file(20, 10), known, "a")).not.toThrow();
    expect(() => holdAgainst(file(20.001, 10), known, "a")).toThrow("no hole at 0, 0");
    expect(() => holdAgainst(file(20, 10.001), known, "a")).toThrow("the hole at 0, 0 is 10.001");
    expect(() => holdAgainst(file(20, 10), { ...known, width: 41 }, "a")).toThrow("asked 41 x 30");
    expect(() => holdAgainst(file(20, 10), { ...known, area: 1199 }, "a")).toThrow("asked 1199");
    expect(() => holdAgainst(file(20, 10), { ...known, holes: [] }, "a")).toThrow("asked 0");
  });
});
