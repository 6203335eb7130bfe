/** The nearest of a few known words, for hints. */

/** The known words that are nearest to `word`, however far, nearest first; those as near as each other in their own order. */
export function nearestWords(word: string, known: readonly string[], most: number): readonly string[] {
  const wanted = plain(word).slice(0, LONGEST);
  const ranked = known.map((candidate) => ({ candidate, distance: editDistance(wanted, plain(candidate)) }));
  return ranked
    .sort((a, b) => a.distance - b.distance)
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

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
