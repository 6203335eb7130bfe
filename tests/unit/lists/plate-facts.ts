/** Facts of a base with one template, for lists: another mark, plate and bases for every number. Invented data. */
import type { BaseFacts } from "../../../src/summary/facts.js";
import { inches, millimetres } from "../../../src/units/length.js";

const GRADES = ["A36", "A572 Gr 50", "S235JR", null] as const;
const NAMES = ["T", "TEMPLATE-", "TEMPLATE-LINE-A-"] as const;

export function plateFacts(i: number): BaseFacts {
  const mark = `${NAMES[i % 3]}${i + 1}`;
  const bases = Array.from({ length: 1 + (i % 5) * 4 }, (_, k) => `B${i * 20 + k}`);
  const name = `${mark}_${1 + (i % 40)}-off_PL3-8_A36_rev-B.dxf`;
  const file = { kind: "cut-joined", path: `cut/${name}`, bytes: 1, sha256: "0".repeat(64) };
  const isHeld = i % 11 === 3;
  const piece = {
    ...{ role: i % 17 === 5 ? ("splice plate" as const) : ("template" as const), mark, quantity: 1 + (i % 40) },
    ...{ material: i % 13 === 12 ? ("plywood" as const) : ("steel" as const), grade: GRADES[i % 4] ?? null },
    thickness: i % 2 === 0 ? inches(0.375) : millimetres(6),
    ...{ width: 300 + i * 7.3, height: 250 + i * 3.1, outlineArea: 75_000 + i * 1234.5, netArea: 70_000 + i * 1200.25 },
    ...{
      cutLength: 1800 + i * 33.3,
      scribeLength: 700 + i,
      pierces: 6,
      weight: { value: 4 + i / 3, unit: "lb" as const },
    },
    holes: { rod: 4, opening: 1, nail: i % 2, grout: 0, bolt: 0 },
    drilled: i % 2 === 0 ? [] : [{ diameter: inches(0.125), count: 1 }],
    board: null,
    files: isHeld ? [] : [file],
  };
  return {
    ...{ mark: bases[0] ?? mark, quantity: 1, held: isHeld, released: true, figure: null },
    template: { mark, quantity: piece.quantity, bases },
    pieces: [piece],
    files: piece.files,
    certificates: [],
  };
}
