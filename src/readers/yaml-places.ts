/** Where a change of a YAML text could be made: splices that should make it, the closest to what is written first. */
import type { Document, Pair, ParsedNode, YAMLMap, YAMLSeq } from "yaml";
import { isMap, isScalar, isSeq, parseDocument } from "yaml";
import type { KeyEdit, KeyPath, Splice } from "./yaml-splice.js";
import { quotedText, scalarText, spliced } from "./yaml-splice.js";
import { OPTIONS } from "./yaml-tree.js";

/** None where the text has no place for it. Whether what comes out is right is the caller's to see. */
export function splicesAt(text: string, edit: KeyEdit): readonly Splice[] {
  const document = parseDocument(text, OPTIONS);
  const places = new Places(text, document);
  switch (edit.kind) {
    case "set":
      return edit.flow === true ? places.set(edit.path, [edit.text]) : places.set(edit.path, places.writings(edit));
    case "remove":
      return places.remove(edit.path);
    case "insert":
      return places.insert(edit.path, edit.index, edit.lines);
    case "move":
      return places.move(edit);
    case "duplicate":
      return places.duplicate(edit);
  }
}

type Node = ParsedNode | null | undefined;
type Map = YAMLMap.Parsed;
type List = YAMLSeq.Parsed;
type Entry = Pair<ParsedNode, ParsedNode | null>;

/** Where something stands: from its first character to after its last. */
interface Span {
  readonly from: number;
  readonly to: number;
}

class Places {
  private readonly eol: string;
  private readonly isJson: boolean;

