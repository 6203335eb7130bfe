/** The nearest of a few known words, for hints. */

const LONGEST = 60;

/** The known word that is nearest to `word`, when it is near enough to be meant. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  const wanted = plain(word);
  if (wanted === "" || wanted.length > LONGEST) return undefined;
  const ranked = known
    .map((candidate) => ({ candidate, distance: editDistance(wanted, plain(candidate)) }))
    .sort((a, b) => a.distance - b.distance);
  const best = ranked[0];
  if (best === undefined) return undefined;
  return best.distance <= Math.max(1, Math.floor(Math.max(wanted.length, best.candidate.length) * 0.4))
    ? best.candidate
    : undefined;
}

/** The known words in the order of their nearness, `most` of them, however far they are; ties as they are given. */
export function nearestWords(word: string, known: readonly string[], most: number): readonly string[] {
  const wanted = plain(word).slice(0, LONGEST);
  const rank = (candidate: string): number => {
    const [name, other] = [plain(candidate), wanted];
    const holds = other.length > 2 && name.length > 2 && (name.includes(other) || other.includes(name));
    return editDistance(wanted, name) / Math.max(1, wanted.length, name.length) - (holds ? 0.5 : 0);
  };
  const ranked = known.map((candidate) => ({ candidate, rank: rank(candidate) }));
  return ranked
    .sort((a, b) => a.rank - b.rank)
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

/** So many words are listed whole; of more the nearest are told. */
const MOST_LISTED = 12;

/** What is allowed in place of a word: `allowed are A, B, C`, or of many `nearest are A, B, C; the JSON Schema lists all`; `list` is what does. */
export function allowedOrNearest(word: string, known: readonly string[], list = "the JSON Schema"): string {
  if (known.length <= MOST_LISTED) return `allowed are ${known.join(", ")}`;
  return `nearest are ${nearestWords(word, known, 3).join(", ")}; ${list} lists all`;
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[^a-z0-9]/g, "");
}

/** Single-letter insertions, deletions, replacements and swaps of neighbours that turn one word into the other. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      const edits = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(Math.min(edits, swapped ? (beforeLast[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY));
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
