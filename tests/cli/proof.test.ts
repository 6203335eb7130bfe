/** `rodplate proof` as a user runs it: on the program's own package, on faulty files, on what is no file. */
import { mkdirSync, readFileSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { box, circle, fileOf } from "../dxf-by-hand.js";
import { newFolder, readSummary, runProgram, writeJob } from "./program.js";

const folder = newFolder();
const cutFiles: string[] = [];
beforeAll(async () => {
  writeJob(folder, "job.yaml");
  await runProgram(folder, ["make", "job.yaml", "--out", "out"]);
  for (const { files } of readSummary(join(folder, "out")).bases) {
    cutFiles.push(...files.filter(({ path }) => path.endsWith(".dxf")).map(({ path }) => join("out", path)));
  }
  writeFileSync(join(folder, "clean.dxf"), fileOf([circle(50, 25, 5), box]));
  writeFileSync(join(folder, "twice.dxf"), fileOf([circle(50, 25, 5), circle(50, 25, 5), box]));
  mkdirSync(join(folder, "folder.dxf"));
});

const proof = (...args: readonly string[]) => runProgram(folder, ["proof", ...args]);

describe("rodplate proof", () => {
  it("passes every cut file of a package against its job", async () => {
    expect(cutFiles).toHaveLength(4);
    const { status, stdout } = await proof(...cutFiles, "--against", "job.yaml");
    expect(stdout).not.toContain("STOP 1");
    expect(stdout).toContain("is template B1: not turned; largest error of a position 0, of a diameter 0 in");
    expect(status).toBe(0);
  });

  it("prints the machine form by the contract, and nothing else", async () => {
    const { status, stdout, stderr } = await proof(...cutFiles, "--against", "job.yaml", "--json");
    const { files } = JSON.parse(stdout);
    const { bases } = JSON.parse(readFileSync(join(folder, "out", "summary.json"), "utf8"));
    expect([status, stderr]).toEqual([0, ""]);
    for (const [index, file] of files.entries()) {
      const { template } = bases[Math.floor(index / 2)];
      expect(file.path).toBe(cutFiles[index]);
      expect(file).toMatchObject({ unit: "in", pierces: template.pierces, findings: [] });
      expect(file.match).toMatchObject({
        mark: template.mark,
        turn: 0,
        mirrored: false,
        scale: 1,
        positionError: 0,
        diameterError: 0,
      });
      expect(file.cutLength).toBeCloseTo(template.cutLength, 5);
      expect(file.netArea).toBeCloseTo(template.netArea, 4);
      expect(file.outline.area).toBeCloseTo(template.outline.area, 4);
      expect(file.holes).toHaveLength(template.holes.length);
      expect(Object.keys(file)).toEqual(expect.arrayContaining(["layers", "outline", "holes", "cutLength", "netArea"]));
    }
  });

  it("ends with 1 on a stop, the file that has it first", async () => {
    const { status, stdout } = await proof("clean.dxf", "twice.dxf");
    expect(status).toBe(1);
    expect(stdout.indexOf("twice.dxf")).toBeLessThan(stdout.indexOf("clean.dxf"));
    expect(stdout).toContain("STOP  duplicate: drawn twice: it would be cut twice at 50,25");
    expect((await proof("clean.dxf")).status).toBe(0);
  });

  it("ends with 2 where a file cannot be opened, and proves the others", async () => {
    const { status, stdout, stderr } = await proof("gone.dxf", "folder.dxf", "twice.dxf");
    expect(status).toBe(2);
    expect(stderr).toContain("gone.dxf: there is no such file");
    expect(stderr).toContain("folder.dxf: is a folder without summary.json and without a DXF file");
    expect(stdout).toContain("duplicate");
  });

  it("ends with 2 where the job is at fault", async () => {
    writeFileSync(join(folder, "bad.yaml"), "job: { number: '1' }\nunits: in\nbases: []\n");
    const { status, stdout } = await proof("clean.dxf", "--against", "bad.yaml", "--json");
    expect(status).toBe(2);
    expect(JSON.parse(stdout).findings[0]).toMatchObject({ code: "bad-value" });
    expect((await proof("clean.dxf", "--against", "gone.yaml")).status).toBe(2);
  });

  it("tells the template of another mark by its name", async () => {
    const bytes = readFileSync(join(folder, cutFiles[2] ?? ""));
    writeFileSync(join(folder, "B1_rev-A.dxf"), bytes);
    const { status, stdout } = await proof("B1_rev-A.dxf", "--against", "job.yaml");
    expect(status).toBe(1);
    expect(stdout).toContain("other-mark: the file is named B1, but its holes are those of template B2");
  });

  it("refuses a file over 32 MB by its size, unread", async () => {
    writeFileSync(join(folder, "large.dxf"), "");
    truncateSync(join(folder, "large.dxf"), 4_000_000_000);
    const { status, stdout } = await proof("large.dxf");
    expect(status).toBe(1);
    expect(stdout).toContain("too-large: the file has 4000000000 bytes; at most 32000000 are read");
  });

  it("takes a base plate's file as the second source of a job", async () => {
    const job = readFileSync(join(folder, "job.yaml"), "utf8").replace(
      /thickness: 1, hole/,
      "thickness: 1, from: bp.dxf, hole",
    );
    writeFileSync(join(folder, "with-file.yaml"), job);
    const gone = await runProgram(folder, ["check", "with-file.yaml"]);
    expect(gone.status).toBe(2);
    expect(gone.stderr).toContain("basePlate.from: there is no file bp.dxf");
    writeFileSync(join(folder, "bp.dxf"), fileOf([circle(50, 25, 5), circle(50, 25, 5), box]));
    const faulty = await runProgram(folder, ["check", "with-file.yaml"]);
    expect(faulty.status).toBe(2);
    expect(faulty.stderr).toContain("basePlate.from: bp.dxf: duplicate: drawn twice");
  });
});
