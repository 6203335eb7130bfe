/** What proves a heading that could be several things, what does not, and how it is asked. Data invented. */
import { describe, expect, it } from "vitest";
import { foundTable, settle, settledAs } from "./found-tables.js";

type Rows = readonly (readonly string[])[];

/** What the first column is settled to. */
function firstOf(headings: readonly string[], rows: Rows, answers: Readonly<Record<string, string>> = {}): string {
  return settledAs(settle(foundTable(headings, ...rows), answers))[0] ?? "";
}

describe("QTY below ANCHOR RODS", () => {
  const headings = ["ANCHOR RODS / QTY", "MARK", "X", "Y", "nx", "ny"];

  it.each<[string, string, Rows]>([
    [
      "equals the rods of two rows",
      "Rod count",
      [
        ["4", "B1", "12", "10", "2", "2"],
        ["6", "B2", "12", "10", "3", "2"],
      ],
    ],
    [
      "equals two rods each way, where no column says more",
      "Rod count",
      [
        ["4", "B1", "12", "10"],
        ["4", "B2", "9", "9"],
      ],
    ],
    [
      "equals spaces in the cells",
      "Rod count",
      [
        ["6", "B1", '2 @ 6"', "10"],
        ["4", "B2", "9", "9"],
      ],
    ],
    [
      "differs in one row",
      "asked",
      [
        ["4", "B1", "12", "10", "2", "2"],
        ["4", "B2", "12", "10", "3", "2"],
      ],
    ],
    ["has one row only", "asked", [["4", "B1", "12", "10", "2", "2"]]],
    [
      "has no pattern beside it",
      "asked",
      [
        ["4", "B1"],
        ["4", "B2"],
      ],
    ],
    [
      "has a row that cannot be read",
      "asked",
      [
        ["4", "B1", "12", "10"],
        ["4 EA SIDE", "B2", "12", "10"],
      ],
    ],
    [
      "has ditto marks",
      "Rod count",
      [
        ["4", "B1", "12", "10"],
        ["DO", "B2", "12", "10"],
      ],
    ],
  ])("%s: %s", (_, expected, rows) => {
    expect(firstOf(headings, rows)).toBe(expected);
  });

  it("is the rods where the bases are counted elsewhere", () => {
    const table = foundTable(["MARK", "NO. OF BASES", "ANCHOR RODS / QTY"], ["B1", "3", "4"]);
    expect(settledAs(settle(table))).toEqual(["Mark", "Qty", "Rod count"]);
  });

  it("counts perimeters, lines, circles and points", () => {
    const columns = [
      "ANCHOR RODS / NO.",
      "MARK",
      "X",
      "Y",
      "nx",
      "ny",
      "Perimeter",
      "Lines X",
      "Lines Y",
      "Bolt circle",
      "Count",
      "Points",
    ];
    const rows = [
      ["8", "B1", "20", "20", "3", "3", "yes"],
      ["6", "B2", "", "", "", "", "", "-9; 0; 9", "-6; 6"],
      ["12", "B3", "", "", "", "", "", "", "", "24", "12"],
      ["2", "B4", "", "", "", "", "", "", "", "", "", "0,6; 0,-6"],
    ];
    expect(firstOf(columns, rows)).toBe("Rod count");
    expect(firstOf(columns, [...rows, ["9", "B5", "20", "20", "3", "3", "yes"]])).toBe("asked");
  });

  it("is asked once, with the lines that answer it, and settled by either", () => {
    const rows = [["4", "B1", "12", "10", "3", "2"]];
    const { questions, findings } = settle(foundTable(headings, ...rows));
    expect(questions).toEqual([
      {
        cells: ["Bases!A5", "Bases!A6"],
        text: '"ANCHOR RODS / QTY" may be the number of rods on one base or the number of bases; nothing on the sheet proves which',
        choices: [
          { line: 'columns: { "ANCHOR RODS / QTY": Rod count }', means: "the number of rods on one base" },
          { line: 'columns: { "ANCHOR RODS / QTY": Qty }', means: "the number of bases" },
          { line: 'columns: { "ANCHOR RODS / QTY": note }', means: "none of these (kept as a note)" },
        ],
        mayGive: ["rods.count", "quantity"],
      },
    ]);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["asked-heading", "error"]]);
    expect(findings[0]?.hint).toContain('columns: { "ANCHOR RODS / QTY": Rod count }');
    expect(firstOf(headings, rows, { "ANCHOR RODS / QTY": "Rod count" })).toBe("Rod count");
    expect(firstOf(headings, rows, { "anchor rods/qty": "qty" })).toBe("Qty");
    expect(firstOf(headings, rows, { QTY: "note" })).toBe("note");
    expect(firstOf(headings, rows, { A: "left out" })).toBe("left out");
  });
});

