/**
 * `proof` on a file of 100,000 entities, against a straightforward baseline: dxf-parser alone, which makes objects of the
 * same text and looks for nothing.
 */
import dxfParser, { type DxfParser } from "dxf-parser";
import { proveFile } from "../../src/proof/index.js";
import { type Measure, timed } from "./measure.js";

/** The package's default export is the class, its typing is not. */
const Parser = dxfParser as unknown as new () => DxfParser;

const ENTITIES = 100_000;
const PITCH = 10;

/** A perforated plate in millimetres: in each cell a circle and a square of four loose lines, and one outline around. */
export function makeLargeFile(entities: number): string {
  const cells = Math.floor((entities - 1) / 5);
  const side = Math.ceil(Math.sqrt(cells));
  const parts = Array.from({ length: cells }, (_, index) =>
    cell((index % side) * PITCH, Math.floor(index / side) * PITCH),
  );
  const far = side * PITCH;
  const corners = [
    [-PITCH, -PITCH],
    [far, -PITCH],
    [far, far],
    [-PITCH, far],
  ];
  const outline = `0\nLWPOLYLINE\n8\nCUT\n90\n4\n70\n1\n${corners.map(([x, y]) => `10\n${x}\n20\n${y}\n`).join("")}`;
  const head =
    "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n4\n9\n$MEASUREMENT\n70\n1\n0\nENDSEC\n";
  return `${head}0\nSECTION\n2\nENTITIES\n${parts.join("")}${outline}0\nENDSEC\n0\nEOF\n`;
}

function cell(x: number, y: number): string {
  const circle = `0\nCIRCLE\n8\nCUT\n10\n${(x + 2).toFixed(4)}\n20\n${(y + 2).toFixed(4)}\n40\n1.5\n`;
  const line = (x0: number, y0: number, x1: number, y1: number) =>
    `0\nLINE\n8\nCUT\n10\n${x0.toFixed(4)}\n20\n${y0.toFixed(4)}\n11\n${x1.toFixed(4)}\n21\n${y1.toFixed(4)}\n`;
  const [left, right, low, high] = [x + 5, x + 8, y + 1, y + 4];
  return [
    circle,
    line(left, low, right, low),
    line(right, low, right, high),
    line(right, high, left, high),
    line(left, high, left, low),
  ].join("");
}

/** Times both in one process on the same text; what is found must be what was drawn. */
export function measureProof(): readonly Measure[] {
  const text = makeLargeFile(ENTITIES);
  const bytes = new TextEncoder().encode(text);
  const proved = proveFile(bytes, "large.dxf", null);
  const cells = Math.floor((ENTITIES - 1) / 5);
  if (proved.holes.length !== cells || proved.openings.length !== cells) throw new Error("not what was drawn");
  const own = timed(() => proveFile(bytes, "large.dxf", null));
  const other = timed(() => new Parser().parseSync(text));
  const seconds = ({ milliseconds }: { readonly milliseconds: number }) => `${(milliseconds / 1000).toFixed(2)} s`;
  const size = `${(bytes.length / 1e6).toFixed(1)} MB`;
  return [
    {
      what: `proof of a file of ${ENTITIES} entities (${size}): ${2 * cells} contours joined, nested, held against each other`,
      value: seconds(own),
      aim: "under 3 s",
    },
    { what: "dxf-parser alone, the same text to objects", value: seconds(other), aim: "baseline" },
  ];
}
