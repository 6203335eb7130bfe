/** The letter to the engineer of record: one question after the other, each with its picture, its figures and room for the answer. */
import { extentOfPoints } from "../geometry/index.js";
import type { Job } from "../job/model/job.js";
import type { Plan } from "../plan/model.js";
import type { BaseFacts, BaseFigure } from "../summary/facts.js";
import type { Letter, LetterQuestion, SettledQuestion } from "../summary/letter.js";
import { acceptedWords, askedStatus, LETTER_CAUTIONS, letterStatus, openingWords } from "../summary/letter.js";
import { formatLength, NM_PER_MM, type Unit } from "../units/index.js";
import { type Block, drawDocument } from "./document-pages.js";
import { at, group, line, rectangle, stroke, text } from "./items.js";
import { baseFigureItem, FIGURE_SIDE, layoutFigureItem } from "./letter-figure.js";
import type { Scene, SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { respelled } from "./spelling.js";
import { notesPiece, type Piece, type TableText } from "./table.js";
import { printable, wrap, wrapAtMost } from "./text-metrics.js";

/** Everything the letter is drawn from. */
export interface LetterRequest {
  readonly job: Job;
  readonly version: string;
  readonly letter: Letter;
  readonly facts: readonly BaseFacts[];
  /** null: the job has no grid. */
  readonly plan: Plan | null;
  /** Name of the answer form that goes with it. */
  readonly form: string;
}

/** Its pages, upright. */
export function drawLetter(request: LetterRequest): readonly Scene[] {
  const { job, version } = request;
  const letter = { ...request.letter, asked: request.letter.asked.map((asked) => spelledFor(asked, job.editions)) };
  const figures = new Map(
    request.facts.flatMap(({ mark, figure }) => (figure === null ? [] : [[mark, figure] as const])),
  );
  const blocks: Block[] = [
    { kind: "piece", piece: (width, lettering) => openingPiece(request, width, lettering) },
    ...letter.asked.map((asked): Block => {
      return {
        kind: "piece",
        piece: (width, lettering) => questionPiece(asked, { request, figures }, width, lettering),
      };
    }),
    ...settledTable("letter-answered", "ANSWERED: NOTHING IS ASKED OF THESE", letter.answered),
    ...settledTable("letter-closed", "CLOSED: THEIR NUMBERS ARE NOT USED AGAIN", letter.closed),
    {
      kind: "piece",
      piece: (width, lettering) => notesPiece("cautions", "CAUTIONS", LETTER_CAUTIONS, width, lettering),
    },
  ];
  const status = askedStatus(letter);
  return drawDocument({ job, version, title: "QUESTIONS TO THE ENGINEER OF RECORD", way: "upright", blocks, status });
}

function settledTable(name: string, heading: string, rows: readonly SettledQuestion[]): readonly Block[] {
  if (rows.length === 0) return [];
  const column = (title: string) => ({ title, share: 0, align: "start" as const });
  const table: TableText = {
    ...{ name, heading, columns: [column("NO."), column("ABOUT"), column("WHAT WAS SAID")] },
    rows: rows.map(({ number, about, what }) => [number, printable(about), printable(what)]),
    ...{ foot: [], under: [], strong: new Set<number>() },
  };
  return [{ kind: "table", table }];
}

/** As the country of the job's rules spells it. */
function spelledFor(asked: LetterQuestion, editions: Job["editions"]): LetterQuestion {
  const spell = (words: string): string => respelled(words, editions);
  const { about, said, notes, request } = asked;
  return { ...asked, about: spell(about), said: spell(said), notes: spell(notes), request: spell(request) };
}

const LEADING = 1.65;

/** Lines under each other from the top down; what is bold is so whole. */
interface Line {
  readonly words: string;
  readonly bold: boolean;
}

function linesOf(words: string, width: number, small: number, most: number, bold = false): readonly Line[] {
  return words === ""
    ? []
    : wrapAtMost(printable(words), width, small, most, bold).map((each) => ({ words: each, bold }));
}

function lineItems(lines: readonly Line[], x: number, top: number, small: number): readonly SceneItem[] {
  return lines.map(({ words, bold }, i) =>
    text("note", words, at(x, top - (i + 1) * small * LEADING + small * 0.45), small, { bold }),
  );
}

function openingPiece({ job, letter, facts, form }: LetterRequest, width: number, { small }: Lettering): Piece {
  const drawing = job.drawing.number === "" ? "" : ` Drawing ${job.drawing.number}, revision ${job.drawing.revision}.`;
  const words = [
    `To the engineer of record. About job ${job.number}, revision ${job.revision}: column bases and their setting templates.${drawing}`,
    `Status: ${letterStatus(job.status, letter, facts)}. ${openingWords(letter)} Please answer on this sheet, or in ${form}: a number stays with its question over all revisions. Pictures show the base in plan, what is asked about ringed.`,
  ];
  const lines = words.flatMap((each) => linesOf(each, width, small, 8));
  return {
    height: lines.length * small * LEADING + 1,
    draw: (x, top) => group("letter-opening", lineItems(lines, x, top, small)),
  };
}

interface Pictures {
  readonly request: LetterRequest;
  readonly figures: ReadonlyMap<string, BaseFigure>;
}

const GAP = 4;
const ROW = 6.5;
const ANSWER_ROWS = 2;

function questionPiece(asked: LetterQuestion, pictures: Pictures, width: number, lettering: Lettering): Piece {
  const { small, body } = lettering;
  const picture = pictureOf(asked, pictures, small);
  const left = picture === null ? 0 : FIGURE_SIDE + GAP;
  const lines = questionLines(asked, width - left, small);
  const caption = picture === null ? [] : captionLines(asked, pictures, small);
  const texts = lines.length * small * LEADING;
  const pictured = picture === null ? 0 : FIGURE_SIDE + caption.length * small * LEADING + 0.5;
  const middle = Math.max(texts, pictured) + 1.5;
  const head = body * 2 + 1;
  const height = head + middle + (ANSWER_ROWS + 2) * ROW + 2;
  const draw = (x: number, top: number) =>
    group("question", [
      text("heading", `${asked.number}   ${printable(asked.about).toUpperCase()}`, at(x, top - body * 1.5), body, {
        bold: true,
      }),
      stroke("table-heavy", line(at(x, top - body * 2), at(x + width, top - body * 2))),
      ...(picture === null ? [] : [picture(x, top - head)]),
      ...lineItems(caption, x, top - head - FIGURE_SIDE - 0.5, small),
      ...lineItems(lines, x + left, top - head, small),
      ...answerItems(x, top - head - middle, width, small),
    ]);
  return { height, draw };
}

function questionLines(asked: LetterQuestion, width: number, small: number): readonly Line[] {
  const { figures } = asked;
  const compared = figures === null ? "" : `${figures.found}, asked for: ${figures.asked}; ${figures.missed}.`;
  return [
    ...linesOf(asked.where, width, small, 8),
    ...linesOf(asked.said, width, small, 6),
    ...linesOf(compared, width, small, 3, true),
    ...linesOf(asked.notes, width, small, 8),
    ...linesOf(asked.past, width, small, 3, true),
    ...linesOf(asked.request, width, small, 8),
    ...linesOf(acceptedWords(asked), width, small, 6, true),
  ];
}

function captionLines({ drawn }: LetterQuestion, { request, figures }: Pictures, small: number): readonly Line[] {
  const figure = figures.get(drawn.mark);
  const size = figure === undefined ? "" : `: rods ${overAll(figure, request.job.unit)}`;
  const words = drawn.mark === "" ? "The layout" : `Base ${drawn.mark}${size}`;
  return wrap(printable(words), FIGURE_SIDE, small).map((each) => ({ words: each, bold: false }));
}

/** `12 x 10 in`: between the outermost centres. */
function overAll({ rods }: BaseFigure, unit: Unit): string {
  const { x0, y0, x1, y1 } = extentOfPoints(rods.map(({ center }) => center));
  const [x, y] = [x1 - x0, y1 - y0].map((side) => formatLength(side * NM_PER_MM, unit));
  return `${x} x ${y} ${unit}`;
}

/** null where there is nothing to be drawn: of a layout without a grid. */
function pictureOf(
  { drawn }: LetterQuestion,
  { request, figures }: Pictures,
  small: number,
): ((x: number, top: number) => SceneItem) | null {
  const { plan } = request;
  const letter = small;
  if (drawn.mark === "")
    return plan === null ? null : (x, top) => layoutFigureItem(plan, drawn.subjects, letter, x, top);
  const figure = figures.get(drawn.mark);
  return figure === undefined ? null : (x, top) => baseFigureItem(figure, drawn.subjects, letter, x, top);
}

/** Ruled lines for the answer, then for who gives it and when. */
function answerItems(x: number, top: number, width: number, small: number): readonly SceneItem[] {
  const first = top - ROW;
  const boxes = [
    { words: "stands as drawn, on this basis", at: x + 24 },
    { words: "is to be changed, as follows", at: x + 92 },
  ];
  const rules = Array.from({ length: ANSWER_ROWS }, (_, i) => {
    const y = top - (i + 1) * ROW;
    return line(at(x, y - ROW), at(x + width, y - ROW));
  });
  const last = top - (ANSWER_ROWS + 2) * ROW;
  const half = x + width * 0.62;
  return [
    stroke(
      "fine",
      ...rules,
      line(at(x + 12, last), at(half - 4, last)),
      line(at(half + 14, last), at(x + width, last)),
    ),
    text("label", "ANSWER", at(x, first + 0.9), small, { bold: true }),
    stroke("fine", ...boxes.flatMap((box) => rectangle(box.at, first + 0.4, box.at + small, first + 0.4 + small))),
    ...boxes.map((box) => text("note", box.words, at(box.at + small + 1.6, first + 0.9), small)),
    text("label", "BY", at(x, last + 0.9), small, { bold: true }),
    text("label", "DATE", at(half, last + 0.9), small, { bold: true }),
  ];
}
