/** What the system refuses is a finding in plain words; what is a bug stays an exception. Codes: errno(3), fs of Node. */
import { spawnSync } from "node:child_process";
import {
  closeSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import {
  attempt,
  attemptReading,
  findFault,
  readBytes,
  readBytesIfThere,
  removeIfPossible,
  writtenWords,
} from "../../../src/cli/file-system.js";
import { fileFault } from "../../../src/cli/findings.js";
import { targetFaults, writeFolder } from "../../../src/cli/folder-writer.js";
import type { Finding } from "../../../src/diagnostics/finding.js";

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "rodplate-files-"));
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

/** A refusal as Node throws it. */
const refused = (code: string): Error =>
  Object.assign(new Error(`${code}: raw`), { code, syscall: "write", path: "/p" });
const raise = (error: unknown): never => {
  throw error;
};

describe("attempt and findFault", () => {
  const tell = (refusal: Parameters<typeof writtenWords>[0]) => fileFault("out", "code", writtenWords(refusal));

  it.each([
    ["ENOSPC", "the disk is full"],
    ["EACCES", "no permission"],
    ["EROFS", "the file system is read-only"],
    ["ENOTDIR", "a part of the path is a file, not a folder"],
    ["EXDEV", "the folder is a mount point and cannot be renamed"],
    ["EODD", "the system refused it (EODD)"],
  ])("tell %s as %s", (code, words) => {
    const fault = { ...{ code: "code", severity: "error", at: { file: "out" } }, message: "" };
    const expected = { ...fault, message: `could not be written: ${words} (/p)` };
    expect(attempt(() => raise(refused(code)), tell)).toEqual({ ok: false, findings: [expected] });
    expect(findFault(() => raise(refused(code)), tell)).toEqual(expected);
  });

  it("give back what comes of a call that is not refused", () => {
    const [good, fault] = [{ ok: true, value: 3, findings: [] } as const, fileFault("a", "b", "c")];
    expect(attempt(() => good, tell)).toBe(good);
    expect([findFault(() => fault, tell), findFault(() => null, tell)]).toEqual([fault, null]);
  });

  it.each([
    ["a bug", new TypeError("x is not a function")],
    ["a code of Node that no file has", Object.assign(new TypeError("callback"), { code: "ERR_INVALID_ARG_TYPE" })],
    ["what is no error", "a text"],
  ])("let %s through", (_, bug) => {
    expect(() => attempt(() => raise(bug), tell)).toThrow(bug instanceof Error ? bug : undefined);
    expect(() => findFault(() => raise(bug), tell)).toThrow(bug instanceof Error ? bug : undefined);
    expect(() => attemptReading(() => raise(bug), "a")).toThrow(bug instanceof Error ? bug : undefined);
  });
});

describe("a file that cannot be read", () => {
  const told = (name: string): unknown => {
    const { ok, findings } = readBytes(join(root, name), name);
    return ok ? "read" : findings.map(({ code, at, message }) => [code, at.file, message]);
  };

  it("is told by what the user called it, in the same words everywhere", () => {
    mkdirSync(join(root, "folder"));
    writeFileSync(join(root, "file"), "");
    symlinkSync("loop", join(root, "loop"));
    expect(told("file")).toBe("read");
    expect(told("gone")).toEqual([["missing-file", "gone", "there is no such file"]]);
    for (const [name, words] of [
      ["folder", "it is a folder; allowed is a file"],
      ["file/a", "a part of the path is a file, not a folder"],
      ["loop", "its symbolic links lead in a circle"],
      ["nul\0", "its name holds a character that no file name can hold"],
      ["a".repeat(300), "a name is too long for this file system"],
    ] as const)
      expect(told(name)).toEqual([["unreadable-file", name, `cannot be read: ${words}`]]);
  });

  it("is told when it is a pipe or a device, and is not opened", () => {
    spawnSync("mkfifo", [join(root, "pipe")]);
    const words = "cannot be read: it is a pipe or a device; allowed is a file on a disk";
    expect(told("pipe")).toEqual([["unreadable-file", "pipe", words]]);
    const device = readBytes("/dev/zero", "/dev/zero");
    expect(device.findings.map(({ message }) => message)).toEqual([words]);
  });

  it("is read up to 32 MB", () => {
    closeSync(openSync(join(root, "just"), "w"));
    truncateSync(join(root, "just"), 32_000_000);
    expect(told("just")).toBe("read");
    truncateSync(join(root, "just"), 32_000_001);
    expect(told("just")).toEqual([["file-too-large", "just", "the file has 33 MB; at most 32 MB are read"]]);
  });

  it("is told before it is read when it is too large", () => {
    closeSync(openSync(join(root, "large"), "w"));
    truncateSync(join(root, "large"), 2 ** 31 + 1);
    expect(told("large")).toEqual([["file-too-large", "large", "the file has 2148 MB; at most 32 MB are read"]]);
  });

  it("is null only where it is not there", () => {
    mkdirSync(join(root, "folder"));
    expect(readBytesIfThere(join(root, "gone"), "gone")).toEqual({ ok: true, value: null, findings: [] });
    expect(readBytesIfThere(join(root, "folder"), "folder").ok).toBe(false);
  });
});

