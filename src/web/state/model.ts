/** Everything that the page knows, in one place. Plain data; changed by `src/web/state/actions.ts` alone. */
import type { LiveBaseView, LiveJob, Splice } from "../../tasks/live/model.js";
import type { JobFiles } from "../engine/protocol.js";
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
}

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
  readonly keeping: Keeping;
  /** Long work: packages, surveys, proofs, what runs and what came of it. */
  readonly works: Works;
  /** True while the engine works on what was asked. */
  readonly working: boolean;
  readonly notices: readonly Notice[];
}
