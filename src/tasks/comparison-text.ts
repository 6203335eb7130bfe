/** A comparison with the signatures of the old one, as text and in machine form. */
import type { Comparison } from "../compare/index.js";
import { joinPrintable, type Printable, terminalJson, terminalLine, terminalText } from "../diagnostics/printable.js";
import { compareForm, writeCompareJson } from "../formats/compare-json.js";
import { writeCompareText } from "../formats/compare-text.js";
import { writeSignatures } from "../formats/signature-text.js";
import type { SignatureState } from "../signature/index.js";

/** How the text is written. */
interface TextOptions {
  readonly width: number;
  readonly color: boolean;
}

/** `signatures`: of the old one, as each stands for the new one. */
export function writeComparison(
  comparison: Comparison,
  signatures: readonly SignatureState[],
  options: TextOptions,
): Printable {
  const text = writeCompareText(comparison, options);
  if (signatures.length === 0) return text;
  return joinPrintable([text, terminalLine`Signatures of OLD, for NEW:\n`, signedText(signatures, options)]);
}

const signedText = terminalText(writeSignatures);

/** The key `signatures` is there where the old one has some. */
export function writeComparisonJson(comparison: Comparison, signatures: readonly SignatureState[]): Printable {
  if (signatures.length === 0) return writeCompareJson(comparison);
  return terminalJson({ ...compareForm(comparison), signatures });
}
