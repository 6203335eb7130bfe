/** What was signed against what is there now. */
import type { ChangedBase, SignatureChanges, SignedBase, SignedFile, SignedState } from "./model.js";

/** What is not as it was signed; `damaged`: paths of files whose bytes are not those that the summary lists. */
export function findChanges(signed: SignedState, now: SignedState, damaged: readonly string[] = []): SignatureChanges {
  const before = new Map(signed.bases.map((base) => [base.mark, base]));
  const files = damagedByBase(now.files, new Set(damaged));
  const compared = now.bases.map((base) => compareBase(before.get(base.mark), base, files.get(base.mark) ?? []));
  const present = new Set(now.bases.map(({ mark }) => mark));
  const gone = signed.bases.filter(({ mark }) => !present.has(mark));
  const again = compared.flatMap(({ mark, what }) => (what.length > 0 ? [{ mark, what }] : []));
  const same = compared.filter(({ what }) => what.length === 0);
  return {
    job: jobChanges(signed, now),
    again: [...again, ...gone.map(({ mark }) => ({ mark, what: ["gone"] }))],
    otherBytes: same.filter(({ isOther }) => isOther).map(({ mark }) => mark),
    untouched: same.filter(({ isOther }) => !isOther).length,
    signed: signed.bases.length,
    layout: changedKeys(signed.layout, now.layout),
    documents: now.summary === null ? [] : changedDocuments(signed.files, now.files),
  };
}

/** True where nothing was found: the state is the one that was signed, whatever its bytes. */
export function isUnchanged({ job, again, otherBytes, layout, documents }: SignatureChanges): boolean {
  return job.length + again.length + otherBytes.length + layout.length + documents.length === 0;
}

const HEAD = ["number", "title", "revision", "status"] as const;

function jobChanges({ job: signed }: SignedState, { job: now }: SignedState): readonly string[] {
  return HEAD.filter((key) => signed[key] !== now[key]).map((key) => `${key} ${signed[key]}, now ${now[key]}`);
}

function damagedByBase(
  files: readonly SignedFile[],
  damaged: ReadonlySet<string>,
): ReadonlyMap<string, readonly string[]> {
  const byBase = new Map<string, string[]>();
  for (const { path, bases } of files)
    if (damaged.has(path)) for (const mark of bases) byBase.set(mark, [...(byBase.get(mark) ?? []), path]);
  return byBase;
}

function compareBase(
  before: SignedBase | undefined,
  now: SignedBase,
  damaged: readonly string[],
): ChangedBase & { readonly isOther: boolean } {
  const { mark } = now;
  if (before === undefined) return { mark, what: ["new"], isOther: false };
  const rows = changedKeys(before.rows, now.rows);
  const what = [
    ...(before.held === now.held ? [] : [now.held ? "HELD now" : "no longer held"]),
    ...(["quantity", "plate", "rods"] as const).filter((part) => before[part] !== now[part]),
    ...(before.template === now.template ? [] : [`template ${before.template}, now ${now.template}`]),
    ...(rows.length === 0 ? [] : [`rows ${rows.join(", ")}`]),
    ...damaged.map((path) => `file ${path}`),
  ];
  return { mark, what, isOther: hasOtherFiles(before, now) };
}

/** Of a job no papers are made, and of its held bases no files to cut by. */
function hasOtherFiles(before: SignedBase, now: SignedBase): boolean {
  if (now.papers === null) return !now.held && before.cut !== now.cut;
  return before.cut !== now.cut || before.papers !== now.papers;
}

function changedKeys(before: Readonly<Record<string, string>>, now: Readonly<Record<string, string>>): string[] {
  return [...new Set([...Object.keys(before), ...Object.keys(now)])].filter((key) => before[key] !== now[key]);
}

/** By kind: names of files carry the revision. */
function changedDocuments(before: readonly SignedFile[], now: readonly SignedFile[]): readonly string[] {
  const hashes = (files: readonly SignedFile[]): Record<string, string> => {
    const kinds: Record<string, string> = {};
    for (const { kind, sha256, bases } of files) if (bases.length === 0) kinds[kind] = `${kinds[kind] ?? ""} ${sha256}`;
    return kinds;
  };
  return changedKeys(hashes(before), hashes(now));
}
