/** A job from one thread to the other is the same job, whatever of it changed. */
import { describe, expect, it } from "vitest";
import { openLive } from "../../../../src/tasks/live/open-live.js";
import { startReceiving, startSending } from "../../../../src/web/engine/job-change.js";
import { inputsWith, STEEL, usBase } from "../../../delivered.js";

describe("a job that goes over in parts", () => {
  it("is after every edit what was sent: its turn, its head, its bases", () => {
    const live = openLive(inputsWith([usBase("B1", STEEL), usBase("B2", STEEL)]), { date: "2026-11-24" });
    const [send, receive] = [startSending(), startReceiving()];
    const watch = { base: null, room: { width: 200, height: 150 } };
    const over = () => receive(structuredClone(send(live.state())));
    expect(over()).toEqual(live.state());
    for (const [path, text] of [
      [["job", "title"], "Another depot"],
      [["bases", 1, "mark"], "B3"],
      [["bases", 0, "pattern", "x"], "9"],
    ] as const) {
      live.edit([{ kind: "set", path, text }], watch);
      expect(over()).toEqual(live.state());
      while (live.work());
      expect(over()).toEqual(live.state());
    }
    expect(over().turn).toBe(3);
    expect(over().head?.title).toBe("Another depot");
  });
});
