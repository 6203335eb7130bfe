/** Rods as a shop makes them, from a base of the fixture: four 1-1/4 in rods of F1554 55, galvanized, 9 in above and 24 in below. */
import { describe, expect, it } from "vitest";
import type { Base, Bottom, Job, Rod } from "../../../../src/job/model/job.js";
import { given, missing } from "../../../../src/job/model/job.js";
import { detailRod } from "../../../../src/rods/detail/index.js";
import { inches, millimetres, nanometres } from "../../../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../../../fixture.js";

const inch = inches;
const detailOf = (rod: Partial<Rod> = {}) => detailRod(jobFixture(), baseFixture(), groupFixture({}, rod));
const bottom = (value: Extract<Rod["bottom"], { kind: "given" }>["value"]) => given(value, "job");

/** A length that is worked out, with its parts. */
function worked(input: ReturnType<typeof detailOf>["overall"]) {
  if (input.kind === "missing") throw new Error(input.why);
  return input.value;
}

describe("length of a rod", () => {
  it("is what projects, is embedded, and the lower end takes, to the shop's step", () => {
    const { overall, cut } = detailOf();
    // 9 + 24 + 1.251 (ASME B18.2.2, greatest height of a 1-1/4 heavy hex nut) + 1/2 = 34.751, up to the eighth: 34.875.
    expect(worked(overall)).toMatchObject({ value: inch(34.875), by: "worked out" });
    expect(worked(cut).value).toBe(inch(34.875));
    expect(worked(overall).terms.map(({ length }) => length)).toEqual(
      [9, 24, 1.251, 0.5, 0, 0.124].map((each) => inch(each)),
    );
  });

  it.each<[string, Partial<Rod>, number]>([
    ["nothing anchors it", { bottom: bottom({ kind: "straight" }) }, 33],
    ["its end is swedged", { bottom: bottom({ kind: "swedged", length: inch(6) }) }, 33],
    [
      "a plate and its nut",
      {
        bottom: bottom({
          kind: "plate",
          nuts: 2,
          tackWelded: false,
          shape: "square",
          size: inch(4),
          thickness: inch(0.75),
        }),
      },
      35.625,
    ],
    ["the job gives it", { length: given(inch(36), "job") }, 36],
  ])("where %s", (_, rod, length) => {
    const { overall, cut } = detailOf(rod);
    expect(worked(overall).value).toBe(inch(length));
    expect(worked(cut).value).toBe(inch(length));
    const sum = worked(overall).terms.reduce((total, each) => total + each.length, 0);
    expect(sum).toBe(worked(overall).value);
  });

  it("is not known where a part is not, and says which key would say it", () => {
    const { overall, cut, kilograms } = detailOf({ embedment: missing("rods.embedment", "no embedment is given") });
    for (const each of [overall, cut, kilograms])
      expect(each).toMatchObject({ kind: "missing", key: "rods.embedment" });
  });
});

describe("kind of a rod", () => {
  const plate = { shape: "square", size: inch(4), thickness: inch(0.75) } as const;
  it.each<[string, Partial<Rod>]>([
    ["headed with nut", {}],
    ["headed with plate", { bottom: bottom({ kind: "plate", nuts: 2, tackWelded: false, ...plate }) }],
    ["hooked", { bottom: bottom({ kind: "hook", reach: inch(5), radius: null }) }],
    ["hooked", { bottom: bottom({ kind: "hook", reach: inch(5), radius: null }), fullThread: true }],
    ["swedged", { bottom: bottom({ kind: "swedged", length: inch(6) }) }],
    ["threaded one end", { bottom: bottom({ kind: "straight" }), bottomThread: given(inch(0), "job") }],
    ["threaded both ends", { bottom: bottom({ kind: "straight" }), bottomThread: given(inch(4), "job") }],
    ["full thread", { fullThread: true }],
    ["full thread", { fullThread: true, bottom: missing("rods.bottom", "not given") }],
  ])("%s", (kind, rod) => {
    expect(detailOf(rod).kind).toMatchObject({ kind: "given", value: kind });
  });

  it("is not known where the lower end is not", () => {
    expect(detailOf({ bottom: missing("rods.bottom", "not given") }).kind).toMatchObject({ key: "rods.bottom" });
  });
});

