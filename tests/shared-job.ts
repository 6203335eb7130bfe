/** Jobs whose bases have templates that are one plate, or nearly. Invented data. */

/** What of a base is not as usual: texts of the job file. */
export interface SharedBase {
  readonly mark: string;
  readonly quantity?: number;
  readonly rods?: string;
  readonly pattern?: string;
  readonly template?: string;
  readonly more?: string;
}

const RODS = "diameter: 1, grade: 36, projection: 9, embedment: 18, threads: 6";

/** A job in inches, released; `head`: lines before its bases. */
export function sharedJob(bases: readonly SharedBase[], head: readonly string[] = []): string {
  const lines = bases.map(({ mark, quantity = 1, rods = RODS, pattern, template = "", more = "" }) => {
    const points = pattern ?? "kind: rectangle, x: 12, y: 10";
    return `  - { mark: ${mark}, quantity: ${quantity}, rods: { ${rods} }, pattern: { ${points} }, template: { thickness: 1/4${template} }${more} }`;
  });
  return ['job: { number: "1", revision: A, status: released }', "units: in", ...head, "bases:", ...lines, ""].join(
    "\n",
  );
}

/** 35 marks of 11 different plates, as a shed has them: the eleven come round in turn, with 1, 2, 3 columns. */
export function shedJob(head: readonly string[] = []): string {
  const kinds = [
    ...[
      ["3/4", 8, 8],
      ["3/4", 9, 9],
      ["1", 12, 12],
      ["1", 14, 14],
      ["1-1/4", 14, 14],
      ["1-1/4", 16, 16],
    ],
    ...[
      ["1-1/2", 16, 16],
      ["1-1/2", 18, 18],
      ["1", 14, 10],
      ["3/4", 10, 10],
      ["1-1/4", 12, 12],
    ],
  ];
  const bases = Array.from({ length: 35 }, (_, at): SharedBase => {
    const [size, x, y] = kinds[at % 11] ?? [];
    return {
      mark: `B${at + 1}`,
      quantity: 1 + (at % 3),
      rods: `diameter: ${size}, projection: 9`,
      pattern: `kind: rectangle, x: ${x}, y: ${y}`,
    };
  });
  return sharedJob(bases, head);
}
