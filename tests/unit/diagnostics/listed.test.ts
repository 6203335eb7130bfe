import { expect, it } from "vitest";
import { listed } from "../../../src/diagnostics/listed.js";

it.each([
  [[], ""],
  [["A"], "A"],
  [["A", "B"], "A, B"],
  [["A", "B", "C"], "A, B and 1 more"],
  [["A", "B", "C", "D"], "A, B and 2 more"],
])("of %j the first two and the rest counted: %s", (names, text) => expect(listed(names, 2)).toBe(text));

it("has another sign between where it is asked for", () => expect(listed(["A1", "A2"], 6, " ")).toBe("A1 A2"));
