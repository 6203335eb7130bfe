/** Input faults: `file:line:column path: what is wrong, what is allowed`, all of them at once. */
import { describe, expect, it } from "vitest";
import { faultsOf, jobOf, withBase, withBases } from "./files.js";

const LENGTHS =
  'allowed are forms like 18, .75, 5/8, 1-1/4, 1 1/4", 1\'-6 1/2", 0.75 in, 1.25 ft, 32 mm, 3.2 cm, 1.5 m';

describe("one base: the key under test stands on line 5 to 8", () => {
  it.each<[string, Record<string, string | null>, string[]]>([
    [
      "a thread that does not exist",
      { rods: "{ diameter: 1-1/5 }" },
      [
        'job.yaml:6:23 bases[0].rods.diameter: "1-1/5" is no rod size with a thread; allowed are 1/4 to 4 in UNC or 8UN, M10 to M100 coarse (nearest: 1-1/8, 1-1/4)',
      ],
    ],
    [
      "a rod size whose space was lost",
      { rods: "{ diameter: 11/4 }" },
      [
        'job.yaml:6:23 bases[0].rods.diameter: "11/4" has the improper fraction 11/4: 1-1/4 or 2-3/4? write the one that is meant',
      ],
    ],
    [
      "a length whose space was lost",
      { template: "{ thickness: 13/4 }" },
      [
        'job.yaml:8:28 bases[0].template.thickness: "13/4" has the improper fraction 13/4: 1-3/4 or 3-1/4? write the one that is meant',
      ],
    ],
    [
      "a metric thread that does not exist",
      { rods: "{ diameter: M31 }" },
      [
        'job.yaml:6:23 bases[0].rods.diameter: "M31" is no rod size with a thread; allowed are 1/4 to 4 in UNC or 8UN, M10 to M100 coarse (nearest: M30, M33)',
      ],
    ],
    [
      "a size that has no thread of the series",
      { rods: "{ diameter: 3/4, thread: 8UN }" },
      ['job.yaml:6:36 bases[0].rods.thread: "8UN" has no thread of size 3/4; allowed here is UNC (nearest: 1, 1-1/8)'],
    ],
    [
      "an unknown grade",
      { rods: "{ diameter: 1, grade: 66 }" },
      [
        'job.yaml:6:33 bases[0].rods.grade: "66" is not a known grade; allowed are F1554 36, 55, 105; ISO 898-1 4.6, 5.6, 8.8, 10.9 (the shop file may declare others)',
      ],
    ],
    [
      "an unknown key, and the nearest",
      { rods: "{ diametre: 1 }" },
      [
        "job.yaml:6:11 bases[0].rods.diameter: is required; allowed is a line of text, at most 40 characters",
        "job.yaml:6:13 bases[0].rods.diametre: unknown key; nearest are diameter, protectors, grade; the JSON Schema lists all (did you mean diameter?)",
      ],
    ],
    [
      "a negative length",
      { rods: "{ diameter: 1, projection: -9 }" },
      ['job.yaml:6:38 bases[0].rods.projection: "-9" is not above zero'],
    ],
    [
      "a zero length",
      { template: "{ thickness: 0 }" },
      ['job.yaml:8:28 bases[0].template.thickness: "0" is not above zero'],
    ],
    [
      "NaN",
      { rods: "{ diameter: 1, embedment: NaN }" },
      [`job.yaml:6:37 bases[0].rods.embedment: "NaN" is not a number: ${LENGTHS}`],
    ],
    [".nan", { grout: ".nan" }, [`job.yaml:9:12 bases[0].grout: ".nan" is not a number: ${LENGTHS}`]],
    [
      "1e9",
      { grout: "1e9" },
      [`job.yaml:9:12 bases[0].grout: "1e9" has an exponent: write the number in full; ${LENGTHS}`],
    ],
    [
      "a length over 100 m",
      { grout: "100.001 m" },
      ['job.yaml:9:12 bases[0].grout: "100.001 m" is more than 100 m: lengths up to 100 m are allowed'],
    ],
    [
      "a list where a length is asked",
      { grout: "[1]" },
      [
        "job.yaml:9:12 bases[0].grout: a list of 1 is not allowed; allowed is a length zero or above, as 1-1/4 or with its unit",
      ],
    ],
    [
      "a text where keys are asked",
      { concrete: "24 x 24" },
      [
        'job.yaml:9:15 bases[0].concrete: "24 x 24" is not allowed; allowed is a group of keys: x, y, diameter, corner, at, depth, exposure',
      ],
    ],
    [
      "a count that is not whole",
      { pattern: "{ kind: circle, diameter: 12, count: 4.5, start: 0 }" },
      [
        'job.yaml:7:51 bases[0].pattern.count: "4.5" is not a whole number: allowed is a whole number from 2 to 1000000',
      ],
    ],
    [
      "an unknown pattern",
      { pattern: "{ kind: rectangel, x: 12, y: 10 }" },
      [
        'job.yaml:7:22 bases[0].pattern.kind: "rectangel" is not allowed; allowed is kind: rectangle, lines, circle or points (did you mean rectangle?)',
      ],
    ],
    [
      "a pattern without a kind",
      { pattern: "{ x: 12, y: 10 }" },
      ["job.yaml:7:14 bases[0].pattern.kind: is required; allowed is kind: rectangle, lines, circle or points"],
    ],
    [
      "a circle without a start",
      { pattern: "{ kind: circle, diameter: 12, count: 4 }" },
      [
        "job.yaml:7:14 bases[0].pattern.start: is required; allowed is degrees counter-clockwise from +x, straddle or on-axis",
      ],
    ],
    [
      "points that are none",
      { pattern: "{ kind: points, at: [[1, 2], [3]] }" },
      ["job.yaml:7:43 bases[0].pattern.at[1]: a list of 1 is not allowed; allowed is two lengths, [x, y]"],
    ],
    [
      "over 200 rods, counted before they are laid out",
      { pattern: "{ kind: circle, diameter: 12, count: 999999, start: 0 }" },
      ["job.yaml:7:14 bases[0].pattern: 999999 rods; at most 200 are allowed on one plate"],
    ],
    [
      "a line twice",
      { pattern: "{ kind: lines, x: [0, 1, 0], y: [0] }" },
      ["job.yaml:7:32 bases[0].pattern.x: lists a line twice; allowed are lines that differ"],
    ],
    [
      "an inverted ring",
      { template: "{ thickness: 1/4, outline: { kind: ring, outer: 20, inner: 20 } }" },
      [
        "job.yaml:8:74 bases[0].template.outline.inner: 20 in is not inside the ring; allowed is less than the outer diameter, 20 in",
      ],
    ],
    [
      "a corner beyond half of a side",
      {
        template:
          "{ thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18, corner: { kind: round, radius: 9.5 } } }",
      },
      [
        "job.yaml:8:83 bases[0].template.outline.corner: reaches beyond half of a side; at most 10 in along x and 9 in along y are allowed",
      ],
    ],
    [
      "an opening as large as the plate",
      { template: "{ thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18 }, opening: { diameter: 18 } }" },
      ["job.yaml:8:86 bases[0].template.opening: 18 in by 18 in is not inside the plate, 20 in by 18 in"],
    ],
    [
      "an opening beside a ring",
      { template: "{ thickness: 1/4, outline: { kind: ring, outer: 20, inner: 10 }, opening: { diameter: 5 } }" },
      ["job.yaml:8:89 bases[0].template.opening: is given beside a ring, which is open in the middle; allowed is none"],
    ],
    [
      "half of a pier",
      { concrete: "{ x: 24 }" },
      ["job.yaml:9:15 bases[0].concrete.y: is required beside x; allowed is x and y, or diameter"],
    ],
    [
      "a pier that is round and square",
      { concrete: "{ x: 24, y: 24, diameter: 30 }" },
      [
        "job.yaml:9:20 bases[0].concrete.x: is given beside diameter; allowed is x and y, or diameter",
        "job.yaml:9:27 bases[0].concrete.y: is given beside diameter; allowed is x and y, or diameter",
      ],
    ],
    [
      "rods shorter than what they span",
      { rods: "{ diameter: 1, projection: 9, embedment: 24, length: 32 }" },
      [
        "job.yaml:6:64 bases[0].rods.length: 32 in is shorter than projection and embedment together; allowed is 33 in or more",
      ],
    ],
    [
      "neither rods nor groups",
      { rods: null, pattern: null },
      [
        "job.yaml:5:5 bases[0].rods: is required; allowed is rods with a diameter, or groups",
        "job.yaml:5:5 bases[0].pattern: is required; allowed is a pattern, or groups",
      ],
    ],
    [
      "rods beside groups",
      { groups: "[{ rods: { diameter: 1 }, pattern: { kind: points, at: [[0, 0]] } }]", pattern: null },
      ["job.yaml:6:11 bases[0].rods: is given beside groups; allowed is one of them"],
    ],
    [
      "no template",
      { template: null },
      [
        "job.yaml:5:5 bases[0].template: is required; allowed is a group of keys: mark, quantity, use, support, material, grade, thickness, hole, outline, opening, key, height, nails, groutHoles, lower, segments",
      ],
    ],
    [
      "an unknown washer",
      { basePlate: "{ washer: F845 }" },
      [
        expect.stringMatching(
          /^job\.yaml:9:26 bases\[0\]\.basePlate\.washer: "F845" is not a washer standard that is known; allowed are ASTM F436; ASTM F844; /,
        ) as unknown as string,
      ],
    ],
    [
      "yes and no",
      { rods: "{ diameter: 1, torqued: maybe }" },
      ['job.yaml:6:35 bases[0].rods.torqued: "maybe" is not allowed; allowed is true or false'],
    ],
    [
      "an empty note",
      { note: '""' },
      ["job.yaml:9:11 bases[0].note: is empty; allowed is a line of text, at most 120 characters"],
    ],
    [
      "a control character",
      { note: '"a\\u0007b"' },
      [
        "job.yaml:9:11 bases[0].note: holds a control character or a broken sign; allowed is a line of text, at most 120 characters",
      ],
    ],
  ])("%s", (_name, changes, expected) => {
    expect(faultsOf(withBase(changes))).toEqual(expected);
  });
});

