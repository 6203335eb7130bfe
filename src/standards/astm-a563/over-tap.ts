/** ASTM A563: diametral over-tap of zinc-coated nuts, in inches. */
import { inches, type Length } from "../../units/length.js";
import type { Sized, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

/** What a nut is tapped over size, on the diameter. */
export interface OverTapRow extends Sized {
  readonly allowance: Length;
}

/** Size, allowance. */
export const overTap: StandardTable<OverTapRow> = {
  edition: "ASTM A563",
  clause: "diametral over-tap for zinc-coated nuts",
  rows: [
    row("1/4", 0.016),
    row("5/16", 0.017),
    row("3/8", 0.017),
    row("7/16", 0.018),
    row("1/2", 0.018),
    row("9/16", 0.02),
    row("5/8", 0.02),
    row("3/4", 0.02),
    row("7/8", 0.022),
    row("1", 0.024),
    row("1-1/8", 0.024),
    row("1-1/4", 0.024),
    row("1-3/8", 0.027),
    row("1-1/2", 0.027),
    row("1-3/4", 0.05),
    row("2", 0.05),
    row("2-1/4", 0.05),
    row("2-1/2", 0.05),
    row("2-3/4", 0.05),
    row("3", 0.05),
    row("3-1/4", 0.05),
    row("3-1/2", 0.05),
    row("3-3/4", 0.05),
    row("4", 0.05),
  ],
};

function row(size: string, allowance: number): OverTapRow {
  const source = "ASTM A563 diametral over-tap for zinc-coated nuts";
  return { size, diameter: printedInches(size), allowance: inches(allowance), source, confidence: "high", note: "" };
}
