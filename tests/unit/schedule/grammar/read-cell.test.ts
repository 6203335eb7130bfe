/**
 * Cells as prints write them, form by form. The ways of writing are common practice of American, British and European
 * drawings; designations are those of ASTM F1554 (grades 36, 55, 105; S1 weldable) and ISO 898-1 (property classes).
 */
import { describe, expect, it } from "vitest";
import type { FormName } from "../../../../src/schedule/model.js";
import type { Unit } from "../../../../src/units/index.js";
import { given, read } from "../../../cell-reading.js";

type Row = readonly [text: string, gives: string];

function table(form: FormName, unit: Unit, rows: readonly Row[]): void {
  describe(`${form}, in ${unit}`, () => {
    it.each(rows)("%s", (text, gives) => {
      expect(given(read(text, form, unit))).toBe(gives);
    });
  });
}

/** The start of what is told. */
function asks(form: FormName, unit: Unit, rows: readonly Row[]): void {
  describe(`${form}, in ${unit}, asks`, () => {
    it.each(rows)("%s", (text, words) => {
      const reading = read(text, form, unit);
      expect(reading.kind).toMatch(/^(fault|choice)$/);
      expect(given(reading)).toContain(words);
    });
  });
}

table("rods", "in", [
  ['1 1/4"Ø', 'rods.diameter 1 1/4"'],
  ["Ø1-1/4", "rods.diameter 1-1/4"],
  ["1¼ DIA", "rods.diameter 1 1/4"],
  ['1-1/4" DIA.', 'rods.diameter 1-1/4"'],
  ["DIA.75", "rods.diameter .75"],
  ["M24", "rods.diameter M24"],
  ['(4) 3/4"', 'rods.count 4, rods.diameter 3/4"'],
  ['(4)-1"Ø', 'rods.count 4, rods.diameter 1"'],
  ["（４） ３/４”", 'rods.count 4, rods.diameter 3/4"'],
  ['4 - 1" Ø x 2\'-0"', 'rods.count 4, rods.diameter 1", rods.length 2\'-0"'],
  ['4-1"Ø A.B.', 'rods.count 4, rods.diameter 1"'],
  ['4 1 1/4"Ø', 'rods.count 4, rods.diameter 1 1/4"'],
  ["4 NO. M24", "rods.count 4, rods.diameter M24"],
  ["4 M24 GR 8.8", "rods.count 4, rods.diameter M24, rods.grade 8.8"],
  ["4xM24", "rods.count 4, rods.diameter M24"],
  ['4/1"', 'rods.count 4, rods.diameter 1"'],
  ['4/3/4"', 'rods.count 4, rods.diameter 3/4"'],
  ['(4) 1"Ø x 24" LG', 'rods.count 4, rods.diameter 1", rods.length 24"'],
  ['(4) 1"Ø F1554 GR 36 x 1\'-6"', 'rods.count 4, rods.diameter 1", rods.grade F1554 36, rods.length 1\'-6"'],
  ['1"Ø A.R. W/ 12" EMBED', 'rods.diameter 1", rods.embedment 12"'],
  ["3/4 in. dia x 24 in. lg", "rods.diameter 3/4 in., rods.length 24 in."],
  ['4 EA 1" RODS', 'rods.count 4, rods.diameter 1"'],
  [
    '(4) 1 1/4" DIA. ANCHOR RODS, F1554 GR. 55, HDG',
    'rods.count 4, rods.diameter 1 1/4", rods.grade F1554 55, rods.finish galvanized',
  ],
  ["1 x 24", "rods.diameter 1, rods.length 24"],
  ['(4) 3/4"Ø W/ 12" EMBED & 4" PROJ', 'rods.count 4, rods.diameter 3/4", rods.embedment 12", rods.projection 4"'],
  ["3/4\"Ø (4 REQ'D)", 'rods.count 4, rods.diameter 3/4"'],
  ['1"Ø x 24" LG - 4 EA', 'rods.count 4, rods.diameter 1", rods.length 24"'],
  ['1" A.R. (TYP OF 4)', 'rods.count 4, rods.diameter 1"'],
  ['QTY: 4 - 1"Ø', 'rods.count 4, rods.diameter 1"'],
  // Threads to an inch: ASME B1.1, UNC series (3/4-10, 1-8, 1-1/4-7) and 8UN.
  ["3/4-10 UNC x 18", "rods.diameter 3/4, rods.thread UNC, rods.length 18"],
  ["1-8 UNC", "rods.diameter 1, rods.thread UNC"],
  ["1-1/4-7UNC", "rods.diameter 1-1/4, rods.thread UNC"],
  ['4-3/4"-10 UNC', 'rods.count 4, rods.diameter 3/4", rods.thread UNC'],
  ["1-3/4-8UN", "rods.diameter 1-3/4, rods.thread 8UN"],
  ['3/4"Ø - 12" EMBED', 'rods.diameter 3/4", rods.embedment 12"'],
  // ASTM F1554 covers rods of 1/4 in to 4 in: a larger size is a count and a size.
  ['4-3/4"', 'rods.count 4, rods.diameter 3/4"'],
  ['4 - 3/4" Ø', 'rods.count 4, rods.diameter 3/4"'],
  ['4-7/8"Ø x 18"', 'rods.count 4, rods.diameter 7/8", rods.length 18"'],
  ['8 - 1/2"Ø', 'rods.count 8, rods.diameter 1/2"'],
  ['size 4-3/4"', 'rods.diameter 4-3/4"'],
  ["4 ANCHOR RODS", "rods.count 4"],
  ["(4) RODS", "rods.count 4"],
  ["3/4 RODS", "rods.diameter 3/4"],
  ['4 x 1"', 'rods.count 4, rods.diameter 1"'],
  ['(4) 1"Ø x 24" LG (TYP.)', 'rods.count 4, rods.diameter 1", rods.length 24"'],
]);
table("rods", "mm", [
  ["M24 x 600 x 150 thread", "rods.diameter M24, rods.length 600, rods.threads 150"],
  ["4No. M24 x 600 lg + 150 proj", "rods.count 4, rods.diameter M24, rods.length 600, rods.projection 150"],
  ["4 HD bolts M24", "rods.count 4, rods.diameter M24"],
  ["4/M24x750 HD", "rods.count 4, rods.diameter M24, rods.length 750"],
  ["M24 x 600", "rods.diameter M24, rods.length 600"],
  ["4-M24 8.8", "rods.count 4, rods.diameter M24, rods.grade 8.8"],
  ["M24-8.8", "rods.diameter M24, rods.grade 8.8"],
  ["4 No. M24 (8.8) x 600 long", "rods.count 4, rods.diameter M24, rods.grade 8.8, rods.length 600"],
  [
    "4M24 x 600 LG GR 8.8 HDG",
    "rods.count 4, rods.diameter M24, rods.grade 8.8, rods.finish galvanized, rods.length 600",
  ],
]);
asks("length", "mm", [["3/4", "a fraction without a unit"]]);
asks("rods", "in", [
  ['4-1/4"', 'choice: rods.diameter 4-1/4" | rods.count 4, rods.diameter 1/4"'],
  ['3 - 3/4" Ø', 'choice: rods.diameter 3 - 3/4" | rods.count 3, rods.diameter 3/4"'],
  ['2-1/2"Ø', 'choice: rods.diameter 2-1/2" | rods.count 2, rods.diameter 1/2"'],
  ['11/4"', "1-1/4 or 2-3/4?"],
  [
    '2-7/8"Ø x 18"',
    'choice: rods.diameter 2-7/8", rods.length 18" | rods.count 2, rods.diameter 7/8", rods.length 18"',
  ],
  ['3/4"Ø - 12"', "cannot be read"],
  ['1"Ø 8.8', "cannot be read"],
  ["4-1", "cannot be read"],
  ["1-1/4-8 UNC", "UNC has 7 threads to an inch at 1-1/4, and 8 are written"],
  ['3/4"Ø (4)', "cannot be read"],
  ["(4) 3/4\"Ø (6 REQ'D)", "cannot be read"],
  ["1/4-20", "cannot be read"],
  ["M24 x 600", "600 without a unit behind M24"],
  ["M24 x 3 mm", "the pitch of a thread"],
  ["12 x 12", "short for the length of a rod"],
  ['(4) 1"Ø w/ 12" MIN EMBED', "MIN says at least"],
  ['(4) 1"Ø HEADED', "cannot be read"],
  ['(4) 1"Ø x 24" LG x 12" LG', "cannot be read"],
]);
table("rod", "in", [
  ["1-1/4", "rods.diameter 1-1/4"],
  ["2-1/2", "rods.diameter 2-1/2"],
  ["3-3/4", "rods.diameter 3-3/4"],
  ["1.25", "rods.diameter 1.25"],
  ["m 30", "rods.diameter M30"],
  ["30 mm", "rods.diameter 30 mm"],
  ["1-1/5", "rods.diameter 1-1/5"],
  ['(4) 3/4"', 'rods.count 4, rods.diameter 3/4"'],
  ["4-3/4", "rods.count 4, rods.diameter 3/4"],
]);
asks("rod", "in", [
  ["4-1/4", "choice: rods.diameter 4-1/4 | rods.count 4, rods.diameter 1/4"],
  ["11/4", "1-1/4 or 2-3/4?"],
  ["1 1/4 UNF", "cannot be read"],
]);
table("material", "in", [
  ["F1554 GR 55 HDG", "rods.grade F1554 55, rods.finish galvanized"],
  ["F1554 GR.36", "rods.grade F1554 36"],
  ["ASTM F1554, GRADE 105, GALV.", "rods.grade F1554 105, rods.finish galvanized"],
  ["F1554-55", "rods.grade F1554 55"],
  ["F1554 GR 55 S1", "rods.grade F1554 55, rods.weldable yes"],
  ["F1554 GR 55 (HDG)", "rods.grade F1554 55, rods.finish galvanized"],
  ["GR 8.8 HDG", "rods.grade 8.8, rods.finish galvanized"],
  ["8.8", "rods.grade 8.8"],
  ["A36", "rods.grade A36"],
  ["ASTM A449 PLAIN", "rods.grade A449, rods.finish plain"],
  ["A193 B7", "rods.grade A193 B7"],
  ["HDG", "rods.finish galvanized"],
  ["BLACK", "rods.finish plain"],
]);
asks("material", "in", [
  ["F1554 GR 55 OR 105", "cannot be read"],
  ["F1554 GR 55 GR 36", "cannot be read"],
  ["F1554 GR 55 MECH. GALV.", "cannot be read"],
]);
table("grade", "in", [
  ["55", "rods.grade 55"],
  ["F1554 Gr. 55", "rods.grade F1554 55"],
  ["ASTM F1554 Grade 55", "rods.grade ASTM F1554 Grade 55"],
  ["our own steel", "rods.grade our own steel"],
  ["F1554 GR 36 GALV", "rods.grade F1554 36, rods.finish galvanized"],
]);
table("pattern", "in", [
  ["12x12", "pattern.x 12, pattern.y 12"],
  ['8" O.C. EA. WAY', 'pattern.pitch.x 8", pattern.pitch.y 8"'],
  ['10" EACH WAY', 'pattern.x 10", pattern.y 10"'],
  ["24 SQ", "pattern.x 24, pattern.y 24"],
  ['24" SQ.', 'pattern.x 24", pattern.y 24"'],
  ["12 SQUARE", "pattern.x 12, pattern.y 12"],
  ["12 x 10 C/C", "pattern.pitch.x 12, pattern.pitch.y 10"],
  ['12" X 10" CTRS', 'pattern.pitch.x 12", pattern.pitch.y 10"'],
  ['24"Ø B.C.', 'pattern.diameter 24"'],
  ['(8) ON 24" B.C.', 'pattern.diameter 24", pattern.count 8'],
  ['8 RODS ON A 24" DIA BOLT CIRCLE', 'pattern.diameter 24", pattern.count 8'],
  ['24" B.C. straddle', 'pattern.diameter 24", pattern.start straddle'],
  ['(6) ON 24"Ø B.C. ON-AXIS Y', 'pattern.diameter 24", pattern.count 6, pattern.start on-axis y'],
  ["rectangle", "pattern.kind rectangle"],
]);
asks("pattern", "in", [
  ['24" B.C. astraddle', "cannot be read"],
  ["12", "cannot be read"],
  ["12 x 10 x 8", "cannot be read"],
  ["3 @ 6", "cannot be read"],
  ['4 x 6"', '4 spaces at 6", or two lengths'],
  ["2 x 150", "2 spaces at 150, or two lengths"],
]);
table("spacing", "in", [
  ["12", "pattern.x 12"],
  ['3 SPA @ 6" = 1\'-6"', "pattern.x 1'-6\", pattern.nx 4"],
  ['3 @ 6" = 18"', 'pattern.x 18", pattern.nx 4'],
  ["2 EQ SPA @ 6", "pattern.x 12, pattern.nx 3"],
  ["1 SPA @ 6", "pattern.x 6, pattern.nx 2"],
  ["3 SPACES AT 5-5/16", "pattern.x 15-15/16, pattern.nx 4"],
  ['6" O.C.', 'pattern.pitch.x 6"'],
  ["6 O/C", "pattern.pitch.x 6"],
  ["6 IN. ON CENTER", "pattern.pitch.x 6 IN."],
  ["24 SQ", "pattern.x 24, pattern.y 24"],
  ['3 EQ SPA = 18"', 'pattern.x 18", pattern.nx 4'],
]);
table("pattern", "mm", [
  ["400 CRS", "pattern.pitch.alone 400"],
  ["400 c/c both ways", "pattern.pitch.x 400, pattern.pitch.y 400"],
]);
table("spacing", "mm", [
  ["150 CRS", "pattern.pitch.x 150"],
  ['3 SPA @ 6"', "pattern.x 18 in, pattern.nx 4"],
]);
asks("spacing", "in", [
  ['3 @ 6"', "choice: pattern.x 18, pattern.nx 4 | pattern.x 12, pattern.nx 3"],
  ['3 SPA @ 6" = 1\'-8"', '3 spaces at 6" are 18 in, and 1\'-8" is written'],
  ["2 x 3 @ 6", "cannot be read"],
  ["12 x 10", "cannot be read"],
]);
table("plate", "in", [
  ["18x18 PL 1-1/2", "basePlate.x 18, basePlate.y 18, basePlate.thickness 1-1/2"],
  ["PL1 1/2x18x1'-6\"", "basePlate.x 18, basePlate.y 1'-6\", basePlate.thickness 1 1/2"],
  ["PL 1-1/2 x 16 x 18", "basePlate.x 16, basePlate.y 18, basePlate.thickness 1-1/2"],
  ["16 x 18 x 1-1/2", "basePlate.x 16, basePlate.y 18, basePlate.thickness 1-1/2"],
  ["1-1/2 x 18 SQ", "basePlate.x 18, basePlate.y 18, basePlate.thickness 1-1/2"],
  ["18 SQ x 1 1/2", "basePlate.x 18, basePlate.y 18, basePlate.thickness 1 1/2"],
  ['24"Ø x 1"', 'basePlate.diameter 24", basePlate.thickness 1"'],
  ["18x16", "basePlate.x 18, basePlate.y 16"],
  ["PL 1-1/2x18x16 (A36)", "basePlate.x 18, basePlate.y 16, basePlate.thickness 1-1/2"],
  ["18 x 16 x 1-1/2, A572 GR 50", "basePlate.x 18, basePlate.y 16, basePlate.thickness 1-1/2"],
  ["PL 1-1/2", "basePlate.thickness 1-1/2"],
]);
table("plate", "mm", [
  ["450x450x40", "basePlate.x 450, basePlate.y 450, basePlate.thickness 40"],
  ["BPL 20x450x400", "basePlate.x 450, basePlate.y 400, basePlate.thickness 20"],
]);
asks("plate", "in", [
  ["18 x 18 x 12", "does not show which length is the thickness"],
  ["1-1/2 x 18", "a thickness and a side?"],
  ["18", "cannot be read"],
  ["300 mm x 12", "12 has no unit beside 300 mm"],
  ["2' x 2", "2 has no unit beside 2'"],
]);
table("pier", "in", [
  ["24x24", "concrete.x 24, concrete.y 24"],
  ["24 SQ", "concrete.x 24, concrete.y 24"],
  ["24x30 PIER", "concrete.x 24, concrete.y 30"],
  ['36"Ø', 'concrete.diameter 36"'],
  ["36 RD", "concrete.diameter 36"],
  ['24" x 24" x 4\'-0" DEEP', 'concrete.x 24", concrete.y 24", concrete.depth 4\'-0"'],
  ["2'-0\" x 2'-6\"", "concrete.x 2'-0\", concrete.y 2'-6\""],
]);
asks("pier", "in", [
  ['24" x 24" x 4\'-0"', "a third length: a depth?"],
  ["24", "cannot be read"],
]);
table("length", "in", [
  ["1'-6 1/2\"", "rods.embedment 1'-6 1/2\""],
  ["1'6", "rods.embedment 1'6"],
  ["1' - 6\"", "rods.embedment 1' - 6\""],
  ["18 IN.", "rods.embedment 18 IN."],
  ["1½″", 'rods.embedment 1 1/2"'],
  ["１２", "rods.embedment 12"],
  ["-12", "rods.embedment -12"],
  ["0", "rods.embedment 0"],
  ["12 TYP", "rods.embedment 12"],
  ['12" (TYP.)', 'rods.embedment 12"'],
  ["12 U.N.O.", "rods.embedment 12"],
  ['12" EMBED.', 'rods.embedment 12"'],
]);
asks("length", "in", [
  ["12 ±1/4", "± is a tolerance"],
  ['12" +/- 1/4', "+/- is a tolerance"],
  ['12" MIN', "MIN says at least"],
  ["12 (MIN.)", "MIN says at least"],
  ["APPROX 12", "APPROX says about"],
  ["12?", "? leaves it open"],
  ["12*", "points to a note"],
  ["12 SEE NOTE 2", "points to"],
  ["12 18", "cannot be read"],
  ["18/24", "18 or 24"],
  ["12/16", "12 or 16"],
  ["SEE 3/S501", "points elsewhere"],
  ["12 PROJ", "cannot be read"],
  ["M24", "cannot be read"],
]);
table("washer", "in", [
  ["PL WASHER 3x3x1/2", "washer {shape: square, size: 3, thickness: 1/2}"],
  ['3" SQ x 1/2', 'washer {shape: square, size: 3", thickness: 1/2}'],
  ["1/4x3x3 PL WASHER", "washer {shape: square, size: 3, thickness: 1/4}"],
  ["square 3 x 1/2", "washer {shape: square, size: 3, thickness: 1/2}"],
  ["round 3", "washer {shape: round, size: 3}"],
  ['3"Ø x 3/8"', 'washer {shape: round, size: 3", thickness: 3/8"}'],
  ["F436", "washer F436"],
  ["F844 wide", "washer F844 wide"],
  ["ISO 7089", "washer ISO 7089"],
  ["NONE", "blank"],
]);
asks("washer", "in", [
  ["3x4x1/2", "no square"],
  ["3 x 1/2", "cannot be read"],
  ["1/2 x 3", "cannot be read"],
  ["round 1/2 x 3", "thicker than wide"],
]);
table("nut", "in", [
  ["HVY HEX", "rods.nut heavy hex"],
  ["HEX NUTS", "rods.nut hex"],
  ["A563 DH HVY HEX", "rods.nut heavy hex"],
]);
asks("nut", "in", [
  ["A563 DH", "a grade alone does not say which"],
  ["(2) HVY HEX", "cannot be read"],
]);
table("bottom", "in", [
  ["nut", "rods.bottom nut"],
  ["plate 3 x 1/2", "rods.bottom {kind: plate, shape: square, size: 3, thickness: 1/2}"],
  ["plate dia 3 x 1/2", "rods.bottom {kind: plate, shape: round, size: 3, thickness: 1/2}"],
  ["PL 3x3x1/2", "rods.bottom {kind: plate, shape: square, size: 3, thickness: 1/2}"],
  ["hook 4", "rods.bottom {kind: hook, reach: 4}"],
  ["straight", "rods.bottom straight"],
  ["swedged 6", "rods.bottom {kind: swedged, length: 6}"],
  ['6" SWEDGED', 'rods.bottom {kind: swedged, length: 6"}'],
  ['4" HOOK', 'rods.bottom {kind: hook, reach: 4"}'],
]);
asks("bottom", "in", [
  ["NUT & WASHER", "cannot be read"],
  ["3x3x1/2", "cannot be read"],
]);
table("section", "in", [
  ["W12x65", "column W12x65"],
  ["HSS 8x8x1/2", "column HSS 8x8x1/2"],
  ["HSS8.625x0.500", "column HSS8.625x0.500"],
  ["PIPE 6 STD", "column PIPE 6 STD"],
  ["pipe 8-5/8", "column {kind: pipe, diameter: 8-5/8}"],
  ["pipe 6 O.D.", "column {kind: pipe, diameter: 6}"],
  ["pipe 14", "column {kind: pipe, diameter: 14}"],
  ["W12x65 along y", "column W12x65 along y"],
  ["tube 8 x 8 at 1, 2", "column {kind: tube, x: 8, y: 8, at: [1, 2]}"],
  [
    "wide flange 12 x 8 x 5/8 x 3/8 along y",
    "column {kind: wide flange, depth: 12, width: 8, flange: 5/8, web: 3/8, depthAlong: y}",
  ],
]);
table("section", "mm", [
  ["HEB 300", "column HEB 300"],
  ["HE 300 B", "column HE 300 B"],
  ["UC 254x254x73", "column UC 254x254x73"],
  ["IPE300", "column IPE300"],
  ["254x254x73 UC", "column 254x254x73 UC"],
  ["PIPE 6 X-STRONG", "column PIPE 6 X-STRONG"],
]);
asks("section", "in", [
  ["PIPE 6", "the outside diameter, or the nominal size"],
  ["W12", "cannot be read"],
  ["W12x65 OR W12x72", "cannot be read"],
  ["COL", "cannot be read"],
]);
table("outline", "in", [
  ["20 x 18 at 1, 2", "template.outline {kind: rectangle, x: 20, y: 18, at: [1, 2]}"],
  ["20 SQ", "template.outline {kind: rectangle, x: 20, y: 20}"],
  ["dia 30", "template.outline {kind: circle, diameter: 30}"],
  ['30"Ø', 'template.outline {kind: circle, diameter: 30"}'],
  ["ring 30 / 20", "template.outline {kind: ring, outer: 30, inner: 20}"],
  ["30-1/2 x 20 ring", "template.outline {kind: ring, outer: 30-1/2, inner: 20}"],
  ["polygon 0,0; 9,0; 9,9", "template.outline {kind: polygon, at: [[0, 0], [9, 0], [9, 9]]}"],
  ["auto", "template.outline {kind: auto}"],
]);
table("corner", "in", [
  ["chamfer 1 x 2", "template.outline.corner {kind: chamfer, x: 1, y: 2}"],
  ["round 1", "template.outline.corner {kind: round, size: 1}"],
  ["square", "template.outline.corner {kind: square}"],
]);
asks("corner", "in", [
  ["round 1 x 2", "cannot be read"],
  ["square 1", "cannot be read"],
  ["chamfer", "cannot be read"],
]);
table("opening", "in", [
  ["NONE", "template.opening none"],
  ["dia 6 at (1, 2)", "template.opening {diameter: 6, at: [1, 2]}"],
  ["8 x 6 r 1", "template.opening {x: 8, y: 6, radius: 1}"],
  ["-", "blank"],
]);
table("hole", "in", [
  ["2-1/16", "baseHole 2-1/16"],
  ['Ø2-1/16"', 'baseHole 2-1/16"'],
  ["2 1/16 DIA HOLES", "baseHole 2 1/16"],
  ['(4) 2-1/16"Ø', 'baseHole 2-1/16", rods.count 4'],
]);
asks("hole", "in", [
  ["13/16 x 1-1/2 SLOT", "cannot be read"],
  ["STD", "cannot be read"],
]);
table("thickness", "in", [
  ["1-1/2", "basePlate.thickness 1-1/2"],
  ["PL 1-1/2", "basePlate.thickness 1-1/2"],
  ['1 1/2" THK.', 'basePlate.thickness 1 1/2"'],
]);
table("elevation", "in", [
  ["EL. 99'-6\"", "check.topOfConcrete 99'-6\""],
  ["+99.50 ft", "check.topOfConcrete +99.50 ft"],
  ["±0.00 m", "check.topOfConcrete ±0.00 m"],
]);
asks("elevation", "in", [
  ["±1'-0\"", "±"],
  ["99'-6\" MAX", "MAX"],
]);
table("count", "in", [
  ["(4 THUS)", "rods.count 4"],
  ["(4 REQ'D)", "rods.count 4"],
  ["4", "rods.count 4"],
  ["(4)", "rods.count 4"],
  ["4 REQ'D", "rods.count 4"],
  ["4 EA.", "rods.count 4"],
]);
asks("count", "in", [
  ["2.5", "whole number"],
  ["4 OR 6", "cannot be read"],
  ["1-14", "cannot be read"],
]);
table("holes", "in", [["1/8: -9,8; 9,8", "template.nails {diameter: 1/8, at: [[-9, 8], [9, 8]]}"]]);
table("points", "in", [["(-6,5); (6,5)", "pattern.at [[-6, 5], [6, 5]]"]]);
table("lengths", "in", [["-9; 0; 9", "pattern.x [-9, 0, 9]"]]);

