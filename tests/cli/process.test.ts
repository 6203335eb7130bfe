/** What only a process shows: the built program's exit codes, its streams and signals, the machine's language and clock. */
import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterEach, beforeEach, expect, it } from "vitest";
import {
  filesIn,
  newFolder,
  packageFaults,
  rodplate,
  runProcess,
  runProgram,
  runShell,
  startProcess,
  writeJob,
} from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Whether a package, or a folder in it, is being written beside DIR. */
const isBegun = (inside = ""): boolean =>
  readdirSync(folder).some((name) => name.startsWith(".out.new-") && existsSync(join(folder, name, inside)));

/** Standard error without what is told there of work that takes long, as it does on a machine with much else to do. */
const withoutProgress = (text: string): string => text.replace(/^(checked|made) \d+ of \d+\n/gm, "");

it("prints help and version, and ends with 0", async () => {
  const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  expect(runProcess(folder, ["--version"])).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: "" });
  const { stdout } = await runProgram(folder, ["--help"]);
  expect(runProcess(folder, ["--help"])).toMatchObject({ status: 0, stdout, stderr: "" });
});

it("make: prints and writes what it does in another process, whatever the day, the zone and the language", async () => {
  writeJob(folder, "job.yaml");
  const environment = { SOURCE_DATE_EPOCH: "0", TZ: "Asia/Tokyo", LANG: "de_DE.UTF-8" };
  const made = runProcess(folder, ["make", "job.yaml", "--out", "b"], environment);
  const here = await runProgram(folder, ["make", "job.yaml", "--out", "a"]);
  expect(made).toMatchObject({
    status: 0,
    stdout: here.stdout
      .replaceAll(/\ba\/(engineer|START)/g, "b/$1")
      .replaceAll("in a/", "in b/")
      .replace("Package: a", "Package: b"),
    stderr: "",
  });
  expect(made.stdout).not.toContain("\u001b");
  expect(packageFaults(join(folder, "b"))).toEqual([]);
  const paths = filesIn(join(folder, "a"));
  expect(filesIn(join(folder, "b"))).toEqual(paths);
  for (const path of paths) {
    expect(readFileSync(join(folder, "b", path)).equals(readFileSync(join(folder, "a", path))), path).toBe(true);
  }
});

it("check: ends with 1 where something is held, with 2 where the input is at fault, which is told on standard error", () => {
  writeJob(folder, "held.yaml", { held: true });
  expect(runProcess(folder, ["check", "held.yaml"])).toMatchObject({ status: 1, stderr: "" });
  const refused = runProcess(folder, ["check", "no.yaml"]);
  expect(refused).toMatchObject({ status: 2, stdout: "", stderr: expect.stringMatching(/no\.yaml.*no such file/) });
});

it("ends quietly when its reader goes away", () => {
  writeJob(folder, "job.yaml", { bases: 40 });
  const piped = runShell(folder, `${rodplate("check job.yaml --all")} | head -1`);
  expect([piped.stdout.split("\n").length, withoutProgress(piped.stderr)]).toEqual([2, ""]);
});

it.skipIf(!existsSync("/dev/full"))(
  "standard output that cannot be written: a plain message and 2, whatever was made",
  { timeout: 240_000 },
  () => {
    writeJob(folder, "job.yaml", { bases: 1 });
    expect(runProcess(folder, ["make", "job.yaml", "--out", "out"]).status).toBe(0);
    const full = (args: string, streams = ">/dev/full") => {
      const { status, stderr } = runShell(folder, `${rodplate(args)} ${streams}`);
      return { status, stderr: withoutProgress(stderr) };
    };
    const said = "rodplate: standard output could not be written: the disk is full\n";
    for (const [args, also] of [
      ["--help", ""],
      ["check job.yaml", ""],
      ["check gone.yaml --json", ""],
      ["make job.yaml --out out", "the package was written: it is whole in out\n"],
      ["make job.yaml --out new --json", "the package was written: it is whole in new\n"],
      ["compare out job.yaml --json", ""],
      ["proof out", ""],
      ["budget job.yaml --out b", "tables and sheets were written: they are whole in b\n"],
      ["start us --out us.yaml", "us.yaml was written\n"],
    ] as const) {
      expect([args, full(args)]).toEqual([args, { status: 2, stderr: `${also}${said}` }]);
    }
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(packageFaults(join(folder, "new"))).toEqual([]);
    expect(full("check job.yaml", "2>/dev/full >/dev/full").status).toBe(2);
    expect(full("check gone.yaml", "2>/dev/full").status).toBe(2);
    expect(full("check job.yaml", "2>/dev/full").status).toBe(0);
    expect(full("check job.yaml", ">&- 2>&-").status).toBe(0);
  },
);

it("leaves DIR alone when it is interrupted, and takes its leftovers along", async () => {
  writeJob(folder, "many.yaml", { bases: 12 });
  const { child, ended } = startProcess(folder, ["make", "many.yaml", "--out", "out"]);
  while (!isBegun("sheets")) await pause(2);
  child.kill("SIGINT");
  expect(await ended).toBe(130);
  expect(readdirSync(folder)).toEqual(["many.yaml"]);
});

it("writes DIR alone: another run is refused as long as the first one is there, even if it stands still", async () => {
  writeJob(folder, "job.yaml");
  writeJob(folder, "many.yaml", { bases: 4 });
  const { child, ended } = startProcess(folder, ["make", "many.yaml", "--out", "out"]);
  while (!isBegun()) await pause(2);
  child.kill("SIGSTOP");
  expect(await runProgram(folder, ["make", "job.yaml", "--out", "out"])).toMatchObject({
    status: 2,
    stderr: expect.stringContaining("another make"),
  });
  child.kill("SIGCONT");
  expect(await ended).toBe(0);
  expect(packageFaults(join(folder, "out"))).toEqual([]);
  expect(readdirSync(folder).sort()).toEqual(["job.yaml", "many.yaml", "out"]);
});
