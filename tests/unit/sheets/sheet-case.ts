/** Sheet requests for tests, through the real pattern, plate and check stages. Invented data. */
import { runChecks, worstFirst } from "../../../src/checks/index.js";
import type { Base, Job } from "../../../src/job/model/job.js";
import { placeRods } from "../../../src/rods/index.js";
import type { SheetRequest } from "../../../src/sheets/index.js";
import { makePlate, measurePlate } from "../../../src/template/index.js";

/** What a request for this job and base says; `changes` replace its fields. Null when no plate can be made of them. */
export function trySheetCase(job: Job, base: Base, changes: Partial<SheetRequest> = {}): SheetRequest | null {
  const rods = placeRods(base);
  const plate = rods.ok ? makePlate(job, base, rods.value) : rods;
  if (!rods.ok || !plate.ok) return null;
  const context = { job, base, rods: rods.value, plate: plate.value };
  const rows = worstFirst(runChecks(context));
  return {
    ...context,
    measures: measurePlate(plate.value),
    rows,
    held: [],
    open: [],
    shared: null,
    sheetBases: [base.mark],
    weight: { value: 31.24, unit: "lb" },
    cutFiles: [
      { name: `${base.template.mark}-rev-${job.revision}-cut.dxf`, sha256: "0123456789abcdef".repeat(4) },
      { name: `${base.template.mark}-rev-${job.revision}-cut-r12.dxf`, sha256: "fedcba9876543210".repeat(4) },
    ],
    drillListName: null,
    sheetNumber: 1,
    sheetCount: 12,
    programVersion: "0.1.0",
    piece: null,
    ...changes,
  };
}

/** As `trySheetCase`, for a plate that can be made. */
export function sheetCase(job: Job, base: Base, changes: Partial<SheetRequest> = {}): SheetRequest {
  const request = trySheetCase(job, base, changes);
  if (request === null) throw new Error(`no plate can be made of ${base.mark}`);
  return request;
}
