/** The checker's page: what is held, asked, close and not checked of a whole job, on one page where it fits. */
import { CAUTIONS_IN_SHORT } from "../checks/cautions.js";
import type { AdvisedRule, CloseCall, JobDigest } from "../checks/digest.js";
import { LAYOUT, markWords } from "../checks/digest.js";
import { keyWords } from "../checks/key-words.js";
import type { CheckRow } from "../checks/model.js";
import { NOT_CHECKED_AT_ALL } from "../checks/model.js";
import { comparedTexts, counted, failedFigures, marginText, percent, subjectWords } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import type { Job } from "../job/model/job.js";
import type { BaseFacts } from "../summary/facts.js";
import type { Question } from "../summary/questions.js";
import type { Unit } from "../units/index.js";
import { type Block, drawDocument } from "./document-pages.js";
import { at, group, line, rectangle, stroke, text } from "./items.js";
import type { Scene } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { respelled } from "./spelling.js";
import { headingItems, type Piece, type TableText } from "./table.js";
import { printable, wrap } from "./text-metrics.js";

/** Everything that the page is drawn from. */
export interface CheckingRequest {
  readonly job: Job;
  readonly version: string;
  readonly digest: JobDigest;
  readonly questions: readonly Question[];
  /** How many numbers are closed. */
  readonly closed: number;
  readonly facts: readonly Pick<BaseFacts, "template" | "released" | "certificates">[];
  /** Why setting-out files are held; empty where they are not. */
  readonly layoutHeld: readonly string[];
  /** The ledger as it is in the package; null where none is written. */
  readonly ledger: { readonly path: string; readonly sha256: string } | null;
}

/** Its pages, upright: one but for large jobs. */
export function drawChecking(request: CheckingRequest): readonly Scene[] {
  const { job, version } = request;
  const tables = [
    countsTable(request),
    heldTable(request),
    questionsTable(request),
    closestTable(request),
    missingTable(request),
    adviceTable(request),
  ].flatMap((table): Block[] => (table === null ? [] : [{ kind: "table", table: spelled(table, job.editions) }]));
  const closing: Block = { kind: "piece", piece: (width, lettering) => closingPiece(request, width, lettering) };
  return drawDocument({
    job,
    version,
    title: "FOR THE CHECKER",
    way: "upright",
    fine: true,
    blocks: [...tables, closing],
  });
}

const [MOST_HELD, MOST_ASKED, MOST_ADVISED, MOST_STEPS, MOST_MARKS] = [8, 12, 6, 6, 5];

function spelled(table: TableText, editions: Job["editions"]): TableText {
  const spell = (words: string): string => printable(respelled(words, editions));
  return { ...table, rows: table.rows.map((row) => row.map(spell)), foot: table.foot.map(spell) };
}

type Titles = readonly (readonly [title: string, align?: "end"])[];

function table(
  name: string,
  heading: string,
  titles: Titles,
  rows: readonly (readonly string[])[],
  own: Partial<TableText> = {},
): TableText {
  const columns = titles.map(([title, align = "start" as const]) => ({ title, share: 1 / titles.length, align }));
  return { name: `checking-${name}`, heading, columns, rows, foot: [], under: [], strong: new Set(), ...own };
}

function countsTable({ digest, facts, questions, closed }: CheckingRequest): TableText {
  const unreleased = new Set(facts.flatMap(({ template, released }) => (released ? [] : [template.mark]))).size;
  const count = (status: Question["status"]): number => questions.filter((each) => each.status === status).length;
  const { bases, quantity, templates, templateQuantity, heldBases, heldTemplates } = digest;
  const rows = [
    ["Bases", `${counted(bases, "type")}, ${quantity} in all`, `${heldBases} held`, ""],
    [
      "Templates",
      `${counted(templates, "type")}, ${templateQuantity} in all`,
      `${heldTemplates} held`,
      `${unreleased} not released`,
    ],
    [
      "Questions",
      `${count("open")} open`,
      `${count("accepted")} open, release accepted`,
      `${count("answered")} answered, ${closed} closed`,
    ],
    [
      "Rows of the ledger",
      `${digest.rows}: ${digest.passed} passed`,
      `${digest.failed} failed`,
      `${digest.notChecked} not checked, ${digest.notApplicable} not applicable`,
    ],
  ];
  const read = new Map(
    facts.flatMap(({ certificates }) => certificates.map(({ path, result }) => [path, result] as const)),
  );
  const results = [...read.values()];
  const passing = results.filter((result) => result === "pass").length;
  if (results.length > 0)
    rows.push([
      "Cut files",
      `${results.length} read back`,
      `${passing} proved to be their plates`,
      `${results.length - passing} not`,
    ]);
  const strong = new Set([...(heldBases > 0 ? [0, 1] : []), ...(count("open") > 0 ? [2] : [])]);
  return table("counts", "WHAT WAS CHECKED", [["WHAT"], ["HOW MANY"], ["OF THEM"], ["AND"]], rows, { strong });
}

