/** A place where files are dropped, which is a button too: by mouse, keyboard or voice. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import type { Dropped } from "../engine/dropped.js";
import { chosenFolder, droppedFiles } from "./dropped-files.js";

interface DropZoneProps {
  /** What is asked for, as a button says it. */
  readonly ask: string;
  /** What may be dropped, and what is made of it. */
  readonly hint: string;
  readonly isMany?: boolean;
  /** A folder may be dropped too, or chosen by a button of its own. */
  readonly takesFolders?: boolean;
  readonly onFiles: (files: readonly Dropped[]) => void;
  /** Names of what was dropped. */
  readonly taken?: readonly string[];
}

/** Takes one file, or several. */
export function DropZone({
  ask,
  hint,
  isMany = false,
  takesFolders = false,
  onFiles,
  taken = [],
}: DropZoneProps): JSX.Element {
  const [isOver, setOver] = useState(false);
  const take = (files: readonly Dropped[]): void => {
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
        void droppedFiles(event.dataTransfer, takesFolders).then(take);
      }}
    >
      <FileButton
        words={ask}
        isMany={isMany}
        onChosen={(files) => take(files.map((file) => ({ name: file.name, blob: file })))}
      />
      {takesFolders && <FileButton words="Its folder..." isFolder onChosen={(files) => take(chosenFolder(files))} />}
      <span class="hint">{hint}</span>
      {taken.length > 0 && <p class="taken">{taken.join(", ")}</p>}
    </fieldset>
  );
}

/** A button that asks for files, or for a folder with all that lies in it. */
function FileButton({
  words,
  isMany = false,
  isFolder = false,
  onChosen,
}: {
  readonly words: string;
  readonly isMany?: boolean;
  readonly isFolder?: boolean;
  readonly onChosen: (files: readonly File[]) => void;
}): JSX.Element {
  const input = useRef<HTMLInputElement>(null);
  const ask = (): void => {
    if (input.current === null) return;
    input.current.webkitdirectory = isFolder;
    input.current.click();
  };
  return (
    <>
      <button type="button" onClick={ask}>
        {words}
      </button>
      <input
        ref={input}
        type="file"
        multiple={isMany}
        hidden
        aria-hidden="true"
        tabIndex={-1}
        onChange={({ currentTarget }) => {
          onChosen([...(currentTarget.files ?? [])]);
          currentTarget.value = "";
        }}
      />
    </>
  );
}
