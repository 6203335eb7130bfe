/** What happens to the page as a whole: keys, dropped files, another address, coming back to it, leaving it. */
import type { Actions } from "./actions.js";
import { givenByDrop } from "./browser-files.js";
import { isWorthKeeping } from "./model.js";
import type { Store } from "./store.js";

/** Listens for as long as the page is there. */
export function listenToPage(store: Store, actions: Actions): void {
  window.addEventListener("hashchange", () => void actions.readAddress());
  window.addEventListener("focus", () => void actions.lookAround());
  // before the fields, which keep their keys to themselves
  document.addEventListener("keydown", (event) => pressed(event, actions), { capture: true });
  listenToDrops(actions);
  window.addEventListener("beforeunload", (event) => {
    const { job, keeping, changing } = store.get();
    if (job !== null && (changing || (keeping.kind !== "kept" && isWorthKeeping(job)))) event.preventDefault();
  });
}

function listenToDrops(actions: Actions): void {
  const hasFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes("Files") === true;
  // after the views, which listen on the document
  window.addEventListener("dragover", (event) => {
    if (hasFiles(event)) event.preventDefault();
  });
  window.addEventListener("drop", (event) => {
    // a view that takes files of its own has taken it already
    if (event.defaultPrevented || event.dataTransfer === null || !hasFiles(event)) return;
    event.preventDefault();
    void givenByDrop(event.dataTransfer).then((given) => actions.take(given));
  });
}

/** Only outside of fields, which have steps of their own; saving is meant everywhere. */
function pressed(event: KeyboardEvent, actions: Actions): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return;
  const key = event.key.toLowerCase();
  const isInField =
    event.target instanceof Element && event.target.closest("input, textarea, select, [contenteditable]") !== null;
  if (key === "s" && !event.shiftKey) {
    event.preventDefault();
    if (isInField) takeTyped(event.target);
    void actions.save();
    return;
  }
  const act = isInField ? undefined : actionOf(key, event.shiftKey, actions);
  if (act === undefined) return;
  event.preventDefault();
  void act();
}

/** What stands in an open field is saved too: its form takes it, or the field does, which does so when it is left. */
function takeTyped(field: EventTarget | null): void {
  if (!(field instanceof HTMLElement)) return;
  const form = field.closest<HTMLFormElement>("form[data-types-on-job]");
  if (form !== null) {
    form.requestSubmit();
    return;
  }
  field.blur();
  field.focus();
}

function actionOf(
  key: string,
  shift: boolean,
  { undo, redo, openFromDisk }: Actions,
): (() => Promise<void>) | undefined {
  if (key === "z") return shift ? redo : undo;
  if (key === "y" && !shift) return redo;
  return key === "o" && !shift ? openFromDisk : undefined;
}
