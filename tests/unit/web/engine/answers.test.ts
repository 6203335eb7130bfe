/** Survey, proof, comparison and budget of the page against what the command line prints and writes of the same files. */
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import type { AnswerFile } from "../../../../src/web/engine/answer-file.js";
import { reckonJob } from "../../../../src/web/engine/budget-work.js";
import { compareSources } from "../../../../src/web/engine/compare-work.js";
import type { Dropped } from "../../../../src/web/engine/dropped.js";
import { proveDropped } from "../../../../src/web/engine/proof-work.js";
import { surveyPointsOf } from "../../../../src/web/engine/survey-work.js";
import { filesBelow } from "../../../archive-of.js";
import { newFolder, runProgram } from "../../../cli/program.js";
import { causesIn, DAY, givenJob, refusedWith } from "./given-job.js";

const JOB = fileURLToPath(new URL("../../../stress/jobs/one-base-plan.yaml", import.meta.url));
const noTell = (): void => {};
const textOf = (files: readonly AnswerFile[], path: string) => files.find((file) => file.path === path)?.blob.text();
const dropped = (name: string, bytes: Uint8Array): Dropped => ({ name, blob: new Blob([new Uint8Array(bytes)]) });

/** The job, its package in `made`, and a changed job beside it. */
let folder = "";
beforeAll(async () => {
  folder = newFolder();
  cpSync(JOB, join(folder, "job.yaml"));
  await runProgram(folder, ["make", "job.yaml", "--out", "made"]);
});

const read = (path: string): Buffer => readFileSync(join(folder, path));
const packed = (): Dropped => dropped("made", zipSync(Object.fromEntries(filesBelow(join(folder, "made")))));

describe("a survey on the page", () => {
  const NOTHING = { unit: null, order: null, accuracy: null, height: null, within: null };
  const pointsFile = (): [name: string, text: string] => {
    const path =
      [...filesBelow(join(folder, "made")).keys()].find((each) => /^field\/.*PNEZD.*\.csv$/.test(each)) ?? "";
    return [path.split("/").at(-1) ?? "", read(join("made", path)).toString()];
  };
  const onPage = (
    name: string,
    text: string,
    options: Partial<Record<keyof typeof NOTHING, string>> = {},
    all = false,
  ) =>
    surveyPointsOf(
      {
        files: givenJob(folder, "job.yaml"),
        ...{ date: DAY, points: dropped(name, Buffer.from(text)), options: { ...NOTHING, ...options }, all },
      },
      noTell,
    );

  it.each([
    ["as set out", 0, {}, false],
    ["with a rod that stands elsewhere, every group in full", 1, { within: "60 in" }, true],
    ["with what the surveyor states", 0.004, { accuracy: "1/16 in", height: "top" }, false],
  ] as const)("says what the command line says, in the same words and figures: %s", async (_, by, typed, all) => {
    const [name, text] = pointsFile();
    const [head = "", first = "", ...rest] = text.trimEnd().split(/\r?\n/);
    const cells = first.split(",");
    cells[1] = String(Number(cells[1]) + by);
    const moved = [head, cells.join(","), ...rest].join("\n");
    writeFileSync(join(folder, name), moved);
    const options = Object.entries(typed).flatMap(([option, words]) => [`--${option}`, words]);
    const command = ["survey", "job.yaml", name, ...options, ...(all ? ["--all"] : [])];
    const ended = await runProgram(folder, command);
    const json = await runProgram(folder, [...command, "--json"]);
    const answer = await onPage(name, moved, typed, all);
    expect(answer.text).toBe(ended.stdout);
    expect(await textOf(answer.files, "survey.json")).toBe(json.stdout);
    expect(answer.isOutside).toBe(ended.status === 1);
  });

  it("names its own fields where the command line names options", async () => {
    const refused = await refusedWith(onPage("points.csv", "1,100,200,5,A1\n"));
    expect(refused.join("\n")).toContain('"Unit of the points" m, mm, ft or ft-us');
    expect(refused.join("\n")).not.toMatch(/--[a-z]/);
    expect(await refusedWith(onPage("empty.csv", ""))).toEqual(["empty.csv: has no points"]);
  });
});

