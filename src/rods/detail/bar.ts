/** How a rod is threaded, on which bar, and how the bar is cut. */
import type { Job, Rod } from "../../job/model/job.js";
import type { Input } from "../../job/model/values.js";
import { given, missing } from "../../job/model/values.js";
import { findThreadInSeries } from "../../standards/index.js";
import { type Length, NM_PER_INCH, nanometres, type Unit } from "../../units/length.js";

/** What saw and threader are set to. */
export interface RodBar {
  readonly threading: Input<"rolled" | "cut">;
  /** Diameter of the bar: of the pitch of a rolled thread, of the full size of a cut one. */
  readonly bar: Input<Length>;
  readonly separation: Input<"sheared" | "sawn">;
}

/** By the job where it says, else by the shop. A rod too large to be rolled or cut has its threads cut all the same: a rule says so. */
export function barOf({ shop }: Pick<Job, "shop">, rod: Rod): RodBar {
  const { rolledUpTo, shearedUpTo } = shop.rodShop.making;
  const threading =
    rod.threading.kind === "given"
      ? rod.threading
      : given(rod.diameter <= rolledUpTo.value ? ("rolled" as const) : ("cut" as const), rolledUpTo.from);
  const bar = threading.value === "cut" ? given(rod.diameter, "full size of the rod") : pitchDiameter(rod);
  if (bar.kind === "missing") return { threading, bar, separation: bar };
  const separation = bar.value <= shearedUpTo.value ? ("sheared" as const) : ("sawn" as const);
  return { threading, bar, separation: given(separation, shearedUpTo.from) };
}

/** Pitch of the rod's thread. */
export function pitchOf({ thread, diameter }: Pick<Rod, "thread" | "diameter">): Length | null {
  const found = findThreadInSeries(thread, diameter);
  if (!found.found) return null;
  const { pitch, threadsPerInch } = found.row;
  if (pitch !== null) return pitch;
  return threadsPerInch === null ? null : nanometres(Math.round(NM_PER_INCH / threadsPerInch));
}

/** Three eighths of the height of the sharp thread, taken off on both sides: 3/4 x cos 30 x pitch (ASME B1.1, ISO 724). */
const PITCH_DEPTH = (0.75 * Math.sqrt(3)) / 2;

function pitchDiameter(rod: Rod): Input<Length> {
  const pitch = pitchOf(rod);
  if (pitch === null) return missing("rods.thread", `no pitch of thread ${rod.size} ${rod.thread} is kept`);
  const value = nanometres(Math.round(rod.diameter - PITCH_DEPTH * pitch));
  return given(value, "basic pitch diameter, d - 0.6495 p");
}

/** A size as orders print it: that of an inch rod with its unit in a job in millimetres. */
export function sizeWords({ size, thread }: Pick<Rod, "size" | "thread">, unit: Unit): string {
  return unit === "mm" && thread !== "metric coarse" ? `${size} in` : size;
}

/** `1-1/4-7 UNC-2A`, `M30x3.5-6g`; without what is not known. */
export function threadCallout({ size, diameter, thread, threadClass }: Rod): string {
  const found = findThreadInSeries(thread, diameter);
  const ending = threadClass.kind === "given" ? `-${threadClass.value}` : "";
  if (!found.found) return `${size}${ending}`;
  const { pitch, threadsPerInch } = found.row;
  if (pitch !== null) return `${size}x${pitch / 1e6}${ending}`;
  return `${size}-${threadsPerInch} ${thread}${ending}`;
}
