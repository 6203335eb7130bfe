/** What a sheet says of the scribing: which way the template is set, all that is scribed, and all that found no room. */
import { servedMarks } from "../job/model/shared.js";
import { northOf } from "../template/index.js";
import type { MarkKind, OmittedMark, Plate } from "../template/model.js";
import { formatDegrees } from "../units/index.js";
import type { SheetRequest } from "./request.js";
import { spellingOf } from "./spelling.js";

/** `none`: the shop scribes and paints nothing. Plywood is painted, whatever the shop does on steel. */
type Way = "scribed" | "painted" | "none";

function wayOf({ plate, job }: SheetRequest): Way {
  const { how } = job.shop.marking;
  if (how === "none") return "none";
  return how === "paint" || plate.material === "plywood" ? "painted" : "scribed";
}

/** How the template is laid, and where plan north is: one sentence whether N is scribed, left out or not known. */
export function settingNote(request: SheetRequest): string {
  const { job, base, plate } = request;
  const degrees = northOf(job.plan, servedMarks(base));
  const way = wayOf(request);
  const isOn = (wanted: MarkKind) => plate.marks.some(({ kind }) => kind === wanted);
  const face = isOn("top") ? `the face ${way} TOP up` : "the face up that is drawn in the plan view";
  const axes = "+X and +Y are the type's own axes";
  if (degrees !== null && isOn("north"))
    return `Set with ${face} and N to plan north at every place. ${axes}: N is ${directionWords(degrees)}.`;
  if (degrees !== null)
    return `Set with ${face}. ${axes}: at every place of this template plan north is ${directionWords(degrees)}; N is not ${way === "none" ? "scribed" : way}.`;
  return `Set with ${face}. ${axes}, not north: the anchor-rod plan shows the turn of each place.`;
}

/** A direction in the type's own axes, degrees counter-clockwise from +X, from 0 to under 360. */
function directionWords(degrees: number): string {
  const axes = ["+X", "+Y", "-X", "-Y", "+X"];
  const quarter = Math.floor(degrees / 90);
  const [from, towards] = [axes[quarter], axes[quarter + 1]];
  const rest = degrees - 90 * quarter;
  return rest === 0 ? `along ${from}` : `${formatDegrees(rest)} from ${from} towards ${towards}`;
}

/** Everything that stands on the top face, and everything that does not, never cut off. */
export function scribingNotes(request: SheetRequest): readonly string[] {
  const { plate } = request;
  const way = wayOf(request);
  const isPunched = way === "scribed" || plate.material === "plywood";
  const marks = plate.marks.filter(({ kind }) => isPunched || kind !== "punch");
  const drilling = plate.marks.filter(({ kind, text }) => !isPunched && kind === "punch" && text !== "");
  return [
    ...(way === "none" ? [NOTHING] : listNote(headOf(way, plate), [...words(request, marks), ...ticks(request)])),
    ...listNote("PUNCHED ON THE TOP FACE FOR DRILLING", words(request, drilling)),
    ...leftOutNotes(request, way),
  ];
}

/** What stands on segments is shown on their sheets. */
function headOf(way: Exclude<Way, "none">, { parted }: Plate): string {
  return parted === null ? HEADS[way] : `${HEADS[way]}, AS THE SHEETS OF THE SEGMENTS SHOW`;
}

const NOTHING =
  "NOTHING IS SCRIBED OR PAINTED: the shop puts no marks on templates. Tie on a tag with mark, revision and TOP.";

const HEADS: Readonly<Record<Exclude<Way, "none">, string>> = {
  scribed: "SCRIBED ON THE TOP FACE",
  painted: "PAINTED ON THE TOP FACE",
};

const LEFT_OUT: Readonly<Record<Way, string>> = {
  scribed: "NOT SCRIBED, PAINT BY HAND",
  painted: "NO ROOM FOR THE SHOP'S LETTERS, PAINT SMALLER BY HAND",
  none: "NOT PUNCHED, PAINT BY HAND",
};