describe("limits that are met exactly pass", () => {
  it.each<[string, Record<string, string>]>([
    [
      "200 rods",
      {
        pattern: "{ kind: lines, x: [1,2,3,4,5,6,7,8,9,10], y: [1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20] }",
      },
    ],
    ["100 m", { grout: "100 m" }],
    [
      "a corner of half a side",
      {
        template: "{ thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18, corner: { kind: round, radius: 9 } } }",
      },
    ],
    [
      "rods as long as what they span",
      { rods: "{ diameter: 1, projection: 9, embedment: 24, length: 33, threads: 33 }" },
    ],
    ["a ring of 1 nm", { template: "{ thickness: 1/4, outline: { kind: ring, outer: 20 mm, inner: 19.999999 mm } }" }],
  ])("%s", (_name, changes) => {
    expect(faultsOf(withBase(changes))).toEqual([]);
  });
});

describe("marks are safe file names on every system", () => {
  const names = "a mark names files";
  it.each([
    ["CON", `"CON" is the name of a device on some systems; ${names}`],
    ["aux.dwg", `"aux.dwg" is the name of a device on some systems; ${names}`],
    ["lpt1", `"lpt1" is the name of a device on some systems; ${names}`],
    ["B1.", `"B1." starts or ends with a dot or a space; ${names}`],
    ['" B1"', `" B1" starts or ends with a dot or a space; ${names}`],
    ["..", `".." starts or ends with a dot or a space; ${names}`],
    [".git", `".git" starts or ends with a dot or a space; ${names}`],
    [
      "B/1",
      '"B/1" holds "/", which no file name may hold on every system; allowed are plain ASCII characters without < > : " / \\ | ? *',
    ],
    [
      "B\\1",
      '"B\\1" holds "\\\\", which no file name may hold on every system; allowed are plain ASCII characters without < > : " / \\ | ? *',
    ],
    [
      "Bé",
      '"Bé" holds "é", which no file name may hold on every system; allowed are plain ASCII characters without < > : " / \\ | ? *',
    ],
    ["B".repeat(61), "has 61 characters; at most 60 are allowed, since a mark names files"],
  ])("%s", (mark, expected) => {
    expect(faultsOf(withBase({ mark }))).toEqual([`job.yaml:5:11 bases[0].mark: ${expected}`]);
    expect(faultsOf(withBase({ template: `{ thickness: 1/4, mark: ${mark} }` }))).toEqual([
      `job.yaml:8:39 bases[0].template.mark: ${expected}`,
    ]);
  });

  it.each(["B".repeat(60), "B 1", "B-1_a.2", "COM", "CONSOLE", "(B1)", "B1+2"])("%s passes", (mark) => {
    expect(faultsOf(withBase({ mark }))).toEqual([]);
  });
});

