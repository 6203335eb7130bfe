/** What was begun before and is no job yet, to be gone on with or thrown away. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import { readable } from "../../diagnostics/printable.js";
import { useActions, usePart } from "../app/page.js";
import type { Begun, BegunWork } from "../state/beginning.js";

/** A line each, the last changed first. */
export function BegunBefore(): JSX.Element | null {
  const begun = usePart((state) => state.begun);
  const { listBegun } = useActions();
  useEffect(() => void listBegun(), [listBegun]);
  if (begun.length === 0) return null;
  return (
    <section aria-labelledby="begun">
      <h3 id="begun">Begun, and no job yet</h3>
      <ul class="kept">
        {begun.map((each) => (
          <BegunLine key={each.id} begun={each} />
        ))}
      </ul>
    </section>
  );
}

function BegunLine({ begun: { id, changed, work } }: { readonly begun: Begun }): JSX.Element {
  const { goOn, removeBegun } = useActions();
  const [isAsked, ask] = useState(false);
  const { name, what } = wordsOf(work);
  const when = new Date(changed).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
  return (
    <li>
      <button type="button" onClick={() => void goOn(id)}>
        Go on with {name}
      </button>
      <span class="soft">
        {what}, {when}
      </span>
      {isAsked ? (
        <span class="row">
          <button type="button" onClick={() => void removeBegun(id)}>
            Throw it away for good
          </button>
          <button type="button" onClick={() => ask(false)}>
            Keep it
          </button>
        </span>
      ) : (
        <button type="button" class="quiet" onClick={() => ask(true)}>
          Throw away<span class="for-readers"> {name}</span>
        </button>
      )}
    </li>
  );
}

function wordsOf(work: BegunWork): { readonly name: string; readonly what: string } {
  switch (work.kind) {
    case "first":
      return {
        name: "a first template",
        what: `rod ${work.figures.diameter || "not typed"}, ${work.figures.pattern.kind}`,
      };
    case "paste":
      return { name: "pasted cells", what: counted(work.text.trim().split("\n").length, "line") };
    case "read":
      return { name: readable(work.sheet.name), what: `schedule, ${counted(work.given.length, "answer")}` };
  }
}
