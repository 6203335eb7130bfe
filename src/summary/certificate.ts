/** What was found in the bytes of a cut file when they were read again, before they were handed out. */

/** How a file lies on the plate that it was made of. Lengths in the file's unit, degrees counter-clockwise. */
export interface CertifiedMatch {
  readonly turn: number;
  readonly mirrored: boolean;
  readonly scale: number;
  /** Largest distance of a hole from its place, and largest difference of a diameter. */
  readonly positionError: number;
  readonly diameterError: number;
  /** Holes of the plate that are not in the file, and of the file that are not the plate's. */
  readonly missing: number;
  readonly extra: number;
}

/** pass: the file is its plate. fail: it is not, or is not to be cut as it is. not proved: it has more holes than are matched. */
export type CertificateResult = "pass" | "fail" | "not proved";

/** What the reader measured. Lengths and areas in the file's unit, rounded to 1e-6 of it; 0,0 is that of the file. */
export interface CertifiedReading {
  /** Mark of the plate that it was made of. */
  readonly plate: string;
  /** Marks of the bases that it is for. */
  readonly bases: readonly string[];
  /** `$ACADVER`, and unit, as the file says them. */
  readonly version: string | null;
  readonly unit: string | null;
  /** Closed contours that are cut, outline included; round ones in it; others in it. */
  readonly contours: number;
  readonly holes: number;
  readonly openings: number;
  /** Of the outline: x0, y0, x1, y1; null where nothing is closed. */
  readonly extent: readonly [number, number, number, number] | null;
  /** Inside the outline, and less what is cut in it. */
  readonly area: number;
  readonly netArea: number;
  readonly cutLength: number;
  readonly pierces: number;
  /** null: it was laid on no plate. */
  readonly match: CertifiedMatch | null;
  readonly result: CertificateResult;
  /** Why it fails, a sentence each, and what else is to be said of it. */
  readonly stops: readonly string[];
  readonly looks: readonly string[];
}

/** The certificate of one cut file: its bytes by size and SHA-256, and what was read from them. */
export interface CutCertificate extends CertifiedReading {
  readonly kind: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  /** The template is held: the file is written by request, and is not to be cut. */
  readonly held: boolean;
}