describe("QTY alone", () => {
  const headings = ["QTY", "MARK", "ROD SIZE", "X", "Y", "nx", "ny"];

  it.each<[string, string, Rows]>([
    [
      "differs from the rods of a row",
      "Qty",
      [
        ["4", "B1", "1", "12", "10", "2", "2"],
        ["6", "B2", "1", "12", "10", "2", "2"],
      ],
    ],
    ["is one", "Qty", [["1", "B1", "1"]]],
    [
      "is fewer than two rods each way",
      "Qty",
      [
        ["6", "B1", "1", "12", "10"],
        ["2", "B2", "1", "12", "10"],
      ],
    ],
    [
      "is odd where the rods stand on a rectangle",
      "Qty",
      [
        ["4", "B1", "1", "12", "10"],
        ["5", "B2", "1", "12", "10"],
      ],
    ],
    [
      "equals the rods in every row",
      "asked",
      [
        ["4", "B1", "1", "12", "10"],
        ["4", "B2", "1", "12", "10"],
      ],
    ],
    [
      "may be rods that no column says otherwise of",
      "asked",
      [
        ["4", "B1", "1", "12", "10"],
        ["6", "B2", "1", "12", "10"],
      ],
    ],
    [
      "may be two rods on a line",
      "asked",
      [
        ["4", "B1", "1", "12", "10"],
        ["2", "B2", "1", "6", "0"],
      ],
    ],
    [
      "stands beside counted rods",
      "Qty",
      [
        ["4", "B1", '(4) 1"'],
        ["4", "B2", '(4) 3/4"'],
      ],
    ],
  ])("%s: %s", (_, expected, rows) => {
    expect(firstOf(headings, rows)).toBe(expected);
  });

  it("is the bases beside a column that counts the rods", () => {
    expect(settledAs(settle(foundTable(["MARK", "QTY", "NO. OF RODS"], ["B1", "4", "4"])))).toEqual([
      "Mark",
      "Qty",
      "Rod count",
    ]);
  });

  it("is what it is called in a sheet of our own headings", () => {
    const own = foundTable(["Mark", "Qty", "Rod dia", "X", "Y", "Template thk"], ["B1", "4", "1", "12", "10", "1/4"]);
    expect(settledAs(settle(own))).toEqual(["Mark", "Qty", "Rod dia", "X", "Y", "Template thk"]);
    expect(settle(own).findings).toEqual([]);
  });
});

