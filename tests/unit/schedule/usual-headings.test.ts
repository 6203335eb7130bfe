/**
 * Headings as prints write them, and what each may stand for in its place. Collected from the trade's general usage, from
 * memory (common practice): no published list of headings exists. US ones first, then British and metric ones.
 */
import { describe, expect, it } from "vitest";
import { SQUARE } from "../../../src/schedule/heading-synonyms.js";
import { HEADINGS, meaningsOf, NOTE, SYNONYMS } from "../../../src/schedule/index.js";

/** Group over the heading -> its meanings -> headings that have them there. */
const US: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "": {
    Mark: "MARK | MK | MK. | PIECE MARK | PIECE MK | BASE MARK | BASE MK. | MARK NO. | BASE NO. | BASE",
    "Mark or note":
      "BP MK | BASE PLATE MARK | COLUMN MARK | COL MK | COL. NO. | REF. | BASE REF | TAG | GRID | LOCATION | COLUMN LOCATION | PIER MARK | FOOTING MARK | SIGN TYPE | POLE TYPE",
    "Mark or Pattern or Column or Kind or note": "TYPE | BASE TYPE",
    "Mark or Qty or Rod count or note": "NO. | #",
    "Qty or Rod count": "QTY | QTY. | QUAN. | QUANTITY | NO. REQ'D | NO REQD | QTY REQ'D",
    Qty: "NO. OF BASES | BASE QTY | NO. OF COLUMNS | NO. THUS | NO. BASES | # BASES",
    "Rods or Rod count": "ANCHOR RODS | ANCHOR BOLTS | A.B. | A.R. | RODS | BOLTS | ANCHORS",
    "Rod dia or Rods":
      "ROD DIA | ROD SIZE | ANCHOR ROD DIA. | ANCHOR ROD Ø | ANCHOR BOLT SIZE | A.B. DIAM. | AB SIZE | BOLT DIA",
    Rods: "A.R. DIA & GRADE | A. RODS NO./DIA. | NO. & SIZE | NO. AND DIA. OF ANCHOR BOLTS | ANCHOR ROD DESCRIPTION",
    "Rod count":
      "NO. OF RODS | ROD QTY | # OF BOLTS | NO. RODS | BOLTS PER BASE | NO. RODS PER BASE | QTY (RODS) | NO. OF ANCHOR RODS REQ'D",
    "Grade or Rod material": "ROD GRADE | ANCHOR ROD GRADE | BOLT GR. | F1554 GR",
    "Grade or Rod material or note": "GRADE | GR. | MATERIAL GRADE",
    "Rod material or Grade": "ROD MATERIAL | ANCHOR BOLT SPEC. | ROD MATL",
    "Material or Rod material or note": "MATERIAL | MATL",
    Finish: "FINISH | COATING | ROD FINISH",
    Galvanized: "GALV | GALV. | HDG | GALVANIZED | RODS GALVANIZED",
    Projection:
      "PROJ | PROJ. | PROJECTION | ROD PROJ. | PROJECTION ABOVE T.O.C. | PROJ. ABOVE CONC. | PROJ (ABOVE T.O.C.) | PROJ. ABV. CONC.",
    Embedment:
      "EMBED | EMBED. | EMB | EMB. | EMBEDMENT | EMBEDMENT LENGTH | EMBED LENGTH | MIN. EMBED | EMBEDMENT DEPTH",
    "Rod length": "ROD LENGTH | ANCHOR ROD LGTH | BOLT LG. | O.A.L. | OVERALL LENGTH | LENGTH OF BOLT | A.B. LENGTH",
    "Rod length or Base plate X or Base plate Y or Pier X or Pier Y or note": "LENGTH | LGTH | LG | L",
    Threads: "THREAD LENGTH | THD LENGTH | THD. LG. | TOP THREAD | LENGTH OF THREAD | THREADS",
    "Bottom threads": "BOTTOM THREAD | LOWER THREAD | BOT. THREAD LENGTH",
    "Thread or Threads": "THREAD | THD",
    "Nut or note": "NUT | NUTS | NUT TYPE",
    "Washer or note": "WASHER | WASHER SIZE | PL WASHER | PLATE WASHER | WASHER PL | PLATE WASHER SIZE",
    "Pattern size or Pattern pitch":
      "GAGE | GAUGE | SPACING (X x Y) | SPACING | SPA. | C/C | O.C. | BOLT SPACING | ROD SPACING | BOLT GAGE",
    "X or Pitch X": "GAGE X | SPACING X | X SPACING | X-GAGE | ROD SPACING X | BOLT GAGE X",
    "X or Y or Pitch X or Pitch Y or square": "ROD C/C E.W. | GAGE E-W",
    "Rod count or nx or ny or note": "ANCHOR RODS PER SIDE | RODS EACH FACE",
    "Pattern size": "ROD LAYOUT (X × Y) | PATTERN (X x Y)",
    "X or Y or Pitch X or Pitch Y":
      '"G1" | GAGE A | GAGE B | G1 | G2 | GAGE L | BOLT SPACING - WIDTH | A.B. SPACING (N-S)',
    "Y or Pitch Y": "GAUGE Y | SPACING Y | Y SPACING | ROD SPACING (Y)",
    "Pitch X": "PITCH X | BOLT PITCH X",
    "Pattern pitch or note": "PITCH | ROD PITCH",
    "Pattern or Pattern size": "PATTERN | ROD PATTERN | BOLT PATTERN | ROD LAYOUT",
    "Bolt circle": "BOLT CIRCLE | B.C. | BC | BCD | B.C. DIA. | BOLT CIRCLE DIA",
    "Count or Rod count or Qty": "COUNT",
    nx: "NX | RODS IN X | NO. IN X",
    X: "X | OVERALL X | PATTERN X",
    "Base plate size or Base plate thk or note": "BASE PLATE | BASE PL | BASE PL. | BP | B.P. | PL | PLATE | BASEPLATE",
    "Base plate size":
      "PLATE t x B x N | BASE PLATE SIZE | BASE PL. SIZE | BP SIZE | PLATE SIZE | SIZE OF BASE PLATE | SIZE (BASE PLATE)",
    "Base plate X": "BASE PLATE X | PLATE X | BP-X",
    "Base plate X or Base plate Y": "BASE PLATE WIDTH | BASE PLATE LENGTH | BP LENGTH | PLATE W",
    "Base plate thk": "tp | BASE PLATE THK | BASE PL THK. | BP THK | PLATE THICKNESS | PL. THK | BASE PLATE T",
    "Base plate thk or Template thk or Grout or note": "THK | THICK. | THICKNESS | T",
    "Base plate hole":
      "BP HOLE | BASE PLATE HOLE DIA | HOLE IN BASE PLATE | BASE PLATE HOLES | DIA. OF HOLE IN BASE PLATE",
    "Base plate hole or Template hole or note":
      "HOLE | STD. HOLE | HOLES | HOLE SIZE | HOLE DIA | HOLE Ø | BOLT HOLE | ROD HOLE DIA",
    "Template hole": "TEMPLATE HOLE | TEMPL. HOLE DIA",
    "Rod dia or Base plate hole or Template hole or Bolt circle or note": "DIA | DIA. | DIAM. | Ø",
    "Rod dia or Rods or Base plate size or Pier size or Column or note": "SIZE",
    "Base plate X or Base plate Y or Pier X or Pier Y or note": "WIDTH | W | B | D | N",
    "Embedment or Pier depth or Base plate X or Base plate Y or note": "DEPTH",
    "Template height or Pier depth or Projection or note": "HEIGHT | HT.",
    "Edge distance": "EDGE DIST | EDGE DISTANCE",
    "Column or Mark or note": "COLUMN | COL | COL.",
    Column: "COLUMN SIZE | COL. SIZE | COLUMN SECTION | COL SHAPE | MEMBER SIZE",
    "Column or note": "SECTION",
    "Member or Column": "MEMBER",
    "Pier size or note": "PIER | PEDESTAL | PED. | FOOTING SIZE | FTG SIZE",
    "Pier size": "PIER SIZE | PEDESTAL SIZE | PED SIZE | CONC. PIER SIZE",
    "Pier dia or note": "FDN DIA | FOUNDATION DIAMETER",
    "Pier dia": "PIER DIA | PIER Ø",
    "Pier depth": "PIER HEIGHT",
    "T.O.C.":
      "T.O.C. | TOC | TOC EL | T.O.C. ELEV. | TOP OF CONC. | TOP OF CONCRETE | T.O. CONC. | T/CONC | T.O. PIER | TOP OF PIER EL. | TOP OF PEDESTAL",
    "B.O.P.": "B.O.P. | BOP | BOT OF PL | BOT. OF PL. EL. | BOTTOM OF PLATE | BOTTOM OF BASE PLATE | U/S OF BASE PLATE",
    "T.O.C. or B.O.P. or note": "EL | ELEV. | ELEVATION",
    "T.O.C. or note": "TOP | TOP EL. | T.O. FTG | TOP OF FOOTING",
    "Bottom or B.O.P. or note": "BOTTOM",
    "B.O.P. or note": "BOT. EL. | BASE PLATE EL.",
    "B.O.P. or Bottom or note": "BOT PL",
    Grout: "GROUT | GROUT THK | GROUT THICKNESS | GROUT GAP | GROUT BED",
    Levelling: "LEVELING | LEVELLING",
    "Template mark or Template thk or Outline": "TEMPLATE | TEMPL.",
    "Template mark": "TEMPL. MK | TEMPLATE MARK",
    "Template grade": "TEMPL. GRADE | TEMPLATE MATERIAL GRADE | TEMPLATE STEEL GRADE",
    "Template thk": "TEMPL THK | TEMPLATE THICKNESS",
    Outline: "TEMPLATE SIZE | TEMPL. SIZE",
    "Template thk or note": "SETTING PLATE THK | LEVELING PLATE THK",
    Delivery: "DELIVERY | TRUCK | TRUCK NO. | POUR NO.",
    Note: "REMARKS | NOTES | COMMENTS | NOTE | RMKS.",
    "Weldable or note": "S1",
  },
  "ANCHOR RODS": {
    "Rod count or Qty": "QTY | NO. | NO. REQ'D | # | QUAN. | COUNT",
    "Rod dia or Rods": "SIZE | DIA | Ø | DIAMETER | ROD DIA",
    "Rods or Rod dia": "NO. & SIZE | QTY/SIZE",
    "Grade or Rod material": "GRADE | GR. | ASTM GRADE",
    "Rod material or Grade": "MATERIAL | MATL. | SPEC. | ASTM",
    Galvanized: "GALV.",
    Finish: "FINISH | COATING",
    Embedment: "EMBED | EMB. | EMBEDMENT LENGTH",
    Projection: "PROJ. | PROJECTION",
    "Rod length": "LENGTH | LGTH. | LG | L | O.A.L.",
    Threads: "THREAD LENGTH | THD LG",
    "Pattern size or Pattern pitch": "SPACING | GAGE | C/C",
    "X or Pitch X": "X | SPACING X | GAGE X",
    "Washer or note": "WASHER | PL WASHER | WASHER SIZE",
    "Nut or note": "NUT | NUTS",
    "Base plate hole or Template hole or note": "HOLE SIZE | HOLE",
    Bottom: "BOTTOM END",
    "T.O.C.": "T.O.C.",
    Note: "REMARKS",
  },
  "ANCHOR ROD SPACING": { "X or Pitch X": "X", "Y or Pitch Y": "Y" },
  "BASE PLATE": {
    "Mark or note": "MARK | MK",
    "Base plate size": "SIZE | L x W x T | SIZE (L x W x T) | N x B x T",
    "Base plate X or Base plate Y": "LENGTH | WIDTH | L | W | B | N | D",
    "Base plate X": "X",
    "Base plate thk": "THK | T | THICK. | THICKNESS | tp | PLATE THK",
    "Base plate hole": "HOLE | HOLES | HOLE SIZE | HOLE DIA | BOLT HOLES | ROD HOLE DIA",
    "Edge distance": "EDGE DIST.",
    "Pattern size or Pattern pitch": "ROD SPACING",
    Grout: "GROUT",
    "Washer or note": "PL WASHER",
  },
  "BASE PLATE SIZE": { "Base plate X or Base plate Y": "L | W", "Base plate thk": "T" },
  "BASE PLATE HOLES": { "Base plate hole": "SIZE | DIA" },
  PIER: {
    "Pier size": "SIZE",
    "Pier X or Pier Y": "LENGTH | WIDTH | L | W",
    "Pier depth": "HEIGHT",
    "Pier depth or Pier X or Pier Y or note": "DEPTH",
    "T.O.C.": "TOP OF CONC. | EL. | T.O.C.",
  },
  PEDESTAL: { "Pier size": "SIZE", "Pier dia": "DIA" },
  FOOTING: { "Pier size or note": "SIZE", "T.O.C. or note": "EL. | TOP" },
  COLUMN: { Column: "SIZE | SECTION | SHAPE", "Mark or note": "MARK | MK. | NO.", "Column or note": "TYPE" },
  TEMPLATE: {
    "Template mark": "MARK",
    "Template qty": "QTY | NO. REQ'D",
    "Template thk": "THK | T | PLATE THK",
    "Template hole": "HOLE | HOLE DIA | ROD HOLE",
    Outline: "SIZE | OUTLINE",
    Material: "MATERIAL",
    "Template height": "HEIGHT",
  },
  ELEVATIONS: {
    "T.O.C.": "TOP OF CONC. | T.O.C. | PIER",
    "B.O.P.": "BOTTOM OF PLATE | B.O.P. | U/S OF BASE PLATE",
    "B.O.P. or note": "BASE PLATE | BOTTOM",
    "T.O.C. or note": "TOP",
  },
  "SETTING PLATE": { "Template thk or note": "THK", "Outline or note": "SIZE", "Template hole or note": "HOLE" },
  GROUT: { Grout: "THK | GAP | THICKNESS" },
  GENERAL: { Mark: "MARK", "Qty or Rod count": "QTY", Note: "REMARKS" },
  FIXINGS: { "Projection or note": "PROJECTION", "Rod dia or Rods or note": "BOLT DIA" },
};

