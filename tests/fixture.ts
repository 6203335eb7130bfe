/** Jobs and bases for tests, made by hand without the readers: every field of the model, overridable. Invented data. */

import type { Base, Given, Job, RodGroup, Shop } from "../src/job/model/job.js";
import { CUT_NAME_PARTS, given, missing } from "../src/job/model/job.js";
import { resolveBudget } from "../src/job/resolve/budget.js";
import { makeRodShop } from "../src/job/resolve/rod-shop.js";
import { makeRates } from "../src/job/resolve/rod-stock.js";
import { usualBolt } from "../src/job/resolve/splice-bolt.js";
import { resolveSurvey } from "../src/job/schema/survey.js";
import type { BaseWithRods } from "../src/rods/index.js";
import { placeRods } from "../src/rods/index.js";
import type { Length } from "../src/units/length.js";
import { inches, millimetres, nanometres } from "../src/units/length.js";

const zero = nanometres(0);
const shopValue = (value: Length): Given<Length> => given(value, "shop test");

export function shopFixture(changes: Partial<Shop> = {}): Shop {
  return {
    name: "test",
    process: "plasma",
    deviation: { kind: "iso9013", class: 1 },
    drilled: shopValue(millimetres(0.4)),
    taper: { kind: "own", value: millimetres(0.2) },
    smallestHole: { perThickness: 1.5, least: millimetres(5), from: "test" },
    smallestWeb: { perThickness: 1.5, least: millimetres(5), from: "test" },
    smallestCorner: { least: millimetres(1), from: "test" },
    edge: shopValue(inches(0.5)),
    web: shopValue(inches(0.5)),
    nutGap: shopValue(inches(0.125)),
    bearing: shopValue(inches(1)),
    formGap: shopValue(inches(0.5)),
    increment: shopValue(inches(0.5)),
    finishingRoom: shopValue(inches(1)),
    groutRoom: shopValue(zero),
    largestSide: given(inches(24), "Design Guide 1, 2nd ed., s.2.9"),
    table: given({ x: inches(60), y: inches(120) }, "shop test"),
    thicknesses: {
      steel: given([0.1875, 0.25, 0.375, 0.5].map(inches), "shop test"),
      plywood: given([0.5, 0.75].map(inches), "shop test"),
    },
    templateWasher: missing("shop.templateWasher", "no washer on the template is named"),
    density: {
      steel: given({ value: 490, unit: "lb/ft3" } as const, "AISC practice"),
      plywood: missing("shop.density.plywood", "the shop file names no density for plywood"),
    },
    marking: { how: "scribe", textHeight: inches(0.5), leastTextHeight: inches(0.25), clearance: inches(0.125) },
    cutFile: {
      layers: { outline: "OUTLINE", holes: "HOLES", openings: "OPENINGS", marks: "MARKS", drill: "DRILL" },
      origin: "lower left",
      name: CUT_NAME_PARTS,
      flavour: "polyline",
    },
    spliceBolt: usualBolt("in"),
    rodShop: makeRodShop(undefined, "shop test", "in"),
    rates: makeRates(undefined, "shop test", "in"),
    ...changes,
  };
}

/** Four 1-1/4 in rods at 12 x 10 in: the example base of the job-file documentation. */
export function groupFixture(changes: Partial<RodGroup> = {}, rod: Partial<RodGroup["rod"]> = {}): RodGroup {
  return {
    letter: "A",
    pattern: { kind: "rectangle", x: inches(12), y: inches(10), nx: 2, ny: 2, perimeter: false },
    hole: given(inches(1.3125), "Design Guide 1, 2nd ed., s.2.9"),
    tableHole: given(inches(1.3125), "Design Guide 1, 2nd ed., s.2.9"),
    baseHole: given(inches(2.0625), "job"),
    tableBaseHole: given(inches(2.0625), "AISC 360-22 C-J9.1"),
    washer: given({ shape: "square", size: inches(3), thickness: given(inches(0.5), "job") } as const, "job"),
    ...changes,
    rod: {
      size: "1-1/4",
      diameter: inches(1.25),
      thread: "UNC",
      grade: given("F1554 55", "job"),
      finish: given("galvanized" as const, "job"),
      zincGrowth: given(inches(0.007), "zinc on the diameter, upper value"),
      nut: given({ kind: "heavy hex", acrossCorners: inches(2.309), height: inches(1.251) } as const, "ASME B18.2.2"),
      torqued: given(false, "job"),
      welded: false,
      weldable: false,
      projection: given(inches(9), "job"),
      embedment: given(inches(24), "job"),
      length: missing("rods.length", "no rod length is given"),
      threadLength: given(inches(8), "job"),
      fullThread: false,
      bottomThread: missing("rods.bottomThreads", "no thread length at the lower end is given"),
      threadClass: given("2A", "ASTM F1554"),
      threading: missing("rods.threading", "how the threads are made is not given"),
      zincProcess: missing("rods.zincProcess", "no preference of a zinc process is given"),
      nutFinish: missing("rods.nutFinish", "no other coating of the nuts is given"),
      protectors: false,
      topNuts: given(1, "default: one nut"),
      levellingNuts: missing("rods.levellingNuts", "no number of levelling nuts is given"),
      bottom: given({ kind: "nut", washer: null, tackWelded: false } as const, "job"),
      wrenchRoom: missing("rods.wrenchRoom", "no wrench room is given"),
      stickOut: given(zero, "default: full engagement of the nut"),
      ...rod,
    },
  };
}

