/** Cells of the schedule: what is read of a base's texts, and the edits that a typed text makes. */
import { describe, expect, it } from "vitest";
import { spliced, spliceOf } from "../../../../src/readers/yaml-edit.js";
import { cellOf, columnOf, isWholeFlow, type Subject, typed } from "../../../../src/web/schedule/columns.js";
import { patternText, readPattern, readSize, sizeText } from "../../../../src/web/schedule/pattern-text.js";
import type { Texts } from "../../../../src/web/schedule/texts.js";
import { flowText, plainText } from "../../../../src/web/schedule/texts.js";

function subject(own: Texts, more: Partial<Subject> = {}): Subject {
  return { texts: own, own, by: {}, isGroup: false, hasGroups: false, ...more };
}

function column(id: string) {
  const found = columnOf(id);
  if (found === undefined) throw new Error(`no column ${id}`);
  return found;
}

/** A job's text after what was typed in a cell of its first base. */
function textAfter(job: string, id: string, own: Texts, text: string): string {
  const said = typed(column(id), subject(own), text);
  if (!said.ok) throw new Error(said.why);
  return said.edits.reduce((now, edit) => {
    const splice = spliceOf(now, { ...edit, path: ["bases", 0, ...edit.path] });
    return splice === null ? now : spliced(now, splice);
  }, job);
}

describe("a pattern as one cell", () => {
  const cells = [
    ["rectangle 12 x 10", { kind: "rectangle", x: "12", y: "10" }],
    ["rectangle 14 x 24, 2 by 4", { kind: "rectangle", x: "14", y: "24", nx: "2", ny: "4" }],
    [
      "rectangle 20 x 20, 3 by 3, perimeter",
      { kind: "rectangle", x: "20", y: "20", nx: "3", ny: "3", perimeter: "yes" },
    ],
    ["circle 24, 8 rods, straddle", { kind: "circle", diameter: "24", count: "8", start: "straddle" }],
    ["circle 520, 8 rods", { kind: "circle", diameter: "520", count: "8" }],
    ["lines x -9; 0; 9, y -6; 6", { kind: "lines", "x[0]": "-9", "x[1]": "0", "x[2]": "9", "y[0]": "-6", "y[1]": "6" }],
    ["points -6,5; 6,5", { kind: "points", "at[0][0]": "-6", "at[0][1]": "5", "at[1][0]": "6", "at[1][1]": "5" }],
  ] as const;

  it.each(cells)("%s is what the texts of the job say", (cell, texts) => {
    expect(patternText(texts)).toBe(cell);
  });

  it("reads back what it shows, a list as a list", () => {
    expect(readPattern("lines x -9; 0; 9, y -6; 6")).toEqual({
      ok: true,
      values: { kind: "lines", x: ["-9", "0", "9"], y: ["-6", "6"] },
    });
    expect(readPattern("points -6,5; 6,5")).toEqual({
      ok: true,
      values: {
        kind: "points",
        at: [
          ["-6", "5"],
          ["6", "5"],
        ],
      },
    });
  });

  it("takes two sides without a kind as a rectangle, and leaves their figures as they are typed", () => {
    expect(readPattern("1'-0 1/2\" x 10in")).toEqual({
      ok: true,
      values: { kind: "rectangle", x: "1'-0 1/2\"", y: "10in" },
    });
  });

  it.each(["12", "hexagon 3", "rectangle 12 x 10 x 4", "circle 24", "lines x 1; 2", "points 1; 2"])(
    "says what is allowed instead of %s",
    (cell) => {
      const said = readPattern(cell);
      expect(said.ok ? "" : said.why).toMatch(/allowed is, as an example, rectangle 12 x 10/);
    },
  );
});

describe("sizes as one cell", () => {
  it("shows and reads plates and piers, round ones too", () => {
    expect(sizeText({ x: "18", y: "16", thickness: "1-1/2" })).toBe("18 x 16 x 1-1/2");
    expect(sizeText({ diameter: "30", thickness: "2" })).toBe("dia 30 x 2");
    expect(readSize("18 x 16 x 1-1/2", true)).toEqual({ ok: true, values: { x: "18", y: "16", thickness: "1-1/2" } });
    expect(readSize("dia 36", false)).toEqual({ ok: true, values: { diameter: "36" } });
  });

  it("takes no thickness of a pier", () => {
    expect(readSize("24 x 24 x 3", false).ok).toBe(false);
  });
});

