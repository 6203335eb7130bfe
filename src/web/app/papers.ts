/** Single papers of the package: made in a thread of their own, and handed out as files. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { OutputKind } from "../../outputs/index.js";
import { messageOf } from "../engine/refused.js";
import type { TaskKinds } from "../engine/task-model.js";
import type { Running } from "../engine/tasks.js";
import { startTask } from "../engine/tasks.js";
import { download } from "../state/browser-files.js";
import { filesNow } from "../state/model.js";
import { useActions, useLook } from "./page.js";

/** One that is made. */
export type Paper = TaskKinds["papers"]["answer"][number];

/** What goes on, in words; null: nothing. */
export interface Papers {
  readonly running: string | null;
  /** Makes papers by the kinds of their outputs; each is saved where nobody takes them. */
  make(kinds: readonly OutputKind[], take?: (papers: readonly Paper[]) => void): void;
  cancel(): void;
}

/** Of the job that is open. */
export function usePapers(): Papers {
  const [running, tell] = useState<string | null>(null);
  const work = useRef<Running<"papers"> | null>(null);
  const look = useLook();
  const { say, today } = useActions();
  const end = (): void => {
    work.current?.cancel();
    work.current = null;
    tell(null);
  };
  useEffect(() => () => work.current?.cancel(), []);
  const make: Papers["make"] = (kinds, take = saveAll) => {
    const { job } = look();
    if (job === null) return;
    const files = filesNow(job);
    tell("");
    const started = startTask("papers", { files, date: today(), kinds }, ({ done, of }) =>
      tell(`${done} of ${of} bases`),
    );
    work.current = started;
    started.answer
      .then(
        (made) => {
          if (made.length === 0) say("There is no such paper: nothing is asked.");
          else take(made);
        },
        (error: unknown) => say(messageOf(error), "fault"),
      )
      .finally(end);
  };
  return { running, make, cancel: end };
}

function saveAll(papers: readonly Paper[]): void {
  for (const { name, bytes } of papers) download(name, new Blob([bytes]));
}
