/** Forms of the columns by name, until these name theirs: a cell gives one node, or what is wrong with it. */
import type { SourceNode, SourcePlace } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import { readCell } from "./grammar/index.js";
import type { FormName } from "./model.js";

export { map, scalar } from "./grammar/index.js";

/** A node, or what is wrong with the cell and what is allowed. */
export type CellReading =
  | { readonly ok: true; readonly node: SourceNode }
  | { readonly ok: false; readonly message: string };

/** A form that a column's cells have. */
export type CellForm = (text: string, place: SourcePlace, unit: Unit) => CellReading;

function form(name: FormName, key = "value", synonyms: Readonly<Record<string, string>> = {}): CellForm {
  return (text, place, unit) => {
    const reading = readCell(text, name, { unit, headingUnit: null, place, key, synonyms });
    if (reading.kind === "fault" || reading.kind === "choice") return { ok: false, message: reading.message };
    const [part] = reading.kind === "value" ? reading.parts : [];
    return part === undefined ? { ok: false, message: `"${text}" gives no value here` } : { ok: true, node: part.node };
  };
}

/** A text, as written. */
export const asText: CellForm = form("text");
/** One of a few words, in any case; `synonyms` are what prints write for them. */
export const asWord = (synonyms: Readonly<Record<string, string>> = {}): CellForm => form("word", "value", synonyms);
/** `-9; 0; 9` */
export const asLengths: CellForm = form("lengths");
/** `-6,5; 6,5` */
export const asPoints: CellForm = form("points");
/** `0, 3` */
export const asPoint: CellForm = form("point");
/** `20 x 18`, `dia 30`, `ring 30 / 20`, `polygon 0,0; 9,0; 9,9`, `auto`; with `at 1, 2` where it is off centre. */
export const asOutline: CellForm = form("outline");
/** `chamfer 1`, `chamfer 1 x 2`, `notch 1 x 2`, `round 1`, `square`. */
export const asCorner: CellForm = form("corner");
/** `dia 6`, `8 x 6`, `8 x 6 r 1`, `auto`, `none`; with `at 1, 2`. */
export const asOpening: CellForm = form("opening");
/** `square 3 x 1/2`, `round 3`, or a standard, as `F844 wide`. */
export const asWasher: CellForm = form("washer");
/** `nut`, `plate 3 x 1/2` (a square), `plate dia 3 x 1/2`, `hook 4`. */
export const asBottom: CellForm = form("bottom");
/** `wide flange 12 x 8 x 5/8 x 3/8 along y` (depth, width, flange, web), `tube 8 x 8`, `pipe 8-5/8`; with `at 1, 2`. */
export const asColumn: CellForm = form("section");
/** `1/8: -9,8; 9,8`: a diameter and where; of a second source the diameter may be left out. */
export const asHoles = (key: "diameter" | "hole"): CellForm =>
  form("holes", key === "hole" ? "basePlate.pattern" : key);
