/** The register of questions of an earlier package, which is dropped as a ZIP or as its summary.json. */
import { summaryPath } from "../../outputs/index.js";
import { readEarlierRegister } from "../../tasks/earlier-register.js";
import { openPackage } from "../../tasks/package-archive.js";
import { bytesOf } from "../../tasks/package-files.js";
import { bytesOfDropped, isZip } from "./dropped.js";
import { Refused } from "./refused.js";
import { need } from "./refusing.js";
import type { TaskWork } from "./task-model.js";

/** A file that has none is refused. */
export const findRegister: TaskWork<"register"> = async (dropped) => {
  const { name } = dropped;
  const bytes = await bytesOfDropped(dropped, "package");
  const summary = (await isZip(dropped)) ? bytesOf(need(openPackage(bytes, name)).files, summaryPath) : bytes;
  const register = readEarlierRegister([summary], "");
  if (register === null)
    throw new Refused([
      `${name} has no questions with numbers; allowed is an earlier package as a ZIP, or its ${summaryPath}.`,
    ]);
  return { name, register };
};