describe("SPACING", () => {
  const headings = ["SPACING X", "MARK", "nx", "BASE PLATE X", "ROD DIA"];

  it.each<[string, string, Rows]>([
    ["of two rods is overall", "X", [["12", "B1", "2", "18", "1"]]],
    ["without a number of rods is of two", "X", [["12", "B1", "", "18", "1"]]],
    ["of three rods that would stand off the plate from rod to rod is overall", "X", [["12", "B1", "3", "18", "1"]]],
    ["of three rods that would just stand at the plate's edge is overall", "X", [["9", "B1", "3", "18", "1"]]],
    ["of three rods that fit both ways is asked", "asked", [["6", "B1", "3", "18", "1"]]],
    ["of eight rods that would touch is from rod to rod", "Pitch X", [["6", "B1", "8", "48", "1"]]],
    [
      "that one row proves overall and another from rod to rod is asked",
      "asked",
      [
        ["12", "B1", "3", "18", "1"],
        ["6", "B2", "8", "48", "1"],
      ],
    ],
    [
      "that one row proves holds for the others",
      "X",
      [
        ["12", "B1", "3", "18", "1"],
        ["6", "B2", "3", "18", "1"],
      ],
    ],
    ["without a plate is asked", "asked", [["12", "B1", "3", "", "1"]]],
    ["of spaces says it itself", "X", [["2 @ 6", "B1", "", "18", "1"]]],
  ])("%s", (_, expected, rows) => {
    const settled = firstOf(headings, rows);
    expect(settled).toBe(expected);
  });

  it("is asked where the sheet counts other than four rods and not by axis", () => {
    expect(firstOf(["SPACING X", "SPACING Y", "NO. OF RODS"], [["12", "10", "6"]])).toBe("asked");
    expect(firstOf(["SPACING X", "SPACING Y", "NO. OF RODS"], [["12", "10", "4"]])).toBe("X");
    expect(firstOf(["BOLT SPACING", "ANCHOR RODS"], [["12x10", '(6) 3/4"Ø']])).toBe("asked");
    expect(firstOf(["BOLT SPACING", "ANCHOR RODS"], [["12x10", '(4) 3/4"Ø']])).toBe("Pattern size");
    expect(firstOf(["GAGE", "nx"], [["12x10", "3"]])).toBe("asked");
  });

  it("is overall of six rods too, where no plate has room for a third so far on", () => {
    const headings = ["GAGE X", "GAGE Y", "ANCHOR RODS", "BASE PLATE"];
    const of = (...row: readonly string[]) => settledAs(settle(foundTable(headings, row))).slice(0, 2);
    expect(of("14", "16", '(6) 1"Ø', '1 1/4"x18x22')).toEqual(["X", "Y"]);
    expect(of("14", "11", '(6) 1"Ø', "PL 1x18x22")).toEqual(["X", "Y"]);
    expect(of("14", "10 15/16", '(6) 1"Ø', "PL 1x18x22")).toEqual(["X", "asked"]);
    expect(of("14", "16", '(6) 1"Ø', "SEE 3/S-5")).toEqual(["asked", "asked"]);
    expect(firstOf(["GAGE", "ANCHOR RODS", "BASE PLATE"], [["14 x 16", "(6) 1", "18 x 20 x 1"]])).toBe("Pattern size");
    expect(firstOf(["GAGE", "ANCHOR RODS", "BASE PLATE"], [["14 x 6", "(6) 1", "18 x 20 x 1"]])).toBe("asked");
  });

  it("of one length a base is asked: along one axis, or the same both ways", () => {
    const { questions } = settle(foundTable(["GAGE", "MARK"], ["8", "B1"], ['10"', "B2"]));
    const lines = ["X", "Y", "Pitch X", "Pitch Y", "square", "note"].map((name) => `columns: { "GAGE": ${name} }`);
    expect(questions.map(({ choices }) => choices.map(({ line }) => line))).toEqual([lines]);
    expect(firstOf(["GAGE", "MARK"], [["8", "B1"]], { GAGE: "square" })).toBe("Pattern size");
    expect(firstOf(["GAGE", "MARK"], [["8 C/C", "B1"]])).toBe("Pattern size");
    expect(
      firstOf(
        ["GAGE", "MARK"],
        [
          ["8 x 8", "B1"],
          ["8", "B2"],
        ],
      ),
    ).toBe("Pattern size");
  });

  it("in millimetres is as sure", () => {
    const table = foundTable(["BOLT CENTRES X", "MARK", "nx", "BASE PLATE X (mm)"], ["300", "B1", "3", "500"]);
    expect(settledAs(settle(table, {}, { unit: "mm" }))[0]).toBe("X");
  });

  it("named overall or pitch is that", () => {
    const rows = [["6", "6", "B1", "3"]];
    expect(settledAs(settle(foundTable(["OVERALL X", "PITCH Y", "MARK", "nx"], ...rows))).slice(0, 2)).toEqual([
      "X",
      "Pitch Y",
    ]);
    expect(firstOf(["PITCH", "MARK"], [["12 x 10", "B1"]])).toBe("Pattern pitch");
    expect(firstOf(["PITCH", "MARK"], [["3", "B1"]])).toBe("asked");
  });
});

