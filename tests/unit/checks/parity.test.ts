import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../../src/checks/index.js";
import { RULE_SEVERITIES } from "../../../src/job/severities.js";

const stems = (folder: string, ending: string) =>
  readdirSync(new URL(folder, import.meta.url))
    .filter((name) => name.endsWith(ending))
    .map((name) => name.slice(0, -ending.length))
    .sort();

/** Tests in this folder that are about the runner, not about one rule. */
const NOT_RULES = ["pairs", "parity", "question", "run"];
/** Ids of the contract whose rows come with the plan. */
const LATER = ["look-alike", "wrong-placement"];

describe("rules", () => {
  const ids = rules.map(({ id }) => id).sort();

  it("are the files of the folder, each with a test of its name", () => {
    expect(stems("../../../src/checks/rules/", ".ts")).toEqual(ids);
    expect(stems("./", ".test.ts").filter((name) => !NOT_RULES.includes(name))).toEqual(ids);
  });

  it("are every public rule id, with its severity", () => {
    const known = Object.keys(RULE_SEVERITIES).filter((id) => !LATER.includes(id));
    expect(ids).toEqual(known.sort());
    expect(
      rules.filter(({ id, severity }) => RULE_SEVERITIES[id as keyof typeof RULE_SEVERITIES] !== severity),
    ).toEqual([]);
  });
});
