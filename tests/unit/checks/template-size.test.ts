import { describe, expect, it } from "vitest";
import { templateSize } from "../../../src/checks/rules/template-size.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, rowsOf, testAtLimit } from "./context.js";

const at = { x: nanometres(0), y: nanometres(0) };
const corner = { kind: "square" } as const;

describe("template-size", () => {
  testAtLimit({
    name: "the larger side, along y",
    rule: templateSize,
    at: (delta) => ({
      template: { outline: { kind: "rectangle", x: inch(16), y: nanometres(inch(24) + 2 * delta), at, corner } },
    }),
    passes: -1,
    pick: isSubject("plate"),
  });

  testAtLimit({
    name: "the diameter of a round plate",
    rule: templateSize,
    at: (delta) => ({ template: { outline: { kind: "circle", diameter: nanometres(inch(24) + delta), at } } }),
    passes: -1,
    pick: isSubject("plate"),
  });

  it("only advises, and does not speak of plywood", () => {
    expect(rowsOf(templateSize)[0]).toMatchObject({ status: "fail", severity: "advise", note: "overall 26 x 18" });
    expect(rowsOf(templateSize, { template: { material: "plywood" } })[0]?.status).toBe("not-applicable");
  });
});
