/** Random bases of which one key at a time is changed, to see which rules look at it. Invented data, of every form that a key may have. */
import { readFileSync } from "node:fs";
import { checkBase, checkWholeJob } from "../src/checks/checked.js";
import type { CheckRow } from "../src/checks/index.js";
import type { InputFile } from "../src/readers/inputs.js";
import type { SourceNode, SourcePlace } from "../src/readers/source.js";
import { openJob } from "../src/tasks/open.js";

const SHOP = "templates/shops/plasma.yaml";
const shop = readFileSync(new URL(`../${SHOP}`, import.meta.url), "utf8");

/** Values that a key may have; undefined: the key is not given. */
type Values = readonly unknown[];

const WASHERS: Values = [
  undefined,
  "F844",
  "F436",
  { shape: "square", size: "3", thickness: "1/2" },
  { shape: "round", size: "2" },
  { shape: "square", size: "5", thickness: "3/8" },
];
const PATTERNS: Values = [
  { kind: "rectangle", x: "12", y: "10" },
  { kind: "rectangle", x: "12", y: "12" },
  { kind: "rectangle", x: "24", y: "16", nx: "3", ny: "3" },
  { kind: "rectangle", x: "4", y: "3-1/2" },
  { kind: "circle", diameter: "20", count: "8", start: "straddle" },
  { kind: "circle", diameter: "14", count: "3", start: "30" },
  { kind: "lines", x: ["-7", "6"], y: ["-5", "5"] },
  {
    kind: "points",
    at: [
      ["-6", "5"],
      ["6", "5"],
      ["6", "-4"],
      ["-6", "-5"],
    ],
  },
];

/** Keys of one group of rods, as a base without groups has them. */
const ROD_KEYS: Readonly<Record<string, Values>> = {
  "rods.diameter": ["1", "1", "3/4", "1-1/2", "1/2", "M24"],
  "rods.thread": [undefined, undefined, undefined, undefined, undefined, undefined, "UNC", "8UN"],
  "rods.grade": [undefined, "36", "55", "105", "8.8"],
  "rods.finish": [undefined, "plain", "galvanized"],
  "rods.zincGrowth": [undefined, undefined, "0.02", "1/4"],
  "rods.nut": [undefined, undefined, "hex", "heavy hex"],
  "rods.torqued": [undefined, "yes", "no"],
  "rods.welded": [undefined, "yes", "no"],
  "rods.weldable": [undefined, "yes", "no"],
  "rods.projection": [undefined, "4", "6", "7", "9", "12"],
  "rods.embedment": [undefined, "12", "18", "24", "1"],
  "rods.length": [undefined, undefined, "34", "40", "50", "120"],
  "rods.threads": [undefined, "2", "4", "8", "13", "full"],
  "rods.bottomThreads": [undefined, "0", "2", "4", "20"],
  "rods.threadClass": [undefined, undefined, "1A", "2A"],
  "rods.threading": [undefined, undefined, "rolled", "cut"],
  "rods.zincProcess": [undefined, "hot-dip", "mechanical"],
  "rods.nutFinish": [undefined, undefined, "plain", "hot-dip", "mechanical"],
  "rods.protectors": [undefined, "yes"],
  "rods.topNuts": [undefined, undefined, "2"],
  "rods.levellingNuts": [undefined, undefined, "0", "2"],
  "rods.bottom": [
    undefined,
    "nut",
    { kind: "plate", shape: "square", size: "3", thickness: "1/2" },
    { kind: "plate", shape: "round", size: "14", thickness: "1" },
    { kind: "hook", reach: "4" },
    { kind: "hook", reach: "2", radius: "1/2" },
    "straight",
    { kind: "swedged", length: "8" },
    { kind: "nut", washer: { shape: "square", size: "4", thickness: "1/2" }, tackWelded: "yes" },
    { kind: "plate", shape: "square", size: "3", thickness: "1/2", nuts: "0" },
    { kind: "plate", shape: "square", size: "3", thickness: "1/2", nuts: "1", tackWelded: "yes" },
  ],
  "rods.stickOut": [undefined, "0", "1/2", "3"],
  "rods.wrenchRoom": [undefined, undefined, "2", "5"],
  pattern: PATTERNS,
  "template.hole": [undefined, undefined, "1-1/16", "1-5/16", "2", "3/4"],
  "basePlate.hole": [undefined, "1-13/16", "2-5/16", "1", "3"],
  "basePlate.washer": WASHERS,
};

