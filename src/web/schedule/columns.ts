/** The columns of the schedule: what each shows of a base or of a group of its rods, and the edits that a typed text makes. */
import { isMap, parseDocument } from "yaml";
import type { KeyEdit } from "../../readers/yaml-edit.js";
import { scalarText } from "../../readers/yaml-edit.js";
import type { CellSays, Values } from "./pattern-text.js";
import { patternText, readPattern, readSize, sizeText } from "./pattern-text.js";
import { flowText, isWritten, plainText, type Texts, textsUnder } from "./texts.js";

/** What a typed text does: edits of the base or group, their paths beginning there, or why it is not taken. */
export type Typed =
  | { readonly ok: true; readonly edits: readonly KeyEdit[] }
  | { readonly ok: false; readonly why: string };

/** A column. `told`: worked out, not typed. */
export interface Column {
  readonly id: string;
  readonly name: string;
  /** Width in rem. */
  readonly wide: number;
  readonly figure: boolean;
  /** Of rods: a base of several groups has it group by group. */
  readonly ofRods: boolean;
  readonly isUsual: boolean;
  /** Key paths that it shows, the group's own where they are named otherwise there. */
  readonly keys: readonly string[];
  readonly groupKeys: readonly string[];
  readonly content: Content;
}

/** How a column reads and writes its keys. */
export type Content =
  | { readonly kind: "told"; readonly what: "state" | "worst" }
  | { readonly kind: "value" }
  | {
      readonly kind: "parts";
      read(texts: Texts): string;
      say(cell: string): CellSays;
      readonly parts: readonly string[];
    };

type Options = Partial<Pick<Column, "figure" | "ofRods" | "isUsual" | "groupKeys" | "content">>;

function column(id: string, name: string, wide: number, options: Options = {}): Column {
  const usual = { figure: false, ofRods: false, isUsual: false, content: { kind: "value" } as const };
  return { id, name, wide, keys: [id], groupKeys: [id], ...usual, ...options };
}

const usual: Options = { isUsual: true };
const figure: Options = { figure: true };
const rods: Options = { ofRods: true };

const PATTERN: Content = { kind: "parts", parts: [], read: patternText, say: readPattern };
const PLATE: Content = {
  kind: "parts",
  parts: ["x", "y", "diameter", "thickness"],
  read: sizeText,
  say: (cell) => readSize(cell, true),
};
const PIER: Content = {
  kind: "parts",
  parts: ["x", "y", "diameter"],
  read: ({ thickness: _, ...texts }) => sizeText(texts),
  say: (cell) => readSize(cell, false),
};

