/** What is typed into a figure of the drawing comes back as the figure that is drawn, whatever the pattern and the unit. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { spliced, spliceOf } from "../../../../src/readers/yaml-edit.js";
import {
  editsOf,
  fieldText,
  giverWords,
  stepsOf,
  type TypedEdits,
  textEdits,
  typedOn,
} from "../../../../src/tasks/live/figure-edits.js";
import { exactText } from "../../../../src/tasks/live/figure-keys.js";
import type { LiveFigure } from "../../../../src/tasks/live/figure-model.js";
import type { LiveBaseView } from "../../../../src/tasks/live/model.js";
import { type Live, openLive } from "../../../../src/tasks/live/open-live.js";
import { millimetres, parseLength, type Unit } from "../../../../src/units/index.js";

const WATCH = { base: "bases[0]", room: { width: 220, height: 170 } };
const SHOPS = ["plasma", "plasma-metric"].map((name) => {
  const path = `templates/shops/${name}.yaml`;
  return [path, readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8")] as const;
});

interface Written {
  readonly unit?: Unit;
  readonly pattern?: string;
  readonly template?: string;
  readonly head?: string;
  readonly base?: string;
}

function open({ unit = "in", pattern, template = "{ thickness: 1/4 }", head = "", base = "" }: Written): Live {
  const rods = unit === "in" ? "1" : "M24";
  const own = pattern === undefined ? "" : `\n    pattern: ${pattern}`;
  const text = `job: { number: "7", title: Store, revision: A, status: preliminary }
units: ${unit}
${head}
bases:
  - mark: B1 # the first
    rods: { diameter: ${rods}, grade: "${unit === "in" ? 36 : 4.6}", projection: ${unit === "in" ? 6 : 150} }${own}${base}
    template: ${template}
`;
  return openLive({ job: "job.yaml", files: new Map([["job.yaml", text], ...SHOPS]) }, { date: "2026-11-24" });
}

function view(live: Live): LiveBaseView {
  const seen = live.look(WATCH);
  if (seen === null)
    throw new Error(
      live
        .state()
        .findings.map(({ message }) => message)
        .join("; "),
    );
  return seen;
}

/** The figure of this name, the `n`th of several. */
function figure(live: Live, name: string, n = 0): LiveFigure {
  const { figures } = view(live).figures;
  const found = figures.filter((each) => each.name === name)[n];
  if (found === undefined) throw new Error(`no figure ${name} among ${figures.map((each) => each.name).join(", ")}`);
  return found;
}

function type(live: Live, on: LiveFigure, text: string, field = 0): TypedEdits {
  const job = live.state();
  const key = on.keys[field];
  if (key === undefined) throw new Error(`figure ${on.name} has no field ${field}`);
  const made = editsOf([{ figure: key, text }], typedOn(job.bases[0] ?? never(), job));
  if (made.ok) live.edit(made.edits, WATCH);
  return made;
}

const words = (live: Live, name: string): readonly string[] =>
  view(live)
    .figures.figures.filter((each) => each.name === name)
    .map((each) => each.words);

