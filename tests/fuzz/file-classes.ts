/** Files that come back: cut files of anyone, and the summary of a package. */
import { strFromU8, strToU8 } from "fflate";
import { compareSides, makeRodStates, makeTemplateState, readSummary } from "../../src/compare/index.js";
import { type Against, againstJob, proveFile } from "../../src/index.js";
import { roleOf } from "../../src/outputs/index.js";
import { openCase, packageOf, refused } from "./answers.js";
import { changedBytes, changedText, changedTree, type Tree } from "./draw.js";
import { curvedDrawing } from "./drawings.js";
import type { Draw, Ending, FuzzCase, FuzzClass } from "./model.js";
import { STARTERS } from "./starters.js";

/** A package of a starter, that files are taken from. */
export interface Package {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly against: Against;
}

/** The package of the US starter. */
export async function starterPackage(): Promise<Package> {
  const opened = await openCase(new Map([["job.yaml", STARTERS.get("us") ?? ""]]));
  if (opened === null) throw new Error("the US starter is no job");
  return { files: packageOf(opened, false).files, against: againstJob(opened) };
}

/** Cut files, ours and by hand: bytes, digits, group codes, values, sections; a third against the job. */
export function cutFileClass({ files, against }: Package): FuzzClass {
  const own = [...files].filter(([path]) => path.endsWith(".dxf")).map(([, bytes]) => strFromU8(bytes));
  return {
    name: "DXF",
    cases: 20_000,
    draw: (random, index) => {
      const text = random.once(2) ? curvedDrawing(random) : random.pick(own);
      const bytes = random.once(2) ? strToU8(changedTags(text, random)) : changedBytes(strToU8(text), random);
      const held = index % 3 === 0 ? against : null;
      return { files: new Map([["part.dxf", bytes]]), run: () => answerCut(bytes, held) };
    },
  };
}

function answerCut(bytes: Uint8Array, against: Against | null): Ending {
  const { findings } = proveFile(bytes, "part.dxf", against);
  return findings.some(({ severity }) => severity === "stop") ? "fault" : "ok";
}

const VALUES = [
  "NaN",
  "1e300",
  "-1e300",
  "1e13",
  "",
  "0",
  "-0",
  "1e-300",
  "99999999999999999999",
  "Infinity",
  "x",
  "-1",
];
const TYPES = [
  "LINE",
  "ARC",
  "CIRCLE",
  "LWPOLYLINE",
  "POLYLINE",
  "VERTEX",
  "SEQEND",
  "INSERT",
  "SPLINE",
  "ELLIPSE",
  "BLOCK",
];
const CODES = [
  0, 2, 8, 10, 20, 11, 21, 30, 40, 41, 42, 44, 50, 51, 60, 62, 66, 70, 71, 72, 90, 210, 220, 230, 999, 1000, -5,
];

/** Tags replaced, doubled, moved or left out. */
function changedTags(text: string, random: Draw): string {
  const lines = text.split(/\r?\n/);
  for (let left = 1 + random.below(6); left > 0; left--) {
    const at = 2 * random.below(Math.floor(lines.length / 2));
    switch (random.below(6)) {
      case 0:
        lines[at] = String(random.pick(CODES));
        break;
      case 1:
        lines[at + 1] = random.pick(VALUES);
        break;
      case 2:
        lines[at + 1] = random.pick(TYPES);
        break;
      case 3:
        lines.splice(at, 2 * random.below(20));
        break;
      case 4:
        lines.splice(2 * random.below(Math.floor(lines.length / 2)), 0, ...lines.slice(at, at + 2 * random.below(40)));
        break;
      default:
        lines[at + 1] = String((random.below(2_000_001) - 1_000_000) / 1000);
    }
    if (lines.length < 4) break;
  }
  return lines.join("\n");
}

/** The summary of a package, as `compare` reads it: trees, texts and bytes. */
export function summaryClass({ files }: Package): FuzzClass {
  const whole = strFromU8(files.get("summary.json") ?? new Uint8Array());
  const tree = JSON.parse(whole) as Tree;
  return {
    name: "summary.json",
    cases: 6000,
    draw: (random): FuzzCase => {
      const bytes = random.once(3)
        ? changedBytes(strToU8(whole), random)
        : strToU8(random.once(2) ? changedText(whole, random) : JSON.stringify(changedTree(tree, random), null, 1));
      return { files: new Map([["summary.json", bytes]]), run: () => answerSummary(bytes, whole, files) };
    },
  };
}

function answerSummary(bytes: Uint8Array, whole: string, files: ReadonlyMap<string, Uint8Array>): Ending {
  const read = (content: Uint8Array) => readSummary([content], "summary.json");
  const [before, after] = [read(strToU8(whole)), read(bytes)];
  if (!after.ok || !before.ok) return refused(after.findings) ?? "fault";
  const sideOf = ({ job, bases }: typeof before.value) => {
    const bytesOf = (path: string): Uint8Array | null => files.get(path) ?? null;
    const source = { unit: job.unit, delivered: true, roleOf, bytesOf };
    return {
      name: "A",
      source: "package" as const,
      job,
      templates: bases.map((base) => makeTemplateState(base, source)),
      rods: makeRodStates(bases, job.unit),
    };
  };
  compareSides(sideOf(before.value), sideOf(after.value));
  return "ok";
}
