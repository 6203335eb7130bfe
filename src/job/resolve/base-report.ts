/** What resolving a base needs beside the base: the job's unit, editions and shop, and where faults go. */
import type { Finding } from "../../diagnostics/finding.js";
import type { Inputs } from "../../readers/inputs.js";
import type { Unit } from "../../units/index.js";
import { formatWithUnit } from "../../units/index.js";
import type { DocumentPath, SourceDocument } from "../document.js";
import { faultAt } from "../document.js";
import type { Editions } from "../model/job.js";
import type { ReadShop } from "./shop.js";

/** Faults of one base, with their places. */
export class BaseReport {
  readonly findings: Finding[] = [];

  constructor(
    readonly document: SourceDocument,
    readonly unit: Unit,
    readonly editions: Editions,
    readonly grades: ReadShop["grades"],
    /** Files that a base may name. */
    readonly files: Inputs["files"],
  ) {}

  /** Adds an error at a path of the base. */
  fault(path: DocumentPath, code: string, message: string, hint?: string): void {
    this.findings.push(faultAt(this.document, path, code, message, hint));
  }

  /** A length in the job's unit. */
  show(length: number): string {
    return formatWithUnit(length, this.unit);
  }
}
