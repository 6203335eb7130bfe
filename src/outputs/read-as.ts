/** What was understood of the job's schedule, as its writers take it. */
import type { GivenBy, ReadAsEntry, ReadAsForm } from "../formats/read-as-form.js";
import { headingNamed, headingOf } from "../schedule/index.js";
import type { ReadAs, ReadLine, ReadOrigin } from "../schedule/model.js";

const GIVEN_BY: Readonly<Record<ReadOrigin, GivenBy>> = {
  ...{ row: "row", above: "cell above", base: "other base", note: "note", answer: "answer" },
  ...{ default: "default", kind: "kind", job: "the job" },
  ...{ kept: "kept as a note", "left out": "left out", asked: "asked" },
};

/** The form of a read-as table; `unit` is that of bare lengths, "" where it is asked. */
export function readAsForm({ file, sheet, lines, questions }: ReadAs, unit: string): ReadAsForm {
  return { file, sheet, unit, entries: lines.map((line) => readAsEntry(line, unit)), questions };
}

function readAsEntry(line: ReadLine, bare: string): ReadAsEntry {
  const { mark, cell, heading, written, key, taken, origin, remark } = line;
  const name = nameOfKey(key);
  const unit = line.unit === "" && isBareLength(name, taken) ? bare : line.unit;
  return { mark, cell, heading, written, name, key, value: taken, unit, givenBy: GIVEN_BY[origin], remark };
}

/** True for a number without a unit under a heading of lengths: what the job gives has no cell that says its unit. */
function isBareLength(name: string, value: string): boolean {
  return headingNamed(name)?.measure === "length" && /^\d[\d\s./-]*$/.test(value);
}

/** Our own heading for a key of a base or of one of its groups, or for what holds it; the key itself where no column has it. */
export function nameOfKey(key: string): string {
  const path = key.split(".").map((step) => step.replace(/(\[\d+\])+$/, ""));
  for (let length = path.length; length > 0; length -= 1) {
    const name = headingOf(path.slice(0, length));
    if (name !== null && (length === path.length || !GROUPS.has(path.slice(0, length).join(".")))) return name;
  }
  return key;
}

/** Groups of keys that are asked for by one of their headings: it is not that of their other keys. */
const GROUPS: ReadonlySet<string> = new Set(["template", "rods", "pattern"]);
