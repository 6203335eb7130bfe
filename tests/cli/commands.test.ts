/** The commands by the contract: exit codes, machine form, faults, and the rules by which a package is replaced. */
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import papaparse from "papaparse";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Outside } from "./program.js";
import { filesIn, givePackage, newFolder, packageFaults, readSummary, runProgram, writeJob } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string, outside: Outside = {}) => runProgram(folder, text.split(" "), outside);
const give = (make: string) => givePackage(folder, make.split(" "));

describe("exit codes and what is printed", () => {
  it("0: made, nothing is held", async () => {
    writeJob(folder, "job.yaml");
    const made = await run("make job.yaml --out out");
    expect([made.status, made.stderr]).toEqual([0, ""]);
    expect(made.stdout).toContain("2 bases, 0 held.");
    expect(made.stdout).toContain("No rule looks at: anchorage strength in concrete;");
    const files = filesIn(join(folder, "out"));
    expect(made.stdout).toContain(`Package: out (${files.length} files). Open first: out/START-HERE.txt\n`);
    expect(made.stdout).toMatch(/^ {2}cutting table +cut\/ +8 files; first 26-007_rev-A_cut-list\.pdf$/m);
    expect(made.stdout).toMatch(/^ {2}everybody +26-007_rev-A_set\.pdf$/m);
    expect(made.stdout).not.toContain("\u001b");
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(["job.yaml", "out"]);
  });

  it("says which pages of the set a paper is too small for, each once, and makes the rest of the package as ever", async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out whole");
    const made = await run("make job.yaml --out out --paper letter");
    expect([made.status, made.stderr]).toEqual([
      0,
      expect.stringMatching(
        /^warning: on letter 4 pages of the set do not fit and are reduced, not at the scales stated, to /,
      ),
    ]);
    for (const page of [", B2 (page ", "SETTING B1 (page ", "SETTING B2 (page "])
      expect(made.stderr.split(page)).toHaveLength(2);
    const rest = (name: string) => filesIn(join(folder, name)).filter((path) => !/set\.pdf|summary/.test(path));
    expect(rest("out")).toEqual(rest("whole"));
    expect(filesIn(join(folder, "out"))).toContain("26-007_rev-A_set.pdf");
    const refused = await run("make job.yaml --out other --paper a5");
    expect([refused.status, refused.stderr]).toEqual([
      2,
      expect.stringContaining('--paper "a5": the papers are letter, tabloid, a4, a3, 11x17'),
    ]);
  });

  it("1: made, but something is held, whose cut files are not there", async () => {
    writeJob(folder, "job.yaml", { held: true });
    const made = await run("make job.yaml --out out");
    expect(made.status).toBe(1);
    const [first, second] = readSummary(join(folder, "out")).bases;
    expect([first?.held, first?.files.map(({ kind }) => kind)]).toEqual([true, ["sheet-svg", "setting-sheet-svg"]]);
    expect([second?.held, second?.files.map(({ kind }) => kind)]).toEqual([
      false,
      ["cut-joined", "cut-r12", "solid-stl", "solid-3mf", "sheet-svg", "setting-sheet-svg"],
    ]);
    expect(made.stdout.indexOf("HELD")).toBeLessThan(made.stdout.indexOf("Questions") >>> 0);
    expect((await run("check job.yaml")).status).toBe(1);
  });

  it("writes held cut files when asked, with HELD in the name, and NOT-RELEASED for a job that is not", async () => {
    writeJob(folder, "job.yaml", { held: true, status: "preliminary", revision: "P/1 b" });
    expect((await run("make job.yaml --out out --include-held")).status).toBe(1);
    expect(filesIn(join(folder, "out")).filter((path) => path.endsWith(".dxf"))).toEqual([
      "cut/B2_2-off_PL1-4_steel_rev-P-1-b_NOT-RELEASED.dxf",
      "cut/held/B1_2-off_PL1-4_steel_rev-P-1-b_HELD_NOT-RELEASED.dxf",
      "cut/held/lines/B1_2-off_PL1-4_steel_rev-P-1-b_HELD_NOT-RELEASED_lines.dxf",
      "cut/lines/B2_2-off_PL1-4_steel_rev-P-1-b_NOT-RELEASED_lines.dxf",
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

  it("is made with its parents; a package of another revision is kept in it, one of the same is replaced", async () => {
    expect((await run("make job.yaml --out deep/er/out/")).status).toBe(0);
    const before = filesIn(join(folder, "deep/er/out"));
    writeJob(folder, "job.yaml", { revision: "B", bases: 1 });
    for (let times = 0; times < 2; times += 1) {
      expect((await run("make job.yaml --out deep/er/out")).status).toBe(0);
      const old = filesIn(join(folder, "deep/er/out")).filter((path) => path.includes("rev-A"));
      expect(old).toEqual(before.map((path) => `superseded/rev-A/${path}`).sort());
    }
    expect(packageFaults(join(folder, "deep/er/out"))).toEqual([]);
    expect(packageFaults(join(folder, "deep/er/out/superseded/rev-A"))).toEqual([]);
    expect(readdirSync(join(folder, "deep/er"))).toEqual(["out"]);
    const compared = await run("compare deep/er/out/superseded/rev-A deep/er/out");
    expect([compared.status, compared.stderr]).toEqual([0, ""]);
  });

  it("--replace erases the revision that is in it", async () => {
    await give("make job.yaml --out out");
    writeJob(folder, "job.yaml", { revision: "B" });
    expect((await run("make job.yaml --out out --replace")).status).toBe(0);
    expect(filesIn(join(folder, "out")).filter((path) => path.includes("rev-A"))).toEqual([]);
  });

  it("of another job is refused, whatever its revision; --replace erases it", async () => {
    await give("make job.yaml --out out");
    const before = filesIn(join(folder, "out"));
    const text = readFileSync(join(folder, "job.yaml"), "utf8").replace("26-007", "26-008");
    writeFileSync(join(folder, "other.yaml"), text);
    const refused = await run("make other.yaml --out out");
    expect([refused.status, refused.stdout]).toEqual([2, ""]);
    expect(refused.stderr).toMatch(/^out: it holds the package of job 26-007, and this is job 26-008: .*--replace/);
    expect(refused.stderr).toContain("no package was written\n");
    expect(filesIn(join(folder, "out"))).toEqual(before);
    expect((await run("make other.yaml --out out --replace")).status).toBe(0);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
  });

  it("with a file added, papers saved and a cut file changed works: one stays, two are set aside, each is told", async () => {
    const spoiled: readonly (readonly [string, string, RegExp])[] = [
      ["scan.pdf", "scan.pdf", /^warning: out: scan\.pdf is not of the package: it stays where it is$/m],
      [
        "engineer/ledger.csv",
        "set-aside/rev-A/engineer/ledger.csv",
        /^warning: out: engineer\/ledger\.csv was changed after it was written: it is set aside as set-aside\/rev-A\/engineer\/ledger\.csv$/m,
      ],
      [
        "cut/lines/B2_2-off_PL1-4_steel_rev-A_lines.dxf",
        "set-aside/rev-A/cut/lines/B2_2-off_PL1-4_steel_rev-A_lines.dxf",
        /^warning: out: cut\/lines\/B2_2-off_PL1-4_steel_rev-A_lines\.dxf, A FILE TO CUT BY, WAS CHANGED .*WHAT WAS CUT BY IT IS NOT WHAT WAS CHECKED$/m,
      ],
    ];
    const places = spoiled.map(([, place]) => place);
    await give("make job.yaml --out out");
    for (const [path] of spoiled) writeFileSync(join(folder, "out", path), `mine, ${path}`);
    for (const command of ["make job.yaml --out out", "make job.yaml --out out --replace"]) {
      const again = await run(command);
      expect(again.status).toBe(0);
      for (const [path, place, message] of spoiled) {
        if (command.endsWith("out")) expect(again.stderr).toMatch(message);
        expect(readFileSync(join(folder, "out", place), "utf8")).toBe(`mine, ${path}`);
      }
      expect(packageFaults(join(folder, "out"), places)).toEqual([]);
    }
    writeJob(folder, "job.yaml", { revision: "B" });
    expect((await run("make job.yaml --out out")).status).toBe(0);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    const kept = filesIn(join(folder, "out")).map((path) => readFileSync(join(folder, "out", path), "utf8"));
    expect(kept.filter((text) => text.startsWith("mine, ")).sort()).toEqual(
      spoiled.map(([path]) => `mine, ${path}`).sort(),
    );
    expect(readdirSync(folder).sort()).toEqual(["job.yaml", "out"]);
  });

  it("with a file missing works, and says which", async () => {
    await give("make job.yaml --out out");
    rmSync(join(folder, "out/engineer/questions.csv"));
    const again = await run("make job.yaml --out out");
    expect([again.status, again.stderr]).toEqual([
      0,
      "warning: out: the package of revision A that was here lacked engineer/questions.csv\n",
    ]);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
  });

  it("with a faulty job removes nothing beside it that a run left, and puts the earlier package back", async () => {
    await give("make job.yaml --out out");
    const fresh = `.out.new-${"a".repeat(24)}`;
    mkdirSync(join(folder, fresh));
    writeFileSync(join(folder, fresh, ".rodplate-unfinished"), "");
    renameSync(join(folder, "out"), join(folder, ".out.old"));
    writeFileSync(join(folder, "bad.yaml"), "job: 3\n");
    const refused = await run("make bad.yaml --out out");
    expect([refused.status, refused.stderr]).toEqual([2, expect.stringContaining("that one was put back first")]);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual([fresh, "bad.yaml", "job.yaml", "out"]);
    expect((await run("make job.yaml --out out")).status).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(["bad.yaml", "job.yaml", "out"]);
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

describe("make over an earlier package", () => {
  const change = (from: string, to: string, ...changes: readonly (readonly [string, string])[]): void => {
    const before = readFileSync(join(folder, from), "utf8");
    const after = changes.reduce((text, [old, by]) => text.replace(old, by), before);
    expect(after).not.toBe(before);
    writeFileSync(join(folder, to), after);
  };
  const [MOVED, RODS] = [
    ["x: 8, y: 8", "x: 8-1/4, y: 8"],
    ["projection: 8", "projection: 9"],
  ] as const;

  beforeEach(async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out out");
  });

  it("says that nothing changed where nothing did", async () => {
    const { stdout } = await run("make job.yaml --out out");
    expect(stdout).toMatch(
      /^Against revision A, which it replaces:\n {2}nothing that was cut must be cut again, and no rods made again$/m,
    );
  });

  it("tells of another revision what must be cut and made again, and how to see more", async () => {
    change("job.yaml", "b.yaml", ['revision: "A"', 'revision: "B"'], MOVED, RODS);
    const { stdout, stderr, status } = await run("make b.yaml --out out");
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/^Against revision A, kept in out\/superseded\/rev-A:$/m);
    expect(stdout).toMatch(/^ {2}CUT AGAIN: B1 \(2 plates\)$/m);
    expect(stdout).toMatch(/^ {2}RODS MADE AGAIN: B1 A \(8 rods: projection\)$/m);
    expect(stdout).toMatch(/^ {2}more: rodplate compare out\/superseded\/rev-A out$/m);
    expect((await run("compare out/superseded/rev-A out")).status).toBe(1);
  });

  it.each([
    ["a hole moved", MOVED, /^ {2}CUT AGAIN: B1/m],
    ["rods changed", RODS, /^ {2}RODS MADE AGAIN: B1 A/m],
  ] as const)(
    "is loud when %s and the revision did not, and keeps what was handed out, once for each change",
    async (_, changed, line) => {
      const first = readFileSync(join(folder, "out/summary.json"), "utf8");
      change("job.yaml", "same.yaml", changed);
      const { stdout } = await run("make same.yaml --out out");
      expect(stdout).toMatch(/^THE REVISION IS STILL A, AND THIS PACKAGE IS NOT WHAT WAS CUT OR MADE/m);
      expect(stdout).toMatch(line);
      expect(stdout).toMatch(/^ {2}more: rodplate compare out\/superseded\/rev-A out$/m);
      expect(readFileSync(join(folder, "out/superseded/rev-A/summary.json"), "utf8")).toBe(first);
      await run("make same.yaml --out out");
      expect(readdirSync(join(folder, "out/superseded"))).toEqual(["rev-A"]);
      await run("make job.yaml --out out");
      expect(readdirSync(join(folder, "out/superseded")).sort()).toEqual(["rev-A", "rev-A_2"]);
      expect((await run("proof out/superseded/rev-A")).status).toBe(0);
    },
  );

  it("does not keep what nobody may cut by, nor with --replace", async () => {
    change("job.yaml", "moved.yaml", MOVED);
    await run("make moved.yaml --out out --replace");
    expect(readdirSync(join(folder, "out"))).not.toContain("superseded");
    for (const name of ["job.yaml", "moved.yaml"]) {
      change(name, `draft-${name}`, ["status: released", "status: preliminary"]);
      await run(`make draft-${name} --out draft`);
    }
    expect(readdirSync(join(folder, "draft"))).not.toContain("superseded");
  });

  it("--json has it beside the keys of summary.json", async () => {
    change("job.yaml", "b.yaml", ['revision: "A"', 'revision: "B"'], MOVED, RODS);
    writeFileSync(join(folder, "out/scan.pdf"), "mine");
    const { earlier, ...summary } = JSON.parse((await run("make b.yaml --out out --json")).stdout);
    expect(summary).toEqual(JSON.parse(readFileSync(join(folder, "out/summary.json"), "utf8")));
    expect(earlier).toMatchObject({
      ...{ number: "26-007", revision: "A", kept: "superseded/rev-A", missing: [] },
      people: [{ what: "added", path: "scan.pdf", to: "superseded/rev-A/scan.pdf" }],
      compared: { recut: 1, remade: 8 },
    });
  });

  it("whose summary cannot be compared says so, and keeps it", async () => {
    const text = readFileSync(join(folder, "out/summary.json"), "utf8");
    writeFileSync(join(folder, "out/summary.json"), text.replace('"schema": 1', '"schema": 2'));
    writeJob(folder, "job.yaml", { revision: "B" });
    const { stdout, status } = await run("make job.yaml --out out");
    expect(status).toBe(0);
    expect(stdout).toContain("The package before, which is kept in out/superseded/rev-A is not compared");
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

  it("leaves nothing where the disk is full", async (context) => {
    const small = join(folder, "small");
    mkdirSync(small);
    const mounted = spawnSync("mount", ["-t", "tmpfs", "-o", "size=4k", "tmpfs", small]);
    if (mounted.status !== 0) context.skip();
    try {
      writeFileSync(join(small, "full"), Buffer.alloc(4096));
      const refused = await run("start --out small/job.yaml");
      expect([refused.status, refused.stderr]).toEqual([2, expect.stringContaining("the disk is full")]);
      await run("start --out budgeted.yaml");
      const budget = await run("budget budgeted.yaml --out small/b");
      expect([budget.status, budget.stderr]).toEqual([
        2,
        "small/b: could not be written: the disk is full\nnothing was written\n",
      ]);
      expect(readdirSync(small)).toEqual(["full"]);
    } finally {
      spawnSync("umount", [small]);
    }
  });

  it("names the starter jobs when it knows no such one", async () => {
    const refused = await run("start nonesuch --out job.yaml");
    expect([refused.status, refused.stderr]).toEqual([2, expect.stringMatching(/there are \S+/)]);
  });
});

describe("answers and questions", () => {
  const base = (mark: string, washer: string) =>
    `  - { mark: ${mark}, rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { x: 18, y: 16, hole: 2-1/16, washer: { shape: square, size: ${washer}, thickness: 1/2 } }, template: { thickness: 1/4 } }`;
  const job = (answers: readonly string[]) =>
    `job: { number: "24-118", revision: B, status: released, date: 2026-11-24 }\nunits: in\nanswers:\n${answers.map((each) => `  - { ${each}, by: EOR, date: 2026-11-20, text: y }\n`).join("")}bases:\n${base("B1", "2-1/2")}\n`;

  it("are numbered under the job's number and revision; answers not used are listed and counted; exit code 0", async () => {
    writeFileSync(
      join(folder, "q.yaml"),
      job(["mark: B2, rule: washer-cover", "mark: B1, rule: washer-cover, value: 2-1/4"]),
    );
    const { status, stdout, stderr } = await run("check q.yaml");
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("Questions to the engineer of record: 1 open\n  Q-1  B1  washer over base-plate hole");
    expect(stdout).toContain(
      "Answers and acceptances not used: 2\n  B2 washer-cover, by EOR, 2026-11-20: the job has no",
    );
    expect(stdout.replace(/\s+/g, " ")).toContain("answered for 2-1/4 in, now 2-1/2 in: the question is open again");
    expect(stdout.trimEnd().replace(/\s+/g, " ")).toMatch(/\. 1 question open, 2 answers not used\./);
    const all = await run("check q.yaml --all");
    expect(all.stdout).toContain(
      "Questions for the engineer of record, open; job 24-118, revision B\n  - Q-1  Base B1 (quantity 1), A1 A2 A3 A4:",
    );
  });

  it("of many at most 200 are shown and the rest counted", async () => {
    writeFileSync(
      join(folder, "q.yaml"),
      job(Array.from({ length: 450 }, (_, i) => `mark: X${i}, rule: washer-cover`)),
    );
    expect((await run("check q.yaml")).stdout).toContain("  and 447 more; --all shows them");
    const { stdout } = await run("check q.yaml --all");
    expect(stdout.match(/^ {2}- X\d+ washer-cover/gm)).toHaveLength(200);
    expect(stdout).toContain("and 250 more, which are not shown here");
    expect(JSON.parse((await run("check q.yaml --json")).stdout).answersNotUsed).toHaveLength(450);
  });
});

describe("many faults", () => {
  const writeJob = (rows: readonly string[]) => {
    writeFileSync(join(folder, "s.csv"), ["Mark,Rod dia,X,Y,Template thk", ...rows, ""].join("\n"));
    writeFileSync(join(folder, "many.yaml"), 'job: { number: "1" }\nunits: in\nschedule: s.csv\n');
  };

  it("of one cause are told once, with their places; in machine form at most 200, errors first, and all are counted", async () => {
    writeJob(Array.from({ length: 3000 }, (_, i) => `B${i},1-5/17,12,10,1/4`));
    const { status, stderr } = await run("check many.yaml");
    expect([status, stderr.trimEnd().split("\n")]).toEqual([
      2,
      [
        expect.stringMatching(
          /^s\.csv column B Rod dia, 3000 rows \(B2 to B3001\): "1-5\/17" is no rod size with a thread;/,
        ),
        "3000 faults in the input; nothing was written",
      ],
    ]);
    const told = JSON.parse((await run("check many.yaml --json")).stdout);
    expect([told.findings.length, told.untold]).toEqual([200, 2800]);
    expect(told.findings[0].at).toEqual({ file: "s.csv", line: 2, column: 2, path: "row 2 Rod dia", cell: "B2" });
  });

  it("of many causes: a screen of them, the rest on request in a file that is not there yet", async () => {
    writeJob(Array.from({ length: 30 }, (_, i) => `B${i},1,12,${i + 1}1/${i + 2},1/4`));
    const { stderr } = await run("check many.yaml");
    const lines = stderr.trimEnd().split("\n");
    expect(lines).toHaveLength(22);
    expect(lines.slice(20)).toEqual([
      "and 10 more causes (10 places); rodplate check many.yaml --faults FILE writes all",
      "30 faults in the input; nothing was written",
    ]);
    const written = await run("check many.yaml --faults faults.csv");
    expect(written.status).toBe(2);
    expect(written.stderr).toContain(
      "and 10 more causes (10 places), which stand in faults.csv\nfaults.csv: 30 findings written\n30 faults in the input; nothing else was written\n",
    );
    const rows = papaparse.parse<Record<string, string>>(readFileSync(join(folder, "faults.csv"), "utf8").trim(), {
      header: true,
    }).data;
    expect(rows).toHaveLength(30);
    expect(rows[29]).toEqual({
      ...{ file: "s.csv", cell: "D31", line: "31", column: "4", key: "Y", code: "cell-fault", severity: "error" },
      message: expect.stringContaining('"301/31" has the improper fraction'),
      hint: "",
    });
  });

  it("are not written over a file that is there, and the command ends", async () => {
    writeJob(["B1,1,12,10,1/4"]);
    writeFileSync(join(folder, "there.csv"), "mine");
    for (const command of ["check many.yaml", "make many.yaml --out p9"]) {
      const { status, stdout, stderr } = await run(`${command} --faults there.csv`);
      expect([status, stdout]).toEqual([2, ""]);
      expect(stderr).toContain("there.csv: is there already; name a file that is not\nnothing was written\n");
    }
    expect(readFileSync(join(folder, "there.csv"), "utf8")).toBe("mine");
    expect(existsSync(join(folder, "p9"))).toBe(false);
    const good = await run("check many.yaml --faults none.csv");
    expect(good.status).not.toBe(2);
    expect(readFileSync(join(folder, "none.csv"), "utf8")).toBe(
      "file,cell,line,column,key,code,severity,message,hint\r\n",
    );
  });

  it("a schedule in the place of a job is told what to do with it", async () => {
    writeJob(["B1,1,12,10,1/4"]);
    expect((await run("check s.csv")).stderr).toContain(
      "rodplate read s.csv --out job.yaml says what is understood of the sheet and writes such a job",
    );
  });
});

describe("a gross misclosure of the control points", () => {
  const layout = (easting: number) =>
    `job: { number: "24-118", revision: A, status: released, date: 2026-11-24 }
units: mm
rules: metric
shop: plasma-metric
grid: { x: { names: [A, B], at: [0, 6000] }, y: { names: [1], at: [0] } }
placements: [{ base: B1, at: A-1 }, { base: B1, at: B-1 }]
settingOut: { unit: m }
control: [{ point: CP1, northing: 5000, easting: 2000, plan: [0, 0] }, { point: CP2, northing: 5000, easting: ${easting}, plan: [6000, 0] }]
bases:
  - { mark: B1, quantity: 2, rods: { diameter: M20 }, pattern: { kind: rectangle, x: 200, y: 200 }, template: { thickness: 6 } }
`;
  const settingOut = (dir: string) => readdirSync(join(folder, dir, "field")).filter((name) => /_site_/.test(name));

  it("60 m on the site for 6 m on the plan: site files are not written, exit code 1, told everywhere", async () => {
    writeFileSync(join(folder, "c.yaml"), layout(2060));
    const checked = await run("check c.yaml");
    expect(checked.status).toBe(1);
    expect(checked.stdout).toContain("HELD: the layout\n  layout  not to be set out by: ");
    expect(checked.stdout).toContain("1 base, 0 held, setting-out files held.");
    const made = await run("make c.yaml --out p");
    expect([made.status, settingOut("p")]).toEqual([1, []]);
    expect(readdirSync(join(folder, "p", "field")).some((name) => /_local_/.test(name))).toBe(true);
    expect(JSON.parse(readFileSync(join(folder, "p", "summary.json"), "utf8")).layoutHeld).toHaveLength(2);
    const plan = readdirSync(join(folder, "p", "sheets")).filter((name) => name.startsWith("anchor-rod-plan"));
    const text = plan.map((name) => readFileSync(join(folder, "p", "sheets", name), "utf8")).join("");
    expect(text.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ")).toContain(
      "HELD, not to be set out by: site coordinates.",
    );
    expect((await run("make c.yaml --out q --include-held")).status).toBe(1);
    expect(settingOut("q").every((name) => name.includes("_HELD_"))).toBe(true);
  });

  it("6.01 m for 6 m: written, exit code 0", async () => {
    writeFileSync(join(folder, "c.yaml"), layout(2006.01));
    const made = await run("make c.yaml --out p");
    expect([made.status, settingOut("p").length]).toEqual([0, 2]);
  });
});
