/** Files and texts that a person hands over: a job is opened, anything else is read as a schedule. */
import { bytesOfDropped } from "../engine/dropped.js";
import { Refused } from "../engine/refused.js";
import type { Actions } from "../state/actions.js";
import type { Beginning, GivenSheet } from "../state/beginning.js";
import { sheetFileName } from "../state/file-names.js";

/** A job among the files goes before a sheet; of several sheets the first is read, a newer one by the answers to the one before. */
export async function handOver(files: readonly File[], actions: Actions, beginning: Beginning): Promise<void> {
  if (files.some(({ name }) => /\.(ya?ml|json)$/i.test(name)))
    return actions.take(files.map((file) => ({ file, handle: null })));
  const [first, ...others] = files;
  if (first === undefined) return;
  if (others.length > 0) actions.say(`Of ${files.length} files ${first.name} is read; a schedule is one file.`);
  const sheet = await sheetOf(first, actions);
  if (sheet === null) return;
  const isNewer = beginning.kind === "read" && beginning.sheet.name === sheet.name;
  await (isNewer ? actions.readAgain(sheet) : actions.readSheet(sheet));
}

/** A file with its bytes; null where it is too large or cannot be read, which is told. */
export async function sheetOf(file: File, { say }: Pick<Actions, "say">): Promise<GivenSheet | null> {
  try {
    const content = await bytesOfDropped({ name: file.name, blob: file }, "file");
    return { name: sheetFileName(file.name), content };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    for (const why of error.why) say(`${why}.`, "fault");
    return null;
  }
}

/** Cells of a spreadsheet, or text of a print, under the name with which they are kept. */
export function pastedSheet(text: string): GivenSheet {
  return { name: text.includes("\t") ? "pasted.tsv" : "pasted.txt", content: text };
}
