/** What a person writes into one cell (`20 x 18`, `chamfer 1`, `-6,5; 6,5`) -> the nodes that a job file would have there. */
import { ownValue } from "../diagnostics/own-value.js";
import type { SourceMap, SourceNode, SourcePlace } from "../readers/source.js";

/** A node, or what is wrong with the cell and what is allowed. */
export type CellReading =
  | { readonly ok: true; readonly node: SourceNode }
  | { readonly ok: false; readonly message: string };

/** A form that a column's cells have. */
export type CellForm = (text: string, place: SourcePlace) => CellReading;

/** A text, as written. */
export const asText: CellForm = (text, place) => ok(scalar(text, place));

/** One of a few words, in any case; `synonyms` are what prints write for them. */
export function asWord(synonyms: Readonly<Record<string, string>> = {}): CellForm {
  return (text, place) => {
    const word = text.toLowerCase().replace(/\s+/g, " ").trim();
    return ok(scalar(ownValue(synonyms, word.replace(/\.$/, "")) ?? word, place));
  };
}

/** `-9; 0; 9` */
export const asLengths: CellForm = (text, place) => ok(list(parts(text, ";"), place));

/** `-6,5; 6,5` */
export const asPoints: CellForm = (text, place) => ok(points(text, place));

/** `0, 3` */
export const asPoint: CellForm = (text, place) => ok(list(parts(text, ","), place));

/** `20 x 18`, `dia 30`, `ring 30 / 20`, `polygon 0,0; 9,0; 9,9`, `auto`; with `at 1, 2` where it is off centre. */
export const asOutline: CellForm = (text, place) => {
  const { main, at } = splitAt(text, place);
  if (/^auto$/i.test(main)) return ok(map({ kind: scalar("auto", place) }, place));
  const polygon = /^polygon:? (.+)$/is.exec(main);
  if (polygon?.[1] !== undefined)
    return ok(map({ kind: scalar("polygon", place), at: points(polygon[1], place) }, place));
  const ring = /^ring:? (.+)$/i.exec(main) ?? /^(.+?) ring$/i.exec(main);
  if (ring?.[1] !== undefined) return readRing(ring[1], at, place);
  const diameter = diameterIn(main);
  if (diameter !== null)
    return ok(map({ kind: scalar("circle", place), diameter: scalar(diameter, place), ...at }, place));
  const sides = parts(main, "x");
  if (sides.length !== 2)
    return refuse(text, "20 x 18, dia 30, ring 30 / 20, polygon 0,0; 9,0; 9,9, or auto; with at 1, 2");
  return ok(map({ kind: scalar("rectangle", place), ...named(["x", "y"], sides, place), ...at }, place));
};

function readRing(text: string, at: Keys, place: SourcePlace): CellReading {
  const diameters = text.split(/\s+\/\s+|\s*[x×]\s*/i);
  if (diameters.length !== 2) return refuse(text, "ring OUTER / INNER, as ring 30 / 20");
  return ok(map({ kind: scalar("ring", place), ...named(["outer", "inner"], diameters, place), ...at }, place));
}

/** `chamfer 1`, `chamfer 1 x 2`, `notch 1 x 2`, `round 1`, `square`. */
export const asCorner: CellForm = (text, place) => {
  const written = /^(square|chamfer|round|notch)(?: (.+))?$/i.exec(text.trim());
  const kind = written?.[1]?.toLowerCase();
  const sizes = written?.[2] === undefined ? [] : parts(written[2], "x");
  if (kind === undefined || (kind === "square") !== (sizes.length === 0) || sizes.length > (kind === "round" ? 1 : 2)) {
    return refuse(text, "square, chamfer 1, chamfer 1 x 2, round 1, notch 1, notch 1 x 2");
  }
  const names = sizes.length === 2 ? ["x", "y"] : ["size"];
  return ok(map({ kind: scalar(kind, place), ...named(names, sizes, place) }, place));
};

/** `dia 6`, `8 x 6`, `8 x 6 r 1`, `auto`, `none`; with `at 1, 2`. */
export const asOpening: CellForm = (text, place) => {
  const { main, at } = splitAt(text, place);
  if (/^(auto|none)$/i.test(main)) return ok(scalar(main.toLowerCase(), place));
  const diameter = diameterIn(main);
  if (diameter !== null) return ok(map({ diameter: scalar(diameter, place), ...at }, place));
  const written = /^(.+?)(?: r(?:adius)? ?(.+))?$/i.exec(main);
  const sides = parts(written?.[1] ?? "", "x");
  if (sides.length !== 2) return refuse(text, "dia 6, 8 x 6, 8 x 6 r 1, auto, or none; with at 1, 2");
  const radius = written?.[2] === undefined ? {} : { radius: scalar(written[2], place) };
  return ok(map({ ...named(["x", "y"], sides, place), ...radius, ...at }, place));
};

/** `square 3 x 1/2`, `round 3`, or a standard, as `F844 wide`. */
export const asWasher: CellForm = (text, place) => {
  const written = /^(round|square|sq\.?|dia\.?) (.+)$/i.exec(text.trim());
  if (written === null) return ok(scalar(text, place));
  const shape = /^sq/i.test(written[1] ?? "") ? "square" : "round";
  const sizes = parts(written[2] ?? "", "x");
  if (sizes.length > 2) return refuse(text, "square 3 x 1/2, round 3 x 3/8, or a standard, as F844 wide");
  return ok(map({ shape: scalar(shape, place), ...named(["size", "thickness"], sizes, place) }, place));
};

