/** Pages of lists: every row once and in order, nothing over anything else, heads that say which page. */
import { describe, expect, it } from "vitest";
import type { PageWay } from "../../../src/sheets/document-pages.js";
import { drawDocument } from "../../../src/sheets/document-pages.js";
import type { Scene, SceneItem } from "../../../src/sheets/index.js";
import { findCollisions } from "../../../src/sheets/index.js";
import { jobFixture } from "../../fixture.js";

const table = (count: number) => ({
  name: "rows",
  heading: "ROWS",
  columns: [
    { title: "NO", share: 0.2, align: "start" as const },
    { title: "WHAT", share: 0.8, align: "start" as const },
  ],
  rows: Array.from({ length: count }, (_, i) => [`R${i + 1}`, `what row ${i + 1} says`]),
  foot: ["THE FOOT"],
  under: [],
  strong: new Set<number>(),
});

const textsOf = (items: readonly SceneItem[]): readonly string[] =>
  items.flatMap((item) => (item.kind === "group" ? textsOf(item.items) : item.kind === "text" ? [item.text] : []));

const draw = (count: number, unit: "in" | "mm" = "in", way: PageWay = "upright"): readonly Scene[] =>
  drawDocument({
    job: { ...jobFixture(), unit, status: "for approval" },
    version: "0",
    title: "A LIST",
    way,
    held: ["B1 is held: a reason."],
    blocks: [{ kind: "table", table: table(count) }, { kind: "fresh" }, { kind: "table", table: table(2) }],
  });

describe("a row that is longer than a page", () => {
  it.each(["in", "mm"] as const)("runs on over the next ones, every word of it once and in order, in %s", (unit) => {
    const marks = Array.from({ length: 900 }, (_, i) => `B${i + 1}`);
    const long = {
      ...table(3),
      rows: [
        ["R1", "short"],
        ["R2", marks.join(" ")],
        ["R3", "short too"],
      ],
      strong: new Set([2]),
    };
    const scenes = drawDocument({
      job: { ...jobFixture(), unit },
      version: "0",
      title: "A LIST",
      way: "landscape",
      blocks: [{ kind: "table", table: long }],
    });
    expect(scenes.length).toBeGreaterThan(1);
    for (const scene of scenes) expect(findCollisions(scene)).toEqual([]);
    const words = scenes.flatMap(({ items }) => textsOf(items)).join(" ");
    expect(words.match(/\bB\d+\b/g)).toEqual(marks);
    for (const name of ["R1", "R2", "R3", "short too"]) expect(words.split(name)).toHaveLength(2);
  });
});

describe("remarks that are longer than a page", () => {
  it.each(["in", "mm"] as const)("run on over the next ones, every word once and in order, in %s", (unit) => {
    const marks = Array.from({ length: 1500 }, (_, i) => `B${i + 1}`);
    const foot = ["First remark.", `Not planned: ${marks.join(", ")}.`, "Last remark."];
    const scenes = drawDocument({
      job: { ...jobFixture(), unit },
      version: "0",
      title: "A LIST",
      way: "landscape",
      blocks: [{ kind: "table", table: { ...table(30), foot } }],
    });
    expect(scenes.length).toBeGreaterThan(2);
    for (const scene of scenes) expect(findCollisions(scene)).toEqual([]);
    const words = scenes.flatMap(({ items }) => textsOf(items)).join(" ");
    expect(words.match(/\bB\d+\b/g)).toEqual(marks);
    for (const name of ["First remark.", "Last remark.", "what row 30 says"]) expect(words.split(name)).toHaveLength(2);
  });
});

describe("a table without rows", () => {
  it("says so in a line, under its heading and over its foot", () => {
    const pages = drawDocument({
      job: jobFixture(),
      version: "0",
      title: "A LIST",
      way: "upright",
      blocks: [{ kind: "table", table: table(0) }],
    });
    const [page] = pages;
    expect(pages).toHaveLength(1);
    const texts = textsOf(page?.items ?? []);
    for (const words of ["ROWS", "none", "THE FOOT"]) expect(texts).toContain(words);
  });
});

describe("pages of a document", () => {
  it.each([
    [1, "in", "upright"],
    [40, "in", "landscape"],
    [300, "mm", "upright"],
    [300, "mm", "landscape"],
  ] as const)("have %i rows once, in order, in %s, %s", (count, unit, way) => {
    const pages = draw(count, unit, way);
    const rows = pages.flatMap(({ items }) => textsOf(items)).filter((text) => /^R\d+$/.test(text));
    expect(rows).toEqual([...Array.from({ length: count }, (_, i) => `R${i + 1}`), "R1", "R2"]);
    for (const page of pages) expect(findCollisions(page)).toEqual([]);
    expect(pages.every(({ width, height }) => width < height === (way === "upright"))).toBe(true);
  });

  it("say which page of how many, and that the job is not released", () => {
    const pages = draw(120);
    expect(pages.length).toBeGreaterThan(2);
    expect(pages.map(({ items }) => textsOf(items).find((text) => text.startsWith("PAGE ")))).toEqual(
      pages.map((_, i) => `PAGE ${i + 1} OF ${pages.length}`),
    );
    expect(pages.flatMap(({ items }) => textsOf(items)).filter((text) => text === "NOT RELEASED")).toHaveLength(1);
  });
});
