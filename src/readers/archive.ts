/**
 * A ZIP archive -> its files, by the directory at its end (PKWARE APPNOTE 6.3, sections 4.3.12 and 4.3.16). One file is
 * unpacked at a time and never beyond the size that is declared of it; what an archive declares is bounded beforehand.
 */
import { inflateSync } from "fflate";
import { fileFault, type Outcome } from "../diagnostics/finding.js";
import { printable } from "../diagnostics/printable.js";

/** A file of an archive; `link`: a symbolic link, which is not followed. */
export interface ArchiveEntry {
  /** With forward slashes, never out of the archive. */
  readonly path: string;
  readonly kind: "file" | "link";
  /** Bytes, unpacked and packed. */
  readonly size: number;
  readonly packed: number;
  readonly isStored: boolean;
  /** Where its own head begins. */
  readonly at: number;
}

/** An archive whose directory was read. */
export interface Archive {
  readonly entries: readonly ArchiveEntry[];
  /** Where its directory begins, and how long it is. */
  readonly directory: { readonly at: number; readonly bytes: number; readonly count: number };
  /** null: its bytes are damaged. */
  read(entry: ArchiveEntry): Uint8Array | null;
}

/**
 * What is opened of archives: bytes unpacked in all and of one file, how many files, and how many times its size a file that is
 * no small one may unpack to. Tables of 500 like bases unpack to 35 times their size, zeros to 1000 times.
 */
export const ARCHIVE_BOUNDS = {
  ...{ unpacked: 4_000_000_000, file: 512_000_000, entries: 65_534 },
  ...{ growth: 250, small: 16_000_000 },
} as const;

const SIGNS = { end: 0x06054b50, entry: 0x02014b50, file: 0x04034b50 } as const;
const [END_BYTES, ENTRY_BYTES, FILE_BYTES] = [22, 46, 30];
const LONGEST_COMMENT = 65_535;

/** True for bytes that begin as an archive does. */
export function isArchive(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] ?? 0) === (bytes[3] ?? 0) - 1;
}

/** Opens an archive; `file` is its name, for findings. */
export function openArchive(bytes: Uint8Array, file: string): Outcome<Archive> {
  const refuse = (message: string): Outcome<never> => ({
    ok: false,
    findings: [fileFault(file, "bad-archive", message)],
  });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const directory = findDirectory(view);
  if (typeof directory === "string") return refuse(directory);
  const entries = readEntries(view, bytes, directory);
  if (typeof entries === "string") return refuse(entries);
  const fault = faultOf(entries, bytes.length);
  if (fault !== null) return refuse(fault);
  return { ok: true, value: { entries, directory, read: (entry) => unpacked(view, bytes, entry) }, findings: [] };
}

const DAMAGED = "is no ZIP archive, or is damaged; allowed is a package as one ZIP";
const TOO_LARGE = "has more than 65,534 files or 4 GB; unpack it, and use rodplate on the folder";

function findDirectory(view: DataView): Archive["directory"] | string {
  const last = view.byteLength - END_BYTES;
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at -= 1) {
    if (view.getUint32(at, true) !== SIGNS.end || view.getUint16(at + 20, true) !== last - at) continue;
    const [count, bytes, start] = [
      view.getUint16(at + 10, true),
      view.getUint32(at + 12, true),
      view.getUint32(at + 16, true),
    ];
    if (count === 0xffff || start === 0xffffffff) return TOO_LARGE;
    if (view.getUint16(at + 4, true) !== 0) return "is one part of an archive in several; allowed is one ZIP";
    return start + bytes === at ? { at: start, bytes, count } : DAMAGED;
  }
  return DAMAGED;
}

