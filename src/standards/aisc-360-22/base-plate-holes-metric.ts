/** AISC 360-22, Commentary Table C-J9.1M: largest anchor-rod holes in base plates, in mm. */
import { millimetres } from "../../units/length.js";
import type { BaseHoleRow, Confidence, StandardTable } from "../model.js";

const SOURCE = "AISC 360-22 Commentary Table C-J9.1M (OCR text)";

/** Rod, hole, confidence. */
export const aisc360MetricBaseHoles: StandardTable<BaseHoleRow> = {
  edition: "AISC 360-22 C-J9.1M",
  clause: "Commentary Table C-J9.1M",
  rows: [
    row("M18", 32, "medium-high (OCR)"),
    row("M22", 36, "medium-high (OCR)"),
    row("M24", 42, "medium-high (OCR)"),
    row("M27", 48, "medium-high (OCR)"),
    row("M30", 51, "medium-high (OCR)"),
    row("M33", 54, "medium-high (OCR)"),
    row("M36", 60, "medium-high (OCR)"),
    row("M39", 63, "medium-high (OCR)"),
    row("M42", 74, "medium-high (OCR)"),
  ],
};

function row(size: string, hole: number, confidence: Confidence): BaseHoleRow {
  return {
    size,
    diameter: millimetres(Number(size.slice(1))),
    hole: millimetres(hole),
    washer: null,
    washerThickness: null,
    alternateHole: null,
    source: SOURCE,
    confidence,
    note: "",
  };
}