describe("dimensions of the rods", () => {
  it.each([
    ["in", "12", "13-1/2"],
    ["in", "12", "1'-1 1/2\""],
    ["in", "12", "343 mm"],
    ["mm", "300", "320"],
    ["mm", "300", "13-1/2 in"],
  ] as const)("%s: the overall %s of a rectangle becomes %s as it is typed", (unit, was, typed) => {
    const live = open({
      unit,
      pattern: `{ kind: rectangle, x: ${was}, y: ${was} }`,
      template: unit === "in" ? "{ thickness: 1/4 }" : "{ thickness: 6 }",
    });
    const rods = figure(live, "rods overall in x");
    expect(rods.words).toBe(was);
    type(live, rods, typed);
    expect(live.text()).toContain(`x: ${/['"]/.test(typed) ? JSON.stringify(typed) : typed}, y: ${was} }`);
    expect(live.state().bases[0]?.written["pattern.x"]).toBe(typed);
    expect(live.text()).toContain("# the first");
  });

  it.each([
    ["in", 3, "12", "6", "6-1/64", "12-1/32"],
    ["in", 4, "36", "12", "13-1/2", "40-1/2"],
    ["in", 4, "36", "12", "100 mm", "300 mm"],
    ["mm", 4, "900", "300", "310.5", "931.5"],
    ["mm", 3, "480", "240", "10 in", "508"],
    ["mm", 7, "900", "150", "0.000001", "0.000006"],
  ] as const)(
    "%s: a pitch of %i rods over %s, drawn %s, typed %s makes the overall %s",
    (unit, nx, x, drawn, typed, overall) => {
      const live = open({
        unit,
        pattern: `{ kind: rectangle, x: ${x}, y: ${x}, nx: ${nx} }`,
        template: unit === "in" ? "{ thickness: 1/4 }" : "{ thickness: 6 }",
      });
      const pitch = figure(live, "pitch of the rods in x", 1);
      expect(pitch.words).toBe(drawn);
      expect(fieldText(pitch.keys[0] ?? never(), live.state().bases[0] ?? never())).toBe(drawn);
      type(live, pitch, typed);
      expect(live.state().bases[0]?.written["pattern.x"]).toBe(overall);
    },
  );

  it("a pitch that is no length is refused with the words of the job file, and nothing is written", () => {
    const live = open({ pattern: "{ kind: rectangle, x: 36, y: 12, nx: 4 }" });
    const before = live.text();
    const own = parseLength("twelve", "in");
    expect(type(live, figure(live, "pitch of the rods in x"), "twelve")).toEqual(own);
    expect(type(live, figure(live, "pitch of the rods in x"), "-2")).toEqual({
      ok: false,
      message: '"-2" is not above zero',
    });
    expect(live.text()).toBe(before);
  });

  it.each([
    ["[-9, 9]", 0, "20", { 0: "-10", 1: "10" }],
    ["[-9, 0, 10]", 0, "8", { 0: "-8", 1: "0", 2: "10" }],
    ["[-9, 0, 10]", 1, "8", { 0: "-9", 1: "0", 2: "8" }],
    ["[10, -9, 2]", 0, "8", { 0: "10", 1: "-6", 2: "2" }],
  ] as const)("of the lines %s span %i typed %s moves the outer one, or both evenly", (lines, n, typed, now) => {
    const live = open({ pattern: `{ kind: lines, x: ${lines}, y: [-6, 6] }` });
    type(live, figure(live, "rods apart in x", n), typed);
    const written = live.state().bases[0]?.written ?? {};
    expect(Object.fromEntries(Object.keys(now).map((i) => [i, written[`pattern.x[${i}]`]]))).toEqual(now);
  });

  it("points on one line move together", () => {
    const live = open({ pattern: "{ kind: points, at: [[-6, 5], [6, 5], [6, -5], [-6, -5]] }" });
    type(live, figure(live, "rods apart in x"), "14");
    const { written = {} } = live.state().bases[0] ?? {};
    expect([0, 1, 2, 3].map((i) => written[`pattern.at[${i}][0]`])).toEqual(["-7", "7", "7", "-7"]);
    expect(words(live, "rods apart in x")).toEqual(["14"]);
  });

  it("diameter, count and start of a bolt circle stand in its callout", () => {
    const live = open({ pattern: "{ kind: circle, diameter: 24, count: 8, start: straddle }" });
    type(live, figure(live, "bolt circle"), "26");
    type(live, figure(live, "rods on the circle"), "12");
    type(live, figure(live, "first rod"), "on-axis");
    expect(live.text()).toContain("{ kind: circle, diameter: 26, count: 12, start: on-axis }");
    expect(view(live).holes.filter(({ role }) => role === "rod")).toHaveLength(12);
  });

  it.each([
    ["in", "{ kind: lines, x: [-5, 9], y: [-6, 6] }", "5", "4-1/2", "[-4-1/2, 9]"],
    ["mm", "{ kind: lines, x: [-125, 225], y: [-150, 150] }", "125", "110", "[-110, 225]"],
    [
      "in",
      "{ kind: points, at: [[-5, 6], [9, 6], [9, -6], [-5, -6]] }",
      "5",
      "4",
      "[[-4, 6], [9, 6], [9, -6], [-4, -6]]",
    ],
  ] as const)(
    "%s: a rod line left of the working point stays there: %s, %s typed %s",
    (unit, pattern, drawn, typed, now) => {
      const live = open({ unit, pattern, template: unit === "in" ? "{ thickness: 1/4 }" : "{ thickness: 6 }" });
      const line = figure(live, "rod line x from W.P.");
      expect(line.words).toBe(drawn);
      expect(fieldText(line.keys[0] ?? never(), live.state().bases[0] ?? never())).toBe(drawn);
      expect(line.keys[0]?.label).toBe("rods left of the working point");
      expect(type(live, line, `-${typed}`)).toEqual({ ok: false, message: `"-${typed}" is not above zero` });
      type(live, line, typed);
      expect(live.text()).toContain(now);
      expect(figure(live, "rod line x from W.P.").words).toBe(typed);
    },
  );

  it("a rod line off the middle is dimensioned from the working point, by its own key", () => {
    const live = open({ pattern: "{ kind: lines, x: [-5, 9], y: [-6, 6] }" });
    const line = figure(live, "rod line x from W.P.", 1);
    expect(line.keys.map(({ key }) => key)).toEqual(["pattern.x[1]"]);
    type(live, line, "8");
    expect(live.state().bases[0]?.written["pattern.x[1]"]).toBe("8");
  });
});