describe("what stands in any column", () => {
  const forms: readonly FormName[] = [
    "length",
    "rods",
    "plate",
    "pattern",
    "pier",
    "material",
    "hole",
    "washer",
    "count",
  ];
  it.each<Row>([
    ["-", "blank"],
    ["– –", "blank"],
    ["N/A", "blank"],
    ["n.a.", "blank"],
    ["NIL", "blank"],
    ["DO", "above"],
    ["DO.", "above"],
    ["Ditto", "above"],
    ['"', "above"],
    ["''", "above"],
    ["〃", "above"],
    ['-"-', "above"],
    ["SAME", "above"],
    ["SAME AS ABOVE", "above"],
    ["SAME AS B3", "base B3"],
    ["AS BP-1", "base BP-1"],
    ["SEE B3", "base B3"],
    ["SEE NOTE 2", "note 2"],
    ["NOTE (2)", "note 2"],
    ["see note 2.", "note 2"],
  ])("%s", (text, gives) => {
    for (const form of forms) expect([form, given(read(text, form))]).toEqual([form, gives]);
  });

  it.each<Row>([
    ["TBD", "leaves it open"],
    ["?", "leaves it open"],
    ["HOLD", "leaves it open"],
    ["BY OTHERS", "leaves it open"],
    ["VARIES", "leaves it open"],
    ["SEE PLAN", "leaves it open"],
    ["SEE DETAIL 3/S-501", "leaves it open"],
    ["PER MFR.", "leaves it open"],
    ["2/S-501", "points to a detail"],
    ["SIM TO B3", "similar, which is not the same"],
    ["TYP", "typical without a value"],
    ["SEE NOTES 2 & 3", "names no single note"],
    ["SAME AS B3 & B4", "points elsewhere"],
  ])("%s is asked", (text, words) => {
    for (const form of forms) expect([form, given(read(text, form))]).toEqual([form, expect.stringContaining(words)]);
  });

  it("a note is a text, but for nothing and ditto marks", () => {
    expect(given(read("SEE NOTE 2", "note"))).toBe("note SEE NOTE 2");
    expect(given(read("HOLD FOR RFI", "note"))).toBe("note HOLD FOR RFI");
    expect(given(read("DO", "note"))).toBe("above");
    expect(given(read(" - ", "note"))).toBe("blank");
  });
});

