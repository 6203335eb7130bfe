/** The proof of cut files for a terminal: files with a stop first, within each file the worst first. */
import { counted } from "../checks/words.js";
import { terminalText } from "../diagnostics/printable.js";
import { plateWords } from "../proof/match-findings.js";
import type { FileMatch, ProvedFile, ProvedPackage } from "../proof/model.js";
import { styled } from "./ledger-text.js";
import { writeSignatures } from "./signature-text.js";

/** How the terminal shows proofs. */
export interface ProofTextOptions {
  readonly width: number;
  readonly color: boolean;
}

/** All files, ending with a line of totals. */
export const writeProofText = terminalText(proofText);

function proofText(
  files: readonly ProvedFile[],
  packages: readonly ProvedPackage[],
  options: ProofTextOptions,
): string {
  const held = files.filter((file) => stopsOf(file) > 0);
  const others = files.filter((file) => stopsOf(file) === 0);
  const blocks = [...held, ...others].map((file) => fileText(file, options));
  const total = `${counted(files.length, "file")}: ${held.length} not to be cut as ${held.length === 1 ? "it is" : "they are"}`;
  const told = packages.map((each) => packageText(each, options));
  const unlike = packages.filter((each) => stopsIn(each) > 0).length;
  const also = packages.length === 0 ? "" : `; ${counted(packages.length, "package")}: ${unlike} not as checked`;
  return `${[...told, ...blocks].join("\n")}\n${total}${also}; the others are for you to judge\n`;
}

function stopsIn({ files }: ProvedPackage): number {
  return files.filter(({ severity }) => severity === "stop").length;
}

/** Files of a package that are told one by one. */
const MOST_FILES = 100;

/** A package: how many of its files are those that were checked, and each that is not. */
function packageText({ path, job, files, signatures }: ProvedPackage, { color, width }: ProofTextOptions): string {
  const told = files.filter(({ severity }) => severity !== null);
  const stops = told.filter(({ severity }) => severity === "stop").length;
  const verdict = stops > 0 ? styled(`STOP ${stops}`, "red", color) : styled("as checked", "green", color);
  const right = `${counted(files.length - told.length, "file")} as they were checked`;
  const head = `  package of job ${job.number}, revision ${job.revision}, ${job.status}: ${right}`;
  const lines = told
    .slice(0, MOST_FILES)
    .map(({ path: file, severity, message }) => `  ${severityWord(severity === "stop", color)}  ${file}: ${message}`);
  const rest = told.length > MOST_FILES ? [`  and ${told.length - MOST_FILES} more`] : [];
  const signed = signatures.length === 0 ? `${NOT_SIGNED}\n` : writeSignatures(signatures, { width, color });
  return `${[`${styled(path, "bold", color)}  ${verdict}`, head, ...lines, ...rest].join("\n")}\n${signed}`;
}

/** What nobody can tell of a package without one. */
const NOT_SIGNED =
  "  not signed: that every file agrees with summary.json is known, not that nobody has written all of them anew";

function severityWord(isStop: boolean, color: boolean): string {
  return isStop ? styled("STOP", "red", color) : styled("LOOK", "yellow", color);
}

function stopsOf({ findings }: ProvedFile): number {
  return findings.filter(({ severity }) => severity === "stop").length;
}

function fileText(file: ProvedFile, { color }: ProofTextOptions): string {
  const stops = stopsOf(file);
  const looks = file.findings.length - stops;
  const verdict = stops > 0 ? styled(`STOP ${stops}`, "red", color) : styled("no STOP", "green", color);
  const also = looks > 0 ? `, LOOK ${looks}` : "";
  const lines = [
    `${styled(file.path, "bold", color)}  ${verdict}${also}`,
    ...proofFacts(file).map((words) => `  ${words}`),
  ];
  for (const { code, severity, message, count, at } of file.findings) {
    const word = severityWord(severity === "stop", color);
    const times = count > 1 ? `, ${count} times` : "";
    const place = at === null ? "" : `${count > 1 ? ", first" : ""} at ${plain(at[0])},${plain(at[1])}`;
    lines.push(`  ${word}  ${code}: ${message}${times}${place}`);
  }
  return `${lines.join("\n")}\n`;
}

/** Size, place, holes and lengths of what a file draws; which plate of the job it is, where one is like it. */
export function proofFacts(file: ProvedFile): readonly string[] {
  const isStopped = stopsOf(file) > 0;
  const { match } = file;
  return [
    figures(file),
    ...(match === null ? [] : [`${isStopped ? "taken for" : "is"} ${matchText(match, file.unit)}`]),
  ];
}

function figures({ unit, outline, holes, openings, cutLength, pierces, netArea }: ProvedFile): string {
  const said = unit ?? "no unit said";
  if (outline === null) return `${said}; no closed outline`;
  const [x0, y0, x1, y1] = outline.extent;
  const size = `outline ${plain(x1 - x0)} x ${plain(y1 - y0)}, lower left at ${plain(x0)},${plain(y0)}`;
  const inside = `${counted(holes.length, "round hole")}, ${counted(openings.length, "other opening")}`;
  return `${said}; ${size}; ${inside}; cut length ${plain(cutLength)}, ${counted(pierces, "pierce")}, net area ${plain(netArea)}`;
}

function matchText(match: FileMatch, unit: string | null): string {
  const { turn, mirrored, scale, positionError, diameterError } = match;
  const plate = plateWords(match);
  const how = [
    turn === 0 ? "not turned" : `turned ${plain(turn)} degrees`,
    ...(mirrored ? ["mirrored"] : []),
    ...(scale === 1 ? [] : [`${plain(scale)} times the size`]),
  ];
  const errors = `largest error of a position ${plain(positionError)}, of a diameter ${plain(diameterError)}`;
  return `${plate}: ${how.join(", ")}; ${errors}${unit === null ? "" : ` ${unit}`}`;
}

/** To six digits after the point at most, without an exponent. */
function plain(value: number): string {
  const text = value.toFixed(Math.abs(value) >= 1000 ? 3 : 6);
  return text.includes(".") ? text.replace(/\.?0+$/, "").replace(/^-0$/, "0") : text;
}
