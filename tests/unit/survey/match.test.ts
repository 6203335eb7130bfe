/** Which point is which rod's, and in which coordinates: names, heights, nearness, and what is in doubt. */
import { describe, expect, it } from "vitest";
import { surveyJob } from "../../../src/survey/index.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { placementAt } from "../../setting-out-plan.js";
import { moved, outcomeOf, pointsFile, surveyCase, surveyOf, TERMS } from "../../survey-case.js";

const one = surveyCase();
const bare = one.points.map((point, i) => ({ ...point, name: String(100 + i), description: "" }));

describe("points and rods", () => {
  it("by name, whatever the case and the order of the file", () => {
    const points = one.points.map((point) => ({ ...point, name: point.name.toLowerCase() })).reverse();
    const { groups, unmatched } = surveyOf(one, points);
    expect(unmatched).toEqual([]);
    expect(groups.flatMap(({ rods }) => rods.map(({ radial }) => radial))).toEqual(Array(8).fill(0));
  });

  it("by nearness, and extra points are unmatched", () => {
    const far = { ...moved(bare[0] as (typeof bare)[0], 30, 0), name: "tree" };
    const { groups, unmatched } = surveyOf(one, [...bare.map((point) => moved(point, 0.5, -0.25)), far]);
    expect(groups.map(({ rods }) => rods.map(({ tag }) => tag))).toEqual(Array(2).fill(["A1", "A2", "A3", "A4"]));
    expect(unmatched.map(({ name, why }) => [name, why])).toEqual([["tree", "no rod stands near"]]);
  });

  it("a point that may be any of two rods is taken for none, and said so", () => {
    const outcome = outcomeOf(one, [moved(bare[0] as (typeof bare)[0], 6, 0), ...bare.slice(1)], { within: inches(7) });
    expect(outcome.findings.map(({ code }) => code)).toEqual(["survey-ambiguous"]);
    expect(outcome.ok && outcome.value.unmatched[0]?.candidates).toEqual(["A-1_A1", "A-1_A2"]);
  });

  it("two points of one rod: the same name twice is a fault, two heights tell its lean", () => {
    const [first] = one.points as [(typeof one.points)[0]];
    const twice = outcomeOf(one, [...one.points, { ...first, line: 40 }]);
    expect(twice.ok).toBe(false);
    expect(twice.findings[0]).toMatchObject({ code: "survey-duplicate", at: { line: 40 } });
    const low = {
      ...moved(first, 0.25, 0),
      name: "A-1_A1_B",
      elevation: nanometres((first.elevation ?? 0) - inches(6)),
    };
    const rod = surveyOf(one, [...one.points, low])
      .groups.flatMap(({ rods }) => rods)
      .find(({ lean }) => lean !== null);
    expect(rod?.lean).toEqual({ dx: -inches(0.25), dy: 0, over: inches(6) });
    const said = { ...low, name: "A-1_A1", description: "bottom" };
    expect(
      surveyOf(one, [...one.points, said])
        .groups.flatMap(({ rods }) => rods)
        .filter(({ lean }) => lean !== null),
    ).toHaveLength(1);
  });

  it("a leaning rod is taken at the middle of its base plate's thickness", () => {
    // T.O.C. 1200 in, grout 1-1/2, plate 1-1/2: middle at 1202-1/4; points at 1209 and 1203: 1/8 of the way below the lower one.
    const [first] = one.points as [(typeof one.points)[0]];
    const low = {
      ...moved(first, 0.25, 0),
      name: "A-1_A1_B",
      elevation: nanometres((first.elevation ?? 0) - inches(6)),
    };
    const rod = surveyOf(one, [...one.points, low])
      .groups.flatMap(({ rods }) => rods)
      .find(({ lean }) => lean !== null);
    expect(rod?.dx).toBe(inches(0.25 * 1.125));
  });

  it("a name that lies at another rod is taken as written, and told", () => {
    const [a, b, ...rest] = one.points as [(typeof one.points)[0], (typeof one.points)[0]];
    const outcome = outcomeOf(one, [{ ...a, name: b.name }, { ...b, name: a.name }, ...rest]);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["survey-name", "survey-name"]);
    expect(outcome.ok && outcome.value.groups[0]?.verdict).toBe("does not fit");
  });
});

