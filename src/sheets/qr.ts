/** A QR code (ISO/IEC 18004) as a piece: dark modules are filled bars in a quiet zone, black on the paper's own white. */
import { encode } from "uqr";
import { at, fill, group } from "./items.js";
import type { Bar, Lattice, SceneGroup, SceneItem } from "./scene.js";
import { printable } from "./text-metrics.js";

/** Least side of a module that an office printer and a telephone's camera hold, mm (common practice). */
export const LEAST_MODULE = 0.5;
/** No larger, mm: a short text needs no more paper than a long one. */
const LARGEST_MODULE = 1;
/** Light modules around the code (ISO/IEC 18004). */
const QUIET = 4;

/** A square code, its quiet zone in it. */
export interface QrCode {
  readonly side: number;
  /** Side of a module, mm. */
  readonly module: number;
  draw(x: number, top: number): SceneItem;
}

/** As large as `room` allows, mm; larger where the text asks for it, since no module is less than the least. */
export function qrCode(text: string, room: number): QrCode {
  const words = scannable(text);
  const { size, data } = encode(words, { ecc: "M", border: 0 });
  const module = Math.min(LARGEST_MODULE, Math.max(LEAST_MODULE, room / (size + 2 * QUIET)));
  const bars = barsOf(data);
  const side = (size + 2 * QUIET) * module;
  const draw = (x: number, top: number) =>
    barGroup({ text: words, x, top, side }, { step: module, x: x + QUIET * module, top: top - QUIET * module, bars });
  return { side, module, draw };
}

/** Its fills are made where they are asked for: a page of a PDF takes the bars. */
function barGroup(data: SceneGroup["data"], lattice: Lattice): SceneGroup {
  const { step, x, top, bars } = lattice;
  const place = (column: number, row: number) => at(x + column * step, top - row * step);
  return {
    ...group("qr-code", [], data),
    lattice,
    get items() {
      return bars.map(({ x0, y0, x1, y1 }) => fill("bar", place(x0, y0), place(x1, y0), place(x1, y1), place(x0, y1)));
    },
  };
}

/** Letters that every reader takes alike: accents go, other letters become their code point in hexadecimal. */
export function scannable(text: string): string {
  const plain = printable(text)
    .normalize("NFKD")
    .replace(/\p{Mn}/gu, "");
  return [...plain].map((sign) => (/[\x20-\x7e]/.test(sign) ? sign : `u${sign.codePointAt(0)?.toString(16)}`)).join("");
}

/**
 * Dark modules in runs along rows and along columns, so that no seam shows where two runs of one kind meet; a module that is
 * in no run of its own kind stands in the other.
 */
function barsOf(data: readonly (readonly boolean[])[]): readonly Bar[] {
  const size = data.length;
  const dark = (column: number, row: number) => data[row]?.[column] === true;
  const along = Array.from({ length: size }, (_, row) =>
    runsOf(size, (k) => dark(k, row)).map((run) => ({ row, run })),
  );
  const down = Array.from({ length: size }, (_, column) =>
    runsOf(size, (k) => dark(column, k)).map((run) => ({ column, run })),
  );
  const isAlone = (column: number, row: number) => !dark(column, row - 1) && !dark(column, row + 1);
  return [
    ...along
      .flat()
      .flatMap(({ row, run: [x0, x1] }): readonly Bar[] =>
        x1 - x0 > 1 || isAlone(x0, row) ? [{ x0, y0: row, x1, y1: row + 1 }] : [],
      ),
    ...down
      .flat()
      .flatMap(({ column, run: [y0, y1] }): readonly Bar[] =>
        y1 - y0 > 1 ? [{ x0: column, y0, x1: column + 1, y1 }] : [],
      ),
  ];
}

/** Runs of what is dark, from and up to. */
function runsOf(size: number, dark: (k: number) => boolean): readonly (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  let start = -1;
  for (let k = 0; k <= size; k += 1) {
    const on = k < size && dark(k);
    if (on && start < 0) start = k;
    if (!on && start >= 0) {
      runs.push([start, k]);
      start = -1;
    }
  }
  return runs;
}
