/** What the setting sheet of a base is drawn from. */
import type { CheckedBase } from "../../checks/checked.js";
import type { SheetRequest } from "../request.js";

/** A checked base, and the program's version. */
export interface SettingRequest extends CheckedBase {
  readonly programVersion: string;
}

/** The same as the words and tables of a template's sheet want it. */
export function asSheetRequest(request: SettingRequest): SheetRequest {
  const { pieces: _pieces, ...checked } = request;
  const alone = {
    cutFiles: [],
    drillListName: null,
    sheetNumber: 1,
    sheetCount: 1,
    piece: null,
    sheetBases: [request.base.mark],
  };
  return { ...checked, ...alone };
}
