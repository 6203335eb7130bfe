import { describe, expect, it } from "vitest";
import { holeWeb } from "../../../src/checks/rules/hole-web.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, onLine, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const noOpening = { opening: { kind: "none" } } as const;

describe("hole-web", () => {
  testAtLimit({
    name: "between two rod holes",
    rule: holeWeb,
    at: (delta) => ({ group: { pattern: onLine(0, inch(1.3125) + inch(0.5) + delta) }, template: noOpening }),
    passes: 1,
    pick: isSubject("A1-A2"),
  });

  // Centres 3-4-5: 3 in and 4 in apart are 5 in; holes 1-5/16 and 8-1/16 leave 5/16: a nail hole of 7-11/16 leaves 1/2.
  testAtLimit({
    name: "across, between a rod hole and a nail hole",
    rule: holeWeb,
    at: (delta) => ({
      group: { pattern: onLine(0) },
      template: {
        ...noOpening,
        nailHoles: [{ at: { x: inch(3), y: inch(4) }, diameter: nanometres(inch(7.6875) - 2 * delta) }],
      },
    }),
    passes: 1,
    pick: (row) => row.subject.includes("NH1"),
  });

  it("gives each hole its governing pair, each pair once", () => {
    expect(rowsOf(holeWeb).map(({ subject }) => subject)).toEqual(["A1-A4", "A2-A3"]);
  });

  it("fails with a negative web where holes overlap", () => {
    const [row] = rowsOf(holeWeb, { group: { pattern: onLine(0, inch(1)) }, template: noOpening });
    expect(row).toMatchObject({
      status: "fail",
      severity: "stop",
      value: { kind: "length", twice: 2 * (inch(1) - inch(1.3125)) },
    });
  });

  it("does not apply to one hole", () => {
    const [row] = rowsOf(holeWeb, {
      group: { pattern: onLine(0) },
      template: { opening: { kind: "circle", diameter: inch(3), at: { x: inch(5), y: zero } } },
    });
    expect(row?.status).toBe("not-applicable");
  });
});
