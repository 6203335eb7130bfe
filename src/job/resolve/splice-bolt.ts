/** Bolts of splice plates: a size as written, or the one that is usual. */
import { findBoltHole } from "../../standards/index.js";
import type { Unit } from "../../units/index.js";
import { improperFraction } from "../../units/index.js";
import type { Given, SpliceBolt } from "../model/job.js";
import { given } from "../model/job.js";
import { findNut, isMetric, readThread } from "./lookups.js";

type Reading = { readonly ok: true; readonly value: SpliceBolt } | { readonly ok: false; readonly message: string };

/** The bolt of a size as written; a bare number is in `unit`. */
export function readSpliceBolt(written: string, unit: Unit): Reading {
  const improper = improperFraction(written);
  if (improper !== null) return { ok: false, message: `"${written}" ${improper}` };
  const read = readThread(written, undefined, unit);
  if (!read.ok) return { ok: false, message: `"${written}" is no size of a bolt; allowed is one as 1/2, 5/8 or M12` };
  const { size, diameter, series } = read.thread;
  const rod = { size, diameter, thread: series };
  const hole = findBoltHole(isMetric(rod) ? "metric" : "inch", diameter);
  if (!hole.found)
    return { ok: false, message: `no hole is kept for a bolt ${size}; nearest: ${hole.nearest.join(", ")}` };
  const from = `${hole.edition} ${hole.clause}`;
  return { ok: true, value: { size, diameter, hole: given(hole.row.hole, from), nut: findNut(rod, "hex", "") } };
}

/** Of a size that shops have, whose holes most tables cut in plate of templates: common practice. */
const USUAL: Readonly<Record<Unit, string>> = { in: "5/8", mm: "M16" };

/** What is taken where neither job nor shop names a bolt. */
export function usualBolt(unit: Unit): Given<SpliceBolt> {
  const read = readSpliceBolt(USUAL[unit], unit);
  if (!read.ok) throw new RangeError(read.message);
  return given(read.value, "common practice");
}
