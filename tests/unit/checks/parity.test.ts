import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { jobRules, rules } from "../../../src/checks/index.js";
import { RULE_SEVERITIES } from "../../../src/job/model/severities.js";

const stems = (folder: string, ending: string) =>
  readdirSync(new URL(folder, import.meta.url))
    .filter((name) => name.endsWith(ending))
    .map((name) => name.slice(0, -ending.length))
    .sort();

/** Tests in this folder that are about the runner, not about one rule. */
const NOT_RULES = ["clear-distance", "neighbours", "pairs", "parity", "question", "run"];

describe("rules", () => {
  const ids = rules.map(({ id }) => id).sort();
  const jobIds = jobRules.map(({ id }) => id).sort();
  const all = [...ids, ...jobIds].sort();

  it("are the files of the folder, each with a test of its name", () => {
    expect(stems("../../../src/checks/rules/", ".ts")).toEqual(ids);
    expect(stems("../../../src/checks/job-rules/", ".ts")).toEqual(jobIds);
    expect(stems("./", ".test.ts").filter((name) => !NOT_RULES.includes(name))).toEqual(all);
  });

  it("are every public rule id, with its severity", () => {
    const known = Object.keys(RULE_SEVERITIES);
    expect(all).toEqual(known.sort());
    expect(
      [...rules, ...jobRules].filter(
        ({ id, severity }) => RULE_SEVERITIES[id as keyof typeof RULE_SEVERITIES] !== severity,
      ),
    ).toEqual([]);
  });
});
