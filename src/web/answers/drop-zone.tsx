/** A place where files are dropped, which is a button too: by mouse, keyboard or voice. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import type { Dropped } from "../engine/dropped.js";

interface DropZoneProps {
  /** What is asked for, as a button says it. */
  readonly ask: string;
  /** What may be dropped, and what is made of it. */
  readonly hint: string;
  readonly isMany?: boolean;
  readonly onFiles: (files: readonly Dropped[]) => void;
  /** Names of what was dropped. */
  readonly taken?: readonly string[];
}

/** Takes one file, or several. Folders are left out by the browser, or refused when they are read. */
export function DropZone({ ask, hint, isMany = false, onFiles, taken = [] }: DropZoneProps): JSX.Element {
  const input = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const take = (list: FileList | null | undefined): void => {
    const files = [...(list ?? [])].map((file): Dropped => ({ name: file.name, blob: file }));
    if (files.length > 0) onFiles(isMany ? files : files.slice(0, 1));
  };
  return (
    <fieldset
      aria-label={ask.replace(/\.+$/, "")}
      class={`drop-zone${isOver ? " over" : ""}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        event.stopPropagation();
        setOver(false);
        take(event.dataTransfer?.files);
      }}
    >
      <button type="button" onClick={() => input.current?.click()}>
        {ask}
      </button>
      <input
        ref={input}
        type="file"
        multiple={isMany}
        hidden
        aria-hidden="true"
        tabIndex={-1}
        onChange={({ currentTarget }) => {
          take(currentTarget.files);
          currentTarget.value = "";
        }}
      />
      <span class="hint">{hint}</span>
      {taken.length > 0 && <p class="taken">{taken.join(", ")}</p>}
    </fieldset>
  );
}
