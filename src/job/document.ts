/** Source values -> plain values for the schema, and the schema's issues -> findings with their place. */
import type { z } from "zod";
import type { Finding, Place } from "../diagnostics/finding.js";
import { allowedOrNearest, nearestWord } from "../diagnostics/nearest.js";
import type { SourceNode } from "../readers/source.js";
import { findEntry, isNothing } from "../readers/source.js";

/** Keys and indices from the root of a document. */
export type DocumentPath = readonly PropertyKey[];

/** Texts, lists and groups of keys. What is written as nothing (`key:`, `~`, `null`) is left out. */
export type PlainValue = string | PlainValue[] | { [key: string]: PlainValue };

/** A value with the findings that were made on the way to it. */
export interface WithFindings<T> {
  readonly value: T;
  readonly findings: readonly Finding[];
}

/** A document: its values, where its root stands in the whole, and the name under which a required key is asked for. */
export interface SourceDocument {
  readonly root: SourceNode;
  /** Path of the root inside the file, as `bases[2]`; "" for the whole file. */
  readonly path: string;
  /** Words for a key that is not there, where it is no key but a heading; null: the key itself. */
  readonly nameOf: (path: DocumentPath) => string | null;
  /** Letters of the column that a required key would stand in, where its table has one; null where it has none. */
  readonly columnOf?: (path: DocumentPath) => string | null;
}

/** The plain value of a node. */
export function toPlain(node: SourceNode): PlainValue {
  switch (node.kind) {
    case "scalar":
      return node.text;
    case "list":
      return node.items.map(toPlain);
    case "map": {
      const value: { [key: string]: PlainValue } = Object.create(null);
      for (const entry of node.entries) if (!isNothing(entry.value)) value[entry.key] = toPlain(entry.value);
      return value;
    }
  }
}

/** The place of a path: its value, else the nearest group or list that holds it. `ofKey` points at the key itself. */
export function placeOf(document: SourceDocument, path: DocumentPath, ofKey = false): Place {
  let node = document.root;
  let place = document.root.place;
  for (const step of path) {
    const next = stepInto(node, step);
    if (next === undefined) break;
    place = ofKey ? next.key : next.value.place;
    node = next.value;
  }
  const { file, line, column, label } = place;
  const missing = nodeAt(document.root, path) === undefined ? document.nameOf(path) : null;
  const named = label === undefined ? joinPath(document.path, path) : missing === null ? label : `${label} ${missing}`;
  const cell = missing === null ? place.cell : blankCell(place.cell, document.columnOf?.(path) ?? null);
  return { file, line, column, ...(named === "" ? {} : { path: named }), ...(cell === undefined ? {} : { cell }) };
}

/** The cell that a value is missing in: in the row of one that is there, under its own heading. */
function blankCell(beside: string | undefined, column: string | null): string | undefined {
  return column === null ? undefined : beside?.replace(/[A-Z]+(?=\d+$)/, column);
}

function stepInto(node: SourceNode, step: PropertyKey) {
  if (node.kind === "list") {
    const item = node.items[Number(step)];
    return item === undefined ? undefined : { key: item.place, value: item };
  }
  const entry = findEntry(node, String(step));
  return entry === undefined ? undefined : { key: entry.place, value: entry.value };
}

/** The node at a path, when it is there and says something. */
function nodeAt(root: SourceNode, path: DocumentPath): SourceNode | undefined {
  let node: SourceNode | undefined = root;
  for (const step of path) node = node === undefined ? undefined : stepInto(node, step)?.value;
  return node === undefined || isNothing(node) ? undefined : node;
}

/** `bases[2]` and `["rods", "diameter"]` -> `bases[2].rods.diameter`. */
export function joinPath(start: string, path: DocumentPath): string {
  return path.reduce<string>((joined, step) => {
    if (typeof step === "number") return `${joined}[${step}]`;
    return joined === "" ? String(step) : `${joined}.${String(step)}`;
  }, start);
}

