/** A package as files, wherever they lie: in a folder, or in an archive. Paths are inside it, with forward slashes. */
import type { Hasher } from "./hash.js";

/** Something that lies in a package: a file, a package of its own with all that it holds, or what is neither. */
export interface FoundFile {
  readonly path: string;
  readonly kind: "file" | "package" | "other";
}

/** How the files of a package are looked at. */
export interface PackageFiles {
  /** Everything in it, by path; null: it is too much to be looked at. */
  list(): readonly FoundFile[] | null;
  /** Names that stand in a folder, in a fixed order; none where it is no folder. */
  namesIn(folder: string): readonly string[];
  /** Bytes of the file at a path; `no-file`: something else is there, as a link; null: nothing is. */
  sizeOf(path: string): number | "no-file" | null;
  /** A file that is there, piece by piece; a piece is valid until the next one is asked for. */
  chunks(path: string): Iterable<Uint8Array>;
  startSha256(): Hasher;
}

/** The bytes of a file that is there. */
export function bytesOf(files: PackageFiles, path: string): Uint8Array {
  const pieces = [...copies(files.chunks(path))];
  const bytes = new Uint8Array(pieces.reduce((size, { length }) => size + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

function* copies(chunks: Iterable<Uint8Array>): Generator<Uint8Array> {
  for (const chunk of chunks) yield chunk.slice();
}

/** The text of a file that is there. */
export function textOf(files: PackageFiles, path: string): string {
  return new TextDecoder().decode(bytesOf(files, path));
}

/** The path, or where something is there already the first free one of `name_2.json`, `name_3.json`. */
export function numberedPath(path: string, isTaken: (path: string) => boolean): string {
  const dot = path.lastIndexOf(".");
  const end = dot > path.lastIndexOf("/") + 1 ? dot : path.length;
  for (let number = 1; ; number += 1) {
    const numbered = number === 1 ? path : `${path.slice(0, end)}_${number}${path.slice(end)}`;
    if (!isTaken(numbered)) return numbered;
  }
}
