/** SHA-256 in parts: the platform's own where a shell hands it in, else one that runs everywhere. */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";

/** A hash that is fed in parts; `hex` ends it. */
export interface Hasher {
  update(bytes: Uint8Array): void;
  hex(): string;
}

/** A hasher that needs no platform. */
export function startOwnSha256(): Hasher {
  const hash = sha256.create();
  return { update: (bytes) => void hash.update(bytes), hex: () => bytesToHex(hash.digest()) };
}

/** The hash of one file, 64 hexadecimal digits. */
export function hashOf(bytes: Uint8Array, start: () => Hasher = startOwnSha256): string {
  const hash = start();
  hash.update(bytes);
  return hash.hex();
}
