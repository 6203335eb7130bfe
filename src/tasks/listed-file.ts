/** A file of a package against what its summary lists of it. */
import type { PackageFiles } from "./package-files.js";

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

/** null when the file in the package is the one that is listed. Its bytes are read only where the size is right. */
export function findDamage(files: PackageFiles, { path, bytes, sha256 }: ListedFile): Damage | null {
  const size = files.sizeOf(path);
  if (size === null) return { kind: "absent" };
  if (size === "no-file") return { kind: "no-file" };
  if (size !== bytes) return { kind: "other-size", bytes: size };
  const hash = files.startSha256();
  for (const chunk of files.chunks(path)) hash.update(chunk);
  return hash.hex() === sha256 ? null : { kind: "other-hash" };
}

/** What is wrong with a listed file, in words that follow its path. */
export function damageWords(damage: Damage, { bytes }: Pick<ListedFile, "bytes">): string {
  switch (damage.kind) {
    case "absent":
      return "is listed and is not there";
    case "no-file":
      return "is not a file";
    case "other-size":
      return `has ${damage.bytes} bytes, listed are ${bytes}: it was changed after it was written`;
    case "other-hash":
      return "has another hash than is listed: it was changed after it was written";
  }
}