describe("width and length of a base plate", () => {
  const headings = ["BASE PLATE / W", "BASE PLATE / L", "MARK", "X", "Y"];

  it("are either where they are equal in every row", () => {
    const { columns } = settle(foundTable(headings, ["18", "18", "B1"], ["1'-4\"", "16", "B2"]));
    expect(columns.map(({ heading }) => heading?.name).slice(0, 2)).toEqual(["Base plate Y", "Base plate X"]);
    expect(columns[0]?.how).toBe("equal to the other side in every row");
  });

  it.each<[string, readonly string[], Rows]>([
    ["x where the rods stand on it one way only", ["Base plate X", "Base plate Y"], [["20", "12", "B1", "16", "8"]]],
    [
      "y where the rods stand on it the other way only",
      ["Base plate Y", "Base plate X"],
      [["12", "20", "B1", "16", "8"]],
    ],
    ["asked where both ways fit", ["asked", "asked"], [["20", "18", "B1", "12", "12"]]],
    ["asked where neither fits", ["asked", "asked"], [["12", "20", "B1", "16", "16"]]],
    [
      "asked where rows prove both ways",
      ["asked", "asked"],
      [
        ["20", "12", "B1", "16", "8"],
        ["12", "20", "B2", "16", "8"],
      ],
    ],
    ["asked without a pattern", ["asked", "asked"], [["20", "18", "B1"]]],
    [
      "one proved row holds for all",
      ["Base plate X", "Base plate Y"],
      [
        ["20", "12", "B1", "16", "8"],
        ["20", "18", "B2", "8", "8"],
      ],
    ],
  ])("%s", (_, expected, rows) => {
    expect(settledAs(settle(foundTable(headings, ...rows))).slice(0, 2)).toEqual(expected);
  });

  it("are one question for both", () => {
    const { questions } = settle(foundTable(headings, ["20", "18", "B1"]));
    expect(questions.map(({ choices }) => choices.map(({ line }) => line))).toEqual([
      [
        'columns: { "BASE PLATE / W": Base plate X, "BASE PLATE / L": Base plate Y }',
        'columns: { "BASE PLATE / W": Base plate Y, "BASE PLATE / L": Base plate X }',
      ],
    ]);
  });

  it("one answer settles both", () => {
    const table = foundTable(headings, ["20", "18", "B1"]);
    expect(settledAs(settle(table, { "BASE PLATE / L": "Base plate X" })).slice(0, 2)).toEqual([
      "Base plate Y",
      "Base plate X",
    ]);
  });
});

describe("LENGTH alone", () => {
  const headings = ["LENGTH", "MARK", "EMBED", "PROJ"];

  it.each<[string, string, Rows]>([
    [
      "embedment and projection together",
      "Rod length",
      [
        ["24", "B1", "18", "6"],
        ["2'-6\"", "B2", "20", "10"],
      ],
    ],
    [
      "not so in one row",
      "asked",
      [
        ["24", "B1", "18", "6"],
        ["24", "B2", "18", "7"],
      ],
    ],
    ["no embedment", "asked", [["24", "B1", "", "6"]]],
  ])("%s: %s", (_, expected, rows) => {
    expect(firstOf(headings, rows)).toBe(expected);
  });
});

describe("holes", () => {
  it("are never guessed from their size", () => {
    for (const hole of ["13/16", "1-5/16", "1-1/16", "2"])
      expect(firstOf(["HOLE", "ROD DIA"], [[hole, "3/4"]])).toBe("asked");
    expect(firstOf(["HOLE", "BASE PLATE HOLE"], [["13/16", "1-5/16"]])).toBe("asked");
    expect(firstOf(["HOLE SIZE", "TEMPLATE HOLE"], [["1-5/16", ""]])).toBe("asked");
  });

  it("are the base plate's where the template's have a column", () => {
    expect(firstOf(["HOLE", "TEMPLATE HOLE"], [["1-5/16", "13/16"]])).toBe("Base plate hole");
  });
});

