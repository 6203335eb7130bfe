/** Setting out and survey: point files, axes, units, method. */
import type { Confidence, Fact } from "../model.js";

/** Topic, item, value, source, confidence. */
export const surveyFacts: readonly Fact[] = [
  row(
    "PNEZD",
    "",
    "point, northing (Y), easting (X), elevation, description; comma CSV",
    "secondary copy; published documentation",
    "high",
  ),
  row("PENZD", "", "variant with easting first; N/E swap is the usual import fault", "secondary copy", "high"),
  row("axes", "", "N = +Y, E = +X; bearings from north clockwise", "common practice", "common practice"),
  row(
    "US survey foot",
    "",
    "1200/3937 m vs international 0.3048 m exactly; 2 ppm difference; deprecated after 2022",
    "from memory",
    "from memory",
  ),
  row(
    "method",
    "",
    "set group centre; template fixes rods; check diagonals; independent re-measure before pour",
    "secondary copy",
    "medium-high",
  ),
  row(
    "accuracy goal",
    "",
    "within about 1/8 in of true point (robotic total station)",
    "secondary copy",
    "medium-high",
  ),
  row("checklist", "", "column location, elevation, rod spacing, rod size, projection", "secondary copy", "medium"),
  row("after pour", "", "re-survey and report as-built offsets per rod", "AISC DG1 2nd ed s.2.8", "high"),
];

function row(topic: string, item: string, value: string, source: string, confidence: Confidence): Fact {
  return { topic, item, value, source, confidence, note: "" };
}