/** Keys of a shape go together: sides with or without corners, or a diameter. */
const SHAPES: Values = [
  undefined,
  { x: "18", y: "18" },
  { x: "18", y: "16" },
  { x: "24", y: "24" },
  { x: "8", y: "8" },
  { x: "36", y: "30", corner: { kind: "chamfer", size: "1" } },
  { x: "18", y: "16", corner: { kind: "round", radius: "2" } },
  { x: "20", y: "20", corner: { kind: "notch", x: "4", y: "3" } },
  { diameter: "22" },
  { diameter: "60" },
];

const PLACES: Values = [undefined, undefined, ["0", "0"], ["1", "0"], ["0", "-3"]];

/** Keys of the whole base. */
const BASE_KEYS: Readonly<Record<string, Values>> = {
  mark: ["B1", "A-1", "BASE-WITH-A-LONG-MARK-17", "C"],
  quantity: [undefined, "2", "6"],
  member: [undefined, "column", "post"],
  note: [undefined, "by the yard"],
  delivery: [undefined, "truck 2"],
  "basePlate.x": SHAPES,
  "basePlate.at": PLACES,
  "basePlate.thickness": [undefined, "1", "1-1/2", "3/8", "12"],
  "basePlate.pattern": [
    undefined,
    {
      at: [
        ["-6", "5"],
        ["6", "5"],
        ["6", "-5"],
        ["-6", "-5"],
      ],
      hole: "1-13/16",
    },
    {
      at: [
        ["-6", "6"],
        ["6", "6"],
        ["6", "-6"],
        ["-6", "-6"],
      ],
      hole: "2-5/16",
    },
    [
      {
        at: [
          ["-6", "5"],
          ["6", "5"],
        ],
      },
      { at: [["5", "-6"]], hole: "1" },
    ],
  ],
  "basePlate.groutHoles": [undefined, { diameter: "2", at: [["0", "0"]] }, { diameter: "3", at: [["4", "4"]] }],
  column: [
    undefined,
    { kind: "wide flange", depth: "12", width: "8", flange: "5/8", web: "3/8", depthAlong: "y" },
    { kind: "tube", x: "8", y: "8", at: ["0", "1"] },
    { kind: "pipe", diameter: "10" },
    { kind: "tube", x: "30", y: "6" },
  ],
  "concrete.x": SHAPES,
  "concrete.at": PLACES,
  "concrete.depth": [undefined, "36", "18", "60"],
  "concrete.exposure": [undefined, "exposed", "against ground", "not exposed"],
  grout: [undefined, "1", "2", "3", "1/4", "20"],
  levelling: [undefined, "nuts", "shims", "plate"],
  "template.mark": [undefined, "T1", "TEMPLATE-T1", "Z"],
  "template.quantity": [undefined, "1", "4"],
  "template.use": [undefined, undefined, "template left as setting plate", "setting plate over cast rods"],
  "template.support": [undefined, "form", "bearers"],
  "template.material": [undefined, undefined, "steel", "plywood"],
  "template.grade": [undefined, "A36", "S235JR"],
  "template.thickness": ["1/4", "1/4", "3/8", "3/4", "5/16", "2"],
  "template.outline": [
    undefined,
    "auto",
    { kind: "auto", corner: { kind: "chamfer", size: "1" } },
    { kind: "rectangle", x: "20", y: "18" },
    { kind: "rectangle", x: "14", y: "12", at: ["0", "1"], corner: { kind: "round", radius: "1" } },
    { kind: "rectangle", x: "70", y: "30" },
    { kind: "circle", diameter: "28" },
    { kind: "ring", outer: "26", inner: "12" },
    {
      kind: "polygon",
      at: [
        ["-12", "-10"],
        ["12", "-10"],
        ["12", "10"],
        ["-9", "10"],
        ["-12", "6"],
      ],
    },
  ],
  "template.opening": [
    undefined,
    "none",
    "auto",
    { diameter: "4" },
    { x: "5", y: "3", radius: "1/8" },
    { diameter: "8", at: ["1", "1"] },
  ],
  "template.key": [undefined, "auto", "none"],
  "template.segments": [undefined, undefined, undefined, undefined, "none", "2", "auto", { count: "3", bolt: "1/2" }],
  "template.lower": [
    undefined,
    undefined,
    "auto",
    "none",
    { above: "4" },
    { below: "20", thickness: "3/8", outline: { kind: "circle", diameter: "30" } },
    { above: "2", opening: "none" },
  ],
  "template.height": [undefined, "3", "0", "1", "12"],
  "template.nails": [
    undefined,
    undefined,
    {
      diameter: "3/16",
      at: [
        ["-7", "0"],
        ["7", "0"],
      ],
    },
    { diameter: "2", at: [["0", "0"]] },
  ],
  "template.groutHoles": [undefined, undefined, { diameter: "2", at: [["0", "0"]] }],
};

