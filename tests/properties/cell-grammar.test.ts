/**
 * The grammar of cells: what is printed from a value reads back to it; whatever stands in a cell gives one of five answers
 * in bounded time; and no word is lost: one that is put into a cell never leaves its value as it was.
 */
import { describe, expect, it } from "vitest";
import type { CellReading, FormName } from "../../src/schedule/model.js";
import type { Length, Unit } from "../../src/units/index.js";
import { inches, millimetres, parseLength } from "../../src/units/index.js";
import {
  printDiameter,
  printLength,
  printMaterial,
  printPlate,
  printRange,
  printRods,
  printSides,
  printSize,
  printSpaces,
} from "../cell-printers.js";
import { FORM_NAMES, given, KEY_OF_FORM, nodeText, partsText, read } from "../cell-reading.js";
import { drawFrom } from "../seed.js";

const UNITS: readonly Unit[] = ["in", "mm"];

/** Parts of a value with lengths as nanometres, so that `1 1/4"` and `1-1/4` are one. */
function valuesOf(reading: CellReading, unit: Unit): Readonly<Record<string, number | string>> {
  if (reading.kind !== "value") throw new Error(given(reading));
  return Object.fromEntries(
    reading.parts.map(({ key, node }) => {
      const text = nodeText(node);
      const length = parseLength(text, unit);
      return [key, /count|nx|quantity|grade/.test(key) || !length.ok ? text : length.value];
    }),
  );
}

/** Draws lengths of a unit on the grid of its prints: 1/16 in, or whole millimetres. */
function drawer(stream: number) {
  const next = drawFrom(stream);
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1));
  const length = (unit: Unit, least: number, most: number): Length =>
    unit === "in" ? inches(whole(least * 16, most * 16) / 16) : millimetres(whole(least * 25, most * 25));
  const pick = <T>(list: readonly T[]): T => {
    const item = list[Math.floor(next() * list.length)];
    if (item === undefined) throw new Error("nothing to draw from");
    return item;
  };
  return { whole, length, pick };
}

function expectRead(text: string, form: FormName, unit: Unit, values: Readonly<Record<string, number | string>>): void {
  expect([text, unit, valuesOf(read(text, form, unit), unit)]).toEqual([text, unit, values]);
}

describe.each(UNITS)("printed and read back, in %s", (unit) => {
  const { whole, length, pick } = drawer(unit === "in" ? 1 : 2);
  const draws = Array.from({ length: 60 }, (_, index) => index);

  it("lengths", () => {
    for (const _ of draws) {
      const value = length(unit, 1, 60);
      for (const text of printLength(value, unit)) {
        expectRead(text, "length", unit, { "rods.embedment": value });
        expectRead(`${text} TYP`, "length", unit, { "rods.embedment": value });
        expectRead(text, "spacing", unit, { "pattern.x": value });
        expectRead(`PL ${text}`, "thickness", unit, { "basePlate.thickness": value });
      }
    }
  });

  it("diameters: of a hole, of a pier, of rods of one inch to two", () => {
    for (const _ of draws) {
      const value = length(unit, 1, 40);
      for (const text of printDiameter(value, unit)) {
        expectRead(text, "hole", unit, { baseHole: value });
        expectRead(text, "pier", unit, { "concrete.diameter": value });
      }
      const size = unit === "in" ? inches(1 + whole(0, 15) / 16) : millimetres(whole(12, 64));
      for (const text of printDiameter(size, unit)) expectRead(text, "rod", unit, { "rods.diameter": size });
    }
  });

  it("rods with their number, length, grade and finish", () => {
    for (const _ of draws) {
      const count = whole(2, 24);
      const size = unit === "in" ? inches(whole(4, 64) / 16) : millimetres(whole(10, 64));
      const long = unit === "in" ? inches(whole(18, 60)) : millimetres(whole(300, 1500));
      const text = pick(printRods(count, pick([...printSize(size, unit), ...printDiameter(size, unit)])));
      expectRead(text, "rods", unit, { "rods.count": String(count), "rods.diameter": size });
      const grade = pick(["36", "55", "105"]);
      const finish = pick(["galvanized", "plain", null] as const);
      expectRead(`${text} ${pick(printMaterial(grade, finish))} x ${pick(printLength(long, unit))}`, "rods", unit, {
        "rods.count": String(count),
        "rods.diameter": size,
        "rods.grade": `F1554 ${grade}`,
        ...(finish === null ? {} : { "rods.finish": finish }),
        "rods.length": long,
      });
    }
  });

  it("patterns and spacings", () => {
    for (const _ of draws) {
      const [x, y] = [length(unit, 4, 40), length(unit, 4, 40)];
      for (const text of printSides(pick(printLength(x, unit)), pick(printLength(y, unit)))) {
        expectRead(text, "pattern", unit, { "pattern.x": x, "pattern.y": y });
        expectRead(`${text} C/C`, "pattern", unit, { "pattern.pitch.x": x, "pattern.pitch.y": y });
        expectRead(`${text} PIER`, "pier", unit, { "concrete.x": x, "concrete.y": y });
      }
      const side = pick(printSize(x, unit));
      expectRead(`${side} SQ.`, "pattern", unit, { "pattern.x": x, "pattern.y": x });
      expectRead(`${side} O.C.`, "pitch", unit, { "pattern.pitch.x": x });
      const spaces = whole(1, 9);
      const overall = (x * spaces) as Length;
      for (const text of printSpaces(spaces, side, pick(printLength(overall, unit)))) {
        expectRead(text, "spacing", unit, { "pattern.x": overall, "pattern.nx": String(spaces + 1) });
      }
    }
  });

  it("base plates: thickness before or behind, x before y", () => {
    for (const _ of draws) {
      const [x, y, thickness] = [length(unit, 13, 40), length(unit, 13, 40), length(unit, 1, 4)];
      const [a, b, t] = [pick(printLength(x, unit)), pick(printLength(y, unit)), pick(printSize(thickness, unit))];
      for (const text of printPlate(a, b, t)) {
        expectRead(text, "plate", unit, { "basePlate.x": x, "basePlate.y": y, "basePlate.thickness": thickness });
      }
    }
  });

  it("what a choice is made of: each reading is called by a text that reads back to it alone", () => {
    const counts = ["2", "3"];
    const sizes = ["1/2", "5/8", "3/4", "7/8"];
    const cells = counts.flatMap((count) =>
      sizes.flatMap((size) => [
        `${count}-${size}"Ø`,
        `${count} ${size}"`,
        `${count}-${size}" x 36" LG HDG`,
        `${count}-${size}" F1554 GR 55 S1`,
      ]),
    );
    for (const text of cells) expectNamed(text, "rods", unit);
    for (const text of ["3 @ 6", '4 @ 5-1/2"', "2 @ 150 mm", "(3) @ 100"])
      for (const form of ["spacing", "pitch"] as const) expectNamed(text, form, unit);
  });
});

