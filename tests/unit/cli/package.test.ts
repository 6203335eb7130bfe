/** The package writer stopped after each of its steps, as a kill or a disk would stop it: a whole package, and nothing of anybody's lost. */
import { createHash } from "node:crypto";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Step } from "../../../src/cli/disk.js";
import { diskWith } from "../../../src/cli/disk.js";
import { findChanged, inspectPackage } from "../../../src/cli/package-contents.js";
import { withPackageFolder } from "../../../src/cli/package-folder.js";
import { clearLeftovers, restorePackage } from "../../../src/cli/package-repair.js";
import type { Settlement } from "../../../src/cli/package-settle.js";
import type { PackageTarget } from "../../../src/cli/package-target.js";
import { targetOf } from "../../../src/cli/package-target.js";
import type { PackageWriter } from "../../../src/cli/package-writer.js";
import { addFile, startPackage } from "../../../src/cli/package-writer.js";
import type { Finding, Outcome } from "../../../src/diagnostics/finding.js";
import { SIGNATURE_START } from "../../../src/formats/signature-json.js";

/** The value of an outcome that must have one. */
function goodOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join("; "));
  return outcome.value;
}

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "rodplate-package-"));
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

/** The names for one run, with a token of its own. */
const newTarget = (): PackageTarget => goodOf(targetOf("out", root));
const inOut = (...path: string[]): string => join(root, "out", ...path);
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const [JOB, OTHER_JOB] = ["26-007", "26-008"];

interface Wanted {
  readonly word: string;
  readonly revision?: string;
  readonly number?: string;
  readonly replace?: boolean;
}

/** Puts right what is left, and writes a package of two bases whose files hold `word`. */
function tryToWrite(wanted: Wanted, step?: Step): Outcome<Settlement | null> {
  const [target, disk] = [newTarget(), diskWith(step)];
  const restored = restorePackage(target, disk);
  if (!restored.ok) return restored;
  const cleared = clearLeftovers(target, disk);
  if (!cleared.ok) return cleared;
  const started = startPackage(target, disk);
  if (!started.ok) return started;
  fill(started.value, wanted);
  return started.value.finish({ replace: wanted.replace ?? false });
}

const writePackage = (wanted: Wanted): Settlement | null => goodOf(tryToWrite(wanted));

function fill(writer: PackageWriter, { word, revision = "A", number = JOB }: Wanted): void {
  const files = ["B1/a.dxf", "B1/a.svg", "B2/b.dxf"].map((path) => ({ path, bytes: bytesOf(`${word} of ${path}`) }));
  writer.append("ledger.csv", bytesOf("head,"));
  for (const { path, bytes } of files) writer.add(path, bytes);
  writer.append("ledger.csv", bytesOf(word));
  const listed = [...files, { path: "ledger.csv", bytes: bytesOf(`head,${word}`) }].map(({ path, bytes }) => ({
    ...{ kind: path.endsWith(".dxf") ? "cut-joined" : "test", path, bytes: bytes.length },
    sha256: createHash("sha256").update(bytes).digest("hex"),
  }));
  const job = { number, revision };
  const summary = { schema: 1, job, bases: [{ files: listed.slice(0, 3) }], files: listed.slice(3) };
  writer.append("summary.json", bytesOf(JSON.stringify(summary)));
}

const wordIn = (folder: string): string => readFileSync(join(folder, "B1/a.dxf"), "utf8").split(" ")[0] ?? "";
const leftovers = (): string[] => readdirSync(root).filter((name) => name.startsWith(".out"));

/** What somebody did to a package, and what is missing of it; "whole" when nothing. */
function stateOf(folder: string): unknown {
  const found = inspectPackage(folder);
  if (found.kind !== "package") return found;
  const { added, missing } = found.contents;
  const changed = findChanged(folder, found.contents);
  return added.length + missing.length + changed.length === 0 ? "whole" : { added, missing, changed };
}

/** Every file below the root by what it holds: whatever is moved, it must stay there. */
function contentsBelow(): string[] {
  const names = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((name) =>
    statSync(join(root, name)).isFile(),
  );
  return names.map((name) => readFileSync(join(root, name), "utf8"));
}

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

