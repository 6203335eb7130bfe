/** What a person types into a figure -> changes of keys. Lengths are read by the parser of job files, and written without loss. */
import { scalarText } from "../../readers/yaml-edit.js";
import { nanometres, parseLength, type Unit } from "../../units/index.js";
import { exactText } from "./figure-keys.js";
import type { FigureKey, Move } from "./figure-model.js";
import type { Said } from "./figures.js";
import type { KeyEdit, LiveBase, LiveJob, LiveRepeat } from "./model.js";
import { namedAround, repeatAround, repeatWords } from "./repeats.js";

/** The base that is typed on. */
export interface TypedOn extends Said {
  /** Of the base in the job file, as `bases[2]`. */
  readonly path: string;
  readonly unit: Unit;
  readonly repeats: readonly LiveRepeat[];
}

/** A base of the job, to be typed on. */
export function typedOn(
  { path, written, given }: LiveBase,
  { unit, repeats }: Pick<LiveJob, "unit" | "repeats">,
): TypedOn {
  return { path, written, given, unit, repeats };
}

/** Who gives the value of a key that is not the base's own alone, and whom typing changes; "". */
export function giverWords(key: string, { path, written, given, repeats }: TypedOn): string {
  const by = written[key] === undefined ? given[key]?.by : undefined;
  return by === undefined
    ? repeatWords(`${path}.${key}`, repeats)
    : `Given by ${by}: what is typed is this base's own.`;
}

/** The edits that typing makes; or why it makes none, in the words of the job file's own message. */
export type TypedEdits =
  | { readonly ok: true; readonly edits: readonly KeyEdit[] }
  | { readonly ok: false; readonly message: string };

/** The text that a field opens with: as it is written or given, else the value as drawn. */
export function fieldText({ key, takes, shown }: FigureKey, { written, given }: Said): string {
  return takes.kind === "moves" ? shown : (written[key] ?? given[key]?.text ?? shown);
}

/** What was typed into the fields of one figure; only those whose text is another one than before. */
export type Typed = readonly { readonly figure: FigureKey; readonly text: string }[];

/** The edits of a figure, as one step. */
export function editsOf(typed: Typed, on: TypedOn): TypedEdits {
  const cleared: string[] = [];
  const texts: Record<string, string> = {};
  const wholes = new Map<string, Record<string, string>>();
  for (const { figure, text: raw } of typed) {
    const { key, takes, clears } = figure;
    const text = raw.trim();
    if (takes.kind === "whole") {
      const root = wholeRoot(takes.root, on) ?? takes.root;
      wholes.set(root, { ...takes.texts, ...wholes.get(root), [key]: text });
    } else if (takes.kind === "text" && text === "" && clears) cleared.push(key);
    else if (takes.kind === "text") texts[key] = text;
    else {
      const moved = moving(takes.moves, text, on);
      if (!moved.ok) return moved;
      Object.assign(texts, moved.texts);
    }
  }
  const groups = [...wholes].map(([root, its]) => wholeOf(root, its, on));
  return { ok: true, edits: [...writing(texts, on), ...groups, ...cleared.flatMap((key) => clearing(key, on))] };
}

/** The edits of one text of the job, at its key path; an empty one takes the key out. */
export function textEdits(
  path: string,
  text: string,
  live: Pick<LiveJob, "bases" | "unit" | "repeats" | "said">,
): readonly KeyEdit[] {
  const base = live.bases.find((each) => path.startsWith(`${each.path}.`));
  if (base === undefined) return headEdits(path, text, live.said);
  const figure = { key: path.slice(base.path.length + 1), takes: { kind: "text" }, clears: true } as const;
  const made = editsOf([{ figure: { ...figure, label: "", shown: "", note: "" }, text }], typedOn(base, live));
  return made.ok ? made.edits : [];
}

/** One edition of `rules: us` makes it `rules: { set: us, ... }`. */
function headEdits(path: string, text: string, { rules }: LiveJob["said"]): readonly KeyEdit[] {
  const [, edition] = /^rules\.(\w+)$/.exec(path) ?? [];
  if (text === "") return [{ kind: "remove", path: stepsOf(path) }];
  if (edition === undefined || rules === undefined) return [{ kind: "set", path: stepsOf(path), text }];
  return [{ kind: "set", path: ["rules"], text: flow({ set: rules, [edition]: text }), flow: true }];
}

/** Takes the key out, and where something else gives it too, says that this base has none. */
function clearing(key: string, on: TypedOn): readonly KeyEdit[] {
  const isOwn = on.written[key] !== undefined;
  if (!isOwn && on.given[key] === undefined) return [];
  const root = wholeRoot(key, on);
  if (root !== null) return [wholeOf(root, { [key]: null }, on)];
  return [
    isOwn ? { kind: "remove", ...placeOf(key, on) } : { kind: "set", ...placeOf(key, on), text: "~", flow: true },
  ];
}

/** Where a key stands in the job file; `everywhere`: in a value that is repeated. */
function placeOf(key: string, { path, repeats }: TypedOn) {
  const own = `${path}.${key}`;
  return { path: stepsOf(own), ...(namedAround(own, repeats) === null ? {} : { everywhere: true }) };
}

type Moved =
  | { readonly ok: true; readonly texts: Readonly<Record<string, string>> }
  | { readonly ok: false; readonly message: string };

