/** The keys of a base that do not stand on its drawing, in the order of the panel beside it. Which words each takes is the schema's to say. */
import type { LiveBase } from "../../tasks/live/model.js";
import { greatestOf } from "../../units/extremes.js";

/** A key with what it is called. */
export interface PanelKey {
  readonly key: string;
  readonly label: string;
  /** Keys that say the same in parts, where it may be written as a group of keys and is not. */
  readonly parts?: readonly PanelKey[];
}

/** Keys under one heading. */
export interface PanelPart {
  readonly name: string;
  readonly keys: readonly PanelKey[];
}

const RODS: Readonly<Record<string, string>> = {
  "rods.diameter": "Size",
  "rods.grade": "Grade",
  "rods.finish": "Finish",
  "rods.projection": "Projection over concrete",
  "rods.embedment": "Embedment",
  "rods.length": "Whole length",
  "rods.threads": "Thread at the top",
  "rods.bottom": "Lower end",
  "rods.bottomThreads": "Thread at the lower end",
  "rods.nut": "Nut",
  "rods.topNuts": "Nuts on the base plate",
  "rods.levellingNuts": "Nuts under the base plate",
  "rods.torqued": "Torqued",
  "rods.wrenchRoom": "Room that a wrench needs",
};

const OWN_OF_GROUP: Readonly<Record<string, string>> = {
  hole: "Hole in the template",
  baseHole: "Hole in the base plate",
  washer: "Washer on the base plate",
};

const PLATE: Readonly<Record<string, string>> = {
  "basePlate.x": "Along x",
  "basePlate.y": "Along y",
  "basePlate.diameter": "Diameter, if round",
  "basePlate.thickness": "Thickness",
  "basePlate.hole": "Hole for the rods",
  "basePlate.washer": "Washer",
  "basePlate.pattern": "Its holes by a second source",
};

const CONCRETE: Readonly<Record<string, string>> = {
  "concrete.x": "Along x",
  "concrete.y": "Along y",
  "concrete.diameter": "Diameter, if round",
  "concrete.depth": "Depth",
  "concrete.exposure": "Exposure",
};

const GROUT: Readonly<Record<string, string>> = { grout: "Grout under the base plate", levelling: "Levelled by" };

const TEMPLATE: Readonly<Record<string, string>> = {
  "template.mark": "Mark",
  "template.quantity": "Quantity",
  "template.material": "Material",
  "template.grade": "Grade",
  "template.thickness": "Thickness",
  "template.use": "Use",
  "template.support": "Carried by",
  "template.height": "Height over concrete",
  "template.hole": "Hole for the rods",
  "template.outline": "Outline",
  "template.opening": "Opening",
  "template.key": "Orientation key",
};

const BASE: Readonly<Record<string, string>> = {
  mark: "Mark",
  quantity: "Columns on it",
  kind: "Kind",
  member: "Stands on it",
  column: "Column",
  delivery: "Delivery",
  note: "Note on the sheet",
};

/** Words of keys inside what may be a group of keys. */
const INNER: Readonly<Record<string, string>> = {
  kind: "kind",
  size: "size",
  thickness: "thickness",
  shape: "shape",
  reach: "reach",
  radius: "radius",
  length: "length",
  nuts: "nuts",
  washer: "washer",
  tackWelded: "tack-welded",
  x: "along x",
  y: "along y",
  nx: "lines along x",
  ny: "lines along y",
  hole: "hole",
  inner: "inside",
  outer: "outside",
};

/** Head of the job; full key paths. */
const JOB_KEYS: readonly PanelKey[] = [
  { key: "units", label: "Units" },
  { key: "rules", label: "Rules" },
  { key: "rules.templateHoles", label: "Edition for template holes" },
  { key: "rules.baseHoles", label: "Edition for base-plate holes" },
  { key: "rules.placing", label: "Edition for placing" },
  { key: "rules.edges", label: "Edition for edge distances" },
  { key: "rules.concrete", label: "Edition for spacing and cover" },
  { key: "shop", label: "Shop" },
];

/** The keys of the job's head. Where its rules are written as a group of keys their set is one of these. */
export function jobKeys(said: Readonly<Record<string, string>>): readonly PanelKey[] {
  const isGroup = Object.keys(said).some((key) => key.startsWith("rules."));
  return JOB_KEYS.map((each) => (isGroup && each.key === "rules" ? { ...each, key: "rules.set" } : each));
}

