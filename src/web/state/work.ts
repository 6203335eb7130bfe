/** Long work as the page has it: how far it is, what came of it, or why nothing did. */
import type { Finding } from "../../diagnostics/finding.js";
import type { Progress, TaskKind, TaskKinds } from "../engine/task-model.js";

/** One piece of work. `done` keeps what was asked, so that a later change of the job can be told. */
export type Work<K extends TaskKind> =
  | { readonly kind: "running"; readonly progress: Progress | null }
  | { readonly kind: "done"; readonly ask: TaskKinds[K]["ask"]; readonly answer: TaskKinds[K]["answer"] }
  | { readonly kind: "refused"; readonly why: readonly string[]; readonly findings: readonly Finding[] }
  | { readonly kind: "fault"; readonly fault: string };

/** The last of each kind; none where nothing was asked, or it was given up. */
export type Works = { readonly [K in TaskKind]?: Work<K> };

/** None yet. */
export const NO_WORKS: Works = {};
