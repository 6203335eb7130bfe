/** The sheets of one base as the package has them, to be printed at true scale or kept. */
import { newLeanDocument } from "../../formats/lean-document.js";
import { build } from "../../tasks/build.js";
import { inputsOf } from "./inputs.js";
import { Refused } from "./refused.js";
import type { PrintedSheet, TaskWork } from "./task-model.js";

/** Draws the sheets of the base with this mark. */
export const drawPrints: TaskWork<"print"> = async ({ files, date, version, mark }, tell) => {
  const inputs = await inputsOf(files);
  const made = build(inputs, { date, version, document: newLeanDocument() });
  if (made.job === null) throw new Refused(made.findings.map(({ message }) => message));
  // a sheet of several bases is handed out with the first of them
  const drawn = new Map<string, Uint8Array>();
  let done = 0;
  for (const base of made.bases) {
    for (const { kind, path, bytes } of base.files) if (SHEETS.has(kind)) drawn.set(path, bytes);
    done += 1;
    tell({ done, of: done, what: `base ${base.mark}` });
    if (base.mark !== mark) continue;
    const sheets = base.summary.files.flatMap(({ path }) => {
      const bytes = drawn.get(path);
      return bytes === undefined ? [] : [printedSheet(path, bytes)];
    });
    return { sheets };
  }
  throw new Refused([`the job has no base ${mark}`]);
};

const SHEETS: ReadonlySet<string> = new Set(["sheet-svg", "piece-sheet-svg"]);

function printedSheet(path: string, bytes: Uint8Array): PrintedSheet {
  const svg = new TextDecoder().decode(bytes);
  const [, width = "0", height = "0"] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
  return { name: path.split("/").at(-1) ?? path, svg, width: Number(width), height: Number(height) };
}
