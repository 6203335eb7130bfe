/** A file of a package in its folder against what its summary lists of it. */
import { type Damage, findDamage as findDamageIn, type ListedFile } from "../tasks/listed-file.js";
import { folderFiles } from "./folder-files.js";

export type { ListedFile };

/** null when the file in the package's folder is the one that is listed. Its bytes are read only where the size is right. */
export function findDamage(folder: string, file: ListedFile): Damage | null {
  return findDamageIn(folderFiles(folder), file);
}
