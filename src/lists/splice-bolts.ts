/** Bolts of splice plates and their nuts, as they are ordered: in holes of standard size, drawn snug, they need no washers. */
import type { Density, SpliceBolt } from "../job/model/job.js";
import { kilogramsOf, weighBar, weighNut } from "../rods/detail/weights.js";
import type { BaseFacts, BoltedFacts } from "../summary/facts.js";
import { formatLength, type Unit } from "../units/index.js";
import { inches, type Length, millimetres, nanometres, toMillimetres } from "../units/length.js";

/** Bolts or nuts of one template, all of its mark together. */
export interface SplicePiece {
  readonly what: "bolt" | "nut";
  readonly words: string;
  /** The template or lower template. */
  readonly mark: string;
  readonly count: number;
  /** Of one; null where its nut is not tabulated. */
  readonly kilograms: number | null;
}

/** Beyond the nut, tolerances included, and the steps of lengths that are sold: common practice. */
const BEYOND: Readonly<Record<Unit, Length>> = { in: inches(0.25), mm: millimetres(6) };
const STEP: Readonly<Record<Unit, Length>> = { in: inches(0.25), mm: millimetres(5) };

/** Plates that are bolted, nut and what stands out beyond it, up to a length that is sold; null without the nut's height. */
export function boltLength({ nut }: SpliceBolt, grip: Length, unit: Unit): Length | null {
  if (nut.kind === "missing") return null;
  const least = grip + nut.value.height + BEYOND[unit];
  return nanometres(Math.ceil(least / STEP[unit]) * STEP[unit]);
}

/** Of bases in their order, each template once. */
export function splicePieces(
  facts: readonly Pick<BaseFacts, "bolted">[],
  unit: Unit,
  steel: Density,
): readonly SplicePiece[] {
  const bolted = new Map(facts.flatMap((each) => each.bolted.map((own) => [own.mark, own] as const)));
  return [...bolted.values()].flatMap((own) => [boltPiece(own, unit, steel), nutPiece(own, steel)]);
}

function boltPiece({ mark, bolt, grip, count }: BoltedFacts, unit: Unit, steel: Density): SplicePiece {
  const length = boltLength(bolt, grip, unit);
  const figure = length === null ? "length by shop" : formatLength(length, unit);
  const words = `${bolt.size} x ${figure} hex bolt for splice plates of ${mark}, grip ${formatLength(grip, unit)}`;
  const kilograms = length === null ? null : weighBar(bolt.diameter, length, steel) + headKilograms(bolt, steel);
  return { what: "bolt", words, mark, count, kilograms };
}

/** A head is as wide as its nut, and two thirds of the diameter high (ASME B18.2.1 and ISO 4014, from memory). */
function headKilograms({ nut, diameter }: SpliceBolt, steel: Density): number {
  if (nut.kind === "missing") return 0;
  const acrossCorners = toMillimetres(nut.value.acrossCorners);
  return kilogramsOf(((3 * Math.sqrt(3)) / 8) * acrossCorners ** 2 * ((2 / 3) * toMillimetres(diameter)), steel);
}

function nutPiece({ mark, bolt: { nut, size, diameter }, count }: BoltedFacts, steel: Density): SplicePiece {
  const words = `${size} hex nut for splice plates of ${mark}`;
  if (nut.kind === "missing") return { what: "nut", words, mark, count, kilograms: null };
  const acrossFlats = nanometres(Math.round((nut.value.acrossCorners * Math.sqrt(3)) / 2));
  return { what: "nut", words, mark, count, kilograms: weighNut(acrossFlats, nut.value.height, diameter, steel) };
}
