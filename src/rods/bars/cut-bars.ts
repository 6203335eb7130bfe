/** Bars of the stock for pieces of a list: which bars, how each is cut, and how near that is to the least that is possible. */
import { groupBy } from "../../units/group-by.js";
import type { Length } from "../../units/length.js";
import { nanometres } from "../../units/length.js";
import type { BarPattern, BarPlan, BarStock, CutPiece, Cutting, CuttingProblem, Repeated } from "./model.js";
import { solveCutting } from "./solve-cutting.js";

/** Every piece is in the plan once, or too long for any bar. The least stock is bought; the same list gives the same plan. */
export function cutBars(stock: BarStock, pieces: readonly CutPiece[]): BarPlan {
  const longest = roomIn(
    stock,
    stock.lengths.reduce((most, length) => Math.max(most, length), 0),
  );
  const fits = ({ length }: CutPiece) => length + stock.kerf <= longest;
  const cut = pieces.filter((piece) => piece.quantity > 0 && fits(piece));
  const sizes = [...new Set(cut.map(({ length }) => length))].sort((a, b) => b - a);
  const lengths = [...new Set(stock.lengths)].sort((a, b) => b - a);
  const unit = lengths.reduce<number>(divisor, 0) || 1;
  const plan = solveCutting(problemOf(stock, lengths, sizes, cut, unit));
  const dearest = (lengths[0] ?? unit) / unit;
  return {
    patterns: namePatterns(stock, lengths, sizes, cut, plan),
    bars: plan.fillings.reduce((sum, { times }) => sum + times, 0),
    stockLength: plan.cost * unit,
    leastStockLength: plan.least * unit,
    leastBars: Math.ceil(plan.least / dearest),
    isProvenLeast: plan.cost === plan.least,
    tooLong: pieces.filter((piece) => piece.quantity > 0 && !fits(piece)),
  };
}

/** Every piece takes its saw cut with it, and the bar is longer by the one that is not made. */
function roomIn({ endTrim, kerf }: BarStock, length: number): number {
  return length - endTrim + kerf;
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

function problemOf(
  stock: BarStock,
  lengths: readonly Length[],
  sizes: readonly Length[],
  pieces: readonly CutPiece[],
  unit: number,
): CuttingProblem {
  const whole = sizes.map((length) => length + stock.kerf);
  const step = whole.reduce(divisor, 0) || 1;
  const counts = new Map<number, number>();
  for (const { length, quantity } of pieces) counts.set(length, (counts.get(length) ?? 0) + quantity);
  return {
    sizes: whole.map((size) => size / step),
    counts: sizes.map((length) => counts.get(length) ?? 0),
    bars: lengths.map((length) => ({ capacity: Math.floor(roomIn(stock, length) / step), cost: length / unit })),
  };
}

/** Which piece of the list each is: in the order of the list, bar by bar; bars that came out alike stand together. */
function namePatterns(
  stock: BarStock,
  lengths: readonly Length[],
  sizes: readonly Length[],
  pieces: readonly CutPiece[],
  { fillings }: Cutting,
): readonly BarPattern[] {
  const waiting = sizes.map((size) =>
    pieces.filter(({ length }) => length === size).map(({ name, quantity }) => ({ name, left: quantity })),
  );
  const bars = inOrder(fillings).flatMap(({ filling, times }) =>
    Array.from({ length: times }, (): Omit<BarPattern, "bars"> => {
      const named = filling.counts.flatMap((count, i) => takeNames(waiting[i] ?? [], count, sizes[i]));
      return {
        stock: lengths[filling.bar] ?? nanometres(0),
        pieces: named,
        remnant: remnantOf(stock, lengths[filling.bar] ?? 0, named),
      };
    }),
  );
  const alike = groupBy(
    bars,
    ({ stock: length, pieces: own }) => `${length}:${own.map(({ name, count }) => `${count} ${name}`).join()}`,
  );
  return [...alike.values()].flatMap((group) => {
    const [first] = group;
    return first === undefined ? [] : [{ ...first, bars: group.length }];
  });
}

/** Bars of the longest stock first, and among these the way that is cut most often. */
function inOrder(fillings: readonly Repeated[]): readonly Repeated[] {
  return [...fillings].sort((a, b) => a.filling.bar - b.filling.bar || b.times - a.times || compareCounts(a, b));
}

function compareCounts(a: Repeated, b: Repeated): number {
  const at = a.filling.counts.findIndex((count, i) => count !== b.filling.counts[i]);
  return at < 0 ? 0 : (b.filling.counts[at] ?? 0) - (a.filling.counts[at] ?? 0);
}

function takeNames(
  waiting: readonly { readonly name: string; left: number }[],
  wanted: number,
  length: Length | undefined,
): BarPattern["pieces"] {
  let left = wanted;
  return waiting.flatMap((kind) => {
    const count = Math.min(kind.left, left);
    kind.left -= count;
    left -= count;
    return count === 0 || length === undefined ? [] : [{ name: kind.name, length, count }];
  });
}

function remnantOf({ endTrim, kerf }: BarStock, length: number, pieces: BarPattern["pieces"]): Length {
  const used = pieces.reduce((sum, { length: each, count }) => sum + count * (each + kerf), 0);
  return nanometres(Math.max(length - endTrim - used, 0));
}
