/** What a person types into a figure -> changes of keys. Lengths are read by the parser of job files, and written without loss. */
import { scalarText } from "../../readers/yaml-edit.js";
import { nanometres, parseLength, type Unit } from "../../units/index.js";
import { exactText } from "./figure-keys.js";
import type { FigureKey, Move } from "./figure-model.js";
import type { Said } from "./figures.js";
import type { KeyEdit } from "./model.js";

/** The base that is typed on. */
export interface TypedOn extends Said {
  /** Of the base in the job file, as `bases[2]`. */
  readonly path: string;
  readonly unit: Unit;
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
    if (takes.kind === "whole") wholes.set(takes.root, { ...takes.texts, ...wholes.get(takes.root), [key]: text });
    else if (takes.kind === "text" && text === "" && clears) cleared.push(key);
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

function clearing(key: string, { path, written }: TypedOn): readonly KeyEdit[] {
  return written[key] === undefined ? [] : [{ kind: "remove", path: stepsOf(`${path}.${key}`) }];
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
  for (const [key, text] of Object.entries(texts)) {
    const root = givenRoot(key, on);
    roots.set(root, { ...roots.get(root), [key]: text });
  }
  return [...roots].flatMap(([root, its]): readonly KeyEdit[] =>
    root === null
      ? Object.entries(its).map(([key, text]) => ({ kind: "set", path: stepsOf(`${on.path}.${key}`), text }))
      : [wholeOf(root, its, on)],
  );
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

/** A group as one value: what is said of it by now, and these texts instead. */
function wholeOf(root: string, texts: Readonly<Record<string, string>>, { path, written, given }: TypedOn): KeyEdit {
  const own = under(root, written);
  const base =
    own.length > 0 ? own : under(root, Object.fromEntries(Object.entries(given).map(([key, { text }]) => [key, text])));
  const all = { ...Object.fromEntries(base), ...texts };
  const tree: Tree = {};
  for (const [key, text] of Object.entries(all)) plant(tree, stepsOf(key).slice(stepsOf(root).length), text);
  return { kind: "set", path: stepsOf(`${path}.${root}`), text: flow(tree), flow: true };
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