describe("a folder of tables", () => {
  const files = [{ path: "a.csv", bytes: new TextEncoder().encode("a") }];
  const target = (out: string) => ({ out, code: "budget-folder", currentFolder: root });

  it("that cannot be made is a finding, and nothing is left", () => {
    writeFileSync(join(root, "file"), "");
    const fault = writeFolder(files, target("file/out"));
    expect(fault).toMatchObject({ code: "budget-folder", at: { file: "file/out" } });
    expect(fault?.message).toContain("could not be written: a part of the path is a file, not a folder");
    expect(() => removeIfPossible(join(root, "file/out"))).not.toThrow();
  });

  it("is not begun in a place that is taken", () => {
    writeFileSync(join(root, "file"), "");
    mkdirSync(join(root, "free"));
    mkdirSync(join(root, "full/in"), { recursive: true });
    symlinkSync(join(root, "free"), join(root, "link"));
    const messages = (out: string, currentFolder = root) =>
      targetFaults({ ...target(out), currentFolder }).map(({ message }) => message);
    const allowed = "allowed is a folder that is absent or empty";
    expect(messages("file")).toEqual([`is a file; ${allowed}`]);
    expect(messages("file/in")).toEqual([`is a file; ${allowed}`]);
    expect(messages("full")).toEqual([`is not empty; ${allowed}`]);
    expect(messages("link")).toEqual([`is a symbolic link; ${allowed}`]);
    expect(messages(".", join(root, "free"))).toEqual([`is the folder you are in; ${allowed}`]);
    expect([...messages("free"), ...messages("gone"), ...messages("full/in")]).toEqual([]);
  });

  it("of which a bug stops the making leaves nothing beside it", () => {
    const stop = (function* () {
      yield { path: "a.csv", bytes: new TextEncoder().encode("a") };
      throw new RangeError("a bug");
    })();
    expect(() => writeFolder(stop, target("out"))).toThrow(RangeError);
    expect(readdirSync(root)).toEqual([]);
  });

  it("takes nothing away that is not its own: folders with the names of old temporary ones stay", () => {
    for (const name of [".out.new", ".out.old", ".out.new-1"]) {
      mkdirSync(join(root, name));
      writeFileSync(join(root, name, "thesis.txt"), "years");
    }
    expect(writeFolder(files, target("out"))).toBeNull();
    expect(readdirSync(root).sort()).toEqual([".out.new", ".out.new-1", ".out.old", "out"]);
    for (const name of [".out.new", ".out.old", ".out.new-1"])
      expect(readFileSync(join(root, name, "thesis.txt"), "utf8")).toBe("years");
  });

  it("of two that are written at once one is whole and the other is told: they never mix", () => {
    const inner: (Finding | null)[] = [];
    const outer = (function* () {
      yield { path: "a.csv", bytes: new TextEncoder().encode("outer") };
      inner.push(writeFolder([{ path: "b.csv", bytes: new TextEncoder().encode("inner") }], target("out")));
      yield { path: "c.csv", bytes: new TextEncoder().encode("outer") };
    })();
    const fault = writeFolder(outer, target("out"));
    expect(inner).toEqual([null]);
    expect(fault?.message).toContain("something else was written there meanwhile");
    expect([readdirSync(root), readdirSync(join(root, "out"))]).toEqual([["out"], ["b.csv"]]);
  });

  it("in which two files would have one name is not written", () => {
    const twice = [...files, ...files];
    expect(writeFolder(twice, target("out"))?.message).toContain("it is there already");
    expect(readdirSync(root)).toEqual([]);
  });
});