const BRITISH_AND_METRIC: typeof US = {
  "": {
    "Rods or Rod count": "HD BOLTS | H.D. BOLTS | HOLDING DOWN BOLTS | HOLDING-DOWN BOLTS | FOUNDATION BOLTS",
    "Rod dia or Rods": "HD BOLT SIZE | HD BOLT DIA (mm) | DIA OF HOLDING DOWN BOLTS | BOLT DIAMETER (MM)",
    "Rod dia": "M SIZE | BOLT M-SIZE",
    "Rod count": "NO. OF HD BOLTS | NO. OF BOLTS",
    "Qty or Rod count": "NO. OFF",
    "Pattern size or Pattern pitch": "BOLT CENTRES | BOLT CRS. | CTRS | CENTRES",
    "X or Pitch X": "BOLT CENTRES X | CRS X",
    "Bolt circle": "P.C.D. | PITCH CIRCLE DIA",
    "Base plate thk": "BASEPLATE THICKNESS | BASE PLATE THK (mm)",
    "Pier size or note": "PLINTH",
    "Pier size": "PLINTH SIZE",
    "T.O.C.": "TOP OF PLINTH LEVEL | TOP OF CONCRETE LEVEL",
    "B.O.P.": "UNDERSIDE OF BASE PLATE | U/S BASEPLATE | U/S OF BASEPLATE LEVEL",
    "T.O.C. or B.O.P. or note": "LEVEL",
    Grout: "BEDDING | BEDDING THK",
    Levelling: "LEVELLING METHOD",
    Embedment: "EMBEDDED LENGTH | EMBEDDED DEPTH",
    "Mark or note": "COL. REF. | BASE REF",
    "Template thk or note": "LEVELLING PLATE THK",
  },
  "HD BOLTS": {
    "Rod count or Qty": "NO. | NO. OFF",
    "Rod dia": "M-SIZE",
    "Rod length": "LENGTH",
    "Rod dia or Rods": "SIZE",
  },
};

