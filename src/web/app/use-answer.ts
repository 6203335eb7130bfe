/** What the engine is asked for by one view while it is open. */
import { useEffect, useRef, useState } from "preact/hooks";

/**
 * The latest answer: asked again whenever `key` is another one, the answer of before standing meanwhile. One ask at a time; of
 * those that came up meanwhile the last is asked. An answer that is not whole yet does not take the place of one before.
 */
export function useAnswer<T>(
  ask: () => Promise<T | null>,
  key: string,
  isWhole: (answer: T) => boolean = () => true,
): T | null {
  const [answer, take] = useState<T | null>(null);
  const state = useRef({ isAsking: false, isGone: false, wanted: "", ask });
  state.current.ask = ask;
  useEffect(() => {
    const now = state.current;
    now.wanted = key;
    const next = async (): Promise<void> => {
      const asked = now.wanted;
      const made = await now.ask();
      if (now.isGone) return;
      take((before) => (made !== null && before !== null && !isWhole(made) ? before : made));
      if (now.wanted !== asked) await next();
    };
    if (now.isAsking) return;
    now.isAsking = true;
    void next().finally(() => {
      now.isAsking = false;
    });
  }, [key]);
  useEffect(
    () => () => {
      state.current.isGone = true;
    },
    [],
  );
  return answer;
}
