/** Keys that every base needs and no cell of the sheet gives: asked once each, for all bases that lack them. */
import { listed } from "../diagnostics/listed.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";

import type { ReadQuestion } from "../schedule/index.js";

/** A key that a base must have, and what to say where it lacks it. */
interface Needed {
  readonly path: readonly [string, ...string[]];
  readonly words: string;
  /** True for what each group of rods has. */
  readonly isOfGroup: boolean;
  readonly means: string;
}

const NEEDED: readonly Needed[] = [
  {
    path: ["rods", "diameter"],
    words: "no size of the rods",
    isOfGroup: true,
    means: "their size, as 1-1/4 or M30, where it is the same for all; else fill in the cells",
  },
  {
    path: ["pattern"],
    words: "no pattern of the rods",
    isOfGroup: true,
    means: "the pattern, as { kind: rectangle, x: 12, y: 10 }, where it is the same for all; else fill in the cells",
  },
  {
    path: ["template", "thickness"],
    words: "no thickness of the templates, which is the shop's to choose",
    isOfGroup: false,
    means: "the plate that templates are cut from, as 1/4 or 6 mm",
  },
];

const MOST_MARKS = 6;

/** `bases` over what kinds and defaults of the job give them; what an answer to a question that is `open` may give is not asked. */
export function askLacking(bases: readonly SourceNode[], open: readonly ReadQuestion[]): readonly ReadQuestion[] {
  const mayCome = open.flatMap(({ mayGive = [] }) => mayGive);
  return NEEDED.flatMap(({ path, words, isOfGroup, means }): ReadQuestion[] => {
    const lacking = bases.filter((base) => !has(base, path, isOfGroup));
    const own = `${path.join(".")}.`;
    const isOpen = mayCome.some((key) => `${key}.`.startsWith(own) || own.startsWith(`${key}.`));
    if (lacking.length === 0 || isOpen) return [];
    const marks = listed(lacking.map(markOf), MOST_MARKS);
    const whose = lacking.length === bases.length ? "the sheet gives" : `the sheet gives for ${marks}`;
    const line = path.reduceRight((inner, key) => (inner === "" ? `${key}:` : `${key}: { ${inner} }`), "");
    return [{ cells: [], text: `${whose} ${words}`, choices: [{ line: `defaults: { ${line} }`, means }] }];
  });
}

function has(base: SourceNode, path: readonly string[], isOfGroup: boolean): boolean {
  const groups = isOfGroup ? findNode(base, "groups") : undefined;
  const parts = groups?.kind === "list" ? groups.items : [base];
  return parts.every((part) => findNode(part, ...path) !== undefined);
}

function markOf(base: SourceNode): string {
  const mark = findNode(base, "mark");
  return mark?.kind === "scalar" ? mark.text : "?";
}
