/** The files of a job as the tasks take them: with the shop files of the program, and workbooks opened. */
import { requestedFiles } from "../../job/index.js";
import type { InputFile, Inputs } from "../../readers/inputs.js";
import { packagedFiles } from "./packaged-files.js";
import type { JobFiles } from "./protocol.js";

/** Workbooks are opened by a reader that is loaded when one is there. */
export async function inputsOf({ job, files }: JobFiles): Promise<Inputs> {
  const opened = new Map<string, InputFile>([...packagedFiles(), ...files]);
  const inputs: Inputs = { job, files: opened };
  for (const { name, key, sheet } of requestedFiles(inputs)) {
    const bytes = files.get(name);
    if (!(bytes instanceof Uint8Array) || !/\.xlsx$/i.test(name)) continue;
    const { openWorkbook } = await import("../../readers/workbook.js");
    const workbook = await openWorkbook(bytes, name, sheet);
    if (workbook.ok) opened.set(key ?? name, workbook.value);
  }
  return inputs;
}
