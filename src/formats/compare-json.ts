/** A comparison in machine form: lengths in NEW's unit, rounded as in summary.json. Key order is fixed. */

import type {
  BottomState,
  Change,
  Comparison,
  HolePlace,
  HoleSize,
  RodChange,
  RodComparison,
  RodState,
  TemplateComparison,
  TemplateState,
} from "../compare/index.js";
import { countRecuts, countRemade, RECUT_KINDS, VERDICTS } from "../compare/index.js";
import type { Printable } from "../diagnostics/printable.js";
import { terminalJson } from "../diagnostics/printable.js";
import type { SummaryEndPlate } from "../summary/model.js";
import { areaInUnit } from "../summary/summarize.js";
import type { Unit } from "../units/length.js";
import { NM_PER_MM, toUnit } from "../units/length.js";

/** A comparison in machine form. */
export type CompareForm = ReturnType<typeof compareForm>;

/** The text of `compare --json`, ending with a line break. */
export function writeCompareJson(comparison: Comparison): Printable {
  return terminalJson(compareForm(comparison));
}

/** Templates and rods worst first. `recut` counts templates, `remade` rods; null where a side does not list its rods. */
export function compareForm(comparison: Comparison) {
  const { templates, old, new: fresh } = comparison;
  const { unit } = fresh.job;
  const counts = VERDICTS.map((kind) => [kind, templates.filter(({ verdict }) => verdict === kind).length] as const);
  const side = ({ name, source, job }: Comparison["old"]) => ({ name, source, job });
  return {
    schema: 1,
    old: side(old),
    new: side(fresh),
    unit,
    recut: countRecuts(comparison),
    remade: comparison.rods === null ? null : countRemade(comparison),
    counts: Object.fromEntries(counts),
    templates: templates.map((each) => templateForm(each, unit)),
    rods: comparison.rods?.map((each) => rodForm(each, unit)) ?? null,
  };
}

function rodForm({ verdict, old, new: fresh, changes }: RodComparison, unit: Unit) {
  return {
    verdict,
    old: rodStateForm(old),
    new: rodStateForm(fresh),
    changes: changes.map((change) => rodChangeForm(change, unit)),
  };
}

function rodStateForm(state: RodState | null) {
  if (state === null) return null;
  const { base, group, total, size } = state;
  return { base, group, total, size };
}

function rodChangeForm({ what, from, to }: RodChange, unit: Unit) {
  return { what, from: rodValue(what, from, unit), to: rodValue(what, to, unit) };
}

function rodValue(what: RodChange["what"], value: RodChange["from"], unit: Unit) {
  if (typeof value === "number") return what === "quantity" ? value : toUnit(value, unit);
  return typeof value === "object" && value !== null ? bottomForm(value, unit) : value;
}

function bottomForm(bottom: BottomState, unit: Unit): BottomState {
  switch (bottom.kind) {
    case "straight":
      return bottom;
    case "nut":
      return bottom.washer === undefined ? bottom : { ...bottom, washer: endPlateForm(bottom.washer, unit) };
    case "plate":
      return { ...bottom, ...endPlateForm(bottom, unit) };
    case "hook": {
      const { radius } = bottom;
      const form = { ...bottom, reach: toUnit(bottom.reach, unit) };
      return radius === undefined ? form : { ...form, radius: toUnit(radius, unit) };
    }
    case "swedged":
      return { ...bottom, length: toUnit(bottom.length, unit) };
  }
}

function endPlateForm({ shape, size, thickness }: SummaryEndPlate, unit: Unit): SummaryEndPlate {
  return { shape, size: toUnit(size, unit), thickness: toUnit(thickness, unit) };
}

function templateForm({ verdict, old, new: fresh, changes }: TemplateComparison, unit: Unit) {
  return {
    verdict,
    old: stateForm(old),
    new: stateForm(fresh),
    changes: changes.map((change) => changeForm(change, unit)),
  };
}

/** `delivered`: a file to cut or drill by is handed out. */
function stateForm(state: TemplateState | null) {
  if (state === null) return null;
  const { base, bases, serves, mark, quantity, held, delivered } = state;
  return { base, bases, serves, template: mark, quantity, held, delivered };
}

/** `recut`: the change by itself makes another plate. */
function changeForm(change: Change, unit: Unit): Readonly<Record<string, unknown>> {
  return { what: change.what, recut: RECUT_KINDS.has(change.what), ...detailForm(change, unit) };
}

function detailForm(change: Change, unit: Unit): Readonly<Record<string, unknown>> {
  const length = (nm: number): number => toUnit(nm, unit);
  const place = ({ x, y }: HolePlace) => [length(x), length(y)];
  switch (change.what) {
    case "hole-moved": {
      const { role, tag, oldTag, from, to, distance } = change;
      const way = { dx: length(to.x - from.x), dy: length(to.y - from.y), distance: length(distance) };
      return { role, tag, oldTag, from: place(from), to: place(to), ...way };
    }
    case "hole-size": {
      const { role, tag, oldTag, from, to } = change;
      return { role, tag, oldTag, from: sizeForm(from, length), to: sizeForm(to, length) };
    }
    case "rod-size": {
      const { role, tag, oldTag, from, to } = change;
      return { role, tag, oldTag, from: from === null ? null : length(from), to: to === null ? null : length(to) };
    }
    case "hole-added":
    case "hole-gone": {
      const { role, tag, at, size } = change;
      return { role, tag, at: place(at), size: sizeForm(size, length) };
    }
    case "outline":
      return { from: outlineForm(change.from, unit), to: outlineForm(change.to, unit) };
    case "thickness":
      return { from: length(change.from), to: length(change.to) };
    case "working-point":
      return { dx: length(change.dx), dy: length(change.dy) };
    case "hole-role":
    case "hole-made":
    case "tag":
    case "material":
    case "grade":
    case "grade-said":
    case "marks":
    case "file":
    case "held":
    case "quantity":
    case "bases":
    case "template-mark":
    case "base-mark":
    case "merged":
    case "split":
    case "serves": {
      const { what: _, ...plain } = change;
      return plain;
    }
  }
}

function sizeForm(size: HoleSize, length: (nm: number) => number) {
  if (size.kind === "circle") return { diameter: length(size.diameter) };
  return { width: length(size.width), height: length(size.height), radius: length(size.radius) };
}

function outlineForm({ kind, extent, area, perimeter }: TemplateState["outline"], unit: Unit) {
  return {
    kind,
    extent: extent.map((side) => toUnit(side, unit)),
    area: areaInUnit(area / NM_PER_MM ** 2, unit),
    perimeter: toUnit(perimeter, unit),
  };
}
