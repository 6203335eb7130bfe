/** Ends that are taken for joined: within 0.01 mm they are, and every gap that rounding does not make is told with its size. */
import { describe, expect, it } from "vitest";
import { readCutFile } from "../../../src/readers/dxf.js";
import { arc, bytesOf, extents, fileOf, header, line, type Tag } from "../../dxf-by-hand.js";

const INCHES: readonly Tag[] = header.map(
  ([code, value]) => [code, value === 4 ? 1 : value === 1 ? 0 : value] as const,
);

/** A box of 100 x 50 in loose lines whose first side ends short by `gap`, the last by `other`. */
const boxWith = (gap: number, other = 0, head = header) =>
  readCutFile(
    bytesOf(
      fileOf([line(0, 0, 100 - gap, 0), line(100, 0, 100, 50), line(100, 50, 0, 50), line(0, 50, 0, other)], {
        head: [...head, ...extents(0, 0, 100, 50)],
      }),
    ),
  );
const gapsOf = (file: ReturnType<typeof boxWith>) => file.findings.filter(({ code }) => code === "joint-gap");

describe("a gap between two ends", () => {
  it.each([
    ["none", 0, 0],
    ["the rounding of six decimals of an inch", 0.0000254, 0],
    ["a tenth of a micrometre", 0.0001, 1],
    ["a micrometre", 0.001, 1],
    ["a hundredth of a millimetre, the tolerance, less a micrometre", 0.009, 1],
  ])("in millimetres: %s", (_, gap, count) => {
    const file = boxWith(gap);
    expect(file.pierces).toBe(1);
    expect(gapsOf(file)).toHaveLength(count);
    for (const { severity, message, at, count: times } of gapsOf(file)) {
      expect([severity, times]).toEqual(["advise", 1]);
      expect(message).toContain(`miss each other by up to ${gap}: taken for closed, within 0.01 mm`);
      expect(at?.[0]).toBeCloseTo(100, 1);
    }
  });

  it("beyond the tolerance leaves the contour open", () => {
    const file = boxWith(0.0101);
    expect(gapsOf(file)).toEqual([]);
    expect(file.findings.map(({ code, severity }) => `${code} ${severity}`)).toContain("open-contour stop");
  });

  it("in inches is told by the same true length: 1e-6 in is rounding, a micrometre is not", () => {
    expect(gapsOf(boxWith(1e-6, 0, INCHES))).toEqual([]);
    const [finding] = gapsOf(boxWith(0.00004, 0, INCHES));
    expect(finding?.message).toContain("by up to 0.00004:");
    expect(boxWith(0.0004, 0, INCHES).findings.map(({ code }) => code)).toContain("open-contour");
  });

  it("of several the widest is told, with their number", () => {
    const [finding, ...others] = gapsOf(boxWith(0.002, 0.006));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ count: 2, message: expect.stringContaining("up to 0.006:") });
    expect(finding?.at?.[1]).toBeCloseTo(0, 1);
  });

  it("between a line and an arc counts as well", () => {
    const bytes = bytesOf(fileOf([line(0, 0, 100, 0), arc(50, 0, 50.002, 0, 180)]));
    expect(gapsOf(readCutFile(bytes))).toMatchObject([{ count: 2, message: expect.stringContaining("up to 0.002:") }]);
  });
});
