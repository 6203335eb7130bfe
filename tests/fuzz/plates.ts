/**
 * Odd but valid bases, whose plates are known without the program: rods and holes by the pattern, the outline by its size and
 * corners. Every cut file is held against them by a reader of its own.
 */
import { answerJob, type Files, openCase, packageOf } from "./answers.js";
import { measure, readCut } from "./cut-reader.js";
import { type Draw, type Ending, type FuzzClass, WrongResult } from "./model.js";

/** What a cut file must show, in the job's unit; holes from the middle of the outline. */
interface KnownShape {
  readonly holes: readonly (readonly [number, number])[];
  readonly diameter: number;
  readonly width: number;
  readonly height: number;
  readonly area: number;
}

interface Known extends KnownShape {
  readonly job: string;
}

/** Draws in steps that a shop would write: 1/16 in, or millimetres. */
interface Sizes {
  readonly unit: "in" | "mm";
  size(least: number, most: number): number;
}

function sizesOf(random: Draw): Sizes {
  const unit = random.pick(["in", "mm"] as const);
  const [step, scale] = unit === "in" ? [1 / 16, 1] : [1, 25];
  const size = (least: number, most: number) =>
    Math.round((least * scale) / step) * step + random.below(1 + Math.round(((most - least) * scale) / step)) * step;
  return { unit, size };
}

interface Written {
  readonly text: string;
  readonly points: readonly (readonly [number, number])[];
}

function drawPattern(random: Draw, { size }: Sizes): Written {
  switch (random.below(3)) {
    case 0: {
      const [x, y] = [size(4, 24), size(4, 24)];
      const points = [-1, 1].flatMap((i) => [-1, 1].map((j) => [(i * x) / 2, (j * y) / 2] as const));
      return { text: `{ kind: rectangle, x: ${x}, y: ${y} }`, points };
    }
    case 1: {
      const [diameter, count, start] = [size(10, 30), 3 + random.below(10), random.below(90)];
      const points = Array.from({ length: count }, (_, i) => {
        const angle = ((start + (360 * i) / count) * Math.PI) / 180;
        return [(diameter / 2) * Math.cos(angle), (diameter / 2) * Math.sin(angle)] as const;
      });
      return { text: `{ kind: circle, diameter: ${diameter}, count: ${count}, start: ${start} }`, points };
    }
    default: {
      const points = [0, 1, 2, 3, 4].slice(0, 2 + random.below(4)).map((i) => {
        return [size(4, 8) * (i % 2 === 0 ? 1 : -1), size(3, 9) * (i < 2 ? 1 : -1) + i * 0] as const;
      });
      return { text: `{ kind: points, at: [${points.map(([x, y]) => `[${x}, ${y}]`).join(", ")}] }`, points };
    }
  }
}

interface Outline {
  readonly text: string;
  readonly width: number;
  readonly height: number;
  readonly area: number;
}

function drawOutline(random: Draw, { size }: Sizes, reach: number): Outline {
  const width = Math.ceil(2 * reach) + size(2, 8);
  const height = Math.ceil(2 * reach) + size(2, 8);
  const corner = size(1, 2);
  switch (random.below(5)) {
    case 0:
      return {
        text: `{ kind: circle, diameter: ${width} }`,
        width,
        height: width,
        area: (Math.PI * width * width) / 4,
      };
    case 1:
      return rectangle(width, height, `{ kind: round, radius: ${corner} }`, (4 - Math.PI) * corner * corner);
    case 2:
      return rectangle(width, height, `{ kind: chamfer, size: ${corner} }`, 2 * corner * corner);
    case 3:
      return rectangle(width, height, `{ kind: notch, x: ${corner}, y: ${corner} }`, 4 * corner * corner);
    default:
      return rectangle(width, height, null, 0);
  }
}

function rectangle(width: number, height: number, corner: string | null, less: number): Outline {
  const treated = corner === null ? "" : `, corner: ${corner}`;
  const text = `{ kind: rectangle, x: ${width}, y: ${height}${treated} }`;
  return { text, width, height, area: width * height - less };
}

