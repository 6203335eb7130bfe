/** What is in a package, by who opens it, in a few lines for the terminal. */
import { counted } from "../checks/words.js";
import { terminalText } from "../diagnostics/printable.js";
import { type GuideEntry, manifestPath } from "../outputs/index.js";

/** `shown` is DIR as it is shown; `files`: how many there are in all. */
export const guideText = terminalText(
  (entries: readonly GuideEntry[], { shown, files }: { readonly shown: string; readonly files: number }): string => {
    const width = (words: readonly string[]) => words.reduce((most, { length }) => Math.max(most, length), 0);
    const [whoWide, folderWide] = [width(entries.map(({ who }) => who)), width(entries.map(({ folder }) => folder))];
    const rows = entries.flatMap(({ who, folder, files: all, first }) => {
      const own = all.filter(({ path }) => path !== manifestPath);
      const [only] = own;
      if (only === undefined) return [];
      const isNamed = own.length === 1 || first === manifestPath || first === null;
      const what = own.length === 1 ? only.path.slice(folder.length) : counted(own.length, "file");
      const opened = isNamed ? "" : `; first ${first.slice(folder.length)}`;
      return [`  ${who.padEnd(whoWide)}  ${folder.padEnd(folderWide)}  ${what}${opened}`];
    });
    return [`Package: ${shown} (${counted(files, "file")}). Open first: ${shown}/${manifestPath}`, ...rows, ""].join(
      "\n",
    );
  },
);
