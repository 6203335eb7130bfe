/** Whether the size of sheet that a job chose has room for its sheets: each is drawn once, as long as what stands on it is the same. */
import { checkBase } from "../../checks/checked.js";
import type { Finding } from "../../diagnostics/finding.js";
import type { Job, Memory } from "../../job/index.js";
import { SHEET_NAMES, type SheetName } from "../../job/model/sheet-names.js";
import type { Inputs } from "../../readers/inputs.js";
import { hasRoomOn } from "../../sheets/index.js";
import type { ShapedBase, SharedTemplate } from "../../template/index.js";
import { baseKey } from "../base-key.js";
import type { LaidOutJob } from "../number-questions.js";
import { type HasSheetRoom, placeOfSheetKey, requestFor, sheetRoomFaults } from "../sheet-room.js";

/** Stops after each sheet that had to be drawn; ends with the faults. */
export function* sheetFaults(laid: LaidOutJob, inputs: Inputs, memory: Memory): Generator<void, readonly Finding[]> {
  const { job } = laid;
  if (job.sheet === null) return [];
  const keyOf = (shaped: ShapedBase, name: string) => `${name} ${sheetKey(job, shaped, memory)}`;
  const hasRoom: HasSheetRoom = (_job, shaped, name) =>
    memory.recall(ROOM, keyOf(shaped, name), () => hasRoomOn(requestFor(checkBase(job, shaped)), name));
  let lacking = laid.bases;
  const names: readonly SheetName[] = SHEET_NAMES[job.unit];
  for (const name of names.slice(names.indexOf(job.sheet))) {
    for (const shaped of lacking) {
      if (memory.known(ROOM, keyOf(shaped, name)) !== undefined) continue;
      hasRoom(job, shaped, name);
      yield;
    }
    const without = lacking.filter((shaped) => !hasRoom(job, shaped, name));
    if (without.length === 0) break;
    if (name === job.sheet) lacking = without;
  }
  return sheetRoomFaults(laid, placeOfSheetKey(inputs), hasRoom);
}

const ROOM = "sheet room";

/** All that a sheet is drawn from: the head of its job, its base, the numbers of its questions, and who shares its template. */
function sheetKey(job: Job, { base, shared }: ShapedBase, memory: Memory): string {
  const head = memory.nameOf(job, ({ number, title, date, drawing, revisions, drawnBy, owner, tolerances, revision }) =>
    JSON.stringify([number, title, date, drawing, revisions, drawnBy, owner, tolerances, revision]),
  );
  const own = JSON.stringify([job.numbers?.get(base.mark), shared === undefined ? null : saidOf(shared)]);
  return `${baseKey(job, base, memory)} ${head} ${memory.short(own)}`;
}

function saidOf({ held, open, sheets }: SharedTemplate) {
  return [held.map(({ marks, reasons }) => [[...marks], reasons]), open, sheets];
}
