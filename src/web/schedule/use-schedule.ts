/** What the schedule knows while it is open: what is picked, what is typed, what is shown; and what can be done with it. */
import { useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { LiveBase } from "../../tasks/live/model.js";
import { useActions, useLook, usePart } from "../app/page.js";
import { useNow } from "../app/use-now.js";
import { ALL_BASES, type BaseFilter, type BaseOrder } from "../state/left.js";
import { baseActs } from "./base-acts.js";
import { cellActs } from "./cell-acts.js";
import type { Refusal } from "./changes.js";
import { COLUMNS, type Column, columnOf } from "./columns.js";
import type { Picked } from "./grid.js";
import type { At } from "./grid-keys.js";
import { at, type Ground, type Sought } from "./ground.js";
import { held, type Layout, layOut } from "./layout.js";
import { faultsByBase, shownBases } from "./lines.js";
import type { Field } from "./row.js";

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
  const sheet = usePart((state) => (state.live?.basesIn === "sheet" ? sheetOf(state.live.files) : null));
  const [actions, look] = [useActions(), useLook()];
  const columns = useColumns();
  const table = useTable(bases, columns.shown, isCards);
  const field = useNow<Field | null>(null);
  const [pending, setPending] = useState<ReadonlyMap<string, string>>(new Map());
  const [refused, refuse] = useState<readonly Refusal[]>([]);
  const place = useRef<HTMLDivElement>(null);
  const taken = useMemo(() => new Set(bases.map(({ mark }) => mark.toUpperCase())), [bases]);
  const ground: Ground = {
    ...{ bases, sheet, taken, field, actions, look, refuse, setPending, columns: columns.shown },
    ...{ shown: table.shown, layout: table.layout, picked: table.picked, order: table.order },
    ...{ pick: table.pick, seek: table.seek, setOrder: table.setOrder },
  };
  return {
    ...table,
    ...{ bases, sheet, isReadOnly: sheet !== null, isCards, pending, place, refused },
    ...{ columns: columns.shown, chosen: columns.chosen, choose: columns.choose, field: field.drawn },
    ...cellActs(ground),
    ...baseActs(ground),
    hush: () => refuse([]),
  };
}

/** What `useSchedule` gives. */
export type Schedule = ReturnType<typeof useSchedule>;

function sheetOf(files: readonly { readonly name: string; readonly kind: string }[]): string {
  return files.find(({ kind }) => kind === "schedule")?.name ?? "a spreadsheet";
}

function useColumns() {
  const [chosen, setChosen] = useState(lastChosen);
  const shown = useMemo(() => COLUMNS.filter(({ id }) => chosen.has(id)), [chosen]);
  const choose = (id: string): void => {
    lastChosen = chosen.has(id) ? new Set([...chosen].filter((each) => each !== id)) : new Set([...chosen, id]);
    setChosen(lastChosen);
  };
  return { chosen, shown, choose };
}

/** Which lines are shown, in which order, and which cells of them are picked. */
function useTable(bases: readonly LiveBase[], columns: readonly Column[], isCards: boolean) {
  const findings = usePart((state) => state.live?.findings ?? NO_FINDINGS);
  const unit = usePart((state) => state.live?.unit ?? "in");
  const { leave } = useActions();
  const filter = usePart((state) => state.left.bases);
  const order = usePart((state) => state.left.order);
  const setOrder = (next: BaseOrder) => leave({ order: next });
  const [wanted, pick] = useState<Picked>({ from: START, to: START });
  const [sought, setSought] = useState<Sought | null>(null);
  const faults = useMemo(() => faultsByBase(findings), [findings]);
  const shown = useMemo(
    () => shownBases(bases, filter, order, order === null ? undefined : columnOf(order.column), unit),
    [bases, filter, order, unit],
  );
  const layout = useMemo(
    () => layOut(bases, shown, faults, heightsOf(columns, isCards)),
    [bases, shown, faults, columns, isCards],
  );
  useLayoutEffect(() => {
    const found = sought === null ? null : placeOf(sought, bases, shown);
    if (found !== null) pick(found);
    if (sought !== null) setSought(null);
  }, [sought]);
  return {
    ...{ filter, order, faults, shown, layout, pick, setOrder },
    picked: inside(wanted, layout, columns.length),
    setFilter: (next: BaseFilter) => leave({ bases: next }),
    sort: (column: string) =>
      setOrder(order?.column !== column ? { column, isDown: false } : order.isDown ? null : { column, isDown: true }),
    sortBy: (column: string) => setOrder(column === "" ? null : { column, isDown: false }),
    seek: (next: Sought) => {
      leave({ bases: ALL_BASES, order: null });
      setSought(next);
    },
  };
}

function placeOf({ marks, columns: [from, to] }: Sought, bases: readonly LiveBase[], shown: readonly number[]) {
  const wanted = new Set(marks);
  const places = shown.flatMap((index, place) => (wanted.has(bases[index]?.mark ?? "") ? [place] : []));
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return null;
  const cell = (place: number, column: number): At => ({ spot: { at: place, sub: 0 }, column });
  return { ...at(cell(first, from)), to: cell(last, to) };
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
