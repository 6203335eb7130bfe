/** The pipeline as a function: what it hands out, in what order, and that it repeats itself. */
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import { safeForFileName } from "../../../src/outputs/index.js";
import type { Inputs } from "../../../src/readers/inputs.js";
import type { Build, BuildOptions } from "../../../src/tasks/build.js";
import { build } from "../../../src/tasks/build.js";
import { startOwnSha256 } from "../../../src/tasks/hash.js";
import { numberQuestions } from "../../../src/tasks/number-questions.js";
import { openJob } from "../../../src/tasks/open.js";
import type { OpenedJob } from "../../../src/tasks/opened-job.js";
import { makePackageInParts } from "../../../src/tasks/package.js";
import { makeInputs, makeScheduleInputs } from "../../bench/jobs.js";

const options: BuildOptions = { date: "2026-11-24", version: "0", document: newLeanDocument(), includeHeld: true };
const withText = (text: string): Inputs => ({
  job: "job.yaml",
  files: new Map([...makeInputs(1).files, ["job.yaml", text]]),
});
/** A file of each way in which files come to be: of a piece, of a base, growing, of the job, listing others. */
const few = {
  ...options,
  outputs: ["cut-joined", "sheet-svg", "cut-list-csv", "ledger", "manifest", "summary"],
} as const;
function opened(count: number): OpenedJob {
  const job = openJob(makeInputs(count), options);
  if (!job.ok) throw new Error("the job has faults");
  return job.value;
}
const jobText = (count: number): string => String(makeInputs(count).files.get("job.yaml"));

/** A summary's file without what says that it is sealed, and the seal. */
function unsealed(bytes: Uint8Array | undefined): unknown {
  const { sealed, seal, ...summary } = JSON.parse(new TextDecoder().decode(bytes));
  expect([sealed, String(seal).length]).toEqual([true, 64]);
  return summary;
}