function heldTable({ digest, layoutHeld, job }: CheckingRequest): TableText | null {
  if (digest.held.length === 0 && layoutHeld.length === 0) return null;
  const shown = digest.held.slice(0, MOST_HELD);
  const more = digest.held.slice(MOST_HELD).flatMap(({ marks }) => marks);
  const rows = [
    ...(layoutHeld.length === 0 ? [] : [["Layout", "", listed(layoutHeld, 2, "; ")]]),
    ...shown.map(({ marks, templates, rows: holding, reasons }) => [
      listed(marks, MOST_MARKS),
      listed(templates, MOST_MARKS),
      holding.length === 0 ? listed(reasons, 1) : holding.map((row) => failWords(row, job.unit)).join("; "),
    ]),
  ];
  const foot =
    more.length === 0
      ? []
      : [`And ${counted(more.length, "base")} more: ${listed(more, MOST_MARKS * 3)}. The ledger has all.`];
  return table(
    "held",
    "HELD: NOT TO BE CUT OR SET OUT BY",
    [["BASES"], ["TEMPLATES"], ["WHY: THE WORST OF EACH RULE"]],
    rows,
    { foot },
  );
}

function failWords(row: CheckRow, unit: Unit): string {
  const figures = failedFigures(row, unit);
  return figures === null ? `${row.plainName}: ${row.note}` : `${row.plainName} ${figures}`;
}

function questionsTable({ questions }: CheckingRequest): TableText | null {
  const asked = [
    ...questions.filter(({ status }) => status === "open"),
    ...questions.filter(({ status }) => status !== "open"),
  ];
  if (asked.length === 0) return null;
  const more = asked.slice(MOST_ASKED);
  const foot =
    more.length === 0
      ? []
      : [
          `And ${counted(more.length, "question")} more, ${more[0]?.number} to ${more.at(-1)?.number}: questions.csv and the letter have all.`,
        ];
  const shown = asked.slice(0, MOST_ASKED);
  const strong = new Set(shown.flatMap(({ status }, i) => (status === "open" ? [i] : [])));
  const titles: Titles = [["NO."], ["WHERE"], ["WHAT IS SO"], ["WHAT IS ASKED FOR"], ["STATE"]];
  return table("questions", "QUESTIONS TO THE ENGINEER OF RECORD", titles, shown.map(questionRow), { foot, strong });
}

function questionRow({ number, places, plainName, parts, status, check }: Question): readonly string[] {
  const marks = places.map(({ mark }) => (mark === "" ? LAYOUT : mark));
  const said = check.answer ?? check.accepted;
  const state = status === "open" || said === undefined ? "OPEN" : `${status} by ${said.by}, ${said.date}`;
  const { figures, notes } = parts;
  const found = figures === null ? cut(`${plainName}: ${notes}`, LONGEST_NOTE) : `${plainName} ${figures.found}`;
  return [number, listed([...new Set(marks)], MOST_MARKS), found, figures?.asked ?? "", state];
}

function closestTable({ digest, job }: CheckingRequest): TableText | null {
  if (digest.closest.length === 0) return null;
  const titles: Titles = [
    ["WHAT"],
    ["BASES"],
    ["AT"],
    ["VALUE", "end"],
    ["LIMIT", "end"],
    ["SPARE", "end"],
    ["%", "end"],
    ["BY"],
  ];
  const foot = [
    "By their share of the limit. Left out: what holds exactly because it was chosen or sized to its limit, and what is a yes or a no.",
  ];
  return table(
    "closest",
    "CLOSEST OF WHAT PASSES",
    titles,
    digest.closest.map((call) => closeRow(call, job.unit)),
    { foot },
  );
}

function closeRow({ row, subjects, share, marks }: CloseCall, unit: Unit): readonly string[] {
  const { plainName, value, limit, sense, margin, clause, edition } = row;
  if (value === null || limit === null || margin === null) return [];
  const [found, bound] = comparedTexts(value, limit, unit);
  const source = edition === "" || clause.includes(edition) ? clause : `${edition}, ${clause}`;
  return [
    ...[plainName, markWords(marks, 3), subjectWords(subjects.slice(0, 4)), found, `${sense} ${bound}`],
    ...[
      share === 0 ? "none" : marginText(margin, unit),
      percent(share, 1).replace(" %", ""),
      cut(source, LONGEST_SOURCE),
    ],
  ];
}

