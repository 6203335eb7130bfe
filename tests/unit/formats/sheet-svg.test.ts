/** The written SVG: well-formed, in millimetres, deterministic, readable in one bit. */

import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../../src/formats/sheet-svg.js";
import { drawSheet, type Scene } from "../../../src/sheets/index.js";
import { readWrittenSheet } from "../../outside/written-sheet.js";
import { textsOf } from "../sheets/scene-walk.js";
import { sheetCases } from "../sheets/sheet-cases.js";

const write = (scene: Scene) => writeSheetSvg(scene, newLeanDocument());
const sheets = Object.entries(sheetCases).map(([name, make]) => [name, drawSheet(make())] as const);

describe("writeSheetSvg", () => {
  it.each(sheets)("is well-formed XML with physical size, title and every text: %s", (_, scene) => {
    const sheet = readWrittenSheet(write(scene));
    expect(sheet.root.width).toMatch(/^[\d.]+mm$/);
    expect(Number.parseFloat(sheet.root.width ?? "")).toBeCloseTo(scene.width, 3);
    expect(sheet.root.viewBox).toBe(`0 0 ${scene.width} ${scene.height}`);
    expect(sheet.names.slice(0, 4)).toEqual(["svg", "title", "desc", "style"]);
    expect(sheet.texts.map(({ text }) => text)).toEqual(textsOf(scene.items).map(({ text }) => text));
  });

  it.each(sheets)(
    "uses no identifier, no style but that of the font, no exponent, minus zero or NaN: %s",
    (_, scene) => {
      const svg = write(scene);
      const outside = svg.replace(/<style>(?:@font-face\{[^{}]*\})+<\/style>/, "");
      expect(outside).not.toMatch(/\sid="|<style|NaN|undefined|Infinity/);
      const numbers = [...svg.matchAll(/ (?:d|x|y|transform|font-size|textLength|stroke-width)="([^"]*)"/g)].map(
        ([, value]) => value,
      );
      expect(numbers.join(" ")).not.toMatch(/\d[eE][-+]?\d|-0(?![.\d])/);
    },
  );

  it("gives the same bytes twice, whatever was drawn between", () => {
    const [first, second] = sheets;
    if (first === undefined || second === undefined) throw new Error("no sheets");
    const once = write(first[1]);
    write(second[1]);
    expect(write(first[1])).toBe(once);
  });

  it("turns y down and arcs the right way round", () => {
    const scene: Scene = {
      size: "A4",
      width: 100,
      height: 80,
      title: "t",
      description: "d",
      items: [
        {
          kind: "stroke",
          role: "outline",
          parts: [
            { kind: "line", from: { x: 1, y: 2 }, to: { x: 3, y: 4 } },
            // Quarter of a circle about the origin, counter-clockwise from (10, 0) to (0, 10): bulge tan(90/4).
            { kind: "arc", from: { x: 10, y: 0 }, to: { x: 0, y: 10 }, bulge: Math.tan(Math.PI / 8) },
          ],
        },
      ],
    };
    const [path] = readWrittenSheet(write(scene)).paths;
    expect(path?.d).toBe("M1 78L3 76M10 80A10 10 0 0 0 0 70");
  });

  it("joins parts that follow on one another, and closes what comes back", () => {
    const corners = [
      [0, 0],
      [4, 0],
      [4, 3],
    ] as const;
    const point = (i: number) => ({ x: corners[i % 3]?.[0] ?? 0, y: corners[i % 3]?.[1] ?? 0 });
    const sides = [0, 1, 2].map((i) => ({ kind: "line", from: point(i), to: point(i + 1) }) as const);
    const apart = { kind: "line", from: { x: 8, y: 0 }, to: { x: 9, y: 0 } } as const;
    const again = { kind: "line", from: { x: 0, y: 0 }, to: { x: 0, y: 5 } } as const;
    const item = { kind: "stroke", role: "outline", parts: [...sides, again, apart] } as const;
    const scene: Scene = { size: "A4", width: 100, height: 80, title: "", description: "", items: [item] };
    expect(readWrittenSheet(write(scene)).paths[0]?.d).toBe("M0 80L4 80L4 77L0 80ZM0 80L0 75M8 80L9 80");
  });

  it("writes one element a line", () => {
    for (const [, scene] of sheets)
      for (const row of write(scene).split("\n")) expect(row.split(">").length).toBeLessThan(4);
  });

  it("escapes what XML reserves", () => {
    const item = {
      kind: "text",
      role: "note",
      text: `<a> & "b"`,
      at: { x: 5, y: 5 },
      anchor: "start",
      height: 3,
      turn: 0,
      bold: false,
    } as const;
    const scene: Scene = { size: "A4", width: 100, height: 80, title: "a < b & c", description: "", items: [item] };
    expect(readWrittenSheet(write(scene)).texts[0]?.text).toBe(`<a> & "b"`);
  });

  it("needs no colour: strokes are black or dark enough to print solid, texts black or white on dark", () => {
    for (const [, scene] of sheets) {
      const colours = [...write(scene).matchAll(/(?:fill|stroke)="(#[0-9a-f]+)"/g)].map(([, colour]) => colour);
      expect([...new Set(colours)].filter((colour) => !["#000", "#fff", "#a00000"].includes(colour ?? ""))).toEqual([]);
    }
  });
});
