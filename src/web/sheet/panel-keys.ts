/** The keys of a base that do not stand on its drawing, in the order of the panel beside it. Which words each takes is the schema's to say. */
import type { LiveBase } from "../../tasks/live/model.js";
import { greatestOf } from "../../units/extremes.js";

/** A key with what it is called. */
export interface PanelKey {
  readonly key: string;
  readonly label: string;
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
};

/** Head of the job; full key paths. */
export const JOB_KEYS: readonly PanelKey[] = [
  { key: "units", label: "Units" },
  { key: "rules", label: "Rules" },
  { key: "shop", label: "Shop" },
];

/** The parts of the panel for a base. */
export function panelParts(base: LiveBase): readonly PanelPart[] {
  const said = new Set([...Object.keys(base.written), ...Object.keys(base.given)]);
  const groups = groupCount(said);
  const rods = groups === 0 ? [part("Rods", RODS, said)] : Array.from({ length: groups }, (_, i) => groupPart(i, said));
  const without = groups === 0 ? PLATE : withoutKeys(PLATE, ["basePlate.hole", "basePlate.washer"]);
  const template = groups === 0 ? TEMPLATE : withoutKeys(TEMPLATE, ["template.hole"]);
  return [
    ...rods,
    part("Base plate", without, said),
    part("Concrete", CONCRETE, said),
    part("Grout and levelling", GROUT, said),
    part("Template", template, said),
    part("Base", BASE, said),
  ];
}

function groupCount(said: ReadonlySet<string>): number {
  const indices = [...said].map((key) => Number(/^groups\[(\d+)\]/.exec(key)?.[1] ?? -1));
  return greatestOf(indices, -1) + 1;
}

function groupPart(index: number, said: ReadonlySet<string>): PanelPart {
  const prefixed = Object.entries({ ...RODS, ...OWN_OF_GROUP }).map(([key, label]) => [
    `groups[${index}].${key}`,
    label,
  ]);
  return part(`Rods of group ${String.fromCharCode(65 + index)}`, Object.fromEntries(prefixed), said);
}

function withoutKeys(
  keys: Readonly<Record<string, string>>,
  left: readonly string[],
): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(keys).filter(([key]) => !left.includes(key)));
}

/** A key that is written as a group of keys shows these instead, whatever they are. */
function part(name: string, keys: Readonly<Record<string, string>>, said: ReadonlySet<string>): PanelPart {
  return {
    name,
    keys: Object.entries(keys).flatMap(([key, label]): readonly PanelKey[] => {
      const inner = [...said].filter((each) => each.startsWith(`${key}.`));
      if (inner.length === 0) return [{ key, label }];
      return inner.map((each) => ({ key: each, label: `${label}, ${innerWords(each.slice(key.length + 1))}` }));
    }),
  };
}

function innerWords(path: string): string {
  return INNER[path] ?? path;
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
