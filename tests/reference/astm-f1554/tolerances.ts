/** ASTM F1554: tolerances and supplements that the program does not read; those of lengths, hooks and threads stand in its own tables. */
import { type Fact, fact as row } from "../fact.js";

/** Topic, item, value, source, confidence. */
export const f1554Tolerances: readonly Fact[] = [
  row("ASTM F1554", "body diameter (rolled thread)", ">= minimum pitch diameter", "ASTM F1554", "high"),
  row("ASTM F1554", "body diameter (cut thread)", ">= minimum major diameter", "ASTM F1554", "high"),
  row("ASTM F1554", "thread class", "UNC 2A (1A also listed)", "ASTM F1554", "medium-high"),
  row("ASTM F1554", "straightness", "no tolerance stated", "ASTM F1554", "medium"),
  row(
    "ASTM F1554",
    "colour marking",
    "projecting end, end opposite embedment, required unless S3 head marking ordered",
    "ASTM F1554",
    "medium-high",
  ),
  row("ASTM F1554", "S1", "weldable Gr 55; may substitute for Gr 36", "ASTM F1554", "high"),
  row("ASTM F1554", "S2 / S3", "maker id / grade id on end", "ASTM F1554", "medium-high"),
  row("ASTM F1554", "S4", "Charpy 15 ft-lb avg, 12 min at +40F", "ASTM F1554", "medium-high"),
  row("ASTM F1554", "S5", "Charpy at -20F", "ASTM F1554", "medium-high"),
  row("ASTM F1554", "thread run-out definition", "NOT FOUND in stored text", "ASTM F1554", "not found"),
];
