/** Lists of the rods as one workbook, and as pages of the set. */
import type { CheckedJob } from "../checks/checked.js";
import { writeListsXlsx } from "../formats/list-xlsx.js";
import type { ListTable } from "../lists/index.js";
import type { PackingPart } from "../lists/packing-pages.js";
import { drawDocument } from "../sheets/document-pages.js";
import { listBlocks } from "../sheets/list-block.js";
import { printable } from "../sheets/text-metrics.js";
import { isShown, listPath, listsOf } from "./lists.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { documentSheets, type SetSheet } from "./sheet-set.js";

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

/** Pages that go together: what the rod shop works by, or what goes with one delivery. */
interface ListPart {
  readonly name: string;
  readonly title: string;
  /** As bookmarks have it. */
  readonly words: string;
  readonly tables: readonly ListTable[];
}

function listPages(checked: CheckedJob, around: Surroundings): readonly SetSheet[] {
  const { tables, packing } = listsOf(checked, around);
  const shop = { title: "ANCHOR RODS: LISTS FOR THE SHOP", words: "Anchor rods: lists for the shop" };
  const parts: readonly ListPart[] = [
    { name: "ROD LISTS", ...shop, tables: tables.filter(isShown) },
    ...packing.map(packingPart),
  ];
  return parts.flatMap((part) => partPages(part, checked, around));
}

function packingPart({ name, tables }: PackingPart): ListPart {
  if (name === "") return { name: "PACKING", title: "PACKING LIST", words: "Packing list", tables };
  return { name: "PACKING", title: `PACKING LIST: ${printable(name)}`, words: `Packing list: ${name}`, tables };
}

function partPages(
  { name, title, words, tables }: ListPart,
  { job }: CheckedJob,
  { version }: Surroundings,
): readonly SetSheet[] {
  const blocks = tables.flatMap(listBlocks).map((table) => ({ kind: "table" as const, table }));
  const scenes = drawDocument({ job, version, title, way: "landscape", blocks });
  return documentSheets(scenes, { name, about: title, bookmark: words });
}
