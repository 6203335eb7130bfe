/** The files of a job as the tasks take them: with the shop files of the program, and workbooks opened. */
import { requestedFiles } from "../../job/index.js";
import type { InputFile, Inputs } from "../../readers/inputs.js";
import { openRequested } from "../../tasks/open-requested.js";
import { packagedFiles } from "./packaged-files.js";
import type { JobFiles } from "./protocol.js";

/** One that cannot be opened is told where it is read. */
export async function inputsOf({ job, files }: JobFiles): Promise<Inputs> {
  const opened = new Map<string, InputFile>([...packagedFiles(), ...files]);
  const inputs: Inputs = { job, files: opened };
  for (const request of requestedFiles(inputs)) {
    const content = files.get(request.name);
    if (content !== undefined) opened.set(request.key ?? request.name, await openRequested(content, request));
  }
  return inputs;
}
