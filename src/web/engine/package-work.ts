/** The whole package as one archive: the same files, byte for byte, that the command line writes. */
import { zip } from "fflate";
import { newLeanDocument } from "../../formats/lean-document.js";
import { build } from "../../tasks/build.js";
import { inputsOf } from "./inputs.js";
import type { TaskWork } from "./task-model.js";
import { Refused } from "./task-model.js";

/** Makes every file of the package; tells how many bases are made. */
export const makePackageZip: TaskWork<"package"> = async ({ files, date, version }, tell) => {
  const inputs = await inputsOf(files);
  const made = build(inputs, { date, version, document: newLeanDocument() });
  if (made.job === null) throw new Refused(made.findings.map(({ message }) => message));
  const entries: Record<string, Uint8Array> = {};
  const held: string[] = [];
  let done = 0;
  for (const base of made.bases) {
    for (const { path, bytes } of base.files) entries[path] = bytes;
    if (base.held) held.push(base.mark);
    done += 1;
    tell({ done, of: done, what: `base ${base.mark}` });
  }
  for (const { path, bytes } of made.finish().files) entries[path] = bytes;
  return { name: `${made.job.number}_rev-${made.job.revision}.zip`, zip: await packed(entries), held };
};

function packed(entries: Record<string, Uint8Array>): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    zip(entries, { mtime: "1980-01-01T00:00:00" }, (error, bytes) => (error === null ? resolve(bytes) : reject(error)));
  });
}
