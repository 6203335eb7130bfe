import { expect, it } from "vitest";
import { groupBy } from "../../../src/units/group-by.js";

it("keeps the order of the first item of each group, and of the items", () => {
  const groups = groupBy([3, 10, 1, 20, 5], (value) => value >= 10);
  expect([...groups]).toEqual([
    [false, [3, 1, 5]],
    [true, [10, 20]],
  ]);
  expect(groupBy([], String).size).toBe(0);
});

it("tells keys that every object has from others", () => {
  expect(
    [...groupBy(["constructor", "a", "constructor"], (word) => word).values()].map(({ length }) => length),
  ).toEqual([2, 1]);
});
