/** What the rows of a job come to: closest calls against a plain sort of all, keys against counting by hand. Invented rows. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type DigestedBase, markWords, startDigest } from "../../../src/checks/digest.js";
import { keyWords } from "../../../src/checks/key-words.js";
import type { CheckRow } from "../../../src/checks/model.js";
import { judge } from "../../../src/checks/run.js";
import { inches } from "../../../src/units/length.js";

const RULE = { id: "washer-cover", plainName: "washer over hole", severity: "ask", measured: "the washer" } as const;

function compared(value: number, limit: number, own: Partial<CheckRow> = {}): CheckRow {
  const length = (size: number) => ({ kind: "length", twice: inches(size) * 2 }) as const;
  const result = {
    kind: "compared",
    subject: "A1",
    value: length(value),
    limit: length(limit),
    sense: ">=",
    note: "",
  } as const;
  return { ...judge(RULE, result, "s.2.6", "Design Guide 1, 2nd ed."), ...own };
}

function lacking(...missing: string[]): CheckRow {
  return judge(RULE, { kind: "not-checked", subject: "A1", note: "", missing }, "", "");
}

const base = (mark: string, rows: readonly CheckRow[], reasons: readonly string[] = []): DigestedBase => ({
  ...{ mark, quantity: 2, template: { mark: `T${mark}`, quantity: 1 }, reasons, rows },
});

function digestOf(...bases: readonly DigestedBase[]) {
  const gatherer = startDigest();
  for (const each of bases) gatherer.add(each);
  return gatherer.digest();
}

describe("closest calls", () => {
  it("are the ten least shares of the limit, whatever the order of the bases", () => {
    const values = Array.from({ length: 40 }, (_, i) => 2 + ((i * 17) % 40) / 64);
    const digest = digestOf(...values.map((value, i) => base(`B${i}`, [compared(value, 2)])));
    const least = values.toSorted((a, b) => a - b).slice(0, 10);
    expect(digest.closest.map(({ share }) => share)).toEqual(least.map((value) => (value - 2) / 2));
  });

  it("join the same figures with every base counted once, and subjects of the first", () => {
    const rows = [compared(2.25, 2), compared(2.25, 2, { subject: "A2" })];
    const [call] = digestOf(base("B1", rows), base("B2", rows), base("B3", [compared(2.5, 2)])).closest;
    expect(call?.subjects).toEqual(["A1", "A2"]);
    expect(call?.marks).toEqual({ first: ["B1", "B2"], count: 2 });
  });

  it("leave out what was chosen to meet its limit, and take an exact clearance that was not", () => {
    const digest = digestOf(base("B1", [compared(2, 2, { chosen: true }), compared(3, 3)]));
    expect(digest.closest.map(({ row }) => row.limit)).toEqual([{ kind: "length", twice: inches(3) * 2 }]);
  });
});

describe("what is missing", () => {
  it("is given in the order that has most rows checked a key, keys that are lacked together in one step", () => {
    const rows = [
      ...Array.from({ length: 10 }, () => lacking("concrete.exposure", "rods.threads")),
      ...Array.from({ length: 4 }, () => lacking("rods.length")),
      ...Array.from({ length: 3 }, () => lacking("rods.threads", "rods.length")),
      lacking(),
    ];
    const { unchecked } = digestOf(base("B1", rows));
    expect(unchecked).toMatchObject({ rows: 18, keyless: 1 });
    expect(unchecked.steps.map(({ keys, rows: own, total }) => [keys, own, total])).toEqual([
      [["concrete.exposure", "rods.threads"], 10, 10],
      [["rods.length"], 7, 17],
    ]);
  });

  it("has words for every key that rules and resolvers name", () => {
    const sources = ["src/job/resolve/rods.ts", "src/job/resolve/base.ts", "src/checks/cutting.ts"];
    const named = sources.flatMap((file) => [...readFileSync(file, "utf8").matchAll(/missing\(\s*"([^"]+)"/g)]);
    const keys = named.flatMap((match) => (match[1] ?? "").split(", "));
    expect(keys.length).toBeGreaterThan(3);
    expect(keys.filter((key) => key.includes(".") && keyWords(key) === key)).toEqual([]);
    expect(keyWords("groups[1].rods.length")).toBe(keyWords("rods.length"));
  });
});

it("counts bases, templates and rows, and joins bases that are held for the same reasons", () => {
  const holding = compared(1, 2, { severity: "stop" });
  const digest = digestOf(base("B1", [holding], ["x"]), base("B2", [holding], ["x"]), base("B3", [compared(2.25, 2)]));
  expect(digest).toMatchObject({
    bases: 3,
    quantity: 6,
    templates: 3,
    heldBases: 2,
    heldTemplates: 2,
    failed: 2,
    passed: 1,
  });
  expect(digest.held.map(({ marks, rows }) => [marks, rows.length])).toEqual([[["B1", "B2"], 1]]);
  expect(markWords({ first: ["B1", "B2"], count: 9 }, 6)).toBe("B1, B2 and 7 more");
});

describe("advice", () => {
  it("names the bases of their own rows, and the pairs of the layout's, so many at most", () => {
    const advised = (subject: string) => compared(1, 2, { severity: "advise", subject });
    const pairs = Array.from({ length: 30 }, (_, i) => advised(`B${i} / B${i + 1}`));
    const ofLayout = {
      ...base(
        "",
        pairs.map((row) => ({ ...row, rule: "look-alike" })),
      ),
      template: null,
    };
    const { advice } = digestOf(base("B1", [advised("A1"), advised("A2")]), ofLayout);
    const [layout, own] = advice;
    expect([layout?.ofLayout, layout?.rows, layout?.marks.count]).toEqual([true, 30, 30]);
    expect(layout === undefined ? "" : markWords(layout.marks, 2, "; ")).toBe("B0 / B1; B1 / B2 and 28 more");
    expect([own?.ofLayout, own?.rows, own?.marks]).toEqual([false, 2, { first: ["B1"], count: 1 }]);
  });
});
