/** Sheets and scales of anchor-rod plans: one size for all sheets of a job, largest scale first. */
import type { Job } from "../../job/model/job.js";
import type { Unit } from "../../units/index.js";
import { type Scale, type SheetSize, scales, sheetSizes } from "../sheet-sizes.js";

/**
 * The size that the job chose, or the least that holds the panel of any plan; of a job that chose none, smallest first, from
 * ANSI B or A3 for one type and ANSI C or A2 for several, whose details need the room.
 */
export function planSheets({ unit, sheet, bases }: Pick<Job, "unit" | "sheet" | "bases">): readonly SheetSize[] {
  const sizes = sheetSizes(unit);
  if (sheet === null) return sizes.slice(bases.length > 1 ? LEAST_FOR_ANY : LEAST_FOR_ONE);
  const chosen = sizes.findIndex(({ name }) => name === sheet);
  return sizes.slice(Math.max(chosen, LEAST_FOR_ANY)).slice(0, 1);
}

const [LEAST_FOR_ONE, LEAST_FOR_ANY] = [1, 2];

/** The size of the plan's sheets where it is not the one that the job chose; null where it is. */
export function planSizeInstead(job: Pick<Job, "unit" | "sheet" | "bases">): string | null {
  const name = planSheets(job)[0]?.name ?? null;
  return job.sheet === null || name === job.sheet ? null : name;
}

/** Architects' scales in inches to the foot (common practice); ISO 5455. */
const PLAN_SCALES: Readonly<Record<Unit, readonly Scale[]>> = {
  in: [
    { name: `1/4" = 1'-0"`, factor: 1 / 48 },
    { name: `3/16" = 1'-0"`, factor: 1 / 64 },
    { name: `1/8" = 1'-0"`, factor: 1 / 96 },
    { name: `3/32" = 1'-0"`, factor: 1 / 128 },
    { name: `1/16" = 1'-0"`, factor: 1 / 192 },
  ],
  mm: [50, 100, 200, 500].map((ratio) => ({ name: `1:${ratio}`, factor: 1 / ratio })),
};

/** Scales of a plan, largest first. */
export function planScales(unit: Unit): readonly Scale[] {
  return PLAN_SCALES[unit];
}

/** Scales of an enlarged detail. */
export function detailScales(unit: Unit): readonly Scale[] {
  return scales(unit).slice(1);
}
