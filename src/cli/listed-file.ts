/** A file of a package against what its summary lists of it. */
import { lstatSync } from "node:fs";
import { join } from "node:path";
import { chunksOf } from "./file-system.js";
import { startSha256 } from "./sha256.js";

/** A file as a summary lists it: its path in the package with forward slashes, its size and its hash in hexadecimal. */
export interface ListedFile {
  /** What kind of output it is; undefined where the summary does not say. */
  readonly kind?: string | undefined;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** What is wrong with a listed file; a link is no file. `bytes` is the size found. */
export type Damage =
  | { readonly kind: "absent" | "no-file" | "other-hash" }
  | { readonly kind: "other-size"; readonly bytes: number };

/** null when the file in the package's folder is the one that is listed. Its bytes are read only where the size is right. */
export function findDamage(folder: string, { path, bytes, sha256 }: ListedFile): Damage | null {
  const file = join(folder, path);
  const stat = lstatSync(file, { throwIfNoEntry: false });
  if (stat === undefined) return { kind: "absent" };
  if (!stat.isFile()) return { kind: "no-file" };
  if (stat.size !== bytes) return { kind: "other-size", bytes: stat.size };
  const hash = startSha256();
  for (const chunk of chunksOf(file)) hash.update(chunk);
  return hash.hex() === sha256 ? null : { kind: "other-hash" };
}
