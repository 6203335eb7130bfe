import { describe, expect, it } from "vitest";
import { governingPairs, leastPair } from "../../../src/checks/geometry/pairs.js";

const gap = (a: number, b: number) => Math.abs(a - b);

describe("pairs", () => {
  it("gives each item its governing pair, each pair once", () => {
    expect(governingPairs([0, 10, 11, 30], gap)).toEqual([
      { first: 0, second: 10, margin: 10 },
      { first: 10, second: 11, margin: 1 },
      { first: 11, second: 30, margin: 19 },
    ]);
  });

  it("takes the earlier partner at a tie", () => {
    expect(governingPairs([0, 5, 10], gap).map(({ first, second }) => [first, second])).toEqual([
      [0, 5],
      [5, 10],
    ]);
  });

  it("takes the earlier partner at a tie, whatever the order of the list", () => {
    expect(governingPairs([5, 0, 10], gap).map(({ first, second }) => [first, second])).toEqual([
      [5, 0],
      [5, 10],
    ]);
  });

  it("leaves out pairs that are not looked at", () => {
    expect(governingPairs([1, 2, 3], () => null)).toEqual([]);
    expect(leastPair([1], gap)).toBeNull();
  });

  it("finds the least of all", () => {
    expect(leastPair([0, 10, 11, 30], gap)).toEqual({ first: 10, second: 11, margin: 1 });
  });
});
