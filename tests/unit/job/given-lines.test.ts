/** What defaults and kinds give to the bases of a sheet stands in the read-as table, each value once a base. */
import { expect, it } from "vitest";
import { laidAsWritten, withGivenLines } from "../../../src/job/index.js";
import type { SourceNode } from "../../../src/readers/source.js";
import { readYaml } from "../../../src/readers/yaml.js";
import { askLacking } from "../../../src/tasks/lacking-keys.js";

function nodeOf(yaml: string): SourceNode {
  const read = readYaml(yaml, "job.yaml");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

const BASES = [
  nodeOf("{ mark: B1, kind: heavy, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 8, y: 8 }, template: {} }"),
  nodeOf("{ mark: B2, rods: { grade: 55 }, pattern: { kind: rectangle, x: 8, y: 8 }, template: { thickness: 3/8 } }"),
  nodeOf("{ mark: B3, groups: [{ rods: { diameter: 1 }, pattern: { kind: circle } }, { rods: {}, pattern: {} }] }"),
];
const JOB = nodeOf(
  "{ defaults: { template: { thickness: 1/4, opening: { x: 4, y: 3 } } }, kinds: { heavy: { rods: { grade: 105 } } } }",
);
const plain = { file: "a.csv", sheet: "", isPlain: true, lines: [], questions: [] };

it("names each value with the base, the key and who gave it", () => {
  const { lines } = withGivenLines(plain, laidAsWritten(BASES, JOB));
  expect(lines.map(({ mark, key, taken, origin, remark }) => [mark, key, taken, origin, remark].join("|"))).toEqual([
    "B1|rods.grade|105|kind|kind heavy",
    "B1|template.thickness|1/4|default|default",
    "B1|template.opening.x|4|default|default",
    "B1|template.opening.y|3|default|default",
    "B2|template.opening.x|4|default|default",
    "B2|template.opening.y|3|default|default",
    "B3|template.thickness|1/4|default|default",
    "B3|template.opening.x|4|default|default",
    "B3|template.opening.y|3|default|default",
  ]);
});

it("finds the kind whatever the capitals of its name, as the plates do", () => {
  const job = nodeOf(
    "{ defaults: { template: { thickness: 1/4 } }, kinds: { Heavy Duty: { template: { thickness: 3/8 } } } }",
  );
  const { lines } = withGivenLines(plain, laidAsWritten([nodeOf("{ mark: B1, kind: HEAVY duty }")], job));
  expect(lines.map(({ key, taken, origin, remark }) => [key, taken, origin, remark].join("|"))).toEqual([
    "template.thickness|3/8|kind|kind Heavy Duty",
  ]);
});

it("is nothing where the job gives nothing", () => {
  expect(laidAsWritten(BASES, null)).toEqual(BASES);
  expect(withGivenLines(plain, laidAsWritten(BASES, null))).toEqual(plain);
});

it("leaves to be asked what neither the sheet nor the job gives, once for all bases", () => {
  const texts = (job: SourceNode | null): string[] => askLacking(laidAsWritten(BASES, job), []).map(({ text }) => text);
  expect(texts(JOB)).toEqual(["the sheet gives for B2, B3 no size of the rods"]);
  expect(texts(null)).toEqual([
    "the sheet gives for B2, B3 no size of the rods",
    "the sheet gives for B1, B3 no thickness of the templates, which is the shop's to choose",
  ]);
  const all = nodeOf("{ defaults: { rods: { diameter: 1 }, template: { thickness: 1/4 } } }");
  expect(texts(all)).toEqual([]);
});

it("leaves what a heading of the sheet may be to the question about that heading", () => {
  const question = { cells: ["D1"], text: "SIZE", choices: [], mayGive: ["rods.diameter", "concrete"] };
  const texts = askLacking(laidAsWritten(BASES, null), [question]).map(({ text }) => text);
  expect(texts).toEqual(["the sheet gives for B1, B3 no thickness of the templates, which is the shop's to choose"]);
});
