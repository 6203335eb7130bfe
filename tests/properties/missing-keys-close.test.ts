/** What a row that is not checked says it lacks is all that it lacks: given that, it is checked. Invented bases. */
import { describe, expect, it } from "vitest";
import { checkBase } from "../../src/checks/checked.js";
import type { CheckRow } from "../../src/checks/model.js";
import { openJob } from "../../src/tasks/open.js";
import type { Unit } from "../../src/units/length.js";
import { inputsWith } from "../delivered.js";
import { drawFrom } from "../seed.js";

/** A key of a base, written as a job has it, with a value that every rule takes. */
const VALUES = {
  in: {
    "rods.grade": "55",
    "rods.finish": "plain",
    "rods.projection": "12",
    "rods.embedment": "24",
    "rods.length": "39",
    "rods.threads": "7",
    "rods.bottomThreads": "3",
    "rods.bottom": "nut",
    "rods.torqued": "false",
    "rods.wrenchRoom": "2-1/2",
    "basePlate.x": "20",
    "basePlate.y": "18",
    "basePlate.thickness": "1-1/4",
    "basePlate.hole": "1-13/16",
    "basePlate.washer": "{ shape: square, size: 3, thickness: 3/8 }",
    "concrete.x": "30",
    "concrete.y": "28",
    "concrete.depth": "40",
    "concrete.exposure": "exposed",
    "template.height": "3",
    "template.support": "bearers",
    column: "W12x65 along y",
    grout: "1-1/2",
    levelling: "nuts",
  },
  mm: {
    "rods.grade": "55",
    "rods.finish": "plain",
    "rods.projection": "300",
    "rods.embedment": "600",
    "rods.length": "980",
    "rods.threads": "180",
    "rods.bottomThreads": "80",
    "rods.bottom": "nut",
    "rods.torqued": "false",
    "rods.wrenchRoom": "64",
    "basePlate.x": "500",
    "basePlate.y": "450",
    "basePlate.thickness": "30",
    "basePlate.hole": "30",
    "basePlate.washer": "{ shape: square, size: 70, thickness: 10 }",
    "concrete.x": "800",
    "concrete.y": "700",
    "concrete.depth": "1000",
    "concrete.exposure": "exposed",
    "template.height": "80",
    "template.support": "bearers",
    column: "HEB 300 along y",
    grout: "40",
    levelling: "nuts",
  },
} as const;

type Key = keyof (typeof VALUES)["in"];

const KEYS = Object.keys(VALUES.in) as Key[];

/** What rows name, where that is no one key of the above. */
const STANDS_FOR: Readonly<Record<string, readonly Key[]>> = {
  basePlate: ["basePlate.x", "basePlate.y"],
  concrete: ["concrete.x", "concrete.y"],
  "rods.finish or rods.nut": ["rods.finish"],
  "rods.grade or rods.nut": ["rods.grade"],
};

/** Not tried: keys of the shop, of another edition, and those that take a file. */
const isTried = (key: string): boolean => !/shop file|^rules\.|^basePlate\.(pattern|from)$/.test(key);

function keysFor(named: string): readonly Key[] {
  const known = KEYS.filter((key) => key === named);
  return known.length > 0 ? known : (STANDS_FOR[named] ?? []);
}

function baseWith(mark: string, keys: ReadonlySet<Key>, unit: Unit): string {
  const size = unit === "in" ? "1" : "M24";
  const pattern = unit === "in" ? "x: 12, y: 10" : "x: 300, y: 250";
  const thickness = unit === "in" ? "1/4" : "6";
  const group = (name: string, own: readonly string[]): string => {
    const given = KEYS.filter((key) => keys.has(key) && key.startsWith(`${name}.`));
    const parts = [...own, ...given.map((key) => `${key.slice(name.length + 1)}: ${VALUES[unit][key]}`)];
    return parts.length === 0 ? "" : `, ${name}: { ${parts.join(", ")} }`;
  };
  const alone = KEYS.filter((key) => keys.has(key) && !key.includes(".")).map(
    (key) => `, ${key}: ${VALUES[unit][key]}`,
  );
  const groups = [
    group("rods", [`diameter: ${size}`]),
    group("basePlate", []),
    group("concrete", []),
    group("template", [`thickness: ${thickness}`, "key: none"]),
  ];
  return `{ mark: ${mark}, pattern: { kind: rectangle, ${pattern} }${groups.join("")}${alone.join("")} }`;
}

