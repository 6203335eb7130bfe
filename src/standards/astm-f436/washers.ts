/** ASTM F436 hardened washers, in inches as printed. Inside diameters are unverified where a note says so: use the outside. */
import { inches } from "../../units/length.js";
import type { Confidence, StandardTable, WasherRow } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCE = "ASTM F436 / ASME B18.2.6";
const PART = "ASTM F436 / ASME B18.2.6 (part from memory: see confidence)";
const MEMORY = "ASTM F436 / ASME B18.2.6 (from memory)";

const NOTES: Readonly<Record<string, string>> = {
  "5/8": "a secondary copy prints ID .656 (conflict)",
  "3/4": "a secondary copy prints ID .781 (conflict)",
  "7/8": "index id prints ID .906 (conflict)",
  "1": "web copy prints max 1.085, which cannot be min+tol of 1.063+.032; treat 1.125 (-0 +.032) as from memory; verify",
  "1-1/8": "web copy max 1.251; verify",
  "1-1/4": "index id prints ID 1.313 (conflict)",
};

/** Size, inside (two where sources disagree), outside, least and greatest thickness, confidence, source. */
export const f436Washers: StandardTable<WasherRow> = {
  edition: "ASTM F436",
  clause: "circular washers",
  rows: [
    row("1/4", [0.281], 0.625, 0.051, 0.08, "medium-high", SOURCE),
    row("1/2", [0.531], 1.063, 0.097, 0.177, "high", SOURCE),
    row("5/8", [0.688], 1.313, 0.122, 0.177, "high", SOURCE),
    row("3/4", [0.813], 1.469, 0.122, 0.177, "high", SOURCE),
    row("7/8", [0.938], 1.75, 0.136, 0.177, "high", SOURCE),
    row("1", [1.063, 1.125], 2, 0.136, 0.177, "conflict", PART),
    row("1-1/8", [1.188, 1.25], 2.25, 0.136, 0.177, "conflict", PART),
    row("1-1/4", [1.375], 2.5, 0.136, 0.177, "high", SOURCE),
    row("1-3/8", [1.5], 2.75, 0.136, 0.177, "high", SOURCE),
    row("1-1/2", [1.625], 3, 0.136, 0.177, "medium; ID from memory", SOURCE),
    row("1-3/4", [1.875], 3.375, 0.178, 0.28, "from memory", MEMORY),
    row("2", [2.125], 3.75, 0.178, 0.28, "from memory", MEMORY),
    row("2-1/4", [2.375], 4, 0.24, 0.34, "from memory", MEMORY),
    row("2-1/2", [2.625], 4.5, 0.24, 0.34, "from memory", MEMORY),
    row("2-3/4", [2.875], 5, 0.24, 0.34, "from memory", MEMORY),
    row("3", [3.125], 5.5, 0.24, 0.34, "from memory", MEMORY),
    row("3-1/4", [3.375], 6, 0.24, 0.34, "from memory", MEMORY),
    row("3-1/2", [3.625], 6.5, 0.24, 0.34, "from memory", MEMORY),
    row("3-3/4", [3.875], 7, 0.24, 0.34, "from memory", MEMORY),
    row("4", [4.125], 7.5, 0.24, 0.34, "from memory", MEMORY),
  ],
};

function row(
  size: string,
  inside: readonly number[],
  outside: number,
  least: number,
  greatest: number,
  confidence: Confidence,
  source: string,
): WasherRow {
  return {
    size,
    diameter: printedInches(size),
    inside: inside.map(inches),
    outside: inches(outside),
    thickness: { least: inches(least), nominal: null, greatest: inches(greatest) },
    source,
    confidence,
    note: NOTES[size] ?? "",
  };
}
