/**
 * Seals: a JSON file that no other file lists says at its head that it is sealed, and at its end the SHA-256 of all bytes before
 * the seal, so that a byte changed anywhere in it is found. Whoever changes it on purpose can seal it anew.
 */

/** Stands in the head of a sealed file. */
export const SEALED = '"sealed": true';

const encoder = new TextEncoder();

/** The end of a sealed file, after the bytes of this hash. */
export function sealEnd(sha256: string): string {
  return `,\n  "seal": "${sha256}"\n}\n`;
}

const END = /^,\n {2}"seal": "([0-9a-f]{64})"\n\}\n$/;
const END_BYTES = encoder.encode(sealEnd("0".repeat(64))).length;

/** How far into a file it says that it is sealed. */
const HEAD_BYTES = 100;

/** A hash that is fed in parts. */
interface Hasher {
  update(bytes: Uint8Array): void;
  hex(): string;
}

/** whole: every byte is as it was sealed. none: neither head nor end says that it is sealed, as in files of earlier programs. */
export type SealState = "whole" | "changed" | "none";

/** Goes through a file once. Chunks may be used again by their reader. */
export function checkSeal(chunks: Iterable<Uint8Array>, hash: Hasher): SealState {
  let [head, rest] = ["", new Uint8Array()];
  for (const chunk of chunks) {
    if (head.length < HEAD_BYTES) head += text(chunk.subarray(0, HEAD_BYTES));
    const joined = joinBytes(rest, chunk);
    const end = Math.max(0, joined.length - END_BYTES);
    hash.update(joined.subarray(0, end));
    rest = joined.slice(end);
  }
  const sealed = END.exec(text(rest));
  if (sealed === null) return head.includes(SEALED) ? "changed" : "none";
  return sealed[1] === hash.hex() ? "whole" : "changed";
}

/** Each byte as one sign: a seal is plain ASCII. */
function text(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes);
}

function joinBytes(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(a.length + b.length);
  joined.set(a);
  joined.set(b, a.length);
  return joined;
}
