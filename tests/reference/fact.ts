/** Published statements that are no tables of sizes. */
import type { Confidence, Sourced } from "../../src/standards/model.js";

/** A statement of a publication: value in words, numbers as printed. */
export interface Fact extends Sourced {
  readonly topic: string;
  readonly item: string;
  readonly value: string;
}

/** A fact from its columns. */
export function fact(
  topic: string,
  item: string,
  value: string,
  source: string,
  confidence: Confidence,
  note = "",
): Fact {
  return { topic, item, value, source, confidence, note };
}
