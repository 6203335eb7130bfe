/**
 * A job file in two parts: above a marker line what a person wrote, below it what `rodplate read` wrote. A hash in the
 * marker tells whether a person changed what stands below. Bytes above are handed back as they are.
 */
import { hashOf } from "./hash.js";

/** A job file that has the marker. */
export interface JobParts {
  /** Everything above the marker line, byte for byte. */
  readonly own: Uint8Array;
  /** False where what stands below is not what was written there. */
  readonly isUnchanged: boolean;
}

const MARKER = /^#### .* sha256 ([0-9a-f]{64})[ \t]*\r?\n/m;
const encoder = new TextEncoder();

/** The parts; null for a file without the marker: it is a person's from end to end. */
export function splitJob(bytes: Uint8Array): JobParts | null {
  const signs = byteText(bytes);
  const found = MARKER.exec(signs);
  if (found === null) return null;
  const below = bytes.subarray(found.index + found[0].length);
  return { own: bytes.slice(0, found.index), isUnchanged: hashBelow(below) === found[1] };
}

/** One sign a byte, so that places in the text are places in the bytes. */
function byteText(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += PIECE) pieces.push(String.fromCharCode(...bytes.subarray(at, at + PIECE)));
  return pieces.join("");
}

const PIECE = 4096;

/** Line ends and blank lines at the end are an editor's, no change of a person's. */
function hashBelow(bytes: Uint8Array): string {
  const text = new TextDecoder().decode(bytes).replaceAll("\r\n", "\n").trimEnd();
  return hashOf(encoder.encode(text));
}

/** The file of both parts; what is above ends with a line break. */
export function joinJob(own: Uint8Array, below: string): Uint8Array {
  const hash = hashBelow(encoder.encode(below));
  const gap = own.length === 0 || own.at(-1) === 10 ? "" : "\n";
  const marker = `${gap}#### Above is yours and is kept. Below is written anew by "rodplate read", not by hand. sha256 ${hash}\n`;
  const rest = encoder.encode(marker + below);
  const whole = new Uint8Array(own.length + rest.length);
  whole.set(own);
  whole.set(rest, own.length);
  return whole;
}
