/** Many cells and bases at once: pasted blocks, copies, moves, another order. */
import { describe, expect, it } from "vitest";
import {
  ordered,
  pasted,
  shifted,
  withChanges,
  withCopies,
  withNew,
  without,
} from "../../../../src/web/schedule/changes.js";
import { COLUMNS } from "../../../../src/web/schedule/columns.js";
import { type Items, itemsOf, nextMark, spliceTo, textOf } from "../../../../src/web/schedule/items.js";
import { allNow, placesNow } from "../../../../src/web/schedule/meanwhile.js";
import { readTsv, writeTsv } from "../../../../src/web/schedule/tsv.js";
import { changesOf, JOB, targetsOf } from "./job.js";

function items(text = JOB): Items {
  const found = itemsOf(text);
  if (found === null) throw new Error("no list of bases");
  return found;
}

const noRest = () => Promise.resolve();

/** The text of a list that could be changed. */
function textAfter(made: Items | null): string {
  if (made === null) throw new Error("nothing was changed");
  return textOf(made);
}

const marks = (text: string): readonly string[] => [...text.matchAll(/- mark: (\S+)/g)].map(([, mark]) => mark ?? "");

describe("cells of a spreadsheet", () => {
  it("keeps inch marks, blank cells and quoted cells with breaks", () => {
    expect(readTsv('B1\t1 1/4"\t\r\n"two\nlines"\t6"\t"say ""9"""\r\n')).toEqual([
      ["B1", '1 1/4"', ""],
      ["two\nlines", '6"', 'say "9"'],
    ]);
  });

  it("reads what it writes", () => {
    const rows = [
      ["a\tb", '"', "x\ny"],
      ["", "1/2", "=1+1"],
    ];
    expect(readTsv(writeTsv(rows))).toEqual(rows);
  });

  it("reads a large block in time that grows with it alone", () => {
    const block = Array.from({ length: 20_000 }, (_, i) => `B${i}\t12\t10`).join("\n");
    expect(readTsv(block)).toHaveLength(20_000);
  });
});

describe("the list of bases as text", () => {
  it("is the same when nothing is done", () => {
    expect(textOf(items())).toBe(JOB);
    expect(spliceTo(JOB, JOB)).toBe(null);
  });

  it("keeps comments with the base under them when the order is another", () => {
    const now = textOf(ordered(items(), [2, 0, 1]));
    expect(marks(now)).toEqual(["B3", "B1", "B2"]);
    expect(now).toMatch(/# brace frame\n {2}- mark: B2/);
    expect(now).toContain("placements:\n");
  });

  it("moves a block of bases past its neighbour", () => {
    expect(marks(textOf(shifted(items(), [0, 1], 1)))).toEqual(["B3", "B1", "B2"]);
    expect(marks(textOf(shifted(items(), [1, 2], -1)))).toEqual(["B2", "B3", "B1"]);
  });

  it("adds, copies and takes out", () => {
    expect(marks(textOf(withNew(items(), 0, "B4")))).toEqual(["B1", "B4", "B2", "B3"]);
    const copied = textAfter(withCopies(items(), [0], ["B4"]));
    expect(marks(copied)).toEqual(["B1", "B4", "B2", "B3"]);
    expect(copied.match(/mark: T1/g)).toHaveLength(1);
    expect(marks(textOf(without(items(), [1])))).toEqual(["B1", "B3"]);
  });

  it("has no list where the bases lean on each other", () => {
    expect(itemsOf("bases:\n  - &a { mark: B1 }\n  - *a\n")).toBe(null);
    expect(itemsOf("schedule: bases.csv\n")).toBe(null);
  });
});

describe("bases that share what is written once", () => {
  const shared = `bases:
  - mark: B1
    rods: &usual { diameter: 1, grade: 36 }
  - mark: B2
    rods: *usual
`;

  it("are changed where that is sure, and else not at all: no cell is dropped without a word", async () => {
    const change = (index: number) => ({
      edits: new Map([[index, [{ kind: "set", path: ["rods", "diameter"], text: "7/8" } as const]]]),
      added: [],
    });
    const list = itemsOf(shared);
    expect(list && (await withChanges(list, change(1), noRest))).toBe(null);
  });
});

describe("a change that waited for others", () => {
  const list = (...all: readonly string[]) => all.map((mark) => ({ mark }));
  const seen = list("B1", "B2", "B3");

  it.each([
    ["nothing was changed", list("B1", "B2", "B3"), 1],
    ["one came before it", list("B1", "B9", "B2", "B3"), 2],
    ["one before it is gone", list("B2", "B3"), 0],
    ["it was moved", list("B2", "B1", "B3"), 0],
    ["its mark was changed in place", list("B1", "C2", "B3"), 1],
    ["it is gone", list("B1", "B3"), null],
    ["it is gone and another came", list("B1", "B3", "B4", "B5"), null],
    ["its mark stands twice elsewhere", list("B9", "B1", "B2", "B2"), null],
  ])("finds its base where %s", (_, now, place) => {
    expect(placesNow(seen, now)(1)).toBe(place);
  });

  it("is for all of its bases or for none", () => {
    expect(allNow(seen, list("B1", "B3"), [0, 2])).toEqual([0, 1]);
    expect(allNow(seen, list("B1", "B3"), [0, 1])).toBe(null);
  });
});

describe("the next mark", () => {
  it.each([
    ["B3", ["B3"], "B4"],
    ["B9", ["B9", "B10"], "B11"],
    ["C-09", ["C-09"], "C-10"],
    ["COL", ["COL"], "COL-2"],
    ["", [], "B2"],
  ])("after %s is free", (mark, taken, next) => {
    expect(nextMark(mark, new Set(taken))).toBe(next);
  });
});

describe("a pasted block", () => {
  const columns = COLUMNS.filter(({ id }) => ["mark", "state", "rods.diameter", "rods.projection"].includes(id));
  const taken = new Set(["B1", "B2", "B3"]);

  it("lands on lines and goes on with new bases, in one text", async () => {
    const block = Array.from({ length: 203 }, (_, i) => [`N${i}`, "", "7/8", "6-1/2"]);
    const made = pasted(block, targetsOf(JOB), columns, 0, taken);
    const now = textAfter(await withChanges(items(), made, noRest));
    expect(marks(now)).toHaveLength(203);
    expect(now.match(/diameter: 7\/8/g)).toHaveLength(203);
    expect(now).toContain("rods: { diameter: 7/8, projection: 6-1/2 }");
    expect(made.refused).toEqual([]);
  });

  it("tells cell by cell what it does not take, and takes the rest", () => {
    const made = pasted([["B1", "held", "1", "9", "beyond"]], targetsOf(JOB), columns, 0, taken);
    expect(made.refused).toEqual([
      { where: "B1, State", text: "held", why: "State is worked out and cannot be typed" },
      { where: "B1", text: "beyond", why: "there is no column for it" },
    ]);
    expect(changesOf(made, 0)).toEqual([["rods.projection", "9"]]);
  });

  it("goes by a row of headings where it has one", () => {
    const made = pasted(
      [
        ["Projection", "Rod dia"],
        ["9", "1-1/8"],
      ],
      targetsOf(JOB),
      columns,
      0,
      taken,
    );
    expect(changesOf(made, 0)).toEqual([
      ["rods.projection", "9"],
      ["rods.diameter", "1-1/8"],
    ]);
  });

  it("gives new bases without a mark the next that is free", () => {
    const made = pasted([["1"], ["1"], ["1"], ["1-1/4"]], targetsOf(JOB), columns, 2, taken);
    expect(made.added.map(({ mark }) => mark)).toEqual(["B4"]);
  });
});
