/** Marks of the pieces of templates: each its own, since it names files, whatever the case of its letters. */
import type { Finding } from "../diagnostics/finding.js";
import type { Base } from "../job/index.js";
import { markKey } from "../job/index.js";
import { lowerMark, type ShapedBase, segmentMark, spliceMark } from "../template/index.js";

/** A fault for each template whose pieces would bear the mark of a base or of another template. */
export function pieceMarkFaults(bases: readonly ShapedBase[]): readonly Finding[] {
  const known = new Map<string, string>();
  for (const { base } of bases) {
    known.set(markKey(base.mark), `base ${base.mark}`);
    known.set(markKey(base.template.mark), `template ${base.template.mark}`);
  }
  const seen = new Set<string>();
  return bases.flatMap(({ base }) => {
    const key = markKey(base.template.mark);
    if (seen.has(key)) return [];
    seen.add(key);
    return faultsOf(base, known);
  });
}

/** More numbers than these are not given to segments or splice plates. */
const MOST_PIECES = 24;

function faultsOf(base: Base, known: ReadonlyMap<string, string>): readonly Finding[] {
  const { mark, lower, segments } = base.template;
  const below = lower === null ? [] : [lowerMark(mark)];
  const parted = segments === null ? [] : [mark, ...below].flatMap(partMarks);
  const clash = (part: string, marks: readonly string[]): readonly Finding[] => {
    const taken = marks.find((each) => known.has(markKey(each)));
    return taken === undefined ? [] : [faultAt(base, part, taken, known.get(markKey(taken)) ?? "")];
  };
  return [...clash("lower", below), ...clash("segments", parted)];
}

/** Every mark that segments and splice plates may bear. */
function partMarks(mark: string): readonly string[] {
  const numbers = Array.from({ length: MOST_PIECES }, (_, i) => i + 1);
  const numbered = numbers.flatMap((number) => [segmentMark(mark, number), spliceMark(mark, number, 2)]);
  return [...numbered, spliceMark(mark, 1, 1)];
}

function faultAt({ place, template }: Base, part: string, taken: string, owner: string): Finding {
  const path = place.path === undefined ? `template.${part}` : `${place.path}.template.${part}`;
  const message = `gives a piece of ${template.mark} the mark "${taken}", which is that of ${owner}; allowed is a mark of its own`;
  const hint = `give ${owner} another mark, or this template`;
  return { code: "piece-mark-taken", severity: "error", at: { ...place, path }, message, hint };
}