/** Headings that are none of ours, or of another thing, as `GROUP / WORDS`: they are kept as notes. */
const UNKNOWN = [
  ...[
    "FOOTING REINF",
    "FOOTING REINF.",
    "TIES",
    "REV",
    "REV.",
    "DWG",
    "DWG NO.",
    "DETAIL",
    "SHEET",
    "COLUMN LOAD",
    "AXIAL",
  ],
  ...[
    "SHEAR",
    "UPLIFT",
    "MOMENT",
    "P (KIPS)",
    "CHECKED",
    "DATE",
    "BY",
    "PHASE",
    "AREA",
    "WEIGHT",
    "WELD",
    "PLATE GRADE",
  ],
  ...["HOLE TYPE", "PIER REINF", "ROD DWG", "ROD MARK", "ROD TYPE", "FOOTING"],
  ...[
    "ANCHOR PLATE",
    "CAP PLATE THK",
    "CAP PLATE SIZE",
    "SHEAR PLATE",
    "GUSSET PLATE THK",
    "EMBED PLATE SIZE",
    "TIE ROD DIA",
  ],
  ...["TOP OF STEEL", "T.O.S.", "TOP OF BASE PLATE", "TOP OF GROUT", "CONCRETE STRENGTH", "GROUT TYPE"],
  ...[
    "PROJECTION (ABOVE BASE PLATE)",
    "PROJECTION ABOVE GROUT",
    "PROJ (ABOVE B.O.P.)",
    "EMBED (TO TOP OF NUT)",
    "TOTAL RODS",
  ],
  ...[
    "TOTAL QTY",
    "CUT LENGTH",
    "TOP BARS",
    "VERTICALS",
    "DOWELS",
    "A",
    "C",
    "E",
    "F'c",
    "BASE SHEAR",
    "LEVELING NUTS",
  ],
  ...[
    "REINFORCING / SIZE",
    "REINFORCING / QTY",
    "VERTICAL BARS / NO.",
    "TIES / SPACING",
    "DOWELS / LENGTH",
    "DESIGN LOADS / AXIAL",
  ],
  ...["FOOTING / REINF", "FOOTING / THK", "BASE PLATE / GRADE", "BASE PLATE / MATERIAL", "PIER / TIES", "PIER / REINF"],
  ...[
    "COLUMN / LOAD",
    "BRACING / ROD DIA",
    "BRACING / SIZE",
    "EXISTING / ROD DIA",
    "CAP PLATE / THK",
    "SHEAR LUG / SIZE",
  ],
  ...[
    "ANCHOR RODS / PLATE SIZE",
    "ANCHOR RODS / MARK",
    "BASE PLATE / PROJECTION",
    "WELD / SIZE",
    "FIXINGS / DIA",
    "TIE RODS / DIA",
  ],
];

