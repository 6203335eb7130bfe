/** What every cut file shares, whichever entities it is written in: when it is made, its name, and that it is read back. */
import type { CutFileOptions, CutFlavour, Draws } from "../formats/cut-file.js";
import { cutFileLayers } from "../formats/cut-file.js";
import { compareCutFile } from "../formats/read-back.js";
import type { Job } from "../job/model/job.js";
import { certifyCutFile } from "../proof/index.js";
import { readDrawing } from "../readers/dxf-drawing.js";
import type { PieceFile } from "./model.js";
import { MAKING_PATTERN, makingPath } from "./names.js";

/** A flavour as an output: steel that is not held, or held where that is asked for. */
export function cutOutput<Kind extends string>(flavour: CutFlavour<Kind>): PieceFile<Kind> {
  const { kind, title, ending, draws, write } = flavour;
  const options = ({ job }: { readonly job: Job }): CutFileOptions => cutFileOptions(job, draws);
  return {
    ...{ scope: "piece", kind, role: "cut", title, drawn: false },
    named: `${MAKING_PATTERN}.dxf, or ${ending}/..._${ending}.dxf`,
    applies: ({ held }, { plate }, includeHeld) => plate.material === "steel" && (held.length === 0 || includeHeld),
    path: (checked, piece) =>
      checked.job.shop.cutFile.flavour === ending
        ? `${makingPath(checked, piece)}.dxf`
        : `${makingPath(checked, piece, ending)}_${ending}.dxf`,
    write: (checked, { plate }) => write(plate, options(checked)),
    cut: {
      readBack: (bytes, path, checked, { plate, measures }) => {
        const drawing = readDrawing(bytes);
        const differences = compareCutFile(drawing, plate, options(checked));
        const { job, base } = checked;
        return { differences, reading: certifyCutFile(drawing, path, { job, base, plate, measures }) };
      },
      layers: (checked, { plate }) => cutFileLayers(plate, options(checked)),
    },
  };
}

function cutFileOptions({ unit, shop }: Job, draws: Draws): CutFileOptions {
  const { layers, origin } = shop.cutFile;
  return { unit, layers, origin, marks: shop.marking.how === "scribe", draws };
}
