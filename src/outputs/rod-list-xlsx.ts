/** Lists of the rods as one workbook, and as pages of the set. */
import type { CheckedJob } from "../checks/checked.js";
import { writeListsXlsx } from "../formats/list-xlsx.js";
import { drawDocument } from "../sheets/document-pages.js";
import { listBlocks } from "../sheets/list-block.js";
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

/** Pages of the set: what the rod shop works by, and what goes on the truck. */
const PAGES = [
  { name: "ROD LISTS", title: "ANCHOR RODS: LISTS FOR THE SHOP", holds: (key: string) => key !== "packing" },
  { name: "PACKING", title: "PACKING LIST", holds: (key: string) => key === "packing" },
] as const;

function listPages(checked: CheckedJob, around: Surroundings): readonly SetSheet[] {
  const shown = listsOf(checked, around).tables.filter(isShown);
  return PAGES.flatMap(({ name, title, holds }) => {
    const blocks = shown
      .filter(({ key }) => holds(key))
      .flatMap((table) => listBlocks(table).map((each) => ({ kind: "table" as const, table: each })));
    const scenes = drawDocument({ job: checked.job, version: around.version, title, way: "landscape", blocks });
    return scenes.map((scene, i): SetSheet => {
      const of = scenes.length === 1 ? "" : ` ${i + 1} OF ${scenes.length}`;
      const bookmark = `${title.charAt(0)}${title.slice(1).toLowerCase()}${of.toLowerCase()}`;
      return { scene, name: `${name}${of}`, about: title, bookmark, held: false };
    });
  });
}
