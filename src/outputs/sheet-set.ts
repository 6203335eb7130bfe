/** The set: every sheet of a package as a page of one PDF. Pages are taken as their sheets are drawn, none is drawn twice. */
import type { CheckedBase, CheckedJob } from "../checks/checked.js";
import { listed } from "../diagnostics/listed.js";
import type { PdfMaker } from "../formats/pdf-maker.js";
import type { Bookmark, PdfPage } from "../formats/sheet-pdf.js";
import { startPdf, writePage } from "../formats/sheet-pdf.js";
import type { Job } from "../job/model/job.js";
import { type CoverPage, drawCover } from "../sheets/cover-sheet.js";
import type { Scene } from "../sheets/scene.js";
import { DOCUMENT_TYPE } from "../sheets/status-words.js";
import type { Question } from "../summary/questions.js";
import type { TemplatePiece } from "../template/index.js";
import { pdfFacts } from "./document-pdf.js";
import type { SheetPlace } from "./names.js";
import type { PaperName } from "./paper-names.js";
import { placeOn } from "./paper-sizes.js";

/** A page that the paper is too small for, by its number in the file. */
export interface ReducedPage {
  readonly page: number;
  readonly name: string;
  readonly percent: number;
}

/** A page as it is written from its sheet, and what cover and bookmarks say of it: plain data, which may come from another thread. */
export interface SetPage extends CoverPage {
  readonly section: SetSection;
  readonly page: PdfPage;
  readonly bookmark: string;
}

/** Parts of the set after the cover, in their order in it; the value is the title of its bookmarks. */
const SECTIONS = {
  checking: "Checking",
  plan: "Anchor-rod plan",
  templates: "Setting templates",
  setting: "Setting in the field",
  rods: "Anchor rods",
  lists: "Lists",
} as const;

/** A part of the set. */
export type SetSection = keyof typeof SECTIONS;

/** Parts that are files of their own too, for who carries only this. */
export type OwnPart = Extract<SetSection, "setting">;

/** A sheet that becomes a page. */
export interface SetSheet {
  readonly scene: Scene;
  /** On the cover: `PLAN 1 OF 2`. */
  readonly name: string;
  /** On the cover: what it shows, and for which bases. */
  readonly about: string;
  readonly bookmark: string;
  readonly held: boolean;
}

/** The pages of one document, each by its number where there are several. */
export function documentSheets(
  scenes: readonly Scene[],
  { name, about, bookmark }: Pick<SetSheet, "name" | "about" | "bookmark">,
): readonly SetSheet[] {
  return scenes.map((scene, i) => {
    const of = scenes.length === 1 ? "" : ` ${i + 1} OF ${scenes.length}`;
    return { scene, name: `${name}${of}`, about, bookmark: `${bookmark}${of.toLowerCase()}`, held: false };
  });
}

/** Takes the pages of a package as their sheets are drawn, in any order of the parts. */
export interface SheetSet {
  add(page: SetPage): void;
  /** Sheets of one part, in order. */
  addSheets(section: SetSection, sheets: readonly SetSheet[]): void;
  /** The pages of one part as a file of its own, in the order in which they came; null where it has none. To be called once. */
  finishPart(section: OwnPart): Uint8Array | null;
  /** The whole file; to be called once, last. */
  finish(checked: CheckedJob): Uint8Array;
  /** What was reduced; complete when the file is. */
  readonly reduced: readonly ReducedPage[];
}

/** What a set is made with. */
export interface SheetSetOptions {
  readonly maker: PdfMaker;
  /** null: each page has the size of its sheet. */
  readonly paper: PaperName | null;
  readonly version: string;
  /** Every question of the job, asked when the bases have gone by. */
  readonly questions: () => readonly Question[];
}

/** A page that is in the file already, at this number in the order of adding. */
interface TakenPage extends Omit<SetPage, "page"> {
  readonly number: number;
}

