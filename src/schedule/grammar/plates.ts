/** Base plates and piers: `18x18 PL 1-1/2`, `PL1 1/2x18x1'-6"`, `24"Ø x 1"`, `24x30 PIER`, `36"Ø`. */
import { quote } from "../../units/index.js";
import type { CellReading } from "../model.js";
import type { CellText, Way } from "./answers.js";
import { readWays } from "./answers.js";
import type { Written } from "./lengths.js";
import { holdUnits, takeLength, takeSides } from "./lengths.js";
import { takeGrade } from "./material.js";
import { DIAMETER, takeCountInBrackets } from "./rods.js";
import type { Scan } from "./scan.js";
import { phrases } from "./scan.js";
import { SQUARE } from "./spacing.js";

const PLATE = phrases("PL", "PLT", "PLATE", "BPL", "B.PL.", "BP", "BASE PL", "BASE PLATE", "BASEPLATE");
const THICK = phrases("THK", "THICK", "THICKNESS", "T");
const ROUND = phrases("\u00F8", "DIA", "DIAM", "DIAMETER", "RD", "ROUND", "RND");
const PIER = phrases("PIER", "PEDESTAL", "PED", "CONC PIER", "CONCRETE PIER", "CONC", "PLINTH");
const DEEP = phrases("DEEP", "DP", "D", "DEPTH");

/** Sides of a plate in plan, or its diameter. */
interface Plan {
  readonly sides: readonly Written[];
  readonly isRound: boolean;
}

/** `18 x 16`, `18 SQ`, `24"Ø`, `Ø24` */
function takePlan(scan: Scan): Plan | null {
  const isBefore = scan.phrase(DIAMETER);
  const first = takeLength(scan);
  if (first === null) return null;
  if (isBefore || scan.phrase(ROUND)) return { sides: [first], isRound: true };
  if (scan.phrase(SQUARE)) return { sides: [first, first], isRound: false };
  const second = scan.take("x") ? takeLength(scan) : null;
  if (second === null) return null;
  return { sides: [first, second], isRound: false };
}

/** `18x18 PL 1-1/2`, `18 x 18 x 1-1/2`, `18 SQ x 1-1/2 THK` */
function takePlanFirst(scan: Scan): Way | null {
  const isNamed = scan.phrase(PLATE);
  const plan = takePlan(scan);
  if (plan === null) return null;
  const isNamedThen = !isNamed && scan.phrase(PLATE);
  const isJoined = scan.take("x");
  const thickness = isJoined || isNamedThen ? takeLength(scan) : null;
  if (thickness === null)
    return isJoined || (plan.isRound && !isNamed && !isNamedThen) ? null : plateWay(scan, plan, null);
  const isSaid = scan.phrase(THICK) || (isNamedThen && !isJoined);
  if (!isNamed && !isNamedThen) scan.phrase(PLATE);
  return plateWay(scan, plan, { thickness, isSaid });
}

/** `PL 1-1/2 x 18 x 18`, `1-1/2 x 18 SQ`, `1-1/2 THK x 18 x 18` */
function takeThicknessFirst(scan: Scan): Way | null {
  scan.phrase(PLATE);
  const thickness = takeLength(scan);
  if (thickness === null) return null;
  const isSaid = scan.phrase(THICK);
  const isNamed = scan.phrase(PLATE);
  if (!scan.take("x") && !isSaid && !isNamed) return null;
  const plan = takePlan(scan);
  if (plan === null) return null;
  scan.phrase(PLATE);
  return plateWay(scan, plan, { thickness, isSaid });
}

/** `PL 1-1/2`, `1-1/2" THK` */
function takeThicknessOnly(scan: Scan): Way | null {
  const thickness = takeThickness(scan, true);
  return thickness === null
    ? null
    : { values: { "basePlate.thickness": thickness.text }, how: `thickness ${thickness.text}` };
}

function takeThickness(scan: Scan, isNameNeeded: boolean): Written | null {
  const isBefore = scan.phrase(PLATE);
  const thickness = takeLength(scan);
  if (thickness === null) return null;
  const isSaid = scan.phrase(THICK);
  const isAfter = !isBefore && scan.phrase(PLATE);
  return isBefore || isSaid || isAfter || !isNameNeeded ? thickness : null;
}

interface Thick {
  readonly thickness: Written;
  /** True where a word says that it is the thickness. */
  readonly isSaid: boolean;
}

function plateWay(scan: Scan, plan: Plan, thick: Thick | null): Way {
  const [x, y] = plan.sides;
  const thickness = thick?.thickness ?? null;
  holdUnits(scan, thickness === null ? plan.sides : [...plan.sides, thickness]);
  if (thick === null) holdStocky(scan, plan);
  else holdThin(scan, plan, thick);
  const size = plan.isRound ? `diameter ${x?.text}` : `${x?.text} in x, ${y?.text} in y`;
  return {
    values: {
      "basePlate.x": plan.isRound ? null : (x?.text ?? null),
      "basePlate.y": plan.isRound ? null : (y?.text ?? null),
      "basePlate.diameter": plan.isRound ? (x?.text ?? null) : null,
      "basePlate.thickness": thickness?.text ?? null,
    },
    how: thickness === null ? size : `${size}, ${thickness.text} thick`,
  };
}

