/** Schedules as nobody would send them: headings, cells and noise at random, read, written as a job, and made. */
import { strFromU8 } from "fflate";
import Papa from "papaparse";
import { writeReadAsCsv } from "../../src/formats/read-as-csv.js";
import { writeReadAsText } from "../../src/formats/read-as-text.js";
import {
  formatFinding,
  openJob,
  openWorkbook,
  readSheetAsSent,
  type SheetReading,
  writeNewJob,
} from "../../src/index.js";
import type { InputFile } from "../../src/readers/inputs.js";
import type { SourceNode } from "../../src/readers/source.js";
import { type Files, inputsOf, packageOf, refused } from "./answers.js";
import { oddText, PROTOTYPE_WORDS } from "./draw.js";
import { type Draw, type Ending, type FuzzClass, WrongResult } from "./model.js";
import { sheetData, workbookOf, writeBook } from "./workbooks.js";

const NOISE = [
  ...PROTOTYPE_WORDS,
  ...[
    "\ufeff",
    "\u200b",
    "\u202e",
    "\ud800",
    "\udfff",
    "\u0000",
    "\u001b[2J",
    "\r",
    "\u2028",
    "=1+1",
    "&a",
    "*a",
    "- x",
  ],
  ...["9".repeat(400), "(".repeat(99), "x".repeat(32_767), '"', "'", "{", "#", "~", ": ", "!!str"],
];
const HEADING_WORDS = [
  ...[
    "MARK",
    "MK",
    "TYPE",
    "COLUMN",
    "BASE",
    "QTY",
    "NO.",
    "ROD",
    "ANCHOR RODS",
    "BOLT",
    "DIA",
    "SIZE",
    "GRADE",
    "EMBED",
  ],
  ...["PROJ", "O.A.L.", "X", "Y", "NX", "NY", "SPACING", "PITCH", "GAGE", "B.C.", "PLATE", "BASE PLATE", "THK", "HOLE"],
  ...["WASHER", "PIER", "GROUT", "T.O.C.", "TEMPLATE", "KIND", "REMARKS", "(mm)", "(in)", "LENGTH", "FINISH"],
];
const PIECES = [
  ...["1", "4", "12", "3/4", "1-1/4", "11/4", "-", "x", "@", "SPA", "Ø", '"', "'", "DO", "SAME AS", "B3", "SEE NOTE"],
  ...["(4)", "M24", "mm", "PL", "F1554", "GR 55", "HDG", "W12x65", "C/C", "TYP", "N/A", "", "\n", "&", "THRU", "B1-B4"],
  ...["B1-B999999999", "=", "6", "SQ", "½", "E.W.", "O.C.", "B1, B2", "ALL", "NOTE 1:", "TOTAL"],
];
/** Columns that are well understood, so that many sheets reach their package. */
const GOOD: readonly (readonly [string, readonly string[]])[] = [
  ["Rod dia", ["3/4", "1", '1-1/4"Ø', "7/8 DIA", "DO"]],
  ["Grade", ["36", "F1554 GR 55", "DO", "105"]],
  ["X", ["8", "10", "1'-0\"", "12 1/2"]],
  ["Y", ["8", "10", "11.5", "304.8 mm"]],
  ["Template thk", ["1/4", '1/4"']],
  ["Projection", ["4", "0'-6\"", "5 1/2"]],
  ["BASE PLATE", ['18x18x1"', "PL 1-1/2x20x20", "20 SQ x 1"]],
];

function joined(words: readonly string[], most: number, random: Draw): string {
  return Array.from({ length: 1 + random.below(most) }, () => random.pick(words)).join(
    random.pick([" ", " ", "\n", ""]),
  );
}

function cellText(random: Draw): string {
  if (random.once(12)) return random.pick(NOISE);
  return random.once(8) ? oddText(random) : joined(PIECES, 4, random);
}

/** Good columns in any order, some of them noisy, and others of any words. */
function drawRows(random: Draw): string[][] {
  const good = GOOD.map((column) => ({ column, at: random.below(1000) }))
    .sort((a, b) => a.at - b.at)
    .map(({ column }) => column);
  const others = Array.from({ length: random.below(4) }, () =>
    random.once(4) ? cellText(random) : joined(HEADING_WORDS, 3, random),
  );
  const noise = random.pick([0, 0, 40, 8]);
  const rows = Array.from({ length: 1 + random.below(8) }, (_, i) => [
    noise > 0 && random.once(noise) ? cellText(random) : `B${i + 1}`,
    ...good.map(([, cells]) =>
      noise > 0 && random.once(noise)
        ? cellText(random)
        : random.pick(i === 0 ? cells.filter((each) => each !== "DO") : cells),
    ),
    ...others.map(() => cellText(random)),
  ]);
  const above = random.once(3) ? [[cellText(random)], []] : [];
  const below = random.once(3) ? [[], [`${1 + random.below(3)}. ${cellText(random)}`]] : [];
  return [...above, ["Mark", ...good.map(([heading]) => heading), ...others], ...rows, ...below];
}