describe("where the embedment goes", () => {
  it("to the bearing face of what anchors the rod, or to its end", () => {
    expect(detailOf().embedmentTo).toBe("to the top of the nut at the lower end");
    const washer = { shape: "round", size: inch(3), thickness: inch(0.5) } as const;
    const washed = detailOf({ bottom: bottom({ kind: "nut", washer, tackWelded: false }) });
    expect(washed.embedmentTo).toBe("to the top of the plate washer at the lower end");
    // the washer is part of the length: 9 + 24 + 1/2 + 1.251 + 1/2, up to the eighth
    expect(worked(washed.overall).value).toBe(inch(35.375));
    expect(detailOf({ bottom: bottom({ kind: "straight" }) }).embedmentTo).toBe("to the lower end of the rod");
  });

  it("to the end of a rod that is ordered no longer than projection and embedment, by a nanometre", () => {
    const long = (length: number) => detailOf({ length: given(nanometres(length), "job") }).embedmentTo;
    expect(long(inch(33))).toBe("to the lower end of the rod");
    expect(long(inch(33) + 1)).toBe("to the top of the nut at the lower end");
  });
});

describe("bar and threads", () => {
  // Common practice: rolled to 1-1/2 in on bar of the pitch diameter, cut above it on bar of the full size; sheared to 1-1/4 in.
  it.each([
    ["3/4", 0.75, "rolled", "sheared", "3/4-10 UNC-2A", 0.685],
    ["1-1/4", 1.25, "rolled", "sheared", "1-1/4-7 UNC-2A", 1.1572],
    ["1-1/2", 1.5, "rolled", "sawn", "1-1/2-6 UNC-2A", 1.3917],
    ["1-3/4", 1.75, "cut", "sawn", "1-3/4-5 UNC-2A", 1.75],
    ["2", 2, "cut", "sawn", "2-4.5 UNC-2A", 2],
  ])("%s: %d in is %s, %s", (size, diameter, threading, separation, callout, bar) => {
    const detail = detailOf({ size, diameter: inch(diameter) });
    expect(detail).toMatchObject({ threading: { value: threading }, separation: { value: separation } });
    expect(detail.threadCallout).toBe(callout);
    // ASME B1.1, basic pitch diameters of the coarse series, to four places.
    expect(detail.bar.kind === "given" ? detail.bar.value / inch(1) : 0).toBeCloseTo(bar, 4);
  });

  // ISO 724, basic pitch diameter of M30x3.5: 27.727 mm.
  it("of a metric rod", () => {
    const metric = { size: "M30", diameter: millimetres(30), thread: "metric coarse" } as const;
    const { bar, threadCallout } = detailOf({ ...metric, threadClass: given("6g", "ISO 965-1 (from memory)") });
    expect(bar.kind === "given" ? bar.value / 1e6 : 0).toBeCloseTo(27.727, 3);
    expect(threadCallout).toBe("M30x3.5-6g");
  });

  it("are as the job asks where it asks", () => {
    const cut = detailOf({ threading: given("cut", "job") });
    expect(cut).toMatchObject({ threading: { value: "cut", from: "job" }, bar: { value: inch(1.25) } });
  });

  it("of a rod that is threaded in full are as long as the rod", () => {
    const { topThread, bottomThread, overall } = detailOf({ fullThread: true });
    const whole = worked(overall).value;
    expect([topThread, bottomThread]).toMatchObject([{ value: whole }, { value: whole }]);
  });
});

describe("color of the end", () => {
  // ASTM F1554: 36 blue, 55 yellow, 105 red.
  it.each([
    ["F1554 36", "blue"],
    ["F1554 55", "yellow"],
    ["F1554 105", "red"],
  ])("%s: %s", (grade, color) => {
    expect(detailOf({ grade: given(grade, "job") }).endColor).toMatchObject({ value: color, from: "ASTM F1554" });
  });

  it.each(["8.8", "A193 B7"])("%s has none that is kept", (grade) => {
    expect(detailOf({ grade: given(grade, "job") }).endColor.kind).toBe("missing");
  });
});

