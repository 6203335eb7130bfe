/** What defaults and kinds of a job give to the bases of its sheet: lines of the read-as table that stand in no cell. */
import type { SourceMap, SourceNode } from "../readers/source.js";
import { findEntry, findNode } from "../readers/source.js";
import type { ReadAs, ReadLine } from "../schedule/index.js";
import { leavesOf, withLines } from "../schedule/index.js";
import { joinLayers } from "./resolve/join-layers.js";
import { asLayer, kindKey } from "./resolve/layers.js";
import { originsOf } from "./resolve/origins.js";

/** The bases over their kinds and the defaults of the job as written, each value with who gives it. Nothing is judged. */
export function laidAsWritten(bases: readonly SourceNode[], job: SourceNode | null): readonly SourceNode[] {
  const layerOf = (giver: string, ...path: readonly string[]): SourceMap | null => {
    const node = findNode(job ?? undefined, ...path);
    return node?.kind === "map" ? asLayer(node, path.join("."), giver) : null;
  };
  const defaults = layerOf("default", "defaults");
  return bases.map((base) => {
    const kind = kindName(base, job);
    const ofKind = kind === null ? null : layerOf(`kind ${kind}`, "kinds", kind);
    const over = ofKind === null ? base : joinLayers(base, ofKind);
    return defaults === null ? over : joinLayers(over, defaults);
  });
}

/** The kind that a base cites, as the job writes its name. */
function kindName(base: SourceNode, job: SourceNode | null): string | null {
  const cited = findNode(base, "kind");
  const kinds = findNode(job ?? undefined, "kinds");
  if (cited?.kind !== "scalar" || kinds?.kind !== "map") return null;
  return kinds.entries.find(({ key }) => kindKey(key) === kindKey(cited.text))?.key ?? null;
}

/** The read-as table with a line for every value that a default or a kind gives, after the lines of its base's sheet. */
export function withGivenLines(readAs: ReadAs, laid: readonly SourceNode[]): ReadAs {
  return withLines(readAs, readAs.isPlain, (lines) => [...lines, ...laid.flatMap(givenLines)]);
}

function givenLines(base: SourceNode): readonly ReadLine[] {
  const mark = findNode(base, "mark");
  return Object.entries(originsOf(base)).flatMap(([path, giver]) => {
    const origin = giver === "default" ? "default" : giver.startsWith("kind ") ? "kind" : null;
    const node = nodeAt(base, path);
    if (origin === null || node === undefined) return [];
    return leavesOf(path, node).map(
      ([key, taken]): ReadLine => ({
        ...{ mark: mark?.kind === "scalar" ? mark.text : "", cell: "", heading: "", written: "" },
        ...{ key, taken, unit: "", origin, remark: giver },
      }),
    );
  });
}

/** The value at a path as `originsOf` writes it. */
function nodeAt(base: SourceNode, path: string): SourceNode | undefined {
  return path.split(/[.[\]]+/).reduce<SourceNode | undefined>((node, step) => {
    if (step === "" || node === undefined) return node;
    return node.kind === "list" ? node.items[Number(step)] : findEntry(node, step)?.value;
  }, base);
}
