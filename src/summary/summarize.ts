/** From bases, plates and ledger rows to the machine form. */
import type { UnusedAnswer } from "../checks/answers.js";
import type { CheckedBase } from "../checks/checked.js";
import type { CheckRow, Quantity } from "../checks/model.js";
import { isReleased } from "../checks/release.js";
import { answerReach } from "../checks/words.js";
import type { Answer, Bottom, EndPlate, Input, Job } from "../job/model/job.js";
import { servedMarks } from "../job/model/shared.js";
import type { RodDetail } from "../rods/index.js";
import { detailRod, orderedWeldable } from "../rods/index.js";
import type { PlacedRod } from "../rods/model.js";
import type { TemplatePiece } from "../template/index.js";
import { scribedLength } from "../template/index.js";
import type { Hole, Plate } from "../template/model.js";
import type { Length, Unit } from "../units/length.js";
import { NM_PER_MM, NM_PER_UNIT, roundSymmetric, toUnit } from "../units/length.js";
import { POUND_IN_KG } from "../units/weight.js";
import type {
  PlacingHead,
  Summary,
  SummaryBase,
  SummaryBottom,
  SummaryCheck,
  SummaryEndPlate,
  SummaryHardware,
  SummaryHole,
  SummaryMadeRod,
  SummaryPiece,
  SummaryPlate,
  SummaryRods,
  UnusedSummaryAnswer,
} from "./model.js";

/** Area in square millimetres -> the job's unit squared, rounded to 1e-6 in2 or 1e-5 mm2: half away from zero. */
export function areaInUnit(area: number, unit: Unit): number {
  const perUnit = unit === "in" ? 645.16 : 1;
  const steps = unit === "in" ? 1e6 : 1e5;
  return roundSymmetric((area / perUnit) * steps) / steps || 0;
}

/** A length in millimetres (a double) -> the job's unit, rounded as every length of the summary. */
export function millimetresInUnit(length: number, unit: Unit): number {
  return toUnit(length * NM_PER_MM, unit);
}

type Figures = Pick<SummaryCheck, "value" | "limit" | "margin">;

/**
 * The quantities of a row as plain numbers in the job's unit; counts stay as they are. Where the summary's rounding would show
 * no difference between value and limit though there is one, they are given to half a nanometre.
 */
function figuresOf({ value, limit, margin }: CheckRow, unit: Unit): Figures {
  const rounded = { value: inUnit(value, unit), limit: inUnit(limit, unit), margin: inUnit(margin, unit) };
  const isLost = rounded.value === rounded.limit || rounded.margin === 0;
  if (margin?.kind !== "length" || margin.twice === 0 || !isLost) return rounded;
  return { value: finestInUnit(value, unit), limit: finestInUnit(limit, unit), margin: finestInUnit(margin, unit) };
}

function inUnit(quantity: Quantity | null, unit: Unit): number | null {
  if (quantity === null) return null;
  return quantity.kind === "length" ? toUnit(quantity.twice / 2, unit) : quantity.count;
}

const FINEST: Readonly<Record<Unit, number>> = { in: 1e8, mm: 1e7 };

function finestInUnit(quantity: Quantity | null, unit: Unit): number | null {
  if (quantity?.kind !== "length") return inUnit(quantity, unit);
  return roundSymmetric((quantity.twice / 2 / NM_PER_UNIT[unit]) * FINEST[unit]) / FINEST[unit] || 0;
}

/** One ledger row in the summary's form. */
export function summarizeCheck(row: CheckRow, unit: Unit): SummaryCheck {
  const measured = row.value ?? row.limit;
  const { value, limit, margin } = figuresOf(row, unit);
  return {
    rule: row.rule,
    clause: row.clause,
    edition: row.edition,
    subject: row.subject,
    severity: row.severity,
    value,
    limit,
    sense: row.sense,
    margin,
    unit: measured?.kind === "length" ? unit : "",
    status: row.status,
    note: row.answer === null ? row.note : `${row.note}${answerReach(row.answer)}`,
    ...(row.answer === null ? {} : { [SAID[row.answer.kind]]: saidOf(row.answer) }),
    ...(row.question === null ? {} : { question: row.question }),
  };
}

/** Keys of a row for what was said to it: an acceptance is no answer of the engineer. */
const SAID = { answered: "answer", accepted: "accepted" } as const satisfies Record<Answer["kind"], keyof SummaryCheck>;

function saidOf({ by, date, text }: Answer): NonNullable<SummaryCheck["answer"]> {
  return { by, date, text };
}

/** An answer that answers no open question, in the summary's form. */
export function summarizeAnswer({ answer, why }: UnusedAnswer): UnusedSummaryAnswer {
  const { kind, question, mark, rule, subject, value, by, date, text } = answer;
  return {
    kind,
    question,
    mark,
    rule,
    subject,
    value: value.kind === "given" ? value.value : null,
    by,
    date,
    text,
    why,
  };
}

