/** Lists in a sentence. */

/** The first `most` of the names, and how many more: `A, B and 3 more`. */
export function listed(names: readonly string[], most: number, between = ", "): string {
  const more = names.length - most;
  return `${names.slice(0, most).join(between)}${more > 0 ? ` and ${more} more` : ""}`;
}
