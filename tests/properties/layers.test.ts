/**
 * Values of a base may stand in the base, in its kind or in the defaults: wherever they stand the base is the same; and whatever is
 * written under defaults and kinds, the job is read or refused with findings that have a place. Invented data.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readJob } from "../../src/job/index.js";
import type { Base } from "../../src/job/model/job.js";
import { vocabulary } from "../../src/tasks/open.js";
import { inputsOf } from "../unit/job/files.js";

const options = { date: "2026-01-01", vocabulary };

/** Keys that join key by key, with a value and a second one that the base does not take. */
const LEAVES: readonly (readonly [path: string, value: unknown, other: unknown])[] = [
  ["rods.diameter", "1", "2"],
  ["rods.grade", "55", "36"],
  ["rods.finish", "plain", "galvanized"],
  ["rods.projection", "9", "7"],
  ["rods.embedment", "20", "12"],
  ["rods.bottom", "nut", { kind: "hook", reach: "4" }],
  ["pattern", { kind: "rectangle", x: "12", y: "10" }, { kind: "points", at: [["0", "0"]] }],
  ["basePlate.thickness", "1-1/2", "1"],
  ["basePlate.hole", "1-13/16", "2"],
  ["basePlate.washer", { shape: "square", size: "3", thickness: "1/2" }, "F436"],
  ["concrete.depth", "36", "40"],
  ["concrete.exposure", "exposed", "against ground"],
  ["column", { kind: "pipe", diameter: "8" }, { kind: "tube", x: "6", y: "6" }],
  ["grout", "1-1/2", "2"],
  ["levelling", "nuts", "shims"],
  ["template.thickness", "1/4", "1/2"],
  ["template.support", "bearers", "form"],
  ["template.opening", { diameter: "4" }, "none"],
  ["template.outline", { kind: "rectangle", x: "18", y: "16" }, "auto"],
];

type Tree = Record<string, unknown>;

function put(tree: Tree, path: string, value: unknown): void {
  const [first = "", second] = path.split(".");
  if (second === undefined) tree[first] = value;
  else tree[first] = { ...(tree[first] as Tree | undefined), [second]: value };
}

function baseOf(job: Tree): Base {
  const read = readJob(inputsOf(JSON.stringify({ job: { number: "1" }, units: "in", ...job })), options);
  const [base] = read.ok ? read.value.bases : [];
  if (base === undefined) throw new Error(JSON.stringify(read.findings));
  return base;
}

/** The base without who gave what. */
const said = (base: Base): unknown =>
  JSON.parse(
    JSON.stringify({ ...base, kind: "" }, (key, value) => (["from", "place", "origins"].includes(key) ? null : value)),
  );

/** 0: the base gives it; 1: its kind; 2: the defaults. `below`: layers under that one say something else. */
const places = fc.array(fc.record({ layer: fc.constantFrom(0, 1, 2), below: fc.boolean() }), {
  minLength: LEAVES.length,
  maxLength: LEAVES.length,
});

describe("layers", () => {
  it("give the same base wherever its values stand, and name who gave each", () => {
    const whole: Tree = { mark: "B1" };
    for (const [path, value] of LEAVES) put(whole, path, value);
    const plain = said(baseOf({ bases: [whole] }));
    fc.assert(
      fc.property(places, (chosen) => {
        const trees: readonly [Tree, Tree, Tree] = [{ mark: "B1", kind: "k" }, {}, {}];
        const origins: Record<string, string> = {};
        LEAVES.forEach(([path, value, other], index) => {
          const { layer = 0, below = false } = chosen[index] ?? {};
          trees.forEach((tree, at) => {
            if (at === layer) put(tree, path, value);
            else if (at > layer && below) put(tree, path, other);
          });
          if (layer > 0) origins[path] = layer === 1 ? "kind k" : "default";
        });
        const [base, kind, defaults] = trees;
        const read = baseOf({ defaults, kinds: { k: kind }, bases: [base] });
        expect(said(read)).toEqual(plain);
        expect(read.origins).toEqual(origins);
      }),
      { numRuns: 150 },
    );
  });

  it("are read or refused with findings whatever stands in them", () => {
    const keys = [
      "mark",
      "kind",
      "rods",
      "grade",
      "diameter",
      "pattern",
      "groups",
      "template",
      "thickness",
      "washer",
      "basePlate",
      "x",
      "concrete",
      "at",
      "__proto__",
      "constructor",
      "",
    ];
    const anything = fc.letrec<{ tree: unknown }>((tie) => ({
      tree: fc.oneof(
        { depthSize: "small", withCrossShrink: true },
        fc.constantFrom("~", "1", "rectangle", "-1", "nut", "auto", "", "k", "F844"),
        fc.constant(null),
        fc.array(tie("tree"), { maxLength: 3 }),
        fc
          .array(fc.tuple(fc.constantFrom(...keys), tie("tree")), { maxLength: 4 })
          .map((entries) => Object.fromEntries(entries)),
      ),
    })).tree;
    const base = {
      mark: "B1",
      kind: "k",
      rods: { diameter: "1" },
      pattern: { kind: "points", at: [["0", "0"]] },
      template: { thickness: "1/4" },
    };
    fc.assert(
      fc.property(anything, anything, anything, (defaults, kinds, groups) => {
        const job = { job: { number: "1" }, units: "in", defaults, kinds, bases: [base, { mark: "B2", groups }] };
        const read = readJob(inputsOf(JSON.stringify(job)), options);
        return (
          read.ok ||
          read.findings.every(({ message, at }) => message !== "" && at.file === "job.yaml" && (at.line ?? 0) > 0)
        );
      }),
      { numRuns: 600 },
    );
  });
});