describe("NONE under a finish", () => {
  it("is asked: no coating, or none known", () => {
    expect(given(read("NONE", "finish"))).toContain("plain, galvanized, or -");
  });
});

describe("the unit of the heading", () => {
  it("holds for numbers without one", () => {
    expect(given(read("300", "length", "in", "mm"))).toBe("rods.embedment 300 mm");
    expect(given(read('12"', "length", "in", "mm"))).toBe('rods.embedment 12"');
    expect(given(read("300x250", "pattern", "in", "mm"))).toBe("pattern.x 300 mm, pattern.y 250 mm");
    expect(given(read("3 SPA @ 100", "spacing", "in", "mm"))).toBe("pattern.x 300 mm, pattern.nx 4");
    expect(given(read("1.5", "length", "in", "ft"))).toBe("rods.embedment 1.5 ft");
    expect(given(read("12", "length", "in", "in"))).toBe("rods.embedment 12");
    expect(given(read("-6,5; 6,5", "points", "in", "mm"))).toBe("pattern.at [[-6 mm, 5 mm], [6 mm, 5 mm]]");
  });
});

describe("thread of a rod", () => {
  it.each(["FULL", "full length", "FULLY THREADED", "ALL THREAD"])("%s is a full thread", (text) => {
    expect(given(read(text, "length", "in", null, "rods.threads"))).toBe("rods.threads full");
  });

  it("is full in no other column of lengths", () => {
    expect(read("FULL", "length", "in", null, "rods.projection").kind).toBe("fault");
  });
});
