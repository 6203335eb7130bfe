/** What a lot stands for, as a few signs that people and scanners compare: of the rod, how many, and where they go. */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import { lotKey, type RodLot } from "./lots.js";

/** Signs of a hash that papers show: its start. */
export const SHORT_HASH = 12;

/**
 * Start of the SHA-256 of the lot: it changes when anything of the rod, its count or its bases does, and stays over revisions
 * that leave the lot as it is.
 */
export function lotHash({ mark, detail, uses }: RodLot): string {
  const told = JSON.stringify([mark, lotKey(detail), uses]);
  return bytesToHex(sha256(new TextEncoder().encode(told))).slice(0, SHORT_HASH);
}
