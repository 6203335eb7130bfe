/** Which chunks of the sheet font a sheet needs, and how they are embedded. */
import { FONT_CHUNKS, type FontChunk } from "./faces.js";

/** A name of its own, so that sheets side by side agree, and nothing installed is meant. */
export const FONT_FAMILY = "Rodplate Sheet";

/** Chunks and weights of which letters were noted. */
export interface UsedLetters {
  note(text: string, bold: boolean): void;
  has(chunk: FontChunk, bold: boolean): boolean;
}

/** Code points to the number of their chunk, from 1; 0 in none. All stand in the basic plane. */
const CHUNK_OF = chunkNumbers();

function chunkNumbers(): Uint8Array {
  const numbers = new Uint8Array(0x10000);
  FONT_CHUNKS.forEach(({ range }, i) => {
    for (const [first, last] of rangesOf(range)) numbers.fill(i + 1, first, last + 1);
  });
  return numbers;
}

function rangesOf(range: string): readonly (readonly [number, number])[] {
  return range.split(",").map((part) => {
    const [first = 0, last = first] = part
      .slice(2)
      .split("-")
      .map((code) => Number.parseInt(code, 16));
    return [first, last];
  });
}

/** Starts with no letter of any chunk. */
export function startLetters(): UsedLetters {
  const used = { regular: new Uint8Array(FONT_CHUNKS.length + 1), bold: new Uint8Array(FONT_CHUNKS.length + 1) };
  return {
    note: (text, bold) => {
      const marks = bold ? used.bold : used.regular;
      for (let i = 0; i < text.length; i += 1) marks[CHUNK_OF[text.charCodeAt(i)] ?? 0] = 1;
    },
    has: (chunk, bold) => (bold ? used.bold : used.regular)[FONT_CHUNKS.indexOf(chunk) + 1] === 1,
  };
}

/** A font face for each chunk and weight that is used, in the order of the chunks. */
export function fontFaces(letters: UsedLetters): string {
  return FONT_CHUNKS.flatMap((chunk) => [
    ...(letters.has(chunk, false) ? [faceOf(chunk, "normal", chunk.regular)] : []),
    ...(letters.has(chunk, true) ? [faceOf(chunk, "bold", chunk.bold)] : []),
  ]).join("");
}

function faceOf({ range }: FontChunk, weight: string, base64: string): string {
  const source = `url(data:font/woff2;base64,${base64})format("woff2")`;
  return `@font-face{font-family:"${FONT_FAMILY}";font-weight:${weight};unicode-range:${range};src:${source}}`;
}
