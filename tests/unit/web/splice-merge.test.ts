/** Two tabs that change one text: each change stays, or is told. Random texts; merged either way round they come out the same. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inverse, type Splice, spliced } from "../../../src/readers/yaml-edit.js";
import { differenceOf, fits, movedOver } from "../../../src/web/state/splice-merge.js";
import { SEED } from "../../seed.js";

const TEXT = "a: 12\nb: 12\nc: 12\n";
const set = (at: number, now: string): Splice => ({ at, was: "12", now });
const textAfter = (text: string, splices: readonly Splice[]): string => splices.reduce(spliced, text);

describe("a step that was made on an outdated text", () => {
  it.each([
    ["above the other's change", set(3, "13-1/2"), set(15, "1"), "a: 13-1/2\nb: 12\nc: 1\n"],
    ["below it", set(15, "13-1/2"), set(3, "1"), "a: 1\nb: 12\nc: 13-1/2\n"],
    [
      "below lines that were put in",
      set(9, "7"),
      { at: 0, was: "", now: "z: 1\ny: 2\n" },
      "z: 1\ny: 2\na: 12\nb: 7\nc: 12\n",
    ],
    ["below lines that were taken out", set(15, "7"), { at: 0, was: "a: 12\n", now: "" }, "b: 12\nc: 7\n"],
  ] as const)("is made %s", (_, own, other, merged) => {
    const moved = movedOver([own], other);
    expect(moved === null ? null : textAfter(spliced(TEXT, other), moved)).toBe(merged);
  });

  it.each([
    ["the same value", set(9, "13"), set(9, "14")],
    ["a part of it", set(9, "13"), { at: 10, was: "2", now: "4" }],
    ["what was written behind it", set(9, "13"), { at: 11, was: "", now: "-1/2" }],
    ["what was written before it", set(9, "13"), { at: 9, was: "", now: "1" }],
    ["a line that is gone", set(9, "13"), { at: 6, was: "b: 12\n", now: "" }],
  ] as const)("is not made over %s", (_, own, other) => {
    expect(movedOver([own], other)).toBeNull();
  });

  it("several splices of one step follow each other", () => {
    const own = [set(3, "1"), set(14, "345")];
    expect(textAfter(TEXT, own)).toBe("a: 1\nb: 12\nc: 345\n");
    const moved = movedOver(own, set(9, "6789"));
    expect(moved === null ? null : textAfter(spliced(TEXT, set(9, "6789")), moved)).toBe("a: 1\nb: 6789\nc: 345\n");
  });

  it("comes out the same whoever was first", () => {
    const places = fc.tuple(fc.nat(30), fc.nat(4), fc.string({ maxLength: 5 }));
    const text = "0123456789abcdefghijklmnopqrstuvwxyz";
    const splice = ([at, length, now]: readonly [number, number, string]): Splice => ({
      at,
      was: text.slice(at, at + length),
      now,
    });
    let met = 0;
    fc.assert(
      fc.property(places.map(splice), places.map(splice), (a, b) => {
        const [aOverB, bOverA] = [movedOver([a], b), movedOver([b], a)];
        expect(aOverB === null).toBe(bOverA === null);
        if (aOverB === null || bOverA === null) return;
        met += 1;
        expect(fits(spliced(text, b), aOverB)).toBe(true);
        expect(textAfter(spliced(text, b), aOverB)).toBe(textAfter(spliced(text, a), bOverA));
      }),
      { seed: SEED, numRuns: 2000 },
    );
    expect(met).toBeGreaterThan(500);
  });
});

describe("the difference of two texts", () => {
  it("makes the one of the other, and back", () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 12 }),
        fc.string({ maxLength: 12 }),
        fc.string({ maxLength: 12 }),
        (a, b, c) => {
          const [was, now] = [a + b + c, a + c + c];
          const difference = differenceOf(was, now);
          if (difference === null) return expect(was).toBe(now);
          expect(spliced(was, difference)).toBe(now);
          expect(spliced(now, inverse(difference))).toBe(was);
        },
      ),
      { seed: SEED },
    );
  });

  it("is small where little was changed", () => {
    expect(differenceOf(TEXT, TEXT)).toBeNull();
    expect(differenceOf(TEXT, "a: 12\nb: 13\nc: 12\n")).toEqual({ at: 10, was: "2", now: "3" });
    expect(differenceOf("aa", "aaa")).toEqual({ at: 2, was: "", now: "a" });
  });
});
