/** A signature as the page shows it. */
import { printable } from "../../diagnostics/printable.js";
import { type SignatureState, signatureLines } from "../../signature/index.js";

/** In lines, the first of which says by whom. */
export interface ShownSignature {
  readonly isVoid: boolean;
  readonly lines: readonly string[];
}

/** With nothing in its lines that could move or hide what stands around them. */
export function shownSignature(state: SignatureState): ShownSignature {
  return { isVoid: state.state === "void", lines: signatureLines(state).map(printable) };
}
