/** What the page says of itself, at the foot, until it is put away. */
import type { JSX } from "preact";
import { useActions, usePart } from "./page.js";

/** All that are not put away yet, the newest last. */
export function Notices(): JSX.Element {
  const notices = usePart((state) => state.notices);
  const { hush } = useActions();
  return (
    <div class="notices" role="log" aria-label="Messages">
      {notices.map(({ id, tone, text }) => (
        <p key={id} class={tone}>
          {text}{" "}
          <button type="button" onClick={() => hush(id)}>
            Put away
          </button>
        </p>
      ))}
    </div>
  );
}
