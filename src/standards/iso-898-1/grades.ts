/**
 * ISO 898-1: property classes, nominal strengths in MPa (first figure x 100; product of both x 10), elongation A in percent,
 * with the nut class of ISO 898-2; 8.8 and 10.9 are quenched and tempered and not welded to. From memory: no stored copy was found.
 */
import { millimetres } from "../../units/length.js";
import type { GradeRow, StandardTable } from "../model.js";

/** Class, nominal yield, nominal tensile, elongation, nut class, weldable. */
export const iso898Grades: StandardTable<GradeRow> = {
  edition: "ISO 898-1",
  clause: "property classes",
  rows: [
    row("4.6", 240, 400, "22", "ISO 4032 class 5 or higher", ""),
    row("5.6", 300, 500, "20", "ISO 4032 class 5 or higher", ""),
    row("8.8", 640, 800, "12", "ISO 4032 class 8 or higher", "no"),
    row("10.9", 900, 1000, "9", "ISO 4032 class 10 or higher", "no"),
  ],
};

function row(
  grade: string,
  yieldLeast: number,
  tensileLeast: number,
  elongation: string,
  nut: string,
  weldable: "" | "no",
): GradeRow {
  return {
    grade,
    specification: "ISO 898-1",
    system: "metric",
    yieldLeast,
    tensileLeast,
    tensileGreatest: null,
    unit: "MPa",
    colour: "",
    weldable,
    least: millimetres(1.6),
    greatest: millimetres(39),
    elongation,
    reductionOfArea: "",
    nut,
    hexUpTo: millimetres(100),
    heavyHexWhenGalvanized: false,
    source: "from memory",
    confidence: "from memory",
    note: "the standard ends at M39; larger rods are made to its strengths by agreement",
  };
}
