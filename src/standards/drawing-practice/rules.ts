/** Drawing practice: borders, title block, lettering, lines, dimensions, projection, scales. */
import type { Confidence, Fact } from "../model.js";

/** Topic, item, value, source, confidence. */
export const drawingRules: readonly Fact[] = [
  row("border", "ISO 5457:1999 left / other", "20 mm / 10 mm", "from memory", "from memory"),
  row("border", "ISO 5457 older text", "20 mm A0-A1, 10 mm A2-A4", "secondary copy", "medium (conflict)"),
  row(
    "title block",
    "ISO 7200 mandatory",
    "legal owner; id number (16); date of issue (10); segment/sheet (4); title (25); approver (20); creator (20); document type (30)",
    "secondary copy (EN ISO 7200 table)",
    "high",
  ),
  row(
    "title block",
    "ISO 7200 optional",
    "revision index (2); number of sheets; language; supplementary title; responsible dept; technical reference; classification; status",
    "secondary copy",
    "high",
  ),
  row("lettering", "ISO 3098 height series", "1.8 2.5 3.5 5 7 10 14 20 mm", "secondary copy", "high"),
  row("lettering", "minimum notes", "A0 3.5 mm; A1-A3 2.5 mm; A4 1.8 mm", "secondary copy", "medium"),
  row("lettering", "titles / headings", "3.5 mm", "secondary copy", "medium"),
  row("lettering", "Y14.2 min notes", ".12 in (3 mm); title/number .24 in (6 mm)", "from memory", "from memory"),
  row(
    "lines",
    "ISO 128 widths",
    ".13 .18 .25 .35 .5 .7 1 1.4 2 mm, wide:narrow 2:1 (0.13 from memory)",
    "secondary copy",
    "high",
  ),
  row("lines", "usual pair", "0.7 / 0.35 mm (or 0.5 / 0.25)", "secondary copy; second pair from memory", "medium-high"),
  row("dimension", "first line from outline", ">=10 mm (3/8 in)", "ASME Y14.5M text secondary copy", "medium-high"),
  row("dimension", "following lines", ">=6 mm (1/4 in)", "secondary copy", "medium-high"),
  row("dimension", "extension-line gap", "visible, about 1/16 in (1.5 mm)", "secondary copy", "medium-high"),
  row("dimension", "extension overshoot", "about 1/8 in (3 mm)", "secondary copy", "medium-high"),
  row("dimension", "arrow proportion", "3:1, about 1/8 in long", "secondary copy", "medium-high"),
  row("dimension", "leader angles", "30 / 45 / 60 deg", "secondary copy", "medium"),
  row(
    "projection",
    "symbol",
    "cone frustum with small end at left in both; first angle: concentric circles to the right of it; third angle: circles to the left (geometry derivation)",
    "ISO 5456-2 from memory; re-derived from view placement",
    "from memory",
  ),
  row("projection", "US default", "third-angle", "from memory", "from memory"),
  row(
    "scale",
    "inch structural",
    "1/4in=1ft, 1/2in=1ft, 3/4in=1ft, 1in=1ft, 1-1/2in=1ft, 3in=1ft",
    "common practice",
    "common practice",
  ),
  row("scale", "ISO 5455", "1:1 1:2 1:5 1:10 1:20 1:50 1:100", "from memory", "from memory"),
];

function row(topic: string, item: string, value: string, source: string, confidence: Confidence): Fact {
  return { topic, item, value, source, confidence, note: "" };
}
