import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { jobRules, ruleSeverities, rules } from "../../../src/checks/index.js";
import { surveyRules } from "../../../src/survey/rules.js";
import { KEYS } from "../../takes-case.js";

const stems = (folder: string, ending: string) =>
  readdirSync(new URL(folder, import.meta.url))
    .filter((name) => name.endsWith(ending))
    .map((name) => name.slice(0, -ending.length))
    .sort();

/** Tests in this folder that are about the runner, not about one rule. */
const NOT_RULES = [
  "digest",
  "answers",
  "clear-distance",
  "neighbours",
  "pairs",
  "figures",
  "given-by",
  "parity",
  "question",
  "results",
  "run",
  "slips",
];

describe("rules", () => {
  const ids = rules.map(({ id }) => id).sort();
  const jobIds = jobRules.map(({ id }) => id).sort();
  const all = [...ids, ...jobIds].sort();

  it("are the files of the folder, each with a test of its name", () => {
    expect(stems("../../../src/checks/rules/", ".ts")).toEqual(ids);
    expect(stems("../../../src/checks/job-rules/", ".ts")).toEqual(jobIds);
    expect(stems("./", ".test.ts").filter((name) => !NOT_RULES.includes(name))).toEqual(all);
  });

  it("name keys of the job file that they take, each once said", () => {
    for (const { id, takes } of rules) expect(takes.length, id).toBeGreaterThan(0);
    const known = new Set(Object.keys(KEYS).flatMap((key) => [key, `groups.${key}`]));
    const ofShape = /^(basePlate|concrete)\.(y|diameter|corner)$|^basePlate\.from$/;
    for (const { id, takes } of [...rules, ...jobRules]) {
      expect(
        takes.filter((key) => !known.has(key) && !ofShape.test(key)),
        id,
      ).toEqual([]);
    }
  });

  it("have names in plain words: short, each its own, and no id", () => {
    const names = [...rules, ...jobRules].map(({ plainName }) => plainName);
    expect(new Set(names).size).toBe(names.length);
    for (const name of [...names, ...surveyRules.map(({ plainName }) => plainName)]) {
      expect(name).toMatch(/^[a-z][a-z ,-]{2,27}$/);
      expect(name.replaceAll("base-plate", "base plate"), "trade words have no hyphens").not.toContain("-");
    }
  });

  it("are what a job may raise, each by its own severity", () => {
    expect(Object.keys(ruleSeverities).sort()).toEqual(all);
    for (const { id, severity } of [...rules, ...jobRules]) expect(ruleSeverities[id], id).toBe(severity);
  });

  // The public severities, as README and the description of summary.json promise them to other programs.
  it.each([
    [
      "stop",
      "hole-web hole-edge seat-on-plate nut-room template-in-form template-height cut-web pattern-match control-residual control-closure hole-spacing rod-on-base-plate rod-on-concrete table-size stock-thickness segment-joint segment-bolts lower-template lower-template-height",
    ],
    [
      "ask",
      "base-plate-hole base-plate-edge washer-cover washer-on-plate washer-room placing-clearance rod-spacing rod-cover projection grout-gap rod-length rod-count neighbour-rods plate-elevation group-spacing line-accumulation rod-grade rod-thread rod-bend rod-end-plate rod-coating base-plate-web length-slip grid-slip elevation-range lower-template-cover",
    ],
    [
      "advise",
      "rod-threading template-hole rod-play template-size base-plate-grout-hole cut-hole marks-room wrong-placement key look-alike neighbour-templates neighbour-concrete base-off-grid base-turn grid-diagonal setting-out-elevation",
    ],
  ] as const)("that hold by %s stay so", (severity, ids) => {
    expect(all.filter((id) => ruleSeverities[id] === severity)).toEqual(ids.split(" ").sort());
  });
});