/** `nut`, `plate 3 x 1/2` (a square), `plate dia 3 x 1/2`, `hook 4`. */
export const asBottom: CellForm = (text, place) => {
  const plain = text.trim();
  if (/^nut$/i.test(plain)) return ok(scalar("nut", place));
  const hook = /^hook (.+)$/i.exec(plain)?.[1];
  if (hook !== undefined) return ok(map({ kind: scalar("hook", place), reach: scalar(hook, place) }, place));
  const plate = /^plate (dia\.? )?(.+)$/i.exec(plain);
  const sizes = parts(plate?.[2] ?? "", "x");
  if (sizes.length !== 2) return refuse(text, "nut, plate 3 x 1/2, plate dia 3 x 1/2, or hook 4");
  const shape = scalar(plate?.[1] === undefined ? "square" : "round", place);
  return ok(map({ kind: scalar("plate", place), shape, ...named(["size", "thickness"], sizes, place) }, place));
};

const COLUMN_SIZES: Readonly<Record<string, readonly string[]>> = {
  "wide flange": ["depth", "width", "flange", "web"],
  tube: ["x", "y"],
  pipe: ["diameter"],
};

/** `wide flange 12 x 8 x 5/8 x 3/8 along y` (depth, width, flange, web), `tube 8 x 8`, `pipe 8-5/8`; with `at 1, 2`. */
export const asColumn: CellForm = (text, place) => {
  const { main, at } = splitAt(text, place);
  const written = /^(wide flange|tube|pipe) (.+?)(?: along ([xy]))?$/i.exec(main);
  const kind = written?.[1]?.toLowerCase() ?? "";
  const names = ownValue(COLUMN_SIZES, kind);
  const sizes = parts(written?.[2] ?? "", "x");
  if (names === undefined || sizes.length !== names.length) {
    return refuse(
      text,
      "wide flange 12 x 8 x 5/8 x 3/8 along y (depth, width, flange, web), tube 8 x 8, or pipe 8-5/8",
    );
  }
  const along = written?.[3] === undefined ? {} : { depthAlong: scalar(written[3].toLowerCase(), place) };
  return ok(map({ kind: scalar(kind, place), ...named(names, sizes, place), ...along, ...at }, place));
};

/** `1/8: -9,8; 9,8`: a diameter and where. `key` is the name of the diameter. */
export function asHoles(key: "diameter" | "hole", needed: boolean): CellForm {
  return (text, place) => {
    const [before, after] = text.split(":").map((part) => part.trim());
    if (after === undefined && needed) return refuse(text, "a diameter and points, as 1/8: -9,8; 9,8");
    const diameter = after === undefined ? {} : { [key]: scalar((before ?? "").replace(/^dia\.? /i, ""), place) };
    return ok(map({ ...diameter, at: points(after ?? before ?? "", place) }, place));
  };
}

type Keys = Readonly<Record<string, SourceNode>>;

function ok(node: SourceNode): CellReading {
  return { ok: true, node };
}

function refuse(text: string, allowed: string): CellReading {
  return { ok: false, message: `"${text}" cannot be read; allowed is ${allowed}` };
}

/** A scalar that stands in a cell; an empty one is a text that says nothing, not an omission. */
export function scalar(text: string, place: SourcePlace): SourceNode {
  return { kind: "scalar", text: text.trim(), style: "quoted", place };
}

/** A group of keys that all stand in one cell. */
export function map(keys: Keys, place: SourcePlace): SourceMap {
  return { kind: "map", entries: Object.entries(keys).map(([key, value]) => ({ key, place, value })), place };
}

function list(texts: readonly string[], place: SourcePlace): SourceNode {
  return { kind: "list", items: texts.map((text) => scalar(text, place)), place };
}

function points(text: string, place: SourcePlace): SourceNode {
  const items = text.split(/[;\n]/).filter((part) => part.trim() !== "");
  return {
    kind: "list",
    items: items.map((part) => list(parts(part.replace(/^\s*[([]|[)\]]\s*$/g, ""), ","), place)),
    place,
  };
}

function parts(text: string, separator: ";" | "," | "x"): string[] {
  const split = separator === "x" ? text.split(/\s*[x×]\s*/i) : text.split(separator);
  return split.map((part) => part.trim()).filter((part, index) => part !== "" || index > 0 || split.length > 1);
}

function named(names: readonly string[], texts: readonly string[], place: SourcePlace): Keys {
  return Object.fromEntries(texts.map((text, index) => [names[index] ?? "", scalar(text, place)]));
}

/** `dia 30`, `30 dia`, `⌀30` -> 30 */
function diameterIn(text: string): string | null {
  const before = /^(?:dia(?:m(?:eter)?)?\.?|[⌀Øø]) ?(.+)$/i.exec(text);
  const after = /^(.+?) ?(?:dia(?:m(?:eter)?)?\.?|[⌀Øø])$/i.exec(text);
  return before?.[1] ?? after?.[1] ?? null;
}

function splitAt(text: string, place: SourcePlace): { readonly main: string; readonly at: Keys } {
  const written = /^(.*?) at [([]?([^()[\]]+?)[)\]]?$/is.exec(text.trim());
  if (written === null) return { main: text.trim(), at: {} };
  return { main: (written[1] ?? "").trim(), at: { at: list(parts(written[2] ?? "", ","), place) } };
}
