/** The job file of a sheet: lines to fill in that can be uncommented as they stand, and bases that read back. */
import { describe, expect, it } from "vitest";
import { toPlain } from "../../../../src/job/document.js";
import { readAsForm } from "../../../../src/outputs/read-as.js";
import type { SourceNode } from "../../../../src/readers/source.js";
import { readYaml } from "../../../../src/readers/yaml.js";
import type { SheetReading } from "../../../../src/tasks/read.js";
import { namingReadFrom, writeJobAgain, writeNewJob } from "../../../../src/tasks/read-job.js";
import { readAsCase } from "../../../read-as-case.js";

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

function plain(yaml: string): unknown {
  const read = readYaml(yaml, "job.yaml");
  if (!read.ok) throw new Error(`${JSON.stringify(read.findings)}\n${yaml}`);
  return toPlain(read.value);
}

function nodeOf(yaml: string): SourceNode {
  const read = readYaml(yaml, "bases");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

const BASE = nodeOf("template: {}\nmark: B1\nrods: { diameter: 1-1/4, grade: 55 }\nbasePlate: { washer: {} }\n");

function readingOf(changes: Partial<SheetReading> = {}): SheetReading {
  return {
    ...{ unit: "in", unitBecause: `an inch sign, "1"" in Bases!E7`, bases: [BASE], findings: [] },
    ...{ form: readAsForm(readAsCase, "in"), isUnderstood: false },
    ...changes,
  };
}

const NEW = { name: "job.yaml", schema: "../templates/job.schema.json", file: "bases.xlsx" };
const asked = (): string => text(writeNewJob(NEW, readingOf()));

describe("a new job with questions", () => {
  it("has a line for each answer, under the key that holds it", () => {
    expect(asked()).toContain(`readFrom:
  file: bases.xlsx
  sheet: Bases
  columns:
    # 1. does "SPACING" mean from rod to rod, or from the first rod to the last? (E3)
    # SPACING: Pitch X   # from rod to rod
    # SPACING: Overall X   # from the first to the last
  cells:
    # 2. what does 11/4 mean? (F5, F6)
    # F5: 1-1/4   # a dash is missing
    # F6: 1-1/4
    # F5: 2-3/4   # as it stands
    # F6: 2-3/4

defaults:
  template:
    # 3. the sheet gives no thickness of the templates
    # thickness:   # the plate that they are cut from
`);
  });

  it("is a job that can be read before anything is answered, and has no bases", () => {
    expect(plain(asked())).toEqual({
      job: { status: "preliminary" },
      ...{ units: "in", rules: "us", shop: "plasma" },
      readFrom: { file: "bases.xlsx", sheet: "Bases" },
      defaults: {},
    });
  });

  it("takes the answers by the sign # alone", () => {
    const answered = asked()
      .replace("# SPACING: Pitch X", "SPACING: Pitch X")
      .replace("# F5: 1-1/4", "F5: 1-1/4")
      .replace("# F6: 1-1/4", "F6: 1-1/4")
      .replace("# thickness:", "thickness: 1/4");
    expect(plain(answered)).toMatchObject({
      readFrom: { columns: { SPACING: "Pitch X" }, cells: { F5: "1-1/4", F6: "1-1/4" } },
      defaults: { template: { thickness: "1/4" } },
    });
  });

  it("asks for the unit where nothing proves it", () => {
    const question = {
      ...{ cells: [], text: "inches or millimetres?" },
      choices: ["units: in", "units: mm"].map((line) => ({ line, means: "" })),
    };
    const form = { ...readAsForm({ ...readAsCase, lines: [], questions: [question] }, ""), sheet: "" };
    const written = text(writeNewJob(NEW, readingOf({ unit: null, unitBecause: "", form })));
    expect(written).toContain("\n# 1. inches or millimetres?\n# units: in\n# units: mm\n");
    expect(plain(written.replace("# units: mm", "units: mm"))).toMatchObject({ units: "mm" });
  });

  it("stays a job whatever an engineer's cells hold", () => {
    const question = {
      ...{ cells: ["A\u0007!E7"], text: 'what is "a\nb: [c" # {?' },
      choices: [
        { line: `columns: { "a: b # c\\n": Qty }`, means: "x\ny: z" },
        { line: "not: [yaml", means: "" },
        { line: "columns: { '- a': '@b' }", means: "" },
      ],
    };
    const form = readAsForm({ ...readAsCase, file: "a: b #.csv", questions: [question] }, "in");
    const written = text(writeNewJob({ ...NEW, file: "a: b #.csv", name: "job\n.yaml" }, readingOf({ form })));
    expect(plain(written)).toMatchObject({ readFrom: { file: "a: b #.csv" } });
    expect(plain(written.replace(/# (?="- a")/, ""))).toMatchObject({ readFrom: { columns: { "- a": "@b" } } });
  });
});

describe("bases", () => {
  const understood = readingOf({ isUnderstood: true, form: readAsForm({ ...readAsCase, questions: [] }, "in") });

  it("stand below the marker in the order of a job, without groups of keys that hold nothing", () => {
    const written = text(writeNewJob(NEW, understood));
    expect(written).toMatch(/\nbases:\n {2}- mark: B1\n {4}rods: \{ diameter: 1-1\/4, grade: 55 \}\n$/);
  });

  it("are written anew under a person's part that stays as it is", () => {
    const own = new TextEncoder().encode("# mine\r\nunits:   in\r\n\r\n");
    const again = writeJobAgain(own, "job.yaml", understood);
    expect(text(again).startsWith("# mine\r\nunits:   in\r\n\r\n#### ")).toBe(true);
    expect(plain(text(again))).toMatchObject({ units: "in", bases: [{ mark: "B1" }] });
  });

  it("give way to what is still asked, as remarks", () => {
    const again = text(writeJobAgain(new TextEncoder().encode("units: in\n"), "job.yaml", readingOf()));
    expect(again).toContain("#   readFrom:\n#     columns:\n#       # 1. does");
    expect(again).toContain("\n#       SPACING: Pitch X   # from rod to rod\n");
    expect(again).toContain("\n#   defaults:\n#     template:\n");
    expect(plain(again)).toEqual({ units: "in" });
  });
});

describe("a job that names its schedule", () => {
  it.each([
    ["schedule: a.csv # as sent\nrules: us\n", "readFrom:\n  file: a.csv # as sent\nrules: us\n"],
    ["a: 1\nschedule:\n  file: a.xlsx\n  sheet: B # two\n", "a: 1\nreadFrom:\n  file: a.xlsx\n  sheet: B # two\n"],
    ["schedule: { file: a.xlsx, sheet: B }\r\nb: 2\r\n", "readFrom: { file: a.xlsx, sheet: B }\r\nb: 2\r\n"],
  ])("%j names readFrom instead, every other byte as it is", (before, after) => {
    expect(namingReadFrom(before)).toBe(after);
    expect(plain(after)).toMatchObject({ readFrom: { file: expect.stringMatching(/^a\./) } });
  });

  it("is left alone where the key stands in brackets", () => {
    expect(namingReadFrom('{ "schedule": "a.csv" }\n')).toBeNull();
    expect(namingReadFrom("bases: []\n")).toBeNull();
  });
});
