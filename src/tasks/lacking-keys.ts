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
  /** Headings that give it: where one of the sheet's may be such, that is asked, and not this too. */
  readonly headings: readonly string[];
}

const NEEDED: readonly Needed[] = [
  {
    path: ["rods", "diameter"],
    words: "no size of the rods",
    isOfGroup: true,
    means: "their size, as 1-1/4 or M30, where it is the same for all; else fill in the cells",
    headings: ["Rod dia", "Rods"],
  },
  {
    path: ["pattern"],
    words: "no pattern of the rods",
    isOfGroup: true,
    means: "the pattern, as { kind: rectangle, x: 12, y: 10 }, where it is the same for all; else fill in the cells",
    headings: ["Pattern size", "Pattern pitch", "X", "Y", "Pitch X", "Pitch Y", "Bolt circle", "Points"],
  },
  {
    path: ["template", "thickness"],
    words: "no thickness of the templates, which is the shop's to choose",
    isOfGroup: false,
    means: "the plate that templates are cut from, as 1/4 or 6 mm",
    headings: [],
  },
];

const MOST_MARKS = 6;

/** `bases` over what kinds and defaults of the job give them; `asked` are the questions about the sheet itself. */
export function askLacking(bases: readonly SourceNode[], asked: readonly ReadQuestion[]): readonly ReadQuestion[] {
  const open = new Set(asked.flatMap(({ mayBe = [] }) => mayBe));
  return NEEDED.flatMap(({ path, words, isOfGroup, means, headings }): ReadQuestion[] => {
    if (headings.some((heading) => open.has(heading))) return [];
    const lacking = bases.filter((base) => !has(base, path, isOfGroup));
    if (lacking.length === 0) return [];
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
