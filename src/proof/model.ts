/** What is proved of a cut file, and the thresholds by which it is matched with the job. Millimetres unless said. */
import type { Contour, Extent, Point } from "../geometry/vocabulary.js";
import type { CutFileFinding, CutFileSeverity } from "../readers/dxf.js";
import type { SignatureState } from "../signature/index.js";

/** A hole farther than this from its place is told: well above the rounding of a file to 3 decimals of an inch. */
export const POSITION_MM = 0.05;

/** A diameter farther than this from the plate's is told. */
export const DIAMETER_MM = 0.05;

/** An outline or opening that strays farther than this from the plate's is told. */
export const CONTOUR_MM = 0.1;

/** A hole farther than this from every hole of the plate (one inch) is none of its holes. */
export const CAPTURE_MM = 25.4;

/** A turn of the file smaller than this is none, in degrees. */
export const TURN_DEGREES = 0.01;

/** Sizes that a wrong unit makes: inches for millimetres, feet for inches, and the other way round. */
export const UNIT_RATIOS = [1, 25.4, 1 / 25.4, 12, 1 / 12] as const;

/** More holes than this are not matched: a plate has at most 200 rods. */
export const MOST_HOLES = 500;

/** Which of the two plates of a base is meant. */
export type TargetRole = "template" | "base plate";

/** A round hole of a known plate, in millimetres. */
export interface TargetHole {
  readonly tag: string;
  readonly at: Point;
  readonly diameter: number;
  /** drill: a mark in the cut file, which must not be cut. */
  readonly made: "cut" | "drill";
}

/** A plate of the job that a file may be drawn for, in the base's own axes. */
export interface KnownPlate {
  readonly role: TargetRole;
  /** Mark of the template, or of the base whose base plate it is. */
  readonly mark: string;
  readonly base: string;
  /** Marks of all bases that it serves; of a base plate that of its own. */
  readonly bases: readonly string[];
  readonly holes: readonly TargetHole[];
  readonly outline: Contour | null;
  /** Box of the outline, where that is all that is known of it. */
  readonly box?: Extent;
  /** Openings that are not round. */
  readonly openings: readonly Contour[];
}

/** From plate to file: mirrored first (x to -x), then turned counter-clockwise, then moved. No scale. */
export interface Pose {
  /** Degrees from 0 up to 360. */
  readonly turn: number;
  readonly mirrored: boolean;
  readonly dx: number;
  readonly dy: number;
}

/** How a file lies on a plate of the job. Lengths in the file's unit, or the job's where the file names none. */
export interface FileMatch {
  readonly mark: string;
  readonly base: string;
  /** Marks of all bases that the plate serves; `base` is the first of them. */
  readonly bases: readonly string[];
  readonly role: TargetRole;
  readonly turn: number;
  readonly mirrored: boolean;
  /** Size of the file to that of the plate, units taken as the file names them. */
  readonly scale: number;
  /** Largest distance of a hole from its place, and largest difference of a diameter, once the scale is taken out. */
  readonly positionError: number;
  readonly diameterError: number;
  readonly missing: number;
  readonly extra: number;
}

/** What a file of a package's folder is, by its summary: the one that was checked, or not. */
export type PackageFileState = "as checked" | "changed" | "missing" | "not listed" | "package of its own";

/** One file of a package's folder. `severity` is null for one that is as it was checked. */
export interface PackageFile {
  /** In the package, with forward slashes. */
  readonly path: string;
  readonly state: PackageFileState;
  readonly severity: CutFileSeverity | null;
  /** What is to be said of it; "" where it is as it was checked. */
  readonly message: string;
}

/** A package's folder against its summary, as `proof --json` prints it. */
export interface ProvedPackage {
  readonly path: string;
  /** Whether its summary.json, which no file lists, is sealed and whole; none: of a program that did not seal it. */
  readonly seal: "whole" | "changed" | "none";
  readonly job: { readonly number: string; readonly revision: string; readonly status: string };
  readonly files: readonly PackageFile[];
  /** Who signed it, and whether that still stands. */
  readonly signatures: readonly SignatureState[];
}

/** One file, as `proof --json` prints it. Lengths in the file's unit. */
export interface ProvedFile {
  readonly path: string;
  readonly version: string | null;
  readonly unit: string | null;
  readonly layers: readonly string[];
  readonly findings: readonly CutFileFinding[];
  readonly outline: { readonly extent: readonly [number, number, number, number]; readonly area: number } | null;
  readonly holes: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly openings: readonly { readonly extent: readonly [number, number, number, number]; readonly area: number }[];
  readonly cutLength: number;
  readonly pierces: number;
  readonly netArea: number;
  /** Null without a job, or where no plate of the job is like it. */
  readonly match: FileMatch | null;
}
