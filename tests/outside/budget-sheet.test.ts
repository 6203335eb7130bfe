/** As sheet-text.test.ts, for the sheets of budgets: read by a strict XML parser, measured by the font's own metrics. */

import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { drawBudgetSheet } from "../../src/sheets/budget-sheet.js";
import { budgetCases, reckonCase } from "../unit/sheets/budget-cases.js";
import { overlappingTexts, textBoxes } from "./text-boxes.js";
import { readWrittenSheet } from "./written-sheet.js";

describe("text of a budget's sheet", () => {
  it.each(Object.entries(budgetCases))("overlaps nothing: %s", (_name, each) => {
    const scene = drawBudgetSheet({ ...reckonCase(each), version: "0.1.0" });
    const boxes = textBoxes(readWrittenSheet(writeSheetSvg(scene, newLeanDocument())));
    expect(overlappingTexts(boxes)).toEqual([]);
    const outside = boxes.filter(({ box }) =>
      box.some(([x, y]) => x < 0 || y < 0 || x > scene.width || y > scene.height),
    );
    expect(outside.map(({ text }) => text)).toEqual([]);
    expect(boxes.length).toBeGreaterThan(60);
  });
});
