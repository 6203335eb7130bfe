/** Read-as lines are many and seldom asked for: they are made when they are. */
import type { ReadAs, ReadLine } from "./model.js";

/** The same with other lines, made of its own when they are asked for. */
export function withLines(
  readAs: ReadAs,
  isPlain: boolean,
  make: (lines: readonly ReadLine[]) => readonly ReadLine[],
): ReadAs {
  const { file, sheet, questions } = readAs;
  let made: readonly ReadLine[] | null = null;
  return {
    ...{ file, sheet, questions, isPlain },
    get lines() {
      made ??= make(readAs.lines);
      return made;
    },
  };
}