describe("marks are used once, whatever their case", () => {
  const row = (mark: string, template: string) =>
    `  - { mark: ${mark}, rods: { diameter: 1 }, pattern: { kind: points, at: [[0, 0]] }, template: { thickness: 1/4${template} } }`;
  it.each<[string, string[], string[]]>([
    [
      "two bases",
      [row("B1", ""), row("b1", "")],
      [
        'job.yaml:6:13 bases[1].mark: the mark "b1" is used twice; first at job.yaml:5:13; every base and template has its own',
      ],
    ],
    [
      "one template of two bases: whether it is one plate is proved later",
      [row("B1", ", mark: T1"), row("B2", ", mark: T1")],
      [],
    ],
    [
      "one template in two writings",
      [row("B1", ", mark: T1"), row("B2", ", mark: t1")],
      [
        'job.yaml:6:115 bases[1].template.mark: the mark "t1" is used twice; first at job.yaml:5:115 as "T1"; the mark of one template is written alike',
      ],
    ],
    [
      "a template and another base",
      [row("B1", ""), row("B2", ", mark: B1")],
      [
        'job.yaml:6:115 bases[1].template.mark: the mark "B1" is used twice; first at job.yaml:5:13; a template of several bases bears the mark of none of them (where it is one plate for all of them, give each template.mark: T-B1)',
      ],
    ],
    [
      "a base and the template of another",
      [row("B1", ", mark: B2"), row("b2", "")],
      [
        'job.yaml:6:13 bases[1].mark: the mark "b2" is used twice; first at job.yaml:5:115; a template of several bases bears the mark of none of them (where it is one plate for all of them, give each template.mark: T-b2)',
      ],
    ],
    ["a template and its own base", [row("B1", ", mark: B1"), row("B2", ", mark: b2")], []],
  ])("%s", (_name, rows, expected) => {
    expect(faultsOf(withBases(...rows))).toEqual(expected);
  });
});

