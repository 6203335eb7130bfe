/** A document for svg.js outside a browser. */
import { createHTMLWindow } from "svgdom";
import type { SvgDocument } from "../outputs/index.js";

/** A new, empty document. (Of svgdom's windows only this one serialises what svg.js makes.) */
export function newDocument(): SvgDocument {
  return createHTMLWindow().document;
}
