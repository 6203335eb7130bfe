import { describe, expect, it } from "vitest";
import { lowerTemplate } from "../../../src/checks/rules/lower-template.js";
import type { LowerSpec } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { hasClause, inch, plus, rowsOf, testAtLimit } from "./context.js";

const zero = inch(0);
const AUTO: LowerSpec = {
  thickness: inch(0.25),
  outline: { kind: "auto", corner: { kind: "square" } },
  opening: { kind: "auto" },
  level: given({ from: "lower ends", distance: inch(4) }, "job"),
};
const plate = (x: number): LowerSpec => ({
  ...AUTO,
  outline: { kind: "rectangle", x: inch(x), y: inch(16), at: { x: zero, y: zero }, corner: { kind: "square" } },
});

describe("lower-template", () => {
  it("does not apply where none is asked for", () => {
    expect(rowsOf(lowerTemplate).map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  it("tells of what holds the tightest of each kind alone, by the mark of the lower template", () => {
    const rows = rowsOf(lowerTemplate, { template: { lower: AUTO } });
    expect(rows.filter(({ status }) => status === "fail")).toEqual([]);
    expect(rows.every(({ subject }) => subject.startsWith("T1-L "))).toBe(true);
    const clauses = rows.map(({ clause, subject }) => `${clause} ${subject.includes("side") ? subject : ""}`);
    expect(new Set(clauses).size).toBe(clauses.length);
  });

  // Rods 12 in apart, holes 1-5/16: half the plate less 6 in less half the hole is the steel at the edge, 1/2 in asked for by the shop.
  testAtLimit({
    name: "hole to edge of a plate that is given",
    rule: lowerTemplate,
    at: (delta) => {
      const lower = plate(0);
      const x = plus(inch(12 + 1.3125 + 1), 2 * delta);
      return { template: { lower: { ...lower, outline: { ...lower.outline, x } as LowerSpec["outline"] } } };
    },
    passes: 1,
    pick: (row) =>
      hasClause(row.subject, "least edge")(row) &&
      row.subject.startsWith("T1-L A") &&
      ["T1-L A1"].includes(row.subject),
  });

  it("is held by a thickness that is not in stock, whatever the template has", () => {
    const rows = rowsOf(lowerTemplate, { template: { lower: { ...AUTO, thickness: inch(0.3) } } });
    const failed = rows.filter(({ status }) => status === "fail");
    expect(failed.map(({ clause, severity }) => [clause, severity])).toContainEqual(["thicknesses: shop test", "stop"]);
  });

  it("holds a lower template larger than the table, and judges its segments where it is cut in some", () => {
    const table = { table: given({ x: inch(12), y: inch(40) }, "shop test") };
    const whole = rowsOf(lowerTemplate, { shop: table, template: { lower: AUTO } });
    expect(whole.some(({ subject, status }) => subject === "T1-L shorter side" && status === "fail")).toBe(true);
    const parted = rowsOf(lowerTemplate, {
      shop: table,
      template: { lower: AUTO, segments: { count: 2, bolt: null } },
    });
    expect(parted.some(({ subject, status }) => subject.startsWith("T1-L-S") && status === "pass")).toBe(true);
    expect(parted.some(({ subject, status }) => subject.includes("side") && status === "fail")).toBe(false);
  });
});
