/** What keys may say, found once in a thread of its own and then known. */
import { useEffect, useState } from "preact/hooks";
import type { KeyHint, KeyHints } from "../../tasks/live/key-hints.js";
import { isNotLoaded } from "../engine/not-loaded.js";
import { startTask } from "../engine/tasks.js";

let known: KeyHints | null = null;
let asked: Promise<KeyHints> | null = null;

/** Hint of a key path, as `rods.finish` or `groups[1].rods.finish`; null until it is known, and of a key without one. */
export function useHints(): (key: string) => KeyHint | null {
  const hints = useAllHints();
  return (key) => hints?.[key.replace(/\[\d+\]/g, "[]")] ?? null;
}

/** All of them; null until they are known. */
export function useAllHints(): KeyHints | null {
  const [hints, setHints] = useState(known);
  useEffect(() => {
    if (hints !== null) return;
    asked ??= startTask("hints", null, () => {}).answer;
    asked.then(
      (found) => {
        known = found;
        setHints(found);
      },
      (error: unknown) => {
        // fields do without them; whoever comes next asks again
        asked = null;
        if (!isNotLoaded(error)) throw error;
      },
    );
  }, [hints]);
  return hints;
}
