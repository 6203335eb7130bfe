import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openLive } from "../../../../src/tasks/live/open-live.js";
import { startReceivingView, startSendingView, type ViewChange } from "../../../../src/web/engine/view-change.js";

const SHOP = "templates/shops/plasma.yaml";
const JOB = `job: { number: "24-118", title: Store, revision: A, status: released, date: 2026-11-24 }
units: in
bases:
  - mark: B1
    rods: { diameter: 1, grade: 55 }
    pattern: { kind: rectangle, x: 12, y: 12 }
    template: { thickness: 1/4 }
  - mark: B2
    rods: { diameter: 1, grade: 36 }
    pattern: { kind: rectangle, x: 14, y: 12 }
    template: { thickness: 1/4 }
`;
const WATCH = { base: "bases[0]", room: { width: 180, height: 150 } };

function openJob() {
  const shop = readFileSync(new URL(`../../../../${SHOP}`, import.meta.url), "utf8");
  return openLive(
    {
      job: "job.yaml",
      files: new Map([
        ["job.yaml", JOB],
        [SHOP, shop],
      ]),
    },
    { date: "2026-11-24" },
  );
}

/** As between two threads: nothing but what was copied is there. */
const crossed = (change: ViewChange | "same") => structuredClone(change);

describe("a view that goes from the engine to the page", () => {
  it("arrives as it is, edit by edit, base by base", () => {
    const live = openJob();
    const [send, receive] = [startSendingView(), startReceivingView()];
    const texts = ["13", "13", "14", "none", "12"];
    for (const [turn, text] of texts.entries()) {
      live.edit([{ kind: "set", path: ["bases", 0, "pattern", "y"], text }], WATCH);
      if (turn % 2 === 0) while (live.work());
      for (const base of ["bases[0]", "bases[1]", "bases[0]"]) {
        const view = live.look({ ...WATCH, base });
        if (view !== null) expect(receive(crossed(send(view)))).toEqual(view);
      }
    }
  });

  it("brings again only what is other: the drawing stays the same object where a grade changes", () => {
    const live = openJob();
    const [send, receive] = [startSendingView(), startReceivingView()];
    const view = live.look(WATCH);
    if (view === null) throw new Error("no view");
    const before = receive(crossed(send(view)));
    const edited = live.edit([{ kind: "set", path: ["bases", 0, "rods", "grade"], text: "36" }], WATCH).view;
    if (edited === null) throw new Error("no view");
    const change = send(edited);
    const after = receive(crossed(change));
    expect(after).toEqual(edited);
    expect(after.plan).toBe(before.plan);
    expect(after.lines.filter((line) => before.lines.includes(line)).length).toBeGreaterThan(20);
    expect(JSON.stringify(change).length).toBeLessThan(JSON.stringify(edited).length / 2);
  });

  it("is the one of before where nothing is other", () => {
    const live = openJob();
    const [send, receive] = [startSendingView(), startReceivingView()];
    const views = [live.look(WATCH), live.look(WATCH)].flatMap((view) => view ?? []);
    const [first, second] = views.map((view) => receive(crossed(send(view))));
    expect(views).toHaveLength(2);
    expect(second).toBe(first);
  });
});
