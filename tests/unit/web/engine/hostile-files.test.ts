/** Files of any kind handed to the page: each gets an answer, or is refused in plain sentences; none is a fault of the program. */
import { cpSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { strToU8, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { printable } from "../../../../src/diagnostics/printable.js";
import { compareSources } from "../../../../src/web/engine/compare-work.js";
import type { Dropped } from "../../../../src/web/engine/dropped.js";
import { proveDropped } from "../../../../src/web/engine/proof-work.js";
import type { JobFiles } from "../../../../src/web/engine/protocol.js";
import { Refused } from "../../../../src/web/engine/refused.js";
import { findRegister } from "../../../../src/web/engine/register-work.js";
import { signPackage } from "../../../../src/web/engine/sign-work.js";
import { surveyPointsOf } from "../../../../src/web/engine/survey-work.js";
import { filesBelow } from "../../../archive-of.js";
import { newFolder, runProgram } from "../../../cli/program.js";
import { DAY, givenJob } from "./given-job.js";

const JOB = fileURLToPath(new URL("../../../stress/jobs/one-base-plan.yaml", import.meta.url));

let made: Readonly<Record<string, Uint8Array>> = {};
let open: JobFiles = { job: "", files: new Map() };
beforeAll(async () => {
  const folder = newFolder();
  cpSync(JOB, join(folder, "job.yaml"));
  await runProgram(folder, ["make", "job.yaml", "--out", "made"]);
  made = Object.fromEntries(filesBelow(join(folder, "made")));
  open = givenJob(folder, "job.yaml");
});

/** The archive with the file at a path marked as a symbolic link of a Unix system (APPNOTE 4.4.2, 4.4.15). */
function withLink(zip: Uint8Array, path: string): Uint8Array {
  const bytes = Buffer.from(zip);
  const name = Buffer.from(path);
  for (let at = 0; at + 46 < bytes.length; at += 1) {
    const isEntry = bytes.readUInt32LE(at) === 0x02014b50;
    if (!isEntry || !bytes.subarray(at + 46, at + 46 + name.length).equals(name)) continue;
    bytes[at + 5] = 3;
    bytes.writeUInt32LE(0xa1ff0000, at + 38);
  }
  return bytes;
}

const summary = (): string => new TextDecoder().decode(made["summary.json"]);
const withSummary = (text: string): Uint8Array => zipSync({ ...made, "summary.json": strToU8(text) });
const below = (folder: string) => Object.entries(made).map(([path, bytes]) => [`${folder}/${path}`, bytes] as const);
const cut = (): string => Object.keys(made).find((path) => path.startsWith("cut/") && path.endsWith(".dxf")) ?? "";

const HOSTILE: Readonly<Record<string, () => Uint8Array | string>> = {
  "empty.dxf": () => "",
  "empty.zip": () => "",
  "summary.json": () => "",
  "text.txt": () => "hello\u202e\u0007 world <script>alert(1)</script>",
  "nul.dxf": () => new Uint8Array(4096),
  "noise.dxf": () => Uint8Array.from({ length: 100_000 }, (_, i) => (i * 7919 + (i >> 3)) & 255),
  "picture.png": () => Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 1, 2, 3]),
  "huge.dxf": () => new Uint8Array(33_000_000),
  "deep.json": () => "[".repeat(200_000),
  "deep.yaml": () => `a: ${"[".repeat(100_000)}`,
  "alias.yaml": () =>
    `a: &a [1,1,1,1]\n${[..."bcdefghijk"].map((key, i) => `${key}: &${key} [${`*${"abcdefghij"[i]},`.repeat(9)}1]`).join("\n")}`,
  "wrong.json": () => JSON.stringify({ job: 1, bases: "x", files: null }),
  "proto.json": () => `{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}`,
  "garbage.zip": () => zipSync({ "summary.json": strToU8("{]") }),
  "deep.zip": () => zipSync({ "summary.json": strToU8(`{"bases":[],"files":[],"job":${"[".repeat(100_000)}`) }),
  "bomb.zip": () => zipSync({ "summary.json": new Uint8Array(60_000_000) }),
  "out.zip": () => zipSync({ "summary.json": strToU8("{}"), "../escape.dxf": new Uint8Array(3) }),
  "absolute.zip": () => zipSync({ "summary.json": strToU8("{}"), "/etc/escape.dxf": new Uint8Array(3) }),
  "drive.zip": () => zipSync({ "summary.json": strToU8("{}"), "C:\\escape.dxf": new Uint8Array(3) }),
  "link.zip": () => withLink(zipSync(made), "summary.json"),
  "link-cut.zip": () => withLink(zipSync(made), cut()),
  "half.zip": () => zipSync(made).subarray(0, 5000),
  "listed-out.zip": () => withSummary(summary().replace(/"path": ?"cut\//g, '"path": "../../')),
  "no-number.zip": () => withSummary(summary().replace(/"bytes": ?\d+/g, '"bytes": 1e999')),
  "in-another.zip": () => zipSync({ "made.zip": zipSync(made) }),
  "two.zip": () => zipSync(Object.fromEntries([...below("a"), ...below("b")])),
  "job.yaml": () => "job: 5",
  "points.csv": () => "x,1e400,NaN,Infinity,\n".repeat(10_000),
  "long.csv": () => `P,${"9".repeat(5000)},1,1,x\n`,
};

const NOTHING = { unit: "m", order: "PNEZD", accuracy: null, height: null, within: null };
const noTell = (): void => {};

const WORK: Readonly<Record<string, (dropped: Dropped) => Promise<unknown>>> = {
  proof: (dropped) => proveDropped({ dropped: [dropped], against: null, date: DAY }, noTell),
  compare: (dropped) =>
    compareSources(
      {
        old: { kind: "dropped", files: [dropped] },
        ...{ fresh: { kind: "dropped", files: [{ name: "new.json", blob: new Blob([summary()]) }] }, date: DAY },
      },
      noTell,
    ),
  sign: (dropped) => signPackage({ dropped, by: "A", note: "", date: DAY, instant: `${DAY}T00:00:00Z` }, noTell),
  register: (dropped) => findRegister(dropped, noTell),
  survey: (points) => surveyPointsOf({ files: open, date: DAY, points, options: NOTHING, all: false }, noTell),
};

const NO_PLAIN_WORDS = /undefined|\[object|TypeError|RangeError/;

/** Made once. */
const blobs = new Map<string, Blob>();
function blobOf(name: string): Blob {
  const known = blobs.get(name);
  if (known !== undefined) return known;
  const content = HOSTILE[name]?.() ?? "";
  const blob = new Blob([typeof content === "string" ? content : new Uint8Array(content)]);
  blobs.set(name, blob);
  return blob;
}

/** What is refused; what became of it where it is not. */
async function endOf(work: Promise<unknown>): Promise<{ readonly why: readonly string[]; readonly isDone: boolean }> {
  try {
    await work;
    return { why: [], isDone: true };
  } catch (error) {
    if (error instanceof Refused) return { why: error.why, isDone: false };
    throw error;
  }
}

describe.each(Object.keys(WORK))("%s", (kind) => {
  it.each(Object.keys(HOSTILE))("answers, or says why not: %s", async (name) => {
    const { why, isDone } = await endOf(WORK[kind]?.({ name, blob: blobOf(name) }) ?? Promise.resolve());
    expect(why.length > 0).toBe(!isDone);
    for (const words of why) {
      expect(words).not.toMatch(NO_PLAIN_WORDS);
      expect(printable(words)).toBe(words);
    }
    expect({}).not.toHaveProperty("polluted");
    if (kind === "sign") expect(isDone).toBe(false);
  });
});
