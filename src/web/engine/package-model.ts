/** A package as the page has it: one archive, what is in it and where, and what there is to say of it. */
import type { PackedPlace } from "../../formats/archive-writer.js";

/** A file of the archive. */
export interface PackedFile {
  readonly path: string;
  readonly kind: string;
  /** What it is, in a few words. */
  readonly title: string;
  readonly bytes: number;
  readonly place: PackedPlace;
}

/** One reader's part of it; `first`: what to open first. */
export interface PackedPart {
  /** With a slash at its end; "" for the top. */
  readonly folder: string;
  readonly who: string;
  readonly how: readonly string[];
  readonly first: string | null;
  readonly files: readonly PackedFile[];
}

/** A package that was made. */
export interface MadePackage {
  readonly name: string;
  readonly zip: Blob;
  readonly job: { readonly number: string; readonly revision: string; readonly status: string };
  readonly bases: number;
  readonly held: readonly { readonly mark: string; readonly reasons: readonly string[] }[];
  readonly layoutHeld: readonly string[];
  /** Questions that are open. */
  readonly open: number;
  /** Templates that open questions alone keep from being released. */
  readonly unreleased: readonly string[];
  /** Warnings, and where the numbers of questions go on from. */
  readonly said: readonly string[];
  readonly parts: readonly PackedPart[];
}