describe("what the form of the cells proves", () => {
  it.each<[string, readonly string[], string]>([
    ["DIA", ["3/4", "1"], "Rod dia"],
    ["DIA", ["M24", "M30"], "Rod dia"],
    ["DIA", ["24", "30"], "asked"],
    ["SIZE", ['3/4"Ø', '1"Ø'], "Rod dia"],
    ["SIZE", ["W12x65", "HSS8x8x1/2"], "Column"],
    ["SIZE", ["18x18x1-1/2"], "Base plate size"],
    ["SIZE", ["18x18"], "asked"],
    ["ANCHOR RODS", ['(4) 3/4"', '(4) 1"'], "Rods"],
    ["ANCHOR RODS", ["3/4", "1"], "Rods"],
    ["ANCHOR RODS", ["4", "4"], "asked"],
    ["ANCHOR RODS", ["4", "4 TOTAL"], "asked"],
    ["ROD SIZE", ["3/4", "1-1/4"], "Rod dia"],
    ["ROD SIZE", ['(4) 3/4"', '(4) 1"'], "Rods"],
    ["BASE PLATE", ["18x18x1", "PL 1 1/2x20x20"], "Base plate size"],
    ["BASE PLATE", ["1", "1-1/2"], "Base plate thk"],
    ["PLATE", ["BP1", "BP2"], "note"],
    ["GRADE", ["36", "55"], "Grade"],
    ["GRADE", ["F1554 GR 55", "F1554 GR 36"], "Grade"],
    ["GRADE", ["A36", "A36"], "asked"],
    ["GRADE", ["50", "50"], "note"],
    ["GRADE", ["4000", "5000"], "note"],
    ["MATERIAL", ["steel", "plywood"], "Material"],
    ["MATERIAL", ["F1554 GR 36", "F1554 GR 105"], "Rod material"],
    ["MATERIAL", ["A36", "A36"], "asked"],
    ["THREAD", ["6", "4-1/2"], "Threads"],
    ["THREAD", ["UNC", "8UN"], "Thread"],
    ["BOTTOM", ["nut", "plate 3 x 1/2"], "Bottom"],
    ["BOTTOM", ["99'-6\"", "EL 100.25"], "B.O.P."],
    ["PATTERN", ["rectangle", "circle"], "Pattern"],
    ["PATTERN", ["12x12", "12 x 10"], "Pattern size"],
    ["PIER", ["24x24", "30Ø"], "Pier size"],
    ["PIER", ["P1", "P2"], "note"],
    ["COLUMN", ["W12x65", "HEB 300"], "Column"],
    ["NUTS", ["2", "2"], "note"],
    ["NUTS", ["HEAVY HEX", "HVY HEX NUT"], "Nut"],
    ["S1", ["yes", "no"], "Weldable"],
    ["S1", ["6", "8"], "note"],
    ["MEMBER", ["column", "post"], "Member"],
    ["MEMBER", ["W12x65", "W10x49"], "Column"],
  ])("%s over %j: %s", (heading, texts, expected) => {
    const hasMark = expected !== "Mark";
    const headings = hasMark ? [heading, "MARK"] : [heading];
    const rows = texts.map((text, row) => (hasMark ? [text, `B${row + 1}`] : [text]));
    expect(firstOf(headings, rows)).toBe(expected);
  });

  it("a cell that is another thing makes it asked", () => {
    expect(
      firstOf(
        ["BASE PLATE", "MARK"],
        [
          ["18x18x1", "B1"],
          ["1-1/2", "B2"],
        ],
      ),
    ).toBe("asked");
    expect(
      firstOf(
        ["MATERIAL", "MARK"],
        [
          ["steel", "B1"],
          ["F1554 GR 36", "B2"],
        ],
      ),
    ).toBe("asked");
    expect(
      firstOf(
        ["THREAD", "MARK"],
        [
          ["UNC", "B1"],
          ["6", "B2"],
        ],
      ),
    ).toBe("asked");
  });

  it("blank cells are settled to nothing and not asked", () => {
    const { questions, columns } = settle(foundTable(["MARK", "THK", "HOLE"], ["B1", "", "-"]));
    expect([questions, columns.map(({ as }) => as)]).toEqual([[], ["value", "note", "note"]]);
  });
});

