import { describe, expect, it } from "vitest";
import { key } from "../../../src/checks/rules/key.js";
import type { OutlineSpec, Pattern } from "../../../src/job/model/job.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { rowsOf } from "./context.js";

const zero = nanometres(0);
const pattern: Pattern = { kind: "rectangle", x: inches(12), y: inches(10), nx: 2, ny: 2, perimeter: false };
const outline = (x: number, y: number): OutlineSpec => ({
  kind: "rectangle",
  x: inches(x),
  y: inches(y),
  at: { x: zero, y: zero },
  corner: { kind: "square" },
});

describe("key", () => {
  it("says what was added", () => {
    const [row] = rowsOf(key, { group: { pattern }, template: { key: "auto", outline: outline(18, 18) } });
    expect(row).toMatchObject({ status: "pass", severity: "advise", subject: "plate", value: { count: 0 } });
    expect(row?.note).toMatch(/^corner cut \S+ x \S+ at the \+X \+Y corner: every wrong way round shows/);
  });

  it("adds nothing where the outline shows every wrong way round that matters", () => {
    const [row] = rowsOf(key, { group: { pattern }, template: { key: "auto", outline: outline(18, 16) } });
    expect(row).toMatchObject({ status: "pass" });
    expect(row?.note).toBe("no orientation cut needed: nothing that would set rods wrong goes unseen");
  });

  it("adds nothing where every way round sets the same rods", () => {
    const square: Pattern = { ...pattern, x: inches(12), y: inches(12) };
    const [row] = rowsOf(key, { group: { pattern: square }, template: { key: "auto", outline: outline(18, 18) } });
    expect(row?.note).toBe("no orientation cut needed: every way round sets the same rods");
  });

  it("fails where there is no room for one", () => {
    const crowded: Pattern = { kind: "rectangle", x: inches(12), y: inches(11.9), nx: 7, ny: 7, perimeter: true };
    const nailHoles = [{ at: { x: inches(6.5), y: inches(6.5) }, diameter: inches(0.1875) }];
    const template = { key: "auto", outline: outline(14.3125, 14.3125), opening: { kind: "none" }, nailHoles } as const;
    const [row] = rowsOf(key, { group: { pattern: crowded }, template });
    expect(row).toMatchObject({ status: "fail", severity: "advise" });
    expect(row?.note).toContain("no room for an orientation cut");
  });

  it("names what the detailer takes on himself who asks for none", () => {
    const [row] = rowsOf(key, { group: { pattern }, template: { key: "none", outline: outline(18, 18) } });
    expect(row?.status).toBe("not-applicable");
    expect(row?.note).toContain("only the marks show a template that lies wrong (turned 90, turned 270,");
    const [other] = rowsOf(key, { group: { pattern }, template: { key: "none", outline: outline(18, 16) } });
    expect(other?.note).toBe("the job asks for no orientation cut, and none is needed");
  });

  it("adds none to a plate over cast rods that does not go over them the wrong way round", () => {
    const template = { key: "auto", outline: outline(18, 18), use: "setting plate over cast rods" } as const;
    const [row] = rowsOf(key, { group: { pattern }, template });
    expect(row?.note).toBe("no orientation cut needed: nothing that would set rods wrong goes unseen");
  });
});