function never(): never {
  throw new Error("there is none");
}

describe("the template's own sizes", () => {
  const pattern = "{ kind: rectangle, x: 12, y: 10 }";

  it("an automatic size becomes a rectangle of what is typed, as large as it was the other way", () => {
    const live = open({ pattern });
    const size = figure(live, "template in x");
    const other = figure(live, "template in y").words;
    expect(size.keys[0]?.note).toContain("edge rule");
    type(live, size, "22");
    expect(words(live, "template in x")).toEqual(["22"]);
    expect(words(live, "template in y")).toEqual([other]);
    expect(live.state().bases[0]?.written["template.outline.kind"]).toBe("rectangle");
  });

  it.each([
    ["auto", "{ thickness: 1/4, outline: auto }"],
    ["auto with corners", "{ thickness: 1/4, outline: { kind: auto, corner: { kind: round, size: 1 } } }"],
  ])("%s, written out: it takes what is typed, corners stay", (_, template) => {
    const live = open({ pattern, template });
    type(live, figure(live, "template in y"), "20");
    expect(words(live, "template in y")).toEqual(["20"]);
    expect(live.state().findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(live.text().includes("corner: { kind: round, size: 1 }")).toBe(template.includes("round"));
  });

  it("an automatic size off the working point keeps its middle", () => {
    const live = open({ pattern: "{ kind: lines, x: [-5, 9], y: [-6, 6] }" });
    const before = view(live).plan;
    type(live, figure(live, "template in y"), "20");
    const { written = {} } = live.state().bases[0] ?? {};
    expect(written["template.outline.at[0]"]).toBe("2");
    expect(written["template.outline.at[1]"]).toBe("0");
    expect(before.scale).toBeGreaterThan(0);
  });

  it("edge distances are said to follow, and lead to what they follow from", () => {
    const live = open({ pattern, template: "{ thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18 } }" });
    const edge = figure(live, "edge distance in x");
    expect(edge.follows).toBe("It follows from the size of the template and where the rods stand.");
    expect(edge.keys.map(({ key }) => key)).toEqual(["template.outline.x", "pattern.x"]);
    type(live, edge, "21");
    expect(words(live, "template in x")).toEqual(["21"]);
  });

  it("holes by the rules take a size of their own, and give it back", () => {
    const live = open({ pattern });
    const drawn = figure(live, "hole").words;
    type(live, figure(live, "hole"), "1-3/8");
    expect(live.state().bases[0]?.written["template.hole"]).toBe("1-3/8");
    type(live, figure(live, "hole"), "");
    expect(live.state().bases[0]?.written["template.hole"]).toBeUndefined();
    expect(figure(live, "hole").words).toBe(drawn);
  });

  it("an opening that the rules sized becomes one's own, with its place", () => {
    const live = open({ pattern, template: "{ thickness: 1/4, opening: auto }" });
    type(live, figure(live, "opening"), "5");
    expect(words(live, "opening")).toEqual(["OPENING Ø5"]);
    type(live, figure(live, "place of the opening"), "1");
    expect(words(live, "place of the opening")).toEqual(["AT X 1, Y 0"]);
  });

  it("a polygon's side moves with its corners", () => {
    const at = "[[-10, -9], [10, -9], [10, 9], [-10, 9]]";
    const live = open({ pattern, template: `{ thickness: 1/4, outline: { kind: polygon, at: ${at} } }` });
    type(live, figure(live, "template in x"), "24");
    expect(live.text()).toContain("[[-12, -9], [12, -9], [12, 9], [-12, 9]]");
  });
});

describe("who gives a value", () => {
  it("a pattern of a kind is written whole into the base that is typed on", () => {
    const head = "kinds: { heavy: { pattern: { kind: lines, x: [-6, 6], y: [-5, 5], perimeter: false } } }";
    const live = open({ head, base: "\n    kind: heavy" });
    type(live, figure(live, "rods apart in x"), "14");
    expect(live.state().findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(live.text()).toContain("pattern: { kind: lines, x: [-7, 7], y: [-5, 5], perimeter: false }");
    expect(live.text()).toContain(head);
    expect(words(live, "rods apart in x")).toEqual(["14"]);
  });

  it.each([
    ["basePlate.x", "17", "basePlate: { y: 14, x: 17 }"],
    ["basePlate.y", "15", "basePlate: { x: 16, y: 15 }"],
    ["basePlate.thickness", "2", "basePlate: { thickness: 2 }"],
    ["concrete.x", "30", "concrete: { y: 24, x: 30 }"],
    ["template.opening.at[0]", "1", "template: { opening: { diameter: 6, at: [1, 0] } }"],
    ["template.outline.x", "22", "template: { outline: { kind: rectangle, x: 22, y: 18 } }"],
    ["template.hole", "", "template: { hole: ~ }"],
  ])("%s of the defaults typed %s is this base's own, and nothing else of it is lost", (key, typed, now) => {
    const head = `defaults:
  pattern: { kind: rectangle, x: 12, y: 10 }
  basePlate: { x: 16, y: 14, thickness: 1 }
  concrete: { x: 24, y: 24 }
  template: { thickness: 1/4, hole: 1-1/4, opening: { diameter: 6 }, outline: { kind: rectangle, x: 20, y: 18 } }`;
    const live = open({ head, template: "{ quantity: 1 }" });
    const { figures, outlines } = view(live).figures;
    const on = [...figures, ...outlines].find(({ keys }) => keys.some((each) => each.key === key)) ?? never();
    const field = on.keys.findIndex((each) => each.key === key);
    expect(giverWords(key, typedOn(live.state().bases[0] ?? never(), live.state()))).toBe(
      key.includes(".at[") ? "" : "Given by default: what is typed is this base's own.",
    );
    type(live, { ...on, box: null }, typed, field);
    expect(live.state().findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(live.text().replaceAll("template: { quantity: 1, ", "template: { ")).toContain(now);
    expect(live.text()).toContain(head);
  });

  it("a value that the job names and repeats: at its name all of them change, and it is said; at a repeat this base's own", () => {
    const text = `job: { number: "7", title: Store, revision: A, status: preliminary }
units: in
defaults: { rods: { diameter: 1 }, template: { thickness: 1/4 } }
bases:
  - { mark: B1, pattern: &p { kind: rectangle, x: 12, y: 10 }, quantity: 2 } # named here
  - mark: B2
    pattern: *p # repeated
  - mark: B3
    pattern: *p
`;
    const opened = () =>
      openLive({ job: "job.yaml", files: new Map([["job.yaml", text], ...SHOPS]) }, { date: "2026-11-24" });
    const on = (live: Live, index: number) => typedOn(live.state().bases[index] ?? never(), live.state());
    const live = opened();
    expect(giverWords("pattern.x", on(live, 0))).toBe(
      "Named p and repeated in B2, B3: what is typed changes it there too.",
    );
    type(live, figure(live, "rods overall in x"), "13-1/2");
    expect(live.text()).toBe(text.replace("x: 12", "x: 13-1/2"));
    expect(live.state().bases.map(({ written }) => written["pattern.x"])).toEqual(["13-1/2", "13-1/2", "13-1/2"]);
    const second = opened();
    expect(giverWords("pattern.x", on(second, 1))).toContain(
      "named p of B1, repeated: what is typed is this base's own",
    );
    second.edit(textEdits("bases[1].pattern.x", "14", second.state()), WATCH);
    expect(second.text()).toBe(text.replace("*p # repeated", "{ kind: rectangle, x: 14, y: 10 } # repeated"));
    expect(giverWords("quantity", on(second, 0))).toBe("");
  });

  it.each([
    ["bases[0].rods.bottom.kind", "hook", "bottom: { kind: hook } # what anchors it"],
    ["bases[0].rods.nut", "heavy-hex", "nut: heavy-hex"],
    ["rules.placing", "ACI 117-10", "rules: { set: us, placing: ACI 117-10 }"],
    ["job.owner", "A. B.", "owner: A. B."],
  ])("a part of what is written as a word, %s, makes it a group of keys", (path, typed, now) => {
    const text = `job: { number: "7", title: Store, revision: A, status: preliminary }
units: in
rules: us
bases:
  - mark: B1
    rods:
      diameter: 1
      bottom: nut # what anchors it
    pattern: { kind: rectangle, x: 12, y: 10 }
    template: { thickness: 1/4 }
`;
    const live = openLive({ job: "job.yaml", files: new Map([["job.yaml", text], ...SHOPS]) }, { date: "2026-11-24" });
    const { refused } = live.edit(textEdits(path, typed, live.state()), WATCH);
    expect(refused).toEqual([]);
    expect(live.text()).toContain(now);
  });

  it("rods of groups are typed on group by group", () => {
    const group = (x: number, hole: string) =>
      `\n      - { rods: { diameter: 1 }, pattern: { kind: rectangle, x: ${x}, y: ${x} }${hole} }`;
    const text = `job: { number: "7", title: Store, revision: A, status: preliminary }
units: in
bases:
  - mark: B1
    groups:${group(12, "")}${group(24, ", hole: 1-1/2")}
    template: { thickness: 1/4 }
`;
    const live = openLive({ job: "job.yaml", files: new Map([["job.yaml", text], ...SHOPS]) }, { date: "2026-11-24" });
    expect(figure(live, "hole").keys.map(({ key }) => key)).toEqual(["groups[0].hole"]);
    expect(figure(live, "hole", 1).keys.map(({ key }) => key)).toEqual(["groups[1].hole"]);
    type(live, figure(live, "hole", 1), "1-5/8");
    expect(live.text()).toContain("x: 24, y: 24 }, hole: 1-5/8 }");
    const inner = figure(live, "rods overall in x of group A");
    type(live, inner, "14");
    expect(live.text()).toContain("pattern: { kind: rectangle, x: 14, y: 12 }");
  });
});

describe("holes and texts", () => {
  it("a hole says tag, what it is, size, place and its worst row", () => {
    const live = open({ pattern: "{ kind: rectangle, x: 12, y: 10 }" });
    const [hole] = view(live).figures.holes;
    expect(hole?.words).toMatch(/^A1, rod hole, diameter \S+ for rod 1, at X -6, Y 5\. Its worst row: /);
    expect(hole?.keys.map(({ key }) => key)).toEqual(["template.hole", "rods.diameter", "pattern.x", "pattern.y"]);
  });

  it("lengths are written without loss", () => {
    expect(exactText(millimetres(12.7), "in")).toBe("1/2");
    expect(exactText(millimetres(100), "in")).toBe("100 mm");
    expect(exactText(millimetres(-931.5), "mm")).toBe("-931.5");
    for (const nm of [1, 396_875, 25_400_001, -99_999_999_999]) {
      for (const unit of ["in", "mm"] as const)
        expect(parseLength(exactText(millimetres(nm / 1e6), unit), unit)).toEqual({ ok: true, value: nm });
    }
  });

  it("key paths are those of edits", () => {
    expect(stepsOf("bases[3].pattern.at[0][1]")).toEqual(["bases", 3, "pattern", "at", 0, 1]);
    const text = "bases:\n  - pattern: { at: [[1, 2]] }\n";
    const splice = spliceOf(text, { kind: "set", path: stepsOf("bases[0].pattern.at[0][1]"), text: "5" });
    expect(splice === null ? null : spliced(text, splice)).toBe("bases:\n  - pattern: { at: [[1, 5]] }\n");
  });
});
