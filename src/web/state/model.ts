/** Everything that the page knows, in one place. Plain data; changed by the actions beside this file alone. */
import type { AnswerDraft, LiveBaseView, LiveJob, Splice } from "../../tasks/live/model.js";
import type { JobFiles } from "../engine/protocol.js";
import type { Beginning, Begun } from "./beginning.js";
import type { Left } from "./left.js";
import type { Works } from "./work.js";

/** What fills the middle of the page. */
export const VIEWS = [
  "begin",
  "template",
  "schedule",
  "plan",
  "ledger",
  "questions",
  "solid",
  "package",
  "sign",
  "survey",
  "budget",
  "proof",
  "compare",
] as const;

/** One of them. */
export type ViewName = (typeof VIEWS)[number];

/** A change of the job's text with what it is called, to be taken back or made again. */
export interface Step {
  readonly name: string;
  readonly splices: readonly Splice[];
}

/** The job that is open: its text as it stands, the files beside it, and every step that led there. */
export interface OpenJob {
  /** Under which it is kept in this browser. */
  readonly id: string;
  readonly files: JobFiles;
  readonly text: string;
  readonly steps: readonly Step[];
  /** How many of the steps are made; those beyond were taken back. */
  readonly made: number;
  /** Where it came from, as `sample machine-hall`. */
  readonly from: string;
  readonly home: Home;
  /** The text as it stands at home; null where it never was saved. */
  readonly saved: string | null;
}

/** The files of a job with its text as it stands now, as engine and long work take them. */
export function filesNow({ files, text }: OpenJob): JobFiles {
  return { job: files.job, files: new Map([...files.files, [files.job, text]]) };
}

/** Name of the sheet from which the bases of the job file were read, where it is at hand; null: none. */
export function sheetReadInto({ basesIn, files }: LiveJob): string | null {
  const sheet = files.find(({ kind, isThere }) => kind === "schedule" && isThere);
  return basesIn === "job" ? (sheet?.name ?? null) : null;
}

/** True where closing the page without keeping the job would lose something. */
export function isWorthKeeping({ saved, text, steps, from }: OpenJob): boolean {
  return saved !== text && !(steps.length === 0 && from.startsWith("sample "));
}

/** Where a job is saved to, outside of what this browser keeps. `server`: the program that serves the page, by the name that it has for the file. */
export type Home =
  | { readonly kind: "none" }
  | { readonly kind: "download" }
  | { readonly kind: "file"; readonly handle: FileSystemFileHandle }
  | { readonly kind: "server"; readonly key: string; readonly hash: string };

/** A job that is kept in this browser, as a list of them shows it. Texts are the job's own. */
export interface KeptJob {
  readonly id: string;
  /** Number, title and revision; empty where it never was right. */
  readonly title: string;
  /** Name of its file. */
  readonly file: string;
  readonly steps: number;
  /** Milliseconds since 1970, when it was last changed or opened. */
  readonly changed: number;
  /** True where its text is not the one that was last saved to a file. */
  readonly isUnsaved: boolean;
}

/** A file that a person handed over; its handle where the browser lets it be written again. */
export interface GivenFile {
  readonly file: File;
  readonly handle: FileSystemFileHandle | null;
}

/**
 * What is asked under the job's line until it is answered. `link`: a job came with the address. `shared`: a link was made of the
 * job; null: it would be too long. `changed`: the file is another than it was read. `throw`: a kept job is to be removed.
 */
export type Asking =
  | {
      readonly kind: "link";
      readonly files: JobFiles;
      readonly title: string;
      readonly bases: number;
      /** Files that it names, which are not in the link. */
      readonly lacks: readonly string[];
    }
  | { readonly kind: "broken"; readonly why: string }
  | { readonly kind: "shared"; readonly link: string | null; readonly signs: number; readonly lacks: readonly string[] }
  | { readonly kind: "changed"; readonly name: string; readonly text: string; readonly home: Home }
  | { readonly kind: "throw"; readonly job: KeptJob };

/** Where the job is kept. `refused`: the browser took it not, and why. */
export type Keeping =
  | { readonly kind: "kept" }
  | { readonly kind: "keeping" }
  | { readonly kind: "refused"; readonly why: string };

/** Holes, rows or keys that are pointed at, wherever they are shown. */
export interface Pointed {
  /** Tags of holes and other subjects of rows. */
  readonly subjects: readonly string[];
  readonly rule: string | null;
}

/** A key that is missing, whose field is to be shown and focused; taken off by `reached`. `base`: its path, null for a key of the job. */
export interface Goal {
  readonly base: string | null;
  /** As rows name it: `rods.length`, `rods.grade or rods.nut`, `table of the shop file`. */
  readonly key: string;
}

/** What the page says of itself, to be read once. */
export interface Notice {
  readonly id: number;
  readonly tone: "said" | "fault";
  readonly text: string;
}

/** The state of the page. */
export interface PageState {
  readonly view: ViewName;
  readonly job: OpenJob | null;
  readonly live: LiveJob | null;
  /** Path of the base whose template is shown. */
  readonly base: string | null;
  readonly sheet: LiveBaseView | null;
  /** Room of the drawing, in the paper millimetres of a screen. */
  readonly room: { readonly width: number; readonly height: number };
  readonly pointed: Pointed | null;
  /** Field that the user is taken to; null: none, or there already. */
  readonly goal: Goal | null;
  /** Answers that are typed and not written yet, by the numbers of their questions. */
  readonly drafts: Readonly<Record<string, AnswerDraft>>;
  readonly left: Left;
  readonly keeping: Keeping;
  /** Jobs that are kept in this browser, the last changed first. */
  readonly kept: readonly KeptJob[];
  readonly asking: Asking | null;
  /** How far the beginning of a job has come. */
  readonly beginning: Beginning;
  /** What was begun before and left, and is no job yet: the last changed first. */
  readonly begun: readonly Begun[];
  /** Long work: packages, surveys, proofs, what runs and what came of it. */
  readonly works: Works;
  /** True while a change of the job is under way, until it is kept. */
  readonly changing: boolean;
  /** True while the engine works on what was asked. */
  readonly working: boolean;
  readonly notices: readonly Notice[];
}
