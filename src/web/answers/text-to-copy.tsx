/** A text as a terminal shows it, to be read and copied. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { save } from "./save.js";
import { Scrolled } from "./scrolled.js";

/** With a button that copies all of it, and one that saves it as a file of this name. */
export function TextToCopy({
  text,
  name,
  file,
}: {
  readonly text: string;
  readonly name: string;
  readonly file: string;
}): JSX.Element {
  const [told, setTold] = useState("");
  const copy = (): void => {
    navigator.clipboard.writeText(text).then(
      () => setTold("Copied."),
      () => setTold("The browser does not let it be copied: mark the text and copy it by hand."),
    );
  };
  return (
    <div class="text-to-copy">
      <div class="row">
        <button type="button" onClick={copy}>
          Copy the text
        </button>
        <button type="button" onClick={() => save(file, new Blob([text], { type: "text/plain" }))}>
          Save {file}
        </button>
        <span role="status">{told}</span>
      </div>
      <Scrolled look="text-room" name={name}>
        <pre>{text}</pre>
      </Scrolled>
    </div>
  );
}