/** One hole in the summary's form: centre and size in the job's unit, the base's own axes. */
export function summarizeHole(hole: Hole, unit: Unit): SummaryHole {
  const { shape } = hole;
  const size =
    shape.kind === "circle"
      ? { diameter: toUnit(shape.diameter, unit) }
      : { width: toUnit(shape.width, unit), height: toUnit(shape.height, unit), radius: toUnit(shape.radius, unit) };
  return {
    tag: hole.tag,
    role: hole.role,
    x: millimetresInUnit(hole.center.x, unit),
    y: millimetresInUnit(hole.center.y, unit),
    ...size,
    ...(hole.rod === null ? {} : { rod: toUnit(hole.rod.diameter, unit) }),
    made: hole.made,
  };
}

/** The rods of a base by groups, in the summary's form. */
export function summarizeRods({ job, base, rods }: Pick<CheckedBase, "job" | "base" | "rods">): readonly SummaryRods[] {
  return base.groups.map((group) => {
    const quantity = rods.filter((rod) => rod.group.letter === group.letter).length;
    const made = summarizeMade(group.rod, detailRod(job, base, group), job.unit);
    return {
      group: group.letter,
      quantity,
      total: quantity * base.quantity,
      ...summarizeRod(group.rod, job.unit),
      made,
    };
  });
}

/** A rod as it is made, in the summary's form; its zinc process as it is ordered, whatever the shop's barrel leaves. */
function summarizeMade(rod: PlacedRod["group"]["rod"], detail: RodDetail, unit: Unit): SummaryMadeRod {
  const length = (input: Input<Length>): number | null => (input.kind === "missing" ? null : toUnit(input.value, unit));
  const worked = (input: RodDetail["cut"]): number | null =>
    input.kind === "missing" ? null : toUnit(input.value.value, unit);
  const { overall, cut, fullThread, threadCallout, zincProcess, kilograms, hardware } = detail;
  return {
    kind: knownOrNull(detail.kind),
    overall: worked(overall),
    cutLength: worked(cut),
    lengthBy: cut.kind === "missing" ? null : cut.value.by,
    fullThread,
    bottomThread: length(detail.bottomThread),
    threadCallout,
    threadClass: knownOrNull(detail.threadClass),
    threading: knownOrNull(detail.threading),
    bar: length(detail.bar),
    zincProcess: zincProcess === null ? null : knownOrNull(rod.zincProcess),
    endColor: knownOrNull(detail.endColor),
    weight: kilograms.kind === "missing" ? null : weightInUnit(kilograms.value, unit),
    hardware: summarizeHardware(hardware),
  };
}

function summarizeHardware(hardware: RodDetail["hardware"]): SummaryHardware {
  const count = (place: string, ...kinds: readonly string[]): number =>
    hardware
      .filter((each) => each.place === place && kinds.includes(each.what))
      .reduce((sum, each) => sum + each.count, 0);
  const washers = (place: string) => count(place, "washer", "plate washer");
  return {
    nut: hardware.find(({ what }) => what === "nut")?.words ?? null,
    nuts: {
      basePlate: count("base plate", "nut"),
      levelling: count("levelling", "nut"),
      template: count("template", "nut"),
      lowerEnd: count("lower end", "nut"),
    },
    washers: {
      basePlate: washers("base plate"),
      levelling: washers("levelling"),
      template: washers("template"),
      lowerEnd: washers("lower end"),
    },
    plates: count("lower end", "plate"),
  };
}

function weightInUnit(kilograms: number, unit: Unit): NonNullable<SummaryMadeRod["weight"]> {
  const value = unit === "in" ? kilograms / POUND_IN_KG : kilograms;
  return { value: roundSymmetric(value * 1e6) / 1e6, unit: unit === "in" ? "lb" : "kg" };
}

function summarizeRod(
  rod: PlacedRod["group"]["rod"],
  unit: Unit,
): Omit<SummaryRods, "group" | "quantity" | "total" | "made"> {
  const length = (input: Input<Length>): number | null => (input.kind === "missing" ? null : toUnit(input.value, unit));
  return {
    size: rod.size,
    diameter: toUnit(rod.diameter, unit),
    thread: rod.thread,
    grade: knownOrNull(rod.grade),
    ...weldableOf(rod),
    finish: knownOrNull(rod.finish),
    projection: length(rod.projection),
    embedment: length(rod.embedment),
    length: length(rod.length),
    threadLength: length(rod.threadLength),
    bottom: rod.bottom.kind === "missing" ? null : summarizeBottom(rod.bottom.value, unit),
  };
}

