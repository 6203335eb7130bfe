import { describe, expect, it } from "vitest";
import { key } from "../../../src/checks/rules/key.js";
import { rowsOf } from "./context.js";

describe("key", () => {
  it("says that auto adds nothing yet", () => {
    const [row] = rowsOf(key, { template: { key: "auto" } });
    expect(row).toMatchObject({ status: "not-checked", severity: "advise", subject: "plate" });
    expect(row?.note).toContain("adds nothing to the outline yet");
  });

  it("does not apply where none is asked for", () => {
    expect(rowsOf(key, { template: { key: "none" } })[0]?.status).toBe("not-applicable");
  });
});
