/** What the schedule knows while it is open: what is picked, what is typed, what is shown; and what can be done with it. */
import { useMemo, useRef, useState } from "preact/hooks";
import type { KeyEdit } from "../../readers/yaml-edit.js";
import type { LiveBase } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import type { Actions } from "../state/actions.js";
import {
  type CellChanges,
  filled,
  ordered,
  pasted,
  type Refusal,
  shifted,
  type Target,
  withChanges,
  withCopies,
  withNew,
  without,
} from "./changes.js";
import { COLUMNS, type Column, columnOf, typed } from "./columns.js";
import type { Picked } from "./grid.js";
import type { At } from "./grid-keys.js";
import { type Items, itemsOf, nextMark, spliceTo, textOf } from "./items.js";
import { held, type Layout, lastSpot, layOut, moved, type Spot, spotsBetween } from "./layout.js";
import {
  type CellLine,
  cellIn,
  type Filter,
  faultsByBase,
  linesOf,
  NO_FILTER,
  type Order,
  shownBases,
} from "./lines.js";
import type { Field } from "./row.js";
import { readTsv, writeTsv } from "./tsv.js";

const ROW = 32;
const FAULT = 26;
/** A card's head and one of its lines of two cells. */
const CARD_LINE = 48;

const NONE: readonly LiveBase[] = [];
const NO_FINDINGS: readonly never[] = [];
const START: At = { spot: { at: 0, sub: 0 }, column: 0 };

/** Columns that were chosen stay so while the page is open. */
let lastChosen: ReadonlySet<string> = new Set(COLUMNS.filter(({ isUsual }) => isUsual).map(({ id }) => id));

