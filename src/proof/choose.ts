/** Which plate of the job a file is: by its name where that says, else by what is most like it. */
import { extentOf } from "../geometry/index.js";
import { countExact } from "./align.js";
import type { Candidate } from "./candidate.js";
import { CONTOUR_MM, type KnownPlate } from "./model.js";

/** Which plate the drawing is of, by its shape and by the name of the file. */
export interface Choice {
  /** The plate that the file is compared with; null where none is like it. */
  readonly best: Candidate | null;
  /** The mark in the file's name, null where it holds none. */
  readonly named: string | null;
  /** The plate that the name says, where the file is another. */
  readonly instead: Candidate | null;
  /** Other plates that agree just as well. */
  readonly twins: readonly KnownPlate[];
}

/** Chooses among the plates of the job. */
export function choosePlate(candidates: readonly Candidate[], name: string): Choice {
  const mark = markInName(
    name,
    candidates.map(({ target }) => target),
  );
  const ranked = candidates
    .filter((each) => isLike(each) && isOfSize(each, mark !== null && isNamed(each.target, mark)))
    .sort(compareCandidates);
  const [first] = ranked;
  if (first === undefined) return { best: null, named: mark, instead: null, twins: [] };
  const twins = ranked.filter((each) => each !== first && each.faults === first.faults && each.faults === 0);
  if (mark === null) return { best: first, named: null, instead: null, twins: twins.map(({ target }) => target) };
  const own = ranked.find(({ target }) => isNamed(target, mark));
  const isOther = first.faults === 0 && own?.faults !== 0;
  if (own !== undefined && !isOther) return { best: own, named: mark, instead: null, twins: [] };
  const meant = candidates.filter(({ target }) => isNamed(target, mark)).sort(compareCandidates)[0] ?? null;
  return { best: first, named: mark, instead: meant, twins: [] };
}

/** At least half of the plate's holes have a hole of the file near them; of a plate whose holes are all drilled, the outline agrees. */
function isLike({ target, part, alignment }: Candidate): boolean {
  const cut = target.holes.filter(({ made }) => made === "cut").length;
  if (cut === 0) return alignment.outlineGap === null ? isOfBox(part, target) : alignment.outlineGap <= CONTOUR_MM;
  return alignment.pairs.length > 0 && 2 * alignment.pairs.length >= cut;
}

function isOfBox({ outline }: Candidate["part"], { box }: KnownPlate): boolean {
  if (outline === null || box === undefined) return false;
  const { x0, y0, x1, y1 } = extentOf(outline.contour);
  const apart = [x1 - x0 - (box.x1 - box.x0), y1 - y0 - (box.y1 - box.y0)];
  return apart.every((each) => Math.abs(each) <= CONTOUR_MM);
}

/**
 * The sizes agree: most holes lie right, half of them where the file's own name says the plate, or the outline is the plate's.
 * Where the plate's outline is not known and nothing is scaled, holes that are near are enough.
 */
function isOfSize({ target, alignment, scale }: Candidate, isMeant: boolean): boolean {
  const cut = target.holes.filter(({ made }) => made === "cut").length;
  const exact = 2 * countExact(alignment);
  if (exact > cut || (isMeant && exact === cut)) return true;
  if (alignment.outlineGap === null) return scale === 1 && target.outline === null;
  return alignment.outlineGap <= CONTOUR_MM;
}

/** Templates before base plates where both agree alike; else the order of the job. */
function compareCandidates(a: Candidate, b: Candidate): number {
  const role = (each: Candidate) => (each.target.role === "template" ? 0 : 1);
  const off = ({ alignment }: Candidate) => alignment.pairs.reduce((sum, { distance }) => sum + distance, 0);
  return (
    a.faults - b.faults || countExact(b.alignment) - countExact(a.alignment) || role(a) - role(b) || off(a) - off(b)
  );
}

/** True where the name is the mark of the plate or of a base that it serves. */
export function isNamed({ mark, bases }: KnownPlate, name: string): boolean {
  return mark === name || bases.includes(name);
}

/** The plates of the mark that the file's name holds; none where it holds none. */
export function platesNamed(path: string, targets: readonly KnownPlate[]): readonly KnownPlate[] {
  const mark = markInName(path, targets);
  return mark === null ? [] : targets.filter((target) => isNamed(target, mark));
}

/** The longest mark of a template or base that stands by itself in the file's name. */
function markInName(path: string, targets: readonly KnownPlate[]): string | null {
  const name = path.split(/[\\/]/).at(-1)?.toUpperCase() ?? "";
  const marks = [...new Set(targets.flatMap(({ mark, bases }) => [mark, ...bases]))];
  const found = marks.filter((mark) => mark !== "" && standsIn(name, mark.toUpperCase()));
  return found.sort((a, b) => b.length - a.length)[0] ?? null;
}

/** With no letter or digit right before or after it. */
function standsIn(name: string, mark: string): boolean {
  for (let at = name.indexOf(mark); at >= 0; at = name.indexOf(mark, at + 1)) {
    const around = `${name[at - 1] ?? " "}${name[at + mark.length] ?? " "}`;
    if (!/[\p{L}\p{N}]/u.test(around)) return true;
  }
  return false;
}
