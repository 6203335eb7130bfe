/** While papers are written: how far it is, with a way to stop it. Said once, not with every base. */
import type { JSX } from "preact";
import type { Papers } from "./papers.js";

/** Nothing while nothing is written. */
export function PaperRunning({ running, cancel }: Pick<Papers, "running" | "cancel">): JSX.Element | null {
  if (running === null) return null;
  return (
    <>
      {" "}
      <span role="status">Being written</span> <span aria-hidden="true">{running}</span>{" "}
      <button type="button" onClick={cancel}>
        Cancel
      </button>
    </>
  );
}
