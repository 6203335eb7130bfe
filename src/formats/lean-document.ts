/**
 * A document that svg.js draws on outside a browser, and that does nothing but be written: elements with attributes, text and
 * children, serialised as a browser serialises them but for a line to each element.
 */

/** Any DOM that svg.js can draw on: the browser's own document, or a lean one. */
export interface DrawingDocument {
  readonly defaultView: unknown;
}

/** The parts of a DOM element that writing takes. */
class LeanElement {
  readonly nodeName: string;
  readonly ownerDocument: DrawingDocument;
  #attributes = "";
  #content = "";
  readonly #children: LeanElement[] = [];

  constructor(nodeName: string, ownerDocument: DrawingDocument) {
    this.nodeName = nodeName;
    this.ownerDocument = ownerDocument;
  }

  /** Each attribute is set once. */
  setAttribute(name: string, value: string): void {
    this.#attributes += ` ${name}="${RESERVED.test(value) ? escaped(value).replace(/"/g, "&quot;") : value}"`;
  }

  setAttributeNS(_space: string | null, name: string, value: string): void {
    this.setAttribute(name, value);
  }

  /** Asked only of elements that are new. */
  hasAttribute(): boolean {
    return false;
  }

  appendChild(child: LeanElement): LeanElement {
    this.#children.push(child);
    return child;
  }

  set textContent(text: string) {
    this.#content = escaped(text);
  }

  /** Each element on a line of its own. */
  get outerHTML(): string {
    const { nodeName } = this;
    let html = `<${nodeName}${this.#attributes}>${this.#content}`;
    if (this.#children.length === 0)
      return this.#content === "" && EMPTY.has(nodeName)
        ? `<${nodeName}${this.#attributes}/>`
        : `${html}</${nodeName}>`;
    for (const child of this.#children) html += `\n${child.outerHTML}`;
    return `${html}\n</${nodeName}>`;
  }
}

const EMPTY: ReadonlySet<string> = new Set(["path", "rect"]);

const RESERVED = /[&<>"]/;

function escaped(text: string): string {
  return RESERVED.test(text) ? text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;") : text;
}

/** A new, empty document. */
export function newLeanDocument(): DrawingDocument {
  const document = {
    defaultView: null as unknown,
    createElementNS: (_space: string, name: string) => new LeanElement(name, document),
  };
  document.defaultView = { document, Node: LeanElement, SVGElement: LeanElement };
  return document;
}
