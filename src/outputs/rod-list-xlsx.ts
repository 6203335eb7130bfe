/** Lists of the rods as one workbook, and as pages of the set. */
import type { CheckedJob } from "../checks/checked.js";
import { writeListsXlsx } from "../formats/list-xlsx.js";
import { drawDocument } from "../sheets/document-pages.js";
import { listBlock } from "../sheets/list-block.js";
import { isShown, listPath, listsOf } from "./lists.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import type { SetSheet } from "./sheet-set.js";

/** Its pages are drawn for a set even where the workbook is not wanted. */
export const rodListXlsx: JobOutput<"rod-list-xlsx"> = {
  scope: "job",
  kind: "rod-list-xlsx",
  role: "table",
  title: "Rods by lot, bars to cut with their proven least, threads, hardware and packing list, as one workbook",
  drawn: false,
  inSet: true,
  named: "rods/JOB_rev-REVISION[_NOT-RELEASED]_rods.xlsx",
  needs: "job",
  write: writeRodLists,
};

function* writeRodLists(checked: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const { tables } = listsOf(checked, around);
  if (around.set !== null) around.set.addSheets("lists", listPages(checked, around));
  yield { path: listPath(checked, "rods", "xlsx"), bytes: writeListsXlsx(checked.job, tables) };
}

/** Each list begins a page; rows without a figure of their own stay in workbook and CSV. */
function listPages(checked: CheckedJob, around: Surroundings): readonly SetSheet[] {
  return listsOf(checked, around)
    .tables.filter((table) => isShown(table) && table.key !== "bar-pieces")
    .flatMap((table) => {
      const { job } = checked;
      const blocks = [{ kind: "table" as const, table: listBlock(table) }];
      const scenes = drawDocument({ job, version: around.version, title: table.title, way: "landscape", blocks });
      return scenes.map((scene, i): SetSheet => {
        const of = scenes.length === 1 ? "" : ` ${i + 1} OF ${scenes.length}`;
        return {
          scene,
          name: `${table.name.toUpperCase()}${of}`,
          about: table.title,
          bookmark: `${table.name}${of.toLowerCase()}`,
          held: false,
        };
      });
    });
}