/** What stands in DIR before: a package that somebody worked with, and what earlier makes kept and set aside. Made once, then copied. */
function prepare(): void {
  rmSync(root, { recursive: true });
  if (worked === "") {
    mkdirSync(root);
    makeWorked();
    worked = mkdtempSync(join(tmpdir(), "rodplate-worked-"));
    cpSync(root, worked, { recursive: true });
  } else cpSync(worked, root, { recursive: true });
}
let worked = "";
afterAll(() => rmSync(worked, { recursive: true, force: true }));

function makeWorked(): void {
  writePackage({ word: "first", revision: "0" });
  writePackage({ word: "before", revision: "A" });
  writeFileSync(inOut("ledger.csv"), "changed once");
  writePackage({ word: "old", revision: "A" });
  writeFileSync(inOut("scan.pdf"), "scan");
  writeFileSync(inOut("B1/note.txt"), "note");
  mkdirSync(inOut("photos"));
  writeFileSync(inOut("photos/1.jpg"), "photo");
  writeFileSync(inOut("ledger.csv"), "changed twice");
  writeFileSync(inOut("B2/b.dxf"), "cut file changed");
  mkdirSync(inOut("engineer/signed"), { recursive: true });
  writeFileSync(inOut("engineer/signed/a.json"), SIGNATURE);
}
const SIGNATURE = `${SIGNATURE_START}  "by": "J. Doe"`;
const PEOPLES = [SIGNATURE, "scan", "note", "photo", "changed once", "changed twice", "cut file changed"];
/** Of the revision that was kept before. */
const KEPT = ["first of B1/a.dxf", "first of B2/b.dxf", "head,first"];

const CASES: readonly (Wanted & { readonly name: string; readonly keeps: boolean })[] = [
  { name: "the same revision", word: "new", revision: "A", keeps: false },
  { name: "another revision", word: "new", revision: "B", keeps: true },
  { name: "another revision that is to be erased", word: "new", revision: "B", replace: true, keeps: false },
  { name: "another job's package that is to be erased", word: "new", number: OTHER_JOB, replace: true, keeps: false },
];

/** A whole package, old or new, is in DIR or .DIR.old, and everything of people's, and every kept revision, is somewhere. */
function expectNothingLost(when: string, keeps: boolean): void {
  const place = inspectPackage(inOut()).kind === "package" ? inOut() : join(root, ".out.old");
  expect(["old", "new"], when).toContain(wordIn(place));
  const found = inspectPackage(place);
  expect(found.kind === "package" && found.contents.missing, when).toEqual([]);
  const contents = new Set(contentsBelow());
  const lost = [...PEOPLES, ...KEPT, ...(keeps ? ["old of B1/a.dxf"] : [])].filter((text) => !contents.has(text));
  expect(lost, when).toEqual([]);
}

describe("a file that is added to a package", () => {
  it("is whole or not there, whatever step is the last one; what is left goes with the next run", () => {
    let ended = false;
    const seen = new Set<string>();
    for (let steps = 0; !ended && steps < 40; steps += 1) {
      rmSync(root, { recursive: true });
      mkdirSync(root);
      writePackage({ word: "old" });
      const disk = diskWith(killAfter(steps));
      ended = runKilled(() => void addFile(newTarget(), "engineer/signed/a.json", bytesOf(SIGNATURE), disk));
      const path = inOut("engineer/signed/a.json");
      const isThere = existsSync(path);
      if (isThere) expect(readFileSync(path, "utf8")).toBe(SIGNATURE);
      expect(stateOf(inOut()), `after ${steps} steps`).toBe("whole");
      seen.add(String(isThere));
      goodOf(clearLeftovers(newTarget()));
      expect(leftovers(), `after ${steps} steps`).toEqual([]);
      expect(existsSync(path)).toBe(isThere);
    }
    expect([ended, [...seen].sort()]).toEqual([true, ["false", "true"]]);
  });

  it("takes no place that is taken, and goes with its package where that is kept", () => {
    writePackage({ word: "old", revision: "A" });
    const add = () => goodOf(addFile(newTarget(), "engineer/signed/a.json", bytesOf(SIGNATURE)));
    expect([add(), add()]).toEqual(["engineer/signed/a.json", "engineer/signed/a_2.json"]);
    writePackage({ word: "same", revision: "A" });
    expect(readdirSync(inOut("engineer/signed"))).toEqual(["a.json", "a_2.json"]);
    writePackage({ word: "next", revision: "B" });
    expect(existsSync(inOut("engineer/signed"))).toBe(false);
    expect(readdirSync(inOut("superseded/rev-A/engineer/signed"))).toEqual(["a.json", "a_2.json"]);
    writePackage({ word: "last", revision: "C", replace: true });
    expect(readdirSync(inOut("superseded/rev-A/engineer/signed"))).toEqual(["a.json", "a_2.json"]);
  });
});

