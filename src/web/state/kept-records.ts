/**
 * The database of this browser in which jobs are kept: the thin part. IndexedDB itself, without a library: what is needed are
 * four calls as promises, and transactions that are held open over a decision, which small wrappers (`idb-keyval`) do not
 * have and larger ones (`idb`, `dexie`) would bring along with much else.
 */
import type { Begun } from "./beginning.js";
import type { Home, Step } from "./model.js";

/** What is known of a kept job without its text. */
export interface Head {
  readonly id: string;
  /** Counts what was put down; who knows a lower number knows an outdated job. */
  readonly version: number;
  readonly job: string;
  readonly title: string;
  readonly changed: number;
  readonly made: number;
  readonly steps: number;
  readonly home: Home;
  readonly from: string;
  readonly isUnsaved: boolean;
}

/** The text after so many steps; the others lead from it by their splices, forwards and back. */
export interface TextAt {
  readonly text: string;
  readonly at: number;
}

/** Files beside a job, by name. */
export type Beside = ReadonlyMap<string, string | Uint8Array>;

/** A transaction over everything. Each call is made of the one database that all tabs share; writing ones follow each other. */
export interface Records {
  head(id: string): Promise<Head | undefined>;
  heads(): Promise<readonly Head[]>;
  text(id: string): Promise<TextAt | undefined>;
  saved(id: string): Promise<string | undefined>;
  beside(id: string): Promise<Beside | undefined>;
  steps(id: string): Promise<readonly Step[]>;
  putHead(head: Head): void;
  putText(id: string, text: TextAt): void;
  putSaved(id: string, text: string | null): void;
  putBeside(id: string, files: Beside): void;
  /** Puts steps in the place of all from this one on. */
  putSteps(id: string, from: number, steps: readonly Step[]): void;
  remove(id: string): void;
  /** What was begun and is no job yet. */
  begun(): Promise<readonly Begun[]>;
  putBegun(begun: Begun): void;
  removeBegun(id: string): void;
}

const STORES = ["heads", "texts", "steps"] as const;

/** Opens it; rejects, with a sentence, where the browser has none or refuses it. */
export function openRecords(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const storage: IDBFactory | null | undefined = globalThis.indexedDB;
    if (storage === null || storage === undefined) throw new DOMException("", "SecurityError");
    const late = setTimeout(() => reject(new Error("the browser's storage does not answer")), 5000);
    const request = storage.open("rodplate", 1);
    request.onupgradeneeded = () => {
      for (const store of STORES) request.result.createObjectStore(store);
    };
    request.onsuccess = () => {
      clearTimeout(late);
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
    request.onerror = () => reject(request.error ?? new Error("the browser refuses its storage"));
  });
}

/** Runs work in one transaction; resolves when what it put is kept, and rejects, with nothing kept, where the browser refuses. */
export function within<T>(
  database: IDBDatabase,
  mode: "readonly" | "readwrite",
  work: (records: Records) => Promise<T>,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORES, mode);
    let made: { readonly value: T } | null = null;
    const giveUp = (error: unknown): void => {
      reject(error instanceof Error ? error : new Error(String(error)));
      try {
        transaction.abort();
      } catch {
        // it is over already
      }
    };
    transaction.oncomplete = () => (made === null ? reject(new Error("nothing was put down")) : resolve(made.value));
    transaction.onabort = () => reject(transaction.error ?? new Error("the browser refuses its storage"));
    work(recordsOf(transaction)).then((value) => {
      made = { value };
    }, giveUp);
  });
}

const SAVED = "saved";
const BESIDE = "beside";
/** No id of a job. */
const BEGUN = "begun";
const EVERY: readonly [] = [];

function recordsOf(transaction: IDBTransaction): Records {
  const [heads, texts, steps] = STORES.map((name) => transaction.objectStore(name)) as [
    IDBObjectStore,
    IDBObjectStore,
    IDBObjectStore,
  ];
  const stepsFrom = (id: string, from: number): IDBKeyRange => IDBKeyRange.bound([id, from], [id, EVERY]);
  return {
    head: (id) => answerTo<Head | undefined>(heads.get(id)),
    heads: () => answerTo<readonly Head[]>(heads.getAll()),
    text: (id) => answerTo<TextAt | undefined>(texts.get(id)),
    saved: (id) => answerTo<string | undefined>(texts.get([id, SAVED])),
    beside: (id) => answerTo<Beside | undefined>(texts.get([id, BESIDE])),
    steps: (id) => answerTo<readonly Step[]>(steps.getAll(stepsFrom(id, 0))),
    putHead: (head) => void heads.put(head, head.id),
    putText: (id, text) => void texts.put(text, id),
    putSaved: (id, text) => void (text === null ? texts.delete([id, SAVED]) : texts.put(text, [id, SAVED])),
    putBeside: (id, files) => void texts.put(files, [id, BESIDE]),
    putSteps: (id, from, added) => {
      steps.delete(stepsFrom(id, from));
      for (const [index, step] of added.entries()) steps.put(step, [id, from + index]);
    },
    remove: (id) => {
      heads.delete(id);
      texts.delete(id);
      texts.delete(IDBKeyRange.bound([id], [id, EVERY]));
      steps.delete(stepsFrom(id, 0));
    },
    begun: () => answerTo<readonly Begun[]>(texts.getAll(IDBKeyRange.bound([BEGUN], [BEGUN, EVERY]))),
    putBegun: (begun) => void texts.put(begun, [BEGUN, begun.id]),
    removeBegun: (id) => void texts.delete([BEGUN, id]),
  };
}

function answerTo<T>(request: IDBRequest): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result as T);
    request.onerror = () => reject(request.error ?? new Error("the browser refuses its storage"));
  });
}
