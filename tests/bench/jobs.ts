/** Jobs for the benchmark: invented bases, five kinds in turn, in 160 sizes, after which they repeat under other marks. */
import { readFileSync } from "node:fs";
import type { Inputs } from "../../src/index.js";

const SHOP = "templates/shops/plasma.yaml";

/** A released job of `count` bases in inches, numbered from `first`, as the shell would hand it in. */
export function makeInputs(count: number, first = 0): Inputs {
  const bases = Array.from({ length: count }, (_, index) => baseText(first + index));
  const job = `job: { number: "26-001", title: Benchmark, revision: A, status: released, date: 2026-11-24 }\nunits: in\nrules: us\nshop: plasma\nbases:\n`;
  const files = new Map<string, string>([
    ["job.yaml", job + bases.join("")],
    [SHOP, readFileSync(SHOP, "utf8")],
  ]);
  return { job: "job.yaml", files };
}

/** The first `types` bases at `places` places in all, on a grid of 40 ft bays, 50 lines one way. */
export function withPlacements(inputs: Inputs, types: number, places: number): Inputs {
  const each = places / types;
  const text = String(inputs.files.get(inputs.job)).replace(/quantity: \d+/g, `quantity: ${each}`);
  const names = (count: number, prefix: string): string =>
    Array.from({ length: count }, (_, i) => `${prefix}${i + 1}`).join(", ");
  const rows = Math.ceil(places / 50);
  const at = Array.from({ length: places }, (_, i) => `[Y${Math.floor(i / 50) + 1}, X${(i % 50) + 1}]`);
  const placements = Array.from(
    { length: types },
    (_, type) =>
      `  - { base: B${type + 1}, at: [${at.slice(type * each, (type + 1) * each).join(", ")}], turn: ${90 * (type % 4)} }\n`,
  );
  const grid = `grid:\n  x: { names: [${names(50, "X")}], spacing: 40' }\n  y: { names: [${names(rows, "Y")}], spacing: 40' }\n`;
  const site = "site: { topOfConcrete: 100' }\n";
  return {
    ...inputs,
    files: new Map([...inputs.files, [inputs.job, `${text}${grid}placements:\n${placements.join("")}${site}`]]),
  };
}

const KINDS = [rectangle, braced, round, mast, twoSizes] as const;

function baseText(index: number): string {
  const kind = KINDS[index % KINDS.length] ?? rectangle;
  const grow = (index % 160) / 16;
  return `  - mark: B${index + 1}\n    quantity: ${1 + (index % 6)}\n${kind(grow)}`;
}

const rods = (diameter: string): string =>
  `{ diameter: ${diameter}, grade: 55, finish: galvanized, projection: 10, embedment: 24, torqued: false }`;

function rectangle(grow: number): string {
  return `    rods: ${rods("1-1/4")}
    pattern: { kind: rectangle, x: ${12 + grow}, y: 10 }
    basePlate: { x: ${18 + grow}, y: 16, thickness: 1-1/2, hole: 2-1/16, washer: { shape: square, size: 3, thickness: 1/2 } }
    concrete: { x: ${24 + grow}, y: 24 }
    template: { thickness: 1/4, support: form, outline: { kind: rectangle, x: ${26 + grow}, y: 18, corner: { kind: chamfer, size: 1 } }, opening: { diameter: 6 } }
`;
}

function braced(grow: number): string {
  return `    rods: ${rods("1")}
    pattern: { kind: rectangle, x: ${16 + grow}, y: 12, nx: 3, ny: 3, perimeter: true }
    basePlate: { x: ${22 + grow}, y: 18, thickness: 2, hole: 1-13/16, washer: { shape: square, size: 3, thickness: 3/8 } }
    concrete: { x: ${30 + grow}, y: 26 }
    template: { thickness: 1/4, support: bearers, opening: { x: 6, y: 4, radius: 1/2 } }
`;
}

