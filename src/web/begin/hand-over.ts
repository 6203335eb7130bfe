/** Files and texts that a person hands over: a job is opened, anything else is read as a schedule. */
import type { Actions } from "../state/actions.js";
import type { GivenSheet } from "../state/beginning.js";

const LARGEST = 64 * 1024 * 1024;

/** A job among the files goes before a sheet; of several sheets the first is read. */
export async function handOver(files: readonly File[], actions: Actions): Promise<void> {
  if (files.some(({ name }) => /\.(ya?ml|json)$/i.test(name)))
    return actions.take(files.map((file) => ({ file, handle: null })));
  const [first, ...others] = files;
  if (first === undefined) return;
  if (others.length > 0) actions.say(`Of ${files.length} files ${first.name} is read; a schedule is one file.`);
  if (first.size > LARGEST) {
    const megabytes = Math.ceil(first.size / 1024 / 1024);
    return actions.say(
      `${first.name} has ${megabytes} MB; at most 64 MB are read. Save the schedule's sheet by itself.`,
      "fault",
    );
  }
  try {
    await actions.readSheet({ name: first.name, content: new Uint8Array(await first.arrayBuffer()) });
  } catch {
    actions.say(`${first.name} cannot be read: is it a folder, or open in another program?`, "fault");
  }
}

/** Cells of a spreadsheet, or text of a print, under the name with which they are kept. */
export function pastedSheet(text: string): GivenSheet {
  return { name: text.includes("\t") ? "pasted.tsv" : "pasted.txt", content: text };
}
