/** Saves the job to its file, to another, or into a link. */
import { type Saved, saveDownload, saveElsewhere, saveHome } from "./job-home.js";
import type { OpenJob } from "./model.js";
import { settleHome } from "./on-disk.js";
import type { JobWork } from "./opening.js";
import { LONGEST_LINK, linkOf } from "./share-link.js";

/** The ways to save one. */
export interface SavingActions {
  save(): Promise<void>;
  saveAs(): Promise<void>;
  download(): Promise<void>;
  share(): void;
  /** Tries again to keep the job in this browser. */
  keepAgain(): Promise<void>;
}

/** Each waits for the change that is under way; what cannot be saved is told, and asked where the file is another than it was. */
export function startSaving(work: JobWork): SavingActions {
  const { store, say, inTurn, keep, adopt } = work;
  const saveBy = (how: (job: OpenJob) => Saved | Promise<Saved>): Promise<void> =>
    inTurn(async () => {
      const { job } = store.get();
      const saved = job === null ? null : await how(job);
      if (job === null || saved === null) return;
      switch (saved.kind) {
        case "saved":
          return settleHome(work, saved.home, job.text);
        case "changed":
          return store.set({ asking: saved });
        case "refused":
          return say(`Not saved: ${saved.why}.`, "fault");
        case "given up":
      }
    });
  return {
    save: () => saveBy(saveHome),
    saveAs: () => saveBy(saveElsewhere),
    download: () => saveBy(saveDownload),
    share: () => {
      const { job, live } = store.get();
      if (job === null) return;
      const lacks = (live?.files ?? []).map(({ name }) => name);
      const fragment = linkOf({ name: job.files.job, text: job.text, lacks });
      // not by its origin, which from the disk is none
      const [address = ""] = window.location.href.split(/[?#]/);
      const link = fragment.length > LONGEST_LINK ? null : `${address}${fragment}`;
      store.set({ asking: { kind: "shared", link, signs: fragment.length, lacks } });
    },
    keepAgain: () =>
      inTurn(async () => {
        const newer = await keep();
        if (newer !== null) await adopt(newer);
      }),
  };
}
