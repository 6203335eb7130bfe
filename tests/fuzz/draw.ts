/** Draws by pure-rand, the same on every machine; and changes of texts, bytes and trees by them. */
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import type { Draw } from "./model.js";

const WARM_UP = 32;

/** The draws of a seed; one seed a case, so that a case repeats alone. */
export function drawsOf(seed: number): Draw {
  const generator = xoroshiro128plus(seed | 0);
  for (let i = 0; i < WARM_UP; i++) generator.next();
  const below = (limit: number) => (limit <= 1 ? 0 : (generator.next() >>> 0) % limit);
  return {
    below,
    pick: <T>(items: readonly T[]): T => items[below(items.length)] as T,
    once: (times) => below(times) === 0,
  };
}

/** Names that every object of the language has. */
export const PROTOTYPE_WORDS = [
  ...["constructor", "__proto__", "prototype", "toString", "valueOf", "hasOwnProperty", "then"],
  ...["12 constructor", "__proto__ 12"],
];

/** Texts that are numbers, or nearly; units, and none; words that mean something to a spreadsheet, a file system or a terminal. */
const ODD = [
  ...["", " ", "0", "-0", "-1", "1e9", "1e-9", "1e400", "NaN", ".inf", "0x10", "12", "11/4", "1/0", "1 1/4", "1-1/4"],
  ...[
    "12'",
    "12'-6\"",
    "304.8 mm",
    "12 mm",
    "100 m",
    "101 m",
    "100000000000000000000",
    "0.0000000001",
    "1,5",
    "12 cubits",
  ],
  ...[
    "~",
    "null",
    "true",
    "no",
    "[]",
    "{}",
    "[[]]",
    "[1, 2, 3]",
    "&a *a",
    "!!js/function x",
    "=1+1",
    "@x",
    "+1",
    "x\ty",
  ],
  ...[
    "\u202e12",
    "\u001b[2J",
    "\u0000",
    "\u00bd",
    "\uff1d1",
    "a".repeat(300),
    "CON",
    "../x",
    "a/b",
    ".",
    "B1",
    "b1",
    "T1",
  ],
  ...["rectangle", "circle", "points", "straddle", "auto", "none", "F1554", "105", "M24", "nuts", "plate", "released"],
  ...PROTOTYPE_WORDS,
];

/** One odd text. */
export function oddText(random: Draw): string {
  return random.pick(ODD);
}

/** A text with up to four pieces cut out, doubled, swapped or replaced. */
export function changedText(text: string, random: Draw): string {
  let changed = text;
  for (let left = 1 + random.below(4); left > 0; left--) {
    const [at, length] = [random.below(changed.length + 1), random.below(24)];
    const piece = changed.slice(at, at + length);
    const put = random.pick([
      () => "",
      () => oddText(random),
      () => piece + piece,
      () => swapped(piece),
      () => digits(piece, random),
    ]);
    changed = changed.slice(0, at) + put() + changed.slice(at + length);
  }
  return random.once(40) ? changed.slice(0, random.below(changed.length + 1)) : changed;
}

function swapped(piece: string): string {
  return [...piece].reverse().join("");
}

function digits(piece: string, random: Draw): string {
  return piece.replace(/\d/g, () => String(random.below(10)));
}

/** Bytes with up to eight changed, and at times a piece left out or cut off. */
export function changedBytes(bytes: Uint8Array, random: Draw): Uint8Array {
  const changed = Uint8Array.from(bytes);
  for (let left = 1 + random.below(8); left > 0; left--)
    changed[random.below(changed.length)] = random.once(2) ? random.below(256) : 0x2b + random.below(20);
  if (random.once(12)) return changed.slice(0, random.below(changed.length + 1));
  if (!random.once(6)) return changed;
  const at = random.below(changed.length);
  const end = at + random.below(200);
  return Uint8Array.from([...changed.subarray(0, at), ...changed.subarray(end)]);
}

/** A document as plain values. */
export type Tree = string | number | boolean | null | readonly Tree[] | { readonly [key: string]: Tree };

/** A tree with some of its parts replaced, renamed, left out, doubled or taken from another place. */
export function changedTree(tree: Tree, random: Draw): Tree {
  let changed = tree;
  for (let left = 1 + random.below(3); left > 0; left--) {
    const places = placesIn(changed);
    if (places.length > 0) changed = changeAt(changed, random.pick(places), changeOf(random, changed));
  }
  return changed;
}

type Path = readonly (string | number)[];

/** Paths of every part below the root. */
export function placesIn(tree: Tree, at: Path = []): Path[] {
  if (typeof tree !== "object" || tree === null) return at.length === 0 ? [] : [at];
  const below = Array.isArray(tree)
    ? tree.flatMap((item, index) => placesIn(item, [...at, index]))
    : Object.entries(tree).flatMap(([key, item]) => placesIn(item, [...at, key]));
  return at.length === 0 ? below : [at, ...below];
}

/** A part found by its path; the path leads somewhere. */
function partAt(tree: Tree, path: Path): Tree {
  return path.reduce<Tree>((part, key) => (part as Record<string | number, Tree>)[key] ?? null, tree);
}

type Change = (part: Tree) => Tree | undefined;

/** A change of one part; undefined leaves it out. */
function changeOf(random: Draw, whole: Tree): Change {
  const other = random.pick(placesIn(whole));
  return random.pick<Change>([
    () => undefined,
    () => oddText(random),
    () => oddText(random),
    () => random.below(2000) / 8 - 20,
    (part) => (typeof part === "number" ? part * random.pick([12, 25.4, 1 / 12, -1, 1e6, 0]) : [part]),
    () => partAt(whole, other),
    (part) => (Array.isArray(part) ? [...part, ...part] : { [oddText(random)]: part }),
  ]);
}

/** The tree with one part changed. */
export function changeAt(tree: Tree, [key, ...rest]: Path, change: Change): Tree {
  if (key === undefined) return change(tree) ?? null;
  if (Array.isArray(tree)) {
    return tree.flatMap((item, index) => {
      if (index !== key) return [item];
      const made = rest.length === 0 ? change(item) : changeAt(item, rest, change);
      return made === undefined ? [] : [made];
    });
  }
  const entries = Object.entries(tree as { readonly [name: string]: Tree }).flatMap(([name, item]) => {
    if (name !== key) return [[name, item] as const];
    const made = rest.length === 0 ? change(item) : changeAt(item, rest, change);
    return made === undefined ? [] : [[name, made] as const];
  });
  return Object.fromEntries(entries);
}
