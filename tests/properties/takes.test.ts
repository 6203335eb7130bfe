/**
 * What a rule says that it takes of a base is all that it takes: a key outside it, changed, never changes value, limit or status of
 * a row. Invented data.
 */
import { describe, expect, it } from "vitest";
import { jobRules, rules } from "../../src/checks/index.js";
import { isTaken } from "../../src/checks/takes.js";
import { drawFrom } from "../seed.js";
import type { CaseForm } from "../takes-case.js";
import { changedRules, drawBase, drawOther, KEYS, pick, rowsOf } from "../takes-case.js";

const TAKES: ReadonlyMap<string, readonly string[]> = new Map(
  [...rules, ...jobRules].map(({ id, takes }) => [id, takes]),
);

const CASES = 28;
const CHANGES = 10;

/** `rods.grade` of a base whose first group of rods is changed. */
function pathOf(key: string, { inGroups }: CaseForm): string {
  return inGroups && /^(rods|pattern)\b/.test(key) ? `groups[0].${key}` : key;
}

describe("takes", () => {
  it("names every key that changes a row", () => {
    const draw = drawFrom(9);
    const untold = new Set<string>();
    const told = new Set<string>();
    for (let i = 0; i < CASES; i += 1) {
      const [first, second] = [drawBase(draw), drawBase(draw)];
      const form = { inGroups: draw() < 0.4, hasPlan: draw() < 0.5 };
      const before = rowsOf(first, second, form);
      for (let n = 0; n < CHANGES && before !== null; n += 1) {
        const key = pick(Object.keys(KEYS), draw) ?? "";
        const after = rowsOf(new Map([...first, [key, drawOther(first, key, draw)]]), second, form);
        for (const rule of after === null ? [] : changedRules(before, after)) {
          const isNamed = isTaken(TAKES.get(rule) ?? [], pathOf(key, form));
          (isNamed ? told : untold).add(`${rule}: ${pathOf(key, form)}`);
        }
      }
    }
    expect([...untold].sort()).toEqual([]);
    // the cases reach the rules: most of what is named is seen to change a row
    expect(told.size).toBeGreaterThan(100);
    expect(new Set([...told].map((each) => each.split(":")[0])).size).toBeGreaterThan(30);
  });
});
