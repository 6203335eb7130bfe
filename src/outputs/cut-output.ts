/** What every cut file shares, whichever entities it is written in: when it is made, its name, and that it is read back. */
import type { CheckedBase } from "../checks/checked.js";
import type { CutFileOptions, CutFlavour, Draws } from "../formats/cut-file.js";
import { cutFileLayers } from "../formats/cut-file.js";
import { compareCutFile } from "../formats/read-back.js";
import type { Job } from "../job/model/job.js";
import type { BaseOutput } from "./model.js";
import { makingStem } from "./names.js";

/** A flavour as an output: steel that is not held, or held where that is asked for. */
export function cutOutput<Kind extends string>(flavour: CutFlavour<Kind>): BaseOutput<Kind> {
  const { kind, title, ending, draws, write } = flavour;
  const options = ({ job }: CheckedBase): CutFileOptions => cutFileOptions(job, draws);
  return {
    ...{ scope: "base", kind, role: "cut", title, drawn: false },
    named: `MARK/TEMPLATE_rev-REVISION[_HELD][_NOT-RELEASED]_${ending}.dxf`,
    applies: ({ plate, held }, includeHeld) => plate.material === "steel" && (held.length === 0 || includeHeld),
    fileName: (checked) => `${makingStem(checked)}_${ending}.dxf`,
    write: (checked) => write(checked.plate, options(checked)),
    cut: {
      readBack: (bytes, checked) => compareCutFile(bytes, checked.plate, options(checked)),
      layers: (checked) => cutFileLayers(checked.plate, options(checked)),
    },
  };
}

function cutFileOptions({ unit, shop }: Job, draws: Draws): CutFileOptions {
  const { layers, origin } = shop.cutFile;
  return { unit, layers, origin, marks: shop.marking.how === "scribe", draws };
}
