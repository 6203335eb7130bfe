/** A small job and its lines, for tests of the schedule. Invented. */
import { startMemory } from "../../../../src/job/index.js";
import { findNode, type SourceNode } from "../../../../src/readers/source.js";
import { readYaml } from "../../../../src/readers/yaml.js";
import { startWrittenLines } from "../../../../src/tasks/live/base-line.js";
import type { LiveBase } from "../../../../src/tasks/live/model.js";
import type { CellChanges, Target } from "../../../../src/web/schedule/changes.js";
import { linesOf } from "../../../../src/web/schedule/lines.js";

export const JOB = `job: { number: T }
units: in
bases:
  # edge columns
  - mark: B1
    rods: { diameter: 1, projection: 7 }
    template: { mark: T1, thickness: 1/4 }

  # brace frame
  - mark: B2
    rods: { diameter: 1, projection: 8 }

  - mark: B3
    rods: { diameter: 1, projection: 9 }

# where they stand
placements:
  - { base: B1, at: A-1 }
`;

/** The bases of a job's text as a page has them, unchecked. */
export function basesOf(text: string): readonly LiveBase[] {
  const read = readYaml(text, "job.yaml");
  const root: SourceNode | null = read.ok ? read.value : null;
  const bases = findNode(root ?? undefined, "bases");
  if (bases?.kind !== "list") throw new Error("no bases");
  const standing = { state: "waiting", held: [], open: 0, worst: null } as const;
  return startWrittenLines(startMemory())(bases.items, root).map((line) => ({ ...line, ...standing }));
}

/** Every base as a line that a block lands on. */
export function targetsOf(text: string): readonly Target[] {
  return basesOf(text).flatMap((base, index): Target[] => {
    const [line] = linesOf(base, index);
    return line?.kind === "base" ? [{ index, group: null, mark: base.mark, subject: line.subject }] : [];
  });
}

/** Keys that are set in a base, with their texts. */
export function changesOf({ edits }: CellChanges, index: number): readonly (readonly [string, string])[] {
  return (edits.get(index) ?? []).map((edit) => [edit.path.join("."), edit.kind === "set" ? edit.text : edit.kind]);
}