/** Every column, in the order in which they stand. */
export const COLUMNS: readonly Column[] = [
  column("mark", "Mark", 6, usual),
  column("state", "State", 7, { ...usual, content: { kind: "told", what: "state" } }),
  column("worst", "Worst margin", 12, { ...usual, content: { kind: "told", what: "worst" } }),
  column("quantity", "Qty", 3.5, { ...usual, ...figure }),
  column("rods.diameter", "Rod dia", 5, { ...usual, ...figure, ...rods }),
  column("rods.grade", "Grade", 5, { ...usual, ...rods }),
  column("rods.finish", "Finish", 6.5, { ...usual, ...rods }),
  column("rods.projection", "Projection", 6, { ...usual, ...figure, ...rods }),
  column("rods.embedment", "Embedment", 6.5, { ...usual, ...figure, ...rods }),
  column("pattern", "Pattern", 15, { ...usual, ...rods, content: PATTERN }),
  column("basePlate", "Base plate", 10, { ...usual, content: PLATE }),
  column("concrete", "Concrete", 8, { ...usual, content: PIER }),
  column("template.mark", "Template", 6, usual),
  column("template.thickness", "Template thk", 6.5, { ...usual, ...figure }),
  column("template.material", "Material", 6, usual),
  column("kind", "Kind", 6),
  column("member", "Member", 6),
  column("delivery", "Delivery", 6),
  column("rods.count", "Rod count", 5.5, { ...figure, ...rods }),
  column("rods.thread", "Thread", 5, rods),
  column("rods.nut", "Nut", 6, rods),
  column("rods.length", "Rod length", 6, { ...figure, ...rods }),
  column("rods.threads", "Threads", 5.5, { ...figure, ...rods }),
  column("rods.bottom", "Bottom", 11, rods),
  column("rods.bottomThreads", "Bottom threads", 7.5, { ...figure, ...rods }),
  column("rods.torqued", "Torqued", 5, rods),
  column("pattern.kind", "Pattern kind", 7, rods),
  column("pattern.x", "X", 6, { ...figure, ...rods }),
  column("pattern.y", "Y", 6, { ...figure, ...rods }),
  column("pattern.nx", "nx", 3.5, { ...figure, ...rods }),
  column("pattern.ny", "ny", 3.5, { ...figure, ...rods }),
  column("pattern.diameter", "Bolt circle", 6, { ...figure, ...rods }),
  column("pattern.count", "Rods on circle", 7.5, { ...figure, ...rods }),
  column("pattern.start", "Start", 6, rods),
  column("basePlate.x", "Plate X", 5.5, figure),
  column("basePlate.y", "Plate Y", 5.5, figure),
  column("basePlate.diameter", "Plate dia", 5.5, figure),
  column("basePlate.thickness", "Plate thk", 5.5, figure),
  column("basePlate.hole", "Plate hole", 6, { ...figure, ...rods, groupKeys: ["baseHole"] }),
  column("basePlate.washer", "Washer", 11, { ...rods, groupKeys: ["washer"] }),
  column("column", "Column", 11),
  column("concrete.x", "Pier X", 5.5, figure),
  column("concrete.y", "Pier Y", 5.5, figure),
  column("concrete.diameter", "Pier dia", 5.5, figure),
  column("concrete.depth", "Pier depth", 6, figure),
  column("concrete.exposure", "Exposure", 8),
  column("grout", "Grout", 5, figure),
  column("levelling", "Levelling", 6),
  column("template.quantity", "Template qty", 6.5, figure),
  column("template.grade", "Template grade", 7.5),
  column("template.hole", "Template hole", 7, { ...figure, ...rods, groupKeys: ["hole"] }),
  column("template.height", "Template height", 8, figure),
  column("template.support", "Support", 6),
  column("template.use", "Use", 8),
  column("template.outline", "Outline", 11),
  column("template.opening", "Opening", 9),
  column("template.key", "Key", 5),
  column("note", "Note", 16),
];

/** The column of that id. */
export function columnOf(id: string): Column | undefined {
  return COLUMNS.find((each) => each.id === id);
}

/** What a cell reads from: the texts of a base, or of a group of its rods, and who gave those that are not its own. */
export interface Subject {
  readonly texts: Texts;
  readonly own: Texts;
  readonly by: Readonly<Record<string, string>>;
  readonly isGroup: boolean;
  /** Rods stand in groups of their own under this base. */
  readonly hasGroups: boolean;
}

/** A cell as it stands: `text` is what is typed to get it again, `shown` what is read; `by`: who gives it, "" for the base itself. */
export interface Cell {
  readonly text: string;
  readonly shown: string;
  readonly by: string;
  readonly isTyped: boolean;
}

const NOTHING: Cell = { text: "", shown: "", by: "", isTyped: false };

/** The key of a column in a base or in a group. */
export function keyOf({ keys, groupKeys }: Column, isGroup: boolean): string {
  return (isGroup ? groupKeys[0] : keys[0]) ?? "";
}

/** The cell of a column. Columns that are told are filled by who knows them. */
export function cellOf(at: Column, subject: Subject): Cell {
  if (at.content.kind === "told" || (subject.isGroup && !at.ofRods)) return NOTHING;
  if (subject.hasGroups && at.ofRods) return { ...NOTHING, shown: at.id === "pattern" ? "in groups" : "" };
  const key = keyOf(at, subject.isGroup);
  const shown =
    at.content.kind === "parts"
      ? at.content.read(partsOf(at.content.parts, subject.texts, key))
      : plainText(subject.texts, key);
  const text = at.content.kind === "parts" ? shown : flowText(subject.texts, key);
  return { text, shown, by: givenBy(subject, key), isTyped: true };
}

function partsOf(parts: readonly string[], texts: Texts, key: string): Texts {
  const under = textsUnder(texts, key);
  return parts.length === 0 ? under : Object.fromEntries(Object.entries(under).filter(([own]) => parts.includes(own)));
}

function givenBy({ own, by }: Subject, key: string): string {
  if (isWritten(own, key)) return "";
  const path = Object.keys(by).find((each) => each === key || each.startsWith(`${key}.`) || each.startsWith(`${key}[`));
  return path === undefined ? "" : (by[path] ?? "");
}