describe("coordinates", () => {
  const site = surveyCase({
    transform: { kind: "origin", northing: nanometres(4e14), easting: nanometres(2e14), bearing: 30 },
  });
  const onSite = site.points.map((point) => {
    const { sin, cos } = { sin: 0.5, cos: Math.sqrt(3) / 2 };
    const northing = nanometres(4e14 + point.northing * cos - point.easting * sin);
    return { ...point, northing, easting: nanometres(2e14 + point.easting * cos + point.northing * sin) };
  });

  it("local or site, found by nearness", () => {
    expect(surveyOf(site, site.points).system).toBe("local");
    const survey = surveyOf(site, onSite);
    expect(survey.system).toBe("site");
    expect(Math.max(...survey.groups.flatMap(({ rods }) => rods.map(({ radial }) => radial)))).toBeLessThanOrEqual(3);
  });

  it("northing and easting changed round: refused with a hint, though the order is insisted on", () => {
    const swapped = onSite.map((point) => ({ ...point, northing: point.easting, easting: point.northing }));
    const outcome = outcomeOf(site, swapped);
    expect(outcome.ok).toBe(false);
    expect(outcome.findings[0]).toMatchObject({ code: "survey-swapped", severity: "error" });
    expect(outcome.findings[0]?.hint).toContain("--order PENZD");
    const insisted = pointsFile(swapped, { order: { value: "PNEZD", by: "option" } });
    expect(surveyJob(site.job, site.aim, insisted, TERMS).findings[0]).toMatchObject({ severity: "error" });
  });

  it("the wrong foot: 2 parts in a million show on the site", () => {
    const us = onSite.map((point) => ({
      ...point,
      northing: nanometres(point.northing * 1.000002),
      easting: nanometres(point.easting * 1.000002),
    }));
    const told = (by: "file name" | "option") =>
      surveyJob(site.job, site.aim, pointsFile(us, { unit: { value: "ft-us", by } }), TERMS);
    expect(told("file name").findings[0]).toMatchObject({ code: "survey-unit", severity: "error" });
    expect(told("file name").findings[0]?.hint).toMatch(/--unit ft(,|$)/);
    const insisted = told("option");
    expect(insisted.findings[0]?.code).toBe("survey-unit");
  });

  it("nowhere near anything", () => {
    const lost = one.points.map((point) => moved(point, 1e6, 3e6));
    expect(outcomeOf(one, lost).findings[0]).toMatchObject({ code: "survey-nowhere" });
  });
});

