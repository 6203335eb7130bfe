/** A checked base as the page shows it: its plan in the room of the screen, its rows, its holes. */
import type { CheckedBase } from "../../checks/checked.js";
import { counted } from "../../checks/words.js";
import { drawOnScreen } from "../../sheets/on-screen.js";
import { documentType, drawingNumber, statusWords } from "../../sheets/status-words.js";
import { summarizeHole } from "../../summary/summarize.js";
import { figuresOf, type Said } from "./figures.js";
import { liveLines, uncheckedOf } from "./live-lines.js";
import type { LiveBaseView, Watch } from "./model.js";

/** `path`: of the base in the job file; `said`: what is written of it. */
export function viewOfBase(path: string, checked: CheckedBase, room: Watch["room"], said: Said): LiveBaseView {
  const { pieces: _pieces, ...base } = checked;
  const beside = { cutFiles: [], drillListName: null, sheetNumber: 1, sheetCount: 1, programVersion: "", piece: null };
  const plan = drawOnScreen({ ...base, ...beside, sheetBases: [base.base.mark] }, room);
  const holes = base.plate.holes.map((hole) => summarizeHole(hole, base.job.unit));
  const { weight } = base;
  return {
    figures: figuresOf(checked, plan, said),
    block: {
      documentType: documentType({ base: base.base, piece: null }),
      status: statusWords(base),
      drawingNumber: drawingNumber(base),
      weight: weight === null ? "" : `${Math.round(weight.value * 10) / 10} ${weight.unit}`,
    },
    ...{ path, plan, mark: base.base.mark, template: base.plate.mark, held: base.held, holes },
    title: `Template ${base.plate.mark}, view from top`,
    description: `For base ${base.base.mark}: ${counted(holes.length, "hole")}. Each hole can be reached by keyboard.`,
    lines: liveLines(base.rows, holes, base.job.unit),
    unchecked: uncheckedOf(base.rows),
  };
}