function round(grow: number): string {
  return `    rods: ${rods("3/4")}
    pattern: { kind: circle, diameter: ${16 + grow}, count: 6, start: straddle x }
    basePlate: { x: ${24 + grow}, y: ${24 + grow}, thickness: 1, hole: 1-5/16, washer: { shape: round, size: 2, thickness: 1/4 } }
    concrete: { diameter: ${30 + grow} }
    template: { thickness: 3/16, support: form, outline: { kind: circle, diameter: ${22 + grow} }, opening: { diameter: 7 } }
`;
}

function mast(grow: number): string {
  return `    rods: ${rods("1-1/2")}
    pattern: { kind: circle, diameter: ${30 + grow}, count: 12, start: on-axis }
    concrete: { diameter: ${48 + grow} }
    template: { thickness: 1/4, support: bearers, outline: { kind: ring, outer: ${36 + grow}, inner: ${24 + grow} } }
`;
}

function twoSizes(grow: number): string {
  return `    groups:
      - { rods: ${rods("1-1/4")}, pattern: { kind: rectangle, x: ${14 + grow}, y: 14 } }
      - { rods: ${rods("3/4")}, pattern: { kind: points, at: [[-4, 0], [4, 0]] } }
    concrete: { x: ${28 + grow}, y: 28 }
    template: { thickness: 1/4, support: bearers, opening: auto }
`;
}

const HEADINGS =
  "Mark,Qty,Rod dia,Grade,Finish,Torqued,Projection,Embedment,Pattern,X,Y,nx,ny,Perimeter,Bolt circle,Count,Start,Points," +
  "Base plate X,Base plate Y,Base plate thk,Base plate hole,Washer,Pier X,Pier Y,Pier dia,Support,Template thk,Outline,Corner,Opening";

/** The same bases as a CSV schedule, as a job of thousands of bases would come. */
export function makeScheduleInputs(count: number): Inputs {
  const rows = Array.from({ length: count }, (_, index) => scheduleRows(index));
  const job = `job: { number: "26-001", title: Benchmark, revision: A, status: released, date: 2026-11-24 }\nunits: in\nrules: us\nshop: plasma\nschedule: bases.csv\n`;
  const files = new Map<string, string>([
    ["job.yaml", job],
    ["bases.csv", `${HEADINGS}\n${rows.join("")}`],
    [SHOP, readFileSync(SHOP, "utf8")],
  ]);
  return { job: "job.yaml", files };
}

const WHOLE = "55,galvanized,no,10,24";

function scheduleRows(index: number): string {
  const grow = (index % 160) / 16;
  const start = `B${index + 1},${1 + (index % 6)}`;
  switch (index % 5) {
    case 0:
      return `${start},1-1/4,${WHOLE},rectangle,${12 + grow},10,,,,,,,,${18 + grow},16,1-1/2,2-1/16,square 3 x 1/2,${24 + grow},24,,form,1/4,${26 + grow} x 18,chamfer 1,dia 6\n`;
    case 1:
      return `${start},1,${WHOLE},rectangle,${16 + grow},12,3,3,yes,,,,,${22 + grow},18,2,1-13/16,square 3 x 3/8,${30 + grow},26,,bearers,1/4,,,6 x 4 r 1/2\n`;
    case 2:
      return `${start},3/4,${WHOLE},circle,,,,,,${16 + grow},6,straddle,,${24 + grow},${24 + grow},1,1-5/16,round 2 x 1/4,,,${30 + grow},form,3/16,dia ${22 + grow},,dia 7\n`;
    case 3:
      return `${start},1-1/2,${WHOLE},circle,,,,,,${30 + grow},12,on-axis,,,,,,,,,${48 + grow},bearers,1/4,ring ${36 + grow} / ${24 + grow},,\n`;
    default:
      return (
        `${start},1-1/4,${WHOLE},rectangle,${14 + grow},14,,,,,,,,,,,,,${28 + grow},28,,bearers,1/4,,,auto\n` +
        `,,3/4,${WHOLE},points,,,,,,,,,"-4,0; 4,0",,,,,,,,,,,,,\n`
      );
  }
}
