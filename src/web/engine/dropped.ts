/** Files that a person handed over: what each is, by what it begins with, and its bytes within bounds. */
import { isArchive } from "../../readers/archive.js";
import { Refused } from "./refused.js";

/** The largest files that are read, in bytes: of packages, and of single files as the command line reads them. */
export const LARGEST_DROPPED = { package: 600_000_000, file: 32_000_000 } as const;

/** A file with its name. */
export interface Dropped {
  readonly name: string;
  readonly blob: Blob;
}

/** The whole of a file that is none too large. */
export async function bytesOfDropped({ name, blob }: Dropped, most: keyof typeof LARGEST_DROPPED): Promise<Uint8Array> {
  const largest = LARGEST_DROPPED[most];
  if (blob.size > largest)
    throw new Refused([`${name} has ${megabytes(blob.size)}; at most ${megabytes(largest)} are read`]);
  try {
    return new Uint8Array(await blob.arrayBuffer());
  } catch {
    throw new Refused([`${name} cannot be read: it is a folder, or it was moved or changed since; drop it again`]);
  }
}

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1_000_000)} MB`;

/** True for a ZIP archive; what cannot be read is none. */
export async function isZip({ blob }: Dropped): Promise<boolean> {
  try {
    return isArchive(new Uint8Array(await blob.slice(0, 4).arrayBuffer()));
  } catch {
    return false;
  }
}
