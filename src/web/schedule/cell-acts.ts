/** What is done with cells: typed into, copied, emptied, pasted over, filled down. */
import { filled, pasted } from "./changes.js";
import { type Column, typed } from "./columns.js";
import {
  at,
  changeCells,
  editBases,
  type Ground,
  isElsewhere,
  lineAt,
  pickedColumns,
  pickedSpots,
  targetsAt,
} from "./ground.js";
import { compareSpots, lastSpot, moved, type Spot, spotsBetween } from "./layout.js";
import { type CellLine, cellIn } from "./lines.js";
import { readTsv, writeTsv } from "./tsv.js";

/** All of it. */
export function cellActs(ground: Ground) {
  return { ...typingActs(ground), ...blockActs(ground) };
}

function typingActs(ground: Ground) {
  const { field, picked, columns, pick } = ground;
  return {
    /** `over`: what is typed instead of what stands there; null: as it stands. */
    begin: (over: string | null) => {
      const [line, column] = [lineAt(ground, picked.to.spot), columns[picked.to.column]];
      if (line === null || column === undefined || field.get() !== null || isElsewhere(ground)) return;
      const cell = cellIn(line, column);
      pick(at(picked.to));
      if (cell.isTyped) field.set({ line, column: picked.to.column, text: over ?? cell.text, why: "" });
      else
        ground.refuse([
          { where: `${line.base.mark}, ${column.name}`, text: over ?? "", why: whyNotTyped(line, column) },
        ]);
    },
    type: (text: string) => {
      const open = field.get();
      if (open !== null) field.set({ ...open, text, why: "" });
    },
    take: (down: number, right: number) => take(ground, down, right),
    drop: () => field.set(null),
  };
}

/** Takes what is typed, and goes on by so many lines and columns; what is not taken stays open where it was typed. */
function take(ground: Ground, down: number, right: number): void {
  const { field, columns, layout, picked, pick } = ground;
  const open = field.get();
  const column = columns[open?.column ?? -1];
  field.set(null);
  if (open === null || column === undefined) return;
  const { line, text } = open;
  const said = typed(column, line.subject, text);
  if (!said.ok) {
    field.set({ ...open, why: said.why });
    const spot = { at: layout.shown.indexOf(line.index), sub: line.kind === "group" ? line.group + 1 : 0 };
    if (spot.at >= 0) pick(at({ spot, column: open.column }));
    return;
  }
  if (down !== 0 || right !== 0) {
    const along = Math.min(Math.max(0, picked.to.column + right), columns.length - 1);
    pick(at({ spot: moved(layout, picked.to.spot, down), column: along }));
  }
  if (said.edits.length > 0) write(ground, line, column, text, said.edits);
}

/** What was typed is seen in its cell at once, until the answer is there. */
function write(ground: Ground, line: CellLine, column: Column, text: string, own: Edits): void {
  const key = `${line.id} ${column.id}`;
  ground.setPending((before) => new Map([...before, [key, text]]));
  const group = line.kind === "group" ? ["groups", line.group] : [];
  const edits = new Map([[line.index, own.map((edit) => ({ ...edit, path: [...group, ...edit.path] }))]]);
  void editBases(ground, nameOf(line, column, text), edits, text).finally(() =>
    ground.setPending((before) => new Map([...before].filter(([each]) => each !== key))),
  );
}

type Edits = Extract<ReturnType<typeof typed>, { ok: true }>["edits"];

function blockActs(ground: Ground) {
  const { columns, picked, taken } = ground;
  const isMany = (count: number, one: string) => `${count} ${one}${count === 1 ? "" : "s"}`;
  return {
    copy: () =>
      writeTsv(
        pickedSpots(ground).map((spot) => {
          const line = lineAt(ground, spot);
          return pickedColumns(ground).map((column) => (line === null ? "" : copied(line, column)));
        }),
      ),
    clear: () => {
      if (isElsewhere(ground)) return;
      const made = filled([""], targetsAt(ground, pickedSpots(ground)), pickedColumns(ground));
      void changeCells(ground, "cells cleared", made);
    },
    paste: (text: string) => {
      if (isElsewhere(ground)) return;
      const block = readTsv(text);
      const isOne = block.length === 1 && block[0]?.length === 1;
      const from = Math.min(picked.from.column, picked.to.column);
      const made = isOne
        ? filled([block[0]?.[0] ?? ""], targetsAt(ground, pickedSpots(ground)), pickedColumns(ground))
        : pasted(block, targetsAt(ground, fromHere(ground)), columns, from, taken);
      void changeCells(ground, `${isMany(block.length, "row")} pasted`, made);
    },
    fillDown: () => {
      if (isElsewhere(ground)) return;
      const [first, ...others] = pickedSpots(ground);
      const source = first === undefined ? null : lineAt(ground, first);
      if (source === null || others.length === 0) {
        const why =
          "pick the cell that is to be repeated and those under it (Shift with the arrow keys), then fill down";
        ground.refuse([{ where: "Fill down", text: "", why }]);
        return;
      }
      const texts = pickedColumns(ground).map((column) => copied(source, column));
      const made = filled(texts, targetsAt(ground, others), pickedColumns(ground));
      void changeCells(ground, "cells filled down", made);
    },
  };
}

/** From the upper end of what is picked to the last line. */
function fromHere({ layout, picked: { from, to } }: Ground): readonly Spot[] {
  const first = compareSpots(from.spot, to.spot) < 0 ? from : to;
  return spotsBetween(layout, first.spot, lastSpot(layout));
}

function nameOf(line: CellLine, column: Column, text: string): string {
  const was = cellIn(line, column).text;
  const now = text.trim();
  const change = was === "" ? `set to ${now}` : now === "" ? "taken out" : `${was} to ${now}`;
  return `${line.base.mark} ${column.name.toLowerCase()} ${change}`;
}

/** What is copied of a cell: what is typed to get it again, and of what is worked out, what is read. */
function copied(line: CellLine, column: Column): string {
  const { text, shown, isTyped } = cellIn(line, column);
  return isTyped ? text : shown;
}

function whyNotTyped(line: CellLine, column: Column): string {
  const said = typed(column, line.subject, "x");
  return said.ok ? "" : said.why;
}
