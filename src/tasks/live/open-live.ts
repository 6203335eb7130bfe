/** A job that is edited: its text, and everything that a page shows of it, anew after every change. */

import type { CheckedBase } from "../../checks/checked.js";
import { checkBase, checkWholeJob } from "../../checks/checked.js";
import { heldLayout } from "../../checks/held.js";
import { isWithoutMargin, tightness } from "../../checks/run.js";
import { hasErrors } from "../../diagnostics/finding.js";
import { laidAsWritten, readJobFile } from "../../job/index.js";
import type { Inputs } from "../../readers/inputs.js";
import { contentOf } from "../../readers/inputs.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { decodeText } from "../../readers/text.js";
import type { KeyEdit, Splice } from "../../readers/yaml-edit.js";
import { spliced, spliceOf } from "../../readers/yaml-edit.js";
import { drawOnScreen } from "../../sheets/on-screen.js";
import { startQuestions } from "../../summary/questions.js";
import { summarizeBase, summarizeCheck, summarizeJob } from "../../summary/summarize.js";
import type { OpenedJob } from "../open.js";
import { openJob } from "../open.js";
import type { LiveBase, LiveBaseView, LiveHead, LiveJob, LiveQuestion, LiveResult, Watch } from "./model.js";

/** A job in memory. Every call gives the whole state that follows from its text. */
export interface Live {
  readonly text: () => string;
  /** Changes keys; an edit whose place the text does not have changes nothing. */
  edit(edits: readonly KeyEdit[], watch: Watch): LiveResult;
  /** Changes the text itself: an edit taken back, or one of another tab. */
  splice(splices: readonly Splice[], watch: Watch): LiveResult;
  /** Another base, or the same in another room. */
  look(watch: Watch): LiveBaseView | null;
  state(): LiveJob;
}

/** Opens a job to be edited. Files beside the job are handed in as for `openJob`; `date` as there. */
export function openLive(inputs: Inputs, { date }: { readonly date: string }): Live {
  let text = textOf(inputs);
  let turn = 0;
  let now = compute();
  function compute(): Computed {
    const job = readJobFile(text, inputs.job);
    return computeLive({ ...inputs, files: new Map([...inputs.files, [inputs.job, job]]) }, date, turn);
  }
  const take = (splices: readonly Splice[], watch: Watch): LiveResult => {
    turn += 1;
    now = compute();
    return { splices, job: now.job, view: viewOf(now, watch) };
  };
  return {
    text: () => text,
    edit: (edits, watch) => {
      const made: Splice[] = [];
      for (const edit of edits) {
        const splice = spliceOf(text, edit);
        if (splice === null || splice.was === splice.now) continue;
        text = spliced(text, splice);
        made.push(splice);
      }
      return take(made, watch);
    },
    splice: (splices, watch) => {
      text = splices.reduce(spliced, text);
      return take(splices, watch);
    },
    look: (watch) => viewOf(now, watch),
    state: () => now.job,
  };
}

function textOf({ job, files }: Inputs): string {
  const content = contentOf(files.get(job)) ?? "";
  const decoded = decodeText(content, job, "allowed is YAML");
  return decoded.ok ? decoded.text : "";
}

interface Computed {
  readonly job: LiveJob;
  readonly opened: OpenedJob | null;
  readonly checked: ReadonlyMap<string, CheckedBase>;
}

function computeLive(inputs: Inputs, date: string, turn: number): Computed {
  const file = inputs.files.get(inputs.job);
  const parsed =
    typeof file === "object" && "kind" in file && file.kind === "parsed" && file.root.ok ? file.root.value : null;
  const opened = openJob(inputs, { date });
  const written = basesOf(parsed);
  const unit = findNode(parsed ?? undefined, "units");
  const shared = {
    turn,
    findings: opened.findings,
    basesIn: written === null ? ("sheet" as const) : ("job" as const),
    unit: unit?.kind === "scalar" && unit.text === "mm" ? ("mm" as const) : ("in" as const),
  };
  if (!opened.ok) {
    const bases = (written ?? []).map((node, index) => faultyBase(node, index, parsed, shared.findings));
    const job: LiveJob = { ...shared, head: null, bases, checks: [], layoutHeld: [], questions: [], hasPlan: false };
    return { job, opened: null, checked: new Map() };
  }
  return computeOpened(opened.value, written, parsed, shared);
}

type Shared = Pick<LiveJob, "turn" | "findings" | "basesIn" | "unit">;