describe("diameters", () => {
  it("are the rods' only where nothing else may give those", () => {
    expect(firstOf(["DIA", "ROD DIA"], [["1-1/4", "1"]])).toBe("asked");
    expect(firstOf(["DIA", "SIZE"], [["1-1/4", "1"]])).toBe("asked");
    const given = new Set(["rods.diameter"]);
    expect(settledAs(settle(foundTable(["DIA", "MARK"], ["1-1/4", "B1"]), {}, { given }))[0]).toBe("asked");
  });
});

describe("marks", () => {
  it("TYPE is the mark where no other column is and all differ", () => {
    expect(
      firstOf(
        ["TYPE", "ROD DIA"],
        [
          ["A", "1"],
          ["B", "1"],
        ],
      ),
    ).toBe("Mark");
    expect(
      firstOf(
        ["TYPE", "ROD DIA"],
        [
          ["A", "1"],
          ["A", "1"],
        ],
      ),
    ).toBe("asked");
    expect(
      firstOf(
        ["TYPE", "MARK"],
        [
          ["A", "B1"],
          ["A", "B2"],
        ],
      ),
    ).toBe("note");
    expect(
      firstOf(
        ["TYPE", "MARK"],
        [
          ["rectangle", "B1"],
          ["circle", "B2"],
        ],
      ),
    ).toBe("Pattern");
    expect(
      firstOf(
        ["TYPE", "MARK"],
        [
          ["W12x65", "B1"],
          ["W10x33", "B2"],
        ],
      ),
    ).toBe("Column");
  });

  it("TYPE is a kind of the job where every cell names one", () => {
    const table = foundTable(["TYPE", "MARK"], ["HEAVY", "B1"], ["light", "B2"]);
    expect(settledAs(settle(table, {}, { kinds: ["heavy", "Light"] }))[0]).toBe("Kind");
    expect(settledAs(settle(table, {}, { kinds: ["heavy"] }))[0]).toBe("note");
  });

  it("COLUMN MARK beside MARK is a note, alone it is the mark, beside another that may be it is asked", () => {
    expect(firstOf(["COLUMN MARK", "MARK"], [["C1", "B1"]])).toBe("note");
    expect(firstOf(["COLUMN MARK", "ROD DIA"], [["C1", "1"]])).toBe("Mark");
    expect(settledAs(settle(foundTable(["COLUMN MARK", "BP MARK"], ["C1", "B1"])))).toEqual(["asked", "asked"]);
  });

  it("NO. is a mark over texts, and asked over numbers", () => {
    expect(
      firstOf(
        ["NO.", "ROD DIA"],
        [
          ["B1", "1"],
          ["B2", "1"],
        ],
      ),
    ).toBe("Mark");
    expect(
      firstOf(
        ["NO.", "MARK"],
        [
          ["B1", "M1"],
          ["B2", "M2"],
        ],
      ),
    ).toBe("note");
    expect(
      firstOf(
        ["NO.", "MARK"],
        [
          ["4", "M1"],
          ["6", "M2"],
        ],
      ),
    ).toBe("asked");
  });
});

describe("what is only asked", () => {
  it.each([
    "THK",
    "T",
    "WIDTH",
    "DEPTH",
    "HEIGHT",
    "EL",
    "TOP",
    "SETTING PLATE / THK",
    "PIER / DEPTH",
    "BASE PLATE EL.",
  ])("%s", (heading) => {
    const { questions } = settle(foundTable([heading, "MARK"], ["12", "B1"]));
    expect(questions).toHaveLength(1);
    expect(questions[0]?.choices.at(-1)?.line).toBe(`columns: { "${heading}": note }`);
  });

  it("FOOTING SIZE is asked where the sheet has no pier, else it is a note", () => {
    expect(firstOf(["FOOTING SIZE", "MARK"], [["72x72", "B1"]])).toBe("asked");
    expect(firstOf(["FOOTING SIZE", "PIER SIZE"], [["72x72", "24x24"]])).toBe("note");
  });

  it("a thing that has columns of its own is none of several any more", () => {
    const table = foundTable(["THK", "BASE PLATE THK", "TEMPLATE THK", "GROUT"], ["1", "1-1/2", "1/4", "1-1/2"]);
    expect(settledAs(settle(table))[0]).toBe("note");
  });
});

