/** The nearest of many words. */
import { expect, it } from "vitest";
import { allowedOrNearest, nearestWords } from "../../../src/diagnostics/nearest.js";

const KEYS = ["diameter", "thread", "grade", "finish", "projection", "embedment", "length", "threads", "bottom"];

it("are in the order of their nearness, as many as are asked for", () => {
  expect(nearestWords("diamter", KEYS, 1)).toEqual(["diameter"]);
  expect(nearestWords("thread", KEYS, 2)).toEqual(["thread", "threads"]);
  expect(nearestWords("embed", KEYS, 1)).toEqual(["embedment"]);
  expect(nearestWords("", KEYS, 3)).toHaveLength(3);
  expect(nearestWords("x".repeat(5000), KEYS, 3)).toHaveLength(3);
});

it("are told of more than twelve; twelve are listed whole", () => {
  const twelve = [...KEYS, "a", "b", "c"];
  expect(allowedOrNearest("diamter", twelve)).toBe(`allowed are ${twelve.join(", ")}`);
  expect(allowedOrNearest("diamter", [...twelve, "d"])).toMatch(
    /^nearest are diameter, \w+, \w+; the JSON Schema lists all$/,
  );
});
