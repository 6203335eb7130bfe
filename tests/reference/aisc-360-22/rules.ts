/**
 * AISC 360-22: rules for holes, edges and base plates that are not tables of sizes. Not read by the program yet: held for
 * rules of thermal cutting.
 */
import { type Fact, fact as row } from "../fact.js";

/** Topic, item, value, source, confidence. */
export const aisc360Rules: readonly Fact[] = [
  row("J3.6 (360-22) / J3.5", "max edge distance", "12 t, not more than 6 in (150 mm)", "AISC 360-22", "high"),
  row(
    "J9",
    "larger-than-oversized holes in base plates",
    "allowed if ASTM F844 or plate washers bridge the hole",
    "AISC 360-22",
    "high",
  ),
  row(
    "M2.5",
    "thermally cut / water-jet bolt holes",
    "permitted; roughness <= 1000 microinch (25 um), gouges <= 1/16 in (2 mm)",
    "AISC 360-22",
    "high",
  ),
  row(
    "M2.9",
    "anchor-rod holes",
    "may be thermally cut, mechanically or manually guided (M2.9; manual and waterjet wording from 2022)",
    "AISC 360-22",
    "medium-high",
  ),
  row(
    "M2.2",
    "cut-edge gouges other than bolt holes",
    "repair per AWS D1.1; free of gouges > 3/16 in (5 mm)",
    "AISC 360-22",
    "high",
  ),
  row(
    "M2.8",
    "base plate milling",
    "plates <= 2 in: none needed with satisfactory bearing; >2-4 in press-straighten or mill; >4 in mill",
    "AISC 360-22",
    "high",
  ),
  row("A3.4", "anchor rod thread", "Class 2A UNC; 8UN Class 2A allowed over 1 in", "AISC 360-22", "high"),
  row(
    "M4.4",
    "contact gap column base",
    "<=1/16 in (2 mm) accepted; up to 1/4 in may be shimmed",
    "AISC 360-22",
    "high",
  ),
];