/** A file whose numbers are those of one unit while it is told to be in another. */
describe("numbers in another unit", () => {
  const MM = { m: 1000, mm: 1, ft: 304.8, in: 25.4 } as const;
  type Told = "m" | "mm" | "ft";
  const misread = (numbers: keyof typeof MM, told: Told) =>
    one.points.map((point) => ({
      ...point,
      northing: nanometres((point.northing * MM[told]) / MM[numbers]),
      easting: nanometres((point.easting * MM[told]) / MM[numbers]),
    }));
  const outcomeOfUnit = (numbers: keyof typeof MM, told: Told, by: "option" | "file name") =>
    surveyJob(one.job, one.aim, pointsFile(misread(numbers, told), { unit: { value: told, by } }), TERMS);

  it.each([
    ["m", "ft", "--unit m"],
    ["ft", "m", "--unit ft"],
    ["mm", "m", "--unit mm"],
    ["m", "mm", "--unit m"],
    ["in", "ft", "divide by 12"],
    ["in", "mm", "divide by 12"],
  ] as const)("%s read as %s is refused, though an option insists", (numbers, told, hint) => {
    for (const by of ["option", "file name"] as const) {
      const outcome = outcomeOfUnit(numbers, told, by);
      expect(outcome.ok).toBe(false);
      expect(outcome.findings[0]).toMatchObject({ code: "survey-unit", severity: "error" });
      expect(outcome.findings[0]?.hint).toContain(hint);
      expect(outcome.findings[0]?.message).toMatch(/as told .* 8 of 8 points lie where they should/);
    }
  });

  it.each(["m", "mm", "ft"] as const)("%s read as itself is not doubted, whoever says so", (unit) => {
    const outcome = outcomeOfUnit(unit, unit, "option");
    expect([outcome.ok, outcome.findings]).toEqual([true, []]);
  });

  it("of two feet that differ by less than the rods are off either may be insisted on", () => {
    const us = one.points.map((point) => ({ ...point, easting: nanometres(point.easting * 1.000002) }));
    const outcome = surveyJob(one.job, one.aim, pointsFile(us, { unit: { value: "ft-us", by: "option" } }), TERMS);
    expect([outcome.ok, outcome.findings]).toEqual([true, []]);
  });

  it("of a base alone at 0,0, where every reading lies near, too", () => {
    const lone = surveyCase({ placements: [placementAt(["A", "1"])] });
    const grown = lone.points.map((point) => ({
      ...point,
      northing: nanometres(point.northing * 3.5),
      easting: nanometres(point.easting * 3.5),
    }));
    const feet = lone.points.map((point) => ({
      ...point,
      northing: nanometres(point.northing * 0.3048),
      easting: nanometres(point.easting * 0.3048),
    }));
    const read = (points: typeof feet) =>
      surveyJob(lone.job, lone.aim, pointsFile(points, { unit: { value: "ft", by: "option" } }), TERMS);
    expect(read(feet).findings[0]).toMatchObject({ code: "survey-unit", severity: "error" });
    expect(read(grown).ok).toBe(true);
  });
});

describe("a lost decimal point", () => {
  const FAR = 1e14;
  const lost = (change: Partial<(typeof one.points)[0]>) =>
    one.points.map((point, i) => (i === 0 ? { ...point, ...change } : point));

  it.each([
    ["northing", { northing: nanometres(FAR + 1) }],
    ["easting, the other way", { easting: nanometres(-FAR - 1) }],
    ["elevation", { elevation: nanometres(FAR + 1) }],
    ["northing, as far as a coordinate goes", { northing: 1e16 as ReturnType<typeof nanometres> }],
  ])("in a %s: a finding with its line, and the report for the others", (_, change) => {
    const outcome = outcomeOf(one, lost(change));
    const line = one.points[0]?.line;
    expect(outcome.findings).toMatchObject([{ code: "survey-far", severity: "warning", at: { line } }]);
    if (!outcome.ok) throw new Error("no report");
    const { groups, unmatched } = outcome.value;
    expect(unmatched).toMatchObject([{ name: "A-1_A1", line, why: "it lies more than 100 km from the job" }]);
    expect(groups.map(({ at, verdict, missing }) => [at, verdict, missing])).toEqual([
      ["A-1", "not-checked", ["A1"]],
      ["B-1", "fits", []],
    ]);
  });

  it("that leaves the point within reach: it is taken by its name, and told", () => {
    const outcome = outcomeOf(one, lost({ northing: nanometres(FAR / 2) }));
    expect(outcome.findings[0]).toMatchObject({ code: "survey-name", hint: "a slip in its coordinates?" });
    expect(outcome.ok && outcome.value.groups[0]?.verdict).toBe("does not fit");
  });

  it("in every point: nothing lies where it should", () => {
    const all = one.points.map((point) => ({ ...point, northing: nanometres(FAR * 2) }));
    expect(outcomeOf(one, all).findings[0]).toMatchObject({ code: "survey-nowhere", severity: "error" });
  });

  it("on a site far from any origin, in millimetres, every other reading being beyond all lattices", () => {
    const far = surveyCase({
      transform: { kind: "origin", northing: 4.5e15 as never, easting: nanometres(5e14), bearing: 0 },
    });
    const points = far.points.map((point) => ({
      ...point,
      northing: (4.5e15 + point.northing) as typeof point.northing,
      easting: nanometres(5e14 + point.easting),
    }));
    const file = pointsFile(points, { unit: { value: "mm", by: "option" } });
    const outcome = surveyJob(far.job, far.aim, file, TERMS);
    expect([outcome.ok, outcome.findings]).toEqual([true, []]);
  });
});
