/** Whether the size of sheet that a job chose has room for the sheets of its templates. */
import { checkAhead } from "../checks/checked.js";
import type { Finding, Place } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { type Job, jobRoot } from "../job/index.js";
import { SHEET_NAMES } from "../job/model/sheet-names.js";
import { sheetPlace } from "../outputs/names.js";
import type { Inputs } from "../readers/inputs.js";
import { findNode } from "../readers/source.js";
import { hasRoomOn, type SheetRequest } from "../sheets/index.js";
import type { ShapedBase } from "../template/index.js";

const MOST_MARKS = 8;

/** A fault that names the templates for which the chosen size is too small, and the least size that would do. */
export function sheetRoomFaults(job: Job, bases: readonly ShapedBase[], at: Place): readonly Finding[] {
  const { sheet, unit } = job;
  const names: readonly string[] = SHEET_NAMES[unit];
  if (sheet === null || sheet === names.at(-1)) return [];
  const larger = names.slice(names.indexOf(sheet) + 1);
  const requests = bases.map((shaped) => requestFor(job, shaped)).filter((request) => !hasRoomOn(request, sheet));
  if (requests.length === 0) return [];
  const least = larger.find((name) => requests.every((request) => hasRoomOn(request, name))) ?? names.at(-1);
  const marks = listed([...new Set(requests.map(({ plate }) => plate.mark))], MOST_MARKS);
  const message = `${sheet} has no room for what must stand on the sheets of ${marks}: rod holes of 2 mm on paper, dimensions, tables, fails and cautions; the least size that has is ${least}: write sheet: ${least}, or leave the key out`;
  return [{ code: "sheet-too-small", severity: "error", at, message }];
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
function requestFor(job: Job, shaped: ShapedBase): SheetRequest {
  const checked = checkAhead(job, shaped);
  const { number, count, bases } = sheetPlace(checked);
  const cutFiles = ["joined", "r12"].map((flavour) => ({
    name: `${checked.plate.mark}_rev-${job.revision}_${flavour}.dxf`,
    sha256: "0".repeat(64),
  }));
  return {
    ...checked,
    cutFiles: checked.held.length > 0 ? [] : cutFiles,
    drillListName: null,
    sheetNumber: number,
    sheetCount: count,
    sheetBases: bases,
    programVersion: "",
  };
}
