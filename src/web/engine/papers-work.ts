/** Single papers of the package, byte for byte those of the whole. */
import { makePackage } from "../../tasks/build.js";
import { openJob } from "../../tasks/open.js";
import { inputsOf } from "./inputs.js";
import { Refused } from "./refused.js";
import type { TaskWork } from "./task-model.js";

/** The files of the kinds that were asked for; tells how many bases are made. */
export const makePapers: TaskWork<"papers"> = async ({ files, date, kinds }, tell) => {
  const opened = openJob(await inputsOf(files), { date });
  if (!opened.ok) throw new Refused(opened.findings.map(({ message }) => message));
  const made = makePackage(opened.value, { version: "", document: null, outputs: kinds });
  let done = 0;
  const count = opened.value.bases.length;
  for (const base of made.bases) {
    done += 1;
    tell({ done, of: count, what: `base ${base.mark}` });
  }
  return made
    .finish()
    .files.flatMap(({ kind, path, bytes }) =>
      kinds.some((each) => each === kind)
        ? [{ kind, name: path.split("/").at(-1) ?? path, bytes: new Uint8Array(bytes) }]
        : [],
    );
};
