/** Values that the job file names and repeats: whose they are, and what typing over one of them does. */
import { repeatedValues } from "../../readers/yaml-repeats.js";
import type { WrittenLine } from "./base-line.js";
import type { LiveRepeat } from "./model.js";

/** Of a text with these bases. */
export function repeatsIn(text: string, lines: readonly WrittenLine[]): readonly LiveRepeat[] {
  return repeatedValues(text).map(({ name, path, repeatedAt }) => ({
    ...{ name, path, whose: whoseIs(path, lines) },
    repeatedAt: repeatedAt.map((each) => ({ path: each, whose: whoseIs(each, lines) })),
  }));
}

/** The mark of its base, `kind heavy`, or the key at the top of the job. */
function whoseIs(path: string, lines: readonly WrittenLine[]): string {
  const base = /^bases\[(\d+)\]/.exec(path)?.[1];
  const [first = path, second = ""] = path.split(".");
  return base === undefined ? (first === "kinds" ? `kind ${second}` : first) : (lines[Number(base)]?.mark ?? path);
}

/** The value that stands at a key path, or around it, by its name alone: its own path, and where its name stands. */
export function repeatAround(
  path: string,
  repeats: readonly LiveRepeat[],
): { readonly repeat: LiveRepeat; readonly at: string } | null {
  const all = repeats.flatMap((repeat) => repeat.repeatedAt.map(({ path: at }) => ({ repeat, at })));
  return all.filter(({ at }) => isAround(at, path)).sort((a, b) => a.at.length - b.at.length)[0] ?? null;
}

/** The value with a name that stands at a key path, or around it. */
export function namedAround(path: string, repeats: readonly LiveRepeat[]): LiveRepeat | null {
  return repeats.find((repeat) => isAround(repeat.path, path)) ?? null;
}

/** Whose value changes with one that is repeated; "" of one that is not, or stands by its name alone. */
export function repeatWords(path: string, repeats: readonly LiveRepeat[]): string {
  const around = repeatAround(path, repeats);
  if (around !== null)
    return `The value named ${around.repeat.name} of ${around.repeat.whose}, repeated: what is typed is this base's own.`;
  const named = namedAround(path, repeats);
  if (named === null) return "";
  const others = [...new Set(named.repeatedAt.map(({ whose }) => whose))].filter((whose) => whose !== named.whose);
  const whom = others.length === 0 ? "elsewhere in it" : `in ${others.join(", ")}`;
  return `Named ${named.name} and repeated ${whom}: what is typed changes it there too.`;
}

function isAround(outer: string, path: string): boolean {
  return path === outer || path.startsWith(`${outer}.`) || path.startsWith(`${outer}[`);
}
