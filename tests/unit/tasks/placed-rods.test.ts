/** A layout of more rods than are set out is refused in a sentence, before anything is worked on. */
import { expect, it } from "vitest";
import { openJob } from "../../../src/tasks/open.js";
import { inputsOf } from "../job/files.js";

/** A base of so many rods in a ring at every crossing of 25 and 40 lines: 1000 places. */
function open(count: number) {
  const names = (length: number, letter: string) => Array.from({ length }, (_, i) => `${letter}${i + 1}`).join(", ");
  const lines = (length: number, letter: string) =>
    `{ names: [${names(length, letter)}], spacing: ${length - 1} @ 25' }`;
  const job = [
    'job: { number: "1" }',
    "units: in",
    `grid: { x: ${lines(25, "A")}, y: ${lines(40, "N")} }`,
    `placements: [{ base: B1, every: [[${names(25, "A")}], [${names(40, "N")}]] }]`,
    "bases:",
    `  - { mark: B1, rods: { diameter: 1 }, pattern: { kind: circle, count: ${count}, diameter: 100, start: 0 }, template: { thickness: 1/4 } }`,
    "",
  ];
  return openJob(inputsOf(job.join("\n")), { date: "2026-01-01" });
}

it("50,000 rods are set out", () => {
  expect(open(50).ok).toBe(true);
});

it("more are refused", () => {
  const refused = open(51);
  expect(refused.ok).toBe(false);
  expect(refused.findings.map(({ message }) => message)).toEqual([
    "the layout has 51000 rods to set out; at most 50000 are: make a job of each part of it",
  ]);
});
