/** The commands by the contract: exit codes, machine form, faults, and the rules by which a package is replaced. */
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Outside } from "./program.js";
import { filesIn, newFolder, packageFaults, readSummary, runProgram, writeJob } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string, outside: Outside = {}) => runProgram(folder, text.split(" "), outside);

describe("exit codes and what is printed", () => {
  it("0: made, nothing is held", async () => {
    writeJob(folder, "job.yaml");
    const made = await run("make job.yaml --out out");
    expect([made.status, made.stderr]).toEqual([0, ""]);
    expect(made.stdout).toContain("2 bases, 0 held.");
    expect(made.stdout).toContain("NOT CHECKED AT ALL");
    expect(made.stdout).toContain(`sheets: ${join("out", "*", "*_sheet.svg")}`);
    expect(made.stdout).not.toContain("\u001b");
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(["job.yaml", "out"]);
  });

  it("1: made, but something is held, whose cut files are not there", async () => {
    writeJob(folder, "job.yaml", { held: true });
    const made = await run("make job.yaml --out out");
    expect(made.status).toBe(1);
    const [first, second] = readSummary(join(folder, "out")).bases;
    expect([first?.held, first?.files.map(({ kind }) => kind)]).toEqual([true, ["sheet-svg"]]);
    expect([second?.held, second?.files.map(({ kind }) => kind)]).toEqual([
      false,
      ["cut-joined", "cut-r12", "sheet-svg"],
    ]);
    expect(made.stdout.indexOf("HELD")).toBeLessThan(made.stdout.indexOf("Questions") >>> 0);
    expect((await run("check job.yaml")).status).toBe(1);
  });

  it("writes held cut files when asked, with HELD in the name, and NOT-RELEASED for a job that is not", async () => {
    writeJob(folder, "job.yaml", { held: true, status: "preliminary", revision: "P/1 b" });
    expect((await run("make job.yaml --out out --include-held")).status).toBe(1);
    expect(filesIn(join(folder, "out")).filter((path) => path.endsWith(".dxf"))).toEqual([
      "B1/B1_rev-P-1-b_HELD_NOT-RELEASED_joined.dxf",
      "B1/B1_rev-P-1-b_HELD_NOT-RELEASED_r12.dxf",
      "B2/B2_rev-P-1-b_NOT-RELEASED_joined.dxf",
      "B2/B2_rev-P-1-b_NOT-RELEASED_r12.dxf",
    ]);
  });

  it("2: the input is at fault, every fault is told with its place, nothing is written", async () => {
    writeJob(folder, "job.yaml");
    const text = readFileSync(join(folder, "job.yaml"), "utf8");
    writeFileSync(
      join(folder, "job.yaml"),
      text.replace("diameter: 3/4", "diameter: 7/9").replace("mark: B2", "mark: B1"),
    );
    const made = await run("make job.yaml --out out");
    expect([made.status, made.stdout]).toEqual([2, ""]);
    expect(made.stderr).toMatch(/^job\.yaml:\d+:\d+ .*7\/9/m);
    expect(made.stderr).toMatch(/^job\.yaml:\d+:\d+ .*B1.*twice|^job\.yaml:\d+:\d+ .*mark/m);
    expect(made.stderr).toContain("nothing was written");
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it.each([
    ["a job that is not there", "check no.yaml", /no\.yaml.*no such file/],
    ["a folder for a job", "check .", /is a folder/],
    ["an unknown command", "chek job.yaml", /did you mean check\?/],
    ["an unknown option", "make job.yaml --out out --include-help", /did you mean --include-held\?/],
    ["no --out", "make job.yaml", /needs --out DIR/],
  ])("2: %s", async (_, text, message) => {
    const ended = await run(text);
    expect([ended.status, ended.stdout]).toEqual([2, ""]);
    expect(ended.stderr).toMatch(message);
  });

  it("prints help and version", async () => {
    expect((await run("--help")).stdout).toContain("rodplate make JOB --out DIR");
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect((await run("--version")).stdout).toBe(`${version}\n`);
  });
});

describe("--json prints the machine form and nothing else", () => {
  it("check: the summary, without files", async () => {
    writeJob(folder, "job.yaml");
    const checked = await run("check job.yaml --json");
    const summary = JSON.parse(checked.stdout);
    expect([checked.status, checked.stderr, summary.schema]).toEqual([0, "", 1]);
    expect(summary.bases.map(({ files }: { files: unknown[] }) => files)).toEqual([[], []]);
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("make: summary.json itself", async () => {
    writeJob(folder, "job.yaml");
    const made = await run("make job.yaml --out out --json");
    expect(made.stdout).toBe(readFileSync(join(folder, "out", "summary.json"), "utf8"));
  });

  it("faults: the findings, of the job and of DIR", async () => {
    writeFileSync(join(folder, "job.yaml"), "job: { number: 1 }\nbase: []\n");
    const checked = await run("check job.yaml --json");
    const { findings } = JSON.parse(checked.stdout);
    expect([checked.status, checked.stderr]).toEqual([2, ""]);
    expect(findings.length).toBeGreaterThan(1);
    expect(findings[0]).toMatchObject({ severity: "error", at: { file: "job.yaml" } });
    writeFileSync(join(folder, "out"), "");
    expect(JSON.parse((await run("make job.yaml --out out --json")).stdout).findings[0].at.file).toBe("out");
  });
});

describe("what is outside", () => {
  it("dates a job without a date by SOURCE_DATE_EPOCH", async () => {
    writeJob(folder, "job.yaml", { date: "" });
    expect((await run("check job.yaml", { environment: { SOURCE_DATE_EPOCH: "86400" } })).stdout).toContain(
      "1970-01-02",
    );
  });

  it.each<[string, boolean, Outside]>([
    ["on a terminal", true, { terminal: 100 }],
    ["not into a file", false, {}],
    ["not where NO_COLOR is set (no-color.org)", false, { terminal: 100, environment: { NO_COLOR: "1" } }],
    ["where NO_COLOR is set to nothing (no-color.org)", true, { terminal: 100, environment: { NO_COLOR: "" } }],
    ["not on a terminal that has none", false, { terminal: 100, environment: { TERM: "dumb" } }],
  ])("colours are written %s", async (_, colored, outside) => {
    writeJob(folder, "job.yaml", { held: true });
    const { stdout } = await run("check job.yaml", outside);
    expect([stdout.includes("\u001b["), stdout.includes("HELD")]).toEqual([colored, true]);
  });

  it.each<[number, Outside]>([
    [72, { terminal: 200 }],
    [64, { terminal: 64 }],
    [62, { terminal: 64, environment: { COLUMNS: "62" } }],
    [60, { terminal: 20 }],
  ])("rules are %i columns wide", async (width, outside) => {
    writeJob(folder, "job.yaml");
    const { stdout } = await run("check job.yaml", {
      ...outside,
      environment: { ...outside.environment, NO_COLOR: "1" },
    });
    expect(stdout.split("\n").find((line) => /^-{10,}$/.test(line))).toHaveLength(width);
  });
});

describe("DIR", () => {
  beforeEach(() => writeJob(folder, "job.yaml"));

  it("is made with its parents, and replaced when it is an untouched package", async () => {
    expect((await run("make job.yaml --out deep/er/out/")).status).toBe(0);
    writeJob(folder, "job.yaml", { revision: "B", bases: 1 });
    expect((await run("make job.yaml --out deep/er/out")).status).toBe(0);
    expect(filesIn(join(folder, "deep/er/out")).filter((path) => path.includes("rev-A"))).toEqual([]);
    expect(packageFaults(join(folder, "deep/er/out"))).toEqual([]);
    expect(readdirSync(join(folder, "deep/er"))).toEqual(["out"]);
  });

  it.each([
    ["with a file of the user's", () => writeFileSync(join(folder, "out/notes.txt"), "x"), "notes.txt"],
    ["with a changed file", () => writeFileSync(join(folder, "out/ledger.csv"), "x"), "ledger.csv was changed"],
    ["with a file missing", () => rmSync(join(folder, "out/questions.csv")), "questions.csv is missing"],
  ])("%s is refused and left as it is", async (_, spoil, message) => {
    await run("make job.yaml --out out");
    spoil();
    const before = filesIn(join(folder, "out"));
    const again = await run("make job.yaml --out out");
    expect(again.status).toBe(2);
    expect(again.stderr).toContain(message);
    expect(filesIn(join(folder, "out"))).toEqual(before);
    expect(readdirSync(folder).sort()).toEqual(["job.yaml", "out"]);
  });

  it("is refused when it is a link, a file, the current folder, or one that holds it", async () => {
    mkdirSync(join(folder, "real"));
    symlinkSync("real", join(folder, "link"));
    for (const out of ["link", "job.yaml", ".", "..", "/", "job.yaml/out"]) {
      const made = await runProgram(folder, ["make", "job.yaml", "--out", out]);
      expect([out, made.status, made.stdout]).toEqual([out, 2, ""]);
      expect(made.stderr).not.toContain("fault of the program");
    }
    expect(readdirSync(folder).sort()).toEqual(["job.yaml", "link", "real"]);
  });

  it("is not written where there is no permission", async (context) => {
    if (process.getuid?.() === 0) context.skip();
    mkdirSync(join(folder, "closed"));
    chmodSync(join(folder, "closed"), 0o500);
    const made = await run("make job.yaml --out closed/out");
    expect([made.status, made.stderr]).toEqual([2, expect.stringContaining("no permission")]);
  });

  it("is not written where the disk is full", async (context) => {
    if (!existsSync("/dev/full") || process.getuid?.() !== 0) context.skip();
    const small = join(folder, "small");
    mkdirSync(small);
    const mounted = spawnSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", small]);
    if (mounted.status !== 0) context.skip();
    try {
      const made = await run("make job.yaml --out small/out");
      expect([made.status, made.stderr]).toEqual([2, expect.stringContaining("the disk is full")]);
      expect(readdirSync(small)).toEqual([]);
    } finally {
      spawnSync("umount", [small]);
    }
  });
});

describe("a workbook", () => {
  it("without the sheet that the job names is told where the job names it", async () => {
    const file = fileURLToPath(new URL("../../samples/machine-hall/schedule.xlsx", import.meta.url));
    const schedule = `{ file: ${JSON.stringify(file)}, sheet: Nope }`;
    writeFileSync(join(folder, "job.yaml"), `job: { number: 1 }\nunits: mm\nschedule: ${schedule}\n`);
    const refused = await run("check job.yaml");
    expect(refused.status).toBe(2);
    expect(refused.stderr).toMatch(/^job\.yaml:3:\d+ schedule\.sheet: there is no sheet "Nope"; allowed are "Bases"/);
  });
});

describe("start", () => {
  it("writes a starter job that checks without a fault, and never over a file", async () => {
    expect((await run("start --out job.yaml")).status).toBe(0);
    const checked = await run("check job.yaml");
    expect([checked.stderr, checked.status === 0 || checked.status === 1]).toEqual(["", true]);
    const again = await run("start --out job.yaml");
    expect([again.status, again.stderr]).toEqual([2, expect.stringContaining("is there already")]);
  });

  it("names the schema where the program has it, so that an editor finds it", async () => {
    await run("start --out job.yaml");
    const named = /\$schema=(\S+)/.exec(readFileSync(join(folder, "job.yaml"), "utf8"))?.[1] ?? "";
    expect(JSON.parse(readFileSync(resolve(folder, named), "utf8"))).toHaveProperty("properties.bases");
  });

  it("brings the schedule of the starter job that names one, and leaves one that is there", async () => {
    expect((await run("start schedule --out job.yaml")).status).toBe(0);
    expect([0, 1]).toContain((await run("check job.yaml")).status);
    writeFileSync(join(folder, "schedule.csv"), "mine");
    expect((await run("start schedule --out other.yaml")).stdout).toContain("schedule.csv: is there already");
    expect(readFileSync(join(folder, "schedule.csv"), "utf8")).toBe("mine");
  });

  it("names the starter jobs when it knows no such one", async () => {
    const refused = await run("start nonesuch --out job.yaml");
    expect([refused.status, refused.stderr]).toEqual([2, expect.stringMatching(/there are \S+/)]);
  });
});
