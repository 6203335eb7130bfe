/** A file of a hundred thousand headings is told in a screen, and soon. */
import { expect, it } from "vitest";
import { faultsOf } from "../job/files.js";

const JOB = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
const WORDS = ["PAINT", "CREW", "ZONE", "LOAD CASE", "DETAIL REF"];
const named = (count: number) => Array.from({ length: count }, (_, i) => `Thing ${i}`).join(",");

it("unknown headings are one line, and no fault", () => {
  const told = faultsOf(JOB, { "s.csv": `Mark,Rod dia,X,Y,Template thk,${WORDS.join()}\nB1,1,8,8,1/4,a,b,c,d,e` });
  expect(told).toHaveLength(1);
  expect(told[0]).toContain(`5 headings are not known and kept as notes: ${WORDS.join(", ")}`);
});

it.each([1, 50, 20_000])("%d texts under what is no heading are one line", (count) => {
  const told = faultsOf(JOB, {
    "s.csv": `Mark,Rod dia,X,Y,Template thk,${named(count)}\nB1,1,8,8,1/4${",x".repeat(count)}`,
  });
  expect(told).toHaveLength(1);
  expect(told[0]).toContain(
    count === 1 ? "1 text stands beside bases" : `${count} texts stand beside bases under no heading`,
  );
  expect(told[0]?.length).toBeLessThan(400);
});

it("what stands under no heading is told once", () => {
  const cells = Array.from({ length: 80 }, () => "x").join(",");
  expect(faultsOf(JOB, { "s.csv": `Mark,Rod dia,X,Y,Template thk\nB1,1,8,8,1/4,${cells}` })).toHaveLength(1);
});