function expectNamed(text: string, form: FormName, unit: Unit): void {
  const reading = read(text, form, unit);
  expect([text, form, unit, reading.kind]).toEqual([text, form, unit, "choice"]);
  if (reading.kind !== "choice") return;
  for (const { how, parts } of reading.readings)
    expect([text, how, given(read(how, form, unit))]).toEqual([text, how, partsText(parts)]);
}

it("ranges of marks", () => {
  const { whole, pick } = drawer(3);
  for (let index = 0; index < 300; index++) {
    const prefix = pick(["B", "BP-", "C", "A-1.", "Base "]);
    const first = whole(1, 300);
    const last = first + whole(1, 150);
    const marks = Array.from({ length: last - first + 1 }, (_, step) => `mark ${prefix}${first + step}`);
    for (const text of printRange(`${prefix}${first}`, `${prefix}${last}`)) {
      expect([text, given(read(text, "mark"))]).toEqual([text, marks.join(", ")]);
    }
  }
});

/** Tokens of the grammar, of prints and of nothing at all. */
const TOKENS = [
  "1",
  "4",
  "12",
  "3/4",
  "1-1/4",
  "0.75",
  ".5",
  "1'-6\"",
  "24",
  "450",
  "M24",
  "M",
  "x",
  "X",
  "×",
  "-",
  "–",
  "/",
  "(",
  ")",
  '"',
  "'",
  "in",
  "mm",
  "ft",
  "Ø",
  "DIA",
  "DIA.",
  "SQ",
  "@",
  "=",
  ",",
  ";",
  ":",
  "&",
  "#",
  "±",
  "+",
  "*",
  "?",
  ".",
  "..",
  "½",
  "¼",
  "NO.",
  "EA",
  "RODS",
  "OF",
  "SIZE",
  "F1554",
  "GR",
  "55",
  "A36",
  "8.8",
  "HDG",
  "PLAIN",
  "S1",
  "SPA",
  "EQ",
  "O.C.",
  "C/C",
  "B.C.",
  "ON",
  "AT",
  "PL",
  "THK",
  "DEEP",
  "PIER",
  "LG",
  "EMBED",
  "W/",
  "PROJ",
  "MIN",
  "TYP",
  "U.N.O.",
  "SEE",
  "NOTE",
  "2",
  "SAME",
  "AS",
  "B3",
  "DO",
  "N/A",
  "TBD",
  "THRU",
  "TO",
  "AND",
  "B1",
  "B4-B7",
  "round",
  "square",
  "chamfer",
  "ring",
  "polygon",
  "dia",
  "plate",
  "hook",
  "nut",
  "WASHER",
  "HVY",
  "HEX",
  "W12x65",
  "HSS",
  "HEB",
  "PIPE",
  "STD",
  "along",
  "y",
  "auto",
  "none",
  "EL.",
  "overall",
  "marks:",
  "the",
  "mark",
  "each",
  "constructor",
  "__proto__",
  " ",
  "\u00A0",
  "\n",
  "\t",
  "\u0000",
  "\uFFFF",
  "\u{1F529}",
  "〃",
  "１",
  "（",
  "ß",
  "İ",
]; // prettier-ignore

