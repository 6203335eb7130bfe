/** Whether the size of sheet that a job chose has room for the sheets of its templates and of its plan. */
import type { CheckedBase } from "../checks/checked.js";
import { checkAhead } from "../checks/checked.js";
import { openQuestionsOf } from "../checks/release.js";
import type { Finding, Place } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { type Job, jobRoot } from "../job/index.js";
import { SHEET_NAMES, type SheetName } from "../job/model/sheet-names.js";
import { makingPath, nameIn, sheetPlace } from "../outputs/names.js";
import type { Inputs } from "../readers/inputs.js";
import { findNode } from "../readers/source.js";
import { hasRoomOn, type SheetRequest } from "../sheets/index.js";
import type { ShapedBase } from "../template/index.js";
import type { LaidOutJob } from "./number-questions.js";
import { type NoRoom, planWithoutRoom } from "./plan-sheet-room.js";

const MOST_MARKS = 8;

/** True where paper of this name has room for the sheet of a base. */
export type HasSheetRoom = (job: Job, shaped: ShapedBase, name: SheetName) => boolean;

const drawnAhead: HasSheetRoom = (job, shaped, name) => hasRoomOn(requestFor(checkAhead(job, shaped)), name);

/** A fault for the templates' sheets and one for the plan's where the chosen size is too small; both name the least size that serves all. */
export function sheetRoomFaults(
  { job, bases, plan, layout }: LaidOutJob,
  at: Place,
  hasRoom: HasSheetRoom = drawnAhead,
): readonly Finding[] {
  const { sheet, unit } = job;
  const names: readonly SheetName[] = SHEET_NAMES[unit];
  const largest = names.at(-1);
  if (sheet === null || largest === undefined || sheet === largest) return [];
  const larger = names.slice(names.indexOf(sheet) + 1);
  const layoutOpen = plan === null ? [] : openQuestionsOf("", layout);
  const lacking = [
    templatesWithoutRoom(job, bases, sheet, hasRoom),
    planWithoutRoom(job, plan, larger, layoutOpen),
  ].filter((each) => each !== null);
  const least = larger.find((name) => lacking.every(({ hasRoomOn }) => hasRoomOn(name))) ?? largest;
  return lacking.map(({ words }): Finding => {
    const message = `${sheet} has no room for ${words}; the least size that has is ${least}: write sheet: ${least}, or leave the key out`;
    return { code: "sheet-too-small", severity: "error", at, message };
  });
}

function templatesWithoutRoom(
  job: Job,
  bases: readonly ShapedBase[],
  sheet: SheetName,
  hasRoom: HasSheetRoom,
): NoRoom | null {
  const lacking = bases.filter((shaped) => !hasRoom(job, shaped, sheet));
  if (lacking.length === 0) return null;
  const marks = listed([...new Set(lacking.map(({ base }) => base.template.mark))], MOST_MARKS);
  return {
    words: `what must stand on the sheets of ${marks}: rod holes of 2 mm on paper, dimensions, tables, fails and cautions`,
    hasRoomOn: (name) => lacking.every((shaped) => hasRoom(job, shaped, name)),
  };
}

/** Where the job names its size of sheets. */
export function placeOfSheetKey(inputs: Inputs): Place {
  const root = jobRoot(inputs);
  const node = root?.ok ? findNode(root.value, "sheet") : undefined;
  return node === undefined
    ? { file: inputs.job, line: 1, column: 1, path: "sheet" }
    : { ...node.place, path: "sheet" };
}

/** As its sheet will be asked for, with files to cut by of a usual length of name. */
export function requestFor(checked: CheckedBase): SheetRequest {
  const { number, count, bases } = sheetPlace(checked);
  const name = nameIn(makingPath(checked, checked));
  const cutFiles = ["", "_polyline"].map((ending) => ({ name: `${name}${ending}.dxf`, sha256: "0".repeat(64) }));
  return {
    ...checked,
    cutFiles: checked.held.length > 0 ? [] : cutFiles,
    drillListName: null,
    sheetNumber: number,
    sheetCount: count,
    sheetBases: bases,
    programVersion: "",
    piece: null,
  };
}
