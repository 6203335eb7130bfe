/** The package of the page against that of the command line: the same files, byte for byte, and the same words of what is at fault. */
import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { PaperName } from "../../../../src/outputs/paper-names.js";
import { makePackageZip } from "../../../../src/web/engine/package-work.js";
import { findRegister } from "../../../../src/web/engine/register-work.js";
import type { NamedRegister } from "../../../../src/web/engine/task-model.js";
import { filesBelow } from "../../../archive-of.js";
import { newFolder, runProgram, writeJob } from "../../../cli/program.js";
import { causesIn, DAY, givenJob, refusedWith } from "./given-job.js";

const repository = (path: string): string => fileURLToPath(new URL(`../../../../${path}`, import.meta.url));

interface Asked {
  readonly paper?: PaperName;
  readonly includeHeld?: boolean;
  readonly register?: NamedRegister;
}

function makeOnPage(folder: string, job: string, { paper, includeHeld = false, register }: Asked = {}) {
  const asked = { files: givenJob(folder, job), date: DAY, includeHeld };
  return makePackageZip({ ...asked, paper: paper ?? null, register: register ?? null }, () => {});
}

const bytesOf = async (blob: Blob): Promise<Uint8Array> => new Uint8Array(await blob.arrayBuffer());

/** Paths whose bytes are not the same in both, or that stand in one alone. */
function differences(zip: Uint8Array, folder: string): readonly string[] {
  const [a, b] = [new Map(Object.entries(unzipSync(zip))), filesBelow(folder)];
  expect(b.size).toBeGreaterThan(10);
  const NONE = Buffer.from("there is no such file");
  return [...new Set([...a.keys(), ...b.keys()])].filter((path) =>
    Buffer.compare(a.get(path) ?? NONE, b.get(path) ?? NONE),
  );
}

/** A folder with copies of these files. */
function folderOf(...paths: readonly string[]): string {
  const folder = newFolder();
  for (const path of paths) cpSync(repository(path), join(folder, path.split("/").at(-1) ?? ""));
  return folder;
}

async function expectSame(folder: string, job: string, options: readonly string[] = [], asked: Asked = {}) {
  const ended = await runProgram(folder, ["make", job, "--out", "made", ...options]);
  expect(ended.status, ended.stderr).toBeLessThan(2);
  const made = await makeOnPage(folder, job, asked);
  expect(differences(await bytesOf(made.zip), join(folder, "made"))).toEqual([]);
  return { ended, made };
}

const stress = (name: string): string => `tests/stress/jobs/${name}.yaml`;

describe("the package of the page", () => {
  it.each([
    "as-built",
    "keyed",
    "lower-template",
    "notches",
    "one-base-plan",
    "plywood",
    "ring-in-segments",
    "six-inches",
    "twelve-by-two-feet",
  ])("has the bytes of the command line: %s", async (name) => {
    await expectSame(folderOf(stress(name)), `${name}.yaml`);
  });

  it("has them with cut files of held bases, and says what is held", async () => {
    const { made } = await expectSame(folderOf(stress("held")), "held.yaml", ["--include-held"], { includeHeld: true });
    expect(made.held.map(({ mark }) => mark)).toEqual(["X1"]);
  });

  it("has them on a paper, and says which pages are reduced as the command line does", async () => {
    const { ended, made } = await expectSame(
      folderOf(stress("twelve-by-two-feet")),
      "twelve-by-two-feet.yaml",
      ["--paper", "letter"],
      { paper: "letter" },
    );
    expect(made.said.map((line) => `warning: ${line.replace(/\.$/, "")}`)).toEqual(causesIn(ended.stderr));
  });

  it("has them of bases and placements in a workbook", async () => {
    const files = ["job-xlsx.yaml", "schedule.xlsx"].map((name) => `samples/packing-hall/${name}`);
    await expectSame(folderOf(...files), "job-xlsx.yaml", ["--paper", "a3"], { paper: "a3" });
  });

  it("has them of sixty bases", async () => {
    const folder = newFolder();
    writeJob(folder, "job.yaml", { bases: 60, held: true });
    await expectSame(folder, "job.yaml");
  });

  it("goes on with the numbers of the package before", async () => {
    const folder = folderOf(stress("question-open"));
    await runProgram(folder, ["make", "question-open.yaml", "--out", "made"]);
    const summary = new Blob([new Uint8Array(readFileSync(join(folder, "made", "summary.json")))]);
    const register = await findRegister({ name: "summary.json", blob: summary }, () => {});
    const next = readFileSync(join(folder, "question-open.yaml"), "utf8").replace("revision: A", "revision: B");
    writeFileSync(join(folder, "question-open.yaml"), next.replace("y: 9", "y: 8"));
    await runProgram(folder, ["make", "question-open.yaml", "--out", "made"]);
    const made = await makeOnPage(folder, "question-open.yaml", { register });
    expect(made.said).toContainEqual(expect.stringMatching(/^Numbers of questions go on from revision A in summary/));
    const other = differences(await bytesOf(made.zip), join(folder, "made"));
    // a folder keeps the package before; a ZIP has no place for it
    expect(other.filter((path) => !path.startsWith("superseded/"))).toEqual([]);
    expect(other.length).toBeGreaterThan(10);
  });

  const SIGNAL = ["job-xlsx.yaml", "schedule.xlsx", "own-laser.yaml"].map((name) => `samples/signal-mast/${name}`);

  it.each([
    ["is damaged", "schedule.xlsx", (bytes: Buffer) => bytes.subarray(0, 3000)],
    ["is no workbook", "schedule.xlsx", () => Buffer.from("Mark,Rod dia\n")],
    ["is not there", "schedule.xlsx", () => null],
    ["has no such sheet", "job-xlsx.yaml", (bytes: Buffer) => Buffer.from(bytes.toString().replace("Bases", "Basis"))],
    ["shop file is not there", "own-laser.yaml", () => null],
    ["shop file is no text", "own-laser.yaml", () => Buffer.from([0, 255, 0, 255])],
  ] as const)("says what the command line says of a job whose sheet or shop file %s", async (_, name, broken) => {
    const folder = folderOf(...SIGNAL);
    const content = broken(readFileSync(join(folder, name)));
    rmSync(join(folder, name));
    if (content !== null) writeFileSync(join(folder, name), content);
    const ended = await runProgram(folder, ["make", "job-xlsx.yaml", "--out", "made"]);
    expect(ended.status).toBe(2);
    expect(await refusedWith(makeOnPage(folder, "job-xlsx.yaml"))).toEqual(causesIn(ended.stderr));
  });
});
