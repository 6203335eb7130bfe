/** ASME B18.2.2, heavy hex nuts, in inches as printed: F across flats, G across corners, H height. */
import { inches, type Length } from "../../units/length.js";
import type { NutRow, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

/** A heavy hex nut, with the basic sizes that the table prints as fractions. */
export interface HeavyHexRow extends NutRow {
  readonly basicFlats: Length;
  readonly basicHeight: Length;
}

/** Size, F basic, F greatest, F least, G greatest, G least, H basic, H greatest, H least. */
export const heavyHexNuts: StandardTable<HeavyHexRow> = {
  edition: "ASME B18.2.2",
  clause: "heavy hex nuts",
  rows: [
    row("1/2", "7/8", [0.875, 0.85], [1.01, 0.969], "31/64", [0.504, 0.464]),
    row("5/8", "1-1/16", [1.062, 1.031], [1.227, 1.175], "39/64", [0.631, 0.587]),
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a tabulated width, not a logarithm
    row("3/4", "1-1/4", [1.25, 1.212], [1.443, 1.382], "47/64", [0.758, 0.71]),
    row("7/8", "1-7/16", [1.438, 1.394], [1.66, 1.589], "55/64", [0.885, 0.833]),
    row("1", "1-5/8", [1.625, 1.575], [1.876, 1.796], "63/64", [1.012, 0.956]),
    row("1-1/8", "1-13/16", [1.812, 1.756], [2.093, 2.002], "1-7/64", [1.139, 1.079]),
    row("1-1/4", "2", [2, 1.938], [2.309, 2.209], "1-7/32", [1.251, 1.187]),
    row("1-3/8", "2-3/16", [2.188, 2.119], [2.526, 2.416], "1-11/32", [1.378, 1.31]),
    row("1-1/2", "2-3/8", [2.375, 2.3], [2.742, 2.622], "1-15/32", [1.505, 1.433]),
    row("1-3/4", "2-3/4", [2.75, 2.662], [3.175, 3.035], "1-23/32", [1.759, 1.679]),
    row("2", "3-1/8", [3.125, 3.025], [3.608, 3.449], "1-31/32", [2.013, 1.925]),
    row("2-1/4", "3-1/2", [3.5, 3.388], [4.041, 3.862], "2-13/64", [2.251, 2.155]),
    row("2-1/2", "3-7/8", [3.875, 3.75], [4.474, 4.275], "2-29/64", [2.505, 2.401]),
    row("2-3/4", "4-1/4", [4.25, 4.112], [4.907, 4.688], "2-45/64", [2.759, 2.647]),
    row("3", "4-5/8", [4.625, 4.475], [5.34, 5.102], "2-61/64", [3.013, 2.893]),
    row("3-1/4", "5", [5, 4.838], [5.774, 5.515], "3-3/16", [3.252, 3.124]),
    row("3-1/2", "5-3/8", [5.375, 5.2], [6.207, 5.928], "3-7/16", [3.506, 3.37]),
    row("3-3/4", "5-3/4", [5.75, 5.562], [6.64, 6.341], "3-11/16", [3.76, 3.616]),
    row("4", "6-1/8", [6.125, 5.925], [7.073, 6.755], "3-15/16", [4.014, 3.862]),
  ],
};

type Span = readonly [greatest: number, least: number];

function row(size: string, basicFlats: string, f: Span, g: Span, basicHeight: string, h: Span): HeavyHexRow {
  return {
    size,
    diameter: printedInches(size),
    basicFlats: printedInches(basicFlats),
    acrossFlats: inches(f[0]),
    acrossFlatsLeast: inches(f[1]),
    acrossCorners: inches(g[0]),
    acrossCornersLeast: inches(g[1]),
    basicHeight: printedInches(basicHeight),
    height: inches(h[0]),
    heightLeast: inches(h[1]),
    source: "ASME B18.2.2 heavy hex",
    confidence: "high",
    note: "",
  };
}
