/** Which files of a folder are records of signatures: by what they begin with, or by the name that `sign` gives, whatever their bytes are now. */
import { lstatSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { SIGNATURE_START } from "../formats/signature-json.js";
import { SIGNED } from "../outputs/index.js";
import { chunksOf } from "./file-system.js";

/** Records larger than this are none of ours: that of 2000 bases has some 4 MB. */
const LARGEST_RECORD = 64_000_000;

/** `2026-11-24_J.Doe.json`, as `sign` names a record: one whose first bytes were changed is still a record, and a void one. */
const RECORD_NAME = /^\d{4}-\d{2}-\d{2}_.+\.json$/;

/** True for a file that is named as a signature, or begins as one does; links and what is no file are none. */
function isSignature(folder: string, path: string): boolean {
  if (!path.startsWith(`${SIGNED}/`) || !path.endsWith(".json")) return false;
  const stat = lstatSync(join(folder, path), { throwIfNoEntry: false });
  if (stat?.isFile() !== true || stat.size > LARGEST_RECORD) return false;
  if (RECORD_NAME.test(path.slice(SIGNED.length + 1))) return true;
  for (const chunk of chunksOf(join(folder, path))) {
    const start = new TextDecoder().decode(chunk.subarray(0, SIGNATURE_START.length));
    return start === SIGNATURE_START;
  }
  return false;
}

/** Paths of the records in a package, with forward slashes. */
export function signaturePaths(folder: string): readonly string[] {
  const stat = lstatSync(join(folder, SIGNED), { throwIfNoEntry: false });
  if (stat?.isDirectory() !== true) return [];
  const paths = readdirSync(join(folder, SIGNED)).sort();
  return paths.map((name) => `${SIGNED}/${name}`).filter((path) => isSignature(folder, path));
}