describe.each(CASES)("over $name", ({ name: _, keeps, ...wanted }) => {
  it("a kill at any step loses nothing, and the next run puts it right", () => {
    const seen = new Set<string>();
    let ended = false;
    for (let steps = 0; !ended && steps < 100; steps += 1) {
      prepare();
      ended = runKilled(() => void tryToWrite(wanted, killAfter(steps)));
      expectNothingLost(`after ${steps} steps`, keeps);
      seen.add(inspectPackage(inOut()).kind === "package" ? `DIR ${wordIn(inOut())}` : "old place");
      goodOf(restorePackage(newTarget()));
      goodOf(clearLeftovers(newTarget()));
      expect(leftovers(), `after ${steps} steps`).toEqual([]);
      expectNothingLost(`put right after ${steps} steps`, keeps);
    }
    writePackage({ ...wanted, word: "next" });
    expect([wordIn(inOut()), leftovers()]).toEqual(["next", []]);
    expect(ended).toBe(true);
    expect([...seen].sort()).toEqual(["DIR new", "DIR old", "old place"]);
  });

  it("a kill of the repair as well loses nothing", () => {
    const repair = (step?: Step): void => {
      goodOf(restorePackage(newTarget(), diskWith(step)));
      goodOf(clearLeftovers(newTarget(), diskWith(step)));
    };
    /** Kills the writing, then the repair, each after so many steps; what came to its end. */
    const kill = (writing: number, repairing: number): "neither" | "repair" | "writing" => {
      prepare();
      if (runKilled(() => void tryToWrite(wanted, killAfter(writing)))) return "writing";
      if (leftovers().every((name) => name.startsWith(".out.new-"))) return "repair";
      if (runKilled(() => repair(killAfter(repairing)))) return "repair";
      expectNothingLost(`${writing}, ${repairing}`, keeps);
      repair();
      expectNothingLost(`${writing}, ${repairing}, put right`, keeps);
      expect(leftovers(), `${writing}, ${repairing}`).toEqual([]);
      return "neither";
    };
    let kills = 0;
    for (let writing = 0, ended = false; !ended; writing += 1) {
      for (let repairing = 0, done = false; !done; repairing += 5) {
        const outcome = kill(writing, repairing + (writing % 5));
        ended = outcome === "writing";
        done = outcome !== "neither";
        kills += done ? 0 : 1;
      }
    }
    expect(kills).toBeGreaterThan(20);
  });

  /** The system refuses once, or from then on. */
  const refuseAfter = (steps: number, once: boolean): Step =>
    (() => {
      let left = steps;
      return () => {
        left -= 1;
        if (once ? left === -1 : left < 0)
          throw Object.assign(new Error("raw"), { code: "EIO", syscall: "rename", path: "/p" });
      };
    })();

  it.each([true, false])("what is said of a disk that refuses at any step, once: %s, is true", (once) => {
    const said = new Set<string>();
    for (let steps = 0, ended = false; !ended; steps += 1) {
      prepare();
      const made = tryToWrite(wanted, refuseAfter(steps, once));
      const [first] = made.findings;
      const when = `after ${steps} steps: ${first?.message}`;
      if (!made.ok) {
        expect(first?.severity, when).toBe("error");
        const isDisplaced = first?.code === "package-displaced";
        expect(wordIn(isDisplaced ? join(root, ".out.old") : inOut()), when).toBe("old");
        if (isDisplaced) expect(first?.message, when).toContain(`is whole in ${join(root, ".out.old")}`);
        said.add(isDisplaced ? "displaced" : "not written");
      } else {
        expect(wordIn(inOut()), when).toBe("new");
        if (first !== undefined)
          expect([first.severity, first.message], when).toEqual([
            "warning",
            expect.stringMatching(/^the package is written; .*: the disk reports a fault/),
          ]);
        said.add(first === undefined ? "written" : "written, not settled");
        ended = first === undefined;
      }
      expectNothingLost(when, keeps);
      goodOf(restorePackage(newTarget()));
      goodOf(clearLeftovers(newTarget()));
      expect(leftovers(), when).toEqual([]);
      expectNothingLost(`put right ${when}`, keeps);
    }
    const all = ["not written", "written", "written, not settled"];
    expect([...said].sort()).toEqual(once ? all : ["displaced", ...all]);
  });
});

