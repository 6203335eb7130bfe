import { describe, expect, it } from "vitest";
import { marksRoom } from "../../../src/checks/rules/marks-room.js";
import { runRules } from "../../../src/checks/run.js";
import type { OmittedMark } from "../../../src/template/index.js";
import { shopFixture } from "../../fixture.js";
import { contextOf, rowsOf } from "./context.js";

function withOmitted(omitted: readonly OmittedMark[]) {
  const context = contextOf();
  return runRules([marksRoom], { ...context, plate: { ...context.plate, omitted } });
}

describe("marks-room", () => {
  it("passes where nothing is left out", () => {
    expect(withOmitted([])).toMatchObject([{ subject: "plate", status: "pass", severity: "advise" }]);
  });

  it("advises on each mark that is left out, and says what to do", () => {
    const rows = withOmitted([
      { kind: "mark", text: "T6IN REV C1", cause: "room" },
      { kind: "tag", text: "ROD A1", cause: "room" },
      { kind: "mark", text: "TR\u00c4GER REV B", cause: "font" },
      { kind: "centre-line", text: "centre line -x", cause: "off plate" },
    ]);
    expect(rows.map(({ subject, note }) => `${subject} ${note}`)).toEqual([
      "piece mark T6IN REV C1 found no room clear of holes, edges and other marks; paint it by hand",
      "tag A1 found no room clear of holes, edges and other marks; paint it by hand",
      "piece mark TR\u00c4GER REV B has letters that the scribed font does not have; paint it by hand",
      "centre line -x has no place: the axis does not meet the plate",
    ]);
    for (const row of rows)
      expect(row).toMatchObject({ status: "fail", severity: "advise", margin: { kind: "count", count: -1 } });
  });

  it("does not apply where the shop puts no marks on", () => {
    const marking = { ...shopFixture().marking, how: "none" } as const;
    expect(rowsOf(marksRoom, { shop: { marking } })).toMatchObject([{ status: "not-applicable" }]);
  });
});
