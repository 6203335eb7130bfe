/** Who gave what a rule takes, as the ledger says it. */
import { describe, expect, it } from "vitest";
import { givenBy, isTaken } from "../../../src/checks/takes.js";

describe("a key that a rule takes", () => {
  it.each<[take: string, path: string, taken: boolean]>([
    ["basePlate.washer", "basePlate.washer", true],
    ["basePlate.washer", "groups[1].washer", true],
    ["basePlate.hole", "groups[0].baseHole", true],
    ["template.hole", "groups[0].hole", true],
    ["rods.grade", "rods.grade", true],
    ["rods.grade", "groups[12].rods.grade", true],
    ["pattern", "groups[0].pattern", true],
    ["groups.rods.grade", "groups[0].rods.grade", true],
    ["groups.rods.grade", "rods.grade", false],
    ["template.outline", "template.outline.corner", true],
    ["template", "template.thickness", true],
    ["rods.threads", "rods.thread", false],
    ["rods.thread", "rods.threads", false],
    ["basePlate.hole", "template.hole", false],
  ])("%s takes %s: %s", (take, path, taken) => {
    expect(isTaken([take], path)).toBe(taken);
  });
});

describe("given by", () => {
  const takes = ["template.thickness", "rods.grade", "rods.finish", "basePlate.washer"];

  it("is the row where nobody else gave anything that is taken", () => {
    expect(givenBy({ origins: {} }, takes)).toBe("row");
    expect(givenBy({ origins: { grout: "default", "rods.thread": "kind heavy" } }, takes)).toBe("row");
    expect(givenBy({ origins: { grout: "default" } }, [])).toBe("row");
  });

  it("names givers and their keys in order, whatever the order in which they were given", () => {
    const origins = {
      "basePlate.washer": "note 2",
      "rods.grade": "kind heavy",
      "template.thickness": "default",
      "rods.finish": "kind heavy",
      grout: "default",
    };
    const said = "row; default: template.thickness; kind heavy: rods.finish, rods.grade; note 2: basePlate.washer";
    expect(givenBy({ origins }, takes)).toBe(said);
    expect(givenBy({ origins: Object.fromEntries(Object.entries(origins).reverse()) }, takes)).toBe(said);
  });

  it("names a key of several groups once, as a base without groups has it", () => {
    const origins = {
      "groups[0].rods.grade": "default",
      "groups[1].rods.grade": "default",
      "groups[1].washer": "note 1",
    };
    expect(givenBy({ origins }, takes)).toBe("row; default: rods.grade; note 1: basePlate.washer");
  });
});
