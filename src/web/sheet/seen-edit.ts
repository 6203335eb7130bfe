/** An edit that is waited for until its drawing is there, and not until it is kept, which may take longer. */
import { useActions, useLook } from "../app/page.js";
import type { Actions } from "../state/actions.js";

/** The action `edit`, done as soon as the state has what came of it. */
export function useSeenEdit(): Actions["edit"] {
  const { edit } = useActions();
  const look = useLook();
  return (name, edits) => {
    const before = look().live?.turn;
    const whole = edit(name, edits);
    const seen = new Promise<void>((resolve) => {
      const ask = (): void => {
        if (look().live?.turn === before) requestAnimationFrame(ask);
        else resolve();
      };
      ask();
      whole.then(resolve, resolve);
    });
    return Promise.race([whole, seen]);
  };
}