function weldableOf(rod: PlacedRod["group"]["rod"]): Pick<SummaryRods, "weldable"> {
  const weldable = orderedWeldable(rod);
  return weldable === null ? {} : { weldable };
}

const knownOrNull = <T>(input: Input<T>): T | null => (input.kind === "missing" ? null : input.value);

function summarizeBottom(bottom: Bottom, unit: Unit): SummaryBottom {
  switch (bottom.kind) {
    case "straight":
      return { kind: "straight" };
    case "nut": {
      const { washer, tackWelded } = bottom;
      return {
        kind: "nut",
        ...(washer === null ? {} : { washer: summarizeEndPlate(washer, unit) }),
        ...(tackWelded ? { tackWelded } : {}),
      };
    }
    case "plate": {
      const { nuts, tackWelded } = bottom;
      const held = { ...(nuts === 2 ? {} : { nuts }), ...(tackWelded ? { tackWelded } : {}) };
      return { kind: "plate", ...summarizeEndPlate(bottom, unit), ...held };
    }
    case "hook": {
      const { reach, radius } = bottom;
      return { kind: "hook", reach: toUnit(reach, unit), ...(radius === null ? {} : { radius: toUnit(radius, unit) }) };
    }
    case "swedged":
      return { kind: "swedged", length: toUnit(bottom.length, unit) };
  }
}

function summarizeEndPlate({ shape, size, thickness }: EndPlate, unit: Unit): SummaryEndPlate {
  return { shape, size: toUnit(size, unit), thickness: toUnit(thickness, unit) };
}

/** Figures of a plate in the summary's form. */
function summarizePlate(
  { plate, measures, weight }: Pick<TemplatePiece, "plate" | "measures" | "weight">,
  { unit, shop }: Job,
): SummaryPlate {
  const { extent } = measures;
  const inUnit = (length: number): number => millimetresInUnit(length, unit);
  return {
    mark: plate.mark,
    quantity: plate.quantity,
    outline: {
      kind: plate.outlineKind,
      extent: [inUnit(extent.x0), inUnit(extent.y0), inUnit(extent.x1), inUnit(extent.y1)],
      area: areaInUnit(measures.outlineArea, unit),
      perimeter: inUnit(measures.outlinePerimeter),
    },
    material: plate.material,
    grade: plate.grade,
    thickness: toUnit(plate.thickness, unit),
    netArea: areaInUnit(measures.netArea, unit),
    weight,
    cutLength: inUnit(measures.cutLength),
    pierces: measures.pierces,
    scribeLength: inUnit(scribedLength(plate, shop.marking.how)),
    holes: plate.holes.map((hole) => summarizeHole(hole, unit)),
  };
}

function summarizePiece(piece: TemplatePiece, whole: Plate, job: Job): SummaryPiece {
  const { unit } = job;
  const segments = [...(whole.parted?.segments ?? []), ...(whole.lower?.parted?.segments ?? [])];
  const placed = segments.find(({ plate }) => plate === piece.plate);
  const { turn, shift } = placed ?? { turn: 0, shift: { x: 0, y: 0 } };
  const place = { turn, x: millimetresInUnit(shift.x, unit), y: millimetresInUnit(shift.y, unit) };
  return { role: piece.role, ...summarizePlate(piece, job), ...(placed === undefined ? {} : { place }) };
}

/** What the summary says of one base, before its files are known. */
export function summarizeBase({
  job,
  base,
  rods,
  plate,
  measures,
  rows,
  held,
  open,
  weight,
  pieces,
  shared,
}: CheckedBase): Omit<SummaryBase, "files"> {
  const { unit } = job;
  return {
    mark: base.mark,
    quantity: base.quantity,
    held: held.length > 0,
    ...(base.kind === "" ? {} : { kind: base.kind }),
    template: {
      ...summarizePlate({ plate, measures, weight }, job),
      bases: servedMarks(base),
      ...(shared === null || held.length === 0 ? {} : { heldBy: shared.heldBy }),
      released: isReleased(job, open),
      ...(pieces.every(({ role }) => role === "template")
        ? {}
        : { pieces: pieces.map((piece) => summarizePiece(piece, plate, job)) }),
    },
    rods: summarizeRods({ job, base, rods }),
    checks: rows.map((row) => summarizeCheck(row, unit)),
  };
}

/** What the summary says of the job itself. */
export function summarizeJob(job: Job): Summary["job"] {
  const { number, title, revision, status, unit, editions } = job;
  const { templateHoles, baseHoles, edges, concrete, placing } = editions;
  return {
    number,
    title,
    revision,
    status,
    unit,
    editions: { rules: editions.set, templateHoles, baseHoles, edges, concrete, placing },
  };
}

/** What a budget or a survey says of the job. */
export function placingHead({ number, revision, status, unit, editions }: Job): PlacingHead {
  return { number, revision, status, unit, placing: editions.placing };
}
