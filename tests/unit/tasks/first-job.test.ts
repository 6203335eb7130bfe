/** The job of who begins from nothing is one that opens, with what was typed and nothing else. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { SHOP_FOLDER } from "../../../src/job/index.js";
import { rodSizes } from "../../../src/standards/index.js";
import type { FirstPattern } from "../../../src/tasks/first-job.js";
import { FIRST_STARTER, patternText, writeFirstJob } from "../../../src/tasks/first-job.js";
import { openLive } from "../../../src/tasks/live/open-live.js";
import type { Unit } from "../../../src/units/index.js";

const file = (path: string): string => readFileSync(new URL(`../../../templates/${path}`, import.meta.url), "utf8");

function opened(unit: Unit, diameter: string, pattern: FirstPattern, thickness: string) {
  const text = writeFirstJob(file(`start/${FIRST_STARTER[unit]}.yaml`), { unit, diameter, pattern, thickness });
  const files = new Map([
    ["job.yaml", text],
    [`${SHOP_FOLDER}plasma.yaml`, file("shops/plasma.yaml")],
    [`${SHOP_FOLDER}plasma-metric.yaml`, file("shops/plasma-metric.yaml")],
  ]);
  const live = openLive({ job: "job.yaml", files }, { date: "2026-01-15" });
  const view = live.look({ base: "bases[0]", room: { width: 200, height: 150 } });
  while (live.work());
  return { text, job: live.state(), view };
}

const PATTERNS: Readonly<Record<Unit, readonly (readonly [FirstPattern, number])[]>> = {
  in: [
    [{ kind: "rectangle", x: "12", y: "13-1/2", nx: "", ny: "" }, 4],
    [{ kind: "rectangle", x: "18", y: "10", nx: "3", ny: "2" }, 6],
    [{ kind: "lines", x: "-6, 0, 7-1/2", y: "-4; 4" }, 6],
    [{ kind: "circle", diameter: "2'-0\"", count: "8", start: "straddle" }, 8],
    [{ kind: "points", at: "0,8; 0,-8; 6 1/2, 0" }, 3],
  ],
  mm: [
    [{ kind: "rectangle", x: "300", y: "250", nx: "2", ny: "2" }, 4],
    [{ kind: "lines", x: "-200, 0, 200", y: "-150, 150" }, 6],
    [{ kind: "circle", diameter: "520", count: "6", start: "on-axis" }, 6],
    [{ kind: "points", at: "-100,-100\n100,-100\n0,120" }, 3],
  ],
};

describe("a job from nothing", () => {
  for (const unit of ["in", "mm"] as const)
    for (const [pattern, rods] of PATTERNS[unit])
      it(`opens without a fault: ${unit} ${patternText(pattern)}`, () => {
        const [diameter, thickness] = unit === "in" ? ["3/4", "1/4"] : ["M20", "6"];
        const { text, job, view } = opened(unit, diameter, pattern, thickness);
        expect(job.findings.filter(({ severity }) => severity === "error")).toEqual([]);
        expect(view?.holes.filter(({ rod }) => rod !== undefined).length).toBe(rods);
        expect(job.unit).toBe(unit);
        expect(text).not.toContain("$schema");
      });

  it("says what the starter says of units, rules and shop", () => {
    const { text } = opened("in", "1", { kind: "rectangle", x: "12", y: "12", nx: "", ny: "" }, "1/4");
    for (const key of ["units:", "rules:", "shop:", "  status:"]) {
      const line = file("start/us.yaml")
        .split("\n")
        .find((each) => each.startsWith(key));
      expect(text.split("\n")).toContain(line);
    }
  });

  it("takes every size of rod that is offered", () => {
    for (const unit of ["in", "mm"] as const)
      for (const size of rodSizes[unit]) {
        const wide = unit === "in" ? "24" : "600";
        const { job } = opened(
          unit,
          size,
          { kind: "rectangle", x: wide, y: wide, nx: "", ny: "" },
          unit === "in" ? "1/4" : "6",
        );
        expect(job.findings.filter(({ severity }) => severity === "error")).toEqual([]);
      }
    expect(rodSizes.in.slice(0, 4)).toEqual(["1/2", "9/16", "5/8", "3/4"]);
    expect(new Set(rodSizes.in).size).toBe(rodSizes.in.length);
  });

  it("keeps a figure that is no length as it was typed, with its fault at its key", () => {
    const { text, job } = opened("in", "1", { kind: "rectangle", x: "12: 3 #", y: "<script>", nx: "", ny: "" }, "1/4");
    expect(text).toContain('"12: 3 #"');
    expect(job.findings.map(({ at }) => at.path)).toEqual(
      expect.arrayContaining(["bases[0].pattern.x", "bases[0].pattern.y"]),
    );
  });
});