const [LONGEST_SOURCE, LONGEST_NOTE] = [34, 110];

function cut(words: string, most: number): string {
  return words.length <= most ? words : `${words.slice(0, most - 4).trimEnd()} ...`;
}

function adviceTable({ digest: { advice } }: CheckingRequest): TableText | null {
  if (advice.length === 0) return null;
  const more = advice.slice(MOST_ADVISED);
  const foot = more.length === 0 ? [] : [`And of ${more.map(({ rule }) => rule).join(", ")}.`];
  const titles: Titles = [["WHAT"], ["ROWS", "end"], ["BASES"]];
  return table("advice", "ADVICE: FAILS THAT STOP NOTHING", titles, advice.slice(0, MOST_ADVISED).map(adviceRow), {
    foot,
  });
}

function adviceRow({ rule, plainName, rows, marks }: AdvisedRule): readonly string[] {
  return [`${plainName} (${rule})`, String(rows), markWords(marks, 12)];
}

function missingTable({ digest: { unchecked } }: CheckingRequest): TableText | null {
  const { rows, keyless, steps } = unchecked;
  if (rows === 0) return null;
  const shown = steps.slice(0, MOST_STEPS);
  const total = shown.at(-1)?.total ?? 0;
  const rest = rows - keyless - total;
  const foot = [
    ...(rest === 0
      ? []
      : [`${counted(rest, "row")} ${rest === 1 ? "lacks" : "lack"} other keys: the ledger names them row by row.`]),
    ...(keyless === 0 ? [] : [`${counted(keyless, "row")} ${keyless === 1 ? "hangs" : "hang"} on no key of the job.`]),
  ];
  const titles: Titles = [
    ["TO BE GIVEN"],
    ["KEY OF THE JOB FILE"],
    ["ROWS", "end"],
    ["WITH THOSE ABOVE", "end"],
    ["WHAT IS CHECKED THEN"],
  ];
  const heading = `NOT CHECKED: ${counted(rows, "ROW").toUpperCase()}. WHAT WOULD CHECK MOST OF THEM`;
  return table(
    "missing",
    heading,
    titles,
    shown.map((step) => [
      step.keys.map(keyWords).join("; and "),
      step.keys.join(" + "),
      String(step.rows),
      `${step.total} of ${rows}`,
      listed(step.rules, 4),
    ]),
    { foot },
  );
}

/** Notes in one paragraph each, then the room for a signature, which stays empty. */
function closingPiece(request: CheckingRequest, width: number, lettering: Lettering): Piece {
  const { small, body } = lettering;
  const lines = closingNotes(request).flatMap((note) => wrap(printable(note), width - 2, small));
  const row = small * 1.6;
  const notes = body * 2 + lines.length * row + 2;
  const box = small * 6;
  return {
    height: notes + box,
    draw: (x, top) =>
      group("checking-notes", [
        ...headingItems("BEFORE IT IS SIGNED", x, top, width, lettering),
        ...lines.map((words, i) => text("note", words, at(x + 1, top - body * 2 - (i + 1) * row + small * 0.2), small)),
        ...signatureBox(x, top - notes, width, box, small),
      ]),
  };
}

function closingNotes({ job, ledger }: CheckingRequest): readonly string[] {
  const { templateHoles, baseHoles, edges, concrete, placing, set } = job.editions;
  const editions = [...new Set([templateHoles, baseHoles, edges, concrete, placing])].join("; ");
  const hash = ledger === null ? "" : ` SHA-256 of ${ledger.path}: ${ledger.sha256.slice(0, 16)}.`;
  return [
    `No rule looks at: ${NOT_CHECKED_AT_ALL.join("; ")}.`,
    `Editions, rules ${set}: ${editions}.`,
    `Cautions: ${CAUTIONS_IN_SHORT}`,
    `Every row with its clause, value and limit stands in the ledger.${hash} Hashes of all files: summary.json.`,
  ];
}

function signatureBox(x: number, top: number, width: number, height: number, small: number) {
  const label = (words: string, share: number) =>
    text("note", words, at(x + 1 + share * width, top - small * 1.5), small);
  return [
    stroke("table", ...rectangle(x, top - height, x + width, top)),
    stroke("table", line(at(x + width * 0.62, top), at(x + width * 0.62, top - height + small * 2))),
    stroke("table", line(at(x, top - height + small * 2), at(x + width, top - height + small * 2))),
    label("CHECKED BY", 0),
    label("DATE", 0.62),
    text(
      "note",
      "Left empty by the program: rodplate sign DIR --by NAME records who checked which bytes, in engineer/signed.",
      at(x + 1, top - height + small * 0.6),
      small,
    ),
  ];
}
