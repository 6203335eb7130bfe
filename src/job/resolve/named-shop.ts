/** The shop that a job names, from its file. */
import type { Outcome } from "../../diagnostics/finding.js";
import { nearestWord } from "../../diagnostics/nearest.js";
import { contentOf } from "../../readers/inputs.js";
import type { Unit } from "../../units/index.js";
import type { WithFindings } from "../document.js";
import { faultAt } from "../document.js";
import type { Memory } from "../memory.js";
import type { HeadDocument } from "../schema/job.js";
import type { JobSources } from "./job-sources.js";
import type { ReadShop } from "./shop.js";
import { readShop, SHOP_NAMES, shopFileName } from "./shop.js";

/** The shop of a job that names none. */
export function defaultShop(unit: Unit): string {
  return unit === "in" ? "plasma" : "plasma-metric";
}

/** The shop and the grades that it declares; null where its file is not there or has faults. */
export function readNamedShop(
  head: HeadDocument | null,
  { document, inputs, unit }: JobSources,
  memory?: Memory,
): WithFindings<ReadShop | null> {
  const name = head?.shop ?? defaultShop(unit);
  const file = shopFileName(name);
  const content = contentOf(inputs.files.get(file));
  if (content === undefined) {
    const isOurs = SHOP_NAMES.includes(name);
    const near = isOurs ? undefined : nearestWord(name, SHOP_NAMES);
    const known = `allowed are ${SHOP_NAMES.join(", ")}, or the path of a shop file`;
    const message = isOurs ? `the shop file ${file} was not handed in` : `there is no shop file ${file}; ${known}`;
    const hint = near === undefined ? undefined : `did you mean ${near}?`;
    return { value: null, findings: [faultAt(document, ["shop"], "unknown-shop", message, hint)] };
  }
  const shop = knownShop(content, file, unit, memory);
  return { value: shop.ok ? shop.value : null, findings: shop.findings };
}

/** Read again only where the file has another content than it had. */
function knownShop(content: string | Uint8Array, file: string, unit: Unit, memory?: Memory): Outcome<ReadShop> {
  const key = `${unit} ${file}`;
  const known = memory?.known<{ readonly content: string | Uint8Array; readonly read: Outcome<ReadShop> }>("shop", key);
  if (known?.content === content) return known.read;
  const read = readShop(content, file, unit);
  memory?.keep("shop", key, { content, read });
  return read;
}
