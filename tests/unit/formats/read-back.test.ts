/** Faults planted in the bytes of good cut files: each one is a difference, and a good file has none. */
import { describe, expect, it } from "vitest";
import { writeJoinedDxf } from "../../../src/formats/cut-dxf-joined.js";
import { writeR12Dxf } from "../../../src/formats/cut-dxf-r12.js";
import { compareCutFile, READ_BACK_TOLERANCE } from "../../../src/formats/read-back.js";
import { cutOptions, cutPlates } from "../../cut-plates.js";

const encoder = new TextEncoder();

function madeOf(name: string, flavour: "joined" | "r12") {
  const found = cutPlates.find((made) => made.name === name);
  if (found === undefined) throw new Error(`no plate ${name}`);
  const options = cutOptions(found.unit, { draws: flavour === "joined" ? "whole" : "pieces" });
  const write = flavour === "joined" ? writeJoinedDxf : writeR12Dxf;
  const text = new TextDecoder().decode(write(found.plate, options)).replaceAll("\r\n", "\n");
  return { text, compare: (changed: string) => compareCutFile(encoder.encode(changed), found.plate, options) };
}

/** Whole entities of a type, as texts. */
function entities(text: string, type: string): string[] {
  const body = text.slice(text.indexOf("ENTITIES\n") + 9);
  return body
    .split(/^0\n(?=[A-Z])/m)
    .filter((entity) => entity.startsWith(`${type}\n`))
    .map((entity) => `0\n${entity}`);
}

function one(text: string, type: string, index = 0): string {
  const entity = entities(text, type).at(index);
  if (entity === undefined) throw new Error(`no ${type}`);
  return entity;
}

/** Replaces the first match; throws where that changes nothing. */
function swap(text: string, from: string | RegExp, to: string | ((match: string) => string)): string {
  const changed = typeof to === "string" ? text.replace(from, to) : text.replace(from, to);
  if (changed === text) throw new Error(`nothing to replace: ${from}`);
  return changed;
}

/** Adds to the first number of a group code in an entity, in as many decimals as it has. */
function nudge(entity: string, code: number, by: number): string {
  return swap(entity, new RegExp(`(?<=^${code}\\n)-?\\d+\\.\\d+$`, "m"), (value) =>
    (Number(value) + by).toFixed(value.split(".")[1]?.length ?? 0),
  );
}

interface Mutation {
  readonly what: string;
  readonly change: (text: string) => string;
  readonly says: RegExp;
}

