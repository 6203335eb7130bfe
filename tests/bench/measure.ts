/** What the benchmark measures, and how long a piece of work takes. */

/** One row of the table: what was measured, how much, and what is aimed at. */
export interface Measure {
  readonly what: string;
  readonly value: string;
  readonly aim: string;
}

/** A result, and the milliseconds it took. */
export function timed<T>(work: () => T): { readonly result: T; readonly milliseconds: number } {
  const start = performance.now();
  const result = work();
  return { result, milliseconds: performance.now() - start };
}
