/** ASTM F1554: grades of anchor bolts, strengths in ksi, elongations in percent. */
import { inches } from "../../units/length.js";
import type { GradeRow, StandardTable } from "../model.js";

const COMMON = {
  specification: "ASTM F1554",
  system: "us",
  unit: "ksi",
  source: "ASTM F1554",
  confidence: "high",
  note: "",
} as const;

/** The three grades. */
export const f1554Grades: StandardTable<GradeRow> = {
  edition: "ASTM F1554",
  clause: "grades",
  rows: [
    {
      ...COMMON,
      grade: "F1554 36",
      colour: "blue",
      yieldLeast: 36,
      tensileLeast: 58,
      tensileGreatest: 80,
      elongation: "2 in: 23, 8 in: 20",
      reductionOfArea: "40",
      least: inches(1 / 4),
      greatest: inches(4),
      weldable: "yes",
      nut: "A563 A: hex <=1-1/2, heavy hex >1-1/2",
      hexUpTo: inches(1.5),
      heavyHexWhenGalvanized: false,
    },
    {
      ...COMMON,
      grade: "F1554 55",
      colour: "yellow",
      yieldLeast: 55,
      tensileLeast: 75,
      tensileGreatest: 95,
      elongation: "2 in: 21, 8 in: 18",
      reductionOfArea: "30 (<=2); 22 (2-1/4,2-1/2); 20 (2-3/4,3); 18 (3-1/4-4)",
      least: inches(1 / 4),
      greatest: inches(4),
      weldable: "only with supplement S1 (CE limit, secondary source 0.45)",
      nut: "A563 A: hex <=1-1/2 (heavy hex if HDG), heavy hex >1-1/2",
      hexUpTo: inches(1.5),
      heavyHexWhenGalvanized: true,
    },
    {
      ...COMMON,
      grade: "F1554 105",
      colour: "red",
      yieldLeast: 105,
      tensileLeast: 125,
      tensileGreatest: 150,
      elongation: "2 in: 15, 8 in: 12",
      reductionOfArea: "45",
      least: inches(1 / 4),
      greatest: inches(3),
      weldable: "no",
      nut: "A563 DH (or D) heavy hex",
      hexUpTo: inches(0),
      heavyHexWhenGalvanized: true,
    },
  ],
};