/** Starts a set without pages. */
export function startSheetSet(job: Job, options: SheetSetOptions): SheetSet {
  const { maker, paper, version } = options;
  const pdf = startPdf(maker, pdfFacts(job, version, `Anchor-rod setting templates, ${job.status}`));
  const taken: TakenPage[] = [];
  const reduced: ReducedPage[] = [];
  const own = startOwnPart(job, options);
  const take = ({ page, ...said }: SetPage): TakenPage => {
    if (said.section === "setting") own.add(page, said.bookmark);
    return { ...said, number: pdf.add(page) };
  };
  return {
    reduced,
    add: (page) => void taken.push(take(page)),
    addSheets: (section, sheets) => {
      for (const { scene, ...said } of sheets) taken.push(take({ ...said, section, ...writtenPage(scene, paper) }));
    },
    finishPart: () => own.finish(),
    finish: (checked) => {
      const isOpen = checked.job.status === "released" && checked.layoutOpen.length > 0;
      const open = isOpen ? taken.map(openLayoutPage) : taken;
      const marked = checked.layoutHeld.reasons.length > 0 ? open.map(heldByLayout(checked.layoutHeld)) : open;
      const parts = SECTION_ORDER.map((section) => marked.filter((page) => page.section === section));
      const pages = parts.flat();
      const cover = drawCover(coverRequest(checked, pages, options));
      const covers = cover.map((scene) => writtenPage(scene, paper));
      const first = covers.map(({ page }) => pdf.add(page));
      for (const [i, { reduced: percent }] of [...covers, ...pages].entries())
        if (percent !== null) reduced.push({ page: i + 1, name: pages[i - covers.length]?.name ?? "cover", percent });
      return pdf.finish([...first, ...pages.map(({ number }) => number)], bookmarksOf(covers.length, parts));
    },
  };
}

/** A part that is a file of its own: its pages are written as they come. */
function startOwnPart(job: Job, { maker, version }: SheetSetOptions) {
  const pdf = startPdf(maker, pdfFacts(job, version, `Setting sheets, ${job.status}`));
  const order: number[] = [];
  const bookmarks: Bookmark[] = [];
  return {
    add: (page: PdfPage, title: string) => {
      order.push(pdf.add(page));
      bookmarks.push({ title, page: order.length, under: [] });
    },
    finish: () => (order.length === 0 ? null : pdf.finish(order, bookmarks)),
  };
}

function writtenPage(scene: Scene, paper: PaperName | null): Pick<SetPage, "page" | "size" | "scale" | "reduced"> {
  const said = { size: scene.size, scale: scene.listing?.scale ?? "" };
  if (paper === null) return { ...said, page: writePage(scene), reduced: null };
  const { placement, percent } = placeOn(paper, scene);
  return { ...said, page: writePage(scene, placement), reduced: percent === 100 ? null : percent };
}

const MOST_BASES = 12;

/** What the set says of a page beside what it shows: that its base is held, or its template not released. */
function standingOf(
  { job, held, open }: Pick<CheckedBase, "job" | "held" | "open">,
  mark: string,
  bookmark: string,
): Pick<SetPage, "held" | "bookmark" | "unreleased"> {
  const isHeld = held.length > 0;
  return {
    held: isHeld,
    ...(job.status !== "released" || open.length === 0 ? {} : { unreleased: mark }),
    bookmark: isHeld ? `${bookmark} (HELD)` : bookmark,
  };
}

type CheckedTemplate = Pick<CheckedBase, "job" | "plate" | "held" | "open">;

/** The page of a template's sheet. */
export function templatePage(
  scene: Scene,
  checked: CheckedTemplate,
  { number, count, bases }: SheetPlace,
  paper: PaperName | null,
): SetPage {
  const { mark } = checked.plate;
  const of = count === 1 ? "" : ` ${number} OF ${count}`;
  const served = `${bases.length === 1 ? "BASE" : "BASES"} ${listed(bases, MOST_BASES)}`;
  const type = scene.listing?.about ?? "";
  const about = type === DOCUMENT_TYPE.template ? served : `${type}, ${served}`;
  const bookmark = `${mark}${of.toLowerCase()}, ${served.replace(/^BASES?/, (word) => word.toLowerCase())}`;
  const said = { section: "templates" as const, name: `${mark}${of}`, about };
  return { ...said, ...standingOf(checked, mark, bookmark), ...writtenPage(scene, paper) };
}

