/** What a sheet is drawn from: the checked base, and the few facts that only the pipeline knows. */
import type { CheckedBase } from "../checks/checked.js";
import type { CheckRow } from "../checks/model.js";
import type { PieceRole } from "../template/index.js";

/** A cut file as the sheet names it: its file name and the whole SHA-256 in hexadecimal, of which 12 digits are printed. */
export interface NamedFile {
  readonly name: string;
  readonly sha256: string;
  /** Names of its layers by what is done with them; absent for a file that is not cut by. */
  readonly layers?: LayersByUse | undefined;
}

/** Layers that are cut, and those that are scribed or punched. */
export interface LayersByUse {
  readonly cut: readonly string[];
  readonly mark: readonly string[];
}

/** Everything one sheet says. */
export interface SheetRequest extends Omit<CheckedBase, "pieces"> {
  /** Empty when no cut file is written (held, or plywood). */
  readonly cutFiles: readonly NamedFile[];
  /** Name of the drill list of a plywood template; null otherwise. */
  readonly drillListName: string | null;
  /** Sheet number and count, from 1. */
  readonly sheetNumber: number;
  readonly sheetCount: number;
  /** Marks of the bases that this sheet is for: those of its template that are alike in all that it says. */
  readonly sheetBases: readonly string[];
  readonly programVersion: string;
  /** What piece of a template it shows; null: the template itself. */
  readonly piece: SheetPiece | null;
}

/** A piece that has a sheet of its own, in axes of its own. */
export interface SheetPiece {
  readonly role: Exclude<PieceRole, "template">;
  /** Mark of the template that it is a part of, or goes with. */
  readonly of: string;
  /** What it is and how it is put together, in sentences. */
  readonly notes: readonly string[];
}

/** True of a segment or a splice plate: its origin is the lower left of its own box. */
export function isPart(piece: SheetPiece | null | undefined): boolean {
  return piece?.role === "segment" || piece?.role === "splice plate";
}

/** What the origin of a plate's axes is called: the working point, or the lower left corner of a part. */
export function originName(piece: SheetPiece | null): string {
  return isPart(piece) ? "0,0" : "W.P.";
}

/** A request with its ledger rows put together in lines, worst first. */
export interface Prepared extends SheetRequest {
  readonly lines: readonly CheckLine[];
}

/** Rows of one rule that agree in all but their subject are one line. */
export interface CheckLine {
  readonly row: CheckRow;
  readonly subjects: readonly string[];
}