describe("two columns of one heading", () => {
  it("that say the same are one", () => {
    const { columns, findings } = settle(
      foundTable(["MARK", "ROD DIA", "A.B. DIA"], ["B1", "1-1/4", '1 1/4"'], ["B2", "1", ""]),
    );
    expect(columns.map(({ as }) => as)).toEqual(["value", "value", "left out"]);
    expect([columns[2]?.how, findings]).toEqual(["says the same as ROD DIA", []]);
  });

  it("that fill each other's gaps are both kept", () => {
    expect(settledAs(settle(foundTable(["ROD DIA", "A.B. DIA"], ["1", ""], ["", "3/4"])))).toEqual([
      "Rod dia",
      "Rod dia",
    ]);
  });

  it("that differ are a fault of both cells, and one question", () => {
    const { columns, findings, questions } = settle(
      foundTable(["MARK", "ROD DIA", "A.B. DIA"], ["B1", "1", "1"], ["B2", "1", "3/4"]),
    );
    expect(columns.map(({ as }) => as)).toEqual(["value", "asked", "asked"]);
    expect(findings.map(({ code, message }) => [code, message])).toEqual([
      [
        "two-columns-differ",
        'Rod dia is given twice and differs: "1" in B7 under ROD DIA, "3/4" in C7 under A.B. DIA; allowed is one column, the other left out or a note',
      ],
    ]);
    expect(questions[0]?.choices.map(({ line }) => line)).toEqual([
      'columns: { "A.B. DIA": left out }',
      'columns: { "ROD DIA": left out }',
    ]);
    const answered = settle(foundTable(["MARK", "ROD DIA", "A.B. DIA"], ["B2", "1", "3/4"]), {
      "A.B. DIA": "left out",
    });
    expect([settledAs(answered), answered.findings]).toEqual([["Mark", "Rod dia", "left out"], []]);
  });

  it("of the same words are told apart by their letters", () => {
    const { questions } = settle(foundTable(["MARK", "ROD DIA", "ROD DIA"], ["B1", "1", "3/4"]));
    expect(questions[0]?.choices.map(({ line }) => line)).toEqual([
      'columns: { "C": left out }',
      'columns: { "B": left out }',
    ]);
  });

  it("of notes are all kept as notes", () => {
    expect(settledAs(settle(foundTable(["MARK", "REMARKS", "NOTES"], ["B1", "a", "b"])))).toEqual([
      "Mark",
      "note",
      "note",
    ]);
  });
});

describe("headings that are not known", () => {
  it("are kept as notes, and listed in one warning", () => {
    const { columns, findings } = settle(
      foundTable(["MARK", "REV", "TIES", "REINF / SIZE", ""], ["B1", "A", "#3", "#5", "x"]),
    );
    expect(columns.map(({ as, heading }) => [as, heading?.name ?? null])).toEqual([
      ["value", "Mark"],
      ...Array(4).fill(["note", null]),
    ]);
    expect(findings.map(({ severity, message }) => [severity, message])).toEqual([
      ["warning", "4 headings are not known and kept as notes: REV, TIES, REINF / SIZE, E"],
    ]);
  });

  it("are not told again where the job says what they are", () => {
    const table = foundTable(["MARK", "REV", "TIES"], ["B1", "A", "#3"]);
    expect(settle(table, { REV: "note", TIES: "left out" }).findings).toEqual([]);
    expect(settledAs(settle(table, { REV: "note", TIES: "left out" }))).toEqual(["Mark", "note", "left out"]);
  });

  it("very many are told in a line", () => {
    const many = Array.from({ length: 5000 }, (_, index) => `THING ${index}`);
    const { findings } = settle(foundTable(["MARK", ...many], ["B1"]));
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message.length).toBeLessThan(400);
  });
});

