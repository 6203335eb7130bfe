/** Marks in their natural order. */
import { describe, expect, it } from "vitest";
import { compareMarks } from "../../../src/job/model/mark-order.js";

describe("marks", () => {
  it.each([
    [
      ["T10", "T2", "T1"],
      ["T1", "T2", "T10"],
    ],
    [
      ["B3A10", "B3A9", "B12", "B3"],
      ["B3", "B3A9", "B3A10", "B12"],
    ],
    [
      ["b2", "B10", "a11"],
      ["a11", "b2", "B10"],
    ],
    [
      ["T-2", "T2", "T 2"],
      ["T2", "T 2", "T-2"],
    ],
    [
      ["10", "9", "A"],
      ["9", "10", "A"],
    ],
    [
      ["T123456789012345678901", "T123456789012345678900"],
      ["T123456789012345678900", "T123456789012345678901"],
    ],
  ])("%j are %j", (marks, sorted) => {
    expect([...marks].sort(compareMarks)).toEqual(sorted);
    expect([...marks].reverse().sort(compareMarks)).toEqual(sorted);
  });

  it("never calls two marks equal that are not", () => {
    expect(compareMarks("T1", "t1")).not.toBe(0);
    expect(compareMarks("T01", "T1")).not.toBe(0);
    expect(compareMarks("T1", "T1")).toBe(0);
  });
});