function leftOutNotes(request: SheetRequest, way: Way): readonly string[] {
  const { omitted } = request.plate;
  const isTick = ({ kind }: OmittedMark) => kind === "centre-line";
  const missing = omitted.filter((mark) => !isTick(mark));
  const noRoom = omitted.filter((mark) => isTick(mark) && mark.cause === "room").map(endOf);
  const offPlate = omitted.filter(({ cause }) => cause === "off plate").map(endOf);
  const { center } = spellingOf(request.job.editions);
  const tick = (ends: readonly string[]) => `${center} ${ends.length === 1 ? "TICK" : "TICKS"} AT ${ends.join(", ")}`;
  return [
    ...listNote(LEFT_OUT[way], [...words(request, missing), ...(noRoom.length > 0 ? [tick(noRoom)] : [])]),
    ...(offPlate.length > 0 ? [`NO ${tick(offPlate)}: the axis does not meet the plate.`] : []),
  ];
}

function endOf({ text }: OmittedMark): string {
  return text.replace("centre line ", "").toUpperCase();
}

/** The centre ticks that stand on the plate: at all four ends of the axes but those that were left out. */
function ticks({ plate, job, piece }: SheetRequest): readonly string[] {
  const { center } = spellingOf(job.editions);
  const missing = new Set(plate.omitted.filter(({ kind }) => kind === "centre-line").map(endOf));
  const ends = ["-X", "+X", "-Y", "+Y"].filter((end) => !missing.has(end));
  if (!plate.marks.some(({ kind }) => kind === "centre-line")) return [];
  if (piece?.role === "splice plate") return ["TICKS ON THE LINE OF THE JOINT"];
  return [missing.size === 0 ? `${center} TICKS AT BOTH ENDS OF BOTH AXES` : `${center} TICKS AT ${ends.join(", ")}`];
}

function listNote(head: string, items: readonly string[]): readonly string[] {
  return items.length === 0 ? [] : [`${head}: ${items.join("; ")}.`];
}

type Named = Pick<Plate["marks"][number], "kind" | "text">;

/** Each text once, in the order of the marks: tags as ranges, notes with how many they are, N with its direction. */
function words({ job, base }: SheetRequest, marks: readonly Named[]): readonly string[] {
  const tags = marks.filter(({ kind }) => kind === "tag").map(({ text }) => text);
  const counts = new Map<string, number>();
  for (const { text } of marks) counts.set(text, (counts.get(text) ?? 0) + 1);
  const degrees = northOf(job.plan, servedMarks(base));
  const seen = new Set<string>(["", ...tags.slice(1)]);
  return marks.flatMap(({ kind, text }) => {
    if (seen.has(text)) return [];
    seen.add(text);
    if (kind === "tag") return [`ROD ${tagRanges(tags.map((tag) => tag.replace(/^ROD /, ""))).join(", ")}`];
    const count = counts.get(text) ?? 1;
    if (kind === "north" && degrees !== null) return [`${text} (${directionWords(degrees).toUpperCase()})`];
    return [kind === "punch" && count > 1 ? `${text} (AT ${count} HOLES)` : text];
  });
}

/** `A1 TO A8`, `B3`: runs of at least three tags of one letter as a range, in the order given. */
function tagRanges(tags: readonly string[]): readonly string[] {
  const runs: string[][] = [];
  for (const tag of tags) {
    const run = runs.at(-1);
    if (run !== undefined && follows(run.at(-1) ?? "", tag)) run.push(tag);
    else runs.push([tag]);
  }
  return runs.flatMap((run) => (run.length < 3 ? run : [`${run[0]} TO ${run.at(-1)}`]));
}

function follows(before: string, tag: string): boolean {
  const [, letter, number] = /^(\D*)(\d+)$/.exec(before) ?? [];
  return letter !== undefined && tag === `${letter}${Number(number) + 1}`;
}
