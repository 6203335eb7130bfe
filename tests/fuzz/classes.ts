/** Every class of the fuzz. */
import { commandClass, type Program } from "./command-class.js";
import { cutFileClass, starterPackage, summaryClass } from "./file-classes.js";
import { jobFiles, shopFiles, words } from "./job-classes.js";
import type { FuzzClass } from "./model.js";
import { plates } from "./plates.js";
import { readSheets } from "./read-class.js";
import { csvTables, pointsClass, settingOutPoints, workbooks } from "./table-classes.js";

/** The classes, in the order of the table. */
export async function allClasses(program: Program): Promise<readonly FuzzClass[]> {
  const [made, points] = [await starterPackage(), await settingOutPoints()];
  return [
    ...[jobFiles, plates, shopFiles, words, csvTables, workbooks, readSheets],
    ...[pointsClass(points), summaryClass(made), cutFileClass(made), commandClass(program)],
  ];
}