/** Everything that the parts of the schedule share. */
export function useSchedule(isCards: boolean) {
  const bases = usePart((state) => state.live?.bases ?? NONE);
  const findings = usePart((state) => state.live?.findings ?? NO_FINDINGS);
  const unit = usePart((state) => state.live?.unit ?? "in");
  const isReadOnly = usePart((state) => state.live?.basesIn === "sheet");
  const actions = useActions();
  const [filter, setFilter] = useState<Filter>(NO_FILTER);
  const [order, setOrder] = useState<Order | null>(null);
  const [chosen, setChosen] = useState(lastChosen);
  const [wanted, setPicked] = useState<Picked>({ from: START, to: START });
  const [field, setField] = useState<Field | null>(null);
  const [pending, setPending] = useState<ReadonlyMap<string, string>>(new Map());
  const [refused, setRefused] = useState<readonly Refusal[]>([]);
  const place = useRef<HTMLDivElement>(null);

  const columns = useMemo(() => COLUMNS.filter(({ id }) => chosen.has(id)), [chosen]);
  const faults = useMemo(() => faultsByBase(findings), [findings]);
  const shown = useMemo(
    () => shownBases(bases, filter, order, order === null ? undefined : columnOf(order.column), unit),
    [bases, filter, order, unit],
  );
  const layout = useMemo(
    () => layOut(bases, shown, faults, heightsOf(columns, isCards)),
    [bases, shown, faults, columns, isCards],
  );
  const picked = inside(wanted, layout, columns.length);
  const taken = useMemo(() => new Set(bases.map(({ mark }) => mark.toUpperCase())), [bases]);

  const ground: Ground = { bases, layout, columns, picked, actions, setRefused };
  const lineAt = (spot: Spot) => lineOf(ground, spot);
  const spots = () => spotsBetween(layout, picked.from.spot, picked.to.spot);
  const indices = () => [...new Set(spots().flatMap(({ at }) => layout.shown[at] ?? []))].toSorted((a, b) => a - b);
  const pickedColumns = () =>
    columns.slice(Math.min(picked.from.column, picked.to.column), Math.max(picked.from.column, picked.to.column) + 1);
  const go = (to: At) => setPicked({ from: to, to });

  const take = (down: number, right: number): void => {
    const [line, column] = [lineAt(picked.to.spot), columns[field?.column ?? -1]];
    if (field === null || line === null || column === undefined) {
      setField(null);
      return;
    }
    const said = typed(column, line.subject, field.text);
    if (!said.ok) {
      setField({ ...field, why: said.why });
      return;
    }
    setField(null);
    if (down !== 0 || right !== 0)
      go({
        spot: moved(layout, picked.to.spot, down),
        column: Math.min(Math.max(0, picked.to.column + right), columns.length - 1),
      });
    if (said.edits.length === 0) return;
    const key = `${line.id} ${column.id}`;
    setPending(new Map([...pending, [key, field.text]]));
    const settle = () => setPending((before) => new Map([...before].filter(([each]) => each !== key)));
    void actions.edit(nameOf(line, column, field.text), within(line, said.edits)).finally(settle);
  };

  return {
    ...{
      bases,
      layout,
      columns,
      faults,
      order,
      isReadOnly,
      isCards,
      picked,
      field,
      pending,
      place,
      filter,
      chosen,
      refused,
      shown,
    },
    setFilter: (next: Filter) => setFilter(next),
    choose: (id: string) => {
      lastChosen = chosen.has(id) ? new Set([...chosen].filter((each) => each !== id)) : new Set([...chosen, id]);
      setChosen(lastChosen);
    },
    pick: setPicked,
    sort: (column: string) =>
      setOrder(order?.column !== column ? { column, isDown: false } : order.isDown ? null : { column, isDown: true }),
    sortBy: (column: string) => setOrder(column === "" ? null : { column, isDown: false }),
    begin: (over: string | null) => {
      const [line, column] = [lineAt(picked.to.spot), columns[picked.to.column]];
      if (line === null || column === undefined || field !== null) return;
      const cell = cellIn(line, column);
      if (isReadOnly || !cell.isTyped) {
        const said = isReadOnly
          ? "These bases stand in a spreadsheet: take them into the job to edit them here"
          : whyOf(line, column);
        setRefused([{ where: `${line.base.mark}, ${column.name}`, text: over ?? "", why: said }]);
        return;
      }
      setPicked({ from: picked.to, to: picked.to });
      setField({ column: picked.to.column, text: over ?? cell.text, why: "" });
    },
    type: (text: string) => setField((open) => open && { ...open, text, why: "" }),
    take,
    drop: () => setField(null),
    show: () => {
      const base = bases[layout.shown[picked.to.spot.at] ?? -1];
      if (base !== undefined) void actions.choose(base.path);
    },
    copy: () =>
      writeTsv(
        spots().map((spot) => {
          const line = lineAt(spot);
          return pickedColumns().map((column) => (line === null ? "" : copied(line, column)));
        }),
      ),
    clear: () => change(ground, "cells cleared", filled([""], targets(ground, spots()), pickedColumns())),
    paste: (text: string) => {
      if (isReadOnly) return;
      const block = readTsv(text);
      const isOne = block.length === 1 && block[0]?.length === 1;
      const from = Math.min(picked.from.column, picked.to.column);
      const made = isOne
        ? filled([block[0]?.[0] ?? ""], targets(ground, spots()), pickedColumns())
        : pasted(block, targets(ground, fromHere(ground)), columns, from, taken);
      change(ground, `${block.length} ${block.length === 1 ? "row" : "rows"} pasted`, made);
    },
    fillDown: () => {
      const [first, ...others] = spots();
      const source = first === undefined ? null : lineAt(first);
      if (source === null || others.length === 0) return;
      const texts = pickedColumns().map((column) => copied(source, column));
      change(ground, "cells filled down", filled(texts, targets(ground, others), pickedColumns()));
    },
    add: () => {
      const after = indices().at(-1) ?? bases.length - 1;
      const mark = nextMark(bases[after]?.mark ?? "B0", taken);
      void rewrite(actions, `base ${mark} added`, (items) => withNew(items, after, mark));
      setFilter(NO_FILTER);
      setOrder(null);
      go({ spot: { at: after + 1, sub: 0 }, column: 0 });
    },
    duplicate: () => {
      const own = indices();
      const marks: string[] = [];
      const known = new Set(taken);
      for (const index of own) {
        const mark = nextMark(bases[index]?.mark ?? "", known);
        known.add(mark.toUpperCase());
        marks.push(mark);
      }
      if (own.length > 0)
        void rewrite(actions, `${listed(marks)} added as copies`, (items) => withCopies(items, own, marks));
    },
    takeOut: () => {
      const own = indices();
      const marks = own.map((index) => bases[index]?.mark ?? "");
      if (own.length === bases.length) actions.say("A job has one base or more: the last one stays", "fault");
      else void rewrite(actions, `${listed(marks)} taken out`, (items) => without(items, own));
    },
    move: (by: 1 | -1) => {
      const own = indices();
      const isBlock = own.every((index, i) => i === 0 || index === (own[i - 1] ?? 0) + 1);
      const at = (own[0] ?? 0) + by;
      if (order !== null || !isBlock || at < 0 || (own.at(-1) ?? 0) + by >= bases.length) return;
      void rewrite(actions, `${listed(own.map((index) => bases[index]?.mark ?? ""))} moved`, (items) =>
        shifted(items, own, by),
      );
      const along = ({ spot, column }: At): At => ({ spot: { ...spot, at: spot.at + by }, column });
      setPicked({ from: along(picked.from), to: along(picked.to) });
    },
    writeOrder: () => {
      void rewrite(actions, "bases in this order", (items) => ordered(items, shown));
      setOrder(null);
    },
    hush: () => setRefused([]),
  };
}

