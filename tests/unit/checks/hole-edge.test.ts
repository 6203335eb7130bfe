import { describe, expect, it } from "vitest";
import { holeEdge } from "../../../src/checks/rules/hole-edge.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, onLine, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const at = { x: zero, y: zero };
const noOpening = { opening: { kind: "none" } } as const;
const half = inch(1.3125) / 2;

describe("hole-edge", () => {
  testAtLimit({
    name: "to a straight edge",
    rule: holeEdge,
    at: (delta) => ({
      group: { pattern: onLine(0) },
      template: {
        ...noOpening,
        outline: {
          kind: "rectangle",
          x: nanometres(inch(2.3125) + 2 * delta),
          y: inch(9),
          at,
          corner: { kind: "square" },
        },
      },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "to the arc of a round plate",
    rule: holeEdge,
    at: (delta) => ({
      group: { pattern: onLine(inch(5)) },
      template: {
        ...noOpening,
        outline: { kind: "circle", diameter: nanometres(2 * (inch(5) + half + inch(0.5)) + delta), at },
      },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "to the inner arc of a ring",
    rule: holeEdge,
    at: (delta) => ({
      group: { pattern: onLine(inch(5)) },
      template: {
        ...noOpening,
        outline: { kind: "ring", outer: inch(20), inner: nanometres(2 * (inch(5) - half - inch(0.5)) - delta), at },
      },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "to a rectangular opening",
    rule: holeEdge,
    at: (delta) => ({
      group: { pattern: onLine(inch(5)) },
      template: {
        opening: {
          kind: "rectangle",
          x: nanometres(2 * (inch(5) - half - inch(0.5)) - 2 * delta),
          y: inch(3),
          radius: inch(0.5),
          at,
        },
      },
    }),
    passes: 1,
    pick: isSubject("A1"),
  });

  testAtLimit({
    name: "of the ring itself",
    rule: holeEdge,
    at: (delta) => ({
      group: { pattern: onLine(inch(5)) },
      template: { ...noOpening, outline: { kind: "ring", outer: nanometres(inch(9) + delta), inner: inch(8), at } },
    }),
    passes: 1,
    pick: isSubject("OP1"),
  });

  it("says which edge governs, a row for every hole", () => {
    const rows = rowsOf(holeEdge);
    expect(rows.map(({ subject }) => subject).sort()).toEqual(["A1", "A2", "A3", "A4", "OP1"]);
    expect(rows.find(({ subject }) => subject === "A1")?.note).toContain("to the edge of the plate");
  });

  it("fails, and stops, where a hole leaves the plate", () => {
    const [row] = rowsOf(holeEdge, { group: { pattern: onLine(inch(20)) }, template: noOpening });
    expect(row).toMatchObject({ status: "fail", severity: "stop" });
    expect(row?.value?.kind === "length" && row.value.twice < 0).toBe(true);
  });
});
