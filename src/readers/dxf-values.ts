/** The values of an entity by their group codes, for those kinds that a file holds few of. */
import type { FindingList } from "./dxf-findings.js";
import { facing, reportPlane } from "./dxf-plane.js";
import type { TagRange, Tags } from "./dxf-tags.js";

/** What an entity says under its group codes; layer 0 where it names none. */
export interface EntityValues {
  readonly type: string;
  readonly layer: string;
  /** Name of a block (group 2). */
  readonly name: string;
  /** Every number of a group code, in the file's order. */
  all(code: number): readonly number[];
  /** The first number of a group code. */
  first(code: number): number | undefined;
}

/** Null, with a finding, where a value is no number or the entity is not of the model space. */
export function readValues(tags: Tags, range: TagRange, findings: FindingList): EntityValues | null {
  const type = tags.text(range.first);
  const numbers = new Map<number, number[]>();
  let [layer, name, isReadable] = ["0", "", true];
  for (let index = range.first + 1; index < range.end; index++) {
    const code = tags.codes[index] ?? 0;
    if (code >= 1000) break;
    if (code === 8) layer = tags.text(index);
    else if (code === 2) name = tags.text(index);
    if (!isNumeric(code)) continue;
    const number = tags.number(index);
    if (number === null) {
      findings.add("bad-number", "stop", `${type} with a value that is no number (group ${code}) is not read`);
      isReadable = false;
      continue;
    }
    const others = numbers.get(code);
    if (others === undefined) numbers.set(code, [number]);
    else others.push(number);
    if (isOfPlane(code)) isReadable = reportPlane(code, number, type, findings) && isReadable;
  }
  if (!isReadable) return null;
  const all = (code: number) => numbers.get(code) ?? [];
  return { type, layer, name, all, first: (code) => all(code)[0] };
}

function isNumeric(code: number): boolean {
  return (code >= 10 && code <= 59) || code === 60 || (code >= 66 && code <= 78) || (code >= 210 && code <= 230);
}

/** Height, thickness, visibility and space; groups 31 and 38 of a spline or an insert mean the same. */
function isOfPlane(code: number): boolean {
  return code === 30 || code === 38 || code === 39 || code === 60 || code === 67;
}

/** The side that the entity's extrusion direction faces. */
export function facingOf(values: EntityValues, findings: FindingList): "up" | "down" | null {
  const [x, y, z] = [values.first(210) ?? 0, values.first(220) ?? 0, values.first(230) ?? 1];
  return facing({ x, y, z }, values.type, findings);
}