/** What `useSchedule` gives. */
export type Schedule = ReturnType<typeof useSchedule>;

interface Ground {
  readonly bases: readonly LiveBase[];
  readonly layout: Layout;
  readonly columns: readonly Column[];
  readonly picked: Picked;
  readonly actions: Actions;
  setRefused(refused: readonly Refusal[]): void;
}

function heightsOf(columns: readonly Column[], isCards: boolean): Layout["heights"] {
  if (!isCards) return { base: ROW, group: ROW, fault: FAULT };
  const rods = columns.filter(({ ofRods }) => ofRods).length;
  const high = (cells: number) => Math.ceil(cells / 2) * CARD_LINE + 16;
  return { base: high(columns.length), group: high(rods + 1), fault: 2 * FAULT };
}

function inside({ from, to }: Picked, layout: Layout, columns: number): Picked {
  const near = ({ spot, column }: At): At => ({
    spot: held(layout, spot),
    column: Math.min(column, Math.max(0, columns - 1)),
  });
  return { from: near(from), to: near(to) };
}

function lineOf({ bases, layout }: Ground, { at, sub }: Spot): CellLine | null {
  const index = layout.shown[at] ?? -1;
  const base = bases[index];
  const line = base === undefined ? undefined : linesOf(base, index)[sub];
  return line === undefined || line.kind === "fault" ? null : line;
}

function targets(ground: Ground, spots: readonly Spot[]): readonly Target[] {
  return spots.flatMap((spot): Target[] => {
    const line = lineOf(ground, spot);
    if (line === null) return [];
    const { index, base, subject } = line;
    return [{ index, subject, mark: base.mark, group: line.kind === "group" ? line.group : null }];
  });
}

/** From the upper end of what is picked to the last line. */
function fromHere({ layout, picked }: Ground): readonly Spot[] {
  const { from, to } = picked;
  const first = from.spot.at < to.spot.at || (from.spot.at === to.spot.at && from.spot.sub < to.spot.sub) ? from : to;
  return spotsBetween(layout, first.spot, lastSpot(layout));
}

/** A few cells of one base are edits of their keys; more are one change of the text. */
function change({ actions, setRefused }: Ground, name: string, made: CellChanges): void {
  setRefused(made.refused);
  if (made.edits.size === 0 && made.added.length === 0) return;
  void rewrite(actions, name, (items) => withChanges(items, made), made);
}

async function rewrite(
  actions: Actions,
  name: string,
  turn: (items: Items) => Items,
  cells?: CellChanges,
): Promise<void> {
  let isKnown = true;
  await actions.rewrite(name, (text) => {
    const items = itemsOf(text);
    isKnown = items !== null;
    return items === null ? null : spliceTo(text, textOf(turn(items)));
  });
  if (isKnown) return;
  if (cells === undefined || cells.added.length > 0) {
    actions.say("The bases of this job are not a list in lines of its own, so this cannot be done here", "fault");
    return;
  }
  const edits = [...cells.edits].flatMap(([index, own]) =>
    own.map((edit): KeyEdit => ({ ...edit, path: ["bases", index, ...edit.path] })),
  );
  await actions.edit(name, edits);
}

function within(line: CellLine, edits: readonly KeyEdit[]): readonly KeyEdit[] {
  const group = line.kind === "group" ? ["groups", line.group] : [];
  return edits.map((edit) => ({ ...edit, path: ["bases", line.index, ...group, ...edit.path] }));
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

function whyOf(line: CellLine, column: Column): string {
  const said = typed(column, line.subject, "x");
  return said.ok ? "" : said.why;
}

function listed(marks: readonly string[]): string {
  return marks.length > 3 ? `${marks[0]} and ${marks.length - 1} more` : marks.join(", ");
}
