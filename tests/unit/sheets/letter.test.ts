/** Pages of the letter to the engineer of record, of patterns of every kind. Invented data. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { checkBase, checkWholeJob } from "../../../src/checks/checked.js";
import { drawLetter, findCollisions, type LetterRequest, type Scene } from "../../../src/sheets/index.js";
import { factsOf } from "../../../src/summary/facts.js";
import { letterOf } from "../../../src/summary/letter.js";
import { startQuestions } from "../../../src/summary/questions.js";
import { openJob } from "../../../src/tasks/open.js";
import { inputsOf } from "../job/files.js";
import { type SceneText, textsOf } from "./scene-walk.js";

function requestOf(text: string): LetterRequest {
  const opened = openJob(inputsOf(text), { date: "2026-11-24" });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const { job, bases, plan } = opened.value;
  const asked = startQuestions(job);
  const facts = bases.map((shaped) => {
    const checked = checkBase(job, shaped);
    asked.addBase(checked);
    return factsOf(checked, { files: [], certificates: [] }, () => []);
  });
  asked.addLayout(checkWholeJob(job, plan, bases));
  return { job, plan, facts, version: "1", letter: letterOf(asked.list(), asked.closed()), form: "form.xlsx" };
}

const head = (unit: "in" | "mm", more = "") =>
  `job: { number: "24-118", title: Cold store, revision: B, status: released, date: 2026-11-24 }\nunits: ${unit}\nrules: ${unit === "in" ? "us" : "metric"}\n${more}bases:\n`;

const base = (mark: string, rod: string, pattern: string, plate: string, more = "") =>
  `  - { mark: ${mark}, rods: { diameter: ${rod}, torqued: false }, pattern: { ${pattern} }, basePlate: { ${plate} }, template: { thickness: ${rod.startsWith("M") ? 6 : "1/4"} }${more} }\n`;

const sample = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../../samples/${name}/job.yaml`, import.meta.url)), "utf8");

const INCH = "x: 18, y: 16, thickness: 1, hole: 2-1/16, washer: { shape: square, size: 2-1/2, thickness: 1/2 }";
const METRIC = "x: 420, y: 360, thickness: 30, hole: 45, washer: { shape: round, size: 50, thickness: 8 }";

const JOBS: Readonly<Record<string, string>> = {
  "four rods":
    head("in") + base("B1", "1-1/4", "kind: rectangle, x: 12, y: 10", INCH, ", concrete: { x: 24, y: 24, at: [2, 0] }"),
  "twenty on a ring":
    head("in") +
    base(
      "B1",
      "1-1/4",
      "kind: circle, diameter: 42, count: 20, start: straddle",
      "diameter: 50, thickness: 2, hole: 2-1/16, washer: { shape: round, size: 2-1/2, thickness: 1/2 }",
    ),
  "a full field":
    head("mm") +
    base("F1", "M30", "kind: rectangle, x: 300, y: 240, nx: 6, ny: 5", METRIC, ", concrete: { x: 600, y: 600 }"),
  "one line": head("mm") + base("F1", "M30", "kind: lines, x: [-100, 0, 100], y: [0]", METRIC),
  "many bases":
    head("in") +
    Array.from({ length: 120 }, (_, i) =>
      base(`LONGMARK-${i + 1}`, "1-1/4", "kind: rectangle, x: 12, y: 10", INCH),
    ).join(""),
  "places on a grid":
    head(
      "in",
      "grid: { x: { names: [1, 2], spacing: [2'] }, y: { names: [A], spacing: [] } }\nplacements:\n  - { base: B1, at: [1, A] }\n  - { base: B1, at: [2, A] }\n",
    ) + base("B1", "1-1/4", "kind: rectangle, x: 24, y: 10", INCH.replace("x: 18", "x: 30")),
  "the sample with accepted and answered ones": sample("packing-hall"),
};

const wordsOf = (scenes: readonly Scene[]) =>
  scenes.flatMap(({ items }) => textsOf(items)).map(({ text }: SceneText) => text);

describe("the letter", () => {
  it.each(Object.keys(JOBS))("of %s: every question once, no text on another or on a line", (name) => {
    const request = requestOf(JOBS[name] ?? "");
    const scenes = drawLetter(request);
    const words = wordsOf(scenes);
    expect(request.letter.asked.length).toBeGreaterThan(0);
    for (const { number } of request.letter.asked)
      expect(words.filter((text) => text.startsWith(`${number} `))).toHaveLength(1);
    expect(words.filter((text) => text === "ANSWER")).toHaveLength(request.letter.asked.length);
    expect(words.join(" ")).toContain("The engineer of record decides.");
    for (const scene of scenes) expect(findCollisions(scene)).toEqual([]);
  });

  it("names every rod of a picture with room, each nearest to its own", () => {
    const [page] = drawLetter(requestOf(JOBS["four rods"] ?? ""));
    const tags = textsOf(page?.items ?? []).filter(({ role }) => role === "tag");
    expect(tags.map(({ text }) => text).toSorted()).toEqual(["A1", "A2", "A3", "A4"]);
    const [a1, a2, a3, a4] = ["A1", "A2", "A3", "A4"].map(
      (tag) => tags.find(({ text }) => text === tag)?.at ?? { x: 0, y: 0 },
    );
    expect([
      (a1?.x ?? 0) < (a2?.x ?? 0),
      (a4?.x ?? 0) < (a3?.x ?? 0),
      (a1?.y ?? 0) > (a4?.y ?? 0),
      (a2?.y ?? 0) > (a3?.y ?? 0),
    ]).toEqual([true, true, true, true]);
  });

  it("is spelled as the rules of the job are, and tells who accepted", () => {
    const words = wordsOf(drawLetter(requestOf(JOBS["the sample with accepted and answered ones"] ?? ""))).join(" ");
    expect(words).toContain("accepted by L. Tan, shop, 2026-11-23");
    expect(words).toContain("E. Ray, engineer of record, 2026-11-20");
    expect(words).not.toContain("centre");
  });
});