describe("hardware", () => {
  const counts = (changes: Partial<Base>, rod: Partial<Rod> = {}, job: Partial<Job> = {}) =>
    detailRod(jobFixture(job), baseFixture(changes), groupFixture({}, rod)).hardware.map(
      ({ count, what, place }) => `${count} ${what} ${place}`,
    );
  const levelling = (value: "nuts" | "shims" | "plate") => ({ levelling: given(value, "job") });

  it("has a nut on either face of a lower template, which stay in the concrete", () => {
    const base = baseFixture();
    const lower: Base["template"]["lower"] = {
      thickness: inch(0.25),
      outline: { kind: "auto", corner: { kind: "square" } },
      opening: { kind: "auto" },
      level: missing("template.lower.above", "not given"),
    };
    const places = (template: Base["template"]) =>
      detailRod(jobFixture(), { ...base, template }, groupFixture()).hardware.map(
        ({ what, place, count }) => `${count} ${what} ${place}`,
      );
    const plain = places(base.template);
    expect(places({ ...base.template, lower }).filter((each) => !plain.includes(each))).toEqual([
      "2 nut lower template",
    ]);
    expect(plain.some((each) => each.includes("lower template"))).toBe(false);
  });

  it.each<[string, readonly string[], Partial<Base>, Partial<Rod>]>([
    [
      "levelled by nuts, those of the template serve again",
      [
        "1 nut base plate",
        "1 plate washer base plate",
        "1 nut levelling",
        "1 plate washer levelling",
        "1 nut lower end",
      ],
      levelling("nuts"),
      {},
    ],
    [
      "on shims, the template has a nut of its own",
      ["1 nut base plate", "1 plate washer base plate", "1 nut template", "1 nut lower end"],
      levelling("shims"),
      {},
    ],
    [
      "on shims with two nuts above, which the template takes",
      ["2 nut base plate", "1 plate washer base plate", "1 nut lower end"],
      levelling("shims"),
      { topNuts: given(2, "job") },
    ],
    [
      "over cast rods nothing holds a template",
      ["1 nut base plate", "1 plate washer base plate", "1 nut lower end"],
      { ...levelling("plate"), template: { ...baseFixture().template, use: "setting plate over cast rods" } },
      {},
    ],
    [
      "levelling nuts as the job says",
      [
        "1 nut base plate",
        "1 plate washer base plate",
        "2 nut levelling",
        "1 plate washer levelling",
        "1 nut lower end",
      ],
      levelling("shims"),
      { levellingNuts: given(2, "job") },
    ],
  ])("%s", (_, expected, changes, rod) => {
    expect(counts(changes, rod)).toEqual(expected);
  });

  it.each<[string, Bottom, readonly string[]]>([
    ["nothing", { kind: "straight" }, []],
    ["a hook", { kind: "hook", reach: inch(5), radius: null }, []],
    [
      "a plate between two nuts",
      { kind: "plate", nuts: 2, tackWelded: false, shape: "square", size: inch(4), thickness: inch(1) },
      ["2 nut lower end", "1 plate lower end"],
    ],
    [
      "a plate welded on",
      { kind: "plate", nuts: 0, tackWelded: false, shape: "square", size: inch(4), thickness: inch(1) },
      ["1 plate lower end"],
    ],
    [
      "a nut with a plate washer",
      { kind: "nut", washer: { shape: "square", size: inch(4), thickness: inch(0.5) }, tackWelded: true },
      ["1 nut lower end", "1 plate washer lower end"],
    ],
  ])("at the lower end: %s", (_, end, expected) => {
    const all = counts(levelling("nuts"), { bottom: given(end, "job") });
    expect(all.filter((each) => each.endsWith("lower end"))).toEqual(expected);
  });

  it("has a protector on each rod whose threads are covered, and says so with its size", () => {
    expect(counts(levelling("nuts"), { protectors: true })).toContain("1 thread protector top");
    expect(counts(levelling("nuts"), {}).filter((each) => each.includes("protector"))).toEqual([]);
    expect(detailOf({ protectors: true }).hardware.at(-1)?.words).toBe("thread protector for 1-1/4 rod");
  });

  // `1` alone would be read as a millimetre.
  it("names inch rods with their unit in a job in millimetres", () => {
    const words = (unit: "in" | "mm", rod: Partial<Rod>) =>
      detailRod(jobFixture({ unit }), baseFixture(), groupFixture({}, rod)).hardware[0]?.words;
    expect(words("mm", { size: "1", diameter: inch(1) })).toMatch(/^1 in heavy hex nut,/);
    expect(words("in", { size: "1", diameter: inch(1) })).toMatch(/^1 heavy hex nut,/);
    const metric = { size: "M30", diameter: millimetres(30), thread: "metric coarse" } as const;
    expect(words("mm", metric)).toMatch(/^M30 /);
  });

  it("has washers on both faces of a plywood template", () => {
    const template = { ...baseFixture().template, material: "plywood" as const };
    expect(counts({ ...levelling("nuts"), template })).toContain("2 washer template");
  });

  // ASTM A563: nuts of grade A with F1554 36 and 55, DH with 105; over-tapped by size with zinc, not without.
  it.each<[string, Partial<Rod>]>([
    // Longer than 9 in and heavier than a pound a rod is dipped (common practice), and its nuts with it.
    ["1-1/4 heavy hex nut, ASTM A563 A, hot-dip galvanized, over-tapped 0.024 in", {}],
    [
      "1/2 heavy hex nut, ASTM A563 A, galvanized as the rods, over-tapped 0.018 in",
      { size: "1/2", diameter: inch(0.5), length: given(inch(9), "job") },
    ],
    [
      "1-1/4 heavy hex nut, ASTM A563 DH, hot-dip galvanized, over-tapped 0.024 in",
      { grade: given("F1554 105", "job"), zincProcess: given("hot-dip", "job") },
    ],
    ["1-1/4 heavy hex nut, ASTM A563 A, plain", { finish: given("plain" as const, "job") }],
    [
      "2 heavy hex nut, ASTM A563 A, mechanically galvanized, over-tapped 0.05 in",
      { size: "2", diameter: inch(2), zincProcess: given("mechanical", "job") },
    ],
    [
      "1-1/4 heavy hex nut, ASTM A563 A, plain, over-tapped 0.024 in",
      { zincProcess: given("hot-dip", "job"), nutFinish: given("plain", "job") },
    ],
  ])("%s", (words, rod) => {
    expect(detailOf(rod).hardware[0]?.words).toBe(words);
  });

  it("says what is not known of it, with its key", () => {
    const group = groupFixture(
      { washer: missing("basePlate.washer", "no washer is given") },
      { nut: missing("rods.nut", "no nut is given") },
    );
    const none = missing("levelling", "what levels the base plate is not given");
    const { hardware, open } = detailRod(jobFixture(), baseFixture({ levelling: none }), group);
    expect(open.map(({ key }) => key)).toEqual(["levelling", "rods.nut", "basePlate.washer"]);
    expect(hardware.map(({ kilograms }) => kilograms)).toEqual([null, null, null]);
  });
});

