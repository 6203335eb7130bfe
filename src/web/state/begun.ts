/** Keeps how far the beginning of a job has come, under an id of this tab's, so that neither a reload nor another beginning loses it. */
import { messageOf } from "../engine/refused.js";
import type { Beginning, BegunWork } from "./beginning.js";
import type { Keeper } from "./keeper.js";
import { newId } from "./new-id.js";
import { readBegunId, writeBegunId } from "./session.js";
import type { Store } from "./store.js";

/** What beginnings are kept by. */
export interface BegunKeeping {
  /** Puts down the beginning as it stands. */
  keep(): void;
  /** It stays kept where a person gave anything, and what comes next is another one. */
  leave(): Promise<void>;
  /** It became a job. */
  finish(): Promise<void>;
  /** What the tab had begun when it was loaded, or what is kept under this id; null: nothing. */
  find(id?: string): Promise<BegunWork | null>;
  remove(id: string): Promise<void>;
  /** Brings the list of them up to date. */
  list(): Promise<void>;
}

/** Keeping of the beginning that the store has. */
export function startBegunKeeping(
  store: Store,
  keeper: Keeper,
  say: (text: string, tone: "fault") => void,
): BegunKeeping {
  let own: string | null = null;
  let isRefused = false;
  const setOwn = (id: string | null): void => {
    own = id;
    writeBegunId(id);
  };
  const refused = (error: unknown): void => {
    if (!isRefused) say(`What is begun here is not kept: ${messageOf(error)}.`, "fault");
    isRefused = true;
  };
  const list = async (): Promise<void> => {
    const begun = await keeper.begun().catch(() => null);
    if (begun !== null) store.set({ begun: begun.filter(({ id }) => id !== own) });
  };
  const remove = async (id: string): Promise<void> => {
    await keeper.removeBegun(id).catch(refused);
    await list();
  };
  return {
    keep: () => {
      const work = workOf(store.get().beginning);
      if (work === null) return;
      if (own === null) setOwn(newId());
      if (own !== null) void keeper.keepBegun(own, work).catch(refused);
    },
    leave: async () => {
      const before = own;
      setOwn(null);
      if (before !== null && !isGiven(store.get().beginning)) await remove(before);
      else await list();
    },
    finish: async () => {
      const before = own;
      setOwn(null);
      if (before !== null) await remove(before);
    },
    find: async (id = readBegunId() ?? "") => {
      const found = (await keeper.begun().catch(() => [])).find((each) => each.id === id);
      setOwn(found?.id ?? null);
      await list();
      return found?.work ?? null;
    },
    remove,
    list,
  };
}

function workOf(beginning: Beginning): BegunWork | null {
  switch (beginning.kind) {
    case "choice":
      return null;
    case "first":
    case "paste":
      return beginning;
    case "read": {
      const { kind, sheet, given, into } = beginning;
      return { kind, sheet, given, into };
    }
  }
}

/** True where leaving it would lose what a person typed, pasted or answered. */
function isGiven(beginning: Beginning): boolean {
  switch (beginning.kind) {
    case "choice":
      return false;
    case "first": {
      const { diameter, thickness, pattern } = beginning.figures;
      const { kind: _kind, ...figures } = pattern;
      return [diameter, thickness, ...Object.values(figures)].some((text) => text.trim() !== "");
    }
    case "paste":
      return beginning.text.trim() !== "";
    case "read":
      return beginning.given.length > 0;
  }
}
