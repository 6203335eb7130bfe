/**
 * Holes of a plate, counted wherever the package tells them: callouts and hole table of its sheet, both cut files by readers
 * nobody here wrote (dxf-parser, dxf), drill list, genus of its solid, cut list, certificate. Invented jobs, whose holes were
 * counted by hand; of parts of a ring and of splice plates as many as their own sheets, files and lists say alike.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { Summary, SummaryFile } from "../../src/summary/model.js";
import { build } from "../../src/tasks/build.js";
import { inputsWith } from "../delivered.js";
import { readStl, shellsOf } from "../solid-check.js";
import { cutFilesInPackage } from "./readers/harness.js";
import { measureByDxf, measureByDxfParser } from "./readers/npm-readers.js";
import { newFolder } from "./viewers.js";
import { readWrittenSheet, type WrittenSheet } from "./written-sheet.js";

const KINDS = [
  ...(["cut-joined", "cut-r12", "drill-list", "solid-stl", "sheet-svg", "piece-sheet-svg"] as const),
  ...(["cut-list-csv", "certificates-csv", "summary"] as const),
];

interface Counted {
  readonly cut: number;
  readonly drilled: number;
}

interface Case {
  readonly name: string;
  readonly unit: "in" | "mm";
  readonly bases: readonly string[];
  /** By the mark of a template or of its lower one, counted by hand. */
  readonly holes: Readonly<Record<string, Counted>>;
  /** Rods of a template that is in segments, by its mark. */
  readonly parted?: Readonly<Record<string, number>>;
}

const cut = (count: number, drilled = 0): Counted => ({ cut: count, drilled });

const CASES: readonly Case[] = [
  {
    name: "plates in inches: an opening, groups, nail and grout holes, more than fit a callout",
    unit: "in",
    bases: [
      "{ mark: B1, quantity: 3, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { mark: T1, thickness: 1/4, opening: { diameter: 4 } } }",
      "{ mark: B2, groups: [{ rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 20, y: 12 } }, { rods: { diameter: 3/4 }, pattern: { kind: points, at: [[0, 5], [0, -5]] } }], template: { mark: T2, thickness: 3/8, outline: { kind: rectangle, x: 30, y: 22 }, opening: none, nails: { diameter: 3/16, at: [[-13, 0], [13, 0], [0, 9]] } } }",
      "{ mark: B3, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 10, y: 10 }, template: { mark: T3, thickness: 1/4, opening: none, groutHoles: { diameter: 3, at: [[0, 0]] } } }",
      "{ mark: B4, rods: { diameter: 3/4 }, pattern: { kind: circle, diameter: 30, count: 16, start: on-axis }, template: { mark: T4, thickness: 1/4, opening: none } }",
    ],
    holes: { T1: cut(5), T2: cut(6, 3), T3: cut(5), T4: cut(16) },
  },
  {
    name: "plates in millimetres: a ring, a round plate with an opening, a rectangular opening, plywood that is drilled",
    unit: "mm",
    bases: [
      "{ mark: B1, rods: { diameter: M24 }, pattern: { kind: circle, diameter: 600, count: 12, start: straddle }, template: { mark: T1, thickness: 6, outline: { kind: ring, outer: 750, inner: 450 } } }",
      "{ mark: B2, rods: { diameter: M20 }, pattern: { kind: circle, diameter: 400, count: 6, start: on-axis }, template: { mark: T2, thickness: 6, outline: { kind: circle, diameter: 520 }, opening: { diameter: 150 } } }",
      "{ mark: B3, rods: { diameter: M30 }, pattern: { kind: points, at: [[-200, 150], [0, 150], [200, 150], [200, -150], [0, -150], [-200, -150]] }, template: { mark: T3, thickness: 8, opening: { x: 120, y: 90, radius: 20 } } }",
      "{ mark: B4, quantity: 2, rods: { diameter: M20 }, pattern: { kind: rectangle, x: 200, y: 200 }, template: { mark: T4, material: plywood, thickness: 18, opening: { diameter: 100 }, nails: { diameter: 5, at: [[-140, 0], [140, 0]] } } }",
    ],
    holes: { T1: cut(13), T2: cut(7), T3: cut(7), T4: cut(1, 6) },
  },
  {
    name: "a ring in segments, and a lower template",
    unit: "in",
    bases: [
      "{ mark: B1, rods: { diameter: 1-1/4, bottom: nut, embedment: 30 }, pattern: { kind: circle, diameter: 158, count: 24, start: straddle }, template: { mark: T1, thickness: 3/8, key: none, outline: { kind: ring, outer: 168, inner: 148 }, segments: 4 } }",
      "{ mark: B2, rods: { diameter: 1, bottom: nut, embedment: 24, bottomThreads: 6 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { mark: T2, thickness: 1/4, opening: { diameter: 4 }, lower: { above: 6 } } }",
    ],
    holes: { T2: cut(5) },
    parted: { T1: 24 },
  },
];