function drawFile(rows: readonly (readonly string[])[], random: Draw): readonly [string, string | Uint8Array] {
  const bom = random.once(5) ? "\ufeff" : "";
  switch (random.below(4)) {
    case 0:
      return [
        "s.txt",
        bom +
          Papa.unparse(
            rows.map((row) => [...row]),
            { delimiter: "\t" },
          ),
      ];
    case 1:
      return ["s.xlsx", workbookOf(rows, random.below(4096))];
    case 2:
      return [
        "s.xlsx",
        writeBook([{ name: random.pick(["Bases", "it's", "__proto__"]), xml: mergedData(rows, random) }]),
      ];
    default:
      return [
        "s.csv",
        bom +
          Papa.unparse(
            rows.map((row) => [...row]),
            { delimiter: random.pick([",", ";"]) },
          ),
      ];
  }
}

function mergedData(rows: readonly (readonly string[])[], random: Draw): string {
  const cell = () => `${random.pick(["A", "B", "C", "D"])}${1 + random.below(8)}`;
  const merges = Array.from({ length: random.below(4) }, () => `<mergeCell ref="${cell()}:${cell()}"/>`);
  return `${sheetData(rows)}<mergeCells>${merges.join("")}</mergeCells>`;
}

/** Random sheets through `read`, and what is understood through `make`. */
export const readSheets: FuzzClass = {
  name: "read",
  cases: 6000,
  draw: (random) => {
    const [name, content] = drawFile(drawRows(random), random);
    return { files: new Map([[name, content]]), run: () => answerSheet(name, content) };
  },
};

async function answerSheet(name: string, content: string | Uint8Array): Promise<Ending> {
  let file: InputFile = content;
  if (name.endsWith(".xlsx") && typeof content !== "string") {
    const opened = await openWorkbook(content, name);
    if (!opened.ok) return refused(opened.findings) ?? "fault";
    file = opened.value;
  }
  const read = readSheetAsSent({ name, file, job: null, unit: "in" });
  if (!read.ok) return refused(read.findings) ?? "fault";
  holdShown(read.value);
  if (!read.value.isUnderstood) return "held";
  return makeBoth(name, content, read.value);
}

/** What a terminal obeys, or turns round. */
const UNSEEN = /[\p{Cc}\u061c\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]|\p{Cs}/u;

/** No sign that a terminal obeys; and every value that a base has stands in the read-as table, with its cell. */
function holdShown({ form, bases }: SheetReading): void {
  const shown = writeReadAsText(form, { width: 80, color: false }).replaceAll("\n", "");
  const unseen = UNSEEN.exec(shown)?.[0];
  if (unseen !== undefined) throw new WrongResult(`U+${unseen.codePointAt(0)?.toString(16)} is printed`);
  writeReadAsCsv(form);
  const taken = form.entries.filter(({ cell }) => cell !== "");
  const all = taken
    .map(({ value, written, key }) => `${value}\u0001${key === "" ? written.trim() : ""}`)
    .join("\u0001");
  for (const text of bases.flatMap(leafTexts))
    if (text !== "" && !text.includes("; ") && !all.includes(text))
      throw new WrongResult(`"${text.slice(0, 200)}" is taken, and no line of the read-as table has it`);
}

function leafTexts(node: SourceNode): readonly string[] {
  if (node.kind === "scalar") return [node.text];
  if (node.kind === "list") return node.items.flatMap(leafTexts);
  return node.entries.filter(({ key }) => key !== "kind").flatMap(({ value }) => leafTexts(value));
}

/** The job that is written holds against its sheet, and gives the package of the job that names the sheet. */
async function makeBoth(name: string, content: string | Uint8Array, reading: SheetReading): Promise<Ending> {
  const bytes = writeNewJob({ name: "job.yaml", schema: null, file: name }, reading);
  const written = strFromU8(bytes).replace("  number:", "  number: H");
  const named = (written.split(/^####.*$/m)[0] ?? "").replace("readFrom:", "schedule:");
  const [one, other] = [await made(written, name, content), await made(named, name, content)];
  if (one === null || other === null) {
    if (one !== other) throw new WrongResult(`one is refused: ${one === null ? "the written job" : "the sheet's"}`);
    return "fault";
  }
  const paths = [...new Set([...one.files.keys(), ...other.files.keys()])];
  const unlike = paths.find((path) => !isSame(one.files.get(path), other.files.get(path)));
  if (unlike !== undefined) throw new WrongResult(`${unlike} is not the same from the written job as from the sheet`);
  return one.held > 0 ? "held" : "ok";
}

async function made(job: string, name: string, content: string | Uint8Array) {
  const files: Files = new Map([
    ["job.yaml", job],
    [name, content],
  ]);
  const inputs = await inputsOf(files);
  if (!inputs.ok) return refused(inputs.findings);
  const opened = openJob(inputs.value, { date: "2026-11-24" });
  const changed = opened.findings.find(({ message }) => message.includes("changed in the job"));
  if (changed !== undefined) throw new WrongResult(`what was written is not what was read: ${formatFinding(changed)}`);
  return opened.ok ? packageOf(opened.value, false) : refused(opened.findings);
}

function isSame(one: Uint8Array | undefined, other: Uint8Array | undefined): boolean {
  return one !== undefined && other !== undefined && Buffer.compare(one, other) === 0;
}
