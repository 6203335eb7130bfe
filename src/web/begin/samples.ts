/** The samples that come with the program, loaded when they are asked for. */
import type { JobFiles } from "../engine/protocol.js";

/** A sample, and what to look at in it. */
export interface Sample {
  readonly name: string;
  readonly lookAt: string;
  /** Path of the base that stands for it in a picture. */
  readonly base: string;
}

const TEXTS = import.meta.glob<string>(["../../../samples/*/job.yaml", "../../../samples/*/own-*.yaml"], {
  query: "?raw",
  import: "default",
});

/** All of them, the plainest first. */
export const SAMPLES: readonly Sample[] = [
  {
    name: "machine-hall",
    lookAt: "Five bases in millimetres. Look at F2: six rods, and an opening beside the middle for the pour.",
    base: "bases[1]",
  },
  {
    name: "packing-hall",
    lookAt: "22 bases in inches at 118 places of a grid. Look at B20: it is held, and its ledger says why.",
    base: "bases[6]",
  },
  {
    name: "signal-mast",
    lookAt: "Twelve rods on a ring. Look at the tags: the first two rods straddle the axis.",
    base: "bases[0]",
  },
];

/** The job file of a sample, and the files beside it that it names. */
export async function sampleFiles(name: string): Promise<JobFiles> {
  const own = Object.entries(TEXTS).filter(([path]) => path.includes(`/samples/${name}/`));
  if (own.length === 0) throw new Error(`there is no sample ${name}`);
  const texts = await Promise.all(
    own.map(async ([path, load]) => [path.split("/").at(-1) ?? path, await load()] as const),
  );
  return { job: "job.yaml", files: new Map(texts) };
}
