/** What cutting processes can do: trade values, each as good as its source. Lengths are exact; t is the plate's thickness. */

import type { Confidence, Sourced } from "../../../src/standards/model.js";
import { inches, type Length, millimetres } from "../../../src/units/length.js";

export type CuttingItem =
  | "smallest hole"
  | "hole spacing"
  | "hole edge"
  | "kerf"
  | "kerf per nozzle orifice"
  | "tolerance"
  | "lead-in"
  | "lead-out"
  | "text height"
  | "corner radius"
  | "order"
  | "overburn"
  | "rule of a code";

/** A multiple of the thickness, a span of lengths with a typical one, or words. */
export type CuttingValue =
  | { readonly kind: "per thickness"; readonly least: number; readonly greatest: number; readonly floor: Length | null }
  | { readonly kind: "span"; readonly least: Length; readonly greatest: Length; readonly typical: Length | null }
  | { readonly kind: "factor"; readonly factor: number }
  | { readonly kind: "words"; readonly words: string };

export interface CuttingRow extends Sourced {
  /** plasma, HD plasma, plasma high current, laser, oxyfuel, waterjet, plasma/oxyfuel, all, code. */
  readonly process: string;
  readonly item: CuttingItem;
  readonly value: CuttingValue;
}

/** Process, item, value, source, confidence. */
export const cuttingLimits: readonly CuttingRow[] = [
  row("plasma", "smallest hole", t(1.5), "secondary copy", "medium"),
  row("plasma", "hole spacing", t(1.5, 1.5, millimetres(5)), "secondary copy", "medium", "holes 1.5 t, parts 5 mm"),
  row("plasma", "kerf", mm(1.5, 3.5), "secondary copy", "medium"),
  row("plasma", "tolerance", mm(0.5, 1.5), "secondary copy", "medium", "plus and minus"),
  row("plasma", "lead-in", mm(6, 6), "trade blog", "low", "least"),
  row("plasma", "text height", mm(15, 15), "secondary copy", "medium", "least"),
  row("plasma", "corner radius", mm(1, 2), "secondary copy", "medium", "least"),
  row("HD plasma", "smallest hole", t(1), "from memory / common practice", "from memory"),
  row("HD plasma", "kerf", mm(0.4, 1.5, 0.9), "trade web page", "low"),
  row("plasma high current", "kerf", mm(3, 6, 4), "trade web page", "low"),
  row("plasma", "kerf per nozzle orifice", { kind: "factor", factor: 1.5 }, "trade web page", "low"),
  row("laser", "smallest hole", t(1), "secondary copy", "medium"),
  row("laser", "kerf", mm(0.1, 0.5, 0.3), "trade web page (.005-.015 in)", "medium"),
  row("laser", "hole edge", words("1.5 t or 1 x dia; web >= t"), "secondary copy", "medium"),
  row("oxyfuel", "smallest hole", t(1, 1.5), "from memory / common practice", "from memory", "at least t"),
  row("oxyfuel", "kerf", mm(1.5, 5, 2.5), "trade web page", "low"),
  row("oxyfuel", "lead-in", mm(15, 15), "trade blog", "low", "least"),
  row("waterjet", "kerf", mm(0.2, 1), "trade web page", "low"),
  row(
    "waterjet",
    "smallest hole",
    inch(0.04, 0.04),
    "secondary copy",
    "medium",
    "about kerf + pierce; pierce-only hole about 0.04 in seen",
  ),
  row(
    "waterjet",
    "tolerance",
    inch(0.01, 0.01),
    "secondary copies",
    "medium",
    "hole diameter accuracy, plus and minus",
  ),
  row(
    "all",
    "lead-in",
    words("in scrap, pierce outside the kept part; arc lead for holes: 1.5-3 x kerf arc"),
    "trade blog",
    "low",
  ),
  row("all", "lead-out", inch(0.25, 0.5), "trade web page", "medium"),
  row("all", "order", words("inside features before outside contour"), "common practice", "common practice"),
  row(
    "plasma/oxyfuel",
    "overburn",
    words("past the start point when closing a hole"),
    "common practice",
    "common practice",
  ),
  row(
    "code",
    "rule of a code",
    words("thermally cut bolt holes: roughness <=1000 uin and gouges <=1/16 in"),
    "AISC 360-22 M2.5",
    "high",
  ),
  row(
    "code",
    "rule of a code",
    words("anchor-rod holes in base plates may be thermally cut"),
    "AISC 360-22 M2.9; DG1 s.2.3",
    "high",
  ),
  row(
    "code",
    "rule of a code",
    words("CSA S16 28.4.3: machine-guided thermal cut holes for static loads"),
    "secondary copy",
    "medium",
  ),
];

function t(least: number, greatest = least, floor: Length | null = null): CuttingValue {
  return { kind: "per thickness", least, greatest, floor };
}

function mm(least: number, greatest: number, typical: number | null = null): CuttingValue {
  const middle = typical === null ? null : millimetres(typical);
  return { kind: "span", least: millimetres(least), greatest: millimetres(greatest), typical: middle };
}

function inch(least: number, greatest: number): CuttingValue {
  return { kind: "span", least: inches(least), greatest: inches(greatest), typical: null };
}

function words(text: string): CuttingValue {
  return { kind: "words", words: text };
}

function row(
  process: string,
  item: CuttingItem,
  value: CuttingValue,
  source: string,
  confidence: Confidence,
  note = "",
): CuttingRow {
  return { process, item, value, source, confidence, note };
}
