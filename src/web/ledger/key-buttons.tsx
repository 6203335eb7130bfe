/** Keys that rows lack, each a button to its field. */
import type { JSX } from "preact";
import { keyWords } from "../../checks/key-words.js";
import { useActions } from "../app/page.js";
import { capital, fieldOf } from "./row-words.js";

/** `base`: path of the base whose field it is; null: the job's own, or that of the base that is shown. */
export function KeyButtons({
  keys,
  base,
}: {
  readonly keys: readonly string[];
  readonly base: string | null;
}): JSX.Element {
  const { goTo } = useActions();
  return (
    <span class="keys">
      {keys.map((key) => (
        <button key={key} type="button" title={key} onClick={() => void goTo(base, fieldOf(key))}>
          {capital(keyWords(key))}
        </button>
      ))}
    </span>
  );
}