describe("what becomes of the package before", () => {
  it("of another revision: kept as it stood, numbered where its name is taken", () => {
    writePackage({ word: "a" });
    expect(writePackage({ word: "b", revision: "B" })).toMatchObject({
      kept: "superseded/rev-A",
      people: [],
      missing: [],
    });
    expect(writePackage({ word: "a again" })?.kept).toBe("superseded/rev-B");
    expect(writePackage({ word: "c", revision: "C" })?.kept).toBe("superseded/rev-A_2");
    expect(writePackage({ word: "odd", revision: "P/1" })?.kept).toBe("superseded/rev-C");
    expect(readdirSync(inOut("superseded")).sort()).toEqual(["rev-A", "rev-A_2", "rev-B", "rev-C"]);
    expect(
      ["rev-A", "rev-A_2", "rev-B"].map((name) => [
        wordIn(inOut("superseded", name)),
        stateOf(inOut("superseded", name)),
      ]),
    ).toEqual([
      ["a", "whole"],
      ["a", "whole"],
      ["b", "whole"],
    ]);
    expect([wordIn(inOut()), stateOf(inOut()), leftovers()]).toEqual(["odd", "whole", []]);
  });

  it("with what somebody did to it, which goes along", () => {
    prepare();
    const settled = writePackage({ word: "new", revision: "B" });
    expect(settled?.kept).toBe("superseded/rev-A");
    expect(
      settled?.people.map(({ what, path, to, isMaking }) => [
        what,
        path,
        to.slice("superseded/rev-A/".length),
        isMaking,
      ]),
    ).toEqual([
      ["changed", "B2/b.dxf", "B2/b.dxf", true],
      ["changed", "ledger.csv", "ledger.csv", false],
      ["added", "B1/note.txt", "B1/note.txt", false],
      ["added", "photos", "photos", false],
      ["added", "scan.pdf", "scan.pdf", false],
    ]);
    expect(stateOf(inOut())).toBe("whole");
    expect(readFileSync(inOut("superseded/rev-A/photos/1.jpg"), "utf8")).toBe("photo");
    expect(readFileSync(inOut("set-aside/rev-A/ledger.csv"), "utf8")).toBe("changed once");
  });

  it("of the same revision: erased but for what is somebody's, which stays or is set aside", () => {
    prepare();
    rmSync(inOut("B1/a.svg"));
    const settled = writePackage({ word: "new" });
    expect([settled?.kept, settled?.missing]).toEqual([null, ["B1/a.svg"]]);
    expect(settled?.people.map(({ path, to }) => [path, to])).toEqual([
      ["B2/b.dxf", "set-aside/rev-A/B2/b.dxf"],
      ["ledger.csv", "set-aside/rev-A/ledger_2.csv"],
      ["B1/note.txt", "B1/note.txt"],
      ["photos", "photos"],
      ["scan.pdf", "scan.pdf"],
    ]);
    expect(stateOf(inOut())).toEqual({ added: ["B1/note.txt", "photos", "scan.pdf"], missing: [], changed: [] });
    expect(contentsBelow()).toEqual(expect.arrayContaining(PEOPLES));
    expect(contentsBelow().filter((text) => text.startsWith("old"))).toEqual([]);
  });

  it("an added file whose place the new package takes is set aside; a folder that is gone is made for it", () => {
    writePackage({ word: "old" });
    mkdirSync(inOut("B3"));
    writeFileSync(inOut("B3/x.txt"), "x");
    const target = newTarget();
    const started = goodOf(startPackage(target));
    const listed = { kind: "test", path: "B3", bytes: 1, sha256: createHash("sha256").update("3").digest("hex") };
    started.add("B3", bytesOf("3"));
    started.add(
      "summary.json",
      bytesOf(JSON.stringify({ job: { number: JOB, revision: "A" }, bases: [], files: [listed] })),
    );
    const settled = goodOf(started.finish({ replace: false }));
    expect(settled?.people.map(({ path, to }) => [path, to])).toEqual([["B3", "set-aside/rev-A/B3"]]);
    writeFileSync(inOut("set-aside/rev-A/B3/y.txt"), "y");
    writePackage({ word: "last" });
    expect(readFileSync(inOut("set-aside/rev-A/B3/y.txt"), "utf8")).toBe("y");
  });

  it("of another job: what it kept is told apart by its number", () => {
    writePackage({ word: "a" });
    writePackage({ word: "b", revision: "B" });
    writePackage({ word: "other", number: OTHER_JOB, replace: true });
    expect(readdirSync(inOut("superseded"))).toEqual([`${JOB}_rev-A`]);
    expect(wordIn(inOut(`superseded/${JOB}_rev-A`))).toBe("a");
  });
});

