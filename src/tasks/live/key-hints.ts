/** What a key of a job file is for and which words it takes: read off the schema of job files, for fields of a page. */
import { jobJsonSchema } from "../../job/index.js";
import { vocabulary } from "../open.js";

/** `choices`: words that it takes; `isOpen`: any other text too. */
export interface KeyHint {
  readonly about: string;
  readonly choices: readonly string[];
  readonly isOpen: boolean;
}

/** By key path, those of a base without `bases[]`; indices of lists are left out: `pattern.x[]`. */
export type KeyHints = Readonly<Record<string, KeyHint>>;

interface Schema {
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
}

/** The keys of a job's head and of its bases. */
export function keyHints(): KeyHints {
  const { properties = {} } = JSON.parse(jobJsonSchema(Object.keys(vocabulary.rules))) as Schema;
  const { bases, defaults: _defaults, kinds: _kinds, ...head } = properties;
  const into = new Map<string, KeyHint>();
  for (const [key, schema] of Object.entries(head)) gather(schema, key, into);
  for (const [key, schema] of Object.entries(bases?.items?.properties ?? {})) gather(schema, key, into);
  return Object.fromEntries(into);
}

function gather(schema: Schema, path: string, into: Map<string, KeyHint>): void {
  const { about = "", choices = [], isOpen = false } = into.get(path) ?? {};
  const own = [...(schema.enum ?? []), ...(schema.const === undefined ? [] : [schema.const])].filter(isWord);
  into.set(path, {
    about: about === "" ? (schema.description ?? "") : about,
    choices: [...new Set([...choices, ...own])].filter((word) => !isTwin(word, own)),
    isOpen: isOpen || (isText(schema) && own.length === 0),
  });
  for (const one of [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])]) gather(one, path, into);
  for (const [key, inner] of Object.entries(schema.properties ?? {})) gather(inner, `${path}.${key}`, into);
  if (schema.items !== undefined && !Array.isArray(schema.items)) gather(schema.items, `${path}[]`, into);
}

function isWord(value: unknown): value is string {
  return typeof value === "string";
}

function isText({ type = [] }: Schema): boolean {
  return [type].flat().includes("string");
}

/** true and false beside yes and no. */
function isTwin(word: string, words: readonly string[]): boolean {
  return (word === "true" || word === "false") && words.includes("yes");
}
