/** Least distances between holes of a base plate, by the edition of its edge distances. */
import { aisc360FiveHoleSpacing } from "./aisc-360-05/hole-spacing.js";
import { aisc360HoleSpacing } from "./aisc-360-22/hole-spacing.js";
import type { EdgeEdition } from "./editions.js";
import { en1993Distances } from "./en-1993-1-8/distances.js";
import type { HoleSpacingRow } from "./hole-spacing.js";
import type { StandardTable } from "./model.js";

/** The stricter of pitch p1 and gauge p2 of Table 3.3, since which of them a spacing is turns on the load. */
function enSpacing(): StandardTable<HoleSpacingRow> {
  const { edition, clause, rows } = en1993Distances;
  const [p1, p2] = (["p1", "p2"] as const).map((symbol) => rows.find((row) => row.symbol === symbol));
  if (p1 === undefined || p2 === undefined) throw new RangeError(`${edition} ${clause} lacks p1 or p2`);
  const stricter = p1.factor > p2.factor ? p1 : p2;
  const { symbol, factor, source, confidence } = stricter;
  const note = `${symbol}, the stricter of p1 ${p1.factor} d0 and p2 ${p2.factor} d0: which holds turns on the load`;
  const times = Math.round(factor * 10);
  return {
    edition,
    clause,
    rows: [{ what: "spacing", of: "hole", times, per: 10, printed: `${factor} d0`, source, confidence, note }],
  };
}

const SPACINGS: Readonly<Record<EdgeEdition, StandardTable<HoleSpacingRow>>> = {
  "AISC 360-22": aisc360HoleSpacing,
  "AISC 360-22M": { ...aisc360HoleSpacing, edition: "AISC 360-22M" },
  "AISC 360-05": aisc360FiveHoleSpacing,
  "EN 1993-1-8:2005": enSpacing(),
};

/** The rows of an edition, centre to centre first. */
export function findHoleSpacing(edition: EdgeEdition): StandardTable<HoleSpacingRow> {
  return SPACINGS[edition];
}