describe("the job around the bases", () => {
  const bases = withBase({});
  it.each<[string, string, string[]]>([
    ["no units", bases.replace("units: in\n", ""), ["job.yaml:1:1 units: is required; allowed is one of in, mm"]],
    [
      "no job",
      bases.replace(/^job.*\n/, ""),
      [
        expect.stringContaining(
          "job.yaml:1:1 job: is required; allowed is a group of keys: number, title",
        ) as unknown as string,
      ],
    ],
    [
      "an unknown unit",
      bases.replace("units: in", "units: inch"),
      ['job.yaml:2:8 units: "inch" is not allowed; allowed is one of in, mm'],
    ],
    [
      "an unknown key at the top",
      `${bases}shcedule: x.csv\n`,
      [
        "job.yaml:9:1 shcedule: unknown key; nearest are schedule, sheet, severities; the JSON Schema lists all (did you mean schedule?)",
      ],
    ],
    [
      "an unknown edition",
      bases.replace("rules: us", "rules: { set: us, placing: ACI 117-11 }"),
      [
        'job.yaml:3:28 rules.placing: "ACI 117-11" is not an edition that is known; allowed are ACI 117-10; AISC 303-10; AISC 303-22; EN 1090-2:2008 (did you mean ACI 117-10?)',
      ],
    ],
    [
      "an unknown rule set",
      bases.replace("rules: us", "rules: usa"),
      [
        'job.yaml:3:8 rules: "usa" is not allowed; allowed is us, metric, or a group of keys: set, templateHoles, baseHoles, placing, edges, concrete (did you mean us?)',
      ],
    ],
    [
      "an unknown shop",
      bases.replace("rules: us", "shop: plasmo"),
      [
        "job.yaml:3:7 shop: there is no shop file templates/shops/plasmo.yaml; allowed are plasma, plasma-metric, laser, laser-metric, oxyfuel, oxyfuel-metric, waterjet, waterjet-metric, plywood, plywood-metric, or the path of a shop file (did you mean plasma?)",
      ],
    ],
    [
      "a day that is none",
      bases.replace('number: "1"', "number: 1, date: 2026-02-29"),
      ['job.yaml:1:25 job.date: "2026-02-29" is not a day written year-month-day, as 2026-11-24'],
    ],
    [
      "an unknown status",
      bases.replace('number: "1"', "number: 1, status: relased"),
      [
        'job.yaml:1:27 job.status: "relased" is not allowed; allowed is one of preliminary, for approval, released (did you mean released?)',
      ],
    ],
    [
      "no bases",
      bases.replace(/bases:[\s\S]*/, ""),
      ["job.yaml:1:1 bases: is required; allowed is a list of bases, or schedule: FILE"],
    ],
    [
      "an empty list of bases",
      bases.replace(/bases:[\s\S]*/, "bases: []\n"),
      ["job.yaml:4:8 bases: is an empty list; allowed is one base or more"],
    ],
    [
      "bases that are no list",
      bases.replace(/bases:[\s\S]*/, "bases: B1\n"),
      ["job.yaml:4:8 bases: is no list; allowed is a list of bases"],
    ],
    [
      "bases and a schedule",
      `${bases}schedule: s.csv\n`,
      ["job.yaml:9:11 schedule: is given beside bases; allowed is one of them"],
    ],
    [
      "a schedule that is not there",
      bases.replace(/bases:[\s\S]*/, "schedule: s.csv\n"),
      ["job.yaml:4:11 schedule: there is no schedule s.csv; allowed is a CSV or XLSX file beside the job file"],
    ],
    [
      "a severity that is lowered",
      `${bases}severities: { nut-room: ask, projection: advise }\n`,
      [
        'job.yaml:9:25 severities.nut-room: "ask" is below the rule\'s own severity; a severity may be raised, never lowered',
        'job.yaml:9:42 severities.projection: "advise" is below the rule\'s own severity; a severity may be raised, never lowered',
      ],
    ],
    [
      "an empty file",
      "",
      ["job.yaml:1:1: is not a job; allowed is a group of keys: job, units, rules, shop, bases, ..."],
    ],
  ])("%s", (_name, text, expected) => {
    expect(faultsOf(text)).toEqual(expected);
  });
});