export function baseFixture(changes: Partial<Base> = {}): Base {
  return {
    place: { file: "job.yaml", line: 1, column: 1, path: "bases[0]" },
    mark: "B1",
    kind: "",
    quantity: 6,
    member: "column",
    note: "",
    delivery: "",
    groups: [groupFixture()],
    basePlate: {
      shape: given({ kind: "rectangle", x: inches(18), y: inches(16), corner: { kind: "square" } } as const, "job"),
      at: { x: zero, y: zero },
      thickness: given(inches(1.5), "job"),
      pattern: missing("basePlate.pattern", "no second source for the pattern"),
      patternOrigin: "as listed",
      groutHoles: [],
    },
    column: missing("column", "no column is given"),
    columnName: "",
    concrete: {
      shape: given({ kind: "rectangle", x: inches(24), y: inches(24), corner: { kind: "square" } } as const, "job"),
      at: { x: zero, y: zero },
      depth: missing("concrete.depth", "no depth is given"),
      exposure: given("exposed" as const, "job"),
    },
    grout: given(inches(1.5), "job"),
    levelling: given("nuts" as const, "job"),
    template: {
      mark: "T1",
      quantity: 2,
      sharedBy: [],
      written: { mark: null, quantity: null },
      use: "template",
      support: given("form" as const, "job"),
      material: "steel",
      grade: missing("template.grade", "no material grade of the template is given"),
      thickness: inches(0.25),
      outline: {
        kind: "rectangle",
        x: inches(26),
        y: inches(18),
        at: { x: zero, y: zero },
        corner: { kind: "chamfer", x: inches(1), y: inches(1) },
      },
      opening: { kind: "circle", diameter: inches(6), at: { x: zero, y: zero } },
      key: "none",
      height: given(inches(3), "job"),
      nailHoles: [],
      groutHoles: [],
      lower: null,
      segments: null,
    },
    origins: {},
    ...changes,
  };
}

export function jobFixture(changes: Partial<Job> = {}): Job {
  return {
    number: "24-118",
    title: "Cold store, phase 2",
    revision: "B",
    status: "released",
    date: "2026-11-24",
    unit: "in",
    editions: {
      set: "us",
      templateHoles: "Design Guide 1, 2nd ed.",
      baseHoles: "AISC 360-22 C-J9.1",
      placing: "ACI 117-10",
      edges: "AISC 360-22",
      concrete: "ACI 318-19",
    },
    shop: shopFixture(),
    bases: [baseFixture()],
    answers: [],
    register: null,
    numbers: null,
    raised: {},
    drawing: { number: "S-301", revision: "3" },
    revisions: [],
    drawnBy: "",
    owner: "",
    tolerances: "",
    sheet: null,
    plan: null,
    budget: resolveBudget(),
    survey: resolveSurvey(),
    lookAlike: given(inches(1), "default 1 in"),
    merge: "none",
    templates: [],
    readAs: null,
    ...changes,
  };
}

/** The job with the rods of its bases. Throws where a base's pattern has a fault. */
export function withRods(job: Job): { readonly job: Job; readonly bases: readonly BaseWithRods[] } {
  const bases = job.bases.map((base) => {
    const rods = placeRods(base);
    if (!rods.ok) throw new Error(rods.findings.map(({ message }) => message).join("; "));
    return { base, rods: rods.value };
  });
  return { job, bases };
}
