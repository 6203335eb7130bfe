import { describe, expect, it } from "vitest";
import { rules, runChecks } from "../../../src/checks/index.js";
import { given } from "../../../src/job/model/job.js";
import type { Changes } from "./context.js";
import { contextOf, inch, questionText } from "./context.js";

function questionOf(rule: string, changes: Changes): string {
  const context = contextOf(changes);
  const row = runChecks(context).find((candidate) => candidate.rule === rule && candidate.status === "fail");
  if (row === undefined) throw new Error(`${rule} does not fail`);
  return questionText(row, context);
}

const small = given({ shape: "round", size: inch(2.5), thickness: given(inch(0.5), "job") } as const, "job");

describe("questions", () => {
  it("name mark, figure, limit and clause, and ask", () => {
    expect(questionOf("washer-cover", { group: { washer: small } })).toBe(
      "Base B1 (quantity 6), A1: the washer on the base plate is 2-1/2 in; Design Guide 1, 2nd ed., s.2.6: W >= 2 H - d, " +
        "asks for at least 2-7/8 in (round washer 2-1/2 against 2 x hole 2-1/16 - rod 1-1/4). What is required here?",
    );
  });

  it("count what is counted", () => {
    const pattern = { kind: "circle", diameter: inch(12), count: 3, start: { kind: "on-axis" } } as const;
    const text = questionOf("rod-count", { group: { pattern } });
    expect(text).toContain("base: the number of anchor rods is 3; 29 CFR 1926, 1926.755(a)(1), asks for at least 4");
  });

  it("say where a limit is geometry", () => {
    expect(questionOf("grout-gap", {})).toContain("geometry (levelling nut + washer + room");
  });

  it("every rule has a noun phrase for them", () => {
    expect(rules.filter(({ measured, title }) => measured === "" || title === "")).toEqual([]);
  });

  it.each(["accept", "acceptable", "allowed", "may be", "suggest", "enlarge"])("never say %s", (word) => {
    const phrases = rules.filter(({ severity }) => severity === "ask").map(({ measured }) => measured);
    expect(phrases.filter((phrase) => phrase.includes(word))).toEqual([]);
    expect(questionOf("washer-cover", { group: { washer: small } })).not.toContain(word);
  });
});