const common: readonly Mutation[] = [
  {
    what: "a digit of a diameter",
    says: /hole A\d is circle/,
    change: (t) => change(t, "CIRCLE", -1, (e) => nudge(e, 40, 0.001)),
  },
  {
    what: "a diameter by twice the tolerance",
    says: /hole A\d is circle/,
    change: (t) => change(t, "CIRCLE", -1, (e) => nudge(e, 40, 1.5 * READ_BACK_TOLERANCE)),
  },
  {
    what: "a hole moved by twice the tolerance",
    says: /hole A\d is circle/,
    change: (t) => change(t, "CIRCLE", -1, (e) => nudge(e, 10, 2 * READ_BACK_TOLERANCE)),
  },
  {
    what: "a hole on another layer",
    says: /must be on HOLES/,
    change: (t) => change(t, "CIRCLE", -1, (e) => swap(e, "8\nHOLES\n", "8\nOUTLINE\n")),
  },
  { what: "a hole missing", says: /hole A\d is missing/, change: (t) => change(t, "CIRCLE", -1, () => "") },
  {
    what: "a hole twice",
    says: /in the file but not in the plate/,
    change: (t) => change(t, "CIRCLE", -1, (e) => e + e),
  },
  {
    what: "an extra line",
    says: /line|segment/,
    change: (t) =>
      swap(
        t,
        /0\nENDSEC\n(?:0\nSECTION\n2\nOBJECTS|0\nEOF)/,
        `0\nLINE\n8\nOUTLINE\n10\n1.0\n20\n1.0\n11\n2.0\n21\n2.0\n$&`,
      ),
  },
  {
    what: "a text",
    says: /TEXT are not read/,
    change: (t) => change(t, "CIRCLE", -1, (e) => `${e}0\nTEXT\n8\nOUTLINE\n10\n1.0\n20\n1.0\n40\n1.0\n1\nT1\n`),
  },
  { what: "a layer's name in the entities", says: /HOELS/, change: (t) => swap(t, /8\nHOLES/, "8\nHOELS") },
  {
    what: "a layer missing from the table",
    says: /not in the LAYER table/,
    change: (t) => swap(t, /2\nHOLES/, "2\nHOELS"),
  },
  {
    what: "a layer that is off",
    says: /off or frozen/,
    change: (t) => swap(t, /(LAYER\n(?:(?!ENDTAB)[\s\S])*?2\nHOLES\n(?:70\n0\n)?62\n)7/, "$1-7"),
  },
  { what: "the unit", says: /contradicts|unit is/, change: (t) => swap(t, /(\$INSUNITS\n70\n)\d/, "$16") },
  { what: "unit and measurement alike", says: /unit is (in|mm), must be (in|mm)/, change: swapUnits },
  {
    what: "no measurement",
    says: /\$MEASUREMENT is missing/,
    change: (t) => swap(t, /9\n\$MEASUREMENT\n70\n\d\n/, ""),
  },
  { what: "the version", says: /version is AC1032|R12/, change: (t) => swap(t, /AC10(09|15)/, "AC1032") },
  { what: "the extents", says: /\$EXTMIN\/\$EXTMAX are/, change: (t) => swap(t, /(\$EXTMAX\n10\n)\d/, "$17") },
  {
    what: "unset extents",
    says: /\$EXTMIN\/\$EXTMAX are missing/,
    change: (t) => swap(t, /(\$EXTMIN\n10\n)[\d.]+/, "$11e+20"),
  },
  { what: "the limits", says: /\$LIMMIN\/\$LIMMAX are/, change: (t) => swap(t, /(\$LIMMIN\n10\n)\d/, "$17") },
  {
    what: "a mirrored circle",
    says: /extrusion/,
    change: (t) => change(t, "CIRCLE", -1, (e) => `${e}210\n0.0\n220\n0.0\n230\n-1.0\n`),
  },
  {
    what: "a circle off the plane",
    says: /height zero/,
    change: (t) => change(t, "CIRCLE", -1, (e) => swap(e, /30\n0(\.0)?\n/, "30\n5.0\n")),
  },
  {
    what: "a circle in paper space",
    says: /paper space/,
    change: (t) => change(t, "CIRCLE", -1, (e) => `${e}67\n1\n`),
  },
  {
    what: "an exponent",
    says: /exponent/,
    change: (t) => change(t, "CIRCLE", -1, (e) => swap(e, /(10\n[\d.]+)/, "$1e0")),
  },
  {
    what: "a number that is none",
    says: /no number/,
    change: (t) => change(t, "CIRCLE", -1, (e) => swap(e, /40\n[\d.]+/, "40\nNaN")),
  },
  { what: "minus zero", says: /minus sign/, change: (t) => swap(t, /(\$LIMMIN\n10\n)0/, "$1-0") },
  { what: "half of the file", says: /./, change: (t) => t.slice(0, t.length / 2) },
  { what: "no end mark", says: /end mark/, change: (t) => swap(t, "0\nEOF\n", "") },
  { what: "the outline before a hole", says: /order/, change: outlineFirst },
  { what: "a letter outside ASCII", says: /outside ASCII/, change: (t) => `${t}999\nö\n` },
];

function change(text: string, type: string, index: number, to: (entity: string) => string): string {
  const entity = one(text, type, index);
  const at = text.lastIndexOf(entity);
  return text.slice(0, at) + to(entity) + text.slice(at + entity.length);
}

function swapUnits(text: string): string {
  const [unit, measurement] = /\$INSUNITS\n70\n1/.test(text) ? [4, 1] : [1, 0];
  return swap(swap(text, /(\$INSUNITS\n70\n)\d/, `$1${unit}`), /(\$MEASUREMENT\n70\n)\d/, `$1${measurement}`);
}

function outlineFirst(text: string): string {
  const last = one(text, "CIRCLE", -1);
  const without = swap(text, last, "");
  return swap(without, /0\nENDSEC\n(?:0\nSECTION\n2\nOBJECTS|0\nEOF)/, `${last}$&`);
}

const joined: readonly Mutation[] = [
  {
    what: "the sign of a bulge",
    says: /outline is segment/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, /42\n0/, "42\n-0")),
  },
  {
    what: "a bulge",
    says: /outline is segment/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, /42\n0\.4\d/, "42\n0.35")),
  },
  {
    what: "a bulge left out",
    says: /outline is segment/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, /42\n0.*\n/, "")),
  },
  {
    what: "a vertex moved by twice the tolerance",
    says: /outline is segment/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => nudge(e, 20, 2 * READ_BACK_TOLERANCE)),
  },
  {
    what: "x and y of a vertex changed over",
    says: /outline is segment/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, /10\n(\S+)\n20\n(\S+)/, "10\n$2\n20\n$1")),
  },
  {
    what: "a vertex missing",
    says: /vertices/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, /10\n\S+\n20\n\S+\n/, "")),
  },
  {
    what: "the closed flag",
    says: /missing/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, "70\n1\n", "70\n0\n")),
  },
  { what: "a contour twice", says: /not in the plate/, change: (t) => change(t, "LWPOLYLINE", -1, (e) => e + e) },
  {
    what: "a width",
    says: /width/,
    change: (t) => change(t, "LWPOLYLINE", -1, (e) => swap(e, "70\n1\n", "70\n1\n43\n0.5\n")),
  },
  { what: "the version of R12", says: /R12/, change: (t) => swap(t, "AC1015", "AC1009") },
  { what: "a contour as loose lines", says: /one closed polyline/, change: loosen },
];

