/**
 * Inputs that ask for time and memory, each given to the built program as a process: every one must end in under ten
 * seconds of processor time and one gigabyte, with an answer or a refusal. Large inputs that are good must work.
 */
import { spawnSync } from "node:child_process";
import { closeSync, ftruncateSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { drawing, polyline } from "./drawings.js";
import { sheetData, writeBook } from "./workbooks.js";

/** One heavy input. `ends`: exit codes that are right. Good ones may take a minute. */
interface Heavy {
  readonly name: string;
  readonly args: readonly string[];
  readonly ends: readonly number[];
  readonly isGood?: boolean;
  write(folder: string): void;
}

const HEAD =
  "job: { number: H, title: Heavy, revision: A, status: released, date: 2026-11-24 }\nunits: in\nrules: us\nshop: plasma\n";

const base = (mark: string, hole = "", x = 10): string => `  - mark: ${mark}
    rods: { diameter: 3/4, grade: 36, finish: plain, projection: 8, embedment: 14, torqued: false }
    pattern: { kind: rectangle, x: ${x}, y: 8 }
    basePlate: { x: ${x + 5}, y: 14, thickness: 1, hole: 1-5/16, washer: { shape: square, size: 3, thickness: 1/4 } }
    concrete: { x: 30, y: 30 }
    template: { thickness: 1/4${hole} }
`;

function job(
  name: string,
  text: () => string,
  ends: readonly number[] = [2],
  command = "check",
  isGood = false,
): Heavy {
  const args = command === "make" ? ["make", "job.yaml", "--out", "out"] : [command, "job.yaml"];
  return { name, args, ends, isGood, write: (folder) => writeFileSync(join(folder, "job.yaml"), text()) };
}

function schedule(
  name: string,
  file: string,
  bytes: () => string | Uint8Array,
  ends: readonly number[] = [2],
  isGood = false,
) {
  const write = (folder: string): void => {
    writeFileSync(join(folder, "job.yaml"), `${HEAD}schedule: ${file}\n`);
    writeFileSync(join(folder, file), bytes());
  };
  return { name, args: ["check", "job.yaml"], ends, isGood, write };
}

function part(name: string, text: () => string, ends: readonly number[] = [1], isGood = false): Heavy {
  return {
    name,
    args: ["proof", "part.dxf"],
    ends,
    isGood,
    write: (folder) => writeFileSync(join(folder, "part.dxf"), text()),
  };
}

const CSV_HEAD = readFileSync("templates/schedule.csv", "utf8").split("\n")[0] ?? "";
const CSV_ROW =
  "1,column,1,36,galvanized,no,9,24,rectangle,12,12,,,,,18,18,,1-1/2,1-13/16,square 3 x 3/8,24,24,,1-3/4,nuts,,2,bearers,1/4,auto,,auto,3,";
const marks = (count: number): string[] => Array.from({ length: count }, (_, i) => `B${i + 1}`);
const rows = (count: number): string[][] => [
  CSV_HEAD.split(","),
  ...marks(count).map((mark) => [mark, ...CSV_ROW.split(",")]),
];

const cell = (at: string, row: number): Uint8Array =>
  writeBook([
    {
      name: "S",
      xml: `<sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="${row}"><c r="${at}"><v>1</v></c></row></sheetData>`,
    },
  ]);

const circle = (x: number, y: number) =>
  [
    [0, "CIRCLE"],
    [8, "CUT"],
    [10, x],
    [20, y],
    [40, 0.05],
  ] as const;

const ellipse = (i: number) =>
  [
    [0, "ELLIPSE"],
    [8, "CUT"],
    [10, i % 300],
    [20, i / 300],
    [11, 0.4],
    [21, 0],
    [40, 0.5],
    [41, 0],
    [42, 6.283185307179586],
  ] as const;

/** An outline of so many teeth over its whole height, with circles in a row across it. */
function teeth(count: number, circles: number): string {
  const points = Array.from({ length: count }, (_, i) => [i / 10, i % 2 === 0 ? 10 : 300] as const);
  const outline = polyline([[0, 0], ...points, [count / 10, 0]]);
  return drawing([outline, ...Array.from({ length: circles }, (_, i) => circle(i / 10 + 0.25, 100))]);
}

/** An outline about a circle of 16 in, with four holes of 1.3 in. */
function gear(count: number): string {
  const points = Array.from({ length: count }, (_, i) => {
    const [angle, radius] = [(2 * Math.PI * i) / count, 8 + (i % 2) / 1000];
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
  const holes = [-5, 5].flatMap((x) => [-4, 4].map((y) => [...circle(x, y).slice(0, 4), [40, 0.65] as const]));
  return drawing([polyline(points), ...holes]);
}

/** A grid of so many lines with B1 at every crossing. */
function grid(across: number, along: number): string {
  const names = (letter: string, count: number): string =>
    Array.from({ length: count }, (_, i) => letter + i).join(",");
  const lines = (letter: string, count: number) => `{ names: [${names(letter, count)}], spacing: ${count - 1} @ 4' }`;
  return `grid: { x: ${lines("A", across)}, y: ${lines("N", along)} }
placements: [{ base: B1, every: [[${names("A", across)}], [${names("N", along)}]] }]
`;
}

function splines(count: number): string {
  const [degree, controls] = [15, 600];
  const knots = Array.from(
    { length: controls + degree + 1 },
    (_, i) => [40, Math.min(Math.max(0, i - degree), controls - degree)] as const,
  );
  const points = Array.from({ length: controls }, (_, i) => [[10, i] as const, [20, (i * 37) % 101] as const]).flat();
  const one = [[0, "SPLINE"] as const, [8, "CUT"] as const, [71, degree] as const, ...knots, ...points];
  return drawing(Array.from({ length: count }, () => one));
}

const ring = (): string => `${HEAD}bases:
  - mark: R1
    concrete: { x: 400, y: 400 }
    groups:
      - rods: { diameter: 3/4, grade: 36, finish: plain, projection: 8, embedment: 14, torqued: false }
        baseHole: 1-5/16
        pattern: { kind: circle, count: 196, diameter: 300, start: 0.3 }
      - rods: { diameter: 1, grade: 36, finish: plain, projection: 8, embedment: 14, torqued: false }
        baseHole: 1-13/16
        pattern: { kind: points, at: [[160, 3], [-170, 9], [-161, -4], [2, -163]] }
    basePlate: { x: 380, y: 380, thickness: 2 }
    template: { thickness: 1/4 }
`;

const HOSTILE: readonly Heavy[] = [
  schedule("XLSX, one value in XFD1048576", "s.xlsx", () => cell("XFD1048576", 1_048_576)),
  schedule("XLSX, one value in XFD5000", "s.xlsx", () => cell("XFD5000", 5000)),
  schedule("XLSX, a note in A1048576", "s.xlsx", () => cell("A1048576", 1_048_576)),
  schedule("XLSX, 800 KB of <c", "s.xlsx", () =>
    writeBook([{ name: "S", xml: `<sheetData>${"<c ".repeat(270_000)}` }]),
  ),
  schedule("XLSX, 60 MB of <c in a comment", "s.xlsx", () =>
    writeBook([{ name: "S", xml: `<!-- ${"<c ".repeat(20_000_000)} --><sheetData/>` }]),
  ),
  schedule("XLSX, 60 MB of cells", "s.xlsx", () =>
    writeBook([{ name: "S", xml: `<sheetData><row r="1">${"<c><v>1</v></c>".repeat(4_000_000)}</row></sheetData>` }]),
  ),
  schedule("XLSX, 60 MB of attributes", "s.xlsx", () =>
    writeBook([{ name: "S", xml: `<sheetData><row ${"a ".repeat(30_000_000)}/></sheetData>` }]),
  ),
  schedule("XLSX, 60 MB of shared texts", "s.xlsx", () =>
    writeBook([{ name: "S", xml: sheetData([["x"]]) }], [], ["<si><t>a</t></si>".repeat(3_500_000)]),
  ),
  job("YAML, 16 MB of [1,1,...]", () => `${HEAD}bases: [${"1,".repeat(8_380_000)}1]`),
  job("YAML, 3 MB of [1,1,...]", () => `${HEAD}bases: [${"1,".repeat(1_500_000)}1]`),
  job("YAML, 16 MB of }", () => "}".repeat(16_000_000)),
  job("YAML, 16 MB of blank lines", () => HEAD + "\n".repeat(16_000_000)),
  job("YAML, 12 MB of keys", () => HEAD + Array.from({ length: 1_000_000 }, (_, i) => `k${i}: 1\n`).join("")),
  schedule("CSV, 15 MB of blank lines", "s.csv", () => `${CSV_HEAD}\n${"\n".repeat(15_000_000)}`),
  schedule("CSV, 15 MB of commas", "s.csv", () => `${CSV_HEAD}\n${",".repeat(15_000_000)}`),
  schedule("CSV, 1,900,000 blank cells", "s.csv", () => `${CSV_HEAD}\n${`${",".repeat(37)}\n`.repeat(50_000)}`),
  schedule(
    "CSV, 100,000 unknown headings",
    "s.csv",
    () =>
      `${CSV_HEAD},${Array.from({ length: 100_000 }, (_, i) => `Heading ${i}`).join(",")}\n${rows(1)[1]?.join(",")}`,
  ),
  schedule("CSV, 16 MB of quotation marks", "s.csv", () => `${CSV_HEAD}\n${'"'.repeat(15_900_000)}`),
  part("DXF, 100,000 ELLIPSE", () => drawing(Array.from({ length: 100_000 }, (_, i) => ellipse(i)))),
  part("DXF, 60,000 teeth and 60,000 circles", () => teeth(60_000, 60_000)),
  part("DXF, 400 SPLINE of degree 15", () => splines(400)),
  part("DXF, 20,000 lines at 1e13", () =>
    drawing(
      Array.from(
        { length: 20_000 },
        (_, i) =>
          [
            [0, "LINE"],
            [8, "CUT"],
            [10, 1e13 + i],
            [20, i],
            [11, 1e13 + i + 1],
            [21, i],
          ] as const,
      ),
    ),
  ),
  part("DXF, 32 MB of vertices", () =>
    drawing([polyline(Array.from({ length: 2_000_000 }, (_, i) => [i % 997, i % 991] as const))]),
  ),
  part("DXF, 100,000 layers", () =>
    drawing(
      Array.from(
        { length: 100_000 },
        (_, i) =>
          [
            [0, "CIRCLE"],
            [8, `L${i}`],
            [10, i],
            [20, 0],
            [40, 0.2],
          ] as const,
      ),
    ),
  ),
  job("a ring of 196 rods and four others", ring, [0, 1]),
  job(
    "a hole of 30,000 mm",
    () => `${HEAD}bases:\n${base("B1", ", hole: 30000 mm, outline: { kind: rectangle, x: 16, y: 14 }")}`,
    [2],
    "make",
  ),
  job("a hole of 100 m, outline automatic", () => `${HEAD}bases:\n${base("B1", ", hole: 100 m")}`, [1, 2], "make"),
  job(
    "grout holes of 100 m",
    () => `${HEAD}bases:\n${base("B1", ", groutHoles: { diameter: 100 m, at: [[0, 0]] }")}`,
    [1, 2],
    "make",
  ),
  schedule("CSV, 150,000 rows of two cells", "s.csv", () => `Mark,Rod dia\n${"B1,1\n".repeat(150_000)}`),
  schedule("CSV, 600,000 rows without a mark", "s.csv", () => `Mark,Rod dia\n${'"",1\n'.repeat(600_000)}`),
  schedule("CSV, 20,000 rows at fault", "s.csv", () =>
    rows(20_000)
      .map((row) => row.join(",").replace("galvanized", "purple"))
      .join("\n"),
  ),
  job("60,000 answers at fault", () => `${HEAD}bases:\n${base("B1")}answers:\n${"- { mark: B1 }\n".repeat(60_000)}`),
  job("100,000 placements", () => `${HEAD}${grid(400, 250)}bases:\n${base("B1")}`),
  {
    name: "DXF, an outline of 100,000 teeth, against a job",
    args: ["proof", "part.dxf", "--against", "job.yaml"],
    ends: [1],
    write: (folder) => {
      writeFileSync(
        join(folder, "job.yaml"),
        `${HEAD}bases:\n${marks(20)
          .map((mark) => base(mark))
          .join("")}`,
      );
      writeFileSync(join(folder, "part.dxf"), gear(100_000));
    },
  },
  {
    name: "a pipe as job file",
    args: ["check", "pipe"],
    ends: [2],
    write: (folder) => void spawnSync("mkfifo", [join(folder, "pipe")]),
  },
  {
    name: "a pipe as cut file",
    args: ["proof", "pipe"],
    ends: [2],
    write: (folder) => void spawnSync("mkfifo", [join(folder, "pipe")]),
  },
  { name: "/dev/zero as job file", args: ["check", "/dev/zero"], ends: [2], write: () => undefined },
  { name: "/dev/zero as cut file", args: ["proof", "/dev/zero"], ends: [2], write: () => undefined },
  { name: "a job file of 1.9 GB", args: ["check", "large"], ends: [2], write: writeLarge },
  { name: "a cut file of 1.9 GB", args: ["proof", "large"], ends: [1, 2], write: writeLarge },
];

function writeLarge(folder: string): void {
  const file = openSync(join(folder, "large"), "w");
  ftruncateSync(file, 1_900_000_000);
  closeSync(file);
}

const GOOD: readonly Heavy[] = [
  job("good: 10,000 placements", () => `${HEAD}${grid(100, 100)}bases:\n${base("B1")}`, [0, 1], "make", true),
  schedule(
    "good: 10,000 bases from CSV",
    "s.csv",
    () =>
      rows(10_000)
        .map((row) => row.join(","))
        .join("\n"),
    [0, 1],
    true,
  ),
  schedule(
    "good: 10,000 rows of XLSX",
    "s.xlsx",
    () => writeBook([{ name: "S", xml: sheetData(rows(10_000)) }]),
    [0, 1],
    true,
  ),
  job(
    "good: 2,000 bases in one YAML",
    () =>
      `${HEAD}bases:\n${marks(2000)
        .map((mark, i) => base(mark, "", 8 + (i % 20)))
        .join("")}`,
    [0, 1],
    "check",
    true,
  ),
  part(
    "good: 100,000 circles",
    () =>
      drawing([
        polyline([
          [-1, -1],
          [401, -1],
          [401, 300],
          [-1, 300],
        ]),
        ...Array.from({ length: 100_000 }, (_, i) => circle(i % 400, Math.floor(i / 400))),
      ]),
    [0],
    true,
  ),
];

const PEAK =
  "data:text/javascript,import{writeFileSync}from'node:fs';process.on('exit',()=>{const u=process.resourceUsage();writeFileSync(process.env.RODPLATE_PEAK,u.maxRSS+' '+(u.userCPUTime+u.systemCPUTime))})";

/** Runs the inputs whose names hold one of the words, or all; false where one takes too much or ends otherwise than it should. */
export function runHeavy(words: readonly string[]): boolean {
  process.stdout.write("| input | exit | processor seconds | peak, MB | first line |\n|---|---|---|---|---|\n");
  const wanted = [...HOSTILE, ...GOOD].filter(
    ({ name }) => words.length === 0 || words.some((word) => name.includes(word)),
  );
  return wanted.map(runOne).every((isRight) => isRight);
}

function runOne({ name, args, ends, isGood = false, write }: Heavy): boolean {
  const folder = mkdtempSync(join(tmpdir(), "rodplate-heavy-"));
  try {
    write(folder);
    const peak = join(folder, "peak.txt");
    writeFileSync(peak, "0 0");
    const env = { PATH: process.env.PATH, RODPLATE_PEAK: peak };
    const program = join(process.cwd(), "dist/bin/rodplate.js");
    const ran = spawnSync(process.execPath, ["--import", PEAK, program, ...args], {
      ...{ cwd: folder, env, encoding: "utf8" as const, timeout: 600_000, maxBuffer: 1 << 30 },
    });
    const [kilobytes = 0, microseconds = 0] = readFileSync(peak, "utf8").split(" ").map(Number);
    const [megabytes, seconds] = [kilobytes / 1024, microseconds / 1e6];
    const isRight = ends.includes(ran.status ?? -1) && megabytes > 0 && megabytes < 1000 && (isGood || seconds < 10);
    const said = (ran.stderr || ran.stdout).split("\n").find((line) => line.trim() !== "") ?? "";
    const row = [name, ran.status ?? ran.signal, seconds.toFixed(1), Math.round(megabytes), said.slice(0, 150)];
    process.stdout.write(`| ${row.join(" | ")} |${isRight ? "" : " **too much**"}\n`);
    return isRight;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
