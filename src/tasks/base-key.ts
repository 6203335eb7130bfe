/** What the shape of a base and its ledger hang on, as a key: its own values, and those of its job that they look at. */
import type { Base, Job, Memory } from "../job/index.js";

/** Where a base stands in its file says nothing of it. */
export function baseKey(job: Job, base: Base, memory: Memory): string {
  return `${memory.nameOf(job, () => saidOfJob(job, memory))} ${memory.nameOf(base, saidOf)}`;
}

function saidOf({ place: _place, ...own }: Base): string {
  return JSON.stringify(own);
}

/** Title, dates and texts of the head are printed, and nothing is reckoned by them; the revision tells which questions go on. */
function saidOfJob(job: Job, memory: Memory): string {
  const { bases: _bases, readAs: _readAs, plan: _plan, numbers: _numbers, templates: _templates, ...values } = job;
  const { number: _number, title: _title, date: _date, drawing: _drawing, revisions: _revisions, ...rest } = values;
  const { drawnBy: _drawnBy, owner: _owner, tolerances: _tolerances, sheet: _sheet, revision, shop, ...whole } = rest;
  return JSON.stringify([whole, memory.nameOf(shop, JSON.stringify), job.register === null ? "" : revision]);
}
