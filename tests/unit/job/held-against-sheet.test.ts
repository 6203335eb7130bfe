/** Bases in a job beside the sheet they were read from: the job's hold, and every difference is a line of the read-as table. */
import { describe, expect, it } from "vitest";
import { toPlain } from "../../../src/job/document.js";
import { holdAgainstSheet } from "../../../src/job/resolve/held-against-sheet.js";
import type { SourceNode } from "../../../src/readers/source.js";
import { readYaml } from "../../../src/readers/yaml.js";
import type { ReadLine, Schedule } from "../../../src/schedule/index.js";

function basesOf(yaml: string, file: string): readonly SourceNode[] {
  const read = readYaml(yaml, file);
  if (!read.ok || read.value.kind !== "list") throw new Error(JSON.stringify(read));
  return read.value.items;
}

function line(mark: string, cell: string, key: string, taken: string): ReadLine {
  return { mark, cell, heading: key, written: taken, key, taken, unit: "in", origin: "row", remark: "" };
}

const SHEET = `
- { concrete: {}, mark: B1, pattern: { kind: rectangle, x: 12, y: 10 }, template: { outline: { kind: auto } } }
- { mark: B2, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 8, y: 8 } }
- { mark: B3, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 8, y: 8 } }
`;

const schedule: Schedule = {
  bases: basesOf(SHEET, "sheet"),
  readAs: {
    ...{ file: "bases.xlsx", sheet: "S", isPlain: true, questions: [] },
    lines: [
      line("B1", "A2", "mark", "B1"),
      line("B1", "B2", "pattern.x", "12"),
      line("B1", "C2", "pattern.y", "10"),
      line("B2", "A3", "mark", "B2"),
      line("B3", "A3", "mark", "B3"),
      line("B2, B3", "B3", "pattern.x", "8"),
    ],
  },
  findings: [],
  headingOf: () => null,
  columnOf: () => null,
};

const hold = (yaml: string) => holdAgainstSheet(basesOf(yaml, "job.yaml"), schedule);
const told = (yaml: string): string[] =>
  hold(yaml).differences.map(({ mark, key, remark }) => `${mark} ${key}: ${remark}`);

describe("what is the same", () => {
  it("is the sheet's, with its places, whatever the order of keys and without empty groups", () => {
    const { roots, readAs, differences } = hold(`
- { pattern: { y: 10, x: 12, kind: rectangle }, rods: {}, mark: B1, template: { outline: { kind: auto } } }
- { mark: B2, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 8, y: 8 } }
- { mark: B3, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 8, y: 8 } }
`);
    expect(differences).toEqual([]);
    expect(roots).toEqual(schedule.bases);
    expect(readAs).toEqual(schedule.readAs);
  });
});

describe("what differs", () => {
  const CHANGED = `
- { mark: B1, pattern: { kind: rectangle, x: 14, y: 10 }, template: { outline: { kind: auto } }, grout: 2 }
- { mark: B2, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 8, y: 9 } }
- { mark: B9, rods: { diameter: 1 } }
`;

  it("is told with both values, key by key, and base by base", () => {
    expect(told(CHANGED)).toEqual([
      "B1 pattern.x: the sheet has 12",
      "B1 grout: in the job alone: the sheet gives none",
      "B2 pattern.y: the sheet has 8",
      "B9 mark: in the job alone: the sheet has no such base",
      "B3 : in the sheet alone: the job has no such base",
    ]);
    expect(told("- { mark: B2, rods: { diameter: 1 } }").slice(0, 1)).toEqual([
      "B2 pattern: not in the job: the sheet has kind rectangle, x 8, y 8",
    ]);
  });

  it("holds as the job has it, the rest as the sheet has it", () => {
    const { roots, readAs } = hold(CHANGED);
    expect(roots.map(toPlain)).toMatchObject(basesOf(CHANGED, "job.yaml").map(toPlain));
    const files = JSON.stringify(roots[0]).match(/"file":"[^"]*"/g);
    expect(new Set(files)).toEqual(new Set(['"file":"job.yaml"', '"file":"sheet"']));
    expect(readAs.isPlain).toBe(false);
  });

  it("stands in the place of the sheet's line, beside the cell's own text", () => {
    const lines = hold(CHANGED).readAs.lines.map(({ mark, cell, key, taken, origin, remark }) =>
      [mark, cell, key, taken, origin, remark].join("|"),
    );
    expect(lines).toEqual([
      "B1|A2|mark|B1|row|",
      "B1|B2|pattern.x|14|job|the sheet has 12",
      "B1|C2|pattern.y|10|row|",
      "B1||grout|2|job|in the job alone: the sheet gives none",
      "B2|A3|mark|B2|row|",
      "B3|A3|||left out|in the sheet alone: the job has no such base",
      "B2|B3|pattern.x|8|row|",
      "B2||pattern.y|9|job|the sheet has 8",
      "B3|B3|||left out|in the sheet alone: the job has no such base",
      "B9||mark|B9|job|in the job alone: the sheet has no such base",
    ]);
  });
});