describe("build", () => {
  it("makes the same bytes twice, and the same whole as in parts", () => {
    const [first, second] = [1, 2].map(() => {
      const built = build(makeInputs(3), options);
      const bases = [...built.bases];
      return { bases, end: built.finish() };
    });
    expect(first).toEqual(second);
    const parts = makePackageInParts(numberQuestions(opened(3)), options);
    const bases = [...parts.bases].flatMap((base) => base.parts);
    const documents = [...parts.documents];
    const chunks = [...parts.head, ...bases, ...parts.rest().parts];
    const files = first?.end.files ?? [];
    expect(files.slice(0, documents.length)).toEqual(documents);
    const grown = files.slice(documents.length);
    expect(grown.map(({ kind }) => kind)).toEqual(["ledger", "questions", "manifest", "summary"]);
    for (const { path, bytes } of grown) {
      const joined = Buffer.concat(chunks.filter((part) => part.path === path).map((part) => part.bytes));
      expect(joined.equals(bytes), path).toBe(true);
    }
  });

  it("says in the summary what it says in summary.json, and lists every file but that one", () => {
    const built = build(makeInputs(3), options);
    const bases = [...built.bases];
    const { summary, files } = built.finish();
    const json = files.find(({ path }) => path === "summary.json");
    expect(unsealed(json?.bytes)).toEqual(summary);
    const listed = summary.files.map(({ path }) => path);
    expect([...listed, "summary.json"].sort()).toEqual(files.map(({ path }) => path).sort());
    expect(listed).toEqual(expect.arrayContaining(["engineer/ledger.csv", "engineer/questions.csv", "START-HERE.txt"]));
    for (const { path, bytes, sha256 } of files.filter((file) => file !== json)) {
      expect(summary.files).toContainEqual(expect.objectContaining({ path, bytes: bytes.length, sha256 }));
    }
    expect(bases.map((base) => base.summary)).toEqual(summary.bases);
  });

  it.each([
    ["not at all", (_: Build) => {}],
    ["to the first base", ({ bases: [_first] }: Build) => {}],
    ["to the first base, then whole", ({ bases }: Build) => void [...[...bases].slice(0, 1), ...bases]],
    ["twice", ({ bases }: Build) => void [...bases, ...bases]],
    ["by two at once", ({ bases }: Build) => [...bases].forEach((_, i) => void [...bases][i])],
  ])("finishes alike when the bases were walked %s", (_name, walk) => {
    const whole = build(makeInputs(3), few);
    const bases = [...whole.bases];
    const partly = build(makeInputs(3), few);
    walk(partly);
    expect(partly.finish()).toEqual(whole.finish());
    expect([...partly.bases]).toEqual(bases);
    expect(bases).toHaveLength(3);
  });

  it("finishes once: the second time it gives the same", () => {
    const built = build(makeInputs(2), { ...options, outputs: ["summary"] });
    const [first, second] = [built.finish(), built.finish()];
    expect(second).toBe(first);
    expect(unsealed(second.files[0]?.bytes)).toEqual(second.summary);
  });

  it.each([
    ["in the second base", 4],
    ["in the last file", 8],
  ])("hands nothing out after it failed %s, however often it is asked to finish", (_where, failing) => {
    let hashes = 0;
    const startSha256 = () => {
      hashes += 1;
      if (hashes === failing) throw new Error("no hash");
      return startOwnSha256();
    };
    const built = build(makeInputs(3), { ...options, outputs: ["cut-joined", "cut-r12", "summary"], startSha256 });
    for (let asked = 0; asked < 3; asked += 1) expect(() => built.finish()).toThrow("no hash");
    expect(hashes).toBe(failing);
  });

  it("refuses kinds of outputs that there are not, and a document that was left out", () => {
    const wanted = JSON.parse('["cut-r12", "cut-r13"]');
    expect(() => build(makeInputs(1), { ...options, outputs: wanted })).toThrow(/cut-r13/);
    const { document: _, ...without } = options;
    expect(() => Reflect.apply(build, null, [makeInputs(1), without])).toThrow(/needs a document/);
    expect(() => build(withText("job: 3"), { ...options, document: null })).toThrow(/needs a document/);
  });

  it("refuses at the call what a caller got wrong: a date that is none, drawings without a document", () => {
    for (const date of ["31 Feb", "2026-02-29", "2026-13-01", "2026-1-1", ""])
      expect(() => build(makeInputs(1), { ...options, date }), date).toThrow(RangeError);
    expect(() => build(makeInputs(1), { ...options, date: "2028-02-29" })).not.toThrow();
    expect(() => build(makeInputs(1), { ...options, document: null })).toThrow(/sheet-svg, plan-svg.*needs a document/);
    expect(() => build(makeInputs(1), { ...options, document: null, outputs: ["cut-r12"] })).not.toThrow();
  });

  it("has no base to write when one is at fault, and tells the faults of all of them", () => {
    const text = jobText(4).replaceAll(
      "pattern: { kind: circle, diameter: 16",
      "pattern: { kind: circle, diameter: -1",
    );
    const built = build(withText(text.replace("thickness: 3/16", "thickness: thin")), options);
    expect([...built.bases]).toEqual([]);
    expect(built.findings.filter(({ severity }) => severity === "error").length).toBeGreaterThan(1);
    expect(() => built.finish()).toThrow();
  });

  it("carries name and short hash of the cut files on the sheet", () => {
    const [base] = build(makeInputs(1), options).bases;
    const sheet = new TextDecoder().decode(base?.files.find(({ kind }) => kind === "sheet-svg")?.bytes);
    const cutFiles = base?.files.filter(({ kind }) => kind.startsWith("cut-")) ?? [];
    expect(cutFiles.map(({ kind }) => kind)).toEqual(["cut-joined", "cut-r12"]);
    for (const { path, sha256 } of cutFiles) {
      expect(sheet).toContain(path.slice(path.lastIndexOf("/") + 1));
      expect(sheet).toContain(sha256.slice(0, 12));
    }
  });

  it("makes the same files of a base alone as in the company of others", () => {
    const last = (inputs: Inputs) => [...build(inputs, { ...options, outputs: ["cut-r12"] }).bases].at(-1);
    expect(last(makeInputs(52))).toEqual(last(makeInputs(1, 51)));
  });

  it("makes the same files of a schedule as of a job file", () => {
    const filesOf = (inputs: Inputs) => {
      const built = build(inputs, options);
      return [...built.bases]
        .flatMap(({ files }) => files.map(({ path, sha256 }) => `${path} ${sha256}`))
        .concat(built.finish().files.map(({ sha256 }) => sha256));
    };
    expect(filesOf(makeScheduleInputs(6))).toEqual(filesOf(makeInputs(6)));
  });
});

describe("a revision in a file name", () => {
  it.each([
    ["B", "B"],
    ["  2.1 ", "2.1"],
    ["P/1 b", "P-1-b"],
    ["../../etc", "etc"],
    ["", "none"],
    ["...", "none"],
    ["CON:<>|?*", "CON"],
    ["\u0411", "u411"],
    ["a".repeat(99), "a".repeat(32)],
  ])("%j is %j", (text, safe) => {
    expect(safeForFileName(text)).toBe(safe);
  });
});
