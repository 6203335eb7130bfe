/** The part of pdfkit that the writer of sheets uses. */

/** An object of the file that others refer to. */
export interface PdfObject {
  readonly data: Record<string, unknown>;
  /** Its contents, if it has any. */
  buffer: readonly Uint8Array[];
  /** Writes it into the file. */
  finalize(): void;
}

/** A font as pdfkit holds it; `encode` gives hexadecimal glyph numbers, and takes the glyphs into the file. */
export interface PdfFont {
  readonly id: string;
  encode(text: string, features: readonly string[]): readonly [readonly string[], unknown];
  ref(): unknown;
}

/** A list of bookmarks, or one of them. */
export interface PdfOutline {
  addItem(
    title: string,
    options: { readonly pageNumber: number; readonly fit: boolean; readonly expanded: boolean },
  ): PdfOutline;
}

/** The part of a pdfkit document that is used here. */
export interface PdfDocument {
  readonly _root: PdfObject & { readonly data: { readonly Pages: { readonly data: { Kids: unknown[] } } } };
  readonly _font: PdfFont;
  readonly page: {
    readonly dictionary: unknown;
    readonly fonts: Record<string, unknown>;
    readonly content: PdfObject;
  };
  readonly outline: PdfOutline;
  ref(data: Record<string, unknown>): PdfObject;
  font(bytes: Uint8Array): unknown;
  addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): unknown;
  end(): void;
  /** Called for every piece of the file; null at its end. */
  push(piece: Uint8Array | null): boolean;
}

/** `PDFDocument` of pdfkit. */
export type PdfMaker = new (options: Readonly<Record<string, unknown>>) => PdfDocument;
