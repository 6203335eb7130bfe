/** A DXF file of the base plate as the second source of the rods' pattern: read and checked as any cut file. */
import { MOST_RODS } from "../../patterns/index.js";
import type { CutFileFinding } from "../../readers/dxf.js";
import { millimetresPer, readCutFile } from "../../readers/dxf.js";
import { contentOf } from "../../readers/inputs.js";
import { NM_PER_MM, nanometres } from "../../units/length.js";
import type { BasePlate, SecondSourceHole } from "../model/job.js";
import { given, missing } from "../model/job.js";
import type { BaseDocument } from "../schema/job.js";
import type { BaseReport } from "./base-report.js";

type From = NonNullable<NonNullable<BaseDocument["basePlate"]>["from"]>;

const PATH = ["basePlate", "from"];

/**
 * The round holes of the file. The drawing shows the plate from above with its axes along those of the base: a turn or a
 * mirror is not looked for, since a plate that is turned is what the comparison is there to find. Its origin may be anywhere.
 */
export function readBasePlateFile(from: From, report: BaseReport): Pick<BasePlate, "pattern" | "patternOrigin"> {
  const { file, origin = "any" } = typeof from === "string" ? { file: from } : from;
  return { pattern: readHoles(file, report), patternOrigin: origin };
}

function readHoles(name: string, report: BaseReport): BasePlate["pattern"] {
  const unread = missing("basePlate.from", `${name} could not be read`);
  const content = contentOf(report.files.get(name));
  if (content === undefined) {
    report.fault(PATH, "missing-file", `there is no file ${name}; allowed is a DXF file beside the job file`);
    return unread;
  }
  const { findings, holes, unit } = readCutFile(
    typeof content === "string" ? new TextEncoder().encode(content) : content,
  );
  const stops = findings.filter(({ severity }) => severity === "stop");
  for (const stop of stops) report.fault(PATH, "base-plate-file", `${name}: ${inWords(stop)}`);
  if (stops.length > 0) return unread;
  if (holes.length === 0 || holes.length > MOST_RODS) {
    report.fault(PATH, "base-plate-file", `${name} has ${holes.length} round holes; allowed are 1 to ${MOST_RODS}`);
    return unread;
  }
  const length = (value: number) => nanometres(value * millimetresPer(unit) * NM_PER_MM);
  const found = holes.map(({ x, y, diameter }): SecondSourceHole => {
    return { at: { x: length(x), y: length(y) }, diameter: given(length(diameter), name) };
  });
  return given(found, name);
}

function inWords({ code, message, count, at }: CutFileFinding): string {
  const times = count > 1 ? `, ${count} times` : "";
  return `${code}: ${message}${times}${at === null ? "" : ` at ${at[0]}, ${at[1]}`}`;
}
