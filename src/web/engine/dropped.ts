/** Files that a person handed over: what each is, by what it begins with, and its bytes within bounds. */
import { storedArchive } from "../../formats/archive-writer.js";
import { ARCHIVE_BOUNDS, isArchive } from "../../readers/archive.js";
import { Refused } from "./refused.js";

/** The largest files that are read, in bytes: of packages, and of single files as the command line reads them. */
export const LARGEST_DROPPED = { package: 600_000_000, file: 32_000_000 } as const;

/** A file with its name; a folder with all that lies in it. */
export interface Dropped {
  readonly name: string;
  /** Of a folder nothing. */
  readonly blob: Blob;
  readonly folder?: readonly FolderFile[];
}

/** A file of a folder, by its path in it. */
export interface FolderFile {
  readonly path: string;
  readonly blob: Blob;
}

/** The whole of a file that is none too large; a folder as an archive. */
export async function bytesOfDropped(dropped: Dropped, most: keyof typeof LARGEST_DROPPED): Promise<Uint8Array> {
  const { name, blob, folder } = dropped;
  const files = folder ?? [{ path: "", blob }];
  const size = files.reduce((sum, file) => sum + file.blob.size, 0);
  const largest = LARGEST_DROPPED[most];
  if (size > largest) throw new Refused([`${name} has ${megabytes(size)}; at most ${megabytes(largest)} are read`]);
  if (files.length > ARCHIVE_BOUNDS.entries)
    throw new Refused([`${name} holds more than ${ARCHIVE_BOUNDS.entries} files: drop a smaller folder, or the files`]);
  return folder === undefined ? bytesOf(name, blob) : storedArchive(await bytesOfFolder(name, folder));
}

async function bytesOfFolder(name: string, files: readonly FolderFile[]): Promise<[string, Uint8Array][]> {
  const read: [string, Uint8Array][] = [];
  for (const { path, blob } of files) read.push([path, await bytesOf(`${name}/${path}`, blob)]);
  return read;
}

async function bytesOf(name: string, blob: Blob): Promise<Uint8Array> {
  try {
    return new Uint8Array(await blob.arrayBuffer());
  } catch {
    throw new Refused([`${name} cannot be read: it is a folder, or it was moved or changed since; drop it again`]);
  }
}

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1_000_000)} MB`;

/** True for a ZIP archive, and for a folder, which is taken as one; what cannot be read is none. */
export async function isZip({ blob, folder }: Dropped): Promise<boolean> {
  if (folder !== undefined) return true;
  try {
    return isArchive(new Uint8Array(await blob.slice(0, 4).arrayBuffer()));
  } catch {
    return false;
  }
}
