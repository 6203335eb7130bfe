/** A package made again of the same job is the same to the byte, so that a signature on it holds. */
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeEach, describe, expect, it } from "vitest";
import { jobText } from "../questions-case.js";
import { newFolder, runProgram } from "./program.js";

const SAMPLES = fileURLToPath(new URL("../../samples", import.meta.url));

let folder = "";
beforeEach(() => {
  folder = newFolder();
});

const make = (job: string, out: string) => runProgram(folder, ["make", job, "--out", out]);

/** Every file of a package by its path, but records of who signed it. */
function bytesIn(out: string): ReadonlyMap<string, string> {
  const root = join(folder, out);
  const paths = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1));
  const kept = paths.filter((path) => !path.startsWith("engineer/signed/")).toSorted();
  return new Map(kept.map((path) => [path, readFileSync(join(root, path)).toString("latin1")]));
}

function differing(a: string, b: string): readonly string[] {
  const [one, other] = [bytesIn(a), bytesIn(b)];
  return [...new Set([...one.keys(), ...other.keys()])].filter((path) => one.get(path) !== other.get(path));
}

describe.each(["machine-hall", "packing-hall", "signal-mast"])("the sample %s", (name) => {
  it("is the same made again into its folder, and made afresh with its register", async () => {
    cpSync(join(SAMPLES, name), join(folder, name), { recursive: true });
    const job = `${name}/job.yaml`;
    await make(job, "out");
    cpSync(join(folder, "out"), join(folder, "first"), { recursive: true });
    await make(job, "out");
    expect(differing("first", "out")).toEqual([]);
    const text = readFileSync(join(folder, job), "utf8");
    writeFileSync(join(folder, job), `${text}\nquestions: ../first/summary.json\n`);
    await make(job, "afresh");
    expect(differing("first", "afresh")).toEqual([]);
    expect(bytesIn("out").size).toBeGreaterThan(20);
  });
});

describe("a package with questions that are asked for the first time", () => {
  const bases = [{ mark: "B1", template: "T1" }, { mark: "B2", template: "T1", washer: "2-3/4" }, { mark: "B3" }];

  it("keeps its signature when it is made again, and loses it with the first change", async () => {
    writeFileSync(join(folder, "job.yaml"), jobText({ revision: "A", bases }));
    await make("job.yaml", "out");
    const signed = await runProgram(folder, ["sign", "out", "--by", "J. Doe"]);
    expect(signed.stdout).toContain("OPEN, and signed as such");
    const again = await make("job.yaml", "out");
    expect(existsSync(join(folder, "out/engineer/signed"))).toBe(true);
    expect(again.stdout).not.toMatch(/VOID/);
    const state = await runProgram(folder, ["proof", "out"]);
    expect(state.stdout).toMatch(/SIGNED/i);
    expect(state.stdout).not.toMatch(/VOID/);
    writeFileSync(
      join(folder, "job.yaml"),
      jobText({ revision: "A", bases: [...bases.slice(0, 2), { mark: "B3", washer: "3" }] }),
    );
    const changed = await make("job.yaml", "out");
    expect(changed.stdout).toMatch(/VOID/);
  });
});
