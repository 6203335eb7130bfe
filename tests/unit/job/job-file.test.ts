/** A job file that was parsed beforehand stands for its text. */
import { describe, expect, it } from "vitest";
import { readJob, readJobFile, requestedFiles } from "../../../src/job/index.js";
import type { InputFile } from "../../../src/readers/inputs.js";
import { inputsOf, withBase } from "./files.js";

const options = { date: "2026-01-01" };
const handedIn = (job: InputFile) => {
  const inputs = inputsOf("");
  return { ...inputs, files: new Map<string, InputFile>([...inputs.files, ["job.yaml", job]]) };
};

describe("a job file", () => {
  it("is read as its text would be, without its text", () => {
    const text = withBase({});
    const parsed = { ...readJobFile(text, "job.yaml"), content: "{ no yaml" };
    const read = readJob(handedIn(parsed), options);
    expect(read.ok).toBe(true);
    expect(read).toEqual(readJob(inputsOf(text), options));
  });

  it("tells the same faults at the same places", () => {
    for (const text of ["a: [1", "- 1", "", withBase({ mark: "" }), withBase({ pattern: null })]) {
      const read = readJob(handedIn(readJobFile(text, "job.yaml")), options);
      expect(read.findings.length).toBeGreaterThan(0);
      expect(read).toEqual(readJob(inputsOf(text), options));
    }
  });

  it("knows the files that it names, as its inputs do", () => {
    const text = `${withBase({})}shop: own.yaml\nschedule: { file: s.xlsx, sheet: Bases }\nplacements: p.csv\n`;
    const file = readJobFile(text, "job.yaml");
    expect(file.requests.map(({ kind, name, relativeTo }) => [kind, name, relativeTo])).toEqual([
      ["shop", "own.yaml", "job"],
      ["schedule", "s.xlsx", "job"],
      ["placements", "p.csv", "job"],
    ]);
    expect(requestedFiles(handedIn(file))).toEqual(file.requests);
    expect(requestedFiles(inputsOf(text))).toEqual(file.requests);
  });

  it("names none where it cannot be read", () => {
    expect(readJobFile("a: [1", "job.yaml").requests).toEqual([]);
    expect(requestedFiles({ job: "other.yaml", files: new Map() })).toEqual([]);
  });

  it("may be named by itself as its schedule, and is then read as text", () => {
    const text = 'job: { number: "1" }\nunits: in\nschedule: job.yaml\n';
    const read = readJob(handedIn(readJobFile(text, "job.yaml")), options);
    expect(read.findings.map(({ code }) => code)).toEqual(["no-headings"]);
    expect(read).toEqual(readJob(inputsOf(text), options));
  });
});
