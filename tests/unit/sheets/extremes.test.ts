/** There is always a sheet, and nothing on it overlaps, however awkward the job. Invented data. */
import { describe, expect, it } from "vitest";
import type { Base } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { drawSheet, type SheetRequest } from "../../../src/sheets/index.js";
import { inches } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { collisionsOf } from "./collisions.js";
import { wordsIn } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const plate = (x: number, y: number): Base["template"] => ({
  ...baseFixture().template,
  outline: { kind: "rectangle", x: inches(x), y: inches(y), at: at(0, 0), corner: { kind: "square" } },
  opening: { kind: "none" },
});
const grid = (x: number, y: number, nx: number, ny: number) =>
  groupFixture({ pattern: { kind: "rectangle", x: inches(x), y: inches(y), nx, ny, perimeter: false } });
const letters = [..."ABCDEFGHIJKL"];

/** A job and a base whose every word is as long as words come. */
const endlessJob = () =>
  jobFixture({
    title: "Extension ".repeat(60),
    owner: "Fabricator".repeat(30),
    number: "9".repeat(80),
    drawnBy: "W".repeat(90),
    drawing: { number: "S-".repeat(60), revision: "Z9" },
    status: "preliminary",
    revisions: Array.from({ length: 60 }, (_, i) => ({
      revision: `${i}`,
      date: "2026-01-01",
      text: "Moved ".repeat(40),
      marks: null,
    })),
  });
const endlessBase = (changes: Partial<Base>, x: number, y: number) =>
  baseFixture({
    note: "Check the formwork. ".repeat(300),
    mark: "W".repeat(60),
    template: { ...plate(x, y), mark: "M".repeat(60) },
    ...changes,
  });
const ENDLESS_HELD = { held: Array.from({ length: 30 }, (_, i) => `Reason ${i}: ${"too near ".repeat(20)}`) };
/** So many groups of two rods, no two with holes of one size. */
const groupsOfTwo = (count: number) =>
  letters.slice(0, count).map((letter, i) =>
    groupFixture({
      letter,
      pattern: { kind: "points", at: [at(4 * i - 22, 4), at(4 * i - 22, -4)] },
      hole: given(inches(0.5 + i / 16), "job"),
    }),
  );

const cases: Readonly<Record<string, () => SheetRequest>> = {
  "words without end": () => sheetCase(endlessJob(), endlessBase({}, 26, 18), ENDLESS_HELD),
  "words and groups without end": () =>
    sheetCase(endlessJob(), endlessBase({ groups: groupsOfTwo(12) }, 52, 16), ENDLESS_HELD),
  "words without end, and as many rods as a plate may have": () =>
    sheetCase(endlessJob(), endlessBase({ groups: [grid(114, 57, 20, 10)] }, 120, 60), ENDLESS_HELD),
  "characters that the font lacks": () =>
    sheetCase(jobFixture({ title: "倉庫 第二期 \u{1F6E0}\u0000\n\ttwo" }), baseFixture({ note: "Ὀρθή – ščřž ﷽" })),
  "a strip 12 ft long": () =>
    sheetCase(jobFixture(), baseFixture({ groups: [grid(138, 3, 20, 2)], template: plate(144, 6) })),
  "a strip 12 ft high": () =>
    sheetCase(jobFixture(), baseFixture({ groups: [grid(3, 138, 2, 20)], template: plate(6, 144) })),
  "rods that nearly touch": () =>
    sheetCase(jobFixture(), baseFixture({ groups: [grid(9, 6, 7, 5)], template: plate(120, 60) })),
  "a plate of an inch": () =>
    sheetCase(
      jobFixture(),
      baseFixture({
        groups: [groupFixture({ pattern: { kind: "points", at: [at(0, 0)] }, hole: given(inches(0.5625), "job") })],
        template: plate(1, 1),
      }),
    ),
  "a plate of 100 m": () =>
    sheetCase(jobFixture(), baseFixture({ groups: [grid(3900, 3900, 2, 2)], template: plate(3930, 3930) })),
  "twelve groups of as many sizes": () =>
    sheetCase(jobFixture(), baseFixture({ groups: groupsOfTwo(12), template: plate(52, 16) })),
  "the working point far off the plate": () =>
    sheetCase(jobFixture(), {
      ...baseFixture({
        groups: [groupFixture({ pattern: { kind: "points", at: [at(90, 80), at(102, 80), at(102, 90), at(90, 90)] } })],
      }),
      template: {
        ...plate(26, 18),
        outline: { kind: "rectangle", x: inches(26), y: inches(18), at: at(96, 85), corner: { kind: "square" } },
      },
    }),
};

describe("drawSheet always gives a sheet", () => {
  it.each(Object.entries(cases))("%s", (_, make) => {
    const request = make();
    const scene = drawSheet(request);
    expect(collisionsOf(scene)).toEqual([]);
    expect(wordsIn(scene, "title-block")).toContain("CHECKED BY");
    expect(wordsIn(scene, "cautions").length).toBeGreaterThan(100);
    expect(wordsIn(scene, "signer")).toContain("CHECKS:");
  });
});
