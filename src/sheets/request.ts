/** What a sheet is drawn from: the models of the earlier stages, and the few facts that only the pipeline knows. */
import type { CheckRow } from "../checks/model.js";
import type { Base, Job } from "../job/model/job.js";
import type { PlacedRod } from "../rods/model.js";
import type { Plate, PlateMeasures } from "../template/model.js";

/** A cut file as the sheet names it: its file name and the whole SHA-256 in hexadecimal, of which 12 digits are printed. */
export interface NamedFile {
  readonly name: string;
  readonly sha256: string;
}

/** Everything one sheet says. The order of `rows` does not matter: the sheet shows the worst first. */
export interface SheetRequest {
  readonly job: Job;
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly plate: Plate;
  readonly measures: PlateMeasures;
  readonly rows: readonly CheckRow[];
  /** Why the base is held, one sentence each; empty when it is not held. */
  readonly held: readonly string[];
  /** Weight of one template; null when its density is not known. */
  readonly weight: { readonly value: number; readonly unit: "lb" | "kg" } | null;
  /** Empty when no cut file is written (held, or plywood). */
  readonly cutFiles: readonly NamedFile[];
  /** Name of the drill list of a plywood template; null otherwise. */
  readonly drillListName: string | null;
  /** Sheet number and count, from 1. */
  readonly sheetNumber: number;
  readonly sheetCount: number;
  readonly programVersion: string;
}