describe("very long and very wide sheets", () => {
  it("of 20,000 rows are settled as short ones", () => {
    const headings = [
      "TYPE",
      "QTY",
      "ANCHOR RODS / QTY",
      "DIA",
      "GAGE X",
      "GAGE Y",
      "nx",
      "LENGTH",
      "EMBED",
      "PROJ",
      "HOLE",
    ];
    const row = (mark: number) => [`B${mark}`, "3", "4", '3/4"', "12", "10", "2", "24", "18", "6", "1-5/16"];
    const { columns, questions } = settle(
      foundTable(headings, ...Array.from({ length: 20_000 }, (_, index) => row(index))),
    );
    const names = columns.map(({ heading, as }) => heading?.name ?? as);
    expect(names.slice(0, 5)).toEqual(["Mark", "Qty", "Rod count", "Rod dia", "X"]);
    expect(names.slice(5)).toEqual(["Y", "nx", "Rod length", "Embedment", "Projection", "asked"]);
    expect(questions.map(({ cells }) => cells.length)).toEqual([20_001]);
  });

  it("of 2000 columns that may be several things ask for each", () => {
    const headings = Array.from({ length: 2000 }, (_, index) => ["HOLE", "THK", "HEIGHT"][index % 3] ?? "");
    const { questions } = settle(
      foundTable(
        headings,
        headings.map(() => "1"),
      ),
    );
    expect(questions).toHaveLength(2000);
    expect(questions[27]?.choices[0]?.line).toBe('columns: { "AB": Base plate hole }');
  });
});

describe("answers", () => {
  const table = foundTable(["MARK", "ANCHOR RODS / QTY", "BASE PLATE / QTY", "L", "HOLE"], ["B1", "4", "1", "18", "1"]);
  const told = (answers: Readonly<Record<string, string>>) =>
    settle(table, answers)
      .findings.filter(({ code }) => code === "answer-without-match")
      .map(({ at, message }) => `${at.path}: ${message}`);

  it("that match no heading, several, or no name are faults with the nearest", () => {
    expect(told({ HOLS: "note" })).toEqual([
      "columns HOLS: is no heading of the sheet; the nearest are HOLE, L, ANCHOR RODS / QTY",
    ]);
    expect(told({ QTY: "Qty" })).toEqual([
      "columns QTY: is the heading of 2 columns; allowed is one of ANCHOR RODS / QTY (B5), BASE PLATE / QTY (C5)",
    ]);
    expect(told({ HOLE: "Base plate hoel" })[0]).toMatch(
      /^columns HOLE: "Base plate hoel" is no name of a heading; .*nearest: Base plate hole, /,
    );
    expect(told({ HOLE: "" })[0]).toContain("is no name of a heading");
  });

  it("find a heading before a letter, a letter where no heading is called so, and the heading's cell", () => {
    const settled = settledAs(settle(table, { L: "Base plate X", E: "note", D5: "Base plate X" }));
    expect(settled).toEqual(["Mark", "asked", "asked", "Base plate X", "note"]);
  });

  it("that contradict each other are neither taken", () => {
    expect(told({ HOLE: "Base plate hole", E5: "Template hole" })).toEqual([
      "columns E5: is answered twice, as Base plate hole and as Template hole; allowed is one answer for a column",
    ]);
    expect(settledAs(settle(table, { HOLE: "Base plate hole", E5: "Template hole" }))[4]).toBe("asked");
  });

  it("may give another meaning than a known one", () => {
    expect(settledAs(settle(table, { MARK: "note", HOLE: "Mark" }))[4]).toBe("Mark");
  });
});

describe("the column of the marks", () => {
  const of = (headings: readonly string[], ...rows: Rows) => settledAs(settle(foundTable(headings, ...rows)));

  it.each(["GRID", "LOCATION", "TAG", "PIER MARK", "POLE TYPE", "ANCHOR MARK", "ITEM"])(
    "is %s where no other is",
    (word) => {
      expect(of([word, "ROD DIA", "X", "Y"], ["A1", "1", "12", "10"], ["A2", "1", "12", "10"])[0]).toBe("Mark");
      expect(of([word, "MARK", "ROD DIA"], ["A1", "B1", "1"], ["A2", "B2", "1"])[0]).toBe("note");
    },
  );

  it("is asked where a mark stands twice", () => {
    expect(of(["ANCHOR MARK", "ROD DIA", "X", "Y"], ["A1", "1", "12", "10"], ["A1", "1", "12", "10"])[0]).toBe("asked");
  });
});
