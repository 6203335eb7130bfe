/** Which fields stand beside the drawing: every key that the job writes has one, and keys that may be groups are there in parts. */
import { describe, expect, it } from "vitest";
import { keyHints } from "../../../src/tasks/live/key-hints.js";
import type { LiveBase } from "../../../src/tasks/live/model.js";
import { jobKeys, panelKeyOf, panelParts } from "../../../src/web/sheet/panel-keys.js";

const KNOWN = Object.keys(keyHints());

function base(written: Readonly<Record<string, string>>): LiveBase {
  return { path: "bases[0]", mark: "B1", state: "clear", held: [], open: 0, worst: null, written, given: {} };
}

const keysOf = (written: Readonly<Record<string, string>>) =>
  panelParts(base(written), KNOWN).flatMap(({ keys }) => keys.map(({ key }) => key));

describe("keys that may be groups", () => {
  it.each([
    ["rods.bottom", ["rods.bottom.kind", "rods.bottom.reach", "rods.bottom.washer.size"]],
    ["basePlate.washer", ["basePlate.washer.shape", "basePlate.washer.size", "basePlate.washer.thickness"]],
    ["template.opening", ["template.opening.diameter", "template.opening.x", "template.opening.radius"]],
    ["template.outline", ["template.outline.kind", "template.outline.outer", "template.outline.corner.size"]],
  ])("%s has its parts", (key, parts) => {
    const all = panelParts(base({}), KNOWN).flatMap(({ keys }) => keys);
    const own = all.find((each) => each.key === key)?.parts?.map((each) => each.key) ?? [];
    expect(own).toEqual(expect.arrayContaining(parts));
    expect(own.filter((each) => each.includes("["))).toEqual([]);
    expect(new Set(own).size).toBe(own.length);
  });

  it("one that is written as a group shows its parts, those that are not written too, and no field of its own", () => {
    const keys = keysOf({ "rods.bottom.kind": "hook", "rods.bottom.reach": "4" });
    expect(keys).toEqual(expect.arrayContaining(["rods.bottom.kind", "rods.bottom.reach", "rods.bottom.radius"]));
    expect(keys).not.toContain("rods.bottom");
  });

  it("until the keys are known those that are written are there", () => {
    const parts = panelParts(base({ "basePlate.washer.size": "3" }), []);
    expect(parts.flatMap(({ keys }) => keys.map(({ key }) => key))).toContain("basePlate.washer.size");
  });

  it("groups of rods have parts of their own", () => {
    const all = panelParts(base({ "groups[1].rods.diameter": "1" }), KNOWN);
    expect(all.map(({ name }) => name).slice(0, 2)).toEqual(["Rods of group A", "Rods of group B"]);
    const bottom = all[1]?.keys.find(({ key }) => key === "groups[1].rods.bottom");
    expect(bottom?.parts?.map(({ key }) => key)).toContain("groups[1].rods.bottom.reach");
  });

  it("what rows lack has a field", () => {
    const parts = panelParts(base({}), KNOWN);
    for (const key of [
      "rods.wrenchRoom",
      "basePlate.pattern",
      "concrete",
      "rods.grade or rods.nut",
      "template.support",
    ])
      expect(panelKeyOf(parts, key), key).not.toBeNull();
    expect(jobKeys({ rules: "us" }).map(({ key }) => key)).toEqual(expect.arrayContaining(["rules", "rules.placing"]));
    expect(jobKeys({ "rules.set": "us" }).map(({ key }) => key)).toContain("rules.set");
  });
});
