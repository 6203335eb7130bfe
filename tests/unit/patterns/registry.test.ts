/** The registry of pattern kinds: nothing about a pattern is left out of it, and what is derived from it agrees. */
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import {
  boltCircleOf,
  countRods,
  kindMeant,
  PATTERN_COLUMNS,
  PATTERN_KINDS,
  PATTERN_SYNONYMS,
  type Pattern,
  patternChoice,
  resolvePattern,
  rodPositions,
} from "../../../src/patterns/index.js";
import { headingNamed, meaningsOf } from "../../../src/schedule/index.js";
import { inches } from "../../../src/units/index.js";

const place = { file: "s.csv", line: 2, column: 1 };
const text = { kind: "scalar", text: "1", style: "quoted", place } as const;
const list = { kind: "list", items: [text], place } as const;

const zero = inches(0);
const EXAMPLES: { readonly [Kind in Pattern["kind"]]: Extract<Pattern, { kind: Kind }> } = {
  rectangle: { kind: "rectangle", x: inches(12), y: inches(10), nx: 4, ny: 3, perimeter: true },
  lines: { kind: "lines", x: [inches(9), inches(-9), zero], y: [zero, inches(5)], perimeter: false },
  circle: { kind: "circle", diameter: inches(24), count: 7, start: { kind: "straddle" } },
  points: { kind: "points", at: [{ x: zero, y: inches(3) }] },
};

describe("the registry of patterns", () => {
  it("has every file of the folder that is a kind", () => {
    const shared = ["crossings", "index", "model", "registry"];
    const folder = fileURLToPath(new URL("../../../src/patterns", import.meta.url));
    const files = readdirSync(folder).map((name) => name.replace(/\.ts$/, ""));
    expect(files.filter((name) => !shared.includes(name)).sort()).toEqual([...PATTERN_KINDS].sort());
  });

  it("counts as many rods as it lays out, of every kind", () => {
    for (const kind of PATTERN_KINDS) {
      const pattern = EXAMPLES[kind];
      expect([kind, countRods(pattern)]).toEqual([kind, rodPositions(pattern).length]);
    }
    expect(PATTERN_KINDS.map((kind) => countRods(EXAMPLES[kind]))).toEqual([10, 6, 7, 1]);
  });

  it("knows the bolt circle of a circle alone", () => {
    expect(PATTERN_KINDS.filter((kind) => boltCircleOf(EXAMPLES[kind]) !== null)).toEqual(["circle"]);
    expect(boltCircleOf(EXAMPLES.circle)).toMatchObject({ diameter: inches(24), count: 7 });
  });

  it("is read in its order by the schema", () => {
    const schema = z.toJSONSchema(patternChoice("in"), { io: "input", target: "draft-7" });
    const kinds = (schema.oneOf ?? schema.anyOf ?? []).map((branch) =>
      typeof branch === "object" ? branch.properties?.kind : undefined,
    );
    expect(kinds).toEqual(PATTERN_KINDS.map((kind) => expect.objectContaining({ const: kind })));
  });

  it("has a heading of its own for every column", () => {
    const names = [...PATTERN_COLUMNS.keys()].flatMap(({ name, also }) => [name, ...also]);
    expect(names.length).toBeGreaterThan(20);
    expect(new Set(names).size).toBe(names.length);
    for (const [{ name }, key] of PATTERN_COLUMNS) {
      expect(meaningsOf(name, "")[0]).toBe(name);
      expect(headingNamed(name)?.key).toBe(`pattern.${key}`);
    }
  });

  it("takes what prints write for a kind", () => {
    expect(PATTERN_SYNONYMS).toMatchObject({ rect: "rectangle", circular: "circle", "bolt circle": "circle" });
  });
});

describe("the kind that filled cells mean", () => {
  it.each([
    ["x and y", { x: text, y: text }, "rectangle"],
    ["y alone", { y: text }, "rectangle"],
    ["a list in x", { x: list, y: text }, "lines"],
    ["a list in y beside one length in x", { x: text, y: list }, "rectangle"],
    ["a list in y alone", { y: list }, "lines"],
    ["a diameter, whatever else", { x: text, diameter: text }, "circle"],
    ["points, whatever else", { x: list, diameter: text, at: list }, "points"],
    ["counts alone", { nx: text, ny: text, count: text, start: text }, null],
    ["nothing", {}, null],
  ] as const)("%s", (_, cells, kind) => {
    expect(kindMeant(cells)).toBe(kind);
  });
});

describe("a pattern as written", () => {
  it("takes its defaults", () => {
    const written = { kind: "rectangle", x: inches(12), y: inches(10) } as const;
    expect(resolvePattern(written)).toEqual({
      pattern: { ...written, nx: 2, ny: 2, perimeter: false },
      faults: [],
    });
  });

  it("tells of each list of lines what is wrong with it", () => {
    const { pattern, faults } = resolvePattern({ kind: "lines", x: [], y: [zero, zero] });
    expect(pattern).toBeNull();
    expect(faults.map(({ key, code }) => [key, code])).toEqual([
      ["x", "required"],
      ["y", "coincident-lines"],
    ]);
  });

  it("is none without points", () => {
    expect(resolvePattern({ kind: "points", at: [] })).toMatchObject({ pattern: null, faults: [{ key: "at" }] });
  });
});
