/** Files out of the page: saved where the browser saves, or a part of an archive as a file of its own. */
import type { PackedPlace } from "../../formats/archive-writer.js";
import { download } from "../state/browser-files.js";

/** Hands a file to the browser to be saved; folders of its path are left out. */
export function save(path: string, blob: Blob): void {
  download(path.split("/").at(-1) ?? path, blob);
}

/** A file out of an archive that was just made. */
export async function unpacked(archive: Blob, { start, end, isStored }: PackedPlace): Promise<Blob> {
  const part = archive.slice(start, end);
  if (isStored) return part;
  return new Response(part.stream().pipeThrough(new DecompressionStream("deflate-raw"))).blob();
}

/** A size for people: `840 bytes`, `12 kB`, `3.4 MB`. */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1_000_000 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