  constructor(
    private readonly text: string,
    private readonly document: Document.Parsed,
  ) {
    this.eol = text.includes("\r\n") ? "\r\n" : "\n";
    this.isJson = /^\s*[{[]/.test(text) && isJson(text);
  }

  /** The text as it could be written: between quotes where what stood there was, else as plain as it may. */
  writings({ path, text }: Extract<KeyEdit, { kind: "set" }>): readonly string[] {
    const old = this.nodeAt(path);
    const style = isScalar(old) ? old.type : undefined;
    if (this.isJson || style === "QUOTE_DOUBLE") return [quotedText(text)];
    const single =
      style === "QUOTE_SINGLE" && /^[^\p{Cc}\p{Cf}]*$/u.test(text) ? [`'${text.replaceAll("'", "''")}'`] : [];
    return [...single, scalarText(text), quotedText(text)];
  }

  set(path: KeyPath, values: readonly string[]): readonly Splice[] {
    return values.flatMap((value) => this.setOne(path, value) ?? []);
  }

  private setOne(path: KeyPath, value: string): Splice | null {
    const root = this.document.contents as Node;
    if (isBlank(root)) return this.atEnd(path, value);
    let node: Node = root;
    for (const [depth, step] of path.entries()) {
      const rest = path.slice(depth + 1);
      if (isMap(node)) {
        const entry = entryOf(node as Map, step);
        if (entry === undefined) return this.addKey(node as Map, keysFor(step, this), this.inner(rest, value));
        if (isBlank(entry.value)) return this.fill(entry, this.inner(rest, value));
        node = entry.value;
      } else if (isSeq(node)) {
        const list = node as List;
        if (Number(step) === list.items.length)
          return this.insertFlowOrLines(list, list.items.length, this.inner(rest, value));
        const item: Node = list.items[Number(step)] as Node;
        if (isBlank(item)) return null;
        node = item;
      } else return null;
    }
    return node === null || node === undefined ? null : this.replace(node, value);
  }

  /** A text that says nothing yet: below its comments. */
  private atEnd([step, ...rest]: KeyPath, value: string): Splice | null {
    if (typeof step !== "string") return null;
    const { text, eol } = this;
    const gap = text === "" || text.endsWith("\n") ? "" : eol;
    return this.splice(
      { from: text.length, to: text.length },
      `${gap}${this.key(step)}: ${this.inner(rest, value)}${eol}`,
    );
  }

  /** What is under a key, in braces and brackets. */
  private inner(path: KeyPath, value: string): string {
    return path.reduceRight<string>((held, step) => {
      return typeof step === "number" ? `[${held}]` : `{ ${this.key(step)}: ${held} }`;
    }, value);
  }

  key(step: string | number): string {
    return this.isJson ? quotedText(String(step)) : scalarText(String(step));
  }

  private replace(node: ParsedNode, value: string): Splice {
    const [from, to] = node.range;
    if (isScalar(node) && (node.type === "BLOCK_LITERAL" || node.type === "BLOCK_FOLDED")) {
      const comment = /^[^\r\n#]*(#[^\r\n]*)/.exec(this.text.slice(from, to))?.[1];
      const tail = /\r?\n$/.exec(this.text.slice(from, to))?.[0] ?? "";
      return this.splice({ from, to }, `${value}${comment === undefined ? "" : ` ${comment}`}${tail}`);
    }
    return this.splice({ from, to: this.endOf(node) }, value);
  }

  /** A key whose value is not there, or says nothing. */
  private fill({ key, value, srcToken }: Entry, written: string): Splice {
    if (value !== null && value.range[1] > value.range[0])
      return this.splice({ from: value.range[0], to: value.range[1] }, written);
    const colon = srcToken?.sep?.find(({ type }) => type === "map-value-ind");
    const at = colon === undefined ? key.range[1] : colon.offset + 1;
    return this.splice({ from: at, to: at }, `${colon === undefined ? ":" : ""} ${written}`);
  }

  private addKey(map: Map, key: string, written: string): Splice {
    if (map.flow === true) {
      const last = map.items.at(-1);
      const at = last === undefined ? map.range[0] + 1 : this.endOfEntry(last);
      return this.splice({ from: at, to: at }, last === undefined ? ` ${key}: ${written} ` : `, ${key}: ${written}`);
    }
    return this.addLines(map, `${key}: ${written}`);
  }

  /** A key with all that is under it, in lines of its own: at the root before the bases, which are the longest. */
  private addLines(map: Map, lines: string): Splice {
    const isRoot = map === (this.document.contents as Node);
    const bases = isRoot ? map.items.findIndex(({ key }) => isScalar(key) && key.value === "bases") : -1;
    const before = map.items[bases < 0 ? map.items.length - 1 : bases - 1];
    const indent = " ".repeat(this.columnOf(map.items[0]?.key.range[0] ?? 0));
    const written = lines
      .split("\n")
      .map((line) => `${indent}${line}`)
      .join(this.eol);
    const at = before === undefined ? this.lineStart(map.range[0]) : this.nextLine(this.endOfEntry(before));
    const gap = at > 0 && this.text[at - 1] !== "\n" ? this.eol : "";
    return this.splice({ from: at, to: at }, `${gap}${written}${this.eol}`);
  }

  remove(path: KeyPath): readonly Splice[] {
    const holder = this.nodeAt(path.slice(0, -1));
    const step = path.at(-1) ?? "";
    if (isSeq(holder)) return this.removeItem(holder as List, Number(step), path.slice(0, -1));
    if (!isMap(holder)) return [];
    const map = holder as Map;
    const index = map.items.findIndex(({ key }) => isScalar(key) && String(key.value) === String(step));
    const [entry, next] = [map.items[index], map.items[index + 1]];
    if (entry === undefined) return [];
    const span = { from: entry.key.range[0], to: this.endOfEntry(entry) };
    if (map.flow === true) return [this.removeFlow(span)];
    if (map.items.length === 1) return [this.splice(span, "{}"), this.splice(span, `{}${this.eol}`)];
    if (this.isFirstOnLine(span.from))
      return [this.splice({ from: this.lineStart(span.from), to: this.nextLine(span.to) }, "")];
    return next === undefined ? [] : [this.splice({ from: span.from, to: next.key.range[0] }, "")];
  }

  private removeFlow({ from, to }: Span): Splice {
    const after = /^\s*,[ \t]*/.exec(this.text.slice(to))?.[0].length ?? 0;
    if (after > 0) return this.splice({ from, to: to + after }, "");
    const before = /,\s*$/.exec(this.text.slice(0, from))?.[0].length ?? 0;
    return this.splice({ from: from - before, to }, "");
  }

  private removeItem(list: List, index: number, path: KeyPath): readonly Splice[] {
    const item = list.items[index] as Node;
    if (item === undefined) return [];
    if (list.flow === true)
      return item === null ? [] : [this.removeFlow({ from: item.range[0], to: this.endOf(item) })];
    const chunks = this.chunks(list);
    const [chunk, next] = [chunks[index], chunks[index + 1]];
    if (chunk === undefined) return [];
    if (chunks.length === 1) return this.emptied(list, chunk, path);
    if (chunk.from !== this.lineStart(chunk.from))
      return next === undefined ? [] : [this.splice({ from: chunk.from, to: next.from }, "")];
    return [this.splice({ from: chunk.from, to: chunk.to }, "")];
  }

  /** A list without items has brackets behind its key. */
  private emptied(list: List, chunk: Span, path: KeyPath): readonly Splice[] {
    const holder = this.nodeAt(path.slice(0, -1));
    const entry = isMap(holder) ? entryOf(holder as Map, path.at(-1) ?? "") : undefined;
    const to = this.endOf(list);
    const colon = entry?.srcToken?.sep?.find(({ type }) => type === "map-value-ind")?.offset;
    const inPlace = this.splice({ from: chunk.from, to }, "[]");
    if (colon === undefined) return [inPlace];
    const between = this.text.slice(colon + 1, chunk.from).trimEnd();
    return [this.splice({ from: colon + 1, to }, ` []${between}`), inPlace];
  }

  insert(path: KeyPath, index: number, lines: string): readonly Splice[] {
    const holder = this.nodeAt(path.slice(0, -1));
    const list = path.length === 0 ? (this.document.contents as Node) : this.nodeAt(path);
    if (isSeq(list) && list.items.length > 0) {
      const made = this.insertFlowOrLines(list as List, Math.min(index, list.items.length), lines);
      return made === null ? [] : [made];
    }
    if (list !== undefined && !isBlank(list) && !isSeq(list)) return [];
    const inBrackets = flowText(lines, this.isJson);
    const flow = inBrackets === null ? [] : this.set(path, [`[${inBrackets}]`]);
    const key = path.at(-1);
    if (typeof key !== "string" || this.isJson) return flow;
    const block = `${this.key(key)}:\n${indented(lines, "  ")}`;
    if (isBlank(this.document.contents as Node) && path.length === 1) return [...this.wholeBlock(block), ...flow];
    if (!isMap(holder) || holder.flow === true) return flow;
    const entry = entryOf(holder as Map, key);
    if (entry === undefined) return [this.addLines(holder as Map, block), ...flow];
    return [...this.fillWithLines(entry, lines), ...flow];
  }

  private wholeBlock(block: string): readonly Splice[] {
    const { text, eol } = this;
    const gap = text === "" || text.endsWith("\n") ? "" : eol;
    return [this.splice({ from: text.length, to: text.length }, `${gap}${block.replaceAll("\n", eol)}${eol}`)];
  }

  /** The first items of a list that is empty, or not there, in lines below its key; a comment behind the key stays there. */
  private fillWithLines({ key, value, srcToken }: Entry, lines: string): readonly Splice[] {
    const colon = srcToken?.sep?.find(({ type }) => type === "map-value-ind")?.offset;
    if (colon === undefined) return [];
    const indent = " ".repeat(this.columnOf(key.range[0]) + 2);
    const valueEnd = value === null ? colon + 1 : Math.max(colon + 1, value.range[1]);
    const lineEnd = this.lineEnd(valueEnd);
    const written = indented(lines, indent).replaceAll("\n", this.eol);
    const rest = this.text.slice(valueEnd, lineEnd).trimEnd();
    return [this.splice({ from: colon + 1, to: lineEnd }, `${rest}${this.eol}${written}`)];
  }

  private insertFlowOrLines(list: List, index: number, lines: string): Splice | null {
    if (list.flow === true) return this.insertFlow(list, index, lines);
    const chunks = this.chunks(list);
    const [first, last] = [chunks[0], chunks[index - 1]];
    const at = index === 0 ? first?.from : last?.to;
    if (first === undefined || at === undefined || first.from !== this.lineStart(first.from)) return null;
    const dash = this.text.indexOf("-", first.from);
    const written = indented(lines, " ".repeat(dash - first.from)).replaceAll("\n", this.eol);
    const gap = at > 0 && this.text[at - 1] !== "\n" ? this.eol : "";
    return this.splice({ from: at, to: at }, `${gap}${written}${this.eol}`);
  }

  private insertFlow({ items }: List, index: number, lines: string): Splice | null {
    const item = flowText(lines, this.isJson);
    const [before, last] = [items[index], items.at(-1)];
    if (item === null || last === undefined) return null;
    if (before !== undefined) return this.splice({ from: before.range[0], to: before.range[0] }, `${item}, `);
    return this.splice({ from: this.endOf(last), to: this.endOf(last) }, `, ${item}`);
  }

  move({ path, from, to }: Extract<KeyEdit, { kind: "move" }>): readonly Splice[] {
    const list = this.nodeAt(path);
    if (!isSeq(list)) return [];
    const spans = list.flow === true ? this.flowSpans(list as List) : this.chunks(list as List);
    const [first, last] = [spans[Math.min(from, to)], spans[Math.max(from, to)]];
    if (first === undefined || last === undefined) return [];
    const meant = spans.slice(Math.min(from, to), Math.max(from, to) + 1);
    const texts = meant.map((span) => this.text.slice(span.from, span.to));
    const gaps = meant.slice(1).map((span, i) => this.text.slice(meant[i]?.to, span.from));
    const own = texts.splice(from < to ? 0 : texts.length - 1, 1);
    const moved = from < to ? [...texts, ...own] : [...own, ...texts];
    const isLines = list.flow !== true;
    const written = moved
      .map((each, i) => (isLines && !each.endsWith("\n") ? each + this.eol : each) + (gaps[i] ?? ""))
      .join("");
    return [this.splice({ from: first.from, to: last.to }, written)];
  }

  private flowSpans({ items }: List): readonly Span[] {
    return items.map((item) => ({ from: item.range[0], to: this.endOf(item) }));
  }

  duplicate({ path, sets }: Extract<KeyEdit, { kind: "duplicate" }>): readonly Splice[] {
    const [list, index] = [this.nodeAt(path.slice(0, -1)), Number(path.at(-1))];
    if (!isSeq(list)) return [];
    const isLines = list.flow !== true;
    const span = (isLines ? this.chunks(list as List) : this.flowSpans(list as List))[index];
    if (span === undefined || (isLines && span.from !== this.lineStart(span.from))) return [];
    const own = this.text.slice(span.from, span.to);
    const changed = isLines ? withSetsInLines(own, sets) : withSets(own, sets);
    if (changed === null) return [];
    const gap = isLines && !own.endsWith("\n") ? this.eol : isLines ? "" : ", ";
    return [this.splice({ from: span.to, to: span.to }, `${gap}${changed}`)];
  }

  /** The lines of each item of a list in lines: from its dash to the line before what belongs to no item, or to the next. */
  private chunks(list: List): readonly Span[] {
    const dashes = dashesOf(list);
    const limit = this.nextLine(this.endOf(list));
    return dashes.map((dash, index): Span => {
      const start = this.lineStart(dash);
      const from = this.text.slice(start, dash).trim() === "" ? start : dash;
      const item = list.items[index] as Node;
      const end = isBlank(item) ? dash + 1 : this.endOf(item as ParsedNode);
      const next = dashes[index + 1];
      return { from, to: this.withInnerRemarks(end, next === undefined ? limit : this.lineStart(next), dash - start) };
    });
  }

  /** Remarks below an item that are set in further than its dash belong to it. */
  private withInnerRemarks(end: number, limit: number, column: number): number {
    let to = this.nextLine(end);
    for (let at = to; at < limit; at = this.nextLine(at)) {
      const line = this.text.slice(at, this.nextLine(at));
      if (line.trim() === "") continue;
      if (!/^\s*#/.test(line) || line.search(/\S/) <= column) break;
      to = this.nextLine(at);
    }
    return to;
  }

  private nodeAt(path: KeyPath): Node {
    return path.reduce<Node>((node, step) => {
      if (isSeq(node)) return node.items[Number(step)] as Node;
      return isMap(node) ? entryOf(node as Map, step)?.value : undefined;
    }, this.document.contents as Node);
  }

  /** After the last sign of a value: the range of a list or group in lines runs on to what follows it. */
  private endOf(node: ParsedNode): number {
    if (isMap(node) && node.flow !== true) {
      const last = node.items.at(-1) as Entry | undefined;
      return last === undefined ? node.range[1] : this.endOfEntry(last);
    }
    if (isSeq(node) && node.flow !== true) {
      const [last, dash] = [node.items.at(-1) as Node, dashesOf(node as List).at(-1)];
      return isBlank(last) ? (dash ?? node.range[0]) + 1 : this.endOf(last as ParsedNode);
    }
    return node.range[1];
  }

  private endOfEntry({ key, value, srcToken }: Entry): number {
    if (value !== null && (!isBlank(value) || value.range[1] > value.range[0])) return this.endOf(value);
    const colon = srcToken?.sep?.find(({ type }) => type === "map-value-ind");
    return colon === undefined ? key.range[1] : colon.offset + 1;
  }

  private isFirstOnLine(at: number): boolean {
    return this.text.slice(this.lineStart(at), at).trim() === "";
  }

  private lineStart(at: number): number {
    return this.text.lastIndexOf("\n", at - 1) + 1;
  }

  /** Where the next line starts; of a place at the start of a line that line itself, where a text in lines ended before it. */
  private nextLine(at: number): number {
    if (at > 0 && this.text[at - 1] === "\n" && this.isAfterLines(at)) return at;
    const end = this.text.indexOf("\n", at);
    return end < 0 ? this.text.length : end + 1;
  }

  private readonly ends = new Set<number>();

  private isAfterLines(at: number): boolean {
    if (this.ends.size === 0) for (const end of blockEnds(this.document.contents as Node)) this.ends.add(end);
    return this.ends.has(at);
  }

  private lineEnd(at: number): number {
    const end = this.text.indexOf("\n", at);
    if (end < 0) return this.text.length;
    return this.text[end - 1] === "\r" ? end - 1 : end;
  }

  private columnOf(at: number): number {
    return at - this.lineStart(at);
  }

  private splice({ from, to }: Span, now: string): Splice {
    return { at: from, was: this.text.slice(from, to), now };
  }
}

function keysFor(step: string | number, places: Places): string {
  return places.key(step);
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function isBlank(node: Node): boolean {
  if (node === null || node === undefined) return true;
  return isScalar(node) && node.type === "PLAIN" && ["", "~", "null"].includes(String(node.value ?? ""));
}

function entryOf(map: Map, key: string | number): Entry | undefined {
  return map.items.find((entry) => isScalar(entry.key) && String(entry.key.value) === String(key)) as Entry | undefined;
}

/** Offsets of the dashes of a list in lines. */
function dashesOf({ srcToken }: List): readonly number[] {
  if (srcToken?.type !== "block-seq") return [];
  return srcToken.items.flatMap(({ start }) => start.find(({ type }) => type === "seq-item-ind")?.offset ?? []);
}

/** Where texts in lines of their own (`|`, `>`) end: at the start of the next line. */
function blockEnds(node: Node): readonly number[] {
  if (isMap(node)) return node.items.flatMap(({ value }) => blockEnds(value as Node));
  if (isSeq(node)) return node.items.flatMap((item) => blockEnds(item as Node));
  return isScalar(node) && /^BLOCK/.test(node.type ?? "") ? [(node as ParsedNode).range[1]] : [];
}

function indented(lines: string, indent: string): string {
  const rows = lines.replaceAll("\r\n", "\n").trimEnd().split("\n");
  return rows.map((line, i) => (i === 0 ? `${indent}- ${line}` : line === "" ? "" : `${indent}  ${line}`)).join("\n");
}

/** A value in braces and brackets on one line; null for what is none. */
function flowText(lines: string, asJson: boolean): string | null {
  if (!asJson && /^[{[].*[}\]]$/.test(lines.trim()) && !lines.trim().includes("\n")) return lines.trim();
  const document = parseDocument(lines, OPTIONS);
  return document.errors.length > 0 ? null : flowOf(document.contents as Node, asJson);
}

function flowOf(node: Node, asJson: boolean): string | null {
  if (isMap(node)) {
    const entries = node.items.map(({ key, value }) => {
      const [name, said] = [isScalar(key) ? String(key.value) : null, flowOf(value as Node, asJson)];
      return name === null || said === null ? null : `${asJson ? quotedText(name) : scalarText(name)}: ${said}`;
    });
    return entries.includes(null) ? null : `{ ${entries.join(", ")} }`;
  }
  if (isSeq(node)) {
    const items = node.items.map((item) => flowOf(item as Node, asJson));
    return items.includes(null) ? null : `[${items.join(", ")}]`;
  }
  if (isBlank(node)) return "null";
  if (!isScalar(node)) return null;
  return asJson ? quotedText(String(node.value)) : scalarText(String(node.value));
}

type Sets = Extract<KeyEdit, { kind: "duplicate" }>["sets"];

/** The text of one item with other values in it. */
function withSets(text: string, sets: Sets): string | null {
  return sets.reduce<string | null>((now, { path, text: value }) => {
    if (now === null) return null;
    const [first] = splicesAt(now, { kind: "set", path, text: value });
    return first === undefined ? null : spliced(now, first);
  }, text);
}

/** The lines of one item: its dash stands for a blank meanwhile. */
function withSetsInLines(lines: string, sets: Sets): string | null {
  const dash = lines.indexOf("-");
  const changed = withSets(`${lines.slice(0, dash)} ${lines.slice(dash + 1)}`, sets);
  return changed === null || changed.slice(0, dash + 1).trim() !== ""
    ? null
    : `${lines.slice(0, dash)}-${changed.slice(dash + 1)}`;
}
