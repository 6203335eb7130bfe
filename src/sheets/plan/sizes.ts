/** Sheets and scales of anchor-rod plans: one size for all sheets of a job, largest scale first. */
import type { Job } from "../../job/model/job.js";
import type { Unit } from "../../units/index.js";
import { type Scale, type SheetSize, scales, sheetSizes } from "../sheet-sizes.js";

/** The size that the job chose; else smallest first, from ANSI B or A3 for one type and ANSI C or A2 for several, whose details need the room. */
export function planSheets({ unit, bases, sheet }: Pick<Job, "unit" | "bases" | "sheet">): readonly SheetSize[] {
  const all = sheetSizes(unit);
  return sheet === null ? all.slice(bases.length > 1 ? 2 : 1) : all.filter(({ name }) => name === sheet);
}

/** Architects' scales in inches to the foot, engineers' ones in feet to the inch below them (common practice); ISO 5455. */
const PLAN_SCALES: Readonly<Record<Unit, readonly Scale[]>> = {
  in: [
    { name: `1/2" = 1'-0"`, factor: 1 / 24 },
    { name: `3/8" = 1'-0"`, factor: 1 / 32 },
    { name: `1/4" = 1'-0"`, factor: 1 / 48 },
    { name: `3/16" = 1'-0"`, factor: 1 / 64 },
    { name: `1/8" = 1'-0"`, factor: 1 / 96 },
    { name: `3/32" = 1'-0"`, factor: 1 / 128 },
    { name: `1/16" = 1'-0"`, factor: 1 / 192 },
    { name: `1" = 20'-0"`, factor: 1 / 240 },
    { name: `1" = 30'-0"`, factor: 1 / 360 },
  ],
  mm: [20, 50, 100, 200, 500].map((ratio) => ({ name: `1:${ratio}`, factor: 1 / ratio })),
};

/** Scales of a plan, largest first. */
export function planScales(unit: Unit): readonly Scale[] {
  return PLAN_SCALES[unit];
}

/** Scales of an enlarged detail. */
export function detailScales(unit: Unit): readonly Scale[] {
  return scales(unit).slice(1);
}