function readEntries(
  view: DataView,
  bytes: Uint8Array,
  { at: start, bytes: size, count }: Archive["directory"],
): readonly ArchiveEntry[] | string {
  const entries: ArchiveEntry[] = [];
  let at = start;
  for (let i = 0; i < count; i += 1) {
    if (at + ENTRY_BYTES > start + size || view.getUint32(at, true) !== SIGNS.entry) return DAMAGED;
    const entry = readEntry(view, bytes, at);
    if (typeof entry === "string") return entry;
    if (entry !== null) entries.push(entry);
    at += ENTRY_BYTES + [28, 30, 32].reduce((sum, from) => sum + view.getUint16(at + from, true), 0);
  }
  return at === start + size ? entries : DAMAGED;
}

const [STORED, DEFLATED] = [0, 8];
const [UNIX, LINK, KIND_OF_FILE] = [3, 0xa000, 0xf000];

/** null: of a folder, which the paths of its files tell. */
function readEntry(view: DataView, bytes: Uint8Array, at: number): ArchiveEntry | string | null {
  const nameBytes = bytes.subarray(at + ENTRY_BYTES, at + ENTRY_BYTES + view.getUint16(at + 28, true));
  const path = decoded(nameBytes).replaceAll("\\", "/");
  if (path.endsWith("/")) return null;
  const shown = printable(path.length > 80 ? `${path.slice(0, 80)}...` : path);
  if (leadsOut(path))
    return `holds "${shown}", a name that leads out of it: it is no package, and nothing of it is read`;
  if ((view.getUint16(at + 8, true) & 1) === 1)
    return `is locked by a password (${shown}); allowed is a ZIP without one`;
  const method = view.getUint16(at + 10, true);
  if (method !== STORED && method !== DEFLATED)
    return `has ${shown} packed in a way that is not read; allowed is deflate`;
  const isUnix = view.getUint8(at + 5) === UNIX;
  const isLink = isUnix && (view.getUint16(at + 40, true) & KIND_OF_FILE) === LINK;
  return {
    ...{ path, kind: isLink ? "link" : "file", isStored: method === STORED },
    ...{
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    },
  };
}

/** UTF-8, else sign by sign. */
function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return [...bytes].map((byte) => String.fromCharCode(byte)).join("");
  }
}

const leadsOut = (path: string): boolean =>
  path === "" || path.startsWith("/") || /^[a-z]:/i.test(path) || path.includes("\0") || path.split("/").includes("..");

function faultOf(entries: readonly ArchiveEntry[], length: number): string | null {
  const [unpacked, packed] = (["size", "packed"] as const).map((key) =>
    entries.reduce((sum, each) => sum + each[key], 0),
  );
  const largest = entries.find(({ size }) => size > ARCHIVE_BOUNDS.file);
  if (entries.length > ARCHIVE_BOUNDS.entries || (unpacked ?? 0) > ARCHIVE_BOUNDS.unpacked) return TOO_LARGE;
  if (largest !== undefined)
    return `has ${printable(largest.path)} of ${megabytes(largest.size)}; at most ${megabytes(ARCHIVE_BOUNDS.file)} are read`;
  const swollen = entries.find(
    ({ size, packed: own }) => size > ARCHIVE_BOUNDS.small && size > own * ARCHIVE_BOUNDS.growth,
  );
  if (swollen !== undefined)
    return `has ${printable(swollen.path)}, which unpacks to over ${ARCHIVE_BOUNDS.growth} times its size: no file of a package does, and nothing of it is read`;
  if ((packed ?? 0) > length) return DAMAGED;
  return new Set(entries.map(({ path }) => path)).size < entries.length ? "holds two files of one name" : null;
}

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1_000_000)} MB`;

function unpacked(view: DataView, bytes: Uint8Array, { at, packed, size, isStored }: ArchiveEntry): Uint8Array | null {
  if (at + FILE_BYTES > bytes.length || view.getUint32(at, true) !== SIGNS.file) return null;
  const start = at + FILE_BYTES + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  const data = bytes.subarray(start, start + packed);
  if (data.length < packed) return null;
  if (isStored) return packed === size ? data : null;
  try {
    const out = inflateSync(data, { out: new Uint8Array(size) });
    return out.length === size ? out : null;
  } catch {
    return null;
  }
}
