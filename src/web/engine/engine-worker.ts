/** The engine's thread: a live job, and answers to what the page asks of it. */
import { config } from "zod";
import type { Live } from "../../tasks/live/open-live.js";
import { openLive } from "../../tasks/live/open-live.js";
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
    case "look":
      return { splices: [], job: null, view: live.look(ask.watch) };
  }
}

/** One after the other, in the order in which they were asked. */
let queue: Promise<void> = Promise.resolve();

self.addEventListener("message", ({ data }: MessageEvent<Numbered<EngineAsk>>) => {
  queue = queue.then(async () => {
    const from = performance.now();
    const body: EngineAnswer | EngineFault = await answer(data.body).then(
      (made) => ({ ...made, took: performance.now() - from }),
      (error: unknown) => ({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
    );
    self.postMessage({ id: data.id, body } satisfies Numbered<EngineAnswer | EngineFault>);
  });
});
