/** From a summary's bases to what is signed of them. */
import type { FileRole, SummaryBase, SummaryCheck, SummaryFile, SummaryQuestion } from "../summary/model.js";
import { groupBy } from "../units/group-by.js";
import type { OpenRows, SignedBase, SignedFile, SignedState } from "./model.js";

/** A base as a summary has it, as far as it is signed. */
export type SignableBase = Pick<SummaryBase, "mark" | "quantity" | "held" | "checks" | "files"> & {
  readonly template: Omit<SummaryBase["template"], "bases"> & { readonly bases?: readonly string[] };
  readonly rods?: SummaryBase["rods"];
};

/** What a state is gathered with. */
export interface SigningTools {
  /** SHA-256 of a text in hexadecimal. */
  hash(text: string): string;
  /** What a file is for, by its kind. */
  roleOf(kind: string): FileRole | null;
  /** False where only files to cut by were made, as of a job. */
  readonly hasPapers: boolean;
}

/** Gathers what is signed while bases go by. */
export interface SignedBases {
  add(base: SignableBase): void;
  /** `checks` and `files` are those of the job itself; `questions`: numbers, where there are any. */
  end(rest: {
    readonly checks: readonly SummaryCheck[];
    readonly files: readonly SummaryFile[];
    readonly questions: readonly NumberedQuestion[];
  }): Omit<SignedState, "job" | "summary" | "layoutHeld">;
}

/** Signs of a hash that are kept of a part: enough to tell a change; the files have their whole hashes. */
const SIGNS = 12;

/** Starts with none. */
export function startSignedBases(tools: SigningTools): SignedBases {
  const bases: SignedBase[] = [];
  const files = new Map<string, SignedFile & { readonly bases: string[] }>();
  const waiting: WaitingRow[] = [];
  let notChecked = 0;
  const take = (mark: string, checks: readonly SummaryCheck[]): void => {
    notChecked += checks.filter(({ status }) => status === "not-checked").length;
    for (const { rule, accepted } of checks.filter(isWaiting))
      waiting.push({ rule, mark, status: accepted === undefined ? "open" : "accepted" });
  };
  const takeFile = (file: SummaryFile, mark: string | null): void => {
    const { kind, path, bytes, sha256 } = file;
    const known = files.get(path) ?? { kind, path, bytes, sha256, bases: [] };
    files.set(path, known);
    if (mark !== null) known.bases.push(mark);
  };
  return {
    add: (base) => {
      bases.push(digestBase(base, tools));
      take(base.mark, base.checks);
      for (const file of base.files) takeFile(file, base.mark);
    },
    end: (rest) => {
      take("", rest.checks);
      for (const file of rest.files) takeFile(file, null);
      const held = bases.filter((base) => base.held).map(({ mark }) => mark);
      const layout = rowHashes(rest.checks, tools);
      const gathered = (wanted: WaitingRow["status"]): readonly OpenRows[] =>
        gatherRows(
          waiting.filter(({ status }) => status === wanted),
          rest.questions.filter(({ status }) => status === wanted),
        );
      const said = { held, open: gathered("open"), accepted: gathered("accepted"), notChecked };
      return { ...said, bases, layout, files: [...files.values()] };
    },
  };
}

/** A question to the engineer that nobody has answered. */
function isWaiting({ severity, status, answer }: SummaryCheck): boolean {
  return severity === "ask" && status === "fail" && answer === undefined;
}

interface WaitingRow {
  readonly rule: string;
  readonly mark: string;
  readonly status: "open" | "accepted";
}

/** A question as far as its number is signed. */
export type NumberedQuestion = Pick<SummaryQuestion, "number" | "rule" | "status">;

function gatherRows(rows: readonly WaitingRow[], questions: readonly NumberedQuestion[]): readonly OpenRows[] {
  return [...groupBy(rows, ({ rule }) => rule)].map(([rule, own]) => ({
    rule,
    bases: [...new Set(own.map(({ mark }) => mark))],
    rows: own.length,
    numbers: questions.flatMap((question) => (question.rule === rule ? [question.number] : [])),
  }));
}

function digestBase(base: SignableBase, { hash, roleOf, hasPapers }: SigningTools): SignedBase {
  const { mark, quantity, held, template, rods = [], checks, files } = base;
  const short = (value: unknown): string => hash(JSON.stringify(value)).slice(0, SIGNS);
  const { quantity: templates, heldBy: _heldBy, released: _released, bases: serves = [mark], ...plate } = template;
  const isMaking = ({ kind }: SummaryFile): boolean => roleOf(kind) === "cut" || roleOf(kind) === "drill";
  const bytes = (own: readonly SummaryFile[]): string => short(own.map(({ kind, sha256 }) => [kind, sha256]));
  const making = files.filter(isMaking);
  return {
    ...{ mark, template: template.mark, held },
    ...{ quantity: short([quantity, templates]), plate: short([plate, serves]), rods: short(rods) },
    cut: making.length === 0 ? null : bytes(making),
    papers: hasPapers ? bytes(files.filter((file) => !isMaking(file))) : null,
    rows: rowHashes(checks, { hash }),
  };
}

function rowHashes(checks: readonly SummaryCheck[], { hash }: Pick<SigningTools, "hash">): Record<string, string> {
  const rules = groupBy(checks, ({ rule }) => rule);
  return Object.fromEntries([...rules].map(([rule, rows]) => [rule, hash(JSON.stringify(rows)).slice(0, SIGNS)]));
}
