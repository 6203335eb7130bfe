/** Starter jobs and what the shop has in stock, as the form for a first template offers them. */
import plasma from "../../../templates/shops/plasma.yaml?raw";
import plasmaMetric from "../../../templates/shops/plasma-metric.yaml?raw";
import metric from "../../../templates/start/metric.yaml?raw";
import us from "../../../templates/start/us.yaml?raw";
import { findNode } from "../../readers/source.js";
import { readYaml } from "../../readers/yaml.js";
import type { Unit } from "../../units/index.js";

/** Text of the starter whose head a first job takes. */
export const STARTER_TEXTS: Readonly<Record<Unit, string>> = { in: us, mm: metric };

/** Thicknesses of steel that the starter's shop has in stock. */
export function stockThicknesses(unit: Unit): readonly string[] {
  const read = readYaml(unit === "in" ? plasma : plasmaMetric, "shop");
  const steel = read.ok ? findNode(read.value, "thicknesses", "steel") : undefined;
  return steel?.kind === "list" ? steel.items.flatMap((item) => (item.kind === "scalar" ? [item.text] : [])) : [];
}
