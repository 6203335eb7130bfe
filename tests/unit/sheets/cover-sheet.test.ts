/** What the cover of a set says. Invented data. */
import { describe, expect, it } from "vitest";
import type { Job } from "../../../src/job/model/job.js";
import { drawCover } from "../../../src/sheets/cover-sheet.js";
import { jobFixture } from "../../fixture.js";
import { textsOf, wordsIn } from "./scene-walk.js";

const cover = (job: Job) =>
  drawCover({
    job,
    programVersion: "0.1.0",
    pages: ["T1", "T2"].map((name) => ({
      ...{ name, about: `SETTING TEMPLATE, BASE ${name}`, size: "C", scale: '6" = 1\'-0" (1:2)' },
      ...{ held: name === "T2", reduced: null },
    })),
    held: [{ name: "BASE B2, TEMPLATE T2", reasons: ["spacing, centre to centre: 2 in"] }],
    questions: [{ number: "Q-1", about: "B2", text: "the gauge, centre to centre, is 2 in. What is required?" }],
    paper: null,
    isMeant: () => true,
  });

describe("the cover of a set", () => {
  const job = jobFixture();

  it("lists the pages from the one after its own, and says which are held", () => {
    const [first, ...more] = cover(job);
    expect(more).toEqual([]);
    const index = first === undefined ? "" : wordsIn(first, "cover-index");
    expect(index).toContain("2 T1 SETTING TEMPLATE, BASE T1");
    expect(index).toContain("3 T2 SETTING TEMPLATE, BASE T2");
    expect(index.match(/HELD/g)).toHaveLength(2);
  });

  it("spells what rules and questions say as the sheets of its job do", () => {
    const said = (placing: Job["editions"]["placing"]) =>
      cover({ ...job, editions: { ...job.editions, placing } })
        .flatMap(({ items }) => textsOf(items))
        .map(({ text }) => text)
        .join(" ");
    expect(said("ACI 117-10")).toContain("spacing, center to center: 2 in");
    expect(said("ACI 117-10")).toContain("the gage, center to center, is 2 in");
    expect(said("EN 1090-2:2008")).toContain("the gauge, centre to centre, is 2 in");
  });
});
