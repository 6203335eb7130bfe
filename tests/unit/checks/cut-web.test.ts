import { describe, expect, it } from "vitest";
import { cutWeb } from "../../../src/checks/rules/cut-web.js";
import { nanometres } from "../../../src/units/index.js";
import { hasClause, inch, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

const at = { x: nanometres(0), y: nanometres(0) };
const WEB = hasClause("plate", "web");
const noOpening = { opening: { kind: "none" } } as const;

describe("cut-web", () => {
  testAtLimit({
    name: "between two holes, 1.5 t",
    rule: cutWeb,
    at: (delta) => ({ group: { pattern: onLine(0, inch(1.3125) + inch(0.375) + delta) }, template: noOpening }),
    passes: 1,
    pick: WEB,
  });

  testAtLimit({
    name: "between a hole and the edge, an absolute least",
    rule: cutWeb,
    at: (delta) => ({
      shop: { smallestWeb: { perThickness: 1, least: inch(0.5), from: "shop" } },
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
    pick: WEB,
  });

  testAtLimit({
    name: "between the last hole and the edge",
    rule: cutWeb,
    at: (delta) => ({
      group: { pattern: onLine(0, inch(6)) },
      template: {
        ...noOpening,
        outline: {
          kind: "rectangle",
          x: nanometres(2 * inch(6) + inch(2.0625) + 2 * delta),
          y: inch(9),
          at,
          corner: { kind: "square" },
        },
      },
    }),
    passes: 1,
    pick: WEB,
  });

  it("says on which side of a tapered cut the web is least", () => {
    const { note } = rowOf(cutWeb, {}, WEB);
    expect(note).toContain("on the wide side of the holes; taper widens the web by 0.0079 on their narrow side");
  });

  it("does not apply where there is no cut hole, or no cutting", () => {
    const drilled = { shop: { smallestHole: { perThickness: 0, least: inch(2), from: "shop" } }, template: noOpening };
    expect(rowOf(cutWeb, drilled, WEB).status).toBe("not-applicable");
    expect(rowsOf(cutWeb, { template: { material: "plywood" } }).map(({ status }) => status)).toEqual([
      "not-applicable",
    ]);
  });
});