describe("way through the shop", () => {
  const names = (rod: Partial<Rod>) =>
    detailOf(rod)
      .operations.map(({ name }) => name)
      .join(" ");

  it("has the operations that the rod needs, in their order", () => {
    expect(names({})).toBe("cut thread galvanize mark assemble pack");
    expect(names({ finish: given("plain" as const, "job") })).toBe("cut thread mark assemble pack");
    expect(names({ bottom: bottom({ kind: "hook", reach: inch(5), radius: null }) })).toBe(
      "cut thread bend galvanize mark assemble pack",
    );
    expect(names({ bottom: bottom({ kind: "swedged", length: inch(6) }) })).toBe(
      "cut thread swedge galvanize mark assemble pack",
    );
    expect(names({ bottom: bottom({ kind: "nut", washer: null, tackWelded: true }) })).toBe(
      "cut thread weld galvanize mark assemble pack",
    );
    expect(names({ grade: given("A193 B7", "job") })).toBe("cut thread galvanize assemble pack");
  });

  it("says what each station is set to, and who says so", () => {
    const { operations } = detailOf({ bottomThread: given(inch(3), "job"), protectors: true });
    expect(operations[0]).toEqual({
      name: "cut",
      words: "shear bar of diameter 1.1572 in to 34-7/8 in, chamfer the ends",
      from: "common practice",
    });
    expect(operations[1]?.words).toBe("roll 1-1/4-7 UNC-2A, 8 in at the top, 3 in at the lower end");
    expect(operations.map(({ words }) => words).join()).toContain(
      "hot-dip galvanized, ASTM F2329, the rod is too long or too heavy",
    );
    expect(operations.at(-1)?.words).toBe("bundle and tag by lot, thread protectors on");
  });

  it("names the key of a length that is not given", () => {
    expect(detailOf().operations[1]?.words).toContain("not given (rods.bottomThreads) at the lower end");
  });

  it("knows where nuts are tack welded", () => {
    expect(detailOf().tackWelds).toEqual([]);
    expect(detailOf({ bottom: bottom({ kind: "nut", washer: null, tackWelded: true }) }).tackWelds).toEqual([
      "the nut at the lower end to the rod, on its underside",
    ]);
  });
});

describe("notes", () => {
  // ASTM F1554: +-1/2 in to 24 in, +-1 in beyond.
  it.each([
    [24, "Length +/- 1/2 in (ASTM F1554)."],
    [24.125, "Length +/- 1 in (ASTM F1554)."],
  ])("a rod of %d in: %s", (length, note) => {
    expect(detailOf({ length: given(inch(length), "job") }).notes).toContain(note);
  });

  it("have the tolerance of a thread, of F1554 rods alone", () => {
    expect(detailOf().notes).toContain("Thread length + 1 in - 0 (ASTM F1554).");
    expect(detailOf({ grade: given("8.8", "job") }).notes.join()).not.toContain("Thread length");
  });

  it("say which nuts hold the template", () => {
    expect(detailOf().notes.join(" ")).toContain("below it the nut that levels the base plate. Both are used again.");
  });
});
