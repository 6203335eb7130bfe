/** Texts for which a base's note has no room: kept in the read-as table, and told once. Invented sheet. */
import { expect, it } from "vitest";
import { gatherFindings } from "../../../src/diagnostics/gather.js";
import { readSheetAsSent } from "../../../src/tasks/read.js";

it("of many bases are one cause", () => {
  const rows = Array.from({ length: 9 }, (_, index) => `B${index}|1|1|9|9|1/4|${"long ".repeat(23)}|zone ${index}`);
  const file = ["MARK|QTY|ROD DIA|X|Y|TEMPLATE THK|REMARKS|ZONE", ...rows].join("\n");
  const read = readSheetAsSent({ name: "s.txt", file, job: null, unit: "in" });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  const full = read.value.findings.filter(({ code }) => code === "note-full");
  expect(full).toHaveLength(9);
  expect(gatherFindings(full)).toHaveLength(1);
  expect(full[3]?.message).toBe(
    '"ZONE: zone 3" is kept in the read-as table alone: the note of the base is full, at 120 characters',
  );
  const kept = read.value.form.entries.filter(({ heading }) => heading === "ZONE").map(({ written }) => written);
  expect(kept).toEqual(expect.arrayContaining(Array.from({ length: 9 }, (_, index) => `zone ${index}`)));
});
