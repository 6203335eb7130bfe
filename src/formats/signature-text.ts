/** Signatures for a terminal: VOID stands out. */
import { type SignatureState, signatureLines } from "../signature/index.js";
import { styled, wrap } from "./ledger-text.js";

/** How the terminal shows them. */
export interface SignatureTextOptions {
  readonly width: number;
  readonly color: boolean;
}

/** Each in lines set in by two, long ones wrapped; "" where there is none. */
export function writeSignatures(signatures: readonly SignatureState[], { width, color }: SignatureTextOptions): string {
  const lines = signatures.flatMap((signature) =>
    signatureLines(signature).flatMap((line, i) => {
      const isHead = i === 0;
      const text = line.trimStart();
      const indent = isHead ? "  " : "    ";
      const shown = wrap(text, width - indent.length).map((each) => `${indent}${each}`);
      return isHead ? shown.map((each) => each.replace(/VOID$/, styled("VOID", "red", color))) : shown;
    }),
  );
  return lines.map((line) => `${line}\n`).join("");
}
