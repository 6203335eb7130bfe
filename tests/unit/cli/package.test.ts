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
import { withPackageFolder } from "../../../src/cli/package-folder.js";
import { lockTarget } from "../../../src/cli/package-lock.js";
import type { PackageTarget } from "../../../src/cli/package-target.js";
import { inspectPackage, targetOf } from "../../../src/cli/package-target.js";
import type { PackageWriter, Step } from "../../../src/cli/package-writer.js";
import { repairPackage, startPackage } from "../../../src/cli/package-writer.js";
import type { Finding, Outcome } from "../../../src/diagnostics/finding.js";

/** The value of an outcome that must have one. */
function goodOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join("; "));
  return outcome.value;
}

let root: string;
let target: PackageTarget;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "rodplate-package-"));
  target = goodOf(targetOf("out", root));
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Writes a package of two bases whose files hold `word`; what the system refused. */
function tryToWrite(word: string, step?: Step): Finding | null {
  const started = startPackage(target, step);
  if (!started.ok) return started.findings[0] ?? null;
  fill(started.value, word);
  return started.value.finish();
}

function writePackage(word: string, step?: Step): void {
  expect(tryToWrite(word, step)).toBeNull();
}

function fill(writer: PackageWriter, word: string): void {
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

describe("a disk that is full at any step", () => {
  const fullAfter = (steps: number): Step => {
    let left = steps;
    return () => {
      left -= 1;
      if (left < 0) throw Object.assign(new Error("raw"), { code: "ENOSPC", syscall: "write", path: "/p" });
    };
  };
  const told = {
    ...{ code: "package-folder", severity: "error", at: { file: "out" } },
    message: "the package could not be written: the disk is full (/p)",
  };

  it("is a finding; a whole package stays, nothing half-written does, and the next run puts it right", () => {
    let steps = 0;
    for (let fault: Finding | null = told as Finding; fault !== null; steps += 1) {
      rmSync(root, { recursive: true });
      mkdirSync(root);
      writePackage("old");
      fault = tryToWrite("new", fullAfter(steps));
      if (fault !== null) expect(fault, `after ${steps} steps`).toEqual(told);
      if (steps > 0) expect(existsSync(target.fresh), `after ${steps} steps`).toBe(false);
      const place = inspectPackage(target.folder).kind === "whole" ? target.folder : target.old;
      expect(inspectPackage(place), `after ${steps} steps`).toEqual({ kind: "whole" });
      expect(repairPackage(target)).toBeNull();
      expect(inspectPackage(target.folder), `after ${steps} steps`).toEqual({ kind: "whole" });
      expect(leftovers()).toEqual([]);
    }
    expect(steps).toBeGreaterThan(7);
  });

  it("is a finding of the repair as well", () => {
    writePackage("old");
    expect(repairPackage(target, fullAfter(0))).toEqual(told);
    expect(repairPackage(target)).toBeNull();
  });
});

describe("withPackageFolder", () => {
  const make = <T>(dir: string, work: (writer: PackageWriter) => Promise<T>): Promise<Outcome<T>> =>
    withPackageFolder(dir, root, (folder) => folder.write(work));

  it("writes under the lock, also where the folder around DIR is new, and gives back what the work does", async () => {
    const made = await make("deep/er/out", async (writer) => {
      fill(writer, "new");
      expect(readdirSync(join(root, "deep/er")).sort()).toEqual([".out.lock", ".out.new"]);
      return 8;
    });
    expect(made).toEqual({ ok: true, value: 8, findings: [] });
    expect(readdirSync(join(root, "deep/er"))).toEqual(["out"]);
  });

  it("is refused by the lock of another process that came first, and leaves it", async () => {
    let begun = false;
    const made = await withPackageFolder("deep/out", root, (folder) => {
      mkdirSync(join(root, "deep"));
      writeFileSync(join(root, "deep/.out.lock"), JSON.stringify({ pid: process.ppid, started: "" }));
      return folder.write(async () => {
        begun = true;
      });
    });
    expect(made).toMatchObject({ ok: false, findings: [{ code: "package-folder", at: { file: "deep/out" } }] });
    expect(made.findings[0]?.message).toContain(`another make (process ${process.ppid}) is writing out`);
    expect([begun, readdirSync(join(root, "deep"))]).toEqual([false, [".out.lock"]]);
  });

  it("tells what the system refuses, stops there, and leaves the earlier package and no lock", async () => {
    writePackage("old");
    const made = await make("out", async (writer) => {
      writer.add("first", bytesOf("1"));
      expect(writer.isStopped).toBe(false);
      writer.add("n".repeat(300), bytesOf("2"));
      expect(writer.isStopped).toBe(true);
      writer.add("last", bytesOf("3"));
      expect(readdirSync(target.fresh)).toEqual(["first"]);
    });
    expect(made.ok).toBe(false);
    expect(made.findings).toMatchObject([{ code: "package-folder", at: { file: "out" } }]);
    expect(made.findings[0]?.message).toContain("could not be written: a name is too long for this file system (");
    expect([wordIn(target.folder), leftovers()]).toEqual(["old", []]);
  });

  it("lets a bug through, and leaves the earlier package and no lock", async () => {
    writePackage("old");
    const bug = make("out", async (writer) => {
      fill(writer, "new");
      throw new RangeError("a bug");
    });
    await expect(bug).rejects.toThrow(RangeError);
    const unlisted = make("out", async (writer) => {
      fill(writer, "new");
      writer.add("unlisted", bytesOf(""));
    });
    await expect(unlisted).rejects.toThrow("is not the package that was written");
    expect([wordIn(target.folder), leftovers()]).toEqual(["old", []]);
  });

  it("refuses before the work begins", async () => {
    mkdirSync(target.folder);
    writeFileSync(join(target.folder, "notes.txt"), "mine");
    let begun = false;
    for (const dir of ["out", ".", ""]) {
      const made = await withPackageFolder(dir, root, async () => {
        begun = true;
        return { ok: true, value: 0, findings: [] };
      });
      expect(made).toMatchObject({ ok: false, findings: [{ code: "package-folder", at: { file: dir } }] });
    }
    expect([begun, leftovers()]).toEqual([false, []]);
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
    expect(goodOf(targetOf("..out/", root)).folder).toBe(join(root, "..out"));
  });
});

describe("two makes at once", () => {
  it("are kept apart by the lock, which a dead holder does not keep", () => {
    const unlock = goodOf(lockTarget(target));
    expect(existsSync(target.lock)).toBe(true);
    unlock();
    expect(existsSync(target.lock)).toBe(false);
    writeFileSync(target.lock, JSON.stringify({ pid: process.ppid, started: "" }));
    const refused = lockTarget(target);
    expect(refused.ok).toBe(false);
    expect(refused.findings).toMatchObject([{ code: "package-folder", at: { file: "out" } }]);
    expect(refused.findings[0]?.message).toContain(`another make (process ${process.ppid}) is writing out; if not,`);
    writeFileSync(target.lock, JSON.stringify({ pid: process.ppid, started: "1" }));
    if (existsSync("/proc/self/stat")) goodOf(lockTarget(target))();
    for (const left of ["", "{", JSON.stringify({ pid: 2 ** 30, started: "" })]) {
      writeFileSync(target.lock, left);
      goodOf(lockTarget(target))();
    }
    expect(leftovers()).toEqual([]);
  });
});
