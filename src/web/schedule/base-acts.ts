/** What is done with whole bases: added, copied, taken out, moved, put in another order, opened. */
import { ordered, shifted, withCopies, withNew, without } from "./changes.js";
import { type Ground, isElsewhere, pickedBases, rewriteBases } from "./ground.js";
import { nextMark } from "./items.js";

/** All of it. */
export function baseActs(ground: Ground) {
  const { bases, layout, picked, actions } = ground;
  return {
    add: () => add(ground),
    duplicate: () => duplicate(ground),
    takeOut: () => {
      const own = pickedBases(ground);
      if (isElsewhere(ground)) return;
      if (own.length === bases.length) actions.say("A job has one base or more: the last one stays", "fault");
      else void rewriteBases(ground, `${listed(marksOf(ground, own))} taken out`, own, without);
    },
    move: (by: 1 | -1) => move(ground, by),
    writeOrder: () => {
      const { shown, setOrder } = ground;
      void rewriteBases(ground, "bases in this order", shown, ordered);
      setOrder(null);
    },
    /** Opens the template of the line where the keyboard is. */
    show: () => {
      const base = bases[layout.shown[picked.to.spot.at] ?? -1];
      if (base !== undefined) void actions.choose(base.path);
    },
  };
}

function add(ground: Ground): void {
  if (isElsewhere(ground)) return;
  const { bases, taken } = ground;
  const after = pickedBases(ground).at(-1) ?? bases.length - 1;
  const mark = nextMark(bases[after]?.mark ?? "B0", taken);
  const turn = rewriteBases(ground, `base ${mark} added`, [after], (items, [place = -1]) =>
    withNew(items, place, mark),
  );
  void turn.then((isMade) => isMade && ground.seek({ marks: [mark], columns: [0, 0] }));
}

function duplicate(ground: Ground): void {
  const { picked } = ground;
  const own = pickedBases(ground);
  if (own.length === 0 || isElsewhere(ground)) return;
  const marks: string[] = [];
  const known = new Set(ground.taken);
  for (const index of own) {
    const mark = nextMark(ground.bases[index]?.mark ?? "", known);
    known.add(mark.toUpperCase());
    marks.push(mark);
  }
  const name = `${listed(marks)} added as ${marks.length === 1 ? "a copy" : "copies"}`;
  const turn = rewriteBases(ground, name, own, (items, places) => withCopies(items, places, marks));
  void turn.then((isMade) => isMade && ground.seek({ marks, columns: [picked.from.column, picked.to.column] }));
}

/** What is picked goes along once it is moved: pressed twice before that, the same bases move twice. */
function move(ground: Ground, by: 1 | -1): void {
  const { bases, order, picked } = ground;
  const own = pickedBases(ground);
  const isBlock = own.every((index, i) => i === 0 || index === (own[i - 1] ?? 0) + 1);
  const first = (own[0] ?? 0) + by;
  if (order !== null || !isBlock || first < 0 || (own.at(-1) ?? 0) + by >= bases.length || isElsewhere(ground)) return;
  const marks = marksOf(ground, own);
  const turn = rewriteBases(ground, `${listed(marks)} moved`, own, (items, places) => shifted(items, places, by));
  void turn.then((isMade) => isMade && ground.seek({ marks, columns: [picked.from.column, picked.to.column] }));
}

function marksOf({ bases }: Ground, indices: readonly number[]): readonly string[] {
  return indices.map((index) => bases[index]?.mark ?? "");
}

function listed(marks: readonly string[]): string {
  return marks.length > 3 ? `${marks[0]} and ${marks.length - 1} more` : marks.join(", ");
}
