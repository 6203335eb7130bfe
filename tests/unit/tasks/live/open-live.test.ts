/** A job that is edited says at every step what it says when it is opened as it then stands. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { KeyEdit } from "../../../../src/readers/yaml-edit.js";
import { inverse } from "../../../../src/readers/yaml-edit.js";
import type { LiveJob } from "../../../../src/tasks/live/model.js";
import { type Live, openLive } from "../../../../src/tasks/live/open-live.js";

const ROOM = { width: 180, height: 150 };
const DATE = "2026-11-24";
const SHOP = readFileSync(new URL("../../../../templates/shops/plasma.yaml", import.meta.url), "utf8");

function jobText(count: number): string {
  const base = (n: number) => `  - mark: B${n}
    rods: { diameter: 1-1/4, grade: 55, projection: 9, embedment: 24 } # as sent
    pattern: { kind: rectangle, x: ${11 + (n % 4)}, y: 10 }
    basePlate: { x: 18, y: 16, thickness: 1-1/2, hole: 2-1/16 }
    concrete: { x: 24, y: 24 }
    template: { thickness: 1/4 }
`;
  const bases = Array.from({ length: count }, (_, i) => base(i + 1)).join("");
  return `job: { number: "24-118", title: Cold store, revision: B, status: released, date: 2026-11-24 }\nunits: in\nbases:\n${bases}`;
}

function open(text: string): Live {
  const files = new Map([
    ["job.yaml", text],
    ["templates/shops/plasma.yaml", SHOP],
  ]);
  return openLive({ job: "job.yaml", files }, { date: DATE });
}

function settled(live: Live): Omit<LiveJob, "turn"> {
  while (live.work());
  const { turn: _turn, ...said } = live.state();
  return said;
}

const set = (path: KeyEdit["path"], text: string): KeyEdit => ({ kind: "set", path, text });

const EDITS: readonly (readonly [string, KeyEdit])[] = [
  ["a value in braces", set(["bases", 2, "pattern", "x"], "13-1/2")],
  ["a key that is not there", set(["bases", 1, "template", "hole"], "1-7/16")],
  ["a group that is not there", set(["bases", 1, "grout"], "1-1/2")],
  ["a key in a new line", set(["bases", 0, "note"], "north wall: mind the drain # 4")],
  ["a mark", set(["bases", 3, "mark"], "C7")],
  ["the head", set(["job", "revision"], "C")],
  ["a key taken out", { kind: "remove", path: ["bases", 2, "concrete"] }],
  ["a base taken out", { kind: "remove", path: ["bases", 1] }],
];

describe("a job that is edited", () => {
  it.each(EDITS)("says what the whole says: %s", (_name, edit) => {
    const live = open(jobText(5));
    const watch = { base: "bases[0]", room: ROOM };
    settled(live);
    const { splices } = live.edit([edit], watch);
    expect(splices).toHaveLength(1);
    expect(settled(live)).toEqual(settled(open(live.text())));
    live.splice(splices.map(inverse), watch);
    expect(live.text()).toBe(jobText(5));
    expect(settled(live)).toEqual(settled(open(jobText(5))));
  });

  it("keeps the comment beside an edited value", () => {
    const live = open(jobText(2));
    live.edit([set(["bases", 0, "rods", "projection"], "10")], { base: null, room: ROOM });
    expect(live.text()).toContain("projection: 10, embedment: 24 } # as sent");
  });
});
