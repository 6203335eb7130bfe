/** What a sheet says of the scribing: all of it, never cut off, and which way N, +X and +Y lie. */
import { describe, expect, it } from "vitest";
import type { Job } from "../../../src/job/model/job.js";
import type { PlanSpec } from "../../../src/job/model/plan.js";
import { drawSheet } from "../../../src/sheets/index.js";
import type { SheetRequest } from "../../../src/sheets/request.js";
import { scribingNotes, settingNote } from "../../../src/sheets/scribing-notes.js";
import type { OmittedMark, Plate } from "../../../src/template/index.js";
import { inches } from "../../../src/units/index.js";
import { baseFixture, jobFixture, shopFixture } from "../../fixture.js";
import { placementAt, planFixture } from "../../setting-out-plan.js";
import { wordsIn } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";
import { sheetCases } from "./sheet-cases.js";

const marking = (how: "scribe" | "paint" | "none", changes: Partial<Job> = {}) =>
  sheetCase(
    jobFixture({ shop: shopFixture({ marking: { ...shopFixture().marking, how } }), ...changes }),
    baseFixture(),
  );
const withPlate = (request: SheetRequest, plate: Partial<Plate>): SheetRequest => ({
  ...request,
  plate: { ...request.plate, ...plate },
});
const turned = (...turns: readonly number[]): PlanSpec =>
  planFixture({ placements: turns.map((turn, i) => placementAt(i === 0 ? ["A", "1"] : ["B", "1"], { turn })) });

/** A long mark is broken between its characters where a line ends. */
const unspaced = (words: string) => words.replace(/\s+/g, "");

/** The texts behind `ROD A1 TO A3, B7`. */
function tagsIn(words: string): readonly string[] {
  const list = /ROD ([^;.]*)/.exec(words)?.[1] ?? "";
  return list.split(", ").flatMap((part) => {
    const [, letter, first, last] = /^([A-Z]+)(\d+)(?: TO [A-Z]+(\d+))?$/.exec(part) ?? [];
    const [from, to] = [Number(first), Number(last ?? first)];
    return Array.from({ length: to - from + 1 }, (_, i) => `ROD ${letter}${from + i}`);
  });
}

describe("the list of what is scribed", () => {
  it.each(Object.keys(sheetCases))("is whole on the sheet of %s, and so is what found no room", (name) => {
    const request = sheetCases[name]?.();
    if (request === undefined) throw new Error(name);
    const notes = wordsIn(drawSheet(request), "notes");
    const { marks, omitted } = request.plate;
    const [on, off = ""] = notes.split(/NOT SCRIBED, PAINT BY HAND: |PAINT SMALLER BY HAND: /);
    for (const [list, words] of [
      [marks, on ?? ""],
      [omitted, off],
    ] as const) {
      const tags = list.filter(({ kind }) => kind === "tag").map(({ text }) => text);
      expect(tagsIn(words.slice(words.search(/ROD [A-Z]+\d/)))).toEqual(tags);
      for (const { kind, text } of list)
        if (kind !== "tag" && kind !== "centre-line") expect(unspaced(words)).toContain(unspaced(text));
    }
    for (const line of [...scribingNotes(request), settingNote(request)]) expect(line).not.toMatch(/\.\.\.|…/);
  });

  it("is short: tags as ranges, each word once", () => {
    expect(scribingNotes(marking("scribe"))).toEqual([
      "SCRIBED ON THE TOP FACE: T1 REV B; TOP; ROD A1 TO A4; +X; +Y; RODS 1-1/4; CENTER TICKS AT BOTH ENDS OF BOTH AXES.",
    ]);
  });

  it("is painted by a shop that paints, and on plywood", () => {
    expect(scribingNotes(marking("paint"))[0]).toMatch(/^PAINTED ON THE TOP FACE: T1 REV B; TOP/);
    const ply = baseFixture({ template: { ...baseFixture().template, material: "plywood", thickness: inches(0.75) } });
    expect(scribingNotes(sheetCase(jobFixture(), ply))[0]).toMatch(
      /^PAINTED ON THE TOP FACE: .*DRILL 1-5\/16 \(AT 4 HOLES\)/,
    );
  });

  it("says that nothing is scribed where the shop puts no marks on", () => {
    expect(scribingNotes(marking("none"))).toEqual([expect.stringMatching(/^NOTHING IS SCRIBED OR PAINTED: /)]);
  });

  it("names what found no room, tags as ranges, ticks by their ends, and an axis that misses the plate", () => {
    const tag = (text: string): OmittedMark => ({ kind: "tag", text, cause: "room" });
    const omitted: readonly OmittedMark[] = [
      { kind: "mark", text: "T6IN REV C1", cause: "room" },
      ...["ROD A1", "ROD A3", "ROD A4", "ROD A5", "ROD B1"].map(tag),
      { kind: "centre-line", text: "centre line +x", cause: "room" },
      { kind: "centre-line", text: "centre line -y", cause: "off plate" },
    ];
    const notes = scribingNotes(withPlate(marking("scribe"), { omitted }));
    expect(notes.slice(1)).toEqual([
      "NOT SCRIBED, PAINT BY HAND: T6IN REV C1; ROD A1, A3 TO A5, B1; CENTER TICK AT +X.",
      "NO CENTER TICK AT -Y: the axis does not meet the plate.",
    ]);
    expect(notes[0]).toContain("CENTER TICKS AT -X, +Y.");
    expect(scribingNotes(withPlate(marking("paint"), { omitted }))[1]).toMatch(/^NO ROOM FOR THE SHOP'S LETTERS, /);
  });
});

describe("which way a template is set", () => {
  it("points to the plan where north is not known", () => {
    expect(settingNote(marking("scribe"))).toBe(
      "Set with the face scribed TOP up. +X and +Y are the type's own axes, not north: the anchor-rod plan shows the turn of each place.",
    );
    expect(settingNote(marking("scribe", { plan: turned(0, 90) }))).toMatch(/not north: the anchor-rod plan shows/);
  });

  // A base that is turned by t on the plan sees plan north at 90 - t from its own +X.
  it.each([
    [0, "along +Y"],
    [90, "along +X"],
    [180, "along -Y"],
    [270, "along -X"],
    [30, "60° from +X towards +Y"],
    [-22.5, "22.5° from +Y towards -X"],
  ])("turned by %f N is %s, in the note and in the list", (turn, words) => {
    const request = marking("scribe", { plan: turned(turn, turn) });
    expect(settingNote(request)).toBe(
      `Set with the face scribed TOP up and N to plan north at every place. +X and +Y are the type's own axes: N is ${words}.`,
    );
    expect(scribingNotes(request)[0]).toContain(`; N (${words.toUpperCase()});`);
  });

  it("says plan north where N found no room, and never both that axes are not north and that N is", () => {
    const request = marking("scribe", { plan: turned(90, 90) });
    const marks = request.plate.marks.filter(({ kind }) => kind !== "north");
    const note = settingNote(withPlate(request, { marks }));
    expect(note).toMatch(/plan north is along \+X; N is not scribed\.$/);
    expect(note).not.toContain("not north");
  });

  it("does not name a TOP that is not there", () => {
    expect(settingNote(marking("none"))).toMatch(/^Set with the face up that is drawn in the plan view\./);
  });
});