/** The parts of the panel for a base. `known`: every key that a job file may have, indices left out; empty until they are known. */
export function panelParts(base: LiveBase, known: readonly string[]): readonly PanelPart[] {
  const keys: Keys = { said: new Set([...Object.keys(base.written), ...Object.keys(base.given)]), known };
  const groups = groupCount(keys.said);
  const rods = groups === 0 ? [part("Rods", RODS, keys)] : Array.from({ length: groups }, (_, i) => groupPart(i, keys));
  const without = groups === 0 ? PLATE : withoutKeys(PLATE, ["basePlate.hole", "basePlate.washer"]);
  const template = groups === 0 ? TEMPLATE : withoutKeys(TEMPLATE, ["template.hole"]);
  return [
    ...rods,
    part("Base plate", without, keys),
    part("Concrete", CONCRETE, keys),
    part("Grout and levelling", GROUT, keys),
    part("Template", template, keys),
    part("Base", BASE, keys),
  ];
}

interface Keys {
  /** Of the base: written, or given to it. */
  readonly said: ReadonlySet<string>;
  readonly known: readonly string[];
}

function groupCount(said: ReadonlySet<string>): number {
  const indices = [...said].map((key) => Number(/^groups\[(\d+)\]/.exec(key)?.[1] ?? -1));
  return greatestOf(indices, -1) + 1;
}

function groupPart(index: number, keys: Keys): PanelPart {
  const prefixed = Object.entries({ ...RODS, ...OWN_OF_GROUP }).map(([key, label]) => [
    `groups[${index}].${key}`,
    label,
  ]);
  return part(`Rods of group ${String.fromCharCode(65 + index)}`, Object.fromEntries(prefixed), keys);
}

function withoutKeys(
  keys: Readonly<Record<string, string>>,
  left: readonly string[],
): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(keys).filter(([key]) => !left.includes(key)));
}

/** A key that is written as a group of keys shows these instead: those that are there, and those that could be. */
function part(name: string, labels: Readonly<Record<string, string>>, keys: Keys): PanelPart {
  return {
    name,
    keys: Object.entries(labels).flatMap(([key, label]): readonly PanelKey[] => {
      const parts = partsOf(key, label, keys);
      const isGroup = [...keys.said].some((each) => each.startsWith(`${key}.`));
      return isGroup ? parts : [{ key, label, ...(parts.length === 0 ? {} : { parts }) }];
    }),
  };
}

/** Keys within a group that take a text; lists stand on the drawing. */
function partsOf(key: string, label: string, { said, known }: Keys): readonly PanelKey[] {
  const pattern = `${key.replace(/\[\d+\]/g, "[]")}.`;
  const could = known.filter((each) => each.startsWith(pattern)).map((each) => each.slice(pattern.length));
  const there = [...said].filter((each) => each.startsWith(`${key}.`)).map((each) => each.slice(key.length + 1));
  const inner = [...new Set([...could, ...there])];
  return inner
    .filter(
      (each) =>
        there.includes(each) ||
        !inner.some((other) => /^[.[]/.test(other.slice(each.length)) && other.startsWith(each)),
    )
    .filter((each) => there.includes(each) || !each.includes("["))
    .map((each) => ({ key: `${key}.${each}`, label: `${label}, ${innerWords(each)}` }));
}

function innerWords(path: string): string {
  return path
    .split(".")
    .map((word) => INNER[word] ?? word)
    .join(" ");
}

/** The key of the panel that a row means by a key that it lacks: `rods.grade or rods.nut`, `concrete`; null: it has none there. */
export function panelKeyOf(parts: readonly PanelPart[], lacked: string): string | null {
  const keys = parts.flatMap((each) => each.keys.map(({ key }) => key));
  for (const wanted of lacked.split(" or ")) for (const key of keys) if (isMeant(key, wanted)) return key;
  return null;
}

/** True where a row that lacks `wanted` lacks this key, of a group of rods too, or the group of keys that it begins. */
export function isMeant(key: string, wanted: string): boolean {
  const own = key.replace(/^groups\[\d+\]\./, "");
  return own === wanted || own === `${wanted}.x`;
}
