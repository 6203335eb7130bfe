import { describe, expect, it } from "vitest";
import { rodCount } from "../../../src/checks/rules/rod-count.js";
import { inch, onLine, rowsOf } from "./context.js";

const line = (count: number) => ({ pattern: onLine(...Array.from({ length: count }, (_, i) => i * inch(4))) });

describe("rod-count", () => {
  it.each([
    [3, "fail", -1],
    [4, "pass", 0],
    [5, "pass", 1],
  ])("%i rods for a column: %s", (count, status, margin) => {
    expect(rowsOf(rodCount, { group: line(count) })).toMatchObject([
      { subject: "base", status, severity: "ask", margin: { kind: "count", count: margin } },
    ]);
  });

  it("exempts a post", () => {
    const rows = rowsOf(rodCount, { base: { member: "post" } });
    expect(rows.map(({ status }) => status)).toEqual(["not-applicable"]);
    // 29 CFR 1926.751, as OSHA's letter of 17 September 2007 quotes it.
    expect(rows[0]?.note).toContain("300 lb or less and axially loaded, or not axially loaded and held sideways");
    expect(rows[0]?.note).toContain("29 CFR 1926.751");
    expect(rows[0]?.note).toContain("the job calls the member a post, with 4 rods");
  });
});
