/** Job files, shop files and the words of the language in every text. */
import { answerJob } from "./answers.js";
import { changeAt, changedBytes, changedText, changedTree, PROTOTYPE_WORDS, placesIn, type Tree } from "./draw.js";
import type { Draw, FuzzCase, FuzzClass } from "./model.js";
import { PLASMA, STARTERS, TABLES, treeOf } from "./starters.js";

function caseOf(files: ReadonlyMap<string, string | Uint8Array>, drawings: boolean): FuzzCase {
  return { files, run: () => answerJob(files, drawings) };
}

function changedDocument(text: string, random: Draw): string | Uint8Array {
  switch (random.below(3)) {
    case 0:
      return JSON.stringify(changedTree(treeOf(text), random));
    case 1:
      return changedText(text, random);
    default:
      return changedBytes(new TextEncoder().encode(text), random);
  }
}

/** Trees, texts and bytes of job files. */
export const jobFiles: FuzzClass = {
  name: "job files",
  cases: 12_000,
  draw: (random) => {
    const job = changedDocument(random.pick([...STARTERS.values()]), random);
    return caseOf(new Map<string, string | Uint8Array>([["job.yaml", job], ...TABLES]), random.once(12));
  },
};

/** Shop files, under a job that is whole. */
export const shopFiles: FuzzClass = {
  name: "shop files",
  cases: 4000,
  draw: (random) => {
    const job = (STARTERS.get("us") ?? "").replace("shop: plasma", "shop: ./shop.yaml");
    const shop = changedDocument(PLASMA, random);
    return caseOf(
      new Map<string, string | Uint8Array>([
        ["job.yaml", job],
        ["./shop.yaml", shop],
      ]),
      random.once(12),
    );
  },
};

interface Spot {
  readonly tree: Tree;
  readonly path: readonly (string | number)[];
}

/** Every part of every starter. */
const SPOTS: readonly Spot[] = [...STARTERS.values()].flatMap((text) => {
  const tree = treeOf(text);
  return placesIn(tree).map((path) => ({ tree, path }));
});

/** Every text and key of the starters in turn, with every word. */
export const words: FuzzClass = {
  name: "words of the language",
  cases: SPOTS.length * PROTOTYPE_WORDS.length,
  draw: (random, index) => {
    const spot = SPOTS[index % SPOTS.length];
    const word = PROTOTYPE_WORDS[Math.floor(index / SPOTS.length) % PROTOTYPE_WORDS.length] ?? "then";
    const put = (part: Tree): Tree => (random.once(4) ? { [word]: part } : word);
    const job = JSON.stringify(spot === undefined ? {} : changeAt(spot.tree, spot.path, put));
    return caseOf(new Map<string, string | Uint8Array>([["job.yaml", job], ...TABLES]), false);
  },
};
