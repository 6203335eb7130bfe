import { describe, expect, it } from "vitest";
import { rodCover } from "../../../src/checks/rules/rod-cover.js";
import type { Bottom, Exposure, PlanShape } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import { hasClause, inch, onLine, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const ROD = hasClause("A1", "cover beside the rod");
const BOTTOM = hasClause("A1", "beside the bottom");
const BELOW = hasClause("A1", "cover below");
const TORQUED = hasClause("A1", "torqued");
const one = { pattern: onLine(0) };
const bottom = (value: Bottom) => ({ bottom: given(value, "job") });
const square = (x: number, exposure: Exposure = "exposed") => ({
  shape: given({ kind: "rectangle", x: nanometres(x), y: inch(60), corner: { kind: "square" } } as PlanShape, "job"),
  exposure: given(exposure, "job"),
});
const sized = (size: string, diameter: Length) => ({ size, diameter });

describe("rod-cover", () => {
  // Exposure, rod, cover by ACI 318-19 Table 20.5.1.3.1; bars by their number: No. 5 is 5/8 in.
  describe.each([
    ["against ground", "1-1/4", 1.25, 3],
    ["exposed", "3/4", 0.75, 2],
    ["exposed", "5/8", 0.625, 1.5],
    ["not exposed", "1-1/4", 1.25, 1.5],
  ] as const)("%s, rod %s", (exposure, size, diameter, cover) => {
    testAtLimit({
      name: `cover ${cover} beside the rod`,
      rule: rodCover,
      at: (delta) => ({
        group: one,
        rod: sized(size, inch(diameter)),
        concrete: square(2 * inch(cover) + inch(diameter) + 2 * delta, exposure),
      }),
      passes: 1,
      pick: ROD,
    });
  });

  testAtLimit({
    name: "a rod 2 nm thicker than No. 5 takes the larger cover",
    rule: rodCover,
    at: (delta) => ({
      group: one,
      rod: sized("5/8", plus(inch(0.625), 2)),
      concrete: square(2 * inch(2) + inch(0.625) + 2 + 2 * delta),
    }),
    passes: 1,
    pick: (row) => ROD(row) && row.note.includes("No. 6 to 18"),
  });

  testAtLimit({
    name: "round pier, rod off its centre",
    rule: rodCover,
    at: (delta) => ({
      group: { pattern: { kind: "points", at: [{ x: inch(3), y: inch(4) }] } },
      concrete: {
        shape: given(
          { kind: "circle", diameter: nanometres(2 * (inch(5) + inch(2)) + inch(1.25) + delta) } as const,
          "job",
        ),
      },
    }),
    passes: 1,
    pick: ROD,
  });

  testAtLimit({
    name: "pier off the working point",
    rule: rodCover,
    at: (delta) => ({
      group: one,
      concrete: {
        ...square(inch(24)),
        at: { x: nanometres(inch(12) - inch(2) - inch(0.625) - delta), y: nanometres(0) },
      },
    }),
    passes: 1,
    pick: ROD,
  });

  describe.each([
    ["nut", { kind: "nut", washer: null, tackWelded: false }, inch(2.309)],
    [
      "round plate",
      { kind: "plate", nuts: 2, tackWelded: false, shape: "round", size: inch(4), thickness: inch(0.5) },
      inch(4),
    ],
    ["hook", { kind: "hook", reach: inch(3), radius: null }, inch(6)],
  ] as const)("%s at the bottom", (_, value, across) => {
    testAtLimit({
      name: "cover beside it",
      rule: rodCover,
      at: (delta) => ({ group: one, rod: bottom(value), concrete: square(2 * inch(2) + across + 2 * delta) }),
      passes: 1,
      pick: BOTTOM,
    });
  });

  testAtLimit({
    name: "a square plate may stand any way round",
    rule: rodCover,
    at: (delta) => {
      const size = inch(4);
      const corner = Math.round(size * Math.SQRT2);
      const value = { kind: "circle", diameter: nanometres(2 * inch(2) + corner + delta) } as const;
      return {
        group: one,
        rod: bottom({ kind: "plate", nuts: 2, tackWelded: false, shape: "square", size, thickness: inch(0.5) }),
        concrete: { shape: given(value, "job") },
      };
    },
    passes: 1,
    pick: BOTTOM,
  });

  // 2 in of cover below 9 + 24 of a rod; given longer, it reaches down by as much, and its nut 1.251 at the least.
  it.each<readonly [string, Bottom, number | null, number]>([
    ["a nut, rod worked out as 34-7/8", { kind: "nut", washer: null, tackWelded: false }, null, 1.875],
    ["a nut on a rod of 36", { kind: "nut", washer: null, tackWelded: false }, 36, 3],
    ["a nut on a rod too short for it", { kind: "nut", washer: null, tackWelded: false }, 34, 1.251],
    ["a nut on a rod embedded to its end", { kind: "nut", washer: null, tackWelded: false }, 33, 0],
    [
      "a plate of 3/4 between two nuts, rod worked out as 35-5/8",
      { kind: "plate", nuts: 2, tackWelded: false, shape: "square", size: inch(4), thickness: inch(0.75) },
      null,
      2.625,
    ],
    [
      "a plate of 3/4 welded on",
      { kind: "plate", nuts: 0, tackWelded: false, shape: "square", size: inch(4), thickness: inch(0.75) },
      null,
      0.75,
    ],
    ["nothing", { kind: "straight" }, null, 0],
    ["nothing, 1 longer than it need be", { kind: "straight" }, 34, 1],
  ])("below the lowest steel, with %s", (_, kind, length, steel) => {
    const status = (delta: number) => {
      const rod = { ...bottom(kind), ...(length === null ? {} : { length: given(inch(length), "job") }) };
      const concrete = { depth: given(plus(inch(26 + steel), delta), "job") };
      return rowOf(rodCover, { rod, concrete }, BELOW).status;
    };
    expect([status(-1), status(0)]).toEqual(["fail", "pass"]);
  });

  // Pitch diameter of 1-1/4-7 UNC: 1.25 - 0.6495 / 7 = 1.1572 (ASME B1.1).
  it("below a hook, by the bar that it is bent of", () => {
    const rod = bottom({ kind: "hook", reach: inch(5), radius: null });
    const status = (depth: number) =>
      rowOf(rodCover, { rod, concrete: { depth: given(inch(depth), "job") } }, BELOW).status;
    expect([status(27.157), status(27.158)]).toEqual(["fail", "pass"]);
  });

  it("does not pass below a rod of which it is not known how far down its steel goes", () => {
    const rod = { projection: missing("rods.projection", "none given") };
    const status = (depth: number) =>
      rowOf(rodCover, { rod, concrete: { depth: given(inch(depth), "job") } }, BELOW).status;
    expect([status(25.99), status(30)]).toEqual(["fail", "not-checked"]);
  });

  testAtLimit({
    name: "6 d to the edge when torqued",
    rule: rodCover,
    at: (delta) => ({ group: one, rod: { torqued: given(true, "job") }, concrete: square(2 * inch(7.5) + 2 * delta) }),
    passes: 1,
    pick: TORQUED,
  });

  it("where it is not known whether the rods are torqued, 6 d is not checked unless it holds", () => {
    const rod = { torqued: missing("rods.torqued", "not said") };
    const status = (x: number) => rowOf(rodCover, { group: one, rod, concrete: square(x) }, TORQUED).status;
    expect([status(2 * inch(7.5)), status(2 * inch(7.5) - 2)]).toEqual(["pass", "not-checked"]);
    expect(rowOf(rodCover, {}, TORQUED).status).toBe("not-applicable");
  });

  it.each([
    ["concrete", { concrete: { shape: missing("concrete", "no concrete is given") } }, "(concrete)", 4],
    ["exposure", { concrete: { exposure: missing("concrete.exposure", "not said") } }, "concrete.exposure", 12],
    ["bottom", { rod: { bottom: missing("rods.bottom", "not said") } }, "rods.bottom", 8],
    ["nut", { rod: { nut: missing("rods.nut", "none tabulated") } }, "rods.nut", 8],
    ["embedment", { rod: { embedment: missing("rods.embedment", "none given") } }, "rods.embedment", 4],
  ] as const)("is not checked without %s", (_, changes, key, count) => {
    const rows = rowsOf(rodCover, changes).filter(({ note }) => note.includes(key));
    expect(rows.map(({ status }) => status)).toEqual(Array(count).fill("not-checked"));
  });

  // The least of Table 20.5.1.3.1 for a pier: 1-1/2 in; of the metric companion 40 mm.
  describe.each([
    ["ACI 318-19", inch(1.5)],
    ["ACI 318M-19", millimetres(40)],
  ] as const)("%s without the exposure: what fails in every one fails", (concrete, least) => {
    it.each([
      [-1, "fail"],
      [0, "not-checked"],
      [1, "not-checked"],
    ])("limit %i nm: %s", (delta, status) => {
      const exposure = missing("concrete.exposure", "the exposure is not given");
      const editions = { ...jobFixture().editions, concrete };
      const changes = { ...square(2 * least + inch(1.25) + 2 * delta), exposure };
      const row = rowOf(rodCover, { job: { editions }, group: one, concrete: changes }, ROD);
      expect(row).toMatchObject({ status, severity: "ask" });
      expect(row.note).toContain("(concrete.exposure)");
      expect(row.note.includes("it fails whatever the exposure is")).toBe(status === "fail");
    });
  });

  it("names the edition where no cover is held for it", () => {
    const editions = { ...jobFixture().editions, concrete: "ACI 318-11" } as const;
    const row = rowOf(rodCover, { job: { editions } }, ROD);
    expect(row).toMatchObject({ status: "not-checked", severity: "ask" });
    expect(row.note).toContain("ACI 318-11");
  });

  // ACI 318-19 Table 20.5.1.3.1 asks for 1-1/2 at the least, whatever the exposure.
  it.each([
    [-1, "fail"],
    [0, "not-checked"],
    [1, "not-checked"],
  ])("without the exposure: the least cover of all, %i nm", (delta, status) => {
    const concrete = {
      ...square(2 * inch(1.5) + inch(1.25) + 2 * delta),
      exposure: missing("concrete.exposure", "not said"),
    };
    const row = rowOf(rodCover, { group: one, rod: sized("1-1/4", inch(1.25)), concrete }, ROD);
    expect(row.status).toBe(status);
    expect(row.note.includes("it fails whatever the exposure is: not said (concrete.exposure)")).toBe(delta < 0);
  });
});

describe("rod-cover of metric rules", () => {
  const { editions } = jobFixture();
  const metric = { ...editions, set: "metric", concrete: "ACI 318M-19" } as const;
  const job = { unit: "mm", editions: metric } as const;

  // ACI 318M-19 Table 20.5.1.3.1, from memory: 75, 50 and 40 mm; No. 16 and smaller take 40 when exposed.
  describe.each([
    ["against ground", "M24", 24, 75, "cast against and permanently in contact with ground"],
    ["against ground", "M16", 16, 75, "cast against and permanently in contact with ground"],
    ["exposed", "M24", 24, 50, "No. 19 to 57"],
    ["exposed", "M18", 18, 50, "No. 19 to 57"],
    ["exposed", "M16", 16, 40, "No. 16 and smaller"],
    ["exposed", "M12", 12, 40, "No. 16 and smaller"],
    ["not exposed", "M24", 24, 40, "beams, columns, pedestals"],
    ["not exposed", "M16", 16, 40, "beams, columns, pedestals"],
  ] as const)("%s, %s", (exposure, size, diameter, cover, item) => {
    testAtLimit({
      name: `cover ${cover} mm`,
      rule: rodCover,
      at: (delta) => ({
        job,
        group: one,
        rod: sized(size, millimetres(diameter)),
        concrete: square(millimetres(2 * cover + diameter) + 2 * delta, exposure),
      }),
      passes: 1,
      pick: (row) => ROD(row) && row.edition === "ACI 318M-19" && row.note.includes(item),
    });
  });

  testAtLimit({
    name: "a rod 2 nm thicker than No. 16 takes the larger cover",
    rule: rodCover,
    at: (delta) => ({
      job,
      group: one,
      rod: sized("M16", plus(millimetres(16), 2)),
      concrete: square(millimetres(116) + 2 + 2 * delta),
    }),
    passes: 1,
    pick: (row) => ROD(row) && row.note.includes("No. 19 to 57"),
  });

  it.each([
    [{ placing: "EN 1090-2:2008" }, true],
    [{ edges: "EN 1993-1-8:2005" }, true],
    [{}, false],
  ] as const)("says under European editions that the cover is an American one: %o", (european, said) => {
    const row = rowOf(rodCover, { job: { ...job, editions: { ...metric, ...european } } }, ROD);
    expect(row.note.includes("by ACI: EN 1992-1-1 asks by exposure class and is not kept here")).toBe(said);
  });
});
