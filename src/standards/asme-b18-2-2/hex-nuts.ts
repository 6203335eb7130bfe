/** ASME B18.2.2, hex nuts, in inches as printed: F across flats, G across corners, H height. */
import { inches } from "../../units/length.js";
import type { Confidence, NutRow, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

/** Size, F greatest and least, G greatest and least, H greatest and least, confidence, note. */
export const hexNuts: StandardTable<NutRow> = {
  edition: "ASME B18.2.2",
  clause: "hex nuts",
  rows: [
    row("1/4", [0.438, 0.428], [0.505, 0.488], [0.226, 0.212], "high"),
    row("5/16", [0.5, 0.489], [0.577, 0.557], [0.273, 0.258], "high"),
    row("3/8", [0.563, 0.551], [0.65, 0.628], [0.337, 0.32], "high"),
    row("7/16", [0.688, 0.675], [0.794, 0.768], [0.385, 0.365], "high", "F exceeds 1.5D (0.656)"),
    row("1/2", [0.75, 0.736], [0.866, 0.84], [0.448, 0.427], "high"),
    row("9/16", [0.875, 0.861], [1.01, 0.982], [0.496, 0.473], "high", "F exceeds 1.5D (0.844)"),
    row("5/8", [0.938, 0.922], [1.083, 1.051], [0.559, 0.535], "high"),
    row("3/4", [1.125, 1.088], [1.299, 1.24], [0.665, 0.617], "high"),
    row("7/8", [1.312, 1.269], [1.516, 1.447], [0.776, 0.724], "high"),
    row("1", [1.5, 1.45], [1.732, 1.653], [0.887, 0.831], "high"),
    row("1-1/8", [1.688, 1.631], [1.949, 1.859], [0.999, 0.939], "high"),
    row("1-1/4", [1.875, 1.812], [2.165, 2.066], [1.094, 1.03], "high"),
    row("1-3/8", [2.062, 1.994], [2.382, 2.273], [1.206, 1.138], "high"),
    row("1-1/2", [2.25, 2.175], [2.598, 2.48], [1.317, 1.245], "high"),
    row(
      "1-5/8",
      [2.43, 2.35],
      [2.805, 2.679],
      [1.416, 1.364],
      "medium-high",
      "F is below 1.5D (2.438): doubtful, verify",
    ),
    row("1-3/4", [2.625, 2.538], [3.031, 2.893], [1.54, 1.46], "medium-high"),
    row("1-7/8", [2.813, 2.722], [3.247, 3.103], [1.651, 1.567], "medium-high"),
    row("2", [3, 2.9], [3.464, 3.306], [1.763, 1.675], "medium-high"),
    row("2-1/4", [3.375, 3.263], [3.897, 3.719], [1.986, 1.89], "medium-high"),
    row("2-1/2", [3.75, 3.625], [4.33, 4.133], [2.209, 2.105], "medium-high"),
    row("2-3/4", [4.125, 3.988], [4.763, 4.546], [2.431, 2.319], "medium-high"),
    row("3", [4.5, 4.35], [5.196, 4.959], [2.654, 2.534], "medium-high"),
    row("3-1/4", [4.875, 4.713], [5.629, 5.373], [2.877, 2.749], "medium-high"),
    row("3-1/2", [5.25, 5.075], [6.062, 5.786], [3.1, 2.964], "medium-high"),
    row("3-3/4", [5.625, 5.438], [6.495, 6.199], [3.322, 3.178], "medium-high"),
    row("4", [6, 5.8], [6.928, 6.612], [3.545, 3.393], "medium-high"),
  ],
};

type Span = readonly [greatest: number, least: number];

function row(size: string, f: Span, g: Span, h: Span, confidence: Confidence, note = ""): NutRow {
  return {
    size,
    diameter: printedInches(size),
    acrossFlats: inches(f[0]),
    acrossFlatsLeast: inches(f[1]),
    acrossCorners: inches(g[0]),
    acrossCornersLeast: inches(g[1]),
    height: inches(h[0]),
    heightLeast: inches(h[1]),
    source: "ASME B18.2.2 hex",
    confidence,
    note,
  };
}
