/** The engine's thread: a live job, and answers to what the page asks of it. */
import { config } from "zod";
import type { LiveBaseView, Watch } from "../../tasks/live/model.js";
import type { Live } from "../../tasks/live/open-live.js";
import { openLive } from "../../tasks/live/open-live.js";
import type { LiveSolid } from "../../tasks/live/solid.js";
import { inputsOf } from "./inputs.js";
import { startSending } from "./job-change.js";
import { isNotLoaded } from "./not-loaded.js";
import type { EngineAnswer, EngineAsk, EngineFault, Numbered, SentAnswer } from "./protocol.js";

// the page's policy lets nothing be compiled from a text
config({ jitless: true });

let live: Live | null = null;

async function answer(ask: EngineAsk): Promise<Omit<EngineAnswer, "took">> {
  if (ask.kind === "open") {
    live = openLive(await inputsOf(ask.files), { date: ask.date });
    return { splices: [], job: live.state(), view: live.look(ask.watch) };
  }
  if (live === null) throw new Error("the engine was asked before a job was opened");
  switch (ask.kind) {
    case "edit":
      return live.edit(ask.edits, ask.watch);
    case "splice":
      return live.splice(ask.splices, ask.watch);
    case "written":
      return { splices: [], job: null, view: null, written: live.written(ask.keys) };
    case "plan":
      return { splices: [], job: null, view: null, plan: live.plan(ask.room, ask.zoom) };
    case "points":
      return { splices: [], job: null, view: null, points: live.points() };
    case "look":
      return { splices: [], job: null, view: live.look(ask.watch) };
    case "solid":
      return { splices: [], job: null, view: null, solid: await solidAt(live, ask.base) };
    case "take-bases":
      return live.takeBases(ask.watch);
    case "ledger":
      return { splices: [], job: null, view: null, ledger: live.ledger(ask.ledger) };
    case "digest":
      return { splices: [], job: null, view: null, digest: live.digest() };
    case "questions":
      return { splices: [], job: null, view: null, questions: live.questions() };
    case "answer":
      return live.answer(ask.drafts, ask.watch);
  }
}

async function solidAt(from: Live, base: string): Promise<LiveSolid | null> {
  const { solidOf } = await import("../../tasks/live/solid.js");
  const checked = from.checked(base);
  return checked && solidOf(checked);
}

/** One after the other, in the order in which they were asked. */
let queue: Promise<void> = Promise.resolve();
let waiting = 0;
/** What the page looks at, and what it last was shown of it. */
let watch: Watch | null = null;
let shown = "";
let send = startSending();

function post(id: number, { job, ...answered }: EngineAnswer): void {
  if (answered.view !== null) shown = JSON.stringify(answered.view);
  const body: SentAnswer = { ...answered, job: job && send(job) };
  self.postMessage({ id, body } satisfies Numbered<SentAnswer>);
}

function postFault(id: number, error: unknown): void {
  const fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
  self.postMessage({ id, body: { fault, isNotLoaded: isNotLoaded(error) } } satisfies Numbered<EngineFault>);
}

self.addEventListener("message", ({ data: { id, body } }: MessageEvent<Numbered<EngineAsk>>) => {
  waiting += 1;
  queue = queue.then(async () => {
    const from = performance.now();
    if ("watch" in body) watch = body.watch;
    if (body.kind === "open") send = startSending();
    try {
      post(id, { ...(await answer(body)), took: performance.now() - from });
    } catch (error) {
      postFault(id, error);
    }
    waiting -= 1;
    if (waiting === 0) setTimeout(workOn, 0);
  });
});

/** Slices of what is left to do, in milliseconds; between two of them the page is heard. */
const SLICE = 12;
/** So often the page is told of what was done meanwhile. */
const TELLING = 150;
let told = 0;

/** A fault of the program ends the work until more is asked; what is known stays. */
function workOn(): void {
  if (waiting > 0 || live === null) return;
  try {
    if (workSlice(live)) setTimeout(workOn, 0);
  } catch (error) {
    postFault(0, error);
  }
}

/** Work that the page has not been told of. */
let isUntold = false;

/** True where more is left to do. */
function workSlice(job: Live): boolean {
  const from = performance.now();
  let isLeft = job.work();
  isUntold ||= isLeft;
  while (isLeft && performance.now() - from < SLICE) isLeft = job.work();
  const now = performance.now();
  if (isUntold && (!isLeft || now - told > TELLING)) {
    [told, isUntold] = [now, false];
    post(0, { splices: [], job: job.state(), view: isLeft ? null : otherView(job), took: now - from });
  }
  return isLeft;
}

/** Questions have numbers once all is known: the sheet that is shown then says more than before. */
function otherView(job: Live): LiveBaseView | null {
  const view = watch === null ? null : job.look(watch);
  return view === null || JSON.stringify(view) === shown ? null : view;
}