describe("faults are told all at once, in the order of the file", () => {
  it("of different stages", () => {
    const text = `job: { number: 007, stattus: released }
units: in
shop: plasma
bases:
  - mark: CON
    rods: { diameter: 1-1/5, projection: -9 }
    pattern: { kind: rectangel, x: 12, y: 10 }
    template: { thickness: 0, mark: b2, outline: { kind: ring, outer: 10, inner: 12 } }
  - mark: B2
    rods: { diameter: 1, projecton: 9 }
    pattern: { kind: circle, diameter: 20, count: 4.5, start: 0 }
    template: { outline: { kind: rectangle, x: 20, y: 18 }, opening: { diameter: 30 } }
`;
    expect(faultsOf(text).map((fault) => fault.split(": ").slice(0, 1).join())).toEqual([
      "job.yaml:1:21 job.stattus",
      "job.yaml:5:11 bases[0].mark",
      "job.yaml:6:23 bases[0].rods.diameter",
      "job.yaml:6:42 bases[0].rods.projection",
      "job.yaml:7:22 bases[0].pattern.kind",
      "job.yaml:8:28 bases[0].template.thickness",
      "job.yaml:8:82 bases[0].template.outline.inner",
      "job.yaml:9:11 bases[1].mark",
      "job.yaml:10:26 bases[1].rods.projecton",
      "job.yaml:11:51 bases[1].pattern.count",
      "job.yaml:12:15 bases[1].template.thickness",
      "job.yaml:12:70 bases[1].template.opening",
    ]);
  });
});

describe("shop files", () => {
  it("are judged with their own places", () => {
    const shop = "units: in\nprocess: lasser\ncut: { deviation: ISO 9013 class 3, taper: 0 }\n";
    const text = withBase({}).replace("rules: us", "shop: my.yaml");
    expect(faultsOf(text, { "my.yaml": shop })).toEqual([
      expect.stringContaining("my.yaml:1:1 smallest: is required; allowed is a group of keys: hole, web, corner"),
      expect.stringContaining("my.yaml:1:1 distances: is required"),
      expect.stringContaining("my.yaml:1:1 marking: is required"),
      expect.stringContaining("my.yaml:1:1 cutFile: is required; allowed is a group of keys: layers, origin"),
      'my.yaml:2:10 process: "lasser" is not allowed; allowed is one of plasma, laser, oxyfuel, waterjet, drill (did you mean laser?)',
      'my.yaml:3:19 cut.deviation: "ISO 9013 class 3" is not ISO 9013 class 1, 2, or a length',
    ]);
  });

  it("are found by name or by path", () => {
    expect(jobOf(withBase({}).replace("rules: us", "shop: laser-metric")).shop).toMatchObject({
      name: "laser-metric",
      process: "laser",
    });
  });
});