/** The page of a piece's sheet. */
export function piecePage(
  scene: Scene,
  checked: CheckedTemplate,
  { role, plate: { mark, quantity } }: TemplatePiece,
  paper: PaperName | null,
): SetPage {
  const about = `${role.toUpperCase()} OF ${checked.plate.mark}, ${quantity} OFF`;
  const said = { section: "templates" as const, name: mark, about };
  return { ...said, ...standingOf(checked, mark, `${mark}, ${role}, ${quantity} off`), ...writtenPage(scene, paper) };
}

/** The page of a base's setting sheet. */
export function settingPage(
  scene: Scene,
  checked: CheckedTemplate & Pick<CheckedBase, "base">,
  paper: PaperName | null,
): SetPage {
  const { base, plate } = checked;
  const about = `${scene.listing?.about ?? ""}, BASE ${base.mark}`;
  const said = { section: "setting" as const, name: `SETTING ${base.mark}`, about };
  return {
    ...said,
    ...standingOf(checked, plate.mark, `${base.mark}, template ${plate.mark}`),
    ...writtenPage(scene, paper),
  };
}

/** A page of the plan where a question about the layout is open. */
function openLayoutPage(page: TakenPage): TakenPage {
  return page.section === "plan" ? { ...page, unreleased: "LAYOUT" } : page;
}

/** Pages of the plan; and the setting sheets, which show where a base stands, unless site coordinates alone are held. */
function heldByLayout({ siteOnly }: CheckedJob["layoutHeld"]): (page: TakenPage) => TakenPage {
  const shows = ({ section }: TakenPage) => section === "plan" || (section === "setting" && !siteOnly);
  return (page) => (shows(page) && !page.held ? { ...page, held: true, bookmark: `${page.bookmark} (HELD)` } : page);
}

function coverRequest(checked: CheckedJob, pages: readonly CoverPage[], options: SheetSetOptions) {
  const { job, held, layoutHeld } = checked;
  const { paper, version, questions } = options;
  const open = questions().filter(({ status }) => status === "open");
  return {
    job,
    programVersion: version,
    pages,
    held: [
      ...[...held].map(([mark, reasons]) => ({ name: heldName(job, mark), reasons })),
      ...(layoutHeld.reasons.length > 0 ? [{ name: "LAYOUT", reasons: layoutHeld.reasons }] : []),
    ],
    questions: open.map(({ number, places, text }) => ({ number, about: aboutWords(places), text: cutAt(text) })),
    paper: paper === null ? null : paper.toUpperCase(),
    isMeant: (size: Pick<Scene, "width" | "height">) =>
      paper === null || placeOn(paper, { ...BLANK, ...size }).percent === 100,
  };
}

const MOST_ASKED = 8;

function aboutWords(places: Question["places"]): string {
  const marks = places.flatMap(({ mark }) => (mark === "" ? [] : [mark]));
  return marks.length === 0 ? "LAYOUT" : listed(marks, MOST_ASKED);
}

/** A row of the cover is never higher than its page: the letter has the whole text. */
const LONGEST_TEXT = 900;

function cutAt(text: string): string {
  return text.length <= LONGEST_TEXT
    ? text
    : `${text.slice(0, LONGEST_TEXT).trimEnd()} [cut; the letter has all of it]`;
}

/** `BASE B20, TEMPLATE T20`. */
function heldName({ bases }: Job, mark: string): string {
  const template = bases.find((base) => base.mark === mark)?.template.mark ?? mark;
  return template === mark ? `BASE ${mark}` : `BASE ${mark}, TEMPLATE ${template}`;
}

const BLANK: Omit<Scene, "width" | "height"> = { size: "", title: "", description: "", items: [] };

const SECTION_ORDER = Object.keys(SECTIONS) as readonly SetSection[];

function bookmarksOf(own: number, parts: readonly (readonly TakenPage[])[]): readonly Bookmark[] {
  let first = own + 1;
  const groups = parts.flatMap((pages, i): readonly Bookmark[] => {
    const section = SECTION_ORDER[i];
    if (section === undefined || pages.length === 0) return [];
    const start = first;
    first += pages.length;
    const under = pages.map(({ bookmark }, k) => ({
      title: `${bookmark}, page ${start + k}`,
      page: start + k,
      under: [],
    }));
    return [{ title: SECTIONS[section], page: start, under }];
  });
  return [{ title: "Cover", page: 1, under: [] }, ...groups];
}
