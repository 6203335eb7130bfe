/** Records that are asked by what a person typed. */

/** The value under a key of the record's own: `constructor` and its like, which every object answers to, are none. */
export function ownValue<T>(record: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
