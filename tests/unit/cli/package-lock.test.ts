/** Locks: of a process that is there, of one that is not, of another machine; and several that take over one at once. */
import { execFileSync, spawn } from "node:child_process";
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Lock } from "../../../src/cli/package-lock.js";
import { lockTarget } from "../../../src/cli/package-lock.js";
import { targetOf } from "../../../src/cli/package-target.js";
import type { Outcome } from "../../../src/diagnostics/finding.js";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "rodplate-lock-"));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function goodOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join("; "));
  return outcome.value;
}

/** One run's try. */
const tryLock = (): Outcome<Lock> => lockTarget(goodOf(targetOf("out", root)));
const file = (): string => join(root, ".out.lock");
const leave = (holder: object | string): void =>
  writeFileSync(file(), typeof holder === "string" ? holder : JSON.stringify(holder));
const refusal = (): string => {
  const refused = tryLock();
  expect(refused).toMatchObject({ ok: false, findings: [{ code: "package-folder", at: { file: "out" } }] });
  return refused.findings[0]?.message ?? "";
};

/** Greater than any process number of Linux (proc(5), pid_max). */
const NO_PROCESS = 2 ** 30;
const HERE = { host: hostname(), started: "" };

describe("a lock", () => {
  it("names host, process and a token of the run, and is removed when given back", () => {
    const lock = goodOf(tryLock());
    expect(JSON.parse(readFileSync(file(), "utf8"))).toMatchObject({
      host: hostname(),
      pid: process.pid,
      token: expect.stringMatching(/^[0-9a-f]{24}$/),
    });
    expect(lock.isOurs()).toBe(true);
    lock.giveBack();
    expect(readdirSync(root)).toEqual([]);
  });

  it("that somebody else has put in the place of ours is not removed", () => {
    const lock = goodOf(tryLock());
    leave({ ...HERE, pid: process.ppid, token: "theirs" });
    expect(lock.isOurs()).toBe(false);
    lock.giveBack();
    expect(readFileSync(file(), "utf8")).toContain("theirs");
  });

  it("of a process that is there is respected, with what to do", () => {
    leave({ ...HERE, pid: process.ppid, token: "theirs" });
    expect(refusal()).toBe(
      `another make or sign (process ${process.ppid}) is writing out; if it is not running any more, remove ${file()}`,
    );
  });

  it("of another host is respected whatever runs here, with what to do", () => {
    for (const pid of [process.pid, process.ppid, NO_PROCESS]) {
      leave({ host: "drawing-office-2", pid, started: "1", token: "theirs" });
      expect(refusal()).toBe(
        `another make or sign (process ${pid} on drawing-office-2) is writing out; look there, and if it is not running any more, remove ${file()}`,
      );
    }
  });

  it("of another space of process numbers is respected: what runs there cannot be seen", (context) => {
    if (!existsSync("/proc/self/ns/pid")) context.skip();
    leave({ ...HERE, space: "pid:[1]", pid: NO_PROCESS, token: "theirs" });
    expect(refusal()).toContain(`process ${NO_PROCESS} in another container of this machine`);
  });

  it.each([
    ["a process that is gone", { ...HERE, pid: NO_PROCESS, token: "theirs" }],
    [
      "a process of our own number, of an earlier run, as in a container that was started again",
      { ...HERE, pid: process.pid, token: "theirs" },
    ],
    ["a program that named no host, gone", { pid: NO_PROCESS, started: "" }],
    ["nobody: killed before it could write its name", ""],
    ["nobody that can be read", "{"],
    ["no process number", { ...HERE, pid: -1, token: "" }],
  ])("of %s is taken over", (_, holder) => {
    leave(holder);
    const lock = goodOf(tryLock());
    expect([lock.isOurs(), readdirSync(root)]).toEqual([true, [".out.lock"]]);
    lock.giveBack();
    expect(readdirSync(root)).toEqual([]);
  });

  it.each<[string, () => void]>([
    ["a folder", () => mkdirSync(join(file(), "thesis"), { recursive: true })],
    ["a file of somebody's", () => leave("my notes")],
    ["a JSON file of somebody's", () => leave({ name: "notes" })],
    ["a link to a file of somebody's", () => symlinkSync("/etc/hostname", file())],
    ["a link that leads nowhere", () => symlinkSync("nowhere", file())],
    ["a pipe", () => execFileSync("mkfifo", [file()])],
    ["a large file", () => writeFileSync(file(), `{"host":"${" ".repeat(5000)}`)],
  ])("that is none, but %s, is named and left where it is", (_, put) => {
    put();
    const before = lstatSync(file());
    expect(refusal()).toBe(
      `${join(root, "out")} is written under a lock beside it, and ${file()} is in the way, and is no lock of ours; move it away and try again`,
    );
    expect([lstatSync(file()).ino, readdirSync(root)]).toEqual([before.ino, [".out.lock"]]);
  });

  it("of a process whose number another one has now is taken over, where the system tells start times", (context) => {
    if (!existsSync("/proc/self/stat")) context.skip();
    leave({ ...HERE, pid: process.ppid, started: "1", token: "theirs" });
    goodOf(tryLock()).giveBack();
  });
});

/** Takes the lock, stays a moment in a place where only one may be, and gives the lock back. Ends with 9 where two were in it. */
const CONTENDER = `
  import { rmSync, writeFileSync } from "node:fs";
  const [, cli, root] = process.argv;
  const { lockTarget } = await import(cli + "package-lock.js");
  const { targetOf } = await import(cli + "package-target.js");
  process.stdout.write("ready");
  await new Promise((resolve) => process.stdin.once("data", resolve));
  const lock = lockTarget(targetOf("out", root).value);
  if (!lock.ok) process.exit(2);
  try { writeFileSync(root + "/inside", "", { flag: "wx" }); } catch { process.exit(9); }
  await new Promise((resolve) => setTimeout(resolve, 150));
  rmSync(root + "/inside");
  lock.value.giveBack();
  process.exit(0);
`;
const CLI = fileURLToPath(new URL("../../../dist/cli/", import.meta.url));

/** Starts contenders, lets them go at once, and tells their exit codes. */
async function contend(count: number): Promise<readonly (number | null)[]> {
  const children = Array.from({ length: count }, () =>
    spawn(process.execPath, ["--input-type=module", "-e", CONTENDER, CLI, root], {
      stdio: ["pipe", "pipe", "inherit"],
    }),
  );
  await Promise.all(children.map(({ stdout }) => new Promise((resolve) => stdout.once("data", resolve))));
  const ended = children.map((child) => new Promise<number | null>((resolve) => child.on("exit", resolve)));
  for (const { stdin } of children) stdin.end("go");
  return Promise.all(ended);
}

it("of a dead process is taken by one of several that try at once", { timeout: 60_000 }, async () => {
  for (let round = 0; round < 4; round += 1) {
    leave({ ...HERE, pid: NO_PROCESS, token: "dead" });
    const codes = await contend(5);
    expect(codes.filter((code) => code !== 0 && code !== 2)).toEqual([]);
    expect(codes).toContain(0);
    expect(readdirSync(root)).toEqual([]);
  }
});
