/** The page's end of the engine: asks, and promises of answers. */
import { startReceiving } from "./job-change.js";
import { NotLoaded } from "./not-loaded.js";
import type { EngineAnswer, EngineAsk, EngineFault, Numbered, SentAnswer } from "./protocol.js";
import { startEngineThread } from "./threads.js";

/** Asks are answered in their order. A promise is rejected where the engine met a fault of the program; by `NotLoaded` where its code did not come. */
export interface Engine {
  ask(body: EngineAsk): Promise<EngineAnswer>;
  /** Called when more of the job is known, though nothing was asked; `fail`: when it met a fault of the program meanwhile. */
  onNews(hear: (answer: EngineAnswer) => void, fail?: (why: string) => void): void;
  /** Ends its thread; what was asked and not answered stays so. */
  stop(): void;
}

/** Starts the engine's thread. */
export function startEngine(): Engine {
  const worker = startEngineThread();
  const waiting = new Map<number, { resolve(answer: EngineAnswer): void; reject(fault: Error): void }>();
  let hear: (answer: EngineAnswer) => void = () => {};
  let fail: (why: string) => void = () => {};
  const receive = startReceiving();
  worker.addEventListener("message", ({ data: { id, body } }: MessageEvent<Numbered<SentAnswer | EngineFault>>) => {
    const one = waiting.get(id);
    waiting.delete(id);
    if ("fault" in body) {
      if (one === undefined) fail(body.fault);
      else one.reject(body.isNotLoaded ? new NotLoaded() : new Error(body.fault));
      return;
    }
    const answer: EngineAnswer = { ...body, job: body.job && receive(body.job) };
    if (one === undefined) hear(answer);
    else one.resolve(answer);
  });
  let dead: Error | null = null;
  worker.addEventListener("error", ({ message }) => {
    // without words: the thread's own file did not come
    const fault = message === undefined ? new NotLoaded() : new Error(message);
    if (message === undefined) dead = fault;
    for (const one of waiting.values()) one.reject(fault);
    waiting.clear();
  });
  let last = 0;
  return {
    onNews: (heard, failed = () => {}) => {
      hear = heard;
      fail = failed;
    },
    stop: () => worker.terminate(),
    ask: (body) =>
      new Promise((resolve, reject) => {
        if (dead !== null) return reject(dead);
        last += 1;
        waiting.set(last, { resolve, reject });
        worker.postMessage({ id: last, body } satisfies Numbered<EngineAsk>);
      }),
  };
}
