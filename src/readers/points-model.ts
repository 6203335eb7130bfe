/** A surveyor's file of points as it was read: exact coordinates, and how it was told what is what. */
import type { SurveyUnit } from "../units/index.js";
import type { Length } from "../units/length.js";

/** PNEZD: northing before easting. PENZD: easting before northing. */
export type PointOrder = "PNEZD" | "PENZD";

/** Every order that a file may be told to have. */
export const POINT_ORDERS = ["PNEZD", "PENZD"] as const satisfies readonly PointOrder[];

/** One point as written. Lines count from 1. */
export interface SurveyedPoint {
  readonly name: string;
  readonly northing: Length;
  readonly easting: Length;
  /** null: the cell is empty or there is none. */
  readonly elevation: Length | null;
  readonly description: string;
  readonly line: number;
}

/** Something that was told, and by what: an option, the file's name, its heading, or the job. */
export interface Told<T> {
  readonly value: T;
  readonly by: "option" | "file name" | "heading" | "job";
}

/** A file of points in the file's order; coordinates and elevations are in nanometres, whatever unit was told. */
export interface PointsFile {
  readonly file: string;
  /** Of its bytes, 64 hexadecimal digits; absent where they are not at hand. */
  readonly sha256?: string;
  readonly order: Told<PointOrder>;
  readonly unit: Told<SurveyUnit>;
  readonly headed: boolean;
  readonly points: readonly SurveyedPoint[];
}

/** What the shell was told, and what the job sets out by. */
export interface PointsOptions {
  readonly unit: SurveyUnit | null;
  readonly order: PointOrder | null;
  readonly jobOrder: PointOrder | null;
}
