/** The package writer stopped after each of its steps, as a kill would stop it: always a whole package, old or new. */
import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { lockTarget } from "../../../src/cli/package-lock.js";
import type { PackageTarget } from "../../../src/cli/package-target.js";
import { inspectPackage, targetOf } from "../../../src/cli/package-target.js";
import type { Step } from "../../../src/cli/package-writer.js";
import { repairPackage, startPackage } from "../../../src/cli/package-writer.js";
import type { Outcome } from "../../../src/diagnostics/finding.js";

/** The value of an outcome that must have one. */
function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join("; "));
  return outcome.value;
}

let root: string;
let target: PackageTarget;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "rodplate-package-"));
  target = valueOf(targetOf("out", root));
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Writes a package of two bases whose files hold `word`. */
function writePackage(word: string, step?: Step): void {
  const writer = valueOf(startPackage(target, step));
  const files = ["B1/a.dxf", "B1/a.svg", "B2/b.dxf"].map((path) => ({ path, bytes: bytesOf(`${word} of ${path}`) }));
  writer.append("ledger.csv", bytesOf("head,"));
  for (const { path, bytes } of files) writer.add(path, bytes);
  writer.append("ledger.csv", bytesOf(word));
  const listed = [...files, { path: "ledger.csv", bytes: bytesOf(`head,${word}`) }].map(({ path, bytes }) => ({
    ...{ kind: "test", path, bytes: bytes.length },
    sha256: createHash("sha256").update(bytes).digest("hex"),
  }));
  writer.append(
    "summary.json",
    bytesOf(JSON.stringify({ schema: 1, bases: [{ files: listed.slice(0, 3) }], files: listed.slice(3) })),
  );
  expect(writer.finish()).toBeNull();
}

const wordIn = (folder: string): string => readFileSync(join(folder, "B1/a.dxf"), "utf8").split(" ")[0] ?? "";
const leftovers = (): string[] => readdirSync(root).filter((name) => name.startsWith(".out"));

class Killed extends Error {}

function killAfter(steps: number): Step {
  let left = steps;
  return () => {
    left -= 1;
    if (left < 0) throw new Killed();
  };
}

/** True when the run got to its end before the kill. */
function runKilled(work: () => void): boolean {
  try {
    work();
    return true;
  } catch (error) {
    if (error instanceof Killed) return false;
    throw error;
  }
}

describe("a kill at any step", () => {
  it("leaves a whole package in DIR or .DIR.old, and the next run puts it right", () => {
    const seen = new Set<string>();
    let ended = false;
    for (let steps = 0; !ended && steps < 50; steps += 1) {
      rmSync(root, { recursive: true });
      mkdirSync(root);
      writePackage("old");
      ended = runKilled(() => writePackage("new", killAfter(steps)));
      const place = inspectPackage(target.folder).kind === "whole" ? target.folder : target.old;
      expect(inspectPackage(place), `after ${steps} steps`).toEqual({ kind: "whole" });
      seen.add(`${place === target.old ? "old place" : "DIR"} ${wordIn(place)}`);
      repairPackage(target);
      expect(inspectPackage(target.folder), `after ${steps} steps`).toEqual({ kind: "whole" });
      expect(leftovers()).toEqual([]);
      writePackage("next");
      expect(wordIn(target.folder)).toBe("next");
    }
    expect(ended).toBe(true);
    expect([...seen].sort()).toEqual(["DIR new", "DIR old", "old place old"]);
  });

  it("is put right by a repair that is itself killed at any step", () => {
    for (let writing = 0; writing < 12; writing += 1) {
      for (let repairing = 0; repairing < 4; repairing += 1) {
        rmSync(root, { recursive: true });
        mkdirSync(root);
        writePackage("old");
        runKilled(() => writePackage("new", killAfter(writing)));
        runKilled(() => repairPackage(target, killAfter(repairing)));
        repairPackage(target);
        expect(inspectPackage(target.folder), `${writing}, ${repairing}`).toEqual({ kind: "whole" });
        expect(leftovers()).toEqual([]);
      }
    }
  });

  it("of the first package leaves nothing in DIR, and the next run begins anew", () => {
    runKilled(() => writePackage("new", killAfter(3)));
    expect(existsSync(target.folder)).toBe(false);
    repairPackage(target);
    expect(leftovers()).toEqual([]);
    expect(existsSync(target.folder)).toBe(false);
  });
});