const JOB = `bases:
  - mark: B1 # the first
    rods: { diameter: 1, projection: 9 }
    pattern:
      kind: rectangle # as on S-201
      x: 12
      y: 10
    basePlate: { x: 18, y: 16, thickness: 1, hole: 2 }
`;
const OWN: Texts = {
  mark: "B1",
  "rods.diameter": "1",
  "rods.projection": "9",
  "pattern.kind": "rectangle",
  "pattern.x": "12",
  "pattern.y": "10",
  "basePlate.x": "18",
  "basePlate.y": "16",
  "basePlate.thickness": "1",
  "basePlate.hole": "2",
};

describe("what is typed into a cell", () => {
  it("changes the figures of a pattern where they stand: comments stay", () => {
    const now = textAfter(JOB, "pattern", OWN, "rectangle 13-1/2 x 10");
    expect(now).toBe(JOB.replace("x: 12", "x: 13-1/2"));
  });

  it("puts another kind of pattern in the place of the one before, and nothing else", () => {
    const now = textAfter(JOB, "pattern", OWN, "circle 24, 8 rods, straddle");
    expect(now).toContain("{ kind: circle, diameter: 24, count: 8, start: straddle }\n    basePlate:");
    expect(now).toContain("mark: B1 # the first");
  });

  it("makes a rectangular plate round and keeps its hole", () => {
    const now = textAfter(JOB, "basePlate", OWN, "dia 30 x 1-1/4");
    expect(now).toContain("basePlate: { thickness: 1-1/4, hole: 2, diameter: 30 }");
  });

  it("takes a key out where the cell is cleared", () => {
    expect(textAfter(JOB, "rods.projection", OWN, "")).toContain("rods: { diameter: 1 }");
  });

  it("makes no edit of a text that stands there", () => {
    expect(typed(column("rods.projection"), subject(OWN), " 9 ")).toEqual({ ok: true, edits: [] });
  });

  it("writes a hostile text as a text", () => {
    const now = textAfter(JOB, "note", OWN, `<img src=x onerror=alert(1)> "quoted" # no comment`);
    expect(now).toContain(`note: "<img src=x onerror=alert(1)> \\"quoted\\" # no comment"`);
  });

  it("refuses what is worked out, and rods of a base that has them in groups", () => {
    expect(typed(column("state"), subject(OWN), "clear")).toEqual({
      ok: false,
      why: "State is worked out and cannot be typed",
    });
    const groups = subject(OWN, { hasGroups: true });
    expect(typed(column("rods.grade"), groups, "36").ok).toBe(false);
  });

  it("gives a group its own keys for holes", () => {
    const said = typed(column("basePlate.hole"), subject({}, { isGroup: true }), "2-1/16");
    expect(said).toEqual({ ok: true, edits: [{ kind: "set", path: ["baseHole"], text: "2-1/16" }] });
  });
});

describe("groups of keys in a cell", () => {
  const own: Texts = { "rods.bottom.kind": "plate", "rods.bottom.shape": "square", "rods.bottom.size": "4" };

  it("are shown plainly and typed whole", () => {
    expect(plainText(own, "rods.bottom")).toBe("plate, shape square, size 4");
    expect(flowText(own, "rods.bottom")).toBe("{ kind: plate, shape: square, size: 4 }");
    expect(cellOf(column("rods.bottom"), subject(own)).text).toBe("{ kind: plate, shape: square, size: 4 }");
  });

  it.each([
    ["{ kind: plate, size: 4 }", true],
    ["{ kind: plate, size: 4", false],
    ["{ a: 1 } { b: 2 }", false],
    ["{ kind: hook # }", false],
    ["[-9, 0, 9]", true],
  ])("%s is whole: %s", (text, isWhole) => {
    expect(isWholeFlow(text)).toBe(isWhole);
  });
});