function computeOpened(
  opened: OpenedJob,
  written: readonly SourceNode[] | null,
  parsed: SourceNode | null,
  shared: Shared,
): Computed {
  const { job, bases, plan } = opened;
  const questions = startQuestions(job);
  const checked = new Map<string, CheckedBase>();
  const lines = bases.map((shaped, index): LiveBase => {
    const one = checkBase(job, shaped);
    const path = `bases[${index}]`;
    checked.set(path, one);
    questions.addBase(one);
    return { ...writtenOf(written?.[index], parsed), ...stateOf(one), path, mark: one.base.mark };
  });
  const rows = checkWholeJob(job, plan, bases);
  questions.addLayout(rows);
  const live: LiveJob = {
    ...shared,
    unit: job.unit,
    head: headOf(opened),
    bases: lines,
    checks: rows.map((row) => summarizeCheck(row, job.unit)),
    layoutHeld: heldLayout(rows, job.unit).reasons,
    questions: questions.list().map(
      ({ number, places, text, status, check }): LiveQuestion => ({
        ...{ number, text, status, check, rule: check.rule },
        marks: places.map(({ mark }) => mark),
      }),
    ),
    hasPlan: plan !== null,
  };
  return { job: live, opened, checked };
}

function headOf({ job }: OpenedJob): LiveHead {
  const { number, title, revision, status, date, owner, drawnBy, unit } = job;
  const { editions } = summarizeJob(job);
  return { number, title, revision, status, date, owner, drawnBy, unit, editions, shop: job.shop.name };
}

function basesOf(root: SourceNode | null): readonly SourceNode[] | null {
  const bases = findNode(root ?? undefined, "bases");
  return bases?.kind === "list" ? bases.items : null;
}

function faultyBase(node: SourceNode, index: number, job: SourceNode | null, findings: LiveJob["findings"]): LiveBase {
  const path = `bases[${index}]`;
  const mark = findNode(node, "mark");
  const isFaulty = hasErrors(findings.filter(({ at }) => at.path === path || at.path?.startsWith(`${path}.`)));
  return {
    ...writtenOf(node, job),
    ...{ path, held: [], open: 0, worst: null },
    mark: mark?.kind === "scalar" ? mark.text : "",
    state: isFaulty ? "faulty" : "clear",
  };
}

function stateOf({ rows, held, open, job }: CheckedBase): Pick<LiveBase, "state" | "held" | "open" | "worst"> {
  const close = rows.filter((row) => row.status === "pass" && row.margin !== null && !isWithoutMargin(row));
  const [first] = close.toSorted((a, b) => tightness(a) - tightness(b));
  const state = held.length > 0 ? "held" : open.length > 0 ? "asked" : "clear";
  return { state, held, open: open.length, worst: first === undefined ? null : summarizeCheck(first, job.unit) };
}

function writtenOf(node: SourceNode | undefined, job: SourceNode | null): Pick<LiveBase, "written" | "given"> {
  if (node === undefined) return { written: {}, given: {} };
  const written = textsOf(node, "", new Map());
  const [laid = node] = laidAsWritten([node], job);
  const all = textsOf(laid, "", new Map());
  const given = [...all].filter(([path]) => !written.has(path));
  return {
    written: Object.fromEntries([...written].map(([path, { text }]) => [path, text])),
    given: Object.fromEntries(given),
  };
}

type Texts = Map<string, { readonly text: string; readonly by: string }>;

/** Every scalar by its key path. */
function textsOf(node: SourceNode, path: string, into: Texts, by = ""): Texts {
  switch (node.kind) {
    case "scalar":
      return into.set(path, { text: node.text, by });
    case "list":
      for (const [index, item] of node.items.entries()) textsOf(item, `${path}[${index}]`, into, by);
      return into;
    case "map":
      for (const { key, value, givenBy } of node.entries)
        textsOf(value, path === "" ? key : `${path}.${key}`, into, givenBy ?? by);
      return into;
  }
}

function viewOf({ checked, opened }: Computed, { base: path, room }: Watch): LiveBaseView | null {
  const one = path === null ? undefined : checked.get(path);
  if (one === undefined || path === null || opened === null) return null;
  const { pieces: _pieces, ...request } = one;
  const plan = drawOnScreen(
    {
      ...request,
      ...{ cutFiles: [], drillListName: null, sheetNumber: 1, sheetCount: 1, programVersion: "", piece: null },
      sheetBases: [one.base.mark],
    },
    room,
  );
  const { template } = summarizeBase(one);
  return {
    ...{ path, plan, mark: one.base.mark, template: one.plate.mark, held: one.held },
    title: `Template ${one.plate.mark}, view from top`,
    description: `${template.holes.length} holes in a plate ${template.outline.kind === "circle" ? "with a round outline" : "with straight sides"}.`,
    checks: one.rows.map((row) => summarizeCheck(row, one.job.unit)),
    holes: template.holes,
  };
}
