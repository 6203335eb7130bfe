/** The document that drawings are made on. */
import type { SvgDocument } from "./model.js";

/** Throws where there is none: whoever asks for drawings hands one in, which is looked at before anything is made. */
export function drawingDocument(document: SvgDocument | null): SvgDocument {
  if (document === null) throw new TypeError("a drawing is made with svg.js, which needs a document");
  return document;
}
