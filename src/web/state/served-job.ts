/** The page's end of `rodplate open JOB`: the job that the program serves, and what is beside it. */

/** A job as it stands on the disk. */
export interface ServedText {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly hash: string;
}

/** What became of a save. */
export type ServedSave =
  | { readonly kind: "saved"; readonly hash: string }
  | { readonly kind: "changed" }
  | { readonly kind: "refused"; readonly why: string };

const ENDED = "rodplate open is ended in its terminal, or does not answer";

/** What the program calls the job that it serves with this page; null where it serves none. */
export function servedKey(): string | null {
  return document.querySelector('meta[name="rodplate-job"]')?.getAttribute("content") ?? null;
}

/** The job; or, in a sentence, why it is not to be had. */
export async function readServed(): Promise<ServedText | string> {
  const answer = await fetch("./job").catch(() => null);
  if (answer === null) return ENDED;
  if (!answer.ok) return (await answer.text()).trim();
  const name = decodeURIComponent(answer.headers.get("x-job-name") ?? "job.yaml");
  return { name, hash: hashOf(answer), bytes: new Uint8Array(await answer.arrayBuffer()) };
}

/** Files beside the job that it names on the disk; and of those that are not to be had, why. */
export async function readServedBeside(): Promise<{
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly refused: readonly string[];
}> {
  const files = new Map<string, Uint8Array>();
  const refused: string[] = [];
  const listed = await fetch("./job/beside").catch(() => null);
  if (listed?.ok !== true) return { files, refused: [ENDED] };
  const { files: names } = (await listed.json()) as {
    readonly files: readonly { readonly name: string; readonly why: string | null }[];
  };
  for (const { name, why } of names) {
    const answer = why === null ? await fetch(`./job/beside/${encodeURIComponent(name)}`).catch(() => null) : null;
    if (answer?.ok === true) files.set(name, new Uint8Array(await answer.arrayBuffer()));
    else refused.push(why ?? (answer === null ? ENDED : (await answer.text()).trim()));
  }
  return { files, refused };
}

/** Writes the job over the one of this hash. */
export async function saveServed(text: string, hash: string): Promise<ServedSave> {
  const answer = await fetch("./job", { method: "PUT", body: text, headers: { "if-match": `"${hash}"` } }).catch(
    () => null,
  );
  if (answer === null) return { kind: "refused", why: ENDED };
  if (answer.ok) return { kind: "saved", hash: hashOf(answer) };
  if (answer.status === 412) return { kind: "changed" };
  return { kind: "refused", why: (await answer.text()).trim() };
}

function hashOf(answer: Response): string {
  return /"([0-9a-f]+)"/.exec(answer.headers.get("etag") ?? "")?.[1] ?? "";
}
