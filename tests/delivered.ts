/** Small jobs for tests of what a package delivers: a template of steel and one of plywood, or one alone. Invented data. */
import { readFileSync } from "node:fs";
import type { Inputs } from "../src/readers/inputs.js";
import type { Build } from "../src/tasks/build.js";
import { build } from "../src/tasks/build.js";
import type { Unit } from "../src/units/length.js";

const SHOPS = { in: "templates/shops/plasma.yaml", mm: "templates/shops/plasma-metric.yaml" } as const;

/** A job of these bases, as YAML list items without their dash. */
export function inputsWith(bases: readonly string[], { status = "released", unit = "in" as Unit } = {}): Inputs {
  const shop = SHOPS[unit];
  const head = `job: { number: "26-050", title: Invented depot, revision: A, status: ${status}, date: 2026-11-24 }\n`;
  const rules = unit === "in" ? "rules: us\nshop: plasma\n" : "rules: metric\nshop: plasma-metric\n";
  const text = `${head}units: ${unit}\n${rules}bases:\n${bases.map((base) => `  - ${base}\n`).join("")}`;
  return {
    job: "job.yaml",
    files: new Map([
      ["job.yaml", text],
      [shop, readFileSync(new URL(`../${shop}`, import.meta.url), "utf8")],
    ]),
  };
}

export const STEEL = "thickness: 1/4";
export const PLYWOOD = "material: plywood, thickness: 3/4";

/** Four rods 8 in apart each way, and a template over a form 20 in wide; one 40 in wide is too wide for it: held. */
export const usBase = (mark: string, template: string, form = 20): string =>
  `{ mark: ${mark}, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 8, y: 8 }, concrete: { x: ${form}, y: 20 }, ` +
  `template: { ${template}, support: form, hole: 13/16, outline: { kind: rectangle, x: 23, y: 12, at: [1/2, -1/2] }, key: none, opening: { diameter: 4 } } }`;

/** Builds what is cut or drilled by, and no sheets. */
export function buildDelivered(inputs: Inputs, includeHeld = false): Build {
  const outputs = ["cut-joined", "cut-r12", "drill-list", "summary"] as const;
  return build(inputs, { date: "2026-11-24", version: "0", document: null, includeHeld, outputs });
}
