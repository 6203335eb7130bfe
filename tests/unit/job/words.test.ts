/** Words in any case of their letters, and texts that hold what cannot be seen. */
import { describe, expect, it } from "vitest";
import { faultsOf, jobOf, withBase } from "./files.js";

const WHOLE = withBase({
  member: "column",
  rods: "{ diameter: 1, finish: galvanized, bottom: nut, torqued: false }",
  basePlate: "{ x: 18, y: 16, hole: 1-13/16, washer: { shape: square, size: 3, thickness: 1/2 } }",
  template:
    "{ thickness: 1/4, use: template, support: form, material: steel, key: auto, outline: { kind: rectangle, x: 20, y: 18, corner: { kind: chamfer, size: 1 } } }",
})
  .replace('job: { number: "1" }', 'job: { number: "1", status: released }')
  .replace("rules: us", "rules: us\nshop: plasma");

describe("a word", () => {
  const plain = jobOf(WHOLE);

  it.each([
    ["status: released", "status: Released"],
    ["status: released", "status: RELEASED"],
    ["units: in", "units: IN"],
    ["rules: us", "rules: US"],
    ["shop: plasma", "shop: Plasma"],
    ["member: column", "member: Column"],
    ["finish: galvanized", "finish: Galvanized"],
    ["bottom: nut", "bottom: Nut"],
    ["kind: rectangle, x: 12", "kind: Rectangle, x: 12"],
    ["kind: rectangle, x: 20", "kind: RECTANGLE, x: 20"],
    ["kind: chamfer", "kind: Chamfer"],
    ["shape: square", "shape: Square"],
    ["use: template", "use: Template"],
    ["support: form", "support: FORM"],
    ["material: steel", "material: Steel"],
    ["key: auto", "key: Auto"],
    ["torqued: false", "torqued: False"],
  ])("%s may be written %s", (small, large) => {
    const job = WHOLE.replace(small, large);
    expect(job).not.toBe(WHOLE);
    expect(faultsOf(job)).toEqual([]);
    expect(jobOf(job)).toEqual(plain);
  });

  it.each<[string, Readonly<Record<string, string>>]>([
    ["opening: Auto", { template: "{ thickness: 1/4, opening: Auto }" }],
    ["opening: NONE", { template: "{ thickness: 1/4, opening: NONE }" }],
    ["key: None", { template: "{ thickness: 1/4, key: None }" }],
    ["start: Straddle", { pattern: "{ kind: circle, diameter: 12, count: 4, start: Straddle }" }],
    ["start: On-Axis", { pattern: "{ kind: Circle, diameter: 12, count: 4, start: On-Axis }" }],
    ["perimeter: Yes", { pattern: "{ kind: rectangle, x: 12, y: 10, nx: 3, ny: 3, perimeter: Yes }" }],
    ["grout: levelling", { levelling: "Nuts" }],
    ["exposure", { concrete: "{ x: 24, y: 24, exposure: Against Ground }" }],
    ["nut, thread, grade", { rods: "{ diameter: 1, nut: Heavy Hex, thread: unc, grade: f1554 55 }" }],
  ])("%s in capitals is no fault", (_name, changes) => {
    expect(faultsOf(withBase(changes))).toEqual([]);
  });

  it("in millimetres is read in either case: MM is mm", () => {
    const metric = WHOLE.replace("units: in", "units: MM")
      .replace("shop: plasma", "shop: Plasma-Metric")
      .replace("rules: us", "rules: Metric");
    expect(jobOf(metric.replace("diameter: 1,", "diameter: M24,"))).toMatchObject({
      unit: "mm",
      editions: { set: "metric" },
    });
  });

  it("that is another is refused as it was written, beside words in capitals", () => {
    const faults = faultsOf(WHOLE.replace("status: released", "status: Relased").replace("rules: us", "rules: US"));
    expect(faults).toEqual([
      expect.stringContaining('"Relased" is not allowed; allowed is one of preliminary, for approval, released'),
    ]);
  });

  it("names and marks keep their case", () => {
    expect(jobOf(WHOLE.replace("mark: B1", "mark: b1")).bases[0]?.mark).toBe("b1");
  });
});

describe("a line of text", () => {
  it.each(["\u202e", "\u202a", "\u2066", "\u2069", "\u200e", "\u200f", "\u061c", "\u2028", "\u2029"])(
    "that reorders or breaks what stands around it is refused: %j",
    (sign) => {
      const titled = WHOLE.replace('number: "1"', `number: "1", title: ${JSON.stringify(`cold ${sign}store`)}`);
      expect(faultsOf(titled)).toEqual([
        expect.stringContaining("job.title: holds an unseen sign that reorders or breaks a line"),
      ]);
    },
  );

  it.each(["\u05d0\u05d1", "\u0627\u0644", "caf\u00e9", "\u6f22\u5b57", "\u0915\u094d\u200d\u0937", "a\u00adb"])(
    "in any script is kept: %s",
    (text) => {
      expect(jobOf(WHOLE.replace('number: "1"', `number: "1", title: ${JSON.stringify(text)}`)).title).toBe(text);
    },
  );
});