/** A finding at a path of a document. */
export function faultAt(
  document: SourceDocument,
  path: DocumentPath,
  code: string,
  message: string,
  hint?: string,
): Finding {
  const at = placeOf(document, path);
  return { code, severity: "error", at, message, ...(hint === undefined ? {} : { hint }) };
}

type Issue = z.core.$ZodIssue;

/** What is allowed, where a schema does not say it in words of its own. */
export function allowedWords(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return KINDS.get(issue.expected) ?? "a value of another kind";
    case "invalid_value":
      return issue.values.map(String).join(" or ");
    case "too_small":
      return `at least ${String(issue.minimum)}`;
    case "too_big":
      return `at most ${String(issue.maximum)}`;
    default:
      return "a value of another form";
  }
}

const KINDS: ReadonlyMap<string, string> = new Map([
  ["array", "a list"],
  ["tuple", "a list"],
  ["object", "a group of keys"],
  ["record", "a group of keys"],
  ["string", "a text"],
  ["number", "a number"],
]);

/** The findings of the schema's issues; every issue names what is wrong and what is allowed. */
export function issueFindings(issues: readonly Issue[], document: SourceDocument): Finding[] {
  return issues.flatMap((issue) => branchIssues(issue)).flatMap((issue) => oneIssue(issue, document));
}

/** A choice that failed: the branch that its input was meant for, so that its own issues are told. */
function branchIssues(issue: Issue): readonly Issue[] {
  if (issue.code !== "invalid_union") return [issue];
  const meant = issue.errors.find((branch) => branch.length > 0 && branch.every((inner) => !missesType(inner)));
  if (meant === undefined) return [issue];
  return meant.flatMap((inner) => branchIssues({ ...inner, path: [...issue.path, ...inner.path] }));
}

/** True when the branch was not meant for this kind of input at all. */
function missesType(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  return (
    issue.code === "invalid_type" ||
    issue.code === "invalid_value" ||
    (issue.code === "invalid_union" && issue.errors.length > 0)
  );
}

function oneIssue(issue: Issue, document: SourceDocument): Finding[] {
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownKey(key, issue, document));
  if (issue.code === "custom") return [faultAt(document, issue.path, "bad-value", issue.message)];
  const node = nodeAt(document.root, issue.path);
  if (node === undefined)
    return [faultAt(document, issue.path, "required", `is required; allowed is ${issue.message}`)];
  return [wrongValue(node, issue, document)];
}

function unknownKey(key: string, issue: Issue, document: SourceDocument): Finding {
  const known = issue.message.split(", ");
  const near = nearestWord(key, known);
  const at = placeOf(document, [...issue.path, key], true);
  const message = `unknown key; ${allowedOrNearest(key, known)}`;
  return {
    code: "unknown-key",
    severity: "error",
    at,
    message,
    ...(near === undefined ? {} : { hint: `did you mean ${near}?` }),
  };
}

function wrongValue(node: SourceNode, issue: Issue, document: SourceDocument): Finding {
  const message = `${nodeInWords(node)} is not allowed; ${allowedIn(node, issue.message)}`;
  if (node.kind !== "scalar") return faultAt(document, issue.path, "bad-value", message);
  const words = issue.message.replace(/^(one of|kind:) /, "").split(/, | or /);
  const near = nearestWord(node.text, words);
  return faultAt(document, issue.path, "bad-value", message, near === undefined ? undefined : `did you mean ${near}?`);
}

/** Of a group of many keys, or one of many words, the nearest. */
function allowedIn(node: SourceNode, allowed: string): string {
  const listed = /^(one of|a group of keys:) (.+)$/.exec(allowed);
  const words = listed?.[2]?.split(", ") ?? [];
  if (words.length <= 12) return `allowed is ${allowed}`;
  if (listed?.[1] !== "one of") return "allowed is a group of keys; the JSON Schema lists them";
  return allowedOrNearest(node.kind === "scalar" ? node.text : "", words);
}

function nodeInWords(node: SourceNode): string {
  if (node.kind === "list") return `a list of ${node.items.length}`;
  if (node.kind === "map") return "a group of keys";
  return node.text.length > 60 ? `"${node.text.slice(0, 60)}..."` : `"${node.text}"`;
}