/** The outline's way back to its first vertex, a straight one, becomes a LINE of its own. */
function loosen(text: string): string {
  return change(text, "LWPOLYLINE", -1, (entity) => {
    const vertices = [...entity.matchAll(/10\n(\S+)\n20\n(\S+)\n/g)];
    const [first, last] = [vertices[0], vertices.at(-1)];
    const line = `0\nLINE\n8\nOUTLINE\n10\n${last?.[1]}\n20\n${last?.[2]}\n11\n${first?.[1]}\n21\n${first?.[2]}\n`;
    return swap(entity, "70\n1\n", "70\n0\n") + line;
  });
}

const r12: readonly Mutation[] = [
  {
    what: "a line's end by twice the tolerance",
    says: /outline is segment/,
    change: (t) => change(t, "LINE", -1, (e) => nudge(e, 11, 2 * READ_BACK_TOLERANCE)),
  },
  { what: "a line missing", says: /outline is missing/, change: (t) => change(t, "LINE", -1, () => "") },
  { what: "a line twice", says: /not in the plate/, change: (t) => change(t, "LINE", -1, (e) => e + e) },
  {
    what: "x and y of a line changed over",
    says: /outline is/,
    change: (t) => change(t, "LINE", -1, (e) => swap(e, /10\n(\S+)\n20\n(\S+)/, "10\n$2\n20\n$1")),
  },
  {
    what: "the ends of an arc changed over",
    says: /outline is segment/,
    change: (t) => change(t, "ARC", -1, (e) => swap(e, /50\n(\S+)\n51\n(\S+)/, "50\n$2\n51\n$1")),
  },
  { what: "an arc's radius", says: /outline is/, change: (t) => change(t, "ARC", -1, (e) => nudge(e, 40, 0.0001)) },
  { what: "an arc's angle", says: /outline is/, change: (t) => change(t, "ARC", -1, (e) => nudge(e, 51, -0.01)) },
  { what: "an arc moved", says: /outline is/, change: (t) => change(t, "ARC", -1, (e) => nudge(e, 20, 0.00001)) },
  { what: "an arc missing", says: /outline is missing/, change: (t) => change(t, "ARC", -1, () => "") },
];

describe.each(["rounded", "filleted-in"])("%s", (name) => {
  describe.each([
    { flavour: "joined", mutations: [...common, ...joined] },
    { flavour: "r12", mutations: [...common, ...r12] },
  ] as const)("$flavour", ({ flavour, mutations }) => {
    const { text, compare } = madeOf(name, flavour);

    it("a good file has no difference, with either line end", () => {
      expect(compare(text)).toEqual([]);
      expect(compare(text.replaceAll("\n", "\r\n"))).toEqual([]);
    });

    it.each(mutations)("$what", ({ change: mutate, says }) => {
      const changed = mutate(text);
      expect(changed).not.toBe(text);
      const differences = compare(changed);
      expect(differences).not.toEqual([]);
      expect(differences.join("; ")).toMatch(says);
    });
  });
});

describe.each(["joined", "r12"] as const)("marks, %s", (flavour) => {
  const { text, compare } = madeOf("chamfered", flavour);
  const type = flavour === "joined" ? "LWPOLYLINE" : "LINE";

  it.each([
    {
      what: "a stroke missing",
      says: /mark (TOP|centre-line) is missing/,
      change: (t: string) => change(t, type, 0, () => ""),
    },
    { what: "a stroke twice", says: /not in the plate/, change: (t: string) => change(t, type, 1, (e) => e + e) },
    {
      what: "a stroke moved",
      says: /mark centre-line is segment/,
      change: (t: string) => change(t, type, 0, (e) => nudge(e, 10, 0.5)),
    },
    {
      what: "a stroke to be cut",
      says: /must be on MARKS/,
      change: (t: string) => change(t, type, 0, (e) => swap(e, "8\nMARKS\n", "8\nOUTLINE\n")),
    },
    {
      what: "a drill mark to be scribed",
      says: /drill mark NH1 is on layer MARKS/,
      change: (t: string) => swap(t, "8\nDRILL\n", "8\nMARKS\n"),
    },
  ])("$what", ({ change: mutate, says }) => {
    expect(compare(mutate(text)).join("; ")).toMatch(says);
  });
});

it.each([
  ["nothing", new Uint8Array(0)],
  ["noise", Uint8Array.from({ length: 1000 }, (_, i) => (i * 7919) % 256)],
  ["a text that is no DXF", encoder.encode("<svg/>\n")],
])("%s is told, not thrown", (_, bytes) => {
  const [made] = cutPlates;
  if (made === undefined) throw new Error("no plate");
  expect(compareCutFile(bytes, made.plate, cutOptions(made.unit)).length).toBeGreaterThan(3);
});
