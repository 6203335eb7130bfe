/** What can be done by keys, and what the words of the page mean; opened when it is asked for. */
import type { JSX } from "preact";
import { useRef } from "preact/hooks";

interface Keys {
  readonly where: string;
  readonly keys: readonly (readonly [keys: string, does: string])[];
}

const KEYS: readonly Keys[] = [
  {
    where: "Everywhere",
    keys: [
      ["Tab, Shift Tab", "to the next thing that can be used, and back"],
      ["Enter or Space", "does what a button says"],
      ["Ctrl Z", "takes the last step back, in a field the last letters"],
      ["Ctrl Shift Z, Ctrl Y", "makes it again"],
      ["Ctrl S", "saves the job file"],
      ["Ctrl O", "opens one"],
    ],
  },
  {
    where: "On the drawing",
    keys: [
      ["Enter or F2", "changes the figure or the hole that has the focus"],
      ["Enter", "takes what is typed; the drawing follows"],
      ["Escape", "leaves it as it was"],
      ["Arrow keys", "from hole to hole; on the drawing itself they move it when it is zoomed"],
      ["Home, End", "first and last hole"],
      ["+ - 0", "nearer, farther, the whole sheet"],
    ],
  },
  {
    where: "In the schedule",
    keys: [
      ["Arrow keys, Home, End", "from cell to cell; with Ctrl to the ends of the table"],
      ["Shift with arrow keys", "takes several cells; Shift Space the whole line"],
      ["Enter or F2, or a letter", "types into a cell; Tab and Enter take it and go on"],
      ["Delete", "empties cells"],
      ["Ctrl C, Ctrl V", "copies cells, pastes them from a spreadsheet"],
      ["Ctrl Enter", "shows the template of the line"],
      ["Shift Tab, Enter", "to the heading of the column; sorts by it"],
    ],
  },
  {
    where: "On the solid",
    keys: [
      ["Arrow keys", "turn it; with Shift they move it"],
      ["+ -", "nearer, farther"],
      ["Home", "shows the whole again"],
    ],
  },
];

const WORDS: readonly (readonly [word: string, means: string])[] = [
  ["held", "a rule is broken; nothing is cut from this template until it is mended"],
  ["asked", "something is for the engineer of record to say"],
  ["at fault", "something typed cannot be read; the field says why, and the drawing stays as it was last right"],
  ["waiting", "not checked yet; that takes a moment in a large job"],
  ["margin", "how much of a limit is left; a limit that is met exactly passes"],
];

/** A button, and the panel that it opens. */
export function Help(): JSX.Element {
  const panel = useRef<HTMLDialogElement>(null);
  return (
    <div class="help">
      <button type="button" class="quiet" onClick={() => panel.current?.showModal()}>
        Keys and words
      </button>
      <dialog ref={panel} aria-labelledby="help-heading" class="help-panel">
        <div class="help-head">
          <h2 id="help-heading">Keys and words</h2>
          <form method="dialog">
            <button type="submit">Close</button>
          </form>
        </div>
        <div class="help-columns">
          {KEYS.map(({ where, keys }) => (
            <section key={where}>
              <h3>{where}</h3>
              <Terms terms={keys} />
            </section>
          ))}
          <section>
            <h3>Words</h3>
            <Terms terms={WORDS} />
          </section>
        </div>
        <p class="soft">
          On a Mac the key is Command where Ctrl is said. Everything runs in this browser; nothing is sent anywhere.
          What is reported here is for a person to judge: the engineer of record decides, and local codes go before.
        </p>
      </dialog>
    </div>
  );
}

function Terms({ terms }: { readonly terms: readonly (readonly [string, string])[] }): JSX.Element {
  return (
    <dl>
      {terms.map(([term, means]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{means}</dd>
        </div>
      ))}
    </dl>
  );
}