/** What a text that is typed into a cell does; no edits where it says what stands there. */
export function typed(at: Column, subject: Subject, text: string): Typed {
  const cell = cellOf(at, subject);
  if (!cell.isTyped) return { ok: false, why: whyNot(at, subject) };
  const plain = text.trim();
  if (plain === cell.text) return { ok: true, edits: [] };
  const key = keyOf(at, subject.isGroup);
  if (plain === "") return { ok: true, edits: cleared(at, subject, key) };
  if (at.content.kind === "parts") return saidEdits(at.content, subject, key, plain);
  return valueEdits(subject, key, plain);
}

function whyNot({ content, name }: Column, { isGroup }: Subject): string {
  if (content.kind === "told") return `${name} is worked out and cannot be typed`;
  return isGroup
    ? `${name} is of the base, not of a group of its rods`
    : `${name} stands in the groups of rods under the base`;
}

/** A path as steps: `pattern.x` -> pattern, x. */
export function stepsOf(key: string): readonly (string | number)[] {
  return (key.match(/[^.[\]]+/g) ?? []).map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

function cleared({ content }: Column, { own }: Subject, key: string): readonly KeyEdit[] {
  const parts = content.kind === "parts" ? content.parts : [];
  const keys = parts.length === 0 ? [key] : parts.map((part) => `${key}.${part}`);
  return keys.filter((each) => isWritten(own, each)).map((each) => ({ kind: "remove", path: stepsOf(each) }));
}

/** A list or group in braces is taken as such where it is whole. */
function valueEdits({ own }: Subject, key: string, text: string): Typed {
  const path = stepsOf(key);
  const isFlow = /^(\{.*\}|\[.*\])$/s.test(text);
  if (isFlow && !isWholeFlow(text))
    return { ok: false, why: `"${text}" is not whole: allowed is a text, or a group as { kind: plate, size: 4 }` };
  // a group in lines of its own is put on one line first: what stands around it stays
  const isGroup = own[key] === undefined && isWritten(own, key);
  const now: KeyEdit = { kind: "set", path, text: isFlow ? text : isGroup ? scalarText(text) : text };
  return { ok: true, edits: [isFlow || isGroup ? { ...now, flow: true } : now] };
}

/** Reads back as one group or list, and as nothing beside it. */
export function isWholeFlow(text: string): boolean {
  if (/[\n#&*]/.test(text)) return false;
  const document = parseDocument(`x: ${text}`, { schema: "failsafe", prettyErrors: false, logLevel: "error" });
  const root = document.contents;
  return document.errors.length === 0 && document.warnings.length === 0 && isMap(root) && root.items.length === 1;
}

function saidEdits(
  content: Extract<Content, { kind: "parts" }>,
  { own, texts }: Subject,
  key: string,
  text: string,
): Typed {
  const said = content.say(text);
  if (!said.ok) return said;
  const { values } = said;
  if (content.parts.length > 0) return { ok: true, edits: partEdits(content.parts, own, texts, key, values) };
  if (!isWritten(own, key) || values.kind !== own[`${key}.kind`]) {
    return { ok: true, edits: [{ kind: "set", path: stepsOf(key), text: flowOf(values), flow: true }] };
  }
  const names = new Set([
    ...Object.keys(values),
    ...Object.keys(textsUnder(own, key)).map((path) => path.replace(/[.[].*$/, "")),
  ]);
  return { ok: true, edits: partEdits([...names], own, texts, key, values) };
}

function partEdits(
  parts: readonly string[],
  own: Texts,
  texts: Texts,
  key: string,
  values: Values,
): readonly KeyEdit[] {
  const all = parts.map((part) => ({ path: `${key}.${part}`, value: values[part] }));
  const removed = all.filter(({ path, value }) => value === undefined && isWritten(own, path));
  const set = all.flatMap(({ path, value }): KeyEdit[] => {
    if (value === undefined) return [];
    if (typeof value === "string")
      return value === texts[path] ? [] : [{ kind: "set", path: stepsOf(path), text: value }];
    const flow = flowValue(value);
    return flow === flowText(texts, path) ? [] : [{ kind: "set", path: stepsOf(path), text: flow, flow: true }];
  });
  return [...removed.map(({ path }): KeyEdit => ({ kind: "remove", path: stepsOf(path) })), ...set];
}

function flowValue(value: Values[string]): string {
  if (typeof value === "string") return scalarText(value);
  return `[${value.map((item) => flowValue(item)).join(", ")}]`;
}

function flowOf(values: Values): string {
  return `{ ${Object.entries(values)
    .map(([key, value]) => `${key}: ${flowValue(value)}`)
    .join(", ")} }`;
}
