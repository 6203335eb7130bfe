/** A file of a hundred thousand headings is told in a screen, and soon. */
import { expect, it } from "vitest";
import { faultsOf } from "../job/files.js";

const JOB = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
const named = (count: number) => Array.from({ length: count }, (_, i) => `Thing ${i}`).join(",");

it.each([1, 50, 20_000])("%d unknown headings are one line, and no fault", (count) => {
  const told = faultsOf(JOB, {
    "s.csv": `Mark,Rod dia,X,Y,Template thk,${named(count)}\nB1,1,8,8,1/4${",x".repeat(count)}`,
  });
  expect(told.filter((line) => !line.includes("is full"))).toHaveLength(1);
  expect(told[0]).toContain(`${count} heading${count === 1 ? " is" : "s are"} not known and kept as `);
  expect(told[0]?.length).toBeLessThan(1000);
});

it("what stands under no heading is no fault, and stands in the read-as table", () => {
  const cells = Array.from({ length: 80 }, () => "x").join(",");
  expect(faultsOf(JOB, { "s.csv": `Mark,Rod dia,X,Y,Template thk\nB1,1,8,8,1/4,${cells}` })).toEqual([]);
});
