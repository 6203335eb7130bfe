/** A survey's report to the engineer on the office's own paper, upright. */
import type { Job } from "../job/model/job.js";
import type { ReportItem, ReportPart, SurveyReport } from "../survey/index.js";
import { type Block, drawDocument } from "./document-pages.js";
import { at, group, line, stroke, text } from "./items.js";
import type { Scene } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import type { Piece } from "./table.js";
import { printable, wrap } from "./text-metrics.js";

/** Its pages: headings stay with what follows them, and an entry is not parted. */
export function drawSurveyReport(job: Job, { title, parts }: SurveyReport, version: string): readonly Scene[] {
  const [about = title] = title.split(":");
  return drawDocument({ job, version, title: `${about}: REPORT`, way: "upright", blocks: parts.flatMap(partBlocks) });
}

function partBlocks({ heading, items }: ReportPart): readonly Block[] {
  const [first, ...rest] = items.flatMap(shortItems);
  if (first === undefined) return [];
  return [
    { kind: "piece", piece: (width, lettering) => itemPiece(heading, first, width, lettering) },
    ...rest.map(
      (item): Block => ({ kind: "piece", piece: (width, lettering) => itemPiece("", item, width, lettering) }),
    ),
  ];
}

/** Letters of the longest piece: about half a page. */
const LONGEST = 1500;

/** One that is longer than half a page goes on in further pieces. */
function shortItems(item: ReportItem): readonly ReportItem[] {
  const words = printable(item.words);
  if (words.length <= LONGEST) return [{ ...item, words }];
  const cut = words.lastIndexOf(" ", LONGEST);
  const end = cut > 0 ? cut : LONGEST;
  return [
    { ...item, words: words.slice(0, end) },
    ...shortItems({ kind: "paragraph", words: words.slice(end).trim() }),
  ];
}

const LEADING = 1.6;

function itemPiece(heading: string, { kind, words }: ReportItem, width: number, { small, body }: Lettering): Piece {
  const indent = kind === "entry" ? small * 1.4 : 0;
  const lines = wrap(words, width - indent, small);
  const head = heading === "" ? [] : wrap(printable(heading), width, body, true);
  const headHeight = head.length === 0 ? 0 : head.length * body * LEADING + ABOVE + 1.5;
  const first = (top: number) => top - headHeight - small * 1.15;
  return {
    height: headHeight + lines.length * small * LEADING - GAP_TAKEN,
    draw: (x, top) =>
      group("survey-report", [
        ...head.map((each, i) =>
          text("heading", each, at(x, top - ABOVE - body * (1.1 + i * LEADING)), body, { bold: true }),
        ),
        ...(head.length === 0
          ? []
          : [stroke("table-heavy", line(at(x, top - headHeight + 1), at(x + width, top - headHeight + 1)))]),
        ...(kind === "entry" ? [text("note", "-", at(x, first(top)), small)] : []),
        ...lines.map((each, i) => text("note", each, at(x + indent, first(top) - i * small * LEADING), small)),
      ]),
  };
}

/** Clear paper over a heading. */
const ABOVE = 2;

/** Pieces of a document stand farther apart than lines of a text. */
const GAP_TAKEN = 1.5;