/** The thickness is told from the sides by being the smallest by far: at most a third of each. */
function holdThin(scan: Scan, { sides }: Plan, { thickness, isSaid }: Thick): void {
  const isThin = sides.every(({ nm }) => thickness.nm * 3 <= nm);
  if (isThin || (isSaid && sides.every(({ nm }) => thickness.nm < nm))) return;
  if ([...sides, thickness].some(({ nm }) => Number.isNaN(nm))) return;
  scan.fault(
    `${quote(scan.plain)} does not show which length is the thickness: ${thickness.text} is not the smallest by far; allowed is PL, thickness, then x and y, as PL 1-1/2 x 18 x 16, or x, y and thickness, as 18 x 16 x 1-1/2`,
  );
}

/** Two lengths that differ by far, as `1-1/2 x 18`, may be a thickness and a side. */
function holdStocky(scan: Scan, { sides }: Plan): void {
  const [a = Number.NaN, b = a] = sides.map(({ nm }) => nm);
  if (!(Math.min(a, b) * 3 <= Math.max(a, b))) return;
  scan.fault(
    `${quote(scan.plain)} has two lengths that differ by far: a thickness and a side? allowed is ${ALLOWED_PLATE}`,
  );
}

/** A plate with the grade of its steel behind it, which is said, since the job keeps none. */
function withGrade(take: (scan: Scan) => Way | null): (scan: Scan) => Way | null {
  return (scan) => {
    const way = take(scan);
    if (way === null || scan.isDone) return way;
    const isOpen = scan.take("(");
    if (!isOpen) scan.take(",");
    const grade = takeGrade(scan, false);
    return grade === null || (isOpen && !scan.take(")"))
      ? null
      : { ...way, how: `${way.how}; its grade, ${grade}, is kept in no key` };
  };
}

const ALLOWED_PLATE = `a size with its thickness, as 18 x 16 PL 1-1/2, PL 1-1/2 x 18 x 16, 18 SQ x 1-1/2 or 24"\u00D8 x 1"`;

/** A base plate: x, y or diameter, and thickness, as far as the cell says them. */
export function readPlate(cell: CellText): CellReading {
  const reading = readWays(cell, ALLOWED_PLATE, withGrade(takePlanFirst));
  if (reading.kind === "value") return reading;
  const other = readWays(cell, ALLOWED_PLATE, withGrade(takeThicknessFirst), withGrade(takeThicknessOnly));
  return other.kind === "value" ? other : reading;
}

const GROUT = phrases("GROUT", "THK", "THICK", "GAP");

/** A thickness: `1-1/2`, `PL 1-1/2`, `1-1/2" THK`. */
export function readThickness(cell: CellText): CellReading {
  return readWays(cell, `a thickness, as 1-1/2, PL 1-1/2 or 38 mm`, (scan) => {
    const isPlate = cell.context.key.endsWith("hickness");
    const thickness = isPlate ? takeThickness(scan, false) : takeLength(scan);
    if (!isPlate) scan.phrase(GROUT);
    return thickness === null ? null : { values: { [cell.context.key]: thickness.text } };
  });
}

function takePier(scan: Scan): Way | null {
  const plan = takePlan(scan);
  if (plan === null) return null;
  const isNamed = scan.phrase(PIER);
  const depth = scan.attempt(() => takeDepth(scan));
  if (!isNamed) scan.phrase(PIER);
  const [x, y] = plan.sides;
  holdUnits(scan, depth === null ? plan.sides : [...plan.sides, depth]);
  const size = plan.isRound ? `diameter ${x?.text}` : `${x?.text} in x, ${y?.text} in y`;
  return {
    values: {
      "concrete.x": plan.isRound ? null : (x?.text ?? null),
      "concrete.y": plan.isRound ? null : (y?.text ?? null),
      "concrete.diameter": plan.isRound ? (x?.text ?? null) : null,
      "concrete.depth": depth?.text ?? null,
    },
    how: depth === null ? size : `${size}, ${depth.text} deep`,
  };
}

function takeDepth(scan: Scan): Written | null {
  if (!scan.take("x")) scan.take(",");
  const depth = takeLength(scan);
  return depth !== null && scan.phrase(DEEP) ? depth : null;
}

/** A pier: x and y or diameter; a third length only where it says that it is the depth. */
export function readPier(cell: CellText): CellReading {
  const allowed = `a size, as 24 x 30, 24 SQ or 36"\u00D8; with a depth that says so, as 24 x 30 x 4'-0" DEEP`;
  if (takesThree(cell)) {
    return { kind: "fault", message: `${quote(cell.text)} has a third length: a depth? allowed is ${allowed}` };
  }
  return readWays(cell, allowed, takePier);
}

function takesThree(cell: CellText): boolean {
  const reading = readWays(cell, "", (scan) => (takeSides(scan, 3).length === 3 ? { values: {} } : null));
  return reading.kind === "value";
}

const HOLES = phrases("HOLE", "HOLES", "HLS");

/** A hole: `1-5/16`, `Ø1-5/16`, `1-5/16"Ø HOLES`; `(4) 1-5/16"Ø` says how many rods there are too. */
export function readHole(cell: CellText): CellReading {
  return readWays(cell, `a hole's diameter, as 2-1/16, 2-1/16"\u00D8 or 52 mm`, (scan) => {
    const count = scan.attempt(() => takeCountInBrackets(scan));
    const isBefore = scan.phrase(DIAMETER);
    const diameter = takeLength(scan);
    if (diameter === null) return null;
    if (!isBefore) scan.phrase(DIAMETER);
    scan.phrase(HOLES);
    const how = count === null ? "" : `${count} holes for ${count} rods`;
    return { values: { [cell.context.key]: diameter.text, "rods.count": count }, how };
  });
}