describe("DIR is replaced only when it is absent, empty or an untouched package", () => {
  const refusal = (): string => {
    const fault = repairPackage(target);
    if (fault !== null) expect(fault).toMatchObject({ code: "package-folder", severity: "error", at: { file: "out" } });
    return fault?.message ?? "";
  };

  it("takes an absent and an empty one", () => {
    expect(refusal()).toBe("");
    mkdirSync(target.folder);
    expect(refusal()).toBe("");
    writePackage("first");
    expect(wordIn(target.folder)).toBe("first");
  });

  it.each([
    ["an extra file", () => writeFileSync(join(target.folder, "notes.txt"), "mine"), "it holds notes.txt"],
    ["an extra file in a base's folder", () => writeFileSync(join(target.folder, "B1/x"), ""), "it holds B1/x"],
    ["an extra folder", () => mkdirSync(join(target.folder, "B9")), "it holds B9"],
    ["a file that is gone", () => rmSync(join(target.folder, "B2/b.dxf")), "B2/b.dxf is missing"],
    [
      "a file that was edited",
      () => writeFileSync(join(target.folder, "B2/b.dxf"), "old of B2/b.dxF"),
      "B2/b.dxf was changed",
    ],
    [
      "a file that grew",
      () => writeFileSync(join(target.folder, "ledger.csv"), "head,old,more"),
      "ledger.csv was changed",
    ],
    ["a link for a file", () => symlinkSync("a.dxf", join(target.folder, "B1/z")), "it holds B1/z"],
    ["no summary", () => rmSync(join(target.folder, "summary.json")), "no summary.json"],
    [
      "a summary of something else",
      () => writeFileSync(join(target.folder, "summary.json"), '{"files":3}'),
      "is not the summary",
    ],
    [
      "a summary cut short",
      () => writeFileSync(join(target.folder, "summary.json"), '{"files":[{"pa'),
      "is not the summary",
    ],
  ])("refuses %s and touches nothing", (_, spoil, message) => {
    writePackage("old");
    spoil();
    const before = readdirSync(target.folder, { recursive: true }).sort();
    expect(refusal()).toContain(message);
    expect(readdirSync(target.folder, { recursive: true }).sort()).toEqual(before);
  });

  it("refuses a file, a link, the root and a folder that holds the current one", () => {
    writeFileSync(target.folder, "");
    expect(refusal()).toContain("not a folder");
    rmSync(target.folder);
    symlinkSync(root, target.folder);
    expect(refusal()).toContain("symbolic link");
    for (const [dir, message] of [
      ["/", "/ is the root of the file system"],
      [".", ". holds the folder you are in"],
      ["..", ".. holds the folder you are in"],
      [" ", "the name of the package folder is empty"],
    ] as const) {
      const { ok, findings } = targetOf(dir, root);
      expect([ok, findings]).toMatchObject([false, [{ code: "package-folder", at: { file: dir } }]]);
      expect(findings[0]?.message).toContain(message);
    }
    expect(valueOf(targetOf("..out/", root)).folder).toBe(join(root, "..out"));
  });
});

describe("two makes at once", () => {
  it("are kept apart by the lock, which a dead holder does not keep", () => {
    const unlock = valueOf(lockTarget(target));
    expect(existsSync(target.lock)).toBe(true);
    unlock();
    expect(existsSync(target.lock)).toBe(false);
    writeFileSync(target.lock, JSON.stringify({ pid: process.ppid, started: "" }));
    const refused = lockTarget(target);
    expect(refused.ok).toBe(false);
    expect(refused.findings).toMatchObject([{ code: "package-folder", at: { file: "out" } }]);
    expect(refused.findings[0]?.message).toContain(`another make (process ${process.ppid}) is writing out; if not,`);
    writeFileSync(target.lock, JSON.stringify({ pid: process.ppid, started: "1" }));
    if (existsSync("/proc/self/stat")) valueOf(lockTarget(target))();
    for (const left of ["", "{", JSON.stringify({ pid: 2 ** 30, started: "" })]) {
      writeFileSync(target.lock, left);
      valueOf(lockTarget(target))();
    }
    expect(leftovers()).toEqual([]);
  });
});
