/** SHA-256 by the platform: some ten times as fast as the one that runs everywhere. */
import { createHash } from "node:crypto";
import type { Hasher } from "../tasks/hash.js";

/** A SHA-256 hasher over Node's own; the hash comes as 64 lower-case hexadecimal digits. */
export function startSha256(): Hasher {
  const hash = createHash("sha256");
  return { update: (bytes) => void hash.update(bytes), hex: () => hash.digest("hex") };
}
