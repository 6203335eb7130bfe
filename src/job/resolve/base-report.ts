/** What resolving a base needs beside the base: the job's unit, editions and shop, and where faults go. */
import type { Finding } from "../../diagnostics/finding.js";
import type { Inputs } from "../../readers/inputs.js";
import type { Unit } from "../../units/index.js";
import { formatWithUnit } from "../../units/index.js";
import type { DocumentPath, SourceDocument } from "../document.js";
import { faultAt } from "../document.js";
import type { Editions, Input } from "../model/job.js";
import { optional } from "../model/job.js";
import type { Vocabulary } from "../model/vocabulary.js";
import { giverOf } from "./origins.js";
import type { ReadShop } from "./shop.js";

/** What a base is read with, beside its own document. */
export interface BaseSources {
  readonly unit: Unit;
  readonly editions: Editions;
  /** Grades that the shop declares; null where the shop is not known. */
  readonly grades: ReadShop["grades"] | null;
  /** Files that a base may name. */
  readonly files: Inputs["files"];
  readonly vocabulary: Vocabulary;
}

/** Collects the faults of one base, with their places. */
export class BaseReport {
  readonly findings: Finding[] = [];
  readonly unit: Unit;
  readonly editions: Editions;
  readonly grades: ReadShop["grades"];
  readonly files: Inputs["files"];
  readonly vocabulary: Vocabulary;

  constructor(
    readonly document: SourceDocument,
    { unit, editions, grades, files, vocabulary }: BaseSources,
  ) {
    this.unit = unit;
    this.editions = editions;
    this.grades = grades ?? [];
    this.files = files;
    this.vocabulary = vocabulary;
  }

  /** Adds an error at a path of the base. */
  fault(path: DocumentPath, code: string, message: string, hint?: string): void {
    this.findings.push(faultAt(this.document, path, code, message, hint));
  }

  /** Adds a warning at a path of the base: it is used as read. */
  doubt(path: DocumentPath, code: string, message: string, hint: string): void {
    this.findings.push({ ...faultAt(this.document, path, code, message, hint), severity: "warning" });
  }

  /** Who gave the value at a path of the base: "job" for the base itself, or `default`, `kind heavy`, `note 2`. */
  from(path: DocumentPath): string {
    return giverOf(this.document.root, path) ?? "job";
  }

  /** The value at a path of the base with who gave it, or what is missing: `key` where the path does not name it. */
  optional<T>(value: T | undefined, path: DocumentPath, why: string, key = path.join(".")): Input<T> {
    return optional(value, key, why, this.from(path));
  }

  /** A length in the job's unit. */
  show(length: number): string {
    return formatWithUnit(length, this.unit);
  }
}