/** Every key of a base by its path in the job file, with what it may be. */
export const KEYS: Readonly<Record<string, Values>> = { ...ROD_KEYS, ...BASE_KEYS };

/** Values by key path. */
export type FlatBase = ReadonlyMap<string, unknown>;

/** A base with a value drawn for each key; `draw` gives 0 to 1. */
export function drawBase(draw: () => number): FlatBase {
  return new Map(Object.entries(KEYS).map(([key, values]) => [key, pick(values, draw)] as const));
}

/** Another value of a key than the base has. */
export function drawOther(base: FlatBase, key: string, draw: () => number): unknown {
  return pick(
    (KEYS[key] ?? []).filter((value) => value !== base.get(key)),
    draw,
  );
}

export function pick<T>(values: readonly T[], draw: () => number): T | undefined {
  return values[Math.floor(draw() * values.length)];
}

/**
 * Segments and lower templates are left out where they would be a fault: of plywood, of setting plates, for hooks. So is a thread
 * at the lower end of a rod that is bent, swedged or threaded in full.
 */
function withoutContradictions(base: FlatBase): FlatBase {
  const use = base.get("template.use");
  const isPlywood = base.get("template.material") === "plywood";
  const isShaped = /hook|swedged/.test(JSON.stringify(base.get("rods.bottom") ?? ""));
  const noThread = isShaped || base.get("rods.threads") === "full" ? [["rods.bottomThreads", undefined] as const] : [];
  const isHooked = JSON.stringify(base.get("rods.bottom") ?? "").includes("hook");
  const noSegments = isPlywood || use !== undefined ? [["template.segments", undefined] as const] : [];
  const noLower =
    isPlywood || isHooked || use === "setting plate over cast rods" ? [["template.lower", undefined] as const] : [];
  return new Map([...base, ...noSegments, ...noLower, ...noThread]);
}

/** `rods.grade` -> { rods: { grade } }. */
function nest(base: FlatBase): Record<string, unknown> {
  const whole: Record<string, Record<string, unknown>> = {};
  for (const [path, value] of base) {
    const [first = "", second] = path.split(".");
    if (value === undefined) continue;
    if (second === undefined) Object.assign(whole, { [first]: value });
    else whole[first] = { ...whole[first], ...(second === "x" ? (value as object) : { [second]: value }) };
  }
  return whole;
}

/** The same base with its rods in a group beside another: holes and washer as the group's own. */
function inGroups(whole: Record<string, unknown>): Record<string, unknown> {
  const { rods, pattern, ...others } = whole;
  const second = { rods: { diameter: "1/2", projection: "5" }, pattern: { kind: "points", at: [["0", "8-3/8"]] } };
  return { ...others, groups: [{ rods, pattern }, second] };
}

