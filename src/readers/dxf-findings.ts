/** What a reader has to say about a cut file: like findings counted together, each with the place of the first. */

/** stop: the file is not to be cut as it is. advise: it can be, but somebody should look. */
export type CutFileSeverity = "stop" | "advise";

/** One kind of fault. `at` is the place of the first in the file's unit, null where a fault has no place. */
export interface CutFileFinding {
  readonly code: string;
  readonly severity: CutFileSeverity;
  readonly message: string;
  readonly count: number;
  readonly at: readonly [number, number] | null;
}

/** Collects findings; the same code with the same message is one finding, counted. */
export interface FindingList {
  add(code: string, severity: CutFileSeverity, message: string, at?: readonly [number, number]): void;
  list(): readonly CutFileFinding[];
}

/** An empty list of findings. */
export function collectFindings(): FindingList {
  const found = new Map<string, { finding: CutFileFinding; count: number }>();
  return {
    add(code, severity, message, at) {
      const key = `${code} ${message}`;
      const known = found.get(key);
      if (known !== undefined) known.count++;
      else found.set(key, { finding: { code, severity, message, count: 1, at: at ?? null }, count: 1 });
    },
    list: () => [...found.values()].map(({ finding, count }) => ({ ...finding, count })),
  };
}