describe("folders that are not ours", () => {
  const thesis = (folder: string): string => {
    mkdirSync(join(root, folder), { recursive: true });
    writeFileSync(join(root, folder, "thesis.txt"), "years of work");
    return join(root, folder, "thesis.txt");
  };

  it("beside DIR are left alone: .out.new, .out.erase-mine and any other", () => {
    const mine = [
      ".out.new",
      ".out.new-mine",
      ".out.erase-mine",
      ".out.erase",
      `.out.new-${"a".repeat(24)}`,
      `.out.erase-${"b".repeat(24)}`,
    ].map(thesis);
    writePackage({ word: "a" });
    writePackage({ word: "b", revision: "B" });
    writePackage({ word: "c", revision: "B" });
    expect(mine.filter((path) => !existsSync(path))).toEqual([]);
  });

  it("among the names of a run are left alone, though a package or a lock has such a name too", () => {
    writePackage({ word: "a" });
    const [fresh, lock] = [`.out.new-${"a".repeat(24)}`, `.out.lock-${"b".repeat(24)}`];
    cpSync(inOut(), join(root, fresh), { recursive: true });
    const mine = [thesis(fresh), thesis(lock), join(root, `.out.lock-${"c".repeat(24)}`)];
    writeFileSync(mine[2] ?? "", "my notes");
    writePackage({ word: "b" });
    expect(mine.filter((path) => !existsSync(path))).toEqual([]);
    expect(readdirSync(join(root, fresh)).sort()).toEqual(["summary.json", "thesis.txt"]);
  });

  it("in the place of .out.old are named and left alone; without a package in DIR they are in nobody's way", () => {
    const mine = thesis(".out.old");
    writePackage({ word: "a" });
    const refused = tryToWrite({ word: "b" });
    expect(refused.findings[0]?.message).toMatch(/\.out\.old is in the way, and is not ours: it holds thesis\.txt/);
    expect([existsSync(mine), wordIn(inOut()), stateOf(inOut())]).toEqual([true, "a", "whole"]);
  });

  it("of runs that were killed are removed: unfinished, erased in part, and empty ones", () => {
    writePackage({ word: "a" });
    mkdirSync(join(root, `.out.new-${"1".repeat(24)}/B1`), { recursive: true });
    writeFileSync(join(root, `.out.new-${"1".repeat(24)}/.rodplate-unfinished`), "");
    mkdirSync(join(root, `.out.new-${"2".repeat(24)}`));
    mkdirSync(join(root, `.out.erase-${"3".repeat(24)}/B1`), { recursive: true });
    writeFileSync(join(root, `.out.lock-${"4".repeat(24)}`), '{"host":"a","pid":1}');
    writeFileSync(join(root, `.out.lock-${"5".repeat(24)}`), "");
    writePackage({ word: "b" });
    expect(leftovers()).toEqual([]);
  });
});

