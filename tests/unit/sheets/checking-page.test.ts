/** The checker's page, of small and large invented jobs: nothing lies on anything else, and it stays within two pages. */
import { describe, expect, it } from "vitest";
import { startDigest } from "../../../src/checks/digest.js";
import { judge } from "../../../src/checks/run.js";
import { drawChecking } from "../../../src/sheets/checking-page.js";
import { findCollisions } from "../../../src/sheets/index.js";
import type { Unit } from "../../../src/units/index.js";
import { inches } from "../../../src/units/length.js";
import { jobFixture } from "../../fixture.js";

const RULE = { id: "nut-room", plainName: "room for nuts and wrench", severity: "stop", measured: "the room" } as const;

function pages(bases: number, unit: Unit) {
  const gatherer = startDigest();
  for (let i = 0; i < bases; i++) {
    const length = (size: number) => ({ kind: "length", twice: inches(size) * 2 + i }) as const;
    const compared = { kind: "compared", subject: "A1-A2", sense: ">=", note: "" } as const;
    const rows = [
      judge(RULE, { ...compared, value: length(2), limit: length(3) }, "gap: shop plasma", "shop"),
      judge(
        RULE,
        { ...compared, value: length(3 + i / 64), limit: length(3) },
        "s.2.6: W >= 2 H - d",
        "Design Guide 1, 2nd ed.",
      ),
      judge(
        RULE,
        { kind: "not-checked", subject: "A1", note: "", missing: [`rods.key${i % 9}`, "rods.length"] },
        "",
        "",
      ),
    ];
    gatherer.add({
      ...{ mark: `B${i}`, quantity: 3, template: { mark: `T${i}`, quantity: 1 } },
      ...{ reasons: i % 2 === 0 ? [`reason ${i}`] : [], rows },
    });
  }
  const job = { ...jobFixture(), unit };
  const said = { questions: [], closed: 0, facts: [], layoutHeld: ["grid lines are not where they are"] };
  const ledger = { path: "engineer/ledger.csv", sha256: "0123456789abcdef".repeat(4) };
  return drawChecking({ job, version: "1.0.0", digest: gatherer.digest(), ...said, ledger });
}

describe.each(["in", "mm"] as const)("the checker's page in %s", (unit) => {
  it.each([1, 30, 500])("of %i bases", (bases) => {
    const scenes = pages(bases, unit);
    expect(scenes.length).toBeLessThanOrEqual(2);
    for (const scene of scenes) expect(findCollisions(scene)).toEqual([]);
    const text = JSON.stringify(scenes);
    for (const words of ["CHECKED BY", "0123456789abcdef", "No rule looks at", "CLOSEST OF WHAT PASSES"])
      expect(text).toContain(words);
    if (bases > 16) expect(text).toContain(`bases more`);
  });
});
