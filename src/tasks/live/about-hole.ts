/** Which holes a row is about. */

/** True where a row's subject names the hole, alone or with others: `A1`, `A1-A2`. */
export function isAbout(subject: string, tag: string): boolean {
  return subject.split(/[^\p{L}\p{N}]+/u).includes(tag);
}
