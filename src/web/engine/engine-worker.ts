/** The engine's thread: a live job, and answers to what the page asks of it. */
import { config } from "zod";
import type { Live } from "../../tasks/live/open-live.js";
import { openLive } from "../../tasks/live/open-live.js";
import type { LiveSolid } from "../../tasks/live/solid.js";
import { inputsOf } from "./inputs.js";
import type { EngineAnswer, EngineAsk, EngineFault, Numbered } from "./protocol.js";

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

self.addEventListener("message", ({ data }: MessageEvent<Numbered<EngineAsk>>) => {
  waiting += 1;
  queue = queue.then(async () => {
    const from = performance.now();
    const body: EngineAnswer | EngineFault = await answer(data.body).then(
      (made) => ({ ...made, took: performance.now() - from }),
      (error: unknown) => ({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
    );
    waiting -= 1;
    self.postMessage({ id: data.id, body } satisfies Numbered<EngineAnswer | EngineFault>);
    if (waiting === 0) setTimeout(workOn, 0);
  });
});

/** Slices of what is left to do, in milliseconds; between two of them the page is heard. */
const SLICE = 12;
/** So often the page is told of what was done meanwhile. */
const TELLING = 150;
let told = 0;

function workOn(): void {
  if (waiting > 0 || live === null) return;
  const from = performance.now();
  let isLeft = live.work();
  while (isLeft && performance.now() - from < SLICE) isLeft = live.work();
  const now = performance.now();
  if (!isLeft || now - told > TELLING) {
    told = now;
    const body: EngineAnswer = { splices: [], job: live.state(), view: null, took: now - from };
    self.postMessage({ id: 0, body } satisfies Numbered<EngineAnswer>);
  }
  if (isLeft) setTimeout(workOn, 0);
}
