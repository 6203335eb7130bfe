/** A document for svg.js for those who may draw nothing: what stands behind it takes longer to load than a small job to check. */
import type { SvgDocument } from "../outputs.js";

/** A document that cannot be drawn on before it is loaded. */
export interface LateDocument extends SvgDocument {
  /** To be awaited before the first sheet is drawn. */
  load(): Promise<void>;
}

/** A new, empty document, not loaded yet. */
export function lateDocument(): LateDocument {
  let document: SvgDocument | null = null;
  return {
    get defaultView() {
      if (document === null) throw new Error("a sheet is drawn on a document that is not loaded");
      return document.defaultView;
    },
    load: async () => {
      const { newDocument } = await import("./svg-document.js");
      document ??= newDocument();
    },
  };
}