/** Keys of these bases, half of them left out; a plate and a pier have both sides or none. */
function drawKeys(draw: () => number): ReadonlySet<Key> {
  const keys = new Set(KEYS.filter(() => draw() < 0.5));
  for (const name of ["basePlate", "concrete"] as const) {
    if (keys.has(`${name}.x`)) keys.add(`${name}.y`);
    else keys.delete(`${name}.y`);
  }
  return keys;
}

function rowsOf(bases: readonly string[], unit: Unit): readonly (readonly CheckRow[])[] {
  const opened = openJob(inputsWith(bases, { unit }), { date: "2026-11-24" });
  if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("; "));
  const { job, bases: shaped } = opened.value;
  return [...shaped].map((base) => checkBase(job, base).rows);
}

const unchecked = (rows: readonly CheckRow[]) => rows.filter(({ status }) => status === "not-checked");
const nameOf = ({ rule, clause, subject }: CheckRow): string => `${rule} | ${clause} | ${subject}`;

interface Trial {
  readonly mark: string;
  readonly before: readonly CheckRow[];
  readonly named: readonly string[];
  readonly base: string;
}

/** A base for each set of keys that its rows name, with those given. */
function trialsOf(keys: ReadonlySet<Key>, rows: readonly CheckRow[], mark: string, unit: Unit): readonly Trial[] {
  const sets = new Map(unchecked(rows).map(({ missing }) => [missing.toSorted().join(" + "), missing]));
  return [...sets.values()]
    .filter((named) => named.length > 0 && named.every(isTried))
    .map((named, i) => {
      const own = `${mark}-${i + 1}x`;
      const base = baseWith(own, new Set([...keys, ...named.flatMap(keysFor)]), unit);
      return { mark: own, before: rows, named, base };
    });
}

/** Rows that should be checked now and are not. */
function stillOpen({ before, named }: Trial, after: readonly CheckRow[]): readonly string[] {
  const count = (rows: readonly CheckRow[], name: string) => rows.filter((row) => nameOf(row) === name).length;
  const given = new Set(named);
  const closing = unchecked(before).filter(
    ({ missing }) => missing.length > 0 && missing.every((key) => given.has(key)),
  );
  const names = [...new Set(closing.map(nameOf))];
  return names.flatMap((name) => {
    const most = count(unchecked(before), name) - count(closing, name);
    const left = unchecked(after).filter((row) => nameOf(row) === name);
    return left.length > most
      ? [`${name}: with ${named.join(" + ")} lacks ${left.map(({ note }) => note).join("; ")}`]
      : [];
  });
}

describe("keys that a row lacks", () => {
  it.each(["in", "mm"] as const)("are all that it lacks, in %s", (unit) => {
    const draw = drawFrom(unit === "in" ? 4101 : 4102);
    const sets = Array.from({ length: 24 }, () => drawKeys(draw));
    const rows = rowsOf(
      sets.map((keys, i) => baseWith(`B${i + 1}`, keys, unit)),
      unit,
    );
    const trials = sets.flatMap((keys, i) => trialsOf(keys, rows[i] ?? [], `B${i + 1}`, unit));
    const after = rowsOf(
      trials.map(({ base }) => base),
      unit,
    );
    expect(trials.length).toBeGreaterThan(150);
    const open = trials.flatMap((trial, i) => stillOpen(trial, after[i] ?? []));
    expect([...new Set(open)]).toEqual([]);
  });

  it("are known to this test, every one", () => {
    const rows = rowsOf([baseWith("B1", new Set(), "in")], "in").flat();
    const names = new Set(unchecked(rows).flatMap(({ missing }) => missing.filter(isTried)));
    expect([...names].filter((name) => keysFor(name).length === 0)).toEqual([]);
  });
});
