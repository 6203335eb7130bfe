/** The proof of cut files for a terminal: files with a stop first, within each file the worst first. */
import { counted } from "../checks/words.js";
import type { FileMatch, ProvedFile } from "../proof/model.js";
import { styled } from "./ledger-text.js";

/** How the terminal shows proofs. */
export interface ProofTextOptions {
  readonly color: boolean;
}

/** All files, ending with a line of totals. */
export function writeProofText(files: readonly ProvedFile[], options: ProofTextOptions): string {
  const held = files.filter((file) => stopsOf(file) > 0);
  const others = files.filter((file) => stopsOf(file) === 0);
  const blocks = [...held, ...others].map((file) => fileText(file, options));
  const total = `${counted(files.length, "file")}: ${held.length} not to be cut as ${held.length === 1 ? "it is" : "they are"}`;
  return `${blocks.join("\n")}\n${total}; the others are for you to judge\n`;
}

function stopsOf({ findings }: ProvedFile): number {
  return findings.filter(({ severity }) => severity === "stop").length;
}

function fileText(file: ProvedFile, { color }: ProofTextOptions): string {
  const stops = stopsOf(file);
  const looks = file.findings.length - stops;
  const verdict = stops > 0 ? styled(`STOP ${stops}`, "red", color) : styled("no STOP", "green", color);
  const also = looks > 0 ? `, LOOK ${looks}` : "";
  const lines = [`${styled(file.path, "bold", color)}  ${verdict}${also}`, `  ${figures(file)}`];
  if (file.match !== null) lines.push(`  ${matchText(file.match, file.unit)}`);
  for (const { code, severity, message, count, at } of file.findings) {
    const word = severity === "stop" ? styled("STOP", "red", color) : styled("LOOK", "yellow", color);
    const times = count > 1 ? `, ${count} times` : "";
    const place = at === null ? "" : `${count > 1 ? ", first" : ""} at ${plain(at[0])},${plain(at[1])}`;
    lines.push(`  ${word}  ${code}: ${message}${times}${place}`);
  }
  return `${lines.join("\n")}\n`;
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
  const { mark, base, role, turn, mirrored, scale, positionError, diameterError } = match;
  const plate =
    role === "base plate" ? `base plate of ${base}` : `template ${mark}${mark === base ? "" : ` (base ${base})`}`;
  const how = [
    turn === 0 ? "not turned" : `turned ${plain(turn)} degrees`,
    ...(mirrored ? ["mirrored"] : []),
    ...(scale === 1 ? [] : [`${plain(scale)} times the size`]),
  ];
  const errors = `largest error of a position ${plain(positionError)}, of a diameter ${plain(diameterError)}`;
  return `is ${plate}: ${how.join(", ")}; ${errors}${unit === null ? "" : ` ${unit}`}`;
}

/** To six digits after the point at most, without an exponent. */
function plain(value: number): string {
  const text = value.toFixed(Math.abs(value) >= 1000 ? 3 : 6);
  return text.includes(".") ? text.replace(/\.?0+$/, "").replace(/^-0$/, "0") : text;
}
