/** Ends to thread, in an order in which the threader is set up seldom. */
import type { RodLot } from "../rods/lots.js";
import type { Unit } from "../units/index.js";
import { lengthCell, lengthInputCell, NOT_GIVEN, UNIT_WORDS } from "./cells.js";
import type { ListCell, ListTable } from "./model.js";

interface Ends {
  readonly lot: RodLot;
  readonly where: "top" | "lower end" | "whole length";
  readonly length: RodLot["detail"]["topThread"];
}

/** True where nothing tells whether its lower end has a thread. */
export function isLowerEndOpen({ detail }: RodLot): boolean {
  return !detail.fullThread && detail.bottom.kind === "missing" && detail.bottomThread.kind === "missing";
}

/** Threaded ends of a lot: none where the end has no thread, or none is known to be. */
export function threadedEnds(lot: RodLot): readonly Ends[] {
  const { fullThread, topThread, bottomThread } = lot.detail;
  if (fullThread) return [{ lot, where: "whole length", length: topThread }];
  const isThreaded = bottomThread.kind === "given" ? bottomThread.value > 0 : !isLowerEndOpen(lot);
  const lower: readonly Ends[] = isThreaded ? [{ lot, where: "lower end", length: bottomThread }] : [];
  return [{ lot, where: "top", length: topThread }, ...lower];
}

/** A row a threaded end of a lot: rolled before cut, large before small, long before short. */
export function threadList(lots: readonly RodLot[], unit: Unit): ListTable {
  const ends = lots.flatMap(threadedEnds).sort(compareEnds);
  const rows = ends.map(({ lot: { mark, detail, total }, where, length }, i): readonly ListCell[] => [
    i + 1,
    detail.threading.kind === "given" ? (detail.threading.value === "rolled" ? "roll" : "cut") : NOT_GIVEN,
    detail.threadCallout,
    lengthInputCell(detail.bar, unit),
    lengthInputCell(length, unit),
    where,
    mark,
    detail.cut.kind === "given" ? lengthCell(detail.cut.value.value, unit) : NOT_GIVEN,
    total,
  ]);
  return {
    key: "threads",
    name: "Threads",
    title: "ENDS TO THREAD",
    columns: [
      { heading: "order", width: 7 },
      { heading: "by", width: 8 },
      { heading: "thread", width: 18 },
      { heading: `bar diameter, ${unit}`, width: 11, isFigure: true },
      { heading: `thread length, ${unit}`, width: 11, isFigure: true },
      { heading: "where", width: 13 },
      { heading: "lot", width: 7 },
      { heading: `bar length, ${unit}`, width: 11, isFigure: true },
      { heading: "ends", width: 9, isFigure: true },
    ],
    rows,
    totals: [["TOTAL", null, null, null, null, null, null, null, ends.reduce((sum, { lot }) => sum + lot.total, 0)]],
    views: [
      {
        title: `ENDS TO THREAD (${UNIT_WORDS[unit]})`,
        columns: [
          ["order", "ORDER"],
          ["by", "BY"],
          ["thread", "THREAD"],
          ["where", "WHERE"],
          ["lot", "LOT"],
          [`bar diameter, ${unit}`, "BAR DIAMETER"],
          [`bar length, ${unit}`, "BAR LENGTH"],
          [`thread length, ${unit}`, "THREAD LENGTH"],
          ["ends", "ENDS"],
        ],
      },
    ],
    remarks: [
      "In this order dies are changed only where the thread changes, and the stop where the length does.",
      ...openEndWords(lots.filter(isLowerEndOpen)),
    ],
  };
}

function openEndWords(lots: readonly RodLot[]): readonly string[] {
  if (lots.length === 0) return [];
  return [
    `Not in the list: lower ends of ${lots.map(({ mark }) => mark).join(" ")}, of which nothing is given (rods.bottom).`,
  ];
}

function compareEnds(a: Ends, b: Ends): number {
  const [first, second] = [a.lot.detail, b.lot.detail];
  return (
    Number(isCut(first)) - Number(isCut(second)) ||
    second.diameter - first.diameter ||
    compareTexts(first.threadCallout, second.threadCallout) ||
    lengthOf(b) - lengthOf(a)
  );
}

function isCut({ threading }: RodLot["detail"]): boolean {
  return threading.kind === "given" && threading.value === "cut";
}

function lengthOf({ length }: Ends): number {
  return length.kind === "given" ? length.value : 0;
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