function linesOf(tables: typeof US): readonly (readonly [words: string, group: string, meanings: string])[] {
  return Object.entries(tables).flatMap(([group, table]) =>
    Object.entries(table).flatMap(([meanings, words]) =>
      words.split(" | ").map((each) => [each, group, meanings] as const),
    ),
  );
}

describe("usual headings", () => {
  it.each(linesOf(US))('%s under "%s": %s', (words, group, meanings) => {
    expect(meaningsOf(words, group).join(" or ")).toBe(meanings);
  });

  it.each(linesOf(BRITISH_AND_METRIC))('British and metric: %s under "%s": %s', (words, group, meanings) => {
    expect(meaningsOf(words, group).join(" or ")).toBe(meanings);
  });

  it.each(UNKNOWN)("%s is not known", (heading) => {
    const [words = "", group = ""] = heading.split(" / ").reverse();
    expect(meaningsOf(words, group)).toEqual([]);
  });

  it("are 97 US ones or more without a group, and 150 in all, with 40 that must not be known", () => {
    expect(linesOf({ "": US[""] ?? {} }).length).toBeGreaterThanOrEqual(97);
    expect(linesOf(US).length + linesOf(BRITISH_AND_METRIC).length).toBeGreaterThanOrEqual(150);
    expect(UNKNOWN.length).toBeGreaterThanOrEqual(40);
  });

  it("mean the same in small letters, with more spaces, with a dot, and with a unit in brackets", () => {
    for (const [words, group, meanings] of [...linesOf(US), ...linesOf(BRITISH_AND_METRIC)]) {
      for (const written of [words.toLowerCase(), ` ${words.replaceAll(" ", "  ")} `, `${words}:`, `${words} (in)`])
        expect([written, meaningsOf(written, group.toLowerCase()).join(" or ")]).toEqual([written, meanings]);
    }
  });
});

