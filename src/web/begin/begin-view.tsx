/** Where a job begins: figures that are typed, a schedule that was sent, a job file, a sample. A file may be dropped on any of it. */
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { useActions, usePart } from "../app/page.js";
import type { Beginning } from "../state/beginning.js";
import { Choice } from "./choice.js";
import { FirstForm } from "./first-form.js";
import { handOver, pastedSheet } from "./hand-over.js";
import { PasteForm } from "./paste-form.js";
import { ReadView } from "./read-view.js";

/** What the beginning has come to. */
export function BeginView(): JSX.Element {
  const beginning = usePart((state) => state.beginning);
  useHandedOver(beginning);
  switch (beginning.kind) {
    case "choice":
      return <Choice />;
    case "first":
      return <FirstForm figures={beginning.figures} />;
    case "paste":
      return <PasteForm text={beginning.text} />;
    case "read":
      return <ReadView {...beginning} />;
  }
}

/** Files that are dropped, and cells that are pasted where no field takes them. */
function useHandedOver(beginning: Beginning): void {
  const actions = useActions();
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes("Files") === true) event.preventDefault();
    };
    const drop = (event: DragEvent): void => {
      const files = [...(event.dataTransfer?.files ?? [])];
      // a job file is taken by the page, which can have it written again
      if (files.length === 0 || files.some(({ name }) => /\.(ya?ml|json)$/i.test(name))) return;
      event.preventDefault();
      void handOver(files, actions, beginning);
    };
    const paste = (event: ClipboardEvent): void => {
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return;
      const files = [...(event.clipboardData?.files ?? [])];
      const text = event.clipboardData?.getData("text/plain") ?? "";
      if (text.trim() !== "") void actions.readSheet(pastedSheet(text));
      else if (files.length > 0) void handOver(files, actions, beginning);
      else return;
      event.preventDefault();
    };
    document.addEventListener("dragover", over);
    document.addEventListener("drop", drop);
    document.addEventListener("paste", paste);
    return () => {
      document.removeEventListener("dragover", over);
      document.removeEventListener("drop", drop);
      document.removeEventListener("paste", paste);
    };
  }, [actions, beginning]);
}
