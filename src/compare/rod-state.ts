/** From the bases of a summary to the states of their rods. */
import type { SummaryBottom, SummaryEndPlate, SummaryHardware, SummaryMadeRod, SummaryRods } from "../summary/model.js";
import type { Unit } from "../units/length.js";
import { NM_PER_UNIT } from "../units/length.js";
import type { MadeState, RodState } from "./model.js";

/** A base of a summary: its mark and its rods. */
interface RodBase {
  readonly mark: string;
  readonly rods?: readonly SummaryRods[];
}

/** The rods of all bases in their order, in nanometres; null where one does not list its rods. */
export function makeRodStates(bases: readonly RodBase[], unit: Unit): readonly RodState[] | null {
  const states: RodState[] = [];
  for (const { mark, rods } of bases) {
    if (rods === undefined) return null;
    for (const each of rods) states.push(rodState(mark, each, unit));
  }
  return states;
}

function rodState(base: string, rods: SummaryRods, unit: Unit): RodState {
  const nm = (length: number): number => Math.round(length * NM_PER_UNIT[unit]);
  const known = (length: number | null): number | null => (length === null ? null : nm(length));
  const { group, total, size, thread, finish } = rods;
  const grade = rods.weldable === undefined || rods.grade === null ? rods.grade : `${rods.grade} ${rods.weldable}`;
  return {
    ...{ base, group, total, size, thread, grade, finish },
    diameter: nm(rods.diameter),
    projection: known(rods.projection),
    embedment: known(rods.embedment),
    length: known(rods.length),
    threadLength: known(rods.threadLength),
    bottom: rods.bottom === null ? null : bottomState(rods.bottom, nm),
    made: rods.made === undefined ? null : madeState(rods.made, known),
  };
}

function madeState(made: SummaryMadeRod, known: (length: number | null) => number | null): MadeState {
  const { threadClass, threading, zincProcess } = made;
  return {
    ...{ threadClass, threading, zincProcess },
    hardware: hardwareWords(made.hardware),
    cutLength: known(made.cutLength),
    bottomThread: known(made.bottomThread),
  };
}

/** `1 heavy hex nut on base plate, 1 levelling; 1 washer on base plate, 1 levelling`. */
function hardwareWords({ nut, nuts, washers }: SummaryHardware): string {
  const kind = /\b(?:heavy )?hex nut\b/.exec(nut ?? "")?.[0] ?? "nut";
  const template = nuts.template === 0 ? "" : `, ${nuts.template} for the template`;
  const washed = `${washers.basePlate} washer on base plate, ${washers.levelling} levelling`;
  return `${nuts.basePlate} ${kind} on base plate, ${nuts.levelling} levelling${template}; ${washed}`;
}

function bottomState(bottom: SummaryBottom, nm: (length: number) => number): SummaryBottom {
  switch (bottom.kind) {
    case "straight":
      return bottom;
    case "nut":
      return bottom.washer === undefined ? bottom : { ...bottom, washer: endPlateState(bottom.washer, nm) };
    case "plate":
      return { ...bottom, ...endPlateState(bottom, nm) };
    case "hook": {
      const { radius } = bottom;
      const state = { ...bottom, reach: nm(bottom.reach) };
      return radius === undefined ? state : { ...state, radius: nm(radius) };
    }
    case "swedged":
      return { ...bottom, length: nm(bottom.length) };
  }
}

function endPlateState({ shape, size, thickness }: SummaryEndPlate, nm: (length: number) => number): SummaryEndPlate {
  return { shape, size: nm(size), thickness: nm(thickness) };
}
