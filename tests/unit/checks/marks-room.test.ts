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

  it("advises on the count, and on each mark that is left out with its reason", () => {
    const rows = withOmitted([
      { kind: "tag", text: "A1 1-1/4", why: "no room beside the hole" },
      { kind: "centre-line", text: "", why: "the edge is too short" },
      { kind: "centre-line", text: "centre line -x", why: "no room at the edge" },
    ]);
    expect(rows).toMatchObject([
      { subject: "plate", status: "fail", value: { kind: "count", count: 3 }, margin: { kind: "count", count: -3 } },
      { subject: "tag A1 1-1/4", status: "fail", note: "left out: no room beside the hole" },
      { subject: "centre-line", status: "fail" },
      { subject: "centre line -x", status: "fail" },
    ]);
  });

  it("does not apply where the shop puts no marks on", () => {
    const marking = { ...shopFixture().marking, how: "none" } as const;
    expect(rowsOf(marksRoom, { shop: { marking } })).toMatchObject([{ status: "not-applicable" }]);
  });
});
