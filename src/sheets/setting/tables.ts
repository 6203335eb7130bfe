/** Tables of a setting sheet: heights from least to most, and what is taped, each with room for what was measured. */
import { concreteTopTolerance } from "../../checks/stack-terms.js";
import { isSetOverCastRods } from "../../job/model/base-hole.js";
import type { Input, RodGroup } from "../../job/model/job.js";
import { nutHeight, staysUnderBasePlate, washerThickness } from "../../job/model/stack.js";
import { findPlacing } from "../../standards/index.js";
import { formatLength, type Length } from "../../units/index.js";
import type { SheetRequest } from "../request.js";
import { type Range, rangeOf } from "../section-words.js";
import type { TableText } from "../table.js";
import { tapeTable } from "../tape-table.js";
import { gaugeFromTop, gaugeFromUnderside, rodTopRange } from "./gauge.js";

/** Room for a figure that is written by hand. */
const BLANK = "_______";
const NONE: ReadonlySet<number> = new Set();

/** Heights that are set, then those that stand later under the column; each least, nominal and most. */
export function heightsTable(request: SheetRequest): TableText {
  const { base, job } = request;
  const set = base.groups.flatMap((group) => setRows(request, group));
  const rows = [...set, ["LATER, FROM T.O.C. UP:", "", "", ""], ...stackRows(request)];
  const missing = rows.some((row) => row.includes(NOT_GIVEN));
  return {
    name: "setting-heights",
    heading: `HEIGHTS, ${job.unit === "in" ? "IN" : "MM"}`,
    columns: [
      { title: "", share: 0.49, align: "start" },
      { title: "LEAST", share: 0.17, align: "end" },
      { title: "NOMINAL", share: 0.17, align: "end" },
      { title: "MOST", share: 0.17, align: "end" },
    ],
    rows,
    foot: [
      `LEAST, MOST: ROD TOPS AND T.O.C. BY ${job.editions.placing}`,
      ...(missing ? [`${NOT_GIVEN}: ASK THE OFFICE`] : []),
    ],
    under: [],
    strong: new Set(rows.flatMap(([name = ""], i) => (name.startsWith("TEMPLATE TOP TO") ? [i] : []))),
  };
}

const NOT_GIVEN = "NOT GIVEN";

function setRows(request: SheetRequest, group: RodGroup): readonly (readonly string[])[] {
  const { base } = request;
  const of = base.groups.length === 1 ? "" : ` ${group.letter}`;
  const say = rowMaker(request);
  const top = (name: string, length: Input<Length>) => say(`${name}${of}`, length, rodTopRange(request, length));
  const projection = top("ROD TOP ABOVE T.O.C.", group.rod.projection);
  if (isSetOverCastRods(base.template)) return [projection];
  return [
    projection,
    top("TEMPLATE TOP TO ROD TOP", gaugeFromTop(base, group)),
    top("UNDERSIDE TO ROD TOP", gaugeFromUnderside(base, group)),
  ];
}

function stackRows(request: SheetRequest): readonly (readonly string[])[] {
  const { base } = request;
  const say = rowMaker(request);
  const grout = rangeOf(base.grout, concreteTopTolerance(request, "high"), concreteTopTolerance(request, "low"));
  return [
    say("GROUT", base.grout, grout),
    ...(staysUnderBasePlate(base)
      ? [say("SETTING PLATE", { kind: "given", value: base.template.thickness, from: "" }, null)]
      : []),
    say("BASE PLATE", base.basePlate.thickness, null),
    ...base.groups.flatMap((group) => {
      const of = base.groups.length === 1 ? "" : ` ${group.letter}`;
      const washer = group.washer.kind === "missing" ? group.washer : group.washer.value.thickness;
      const [least, most] = [washerThickness(group, "least"), washerThickness(group, "greatest")];
      const range = least.kind === "given" && most.kind === "given" ? { least: least.value, most: most.value } : null;
      return [
        say(`WASHER${of}`, washer, range),
        say(`NUT${of}`, nutHeight(group.rod), null),
        ...(group.rod.stickOut.kind === "given" && group.rod.stickOut.value > 0
          ? [say(`STICK-OUT${of}`, group.rod.stickOut, null)]
          : []),
      ];
    }),
  ];
}

function rowMaker({ job: { unit } }: SheetRequest) {
  return (name: string, nominal: Input<Length>, range: Range | null): readonly string[] => {
    if (nominal.kind === "missing") return [name, "", NOT_GIVEN, ""];
    const say = (length: number) => formatLength(length, unit);
    const isOne = range === null || range.least === range.most;
    return [name, isOne ? "" : say(range.least), say(nominal.value), isOne ? "" : say(range.most)];
  };
}

/** Gauges and diagonals with room for what the tape showed; null where there is one rod alone. */
export function tapedTable(request: SheetRequest): TableText | null {
  const tape = tapeTable(request);
  if (tape === null) return null;
  const [names, what, figure] = tape.columns;
  if (names === undefined || what === undefined || figure === undefined) return null;
  return {
    ...tape,
    name: "setting-tape",
    columns: [
      { ...names, share: 0.34 },
      { ...what, share: 0.22 },
      { ...figure, share: 0.22 },
      { title: "MEASURED", share: 0.22, align: "end" },
    ],
    rows: tape.rows.map(([pairs = "", kind = "", taped = ""]) => [pairs, kind, taped, taped === "" ? "" : BLANK]),
    foot: [...toleranceWords(request), ...tape.foot],
    strong: NONE,
  };
}

/** What the placing edition allows the rods as placed: one line a tolerance. */
export function toleranceWords({ base, job }: SheetRequest): readonly string[] {
  const { placing } = job.editions;
  const said = new Map<string, string[]>();
  for (const { rod } of base.groups) {
    const found = findPlacing(placing, rod.diameter, "fixed");
    const words = found.found
      ? `${found.row.limits === "spacing" ? "ANY TWO RODS: SPACING" : "EACH ROD"} WITHIN ${formatLength(found.row.tolerance, job.unit)}${found.row.limits === "spacing" ? "" : " OF ITS PLACE"} AS PLACED, ${found.edition}`
      : `NO PLACING TOLERANCE IN ${placing}: ASK THE OFFICE`;
    said.set(words, [...(said.get(words) ?? []), rod.size]);
  }
  return [...said].map(([words, sizes]) => (said.size === 1 ? words : `${[...new Set(sizes)].join(", ")}: ${words}`));
}