describe("a proof on the page", () => {
  it("says what the command line says of a package, of files, and against a job", async () => {
    const cut = [...filesBelow(join(folder, "made")).keys()].filter((path) => /^(cut|machine)\/[^/]+\.dxf$/.test(path));
    const [first = ""] = cut;
    const text = read(join("made", first)).toString();
    writeFileSync(join(folder, "moved.dxf"), text.replace(/(\n *40\r?\n)[\d.]+/, "$11.111"));
    writeFileSync(join(folder, "notes.dxf"), "hello");
    cpSync(join(folder, "made", first), join(folder, "other.dxf"));
    const names = ["moved.dxf", "notes.dxf", "other.dxf"];
    for (const against of [false, true]) {
      const ended = await runProgram(folder, ["proof", ...names, ...(against ? ["--against", "job.yaml"] : [])]);
      const json = await runProgram(folder, [
        "proof",
        ...names,
        "--json",
        ...(against ? ["--against", "job.yaml"] : []),
      ]);
      const answer = await proveDropped(
        {
          dropped: names.map((name) => dropped(name, read(name))),
          ...{ against: against ? givenJob(folder, "job.yaml") : null, date: DAY },
        },
        noTell,
      );
      expect(answer.text).toBe(ended.stdout);
      expect(await textOf(answer.files, "proof.json")).toBe(json.stdout);
      expect(answer.isStopped).toBe(ended.status === 1);
    }
    const ended = await runProgram(folder, ["proof", "made"]);
    const answer = await proveDropped({ dropped: [packed()], against: null, date: DAY }, noTell);
    expect(answer.text).toBe(ended.stdout);
    expect(answer.isStopped).toBe(false);
  });
});

describe("a comparison on the page", () => {
  it("says what the command line says of two jobs, of a package that was signed, and of its summary", async () => {
    const other = newFolder();
    cpSync(folder, other, { recursive: true });
    const job = read("job.yaml").toString();
    writeFileSync(
      join(other, "next.yaml"),
      job.replace("revision: A", "revision: B").replace("rectangle, x: 12", "rectangle, x: 11"),
    );
    await runProgram(other, ["sign", "made", "--by", "A. Checker"]);
    const next = { ...givenJob(other, "next.yaml"), job: "next.yaml" };
    const zip = dropped("made", zipSync(Object.fromEntries(filesBelow(join(other, "made")))));
    const olds = {
      "job.yaml": { kind: "job", name: "job.yaml", files: givenJob(other, "job.yaml") },
      made: { kind: "dropped", files: [zip] },
    } as const;
    for (const [name, old] of Object.entries(olds)) {
      const ended = await runProgram(other, ["compare", name, "next.yaml"]);
      const json = await runProgram(other, ["compare", name, "next.yaml", "--json"]);
      expect(ended.status, ended.stderr).toBe(1);
      const answer = await compareSources(
        { old, fresh: { kind: "job", name: "next.yaml", files: next }, date: DAY },
        noTell,
      );
      expect(answer.text).toBe(ended.stdout);
      expect(await textOf(answer.files, "compare.json")).toBe(json.stdout);
      expect(answer.isBad).toBe(true);
      expect(answer.signatures.map(({ isVoid }) => isVoid)).toEqual(name === "made" ? [true] : []);
    }
  });
});

describe("a budget on the page", () => {
  it("says what the command line says, and leaves the same files", async () => {
    const ended = await runProgram(folder, ["budget", "job.yaml"]);
    const json = await runProgram(folder, ["budget", "job.yaml", "--json"]);
    await runProgram(folder, ["budget", "job.yaml", "--out", "budget"]);
    const answer = await reckonJob({ files: givenJob(folder, "job.yaml"), date: DAY }, noTell);
    expect(answer.text).toBe(ended.stdout);
    expect(await textOf(answer.files, "budget.json")).toBe(json.stdout);
    const own = filesBelow(join(folder, "budget"));
    expect(answer.files.map(({ path }) => path).sort()).toEqual([...own.keys(), "budget.json"].sort());
    for (const { path, blob } of answer.files)
      if (path !== "budget.json")
        expect(Buffer.compare(Buffer.from(await blob.arrayBuffer()), own.get(path) ?? Buffer.of()), path).toBe(0);
  });

  it("is refused in the words of the command line", async () => {
    const broken = newFolder();
    writeFileSync(
      join(broken, "job.yaml"),
      read("job.yaml")
        .toString()
        .replace(/rules: \w+/, "rules: moon"),
    );
    const ended = await runProgram(broken, ["budget", "job.yaml"]);
    expect(await refusedWith(reckonJob({ files: givenJob(broken, "job.yaml"), date: DAY }, noTell))).toEqual(
      causesIn(ended.stderr),
    );
  });
});
