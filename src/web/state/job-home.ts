/** Saving: to the program that serves the page, to a file of this machine, or as a download. What somebody else changed is never written over. */
import { decodeText } from "../../readers/text.js";
import { download, pickPlace, readAgain, writeFile } from "./browser-files.js";
import { safeFileName } from "./file-names.js";
import type { Home, OpenJob } from "./model.js";
import { readServed, saveServed } from "./served-job.js";

/** What became of it. `changed`: the file holds another text than the one that was read or saved last. */
export type Saved =
  | { readonly kind: "saved"; readonly home: Home; readonly name: string }
  | { readonly kind: "changed"; readonly home: Home; readonly name: string; readonly text: string }
  | { readonly kind: "refused"; readonly why: string }
  | { readonly kind: "given up" };

/** Saves where the job came from, else where the user picks. */
export async function saveHome(job: OpenJob): Promise<Saved> {
  const { home, files, text } = job;
  switch (home.kind) {
    case "server": {
      const saved = await saveServed(text, home.hash);
      if (saved.kind === "saved") return { kind: "saved", home: { ...home, hash: saved.hash }, name: files.job };
      return saved.kind === "changed" ? servedNow(job, home) : saved;
    }
    case "file":
      return saveFile(job, home.handle);
    case "none":
    case "download":
      return saveElsewhere(job);
  }
}

async function servedNow({ files }: OpenJob, home: Extract<Home, { kind: "server" }>): Promise<Saved> {
  const now = await readServed();
  if (typeof now === "string") return { kind: "refused", why: now };
  const read = decodeText(now.bytes, now.name);
  if (!read.ok) return { kind: "refused", why: `${now.name} is no text any more` };
  return { kind: "changed", home: { ...home, hash: now.hash }, name: files.job, text: read.text };
}

async function saveFile(job: OpenJob, handle: FileSystemFileHandle): Promise<Saved> {
  const now = await readAgain(handle);
  if (typeof now === "string") return { kind: "refused", why: `${handle.name} was not written: ${now}` };
  const read = decodeText(now, handle.name);
  if (!read.ok) return { kind: "refused", why: `${handle.name} is no text any more, and was left as it is` };
  if (read.text !== job.saved && read.text !== job.text)
    return { kind: "changed", home: job.home, name: handle.name, text: read.text };
  return writeTo(job, handle);
}

async function writeTo({ text }: OpenJob, handle: FileSystemFileHandle): Promise<Saved> {
  const why = await writeFile(handle, text);
  if (why !== null) return { kind: "refused", why: `${handle.name} was not written: ${why}` };
  return { kind: "saved", home: { kind: "file", handle }, name: handle.name };
}

/** Where the user picks; a download where the browser has no such choice. */
export async function saveElsewhere(job: OpenJob): Promise<Saved> {
  const place = await pickPlace(safeFileName(job.files.job));
  if (place === "given up") return { kind: "given up" };
  return place === "download" ? saveDownload(job) : writeTo(job, place);
}

/** As a download, whatever the browser can. */
export function saveDownload({ files, text, home }: OpenJob): Saved {
  const name = safeFileName(files.job);
  download(name, new Blob([text], { type: "application/yaml" }));
  return { kind: "saved", home: home.kind === "none" ? { kind: "download" } : home, name };
}