function drawKnown(random: Draw): Known {
  const sizes = sizesOf(random);
  const { unit, size } = sizes;
  const pattern = drawPattern(random, sizes);
  const reach = Math.max(...pattern.points.map(([x, y]) => Math.hypot(x, y)));
  const outline = drawOutline(random, sizes, reach);
  const [rod, hole] = unit === "in" ? ["3/4", size(0.9375, 1.5)] : ["M20", size(1, 1.4)];
  const job = `job: { number: "F", title: Fuzz, revision: A, status: released, date: 2026-11-24 }
units: ${unit}
rules: ${unit === "in" ? "us" : "metric"}
shop: ${unit === "in" ? "laser" : "laser-metric"}
bases:
  - mark: B1
    quantity: ${1 + random.below(9)}
    rods: { diameter: ${rod}, grade: ${unit === "in" ? "36" : "4.6"}, finish: plain }
    pattern: ${pattern.text}
    template: { thickness: ${unit === "in" ? "1/4" : 6}, hole: ${hole}, outline: ${outline.text}, opening: none, key: none }
`;
  return { job, holes: pattern.points, diameter: hole, ...outline };
}

/** Plates of every pattern and outline; cut files of held bases are made too. */
export const plates: FuzzClass = {
  name: "odd but valid geometry, cut files read by another reader",
  cases: 4000,
  draw: (random) => {
    const known = drawKnown(random);
    const files: Files = new Map([["job.yaml", known.job]]);
    const drawings = random.once(12);
    return { files, run: () => answerPlate(files, known, drawings) };
  },
};

async function answerPlate(files: Files, known: Known, drawings: boolean): Promise<Ending> {
  const opened = await openCase(files);
  if (opened === null) return answerJob(files, false);
  const made = packageOf(opened, drawings);
  const cut = [...made.files].filter(([path]) => path.endsWith(".dxf"));
  if (made.held === 0 && cut.length === 0) throw new WrongResult("a base that is not held has no cut file");
  for (const [path, bytes] of cut) holdAgainst(new TextDecoder().decode(bytes), known, path);
  return made.held > 0 ? "held" : "ok";
}

/** Half a thousandth of a millimetre, or of an inch as a cut file in inches is written. */
const NEAR = 5e-4;

/** Throws where a cut file shows another plate. */
export function holdAgainst(text: string, known: KnownShape, path: string): void {
  const layers = readCut(text);
  const outline = layers.get("OUTLINE");
  const wrong = (what: string): never => {
    throw new WrongResult(`${path}: ${what}`);
  };
  if (outline === undefined) throw new WrongResult(`${path}: has no outline`);
  const [disc] = outline.circles;
  const drawn = measure(outline.arcs);
  const box = disc === undefined ? drawn.box : boxOf(disc);
  const [width, height] = [box[2] - box[0], box[3] - box[1]];
  if (Math.abs(width - known.width) > NEAR || Math.abs(height - known.height) > NEAR)
    wrong(`the outline is ${width} x ${height}, asked ${known.width} x ${known.height}`);
  const area = disc === undefined ? drawn.area : (Math.PI * disc.diameter ** 2) / 4;
  if (Math.abs(area - known.area) > NEAR * (width + height)) wrong(`the area is ${area}, asked ${known.area}`);
  const holes = layers.get("HOLES")?.circles ?? [];
  if (holes.length !== known.holes.length) wrong(`has ${holes.length} holes, asked ${known.holes.length}`);
  const [x0, y0] = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2];
  for (const [x, y] of known.holes) {
    const near = holes.filter((hole) => Math.hypot(hole.x - x0 - x, hole.y - y0 - y) <= NEAR);
    if (near.length !== 1) wrong(`no hole at ${x}, ${y}`);
    if (Math.abs((near[0]?.diameter ?? 0) - known.diameter) > NEAR)
      wrong(`the hole at ${x}, ${y} is ${near[0]?.diameter}`);
  }
}

function boxOf({ x, y, diameter }: { readonly x: number; readonly y: number; readonly diameter: number }) {
  const r = diameter / 2;
  return [x - r, y - r, x + r, y + r] as const;
}
