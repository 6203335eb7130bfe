/** Which files of a folder are records of signatures. */
import { signaturePaths as pathsIn } from "../tasks/signed-state.js";
import { folderFiles } from "./folder-files.js";

/** Paths of the records in a package, with forward slashes. */
export function signaturePaths(folder: string): readonly string[] {
  return pathsIn(folderFiles(folder));
}
