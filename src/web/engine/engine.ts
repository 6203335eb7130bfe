/** The page's end of the engine: asks, and promises of answers. */
import type { EngineAnswer, EngineAsk, EngineFault, Numbered } from "./protocol.js";

/** Asks are answered in their order. A promise is rejected where the engine met a fault of the program. */
export interface Engine {
  ask(body: EngineAsk): Promise<EngineAnswer>;
  /** Called when more of the job is known, though nothing was asked. */
  onNews(hear: (answer: EngineAnswer) => void): void;
  /** Ends its thread; what was asked and not answered stays so. */
  stop(): void;
}

/** Starts the engine's thread. */
export function startEngine(): Engine {
  const worker = new Worker(new URL("./engine-worker.ts", import.meta.url), { type: "module", name: "engine" });
  const waiting = new Map<number, { resolve(answer: EngineAnswer): void; reject(fault: Error): void }>();
  let hear: (answer: EngineAnswer) => void = () => {};
  worker.addEventListener("message", ({ data }: MessageEvent<Numbered<EngineAnswer | EngineFault>>) => {
    if (data.id === 0 && !("fault" in data.body)) hear(data.body);
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if ("fault" in data.body) one?.reject(new Error(data.body.fault));
    else one?.resolve(data.body);
  });
  worker.addEventListener("error", ({ message }) => {
    for (const one of waiting.values()) one.reject(new Error(message));
    waiting.clear();
  });
  let last = 0;
  return {
    onNews: (heard) => {
      hear = heard;
    },
    stop: () => worker.terminate(),
    ask: (body) =>
      new Promise((resolve, reject) => {
        last += 1;
        waiting.set(last, { resolve, reject });
        worker.postMessage({ id: last, body } satisfies Numbered<EngineAsk>);
      }),
  };
}
