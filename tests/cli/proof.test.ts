/** `rodplate proof` as a user runs it: on the program's own package, on faulty files, on what is no file. */
import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { arc, box, circle, fileOf, line, polyline } from "../dxf-by-hand.js";
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

  const packaged = (name: string): string => {
    const copy = join(folder, name);
    rmSync(copy, { recursive: true, force: true });
    cpSync(join(folder, "out"), copy, { recursive: true });
    return copy;
  };

  it("of a package: every file is the one that was checked, every cut file the template of its summary", async () => {
    const { status, stdout, stderr } = await proof("out");
    expect([status, stderr]).toEqual([0, ""]);
    const { bases, files: ofJob } = readSummary(join(folder, "out"));
    const all = new Set([...bases.flatMap((base) => base.files), ...ofJob].map(({ path }) => path)).size + 1;
    expect(stdout).toContain(
      `out  as checked\n  package of job 26-007, revision A, released: ${all} files as they were checked\n  not signed: `,
    );
    for (const path of cutFiles) expect(stdout).toContain(`${path}  no STOP\n`);
    expect(
      stdout.match(/ {2}is template B[12]: not turned; largest error of a position 0, of a diameter 0 in/g),
    ).toHaveLength(4);
    const { files, packages } = JSON.parse((await proof("out", "--json")).stdout);
    const found = files.map(({ path, match }: { path: string; match: { mark: string } }) => [path, match.mark]);
    expect(found.sort()).toEqual(cutFiles.map((path, index) => [path, index < 2 ? "B1" : "B2"]).sort());
    expect(packages).toMatchObject([{ path: "out", job: { number: "26-007", revision: "A", status: "released" } }]);
    expect(new Set(packages[0].files.map(({ state }: { state: string }) => state))).toEqual(new Set(["as checked"]));
    expect((await proof("out", "--against", "job.yaml")).status).toBe(0);
  });

  it("of a package: a file that is changed, missing or not listed is told, and what is changed in a cut file", async () => {
    const copy = packaged("changed");
    const [first = "", second = ""] = cutFiles.map((path) => path.replace(/^out/, "changed"));
    const bytes = readFileSync(join(folder, first), "latin1");
    const moved = bytes.replace(
      /(\r\nCIRCLE\r\n[\s\S]*?\r\n10\r\n)(\d)/,
      (_, before: string, digit: string) => `${before}${(Number(digit) + 1) % 10}`,
    );
    expect(moved).not.toBe(bytes);
    writeFileSync(join(folder, first), moved, "latin1");
    rmSync(join(folder, second));
    writeFileSync(join(copy, "scan.pdf"), "%PDF");
    writeFileSync(join(copy, "cut", "mine.DXF"), fileOf([circle(50, 25, 5), box]));
    cpSync(join(folder, "out"), join(copy, "before"), { recursive: true });
    const { status, stdout } = await proof("changed");
    expect(status).toBe(1);
    const told = (path: string, word: string, message: string) =>
      expect(stdout).toContain(`  ${word}  ${path.replace(/^changed\//, "")}: ${message}`);
    told(first, "STOP", "has another hash than is listed: it was changed after it was written");
    told(second, "STOP", "is listed and is not there");
    told("cut/mine.DXF", "STOP", "is not listed in summary.json");
    told("scan.pdf", "LOOK", "is not listed in summary.json");
    told("before", "LOOK", "is a package of its own: prove it by itself");
    expect(stdout).toMatch(/STOP {2}(hole-position|hole-missing|hole-diameter|extra-hole|outside-outline|no-match)/);
    expect(stdout.split("\n").at(-2)).toContain("1 package: 1 not as checked");
    const states = JSON.parse((await proof("changed", "--json")).stdout).packages[0].files.map(
      ({ state }: { state: string }) => state,
    );
    expect(states.slice(0, 5).sort()).toEqual(["changed", "missing", "not listed", "not listed", "package of its own"]);
  });

  it("of a package: a scan that somebody laid in stops nothing; one byte of a sheet does", async () => {
    const copy = packaged("scanned");
    writeFileSync(join(copy, "scan.pdf"), "%PDF");
    expect((await proof("scanned")).status).toBe(0);
    const sheet = join(copy, readSummary(copy).bases[0]?.files.find(({ path }) => path.endsWith(".svg"))?.path ?? "");
    writeFileSync(sheet, readFileSync(sheet, "utf8").replace("1", "2"));
    expect((await proof("scanned")).status).toBe(1);
  });

  it("of a package whose summary says another plate than its files are: every figure that differs", async () => {
    const copy = packaged("other");
    const file = join(copy, "summary.json");
    const summary = JSON.parse(readFileSync(file, "utf8"));
    summary.bases[0].template.outline.extent[2] += 1;
    summary.bases[0].template.pierces += 1;
    summary.bases[1].template.holes[0].x += 0.01;
    writeFileSync(file, JSON.stringify(summary));
    const { status, stdout } = await proof("other");
    expect(status).toBe(1);
    expect(stdout).toContain("STOP  summary-differs: the outline's size in x is 22, the summary says 23");
    expect(stdout).toContain("STOP  summary-differs: the number of pierces is 6, the summary says 7");
    expect(stdout).toMatch(/STOP {2}hole-position: hole OP1 is off by 0\.01 in/);
  });

  it("of a folder without a summary: every DXF file in it, and the packages in it", async () => {
    mkdirSync(join(folder, "loose", "deep"), { recursive: true });
    writeFileSync(join(folder, "loose", "a.dxf"), fileOf([circle(50, 25, 5), box]));
    writeFileSync(join(folder, "loose", "deep", "B.DXF"), fileOf([circle(50, 25, 5), circle(50, 25, 5), box]));
    writeFileSync(join(folder, "loose", "note.txt"), "x");
    const { status, stdout } = await proof("loose");
    expect(status).toBe(1);
    expect(stdout).toContain(`${join("loose", "deep", "B.DXF")}  STOP 1`);
    expect(stdout).toContain(`${join("loose", "a.dxf")}  no STOP`);
    expect(stdout).toContain("2 files: 1 not to be cut as it is; the others");
    cpSync(join(folder, "out"), join(folder, "loose", "pack"), { recursive: true });
    expect((await proof("loose")).stdout).toContain(`${join("loose", "pack")}  as checked`);
    writeFileSync(join(folder, "loose", "pack", "summary.json"), "{");
    const damaged = await proof("loose");
    expect([damaged.status, damaged.stderr]).toEqual([2, expect.stringContaining("is not JSON from here on")]);
  });

  it.skipIf(process.platform === "win32")("of a package opens no pipe and follows no link", async () => {
    const copy = packaged("piped");
    const [first = "", second = ""] = cutFiles.map((path) => join(folder, path.replace(/^out/, "piped")));
    for (const path of [first, second]) rmSync(path);
    execFileSync("mkfifo", [first, join(copy, "extra.dxf")]);
    symlinkSync(join(folder, cutFiles[1] ?? ""), second);
    symlinkSync("/", join(copy, "root"));
    const { status, stdout } = await proof("piped");
    expect(status).toBe(1);
    expect(stdout.match(/ {2}STOP {2}.*: is not a file/g)).toHaveLength(2);
    expect(stdout).toContain("STOP  extra.dxf: is not listed");
    expect(stdout).toContain("LOOK  root: is not listed");
    expect(stdout).toContain("2 files: 0 not to be cut");
  });

  it("names no sign of the system's where a folder, a file or a summary cannot be read", async () => {
    mkdirSync(join(folder, "bare"), { recursive: true });
    for (const args of [["folder.dxf"], ["bare"], ["gone"], ["out/summary.json"], ["job.yaml", "bare"]]) {
      const { status, stderr, stdout } = await proof(...args);
      expect([args, status]).toEqual([args, args[0] === "out/summary.json" ? 1 : 2]);
      expect(stderr + stdout).not.toMatch(/EISDIR|ENOENT|EACCES|errno|syscall/);
    }
  });

  it("tells at most 100 findings of a file, however many layers it has", async () => {
    const lines = Array.from({ length: 3000 }, (_, index) => line(1, 1 + index / 100, 2, 1 + index / 100, `L${index}`));
    writeFileSync(join(folder, "layers.dxf"), fileOf([...lines, box]));
    const { stdout } = await proof("layers.dxf");
    expect(stdout.split("\n").length).toBeLessThan(110);
    expect(stdout).toMatch(/more-findings: \d+ more findings, \d+ of them STOP, are not listed/);
    const [file] = JSON.parse((await proof("layers.dxf", "--json")).stdout).files;
    expect(file.findings).toHaveLength(100);
  });

  it.each([
    ["a circle", [circle(50, 25, 1e200), box]],
    ["a centre", [circle(1e308, 25, 5), circle(-1e308, 25, 5), box]],
    ["a line", [line(-1e308, 0, 1e308, 1e308), box]],
    [
      "a box",
      [
        polyline(true, [
          [0, 0],
          [1e300, 0],
          [1e300, 1e300],
          [0, 1e300],
        ]),
      ],
    ],
    ["an arc", [arc(0, 0, 1e300, 0, 90), box]],
  ])("prints no number that is none: %s too large", async (_, entities) => {
    writeFileSync(join(folder, "vast.dxf"), fileOf(entities));
    const { status, stdout } = await proof("vast.dxf");
    expect(status).toBe(1);
    expect(stdout).not.toMatch(/NaN|Infinity/);
    const machine = (await proof("vast.dxf", "--json")).stdout;
    const [file] = JSON.parse(machine).files;
    expect(machine).not.toMatch(/NaN|Infinity/);
    for (const value of [file.cutLength, file.netArea, file.pierces, ...file.holes.flatMap(Object.values)])
      expect(typeof value).toBe("number");
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
