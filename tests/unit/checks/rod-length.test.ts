import { describe, expect, it } from "vitest";
import { rodLength } from "../../../src/checks/rules/rod-length.js";
import type { Bottom } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const SHORTEST = hasClause("A1", "at its least >=");
const FITS = hasClause("A1", "overall length >= projection");
const FOR_STACK = hasClause("A1", "stack on the rod");
const FOR_TEMPLATE = hasClause("A1", "template and its upper nut");
const LONGEST = hasClause("A1", "lower end");
const of = (length: Length) => given(length, "job");
const lower = (bottom: Bottom) => given(bottom, "job");
/** Projection 9, embedment 24, a nut of 1.251 at the bottom. */
const long = (length: number, rod: NonNullable<Changes["rod"]> = {}): Changes => ({
  rod: { length: of(nanometres(length)), ...rod },
});

describe("rod-length", () => {
  // 9 + 24 + nut 1.251 + 1: ASTM F1554, +-1 in over 24 in.
  testAtLimit({
    name: "a rod over 24 in that may come 1 in short",
    rule: rodLength,
    at: (delta) => long(inch(35.251) + delta),
    passes: 1,
    pick: SHORTEST,
  });

  // 6 + 12 + 1.251 + 1/2: +-1/2 in up to 24 in.
  testAtLimit({
    name: "a rod of 24 in and less that may come 1/2 in short",
    rule: rodLength,
    at: (delta) => long(inch(19.751) + delta, { projection: of(inch(6)), embedment: of(inch(12)) }),
    passes: 1,
    pick: SHORTEST,
  });

  it.each([
    [inch(24), 0.5],
    [plus(inch(24), 1), 1],
  ])("the tolerance changes beyond 24 in: %d nm", (length, tolerance) => {
    const row = rowOf(rodLength, long(length), SHORTEST);
    expect(row.value).toEqual({ kind: "length", twice: 2 * (length - inch(tolerance)) });
  });

  // Grout 1-1/2 + plate 1-1/2 + washer 1/2 + nut 1.251 = 4.751, embedment 24 and the nut under it 1.251, 1 in short.
  testAtLimit({
    name: "short and set to its embedment it still takes its stack",
    rule: rodLength,
    at: (delta) => long(inch(31.002) + delta, { projection: of(inch(5.5)) }),
    passes: 1,
    pick: FOR_STACK,
  });

  // Underside 3-1/2 + template 1/4 + nut 1.251 = 5.001, and 1.251 below the embedment.
  testAtLimit({
    name: "short and set to its embedment it still takes the template and its upper nut",
    rule: rodLength,
    at: (delta) => ({
      ...long(inch(31.252) + delta, { projection: of(inch(5.5)) }),
      template: { height: of(inch(3.5)) },
    }),
    passes: 1,
    pick: FOR_TEMPLATE,
  });

  it("asks nothing of a rod as long as projection and embedment whose stack fits all the same", () => {
    const rows = rowsOf(rodLength, long(inch(33)));
    expect(rows.filter(({ status }) => status === "fail").map(({ severity }) => severity)).toEqual(
      Array(4).fill("advise"),
    );
  });

  it("asks where the same rod short by its tolerance does not take its stack, with the sum", () => {
    expect(rowOf(rodLength, long(inch(29.5), { projection: of(inch(5.5)) }), FOR_STACK)).toMatchObject({
      status: "fail",
      severity: "ask",
      edition: "geometry",
      clause: "rod short by the length tolerance of ASTM F1554, its embedment kept: stack on the rod",
      measured: "what a rod as short as it may come leaves above the concrete, with its embedment kept,",
      note:
        "length 29-1/2 - tolerance 1 - embedment 24 against " +
        "grout 1-1/2 + base plate 1-1/2 + washer 1/2 + nut 1.251 + stick-out 0",
    });
  });

  it("leaves a projection that is too short as specified to its own rule", () => {
    const rows = rowsOf(rodLength, long(inch(28), { projection: of(inch(4)) }));
    expect(rows.filter(FOR_STACK)).toMatchObject([
      { status: "not-applicable", note: "the projection is too short as specified: projection" },
    ]);
    expect(rows.filter(FOR_TEMPLATE)).toMatchObject([
      { status: "not-applicable", note: "the projection is too short as specified: template-height" },
    ]);
  });

  it("holds no template that is set over cast rods", () => {
    const rows = rowsOf(rodLength, { ...long(inch(33)), template: { use: "setting plate over cast rods" } });
    expect(rows.filter(FOR_TEMPLATE)).toEqual([]);
    expect(rows.filter(FOR_STACK)).toHaveLength(1);
  });

  it("is not checked for the stack where a layer is not known", () => {
    const changes = { ...long(inch(36)), basePlate: { thickness: missing("basePlate.thickness", "none given") } };
    expect(rowOf(rodLength, changes, FOR_STACK)).toMatchObject({ status: "not-checked" });
  });

  // 9 + 24 + nut 1.251 + a diameter below it 1-1/4 + 1 long
  testAtLimit({
    name: "more than its parts take",
    rule: rodLength,
    at: (delta) => long(inch(36.501) + delta),
    passes: -1,
    pick: LONGEST,
  });

  // 9 + 24 + plate 1 + the nut beneath it 1.251 + a diameter below that 1-1/4 + 1 long
  testAtLimit({
    name: "with a plate between two nuts",
    rule: rodLength,
    at: (delta) => {
      const bottom = given(
        { kind: "plate", nuts: 2, tackWelded: false, shape: "square", size: inch(4), thickness: inch(1) } as const,
        "job",
      );
      return long(inch(37.501) + delta, { bottom });
    },
    passes: -1,
    pick: LONGEST,
  });

  // F1554 rods in a job in millimetres: 230 + 600 + nut 31.7754 + 25.4.
  testAtLimit({
    name: "in millimetres",
    rule: rodLength,
    at: (delta) => ({
      job: { unit: "mm" },
      ...long(millimetres(887.1754) + delta, { projection: of(millimetres(230)), embedment: of(millimetres(600)) }),
    }),
    passes: 1,
    pick: SHORTEST,
  });

  it("says what the rod would lack, and what nothing accounts for", () => {
    expect(rowOf(rodLength, long(inch(33)), SHORTEST)).toMatchObject({
      status: "fail",
      severity: "advise",
      measured: "the length of the rod, as short as it may come,",
      note: "length 33 - tolerance 1 against projection 9 + embedment 24; it may reach 1 less deep, or stand as much lower",
    });
    expect(rowOf(rodLength, long(inch(42)), LONGEST)).toMatchObject({
      status: "fail",
      severity: "advise",
      note:
        "length 42 against projection 9 + embedment 24 + nut 1.251 + rod below it 1-1/4 + tolerance 1; " +
        "nothing that is given takes the other 5.499",
    });
  });

  // 9 + 24 + nut 1.251, as specified; a rod of 33 is embedded to its end, nut and all.
  testAtLimit({
    name: "nominally as long as projection, embedment and the nut that anchors it",
    rule: rodLength,
    at: (delta) => long(inch(34.251) + delta),
    passes: 1,
    pick: FITS,
  });

  it("asks about a rod whose nut does not fit below its embedment", () => {
    const row = rowOf(rodLength, long(inch(33.5)), FITS);
    expect([row.status, row.severity]).toEqual(["fail", "ask"]);
    expect(row.note).toContain("nut 1.251; what anchors the rod stands 0.751 above the end of its embedment");
    expect(rowsOf(rodLength, long(inch(33))).filter(FITS)).toEqual([]);
  });

  // 9 + 24 + 1.251 + 1/2 = 34.751, rounded up to 34-7/8; less 1 - 24 - 1.251 are 8.624 above the concrete.
  it("advises where a rod of a length that is worked out comes short", () => {
    const rows = (grout: number) => rowsOf(rodLength, { base: { grout: of(inch(grout)) } });
    expect(rows(1.5).filter(SHORTEST)).toMatchObject(Array(1).fill({ status: "not-applicable" }));
    expect(rows(1.5).filter(LONGEST)).toMatchObject([{ status: "not-applicable" }]);
    expect(rows(5.373).filter(FOR_STACK)).toMatchObject([{ status: "pass" }]);
    expect(rows(5.374).filter(FOR_STACK)).toMatchObject([{ status: "fail", severity: "advise" }]);
  });

  // To the inside of the hook 33, less 1 - 24 are 8.
  it("measures a bent rod whose length is worked out to the inside of its bend", () => {
    const hook = { bottom: lower({ kind: "hook", reach: inch(5), radius: null }) };
    const status = (grout: number) =>
      rowOf(rodLength, { rod: hook, base: { grout: of(inch(grout)) } }, FOR_STACK).status;
    expect([status(4.749), status(4.75)]).toEqual(["pass", "fail"]);
  });

  // Ordered as long as its parts, it is short by its tolerance alone; a rod ordered shorter is a fault of the job.
  it("is advice where projection 9 + embedment 24 is ordered as 33", () => {
    const row = rowOf(rodLength, long(inch(33)), SHORTEST);
    expect([row.status, row.severity]).toEqual(["fail", "advise"]);
  });

  // ASTM F1554 measures a bent rod to the inside of its bend, where its embedment goes to: 9 + 24 + 1 long.
  testAtLimit({
    name: "of a bent rod, to the inside of its hook",
    rule: rodLength,
    at: (delta) => long(inch(34) + delta, { bottom: lower({ kind: "hook", reach: inch(4), radius: null }) }),
    passes: -1,
    pick: LONGEST,
  });

  it("says of a bent rod how its length is measured", () => {
    const row = rowOf(
      rodLength,
      long(inch(42), { bottom: lower({ kind: "hook", reach: inch(4), radius: null }) }),
      LONGEST,
    );
    expect(row.note).toContain("ASTM F1554 measures a bent rod to the inside of its bend, not along its bar");
  });

  it.each<readonly [string, Bottom, number]>([
    ["nothing", { kind: "straight" }, 34],
    ["a swedged part", { kind: "swedged", length: inch(6) }, 34],
    [
      "a plate washer on its nut",
      {
        kind: "nut",
        washer: { shape: "square", size: inch(3), thickness: inch(0.5) },
        tackWelded: false,
      },
      37.001,
    ],
    [
      "a plate welded on",
      { kind: "plate", nuts: 0, tackWelded: false, shape: "round", size: inch(3), thickness: inch(0.5) },
      35.75,
    ],
  ])("with %s at the lower end: %s in in is the most", (_, bottom, most) => {
    const status = (length: number) => rowOf(rodLength, long(length, { bottom: lower(bottom) }), LONGEST).status;
    expect([status(inch(most)), status(inch(most) + 1)]).toEqual(["pass", "fail"]);
  });

  it.each([
    ["length", { rod: { bottom: missing("rods.bottom", "none given") } }, "rods.length", 8, 8],
    ["grade", long(inch(36), { grade: missing("rods.grade", "none given") }), "rods.grade", 8, 12],
    ["projection", long(inch(36), { projection: missing("rods.projection", "none given") }), "rods.projection", 12, 12],
    ["bottom", long(inch(36), { bottom: missing("rods.bottom", "none given") }), "rods.bottom", 16, 16],
  ] as const)("is not checked without %s", (_, changes, key, count, all) => {
    const rows = rowsOf(rodLength, changes);
    expect(rows).toHaveLength(all);
    expect(rows.filter(({ status, note }) => status === "not-checked" && note.includes(key))).toHaveLength(count);
  });

  it.each(["8.8", "X 100"])("holds no tolerance for grade %s", (grade) => {
    const rows = rowsOf(rodLength, long(inch(36), { grade: given(grade, "job") }));
    const others = rows.filter((row) => !row.clause.startsWith("overall length >= "));
    expect(new Set(others.map(({ status, note }) => `${status}: ${note}`))).toEqual(
      new Set([`not-checked: no tolerance of length is kept for grade ${grade}`]),
    );
  });

  // 26 less 1 and a nut of 1.251 cannot hold a deeper embedment, whatever the projection.
  it.each([
    [inch(23.749), "not-checked"],
    [plus(inch(23.749), 1), "fail"],
  ])("without a projection: embedment %d nm", (embedment, status) => {
    const changes = long(inch(26), { embedment: of(embedment), projection: missing("rods.projection", "none given") });
    expect(rowOf(rodLength, changes, SHORTEST).status).toBe(status);
  });

  // A length of less than embedment and nut, whatever the projection and the tolerance.
  it.each([
    [-1, "fail"],
    [0, "not-checked"],
  ])("without grade and projection: as long as embedment and nut, %i nm", (delta, status) => {
    const row = rowOf(
      rodLength,
      long(inch(25.251) + delta, {
        grade: missing("rods.grade", "no grade is given"),
        projection: missing("rods.projection", "none given"),
      }),
      SHORTEST,
    );
    expect([row.status, row.edition]).toEqual([status, "job"]);
    expect(row.note.includes("it fails whatever the tolerance and the projection are")).toBe(delta < 0);
  });
});
