import { describe, expect, it } from "vitest";
import { basePlateEdge } from "../../../src/checks/rules/base-plate-edge.js";
import type { PlanShape } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { EdgeEdition } from "../../../src/standards/index.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import { inch, isSubject, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const edges = (edition: EdgeEdition) => ({ editions: { ...jobFixture().editions, edges: edition } });
const rect = (x: number, y: number = inch(40)): { shape: { kind: "given"; value: PlanShape; from: string } } => ({
  shape: given({ kind: "rectangle", x: nanometres(x), y: nanometres(y), corner: { kind: "square" } }, "job"),
});
const one = (hole: Length) => ({ pattern: onLine(0), baseHole: given(hole, "job") });
const A1 = isSubject("A1");

describe("base-plate-edge", () => {
  // Table J3.4: 1-5/8 for 1-1/4; C2 of Table J3.5: 1/8.
  testAtLimit({
    name: "larger than oversized: J3.4 + C2 as guidance",
    rule: basePlateEdge,
    at: (delta) => ({ group: one(inch(2.0625)), basePlate: rect(2 * inch(1.75) + 2 * delta) }),
    passes: 1,
    pick: A1,
  });

  testAtLimit({
    name: "a standard hole takes no C2",
    rule: basePlateEdge,
    at: (delta) => ({ group: one(inch(1.375)), basePlate: rect(2 * inch(1.625) + 2 * delta) }),
    passes: 1,
    pick: A1,
  });

  // Over 1-1/4 in: 1-1/4 d; d = 2: 2-1/2, C2 1/8.
  testAtLimit({
    name: "beyond the table, 1-1/4 d + C2, round base plate",
    rule: basePlateEdge,
    at: (delta) => ({
      group: one(inch(3.25)),
      rod: { size: "2", diameter: inch(2) },
      basePlate: { shape: given({ kind: "circle", diameter: nanometres(2 * inch(2.625) + delta) } as const, "job") },
    }),
    passes: 1,
    pick: A1,
  });

  testAtLimit({
    name: "a base plate off the working point",
    rule: basePlateEdge,
    at: (delta) => ({
      group: one(inch(2.0625)),
      basePlate: { ...rect(inch(18)), at: { x: nanometres(inch(9) - inch(1.75) - delta), y: zero } },
    }),
    passes: 1,
    pick: A1,
  });

  // Table J3.4M: 38 for M30; C2 of J3.5M: 3 mm.
  testAtLimit({
    name: "the metric tables",
    rule: basePlateEdge,
    at: (delta) => ({
      job: edges("AISC 360-22M"),
      group: one(millimetres(51)),
      rod: { size: "M30", diameter: millimetres(30) },
      basePlate: rect(2 * millimetres(41) + 2 * delta),
    }),
    passes: 1,
    pick: A1,
  });

  // 1.2 x 36 mm = 43.2 mm
  testAtLimit({
    name: "1.2 d0 of EN 1993-1-8",
    rule: basePlateEdge,
    at: (delta) => ({
      job: edges("EN 1993-1-8:2005"),
      group: one(millimetres(36)),
      rod: { size: "M30", diameter: millimetres(30) },
      basePlate: rect(2 * millimetres(43.2) + 2 * delta),
    }),
    passes: 1,
    pick: A1,
  });

  it("says what is guidance, and names the tables", () => {
    const note = (hole: number) => rowOf(basePlateEdge, { group: one(inch(hole)) }, A1);
    expect(note(2.0625).note).toContain("guidance only");
    expect(note(1.5).note).not.toContain("guidance");
    expect(note(1.375).note).toContain("standard hole, no C2");
    expect(note(2.0625)).toMatchObject({
      clause: "Table J3.4 + C2 of Table J3.5",
      severity: "ask",
      edition: "AISC 360-22",
    });
  });

  // Least without C2: 1-5/8 of Table J3.4, 2-1/4 sheared in 360-05; with a hole as large as the rod 1.2 x 1-1/4 of Table 3.3.
  describe.each([
    ["AISC 360-22", missing("basePlate.hole", "no hole is given"), 1.625],
    ["EN 1993-1-8:2005", missing("basePlate.hole", "no hole is given"), 1.5],
    ["AISC 360-05", given(inch(2.0625), "job"), 2.25],
  ] as const)("%s without the hole or its C2: what fails whatever it is fails", (edition, baseHole, least) => {
    it.each([
      [-1, "fail"],
      [0, "not-checked"],
      [1, "not-checked"],
    ])("limit %i nm: %s", (delta, status) => {
      const group = { pattern: onLine(0), baseHole };
      const row = rowOf(
        basePlateEdge,
        { job: edges(edition), group, basePlate: rect(2 * inch(least) + 2 * delta) },
        A1,
      );
      expect(row).toMatchObject({ status, severity: "ask" });
      expect(row.note.includes("it fails whatever the")).toBe(status === "fail");
    });
  });

  it("is not checked for a rod that the edition does not hold", () => {
    const row = rowOf(basePlateEdge, { rod: { size: "9/16", diameter: inch(0.5625) }, group: one(inch(1)) }, A1);
    expect(row).toMatchObject({ status: "not-checked" });
    expect(row.note).toContain("nearest: 1/2, 5/8");
  });

  it("is not checked where the edition has no C2 and the hole is larger than standard", () => {
    const row = rowOf(basePlateEdge, { job: edges("AISC 360-05"), group: one(inch(2.0625)) }, A1);
    expect(row.status).toBe("not-checked");
    expect(row.note).toContain("no C2 is kept with AISC 360-05");
    expect(rowOf(basePlateEdge, { job: edges("AISC 360-05"), group: one(inch(1.3125)) }, A1).status).toBe("pass");
  });

  it.each([
    ["hole", { group: { baseHole: missing("basePlate.hole", "no hole is given") } }, "basePlate.hole"],
    ["size", { basePlate: { shape: missing("basePlate", "no base plate is given") } }, "(basePlate)"],
  ] as const)("is not checked without a %s", (_, changes, key) => {
    const rows = rowsOf(basePlateEdge, changes);
    expect(rows.every(({ status, note }) => status === "not-checked" && note.includes(key))).toBe(true);
    expect(rows).toHaveLength(4);
  });

  // The smallest hole that a rod passes asks for 1-5/8 (Table J3.4 for 1-1/4), of EN 1993-1-8 1.2 x 30 mm.
  it.each([
    ["AISC 360-22", inch(1.25), inch(1.625)],
    ["EN 1993-1-8:2005", millimetres(30), millimetres(36)],
  ] as const)("fails whatever the hole is: %s", (edition, diameter, least) => {
    const rowAt = (delta: number) =>
      rowOf(
        basePlateEdge,
        {
          job: edges(edition),
          rod: { diameter },
          group: { pattern: onLine(0), baseHole: missing("basePlate.hole", "no hole is given") },
          basePlate: rect(2 * least + 2 * delta),
        },
        A1,
      );
    expect(rowAt(-1)).toMatchObject({ status: "fail", note: expect.stringContaining("it fails whatever the hole is") });
    expect([0, 1].map((delta) => rowAt(delta).status)).toEqual(["not-checked", "not-checked"]);
  });
});
