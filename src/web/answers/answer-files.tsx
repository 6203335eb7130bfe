/** The files that an answer leaves: each looked at or saved by itself. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { canBeShown, LookAt } from "./look-at.js";
import { save, sizeWords } from "./save.js";

/** A file of a list; its bytes are had when they are wanted. */
export interface ListedAnswer {
  readonly path: string;
  readonly title: string;
  readonly bytes: number;
  blob(): Promise<Blob>;
}

/** What is looked at, and the button that it was opened by. */
interface Opened {
  readonly path: string;
  readonly blob: Blob;
  readonly from: HTMLElement;
}

/** A list under its heading; what is looked at stands below it. */
export function AnswerFiles({
  files,
  name,
}: {
  readonly files: readonly ListedAnswer[];
  readonly name: string;
}): JSX.Element | null {
  const [open, setOpen] = useState<Opened | null>(null);
  if (files.length === 0) return null;
  const close = (): void => {
    open?.from.focus();
    setOpen(null);
  };
  return (
    <>
      <ul class="answer-files" aria-label={name}>
        {files.map(({ path, title, bytes, blob }) => (
          <li key={path}>
            <span class="path">{path}</span>
            <span class="soft title">{title}</span>
            <span class="soft figure">{sizeWords(bytes)}</span>
            <span class="row">
              {canBeShown(path) && (
                <button
                  type="button"
                  class="quiet"
                  aria-label={`Look at ${path}`}
                  aria-expanded={open?.path === path}
                  onClick={({ currentTarget }) =>
                    void blob().then((found) => setOpen({ path, blob: found, from: currentTarget }))
                  }
                >
                  Look
                </button>
              )}
              <button
                type="button"
                class="quiet"
                aria-label={`Save ${path}`}
                onClick={() => void blob().then((found) => save(path, found))}
              >
                Save
              </button>
            </span>
          </li>
        ))}
      </ul>
      {open !== null && <LookAt path={open.path} blob={open.blob} onClose={close} />}
    </>
  );
}

/** Files that are at hand whole. */
export function listedOf(
  files: readonly { readonly path: string; readonly title: string; readonly blob: Blob }[],
): readonly ListedAnswer[] {
  return files.map(({ path, title, blob }) => ({ path, title, bytes: blob.size, blob: () => Promise.resolve(blob) }));
}
