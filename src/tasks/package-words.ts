/** What is said of a package when it is made. */
import { counted } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import type { ReducedPage } from "../outputs/index.js";
import { groupBy } from "../units/group-by.js";
import type { EarlierRegister } from "./earlier-register.js";
import type { OpenedJob } from "./opened-job.js";

const MOST_REDUCED = 10;

/** Which pages of the set are not at their scales; there is at least one. */
export function reducedWords(pages: readonly ReducedPage[], paper: string): string {
  const sizes = groupBy(pages, ({ percent }) => percent);
  const named = [...sizes].map(([percent, own]) => {
    const names = own.map(({ page, name }) => `${name} (page ${page})`);
    return `to ${percent === 50 ? "half size" : `${percent} %`}: ${listed(names, MOST_REDUCED)}`;
  });
  const are =
    pages.length === 1
      ? "1 page of the set does not fit and is"
      : `${pages.length} pages of the set do not fit and are`;
  return `on ${paper} ${are} reduced, not at the scales stated, ${named.join("; ")}`;
}

/** Where numbers of questions go on from; null where that is not the package before. `from` as the user names it. */
export function registerWords(
  earlier: EarlierRegister | null,
  { register, number }: OpenedJob["job"],
  from: string,
): string | null {
  if (earlier === null || register === null || earlier.job !== number || earlier.questions === 0) return null;
  if (register.revision !== earlier.revision || register.questions.length !== earlier.questions) return null;
  const count = counted(earlier.questions, "question");
  return `numbers of questions go on from revision ${earlier.revision} in ${from}, which has ${count}`;
}
