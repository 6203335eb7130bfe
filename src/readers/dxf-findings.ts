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

/** Messages of one code that are told one by one: a file may name a hundred thousand layers. */
const MOST_MESSAGES = 50;

const FURTHER = "further ones of this kind, with other names or lengths";

/** Collects findings; the same code with the same message is one finding, counted. */
export interface FindingList {
  add(code: string, severity: CutFileSeverity, message: string, at?: readonly [number, number]): void;
  list(): readonly CutFileFinding[];
}

/** An empty list of findings. */
export function collectFindings(): FindingList {
  const found = new Map<string, { finding: CutFileFinding; count: number }>();
  const messages = new Map<string, number>();
  return {
    add(code, severity, message, at) {
      const known = found.get(`${code} ${message}`);
      if (known !== undefined) {
        known.count++;
        return;
      }
      const kind = `${code} ${severity}`;
      const told = messages.get(kind) ?? 0;
      messages.set(kind, told + 1);
      if (told >= MOST_MESSAGES && message !== FURTHER) {
        this.add(code, severity, FURTHER, at);
        return;
      }
      found.set(`${code} ${message}`, { finding: { code, severity, message, count: 1, at: at ?? null }, count: 1 });
    },
    list: () => [...found.values()].map(({ finding, count }) => ({ ...finding, count })),
  };
}
