/** The job inputs of these tests: the packaged shop files, and what a test hands in. */

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import type { Job } from "../../../src/job/index.js";
import { readJob } from "../../../src/job/index.js";
import type { Inputs, Table, Workbook } from "../../../src/readers/inputs.js";
import { vocabulary } from "../../../src/tasks/open.js";

export const TEMPLATES = fileURLToPath(new URL("../../../templates/", import.meta.url));

type Content = string | Uint8Array | Table | Workbook;

const shops: readonly (readonly [string, string])[] = readdirSync(join(TEMPLATES, "shops"))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => [`templates/shops/${name}`, readFileSync(join(TEMPLATES, "shops", name), "utf8")]);

export function inputsOf(job: Content, files: Readonly<Record<string, Content>> = {}): Inputs {
  return { job: "job.yaml", files: new Map<string, Content>([...shops, ["job.yaml", job], ...Object.entries(files)]) };
}

/** The findings as they are shown. */
export function faultsOf(job: Content, files: Readonly<Record<string, Content>> = {}): string[] {
  return readJob(inputsOf(job, files), { date: "2026-01-01", vocabulary }).findings.map(formatFinding);
}

/** The job; throws with its findings when it has faults. */
export function jobOf(job: Content, files: Readonly<Record<string, Content>> = {}): Job {
  const read = readJob(inputsOf(job, files), { date: "2026-01-01", vocabulary });
  if (!read.ok) throw new Error(read.findings.map(formatFinding).join("\n"));
  return read.value;
}

/** A job in inches with these lines under `bases:`, which start on line 5. */
export function withBases(...lines: readonly string[]): string {
  return ['job: { number: "1" }', "units: in", "rules: us", "bases:", ...lines, ""].join("\n");
}

/** One base in flow style, whole but for what is changed; texts are YAML. Columns count from the start of line 5. */
export function withBase(changes: Readonly<Record<string, string | null>>): string {
  const whole: Record<string, string | null> = {
    mark: "B1",
    rods: "{ diameter: 1 }",
    pattern: "{ kind: rectangle, x: 12, y: 10 }",
    template: "{ thickness: 1/4 }",
    ...changes,
  };
  const keys = Object.entries(whole).filter(([, value]) => value !== null);
  return withBases(...keys.map(([key, value], index) => `${index === 0 ? "  - " : "    "}${key}: ${value}`));
}
