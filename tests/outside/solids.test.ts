/**
 * Solids of samples and of jobs that ask much, by admesh (A. D. Martin, D. Hrancir: edges, parts, volume of STL) and assimp
 * (Open Asset Import Library: 3MF): nothing to repair, and the size, holes and weight that the summary says.
 */
import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { checkBase } from "../../src/checks/checked.js";
import { loadInputs } from "../../src/cli/load.js";
import { processShell } from "../../src/cli/shell.js";
import { write3mf } from "../../src/formats/solid-3mf.js";
import { writeStl } from "../../src/formats/solid-stl.js";
import { measureArea } from "../../src/geometry/index.js";
import { solid3mf } from "../../src/outputs/solid-3mf.js";
import { solidStl } from "../../src/outputs/solid-stl.js";
import { assemblyFacts } from "../../src/outputs/solid-words.js";
import { assemblyOf } from "../../src/solids/assembly.js";
import { openJob } from "../../src/tasks/open.js";
import { NM_PER_MM } from "../../src/units/length.js";
import { faultsOf, readStl, shellsOf } from "../solid-check.js";
import { isSkipped, newFolder, run } from "./viewers.js";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = newFolder();
const jobs = [
  ...readdirSync(join(root, "samples")).map((name) => [name, join(root, "samples", name, "job.yaml")] as const),
  ...[
    "keyed",
    "plywood",
    "forty-on-a-circle",
    "notches",
    "hexagon",
    "polygon",
    "staggered",
    "two-sizes-off-center",
  ].map((name) => [name, join(root, "tests/stress/jobs", `${name}.yaml`)] as const),
];

async function checkedBases(path: string) {
  const inputs = await loadInputs(path, { ...processShell(), currentFolder: root });
  if (!inputs.ok) throw new Error(path);
  const opened = openJob(inputs.value, { date: "1970-01-01" });
  if (!opened.ok) throw new Error(path);
  const { job, bases } = opened.value;
  return bases.map((base) => checkBase(job, base));
}

/** What admesh says before it repairs anything, by the words of its report. */
function admesh(bytes: Uint8Array, name: string) {
  const path = join(folder, `${name}.stl`);
  writeFileSync(path, bytes);
  const report = run("admesh", [path]);
  const figure = (words: string): number => Number(new RegExp(`${words}\\s*[:=]\\s*(-?[\\d.]+)`).exec(report)?.[1]);
  const repaired = [
    "Degenerate facets",
    "Edges fixed",
    "Facets removed",
    "Facets added",
    "Facets reversed",
    "Backwards edges",
    "Normals fixed",
    "Total disconnected facets",
  ];
  return {
    parts: figure("Number of parts"),
    volume: figure("Volume"),
    repaired: repaired.map(figure),
    low: ["X", "Y", "Z"].map((axis) => figure(`Min ${axis}`)),
  };
}

/** Vertices and faces that assimp reads, all objects together. */
function assimp(bytes: Uint8Array, name: string) {
  const path = join(folder, `${name}.3mf`);
  writeFileSync(path, bytes);
  const report = run("assimp", ["info", path]);
  const figure = (words: string): number => Number(new RegExp(`${words}:\\s*(\\d+)`).exec(report)?.[1]);
  return { meshes: figure("Meshes"), faces: figure("Faces") };
}

describe.skipIf(isSkipped("admesh", "assimp"))("solids", () => {
  it.each(jobs)("of %s", async (name, path) => {
    let [pieces, assemblies] = [0, 0];
    for (const checked of await checkedBases(path)) {
      for (const piece of checked.pieces) {
        if (!solidStl.applies(checked, piece, true)) continue;
        pieces += 1;
        const { plate, measures } = piece;
        const bytes = solidStl.write(checked, piece, around);
        const { facets } = readStl(bytes);
        const outside = admesh(bytes, `${name}-${plate.mark}`);
        expect(outside.repaired).toEqual(outside.repaired.map(() => 0));
        expect(outside.parts).toBe(1);
        expect(outside.low[0]).toBeCloseTo(measures.extent.x0, 4);
        const drilled = plate.holes.filter(({ made }) => made === "drill");
        const area = drilled.reduce((rest, { contour }) => rest - measureArea(contour), measures.netArea);
        expect(Math.abs(outside.volume / ((area * plate.thickness) / NM_PER_MM) - 1)).toBeLessThan(5e-4);
        expect(shellsOf(facets).map(({ genus }) => genus)).toEqual([plate.holes.length]);
        const model = assimp(solid3mf.write(checked, piece, around), `${name}-${plate.mark}`);
        expect(model).toEqual({ meshes: 1, faces: facets.length });
      }
      const solids = assemblyOf(checked);
      if (solids === null) continue;
      const { facets } = readStl(writeStl(solids, ""));
      expect(faultsOf(facets)).toEqual([]);
      const own = shellsOf(facets);
      expect(own.length).toBeGreaterThan(checked.rods.length);
      expect(own.filter(({ genus }) => genus === 0)).toHaveLength(checked.rods.length);
      // one of each job: the others are made the same way, and assimp takes a second to start
      if (assemblies++ > 0) continue;
      const model = assimp(
        write3mf(solids, assemblyFacts(checked, checked.plate)),
        `${name}-${checked.plate.mark}-rods`,
      );
      expect(model).toEqual({ meshes: own.length, faces: facets.length });
    }
    expect(pieces).toBeGreaterThan(0);
  });
});

const around = { document: null, version: "0", includeHeld: true, made: [], pages: null };