describe("the table of synonyms", () => {
  it("names headings of the registry only", () => {
    const names = new Set([...HEADINGS.map(({ name }) => name), NOTE, SQUARE]);
    for (const { means, of, words } of SYNONYMS)
      expect([of, words, means.filter((name) => !names.has(name))]).toEqual([of, words, []]);
  });

  it("says why there are several meanings, and only then", () => {
    for (const { means, doubt, of, words } of SYNONYMS)
      expect([of, words, doubt !== undefined]).toEqual([of, words, means.length > 1]);
  });

  it("has every way of writing once", () => {
    const seen = new Map<string, string>();
    for (const { of, words, means, isGrouped } of SYNONYMS) {
      for (const written of words) {
        const key = `${isGrouped === true} ${of} ${written}`;
        expect([key, seen.get(key) ?? means.join()]).toEqual([key, means.join()]);
        seen.set(key, means.join());
      }
    }
  });

  it.each(HEADINGS.map(({ name }) => name))("%s by its own name alone may be itself", (name) => {
    expect(meaningsOf(name, "")).toContain(name);
  });

  it("of a text that is no heading is empty, however long", () => {
    for (const text of [
      "",
      " ",
      "-",
      "(in)",
      "x".repeat(100_000),
      "ROD ".repeat(50_000),
      "((((((",
      "\u0000",
      "\u{1F529}",
    ])
      expect(meaningsOf(text, "")).toEqual([]);
    expect(meaningsOf("SIZE", "ROD ".repeat(50_000))).toEqual(meaningsOf("SIZE", ""));
  });
});
