/** What a not-checked row says would supply what it lacks does: with it in the job the row is checked. */
import { describe, expect, it } from "vitest";
import { checkJob } from "../../../src/tasks/check.js";
import { openJob } from "../../../src/tasks/open.js";
import { inputsOf } from "../job/files.js";

/** An M24 rod under US editions, whose tables are of inch rods. */
const job = (rules: string, more: { readonly plate?: string; readonly base?: string } = {}) =>
  [
    'job: { number: "1" }',
    "units: mm",
    `rules: { set: us${rules} }`,
    "bases:",
    "  - mark: B1",
    "    rods: { diameter: M24, grade: 36, finish: plain, projection: 180, embedment: 300, threads: 150, bottom: nut }",
    "    pattern: { kind: rectangle, x: 300, y: 240 }",
    `    basePlate: { x: 500, y: 450, thickness: 25, hole: 42${more.plate ?? ""} }`,
    "    grout: 40",
    "    template: { thickness: 6, support: bearers, height: 75 }",
    ...(more.base === undefined ? [] : [`    ${more.base}`]),
    "",
  ].join("\n");

function openRows(text: string) {
  const opened = openJob(inputsOf(text), { date: "2026-11-24" });
  if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("; "));
  const [base] = checkJob(opened.value).bases;
  return new Map(
    (base?.checks ?? []).flatMap(({ rule, status, note }) => (status === "not-checked" ? [[rule, note] as const] : [])),
  );
}

describe("the key of a not-checked row", () => {
  it.each([
    ["base-plate-hole", "rules.baseHoles", job(", baseHoles: AISC 360-22 C-J9.1M")],
    ["base-plate-edge", "rules.edges", job(", edges: EN 1993-1-8:2005")],
    ["placing-clearance", "rules.placing", job(", placing: EN 1090-2:2008")],
    ["rod-play", "rules.placing", job(", placing: EN 1090-2:2008")],
    ["washer-on-plate", "basePlate.washer", job("", { plate: ", washer: { shape: round, size: 80, thickness: 10 }" })],
    ["rod-on-concrete", "concrete", job("", { base: "concrete: { x: 700, y: 700, exposure: exposed }" })],
  ] as const)("closes %s: %s", (rule, key, answered) => {
    expect(openRows(job("")).get(rule)).toContain(`(${key})`);
    expect(openRows(answered).has(rule)).toBe(false);
  });
});
