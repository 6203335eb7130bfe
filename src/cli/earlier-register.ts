/** The register of questions of the package that stands where the next one goes, or of the newest superseded one in it. */
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { compareMarks } from "../job/model/mark-order.js";
import { SUPERSEDED } from "../outputs/index.js";
import { type EarlierRegister, greatestNumber, readEarlierRegister } from "../tasks/earlier-register.js";
import { greatestOf } from "../units/extremes.js";
import { chunksOf } from "./file-system.js";
import { SUMMARY } from "./package-contents.js";

export type { EarlierRegister };

/** null where no package is there, or none that has questions by numbers; what cannot be read is none. */
export function findEarlierRegister(folder: string): EarlierRegister | null {
  const own = registerIn(folder, "");
  return own ?? newestSuperseded(folder);
}

/** Numbers only grow: the one that has given most is the newest; of several the last by the name of its folder. */
function newestSuperseded(folder: string): EarlierRegister | null {
  const shelf = join(folder, SUPERSEDED);
  if (!isFolder(shelf)) return null;
  const names = readdirSync(shelf).sort(compareMarks);
  const found = names.flatMap((name) => registerIn(folder, `${SUPERSEDED}/${name}`) ?? []);
  const most = greatestOf(found.map(greatestNumber), 0);
  return found.findLast((register) => greatestNumber(register) === most) ?? null;
}

const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

function registerIn(folder: string, where: string): EarlierRegister | null {
  const path = join(folder, where, SUMMARY);
  if (!existsSync(path) || !statSync(path).isFile()) return null;
  return readEarlierRegister(chunksOf(path), where);
}
