/** A refusal of long work, for what a user can put right. */
import type { Finding } from "../../diagnostics/finding.js";

/** Thrown by work for what a user can put right: a sentence each. */
export class Refused extends Error {
  readonly why: readonly string[];
  /** What it comes of, where its places are known. */
  readonly findings: readonly Finding[];
  constructor(why: readonly string[], findings: readonly Finding[] = []) {
    super(why.join("\n"));
    this.why = why;
    this.findings = findings;
  }
}

/** What anything that was thrown says. */
export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
