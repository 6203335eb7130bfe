/** What the shape of a base and its ledger hang on, as a key: its own values, and those of its job that they look at. */
import type { Base, Job, Memory } from "../job/index.js";

/** Where a base stands in its file says nothing of it. */
export function baseKey(job: Job, base: Base, memory: Memory): string {
  return `${aroundKey(job, memory)} ${saidOf(base)}`;
}

const said = new WeakMap<Base, string>();

function saidOf(base: Base): string {
  const before = said.get(base);
  if (before !== undefined) return before;
  const { place: _place, ...own } = base;
  const made = JSON.stringify(own);
  said.set(base, made);
  return made;
}

const around = new WeakMap<Job, string>();

/** Title, dates and texts of the head are printed, and nothing is reckoned by them; the revision tells which questions go on. */
function aroundKey(job: Job, memory: Memory): string {
  const before = around.get(job);
  if (before !== undefined) return before;
  const { bases: _bases, readAs: _readAs, plan: _plan, numbers: _numbers, templates: _templates, ...values } = job;
  const { number: _number, title: _title, date: _date, drawing: _drawing, revisions: _revisions, ...rest } = values;
  const { drawnBy: _drawnBy, owner: _owner, tolerances: _tolerances, sheet: _sheet, revision, ...whole } = rest;
  const key = JSON.stringify([whole, job.register === null ? "" : revision]);
  const made = memory.short(key);
  around.set(job, made);
  return made;
}
