/** What every act of the schedule stands on: what is shown and picked, and the one way in which the list of bases is changed. */
import type { KeyEdit } from "../../readers/yaml-edit.js";
import type { LiveBase } from "../../tasks/live/model.js";
import { startRests } from "../app/rests.js";
import type { Now } from "../app/use-now.js";
import type { Actions } from "../state/actions.js";
import type { BaseOrder } from "../state/left.js";
import type { PageState } from "../state/model.js";
import { type CellChanges, type Refusal, type Target, withChanges } from "./changes.js";
import type { Column } from "./columns.js";
import type { Picked } from "./grid.js";
import type { At } from "./grid-keys.js";
import { type Items, itemsOf, spliceTo, textOf } from "./items.js";
import { type Layout, type Spot, spotsBetween } from "./layout.js";
import { type CellLine, linesOf } from "./lines.js";
import { allNow } from "./meanwhile.js";
import type { Field } from "./row.js";

/** Bases by their marks, and the columns from where to where they are picked. */
export interface Sought {
  readonly marks: readonly string[];
  readonly columns: readonly [number, number];
}

/** Of the schedule as it is drawn. */
export interface Ground {
  readonly bases: readonly LiveBase[];
  /** Indices of the bases that are shown, in their order. */
  readonly shown: readonly number[];
  readonly layout: Layout;
  readonly columns: readonly Column[];
  readonly picked: Picked;
  readonly order: BaseOrder;
  /** The file in which the bases stand, where they are not in the job file. */
  readonly sheet: string | null;
  /** Marks in capitals. */
  readonly taken: ReadonlySet<string>;
  readonly field: Now<Field | null>;
  readonly actions: Actions;
  look(): PageState;
  pick(picked: Picked): void;
  /** Picks bases as soon as they are there, in a table that shows all bases as the job has them. */
  seek(sought: Sought): void;
  refuse(refused: readonly Refusal[]): void;
  setOrder(order: BaseOrder): void;
  setPending(change: (before: ReadonlyMap<string, string>) => ReadonlyMap<string, string>): void;
}

/** The line of cells at a spot; null: there is none. */
export function lineAt({ bases, layout }: Pick<Ground, "bases" | "layout">, { at, sub }: Spot): CellLine | null {
  const index = layout.shown[at] ?? -1;
  const base = bases[index];
  const line = base === undefined ? undefined : linesOf(base, index)[sub];
  return line === undefined || line.kind === "fault" ? null : line;
}

/** Lines that are picked, from above. */
export function pickedSpots({ layout, picked }: Ground): readonly Spot[] {
  return spotsBetween(layout, picked.from.spot, picked.to.spot);
}

/** Columns that are picked, from the left. */
export function pickedColumns({ columns, picked: { from, to } }: Ground): readonly Column[] {
  return columns.slice(Math.min(from.column, to.column), Math.max(from.column, to.column) + 1);
}

/** Bases that are picked, as the job has them. */
export function pickedBases(ground: Ground): readonly number[] {
  const indices = pickedSpots(ground).flatMap(({ at }) => ground.layout.shown[at] ?? []);
  return [...new Set(indices)].toSorted((a, b) => a - b);
}

/** Lines that texts can be put into. */
export function targetsAt(ground: Ground, spots: readonly Spot[]): readonly Target[] {
  return spots.flatMap((spot): Target[] => {
    const line = lineAt(ground, spot);
    if (line === null) return [];
    const { index, base, subject } = line;
    return [{ index, subject, mark: base.mark, group: line.kind === "group" ? line.group : null }];
  });
}

/** The keyboard at one cell. */
export function at(cell: At): Picked {
  return { from: cell, to: cell };
}

/** True where the bases stand in a spreadsheet; then it is said where, and what to do. */
export function isElsewhere({ sheet, refuse }: Ground): boolean {
  if (sheet === null) return false;
  const why = `the bases stand in ${sheet}: change them there and read it again, or take them into the job to change them here`;
  refuse([{ where: "The table", text: "", why }]);
  return true;
}

const GONE = "the job was changed meanwhile and it is not sure any more which base is meant: do it once more";

/** What became of a change of the list. `not here`: the text is such that nothing sure can be done. */
type Outcome = "made" | "gone" | "not here";

/** What is done with the list; null: it cannot be. `own`: where the bases that it is about stand. */
type Turn = (items: Items, own: readonly number[]) => Items | null | Promise<Items | null>;

/** Changes the list of bases as one step, when the steps before it are made. `own`: the bases that it is about, as they were seen. */
async function rewrite(
  { bases, actions, look, refuse }: Ground,
  name: string,
  own: readonly number[],
  turn: Turn,
): Promise<Outcome> {
  const said: Outcome[] = [];
  await actions.rewrite(name, async (text) => {
    const [items, places] = [itemsOf(text), allNow(bases, look().live?.bases ?? [], own)];
    const made = items === null || places === null ? null : await turn(items, places);
    said.push(places === null ? "gone" : made === null ? "not here" : "made");
    return made && spliceTo(text, textOf(made));
  });
  const [outcome = "gone"] = said;
  if (outcome === "gone") refuse([{ where: name, text: "", why: GONE }]);
  return outcome;
}

const NOT_HERE =
  "The bases of this job do not stand in a list in lines of its own, or lean on one another (anchors), so this cannot be done here; change it in the text of the job";

/** The same of whole bases; true where it was done. */
export async function rewriteBases(ground: Ground, name: string, own: readonly number[], turn: Turn): Promise<boolean> {
  const outcome = await rewrite(ground, name, own, turn);
  if (outcome === "not here") ground.actions.say(NOT_HERE, "fault");
  return outcome === "made";
}

/** Edits of bases as they were seen, as one step; a text that finds its base no more is told with it. */
export function editBases(
  { bases, actions, look, refuse }: Ground,
  name: string,
  edits: ReadonlyMap<number, readonly KeyEdit[]>,
  text = "",
): Promise<void> {
  return actions.edit(name, () => {
    const places = allNow(bases, look().live?.bases ?? [], [...edits.keys()]);
    if (places === null) refuse([{ where: name, text, why: GONE }]);
    return (places ?? []).flatMap((place, i) =>
      ([...edits.values()][i] ?? []).map((edit): KeyEdit => ({ ...edit, path: ["bases", place, ...edit.path] })),
    );
  });
}

/** Many cells at once. Where the list cannot be written anew as a text, each of them is an edit. */
export async function changeCells(ground: Ground, name: string, made: CellChanges): Promise<void> {
  ground.refuse(made.refused);
  if (made.edits.size === 0 && made.added.length === 0) return;
  const own = [...made.edits.keys()];
  const rest = startRests();
  const outcome = await rewrite(ground, name, own, (items, places) => {
    const edits = new Map([...made.edits.values()].map((each, i) => [places[i] ?? -1, each]));
    return withChanges(items, { ...made, edits }, rest);
  });
  if (outcome !== "not here") return;
  if (made.added.length > 0) ground.actions.say(NOT_HERE, "fault");
  else await editBases(ground, name, made.edits);
}
