/** The number of rods as the print says it, against that of the pattern. */
import { expect, it } from "vitest";
import { faultsOf, withBase } from "./files.js";

it.each([
  [4, "{ kind: rectangle, x: 12, y: 10 }"],
  [6, "{ kind: rectangle, x: 12, y: 10, nx: 3 }"],
  [8, "{ kind: rectangle, x: 12, y: 12, nx: 3, ny: 3, perimeter: true }"],
  [8, "{ kind: circle, diameter: 24, count: 8, start: 0 }"],
  [2, "{ kind: points, at: [[0, 3], [0, -3]] }"],
])("%d rods as the pattern has them", (count, pattern) => {
  expect(faultsOf(withBase({ rods: `{ diameter: 1, count: ${count} }`, pattern }))).toEqual([]);
});

it.each([3, 5])("%d rods beside a pattern of four name both places", (count) => {
  const told = faultsOf(withBase({ rods: `{ diameter: 1, count: ${count} }` }));
  expect(told).toHaveLength(1);
  expect(told[0]).toContain("bases[0].rods.count");
  expect(told[0]).toMatch(new RegExp(`${count} rods are written, but the pattern has 4 \\(job.yaml:7:\\d+\\)`));
});

it("a schedule names the two cells", () => {
  const csv = "Mark;Rod count;Rod dia;X;Y;nx;Template thk\nB1;4;3/4;12;9;3;1/4\n";
  const job = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
  expect(faultsOf(job, { "s.csv": csv })).toEqual([
    "s.csv B2 Rod count: 4 rods are written, but the pattern has 6 (s.csv F2); allowed is the number that the pattern has",
  ]);
});