describe("withPackageFolder", () => {
  const make = <T>(
    dir: string,
    work: (writer: PackageWriter) => Promise<T>,
    { number = JOB, revision = "A", replace = false } = {},
  ) =>
    withPackageFolder(dir, root, (folder) =>
      folder.write({
        job: { number, revision },
        replace,
        fill: work,
        look: (old, fresh) => [wordIn(old), wordIn(fresh)],
      }),
    );

  it("writes under the lock, also where the folder around DIR is new, and gives back what the work does", async () => {
    const made = await make("deep/er/out", async (writer) => {
      fill(writer, { word: "new" });
      expect(readdirSync(join(root, "deep/er")).sort()).toEqual([
        ".out.lock",
        expect.stringMatching(/^\.out\.new-[0-9a-f]{24}$/),
      ]);
      return 8;
    });
    expect(made).toEqual({ ok: true, value: { made: 8, look: null, settled: null, leftover: null }, findings: [] });
    expect(readdirSync(join(root, "deep/er"))).toEqual(["out"]);
  });

  it("looks at the package before and at the new one, and says what became of the former", async () => {
    writePackage({ word: "old" });
    const made = await make("out", async (writer) => fill(writer, { word: "new", revision: "B" }), { revision: "B" });
    expect(made.ok && made.value).toMatchObject({
      look: ["old", "new"],
      settled: { kept: "superseded/rev-A", job: { number: JOB, revision: "A" } },
    });
  });

  it("refuses the package of another job, unless it is to be erased", async () => {
    writePackage({ word: "old" });
    const other = (replace: boolean) =>
      make("out", async (writer) => fill(writer, { word: "other", number: OTHER_JOB }), { number: OTHER_JOB, replace });
    const refused = await other(false);
    expect([refused.ok, refused.findings.map(({ message }) => message)]).toEqual([
      false,
      [
        `it holds the package of job ${JOB}, and this is job ${OTHER_JOB}: name another folder, or give --replace to erase that package`,
      ],
    ]);
    expect([wordIn(inOut()), leftovers()]).toEqual(["old", []]);
    expect((await other(true)).ok).toBe(true);
    expect([wordIn(inOut()), readdirSync(inOut()).sort()]).toEqual([
      "other",
      ["B1", "B2", "ledger.csv", "summary.json"],
    ]);
  });

  it("is refused by the lock of another process that came first, and leaves it", async () => {
    let begun = false;
    const made = await withPackageFolder("deep/out", root, (folder) => {
      mkdirSync(join(root, "deep"));
      writeFileSync(join(root, "deep/.out.lock"), JSON.stringify({ pid: process.ppid, started: "" }));
      const fillNothing = async (): Promise<void> => {
        begun = true;
      };
      return folder.write({ job: { number: JOB, revision: "A" }, replace: false, fill: fillNothing, look: () => null });
    });
    expect(made).toMatchObject({ ok: false, findings: [{ code: "package-folder", at: { file: "deep/out" } }] });
    expect(made.findings[0]?.message).toContain(`another make or sign (process ${process.ppid}) is writing out`);
    expect([begun, readdirSync(join(root, "deep"))]).toEqual([false, [".out.lock"]]);
  });

  it("does not put in place what was written under a lock that somebody took", async () => {
    writePackage({ word: "old" });
    const made = await make("out", async (writer) => {
      fill(writer, { word: "new" });
      rmSync(join(root, ".out.lock"));
      writeFileSync(join(root, ".out.lock"), JSON.stringify({ pid: process.ppid, started: "", token: "theirs" }));
    });
    expect(made.findings[0]?.message).toMatch(/another make or sign has taken the lock/);
    expect([made.ok, wordIn(inOut()), leftovers()]).toEqual([false, "old", [".out.lock"]]);
  });

  it("tells what the system refuses, stops there, and leaves the earlier package and no lock", async () => {
    writePackage({ word: "old" });
    const made = await make("out", async (writer) => {
      writer.add("first", bytesOf("1"));
      expect(writer.isStopped).toBe(false);
      writer.add("n".repeat(300), bytesOf("2"));
      expect(writer.isStopped).toBe(true);
      writer.add("last", bytesOf("3"));
      const fresh = leftovers().find((name) => name.startsWith(".out.new-")) ?? "";
      expect(readdirSync(join(root, fresh)).sort()).toEqual([".rodplate-unfinished", "first"]);
    });
    expect(made.ok).toBe(false);
    expect(made.findings).toMatchObject([{ code: "package-folder", at: { file: "out" } }]);
    expect(made.findings[0]?.message).toContain("could not be written: a name is too long for this file system (");
    expect([wordIn(inOut()), leftovers()]).toEqual(["old", []]);
  });

  it("lets a bug through, and leaves the earlier package and no lock", async () => {
    writePackage({ word: "old" });
    const bug = make("out", async (writer) => {
      fill(writer, { word: "new" });
      throw new RangeError("a bug");
    });
    await expect(bug).rejects.toThrow(RangeError);
    const unlisted = make("out", async (writer) => {
      fill(writer, { word: "new" });
      writer.add("unlisted", bytesOf(""));
    });
    await expect(unlisted).rejects.toThrow("is not the package that was written");
    expect([wordIn(inOut()), leftovers()]).toEqual(["old", []]);
  });

  it("refuses before the work begins", async () => {
    mkdirSync(inOut());
    writeFileSync(inOut("notes.txt"), "mine");
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

  it("puts the earlier package back before the work, and removes nothing when there is none", async () => {
    writePackage({ word: "old" });
    runKilled(() => void tryToWrite({ word: "new" }, killBefore("rename", 2)));
    expect([existsSync(inOut()), leftovers().length]).toEqual([false, 2]);
    const done = await withPackageFolder("out", root, async () => ({ ok: true, value: 2, findings: [] }));
    expect(done.findings.map(({ severity, message }) => [severity, message])).toEqual([
      ["warning", "an interrupted make had left the earlier package beside it; that one was put back first"],
    ]);
    expect([wordIn(inOut()), leftovers()]).toEqual(["old", [expect.stringMatching(/^\.out\.new-/)]]);
  });
});

/** Kills before the n-th step of that name. */
function killBefore(what: string, n: number): Step {
  let left = n;
  return (step) => {
    if (!step.startsWith(what)) return;
    left -= 1;
    if (left === 0) throw new Killed();
  };
}

describe("DIR is replaced only when it is absent, empty or a package", () => {
  const refusal = (): Finding | null => restorePackage(newTarget()).findings[0] ?? null;

  it("takes an absent and an empty one", () => {
    expect(refusal()).toBeNull();
    mkdirSync(inOut());
    expect(refusal()).toBeNull();
    writePackage({ word: "first" });
    expect([wordIn(inOut()), leftovers()]).toEqual(["first", []]);
  });

  it.each([
    ["a link for a file", () => symlinkSync("a.dxf", inOut("B1/z")), "it holds B1/z, which is a link"],
    ["a link at the top", () => symlinkSync("B1", inOut("z")), "it holds z, which is a link"],
    ["a link for what was kept", () => symlinkSync("B1", inOut("superseded")), "it holds superseded, which is a link"],
    ["no summary", () => rmSync(inOut("summary.json")), "no summary.json"],
    ["a summary of something else", () => writeFileSync(inOut("summary.json"), '{"files":3}'), "is not the summary"],
    ["a summary cut short", () => writeFileSync(inOut("summary.json"), '{"files":[{"pa'), "is not the summary"],
  ])("refuses %s and touches nothing", (_, spoil, message) => {
    writePackage({ word: "old" });
    spoil();
    const before = readdirSync(inOut(), { recursive: true }).sort();
    const fault = refusal();
    expect(fault).toMatchObject({ code: "package-folder", severity: "error", at: { file: "out" } });
    expect(fault?.message).toContain(message);
    expect(readdirSync(inOut(), { recursive: true }).sort()).toEqual(before);
  });

  it("refuses a file, a link, the root and a folder that holds the current one", () => {
    writeFileSync(inOut(), "");
    expect(refusal()?.message).toContain("not a folder");
    rmSync(inOut());
    mkdirSync(join(root, "elsewhere"));
    symlinkSync("elsewhere", inOut());
    expect(refusal()?.message).toContain("symbolic link");
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

  it("a path in a summary that leads out of the package touches nothing there", () => {
    writeFileSync(join(root, "victim.txt"), "mine");
    writePackage({ word: "old" });
    const summary = JSON.parse(readFileSync(inOut("summary.json"), "utf8"));
    const sha256 = createHash("sha256").update("mine").digest("hex");
    summary.files.push({ kind: "test", path: "../victim.txt", bytes: 4, sha256 });
    writeFileSync(inOut("summary.json"), JSON.stringify(summary));
    writePackage({ word: "new" });
    expect(readFileSync(join(root, "victim.txt"), "utf8")).toBe("mine");
  });
});
