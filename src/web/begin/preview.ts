/** Drawings of jobs that are not opened: an engine of its own, which ends with what looks at it. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { Room } from "../../sheets/on-screen.js";
import type { Engine } from "../engine/engine.js";
import { startEngine } from "../engine/engine.js";
import type { EngineAnswer, JobFiles } from "../engine/protocol.js";

/** What is looked at. */
export interface Looked {
  readonly files: JobFiles;
  readonly base: string;
  readonly room: Room;
}

/** An engine for drawings beside the open job. */
export function startPreview(): { look(looked: Looked): Promise<EngineAnswer>; stop(): void } {
  const engine: Engine = startEngine();
  return {
    look: ({ files, base, room }) => engine.ask({ kind: "open", files, date: "2026-01-01", watch: { base, room } }),
    stop: () => engine.stop(),
  };
}

/** What the engine says of a text. */
export interface Previewed {
  readonly text: string;
  readonly answer: EngineAnswer;
}

/** What was said of the last text, null before the first; that of the one before stays while the next is made. */
export function usePreview(text: string, room: Room | null): Previewed | null {
  const preview = useRef<ReturnType<typeof startPreview> | null>(null);
  const [previewed, setPreviewed] = useState<Previewed | null>(null);
  useEffect(() => {
    preview.current = startPreview();
    return () => preview.current?.stop();
  }, []);
  useEffect(() => {
    if (preview.current === null || room === null) return;
    let isLatest = true;
    const files: JobFiles = { job: "job.yaml", files: new Map([["job.yaml", text]]) };
    void preview.current.look({ files, base: "bases[0]", room }).then((answer) => {
      if (isLatest) setPreviewed({ text, answer });
    });
    return () => {
      isLatest = false;
    };
  }, [text, room]);
  return previewed;
}
