/** ZIP archives with forward slashes in their names and no clock: the same files give the same bytes on every machine. */
import { Zip, ZipDeflate, ZipPassThrough, zipSync } from "fflate";
import type { Archive } from "../readers/archive.js";

/** Where the bytes of a file lie in its archive: from `start` up to `end`. */
export interface PackedPlace {
  readonly start: number;
  readonly end: number;
  /** False: packed by deflate. */
  readonly isStored: boolean;
}

/** An archive that takes its files one by one. */
export interface ArchiveWriter {
  /** null: the archive would be larger than any reader takes, 4 GB or 65,534 files; nothing was added. */
  add(path: string, bytes: Uint8Array): PackedPlace | null;
  /** Writes the directory. */
  end(): void;
}

/** The first day that an archive can name, in the zone of whoever reads it: the same bytes in every zone. */
const FIRST_DAY = "1980-01-01T12:00:00";

const LARGEST = 0xffff_fffe;
const MOST_FILES = 65_534;

/** Bytes of a file's own head without its name, and of what follows its data (PKWARE APPNOTE 6.3, 4.3.7 and 4.3.9). */
const [HEAD, AFTER] = [30, 16];
/** Bytes of a file in the directory, and of the end of it, without names. */
const [LISTED, END] = [46, 22];

/** Kinds of files that are packed already. */
const PACKED = /\.(pdf|xlsx|3mf|zip)$/i;

/** Starts an archive, whose bytes are handed to `take` as they come. */
export function startArchive(take: (bytes: Uint8Array) => void): ArchiveWriter {
  let [written, listed, count] = [0, END, 0];
  const archive = new Zip((error, bytes) => {
    if (error !== null) throw error;
    written += bytes.length;
    take(bytes);
  });
  return {
    add: (path, bytes) => {
      const name = new TextEncoder().encode(path).length;
      const most = HEAD + name + bytes.length + Math.ceil(bytes.length / 1000) + 64 + AFTER;
      if (written + most + listed + LISTED + name > LARGEST || count === MOST_FILES) return null;
      const start = written + HEAD + name;
      const isStored = PACKED.test(path);
      const file = isStored ? new ZipPassThrough(path) : new ZipDeflate(path, { level: 6 });
      file.mtime = FIRST_DAY;
      archive.add(file);
      file.push(bytes, true);
      listed += LISTED + name;
      count += 1;
      return { start, end: written - AFTER, isStored };
    },
    end: () => archive.end(),
  };
}

/** Files as they are in one archive, none of them packed. */
export function storedArchive(files: readonly (readonly [path: string, bytes: Uint8Array])[]): Uint8Array {
  return zipSync(Object.fromEntries(files), { mtime: FIRST_DAY, level: 0 });
}

/** The archive with one more file; every byte of the others stays as it is. The path must not be in it. */
export function withFile(
  bytes: Uint8Array,
  { directory }: Pick<Archive, "directory">,
  path: string,
  content: Uint8Array,
): readonly Uint8Array[] {
  const alone = zipSync({ [path]: content }, { mtime: FIRST_DAY, level: 6 });
  const view = new DataView(alone.buffer, alone.byteOffset, alone.byteLength);
  const [size, at] = [view.getUint32(alone.length - 10, true), view.getUint32(alone.length - 6, true)];
  const listed = alone.slice(at, at + size);
  new DataView(listed.buffer).setUint32(42, directory.at, true);
  const end = alone.slice(alone.length - END);
  const ending = new DataView(end.buffer);
  for (const offset of [8, 10]) ending.setUint16(offset, directory.count + 1, true);
  ending.setUint32(12, directory.bytes + size, true);
  ending.setUint32(16, directory.at + at, true);
  const before = bytes.subarray(0, directory.at);
  return [before, alone.subarray(0, at), bytes.subarray(directory.at, directory.at + directory.bytes), listed, end];
}