function moving(moves: readonly Move[], text: string, on: TypedOn): Moved {
  const reading = parseLength(text, on.unit);
  if (!reading.ok) return reading;
  const typed = reading.value;
  const isSpan = moves.some(({ plus, over, times }) => plus !== 0 || over !== 1 || times !== 1);
  if (isSpan && typed <= 0) return { ok: false, message: `"${text}" is not above zero` };
  const textOf = ({ plus, times, over }: Move) => exactText(nanometres(plus + (typed * times) / over), on.unit);
  return { ok: true, texts: Object.fromEntries(moves.map((move) => [move.key, textOf(move)])) };
}

/** Groups of keys that a base joins with what is given to it, key by key; every other group is written whole. */
const JOINED = new Set(["rods", "basePlate", "concrete", "template"]);

/** Texts at their keys; a group that so far is given to the base, and is not joined key by key, is written whole. */
function writing(texts: Readonly<Record<string, string>>, on: TypedOn): readonly KeyEdit[] {
  const roots = new Map<string | null, Record<string, string>>();
  for (const [key, text] of Object.entries({ ...givenSides(Object.keys(texts), on), ...texts })) {
    const root = wholeRoot(key, on);
    roots.set(root, { ...roots.get(root), [key]: text });
  }
  return [...roots].flatMap(([root, its]): readonly KeyEdit[] =>
    root === null
      ? Object.entries(its).map(([key, text]) => ({ kind: "set", ...placeOf(key, on), text }))
      : [wholeOf(root, its, on)],
  );
}

/** A base that says one side of a plate says both: the other, where it is given, is written with it. */
function givenSides(keys: readonly string[], { given }: TypedOn): Readonly<Record<string, string>> {
  const sides = keys.flatMap((key) => {
    const [, group, side] = /^(basePlate|concrete)\.([xy])$/.exec(key) ?? [];
    const other = `${group}.${side === "x" ? "y" : "x"}`;
    const text = given[key] === undefined ? undefined : given[other]?.text;
    return text === undefined ? [] : [[other, text] as const];
  });
  return Object.fromEntries(sides);
}

/** The group around the key that is written whole: it stands there by its name alone, or is given to the base. */
function wholeRoot(key: string, on: TypedOn): string | null {
  const own = `${on.path}.${key}`;
  const repeated = repeatAround(own, on.repeats)?.at;
  return repeated !== undefined && repeated.length < own.length && repeated.length > on.path.length
    ? repeated.slice(on.path.length + 1)
    : (wordAround(key, on.written) ?? givenRoot(key, on));
}

/** The key around this one that is written as a word, and becomes a group of keys. */
function wordAround(key: string, written: Said["written"]): string | null {
  const steps = stepsOf(key);
  const around = steps.slice(1).map((_, i) => pathOf(steps.slice(0, i + 1)));
  return around.find((each) => written[each] !== undefined) ?? null;
}

/** The group that holds the key, where defaults or a kind give all of it. */
function givenRoot(key: string, { written, given }: Said): string | null {
  const steps = stepsOf(key);
  for (let length = 1; length < steps.length; length += 1) {
    const root = pathOf(steps.slice(0, length));
    if (JOINED.has(root)) continue;
    if (Object.keys(written).some((each) => isUnder(each, root))) return null;
    if (Object.keys(given).some((each) => isUnder(each, root))) return root;
  }
  return null;
}

function isUnder(key: string, root: string): boolean {
  return key === root || key.startsWith(`${root}.`) || key.startsWith(`${root}[`);
}

/** A group as one value: what is said of it by now, and these texts instead; null: taken out. */
function wholeOf(root: string, texts: Readonly<Record<string, string | null>>, on: TypedOn): KeyEdit {
  const { written, given } = on;
  const own = under(root, written);
  const base =
    own.length > 0 ? own : under(root, Object.fromEntries(Object.entries(given).map(([key, { text }]) => [key, text])));
  const all = { ...Object.fromEntries(base), ...texts };
  const tree: Tree = {};
  for (const [key, text] of Object.entries(all))
    if (text !== null) plant(tree, stepsOf(key).slice(stepsOf(root).length), text);
  return { kind: "set", ...placeOf(root, on), text: flow(tree), flow: true };
}

/** What is said below the root, not the root's own word. */
function under(root: string, said: Readonly<Record<string, string>>): readonly (readonly [string, string])[] {
  return Object.entries(said).filter(([key]) => key !== root && isUnder(key, root));
}

interface Tree {
  [step: string]: Tree | string;
}

function plant(tree: Tree, [step, ...rest]: readonly (string | number)[], text: string): void {
  if (step === undefined) return;
  if (rest.length === 0) {
    tree[step] = text;
    return;
  }
  const held = tree[step];
  const inner: Tree = typeof held === "object" ? held : {};
  tree[step] = inner;
  plant(inner, rest, text);
}

/** As a flow collection: a list where its keys count from 0. */
function flow(tree: Tree | string): string {
  if (typeof tree === "string") return scalarText(tree);
  const entries = Object.entries(tree);
  const isList = entries.every(([step], i) => step === String(i));
  if (isList) return `[${entries.map(([, value]) => flow(value)).join(", ")}]`;
  return `{ ${entries.map(([step, value]) => `${step}: ${flow(value)}`).join(", ")} }`;
}

/** `bases[3].pattern.x[0]` -> `bases`, 3, `pattern`, `x`, 0. */
export function stepsOf(path: string): readonly (string | number)[] {
  return path
    .split(/[.[\]]+/)
    .filter((step) => step !== "")
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

function pathOf(steps: readonly (string | number)[]): string {
  return steps.reduce<string>(
    (path, step) => (typeof step === "number" ? `${path}[${step}]` : path === "" ? step : `${path}.${step}`),
    "",
  );
}