interface Made {
  readonly folder: string;
  readonly summary: Summary;
}

function makePackage({ unit, bases }: Case): Made {
  const options = { date: "2026-11-24", version: "0", document: newLeanDocument(), includeHeld: true, outputs: KINDS };
  const built = build(inputsWith(bases, { unit }), options);
  expect(built.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const folder = newFolder();
  const { summary, files } = built.finish();
  for (const { path, bytes } of [...[...built.bases].flatMap((base) => base.files), ...files]) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  return { folder, summary };
}

type Row = Readonly<Record<string, string>>;

function rowsOf({ folder, summary }: Made, ending: string): readonly Row[] {
  const path = summary.files.find((file) => file.path.endsWith(ending))?.path ?? "";
  return Papa.parse<Row>(readFileSync(join(folder, path), "utf8"), { header: true, skipEmptyLines: true }).data;
}

/** Holes of each kind that callouts tell, on the plan or in the notes. */
function calledOut(sheet: WrittenSheet): number {
  const told = sheet.groups.filter(({ name }) => name === "callout" || name === "notes").flatMap(({ texts }) => texts);
  const counts = told.map((text) => {
    if (/^(OPENING|INSIDE) (Ø|\d)/.test(text)) return 1;
    return Number(/^(\d+) (?:NAIL |GROUT |BOLT )?(?:HOLE|OPENING)S? (?:Ø|\d)/.exec(text)?.[1] ?? 0);
  });
  return counts.reduce((sum, count) => sum + count, 0);
}

/** Holes that callouts tell under this name. */
function calledAs(sheet: WrittenSheet, name: string): number {
  const told = sheet.groups.filter((group) => group.name === "callout" || group.name === "notes");
  const counts = told
    .flatMap(({ texts }) => texts)
    .map((text) => RegExp(`^(\\d+) ${name}S? (?:Ø|\\d)`).exec(text)?.[1]);
  return counts.reduce((sum, count) => sum + Number(count ?? 0), 0);
}

/** What the rows of the hole table say, and its foot; null where there is none. */
function tabled(sheet: WrittenSheet): Counted | null {
  const texts = sheet.groups.filter(({ name }) => name === "hole-table").flatMap((group) => group.texts);
  if (texts.length === 0) return null;
  const made = (word: string) => texts.filter((text) => text === word).length;
  const counted = cut(made("CUT"), made("DRILL"));
  expect(texts.join(" ")).toContain(`COUNT ${counted.cut + counted.drilled}: `);
  return counted;
}

const sum = ({ cut: made, drilled }: Counted): number => made + drilled;

/** Every place that tells the holes of one plate says the same; what it is. */
function countEverywhere(made: Made, mark: string, own: readonly SummaryFile[]): Counted {
  const bytesOf = (kind: string): Buffer => {
    const file = own.find((each) => each.kind === kind);
    expect([mark, kind, file !== undefined]).toEqual([mark, kind, true]);
    return readFileSync(join(made.folder, file?.path ?? ""));
  };
  const listed = rowsOf(made, "_plates.csv").find((row) => row.mark === mark);
  const drilled = Number(listed?.["of them drilled"]);
  const counted = cut(Number(listed?.["holes and openings each"]) - drilled, drilled);
  const sheet = readWrittenSheet(
    bytesOf(own.some(({ kind }) => kind === "sheet-svg") ? "sheet-svg" : "piece-sheet-svg").toString(),
  );
  expect([mark, "callouts", calledOut(sheet)]).toEqual([mark, "callouts", sum(counted)]);
  const table = tabled(sheet);
  if (sum(counted) > 8) expect([mark, "hole table", table]).toEqual([mark, "hole table", counted]);
  if (table !== null) expect([mark, table]).toEqual([mark, counted]);
  const shells = shellsOf(readStl(bytesOf("solid-stl")).facets);
  expect([mark, "genus", shells.map(({ genus }) => genus)]).toEqual([mark, "genus", [sum(counted)]]);
  if (own.some(({ kind }) => kind === "drill-list")) expectDrillList(bytesOf("drill-list").toString(), counted);
  else expectCutFiles(made, mark, own, counted);
  return counted;
}

function expectDrillList(text: string, counted: Counted): void {
  const rows = Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;
  expect(
    cut(rows.filter((row) => row.do === "cut out").length, rows.filter((row) => row.do === "drill").length),
  ).toEqual(counted);
}

/** Both flavours by both readers; the certificate's contours are the outline and the holes that are cut. */
function expectCutFiles(made: Made, mark: string, own: readonly SummaryFile[], counted: Counted): void {
  const paths = own.filter(({ kind }) => kind === "cut-joined" || kind === "cut-r12").map(({ path }) => path);
  expect([mark, paths.length]).toEqual([mark, 2]);
  const files = cutFilesInPackage(made.folder).filter(({ path }) =>
    paths.some((each) => join(made.folder, each) === path),
  );
  const read = [...measureByDxfParser(files), ...measureByDxf(files)].map(({ faults, pierces }) => [
    faults,
    pierces - 1,
  ]);
  expect([mark, read]).toEqual([mark, [1, 2, 3, 4].map(() => [[], counted.cut])]);
  const certified = rowsOf(made, "_certificates.csv").filter((row) => paths.includes(row.file ?? ""));
  expect([mark, certified.length]).toEqual([mark, 2]);
  for (const row of certified) {
    expect([mark, Number(row["round holes"]) + Number(row["other openings"])]).toEqual([mark, counted.cut]);
    expect([mark, row.contours, row.pierces]).toEqual([mark, `${counted.cut + 1}`, `${counted.cut + 1}`]);
  }
}

describe.each(CASES)("holes of $name", (job) => {
  const made = makePackage(job);
  const plates = made.summary.bases.flatMap(({ template, files }) =>
    (template.pieces ?? [template]).map(({ mark }) => {
      const own = files.filter(({ piece }) => (piece ?? template.mark) === mark);
      return { template: template.mark, mark, counted: () => countEverywhere(made, mark, own) };
    }),
  );

  it.each(plates)("are as many wherever they are told: $mark", ({ mark, counted }) => {
    const known = job.holes[mark];
    const found = counted();
    if (known !== undefined) expect([mark, found]).toEqual([mark, known]);
  });

  const parted = Object.entries(job.parted ?? {});
  it.runIf(parted.length > 0)(
    "of a template in segments are on its segments, and its bolts in segments and splice plates",
    () => {
      for (const [mark, rods] of parted) {
        const base = made.summary.bases.find(({ template }) => template.mark === mark);
        const told = (base?.template.pieces ?? []).map(({ mark: piece, quantity, role }) => {
          const file = base?.files.find((each) => each.piece === piece && each.kind === "piece-sheet-svg");
          const sheet = readWrittenSheet(readFileSync(join(made.folder, file?.path ?? ""), "utf8"));
          return { role, rods: quantity * calledAs(sheet, "HOLE"), bolts: quantity * calledAs(sheet, "BOLT HOLE") };
        });
        const total = (role: string, what: "rods" | "bolts") =>
          told.reduce((all, each) => all + (each.role === role ? each[what] : 0), 0);
        expect([mark, total("segment", "rods")]).toEqual([mark, rods]);
        expect(total("segment", "bolts")).toBeGreaterThan(0);
        expect([mark, total("splice plate", "bolts")]).toEqual([mark, total("segment", "bolts")]);
      }
    },
  );

  it("were counted by hand on every template that is one plate", () => {
    const whole = made.summary.bases.filter(({ template }) => job.parted?.[template.mark] === undefined);
    expect(whole.map(({ template }) => template.mark).sort()).toEqual(Object.keys(job.holes).sort());
  });
});
