/** A run parses its job file once: whoever loads it hands it on parsed. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { loadInputs } from "../../../src/cli/load.js";
import { runProgram } from "../../../src/cli/run.js";
import type { Output, Shell } from "../../../src/cli/shell.js";

const parsed: string[] = [];

vi.mock("../../../src/readers/yaml.js", async (original) => {
  const reader = await original<typeof import("../../../src/readers/yaml.js")>();
  const readYaml: typeof reader.readYaml = (input, file) => {
    parsed.push(file);
    return reader.readYaml(input, file);
  };
  return { ...reader, readYaml };
});

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "rodplate-load-"));
  parsed.length = 0;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const silent: Output = { isTerminal: false, columns: 100, refusal: null, write: async () => {} };
const shell = (): Shell => ({
  environment: {},
  currentFolder: folder,
  out: silent,
  err: silent,
  processors: 1,
  now: () => 0,
});

const HEAD = 'job: { number: "1" }\nunits: in\n';
const BASES =
  "bases:\n  - { mark: B1, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { thickness: 1/4 } }\n";
const SHOP = "templates/shops/plasma.yaml";

const write = (text: string): void => writeFileSync(join(folder, "job.yaml"), text);

it("once for a whole check", async () => {
  write(HEAD + BASES);
  expect(await runProgram(["check", "job.yaml"], shell())).toBeLessThan(2);
  expect(parsed).toEqual(["job.yaml", SHOP]);
});

it("once for a check whose job has faults", async () => {
  write(HEAD + BASES.replace("rectangle", "rectangel"));
  expect(await runProgram(["check", "job.yaml"], shell())).toBe(2);
  expect(parsed).toEqual(["job.yaml", SHOP]);
});

it("once where a file that the job names cannot be opened, and its other faults are told too", async () => {
  write(`${HEAD}schedule: .\nlookAlike: -1\n`);
  const inputs = await loadInputs("job.yaml", shell());
  expect(inputs.findings.map(({ code, at }) => [code, at.file, at.path])).toEqual([
    ["unreadable-file", ".", undefined],
    ["bad-value", "job.yaml", "lookAlike"],
  ]);
  expect(parsed.filter((file) => file === "job.yaml")).toEqual(["job.yaml"]);
});