/** Where bases of a layout stand; values of a placement are none of a base. */
const LAYOUT = {
  grid: { x: { names: ["1", "2", "3"], spacing: "2 @ 4'" }, y: { names: ["A", "B"], spacing: ["4'"] } },
  placements: [
    { base: 0, at: ["A-1", "B-2"], topOfConcrete: "99'-6\"" },
    { base: 1, at: ["A-2", "A-3"], topOfConcrete: "99'-6\"" },
    { base: 0, at: ["B-1"], turn: "90", topOfConcrete: "99'-0\"", bottomOfPlate: "99'-2\"" },
  ],
  control: [
    { point: "CP1", northing: "5000.000", easting: "2000.000", elevation: "100.00", at: "A-1" },
    { point: "CP2", northing: "5000.000", easting: "2008.000", elevation: "100.00", at: "A-3" },
  ],
  settingOut: { unit: "ft" },
};

/** How the bases of a case are written. */
export interface CaseForm {
  readonly inGroups: boolean;
  readonly hasPlan: boolean;
}

/** Rule and subject -> what the row says: value, limit, sense and status; null where the job has faults. */
export type Rows = ReadonlyMap<string, string>;

/** Rules of the first base and of the job, for two bases. */
export function rowsOf(first: FlatBase, second: FlatBase, form: CaseForm): Rows | null {
  const bases = [first, new Map([...second, ["mark", "X9"], ["template.mark", "TX9"]])].map((flat, index) => {
    const sound = withoutContradictions(flat);
    const base = nest(form.hasPlan ? new Map([...sound, ["quantity", undefined]]) : sound);
    return form.inGroups && index === 0 ? inGroups(base) : base;
  });
  const placements = LAYOUT.placements.map(({ base, ...at }) => ({ base: bases[base]?.mark, ...at }));
  const plan = form.hasPlan ? { ...LAYOUT, placements } : {};
  const job = { job: { number: "1" }, units: "in", rules: "us", ...plan, bases };
  const root = { ok: true, value: nodeOf(job), findings: [] } as const;
  const files = new Map<string, InputFile>([
    [SHOP, shop],
    ["job.yaml", { kind: "parsed", content: "", root }],
  ]);
  const opened = openJob({ job: "job.yaml", files }, { date: "2026-01-01" });
  if (!opened.ok) return null;
  const [base] = opened.value.bases;
  if (base === undefined) return null;
  const own = checkBase(opened.value.job, base).rows;
  const ofJob = checkWholeJob(opened.value.job, opened.value.plan, opened.value.bases);
  return bySubject([...own, ...ofJob]);
}

const PLACE: SourcePlace = { file: "job.yaml", line: 1, column: 1 };

/** The values as a job file has them, without the time that its text takes. */
function nodeOf(value: unknown): SourceNode {
  if (Array.isArray(value)) return { kind: "list", items: value.map(nodeOf), place: PLACE };
  if (typeof value !== "object" || value === null)
    return { kind: "scalar", text: String(value), style: "quoted", place: PLACE };
  const written = Object.entries(value).filter(([, each]) => each !== undefined);
  return {
    ...{ kind: "map", place: PLACE },
    entries: written.map(([key, each]) => ({ key, value: nodeOf(each), place: PLACE })),
  };
}

function bySubject(rows: readonly CheckRow[]): Rows {
  const said = new Map<string, string[]>();
  for (const { rule, subject, value, limit, sense, status } of rows) {
    const key = `${rule} ${subject}`;
    said.set(key, [...(said.get(key) ?? []), JSON.stringify([value, limit, sense, status])]);
  }
  return new Map([...said].map(([key, each]) => [key, each.sort().join("\n")]));
}

/** Rules of which a row that stands in both says something else. */
export function changedRules(before: Rows, after: Rows): ReadonlySet<string> {
  const changed = [...before].filter(([key, said]) => after.has(key) && after.get(key) !== said);
  return new Set(changed.map(([key]) => key.split(" ")[0] ?? ""));
}