describe("whatever stands in a cell", () => {
  it("gives a value, a blank, a reference, a choice or a fault: 100,000 cells", () => {
    const { whole, pick } = drawer(4);
    const kinds = new Set<string>();
    for (let index = 0; index < 100_000; index++) {
      const joint = pick(["", " ", " "]);
      const text = Array.from({ length: whole(1, 7) }, () =>
        index % 3 === 2 ? String.fromCharCode(whole(32, 0x2fff)) : pick(TOKENS),
      ).join(joint);
      const form = FORM_NAMES[index % FORM_NAMES.length] ?? "text";
      const reading = read(text, form, pick(UNITS), pick([null, null, "mm", "in", "ft"]));
      kinds.add(reading.kind);
      const isEmpty =
        (reading.kind === "value" && reading.parts.length === 0) ||
        (reading.kind === "choice" && reading.readings.length < 2) ||
        (reading.kind === "fault" && reading.message === "");
      if (isEmpty) expect([text, form]).toBe("an answer that says something");
    }
    expect([...kinds].sort()).toEqual(["blank", "choice", "fault", "reference", "value"]);
  });

  it("of 32,767 letters takes no longer than its text", () => {
    const pieces = [
      "1",
      "1/",
      "1-1/4 ",
      "(",
      "x",
      "4-",
      "B1-",
      "B1,",
      "' ",
      '"',
      "-",
      " thru ",
      "AS ",
      "0,0;",
      "½",
      "O.",
      " at ",
      "= ",
      "- 1/",
    ];
    const started = performance.now();
    for (const piece of pieces) {
      const text = piece.repeat(Math.ceil(32_767 / piece.length)).slice(0, 32_767);
      for (const form of FORM_NAMES) expect(read(text, form).kind).toMatch(/^(value|blank|reference|choice|fault)$/);
    }
    expect(performance.now() - started).toBeLessThan(20_000);
  });
});

/** Cells that give a value, by form. */
const VALID: Readonly<Partial<Record<FormName, readonly string[]>>> = {
  count: ["4", "(4) REQ'D"],
  length: ["18", "1'-6 1/2\"", "12 TYP"],
  elevation: ["EL. 99'-6\""],
  thickness: ["PL 1-1/2", '1 1/2" THK'],
  rod: ["1-1/4", '(4) 3/4"', "M24"],
  rods: ['(4) 1"Ø F1554 GR 36 x 1\'-6"', '4 - 1" Ø x 2\'-0"', '1"Ø A.R. W/ 12" EMBED', "4 NO. M24 GR 8.8 HDG"],
  material: ["F1554 GR 55 HDG", "ASTM F1554, GRADE 105, GALV.", "8.8"],
  pattern: ["12 x 10 C/C", "24 SQ", '(8) ON 24" B.C.'],
  spacing: ["12", '3 SPA @ 6" = 1\'-6"', '6" O.C.'],
  pitch: ['6" O.C.'],
  plate: ["18x18 PL 1-1/2", "PL 1-1/2 x 18 x 16", '24"Ø x 1"'],
  pier: ["24x30 PIER", '36"Ø', "24 x 24 x 48 DEEP"],
  hole: ['2-1/16"Ø HOLES'],
  washer: ["PL WASHER 3x3x1/2", "square 3 x 1/2"],
  nut: ["HVY HEX NUT"],
  bottom: ["plate 3 x 1/2", "hook 4", "nut"],
  section: ["W12x65 along y", "tube 8 x 8", "PIPE 6 STD"],
  outline: ["20 x 18", "ring 30 / 20", "dia 30"],
  corner: ["chamfer 1 x 2"],
  opening: ["8 x 6 r 1", "dia 6"],
};

describe("no word is lost", () => {
  const FOREIGN = [
    "SLOTTED",
    "qqq",
    "NOT",
    "MIN",
    "MAX",
    "±",
    "?",
    "*",
    "7",
    "AND",
    "OR",
    "@",
    "%",
    "HOOKED",
    "SUPPLIED",
  ];
  const cells = Object.entries(VALID).flatMap(([form, texts]) =>
    texts.map((text) => [form as FormName, text] as const),
  );

  it.each(cells)("%s %s: a word put into it is never read over", (form, text) => {
    const before = read(text, form);
    expect([text, before.kind]).toEqual([text, "value"]);
    const words = text.split(" ");
    for (const foreign of FOREIGN) {
      for (let at = 0; at <= words.length; at++) {
        const changed = [...words.slice(0, at), foreign, ...words.slice(at)].join(" ");
        const after = read(changed, form);
        expect([changed, after.kind === "value" && given(after) === given(before)]).toEqual([changed, false]);
      }
    }
  });

  it("covers every form whose cells are not texts, words or lists that go on whole", () => {
    const whole: readonly FormName[] = [
      "text",
      "note",
      "word",
      "yesNo",
      "mark",
      "lengths",
      "point",
      "points",
      "grade",
      "finish",
      "holes",
    ];
    expect([...Object.keys(VALID), ...whole].sort()).toEqual(Object.keys(KEY_OF_FORM).sort());
  });
});
