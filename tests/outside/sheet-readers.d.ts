/** The parts that are used of two packages without typings. */
declare module "opentype.js" {
  interface Glyph {
    readonly index: number;
    readonly advanceWidth: number;
    getBoundingBox(): { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
  }
  export interface Font {
    readonly unitsPerEm: number;
    charToGlyph(character: string): Glyph;
  }
  export function parse(bytes: ArrayBuffer): Font;
}

declare module "sax" {
  export interface Tag {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
  }
  export interface Parser {
    onopentag: (tag: Tag) => void;
    onclosetag: (name: string) => void;
    ontext: (text: string) => void;
    onerror: (error: Error) => void;
    write(text: string): Parser;
    close(): Parser;
  }
  /** Strict XML. */
  export function parser(strict: boolean): Parser;
}
