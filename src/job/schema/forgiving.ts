/**
 * Parsing that goes on after a fault: what the schema refuses is told, taken out, and the rest is parsed again, so that the
 * faults that only a complete value shows are told in the same run.
 */
import type { z } from "zod";
import type { Finding } from "../../diagnostics/finding.js";
import { ownValue } from "../../diagnostics/own-value.js";
import type { DocumentPath, PlainValue, SourceDocument } from "../document.js";
import { allowedWords, issueFindings, toPlain } from "../document.js";

/** What is left of a document after its faults, and the faults. */
export interface ForgivingParse<T> {
  /** The value, whole or pruned; null when nothing usable is left. */
  readonly data: T | null;
  /** True when parts were taken out: what is then found missing was perhaps only taken out. */
  readonly pruned: boolean;
  readonly findings: readonly Finding[];
}

const ROUNDS = 8;

/** Values that stand in for required keys, by path, while the rest is judged. */
export type StandIns = Readonly<Record<string, PlainValue>>;

/** Parses a document; every issue becomes a finding. */
export function parseForgiving<T>(
  schema: z.ZodType<T>,
  document: SourceDocument,
  standIns: StandIns,
): ForgivingParse<T> {
  const plain = toPlain(document.root);
  const first = parseWords(schema, plain);
  if (first.success) return { data: first.data, pruned: false, findings: [] };
  const findings = issueFindings(first.error.issues, document);
  return { data: parsePruned(schema, plain, first.error.issues, standIns), pruned: true, findings };
}

/** Words in capitals are the same words: they are made small where that is all that was wrong with them. */
function parseWords<T>(schema: z.ZodType<T>, plain: PlainValue): z.ZodSafeParseResult<T> {
  const parsed = schema.safeParse(plain, { error: allowedWords });
  if (parsed.success) return parsed;
  const isChanged = parsed.error.issues.flatMap(wrongWords).map((wrong) => makeSmall(plain, wrong));
  return isChanged.includes(true) ? schema.safeParse(plain, { error: allowedWords }) : parsed;
}

interface WrongWord {
  readonly path: DocumentPath;
  /** The words that are allowed; null: a kind among several, which the schema does not tell. */
  readonly words: readonly unknown[] | null;
}

function wrongWords(issue: z.core.$ZodIssue): readonly WrongWord[] {
  if (issue.code === "invalid_value") return [{ path: issue.path, words: issue.values }];
  if (issue.code !== "invalid_union") return [];
  if (issue.discriminator !== undefined) return [{ path: issue.path, words: null }];
  const inner = issue.errors.flat().flatMap(wrongWords);
  return inner.map(({ path, words }) => ({ path: [...issue.path, ...path], words }));
}

/** True where the value at a path was another writing of a word that is allowed. */
function makeSmall(plain: PlainValue, { path, words }: WrongWord): boolean {
  const holder = path.slice(0, -1).reduce<PlainValue | undefined>(stepInto, plain);
  const key = String(path.at(-1));
  const written = holder === undefined ? undefined : stepInto(holder, key);
  if (typeof holder !== "object" || typeof written !== "string") return false;
  const small = words === null ? written.toLowerCase() : words.find((word) => isSameWord(word, written));
  if (typeof small !== "string" || small === written) return false;
  if (Array.isArray(holder)) holder[Number(key)] = small;
  else holder[key] = small;
  return true;
}

const isSameWord = (word: unknown, written: string): boolean =>
  typeof word === "string" && word.toLowerCase() === written.trim().toLowerCase();

function stepInto(value: PlainValue | undefined, step: PropertyKey): PlainValue | undefined {
  if (typeof value !== "object") return undefined;
  return Array.isArray(value) ? value[Number(step)] : ownValue(value, String(step));
}

function parsePruned<T>(
  schema: z.ZodType<T>,
  plain: PlainValue,
  issues: readonly z.core.$ZodIssue[],
  standIns: StandIns,
): T | null {
  let open = issues;
  for (let round = 0; round < ROUNDS; round += 1) {
    const rootIsLost = open
      .flatMap(pathsToPrune)
      .some((path) => !standIn(plain, path, standIns) && !prune(plain, path));
    if (rootIsLost) return null;
    const again = schema.safeParse(plain, { error: allowedWords });
    if (again.success) return again.data;
    open = again.error.issues;
  }
  return null;
}

/** Puts the stand-in of a path in place of what was refused or is not there; false when there is none, or it stands already. */
function standIn(plain: PlainValue, path: DocumentPath, standIns: StandIns): boolean {
  const value = ownValue(standIns, path.join("."));
  const holder = valueAt(plain, path.slice(0, -1));
  const key = String(path.at(-1));
  if (value === undefined || typeof holder !== "object" || Array.isArray(holder) || holder[key] === value) return false;
  holder[key] = value;
  return true;
}

function pathsToPrune(issue: z.core.$ZodIssue): readonly DocumentPath[] {
  return issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...issue.path, key]) : [issue.path];
}

/**
 * Takes out the value at `path`, or the nearest group that holds it; lists go as a whole. True also where the group went
 * with an earlier path; false when nothing but the root is left to take.
 */
function prune(plain: PlainValue, path: DocumentPath): boolean {
  const firstIndex = path.findIndex((step) => typeof step === "number");
  for (let end = firstIndex < 0 ? path.length : firstIndex; end > 0; end -= 1) {
    const holder = valueAt(plain, path.slice(0, end - 1));
    const key = String(path[end - 1]);
    if (typeof holder !== "object" || Array.isArray(holder) || !(key in holder)) continue;
    delete holder[key];
    return true;
  }
  return path.length > 1;
}

function valueAt(plain: PlainValue, path: DocumentPath): PlainValue | undefined {
  return path.reduce<PlainValue | undefined>((value, step) => {
    return typeof value === "object" && !Array.isArray(value) ? value[String(step)] : undefined;
  }, plain);
}
