/** Placements as written -> one entry a base that stands, with the faults that only the whole plan shows. */
import type { Place } from "../../diagnostics/finding.js";
import { placeWords, subjectOf } from "../../diagnostics/finding.js";
import { nearestWord } from "../../diagnostics/nearest.js";
import type { Point } from "../../geometry/index.js";
import { millimetresBetween, pointAt } from "../../geometry/index.js";
import { MOST_PLACEMENTS } from "../../schedule/index.js";
import type { Length, Unit } from "../../units/index.js";
import { FARTHEST_POINT, NM_PER_MM } from "../../units/index.js";
import { chooseCrossing, noCrossingWords } from "../crossing.js";
import type { DocumentPath, SourceDocument, WithFindings } from "../document.js";
import { placeOf } from "../document.js";
import { given, missing } from "../model/job.js";
import type { Placement } from "../model/plan.js";
import type { PlacementDocument, SiteDocument } from "../schema/plan.js";
import type { CrossingReading, Lines } from "./plan-report.js";
import { farWords, noLine, PlanReport, readCrossing } from "./plan-report.js";
import { offsetOf } from "./shapes.js";

/** One entry of the list, with the document that it stands in. */
export interface WrittenPlacement {
  readonly document: SourceDocument;
  readonly placement: PlacementDocument;
}

/** What placements are held against. */
export interface PlacementGround {
  /** null where the grid has faults: then the crossings are not judged. */
  readonly lines: Lines | null;
  readonly marks: readonly string[];
  /** Elevations where a placement names none. */
  readonly site: SiteDocument | null;
}

/** Every base where it stands, in the order written, and the faults of the list. */
export function resolvePlacements(
  written: readonly WrittenPlacement[],
  ground: PlacementGround,
  unit: Unit,
): WithFindings<readonly Placement[]> {
  const report = new PlanReport(unit);
  const placements: Placement[] = [];
  const stands = new Spots(report);
  for (const entry of written) {
    judgeBase(entry, ground, report);
    const { lines: known } = ground;
    if (known === null) continue;
    for (const { lines, path } of crossingsOfEntry(entry, known, report)) {
      const placement = placementOf(entry, lines, path, ground.site);
      const at = standingAt(placement, known, entry.document, path, report);
      if (at !== null) stands.take(placement, at, entry.document, path);
      placements.push(placement);
    }
    if (placements.length > MOST_PLACEMENTS) {
      report.fault(entry.document, [], "too-many-placements", `at most ${MOST_PLACEMENTS} bases may be placed`);
      break;
    }
  }
  return { value: placements, findings: report.findings };
}

function judgeBase({ document, placement }: WrittenPlacement, { marks }: PlacementGround, report: PlanReport): void {
  const { base, hand } = placement;
  if (!marks.includes(base)) {
    const near = nearestWord(base, marks);
    const hint = near === undefined ? undefined : `did you mean ${near}?`;
    report.fault(
      document,
      ["base"],
      "unknown-mark",
      `"${base}" is no base of this job; allowed is the mark of a base`,
      hint,
    );
  }
  if (hand === "opposite") {
    const message = `"opposite" cannot be placed: a base of opposite hand gets a mark of its own, with its pattern mirrored`;
    report.fault(document, ["hand"], "opposite-hand", message);
  }
}

interface NamedCrossing {
  readonly lines: readonly [string, string];
  readonly path: DocumentPath;
}

function crossingsOfEntry(
  { document, placement }: WrittenPlacement,
  lines: Lines,
  report: PlanReport,
): NamedCrossing[] {
  const { at, every } = placement;
  if (at !== undefined && every !== undefined)
    report.fault(document, ["every"], "at-and-every", "is given beside at; allowed is one of them");
  if (at === undefined && every === undefined)
    report.fault(document, ["at"], "required", "is required; allowed are two grid lines, as A-1, or a list of them");
  const readings = at === undefined ? everyCrossing(every, lines) : listedCrossings(at, lines);
  return readings.flatMap(({ reading, path }): NamedCrossing[] => {
    if (reading.ok) return [{ lines: reading.lines, path }];
    report.fault(document, path, "no-line", reading.message, reading.hint);
    return [];
  });
}

interface PlacedReading {
  readonly reading: CrossingReading;
  readonly path: DocumentPath;
}

/** `A-1`; `[A-1, A-2]`; `[[A, 1], [A, 2]]`; and `[A, 1]`, which is one crossing where both are lines. */
function listedCrossings(at: NonNullable<PlacementDocument["at"]>, lines: Lines): PlacedReading[] {
  if (typeof at === "string") return [{ reading: readCrossing(at, lines), path: ["at"] }];
  const [first, second] = at;
  const isPair = at.length === 2 && typeof first === "string" && typeof second === "string";
  if (isPair && lines.has(first) && lines.has(second))
    return [{ reading: { ok: true, lines: [first, second] }, path: ["at"] }];
  if (at.length === 0)
    return [
      {
        reading: { ok: false, message: "is an empty list; allowed are two grid lines, as A-1, or a list of them" },
        path: ["at"],
      },
    ];
  return at.map((item, index) => ({
    reading: typeof item === "string" ? readCrossing(item, lines) : readPair(item, lines),
    path: ["at", index],
  }));
}

function readPair(pair: readonly [string, string], lines: Lines): CrossingReading {
  const unknown = pair.find((name) => !lines.has(name));
  return unknown === undefined ? { ok: true, lines: pair } : noLine(unknown, lines);
}

function tooMany(path: DocumentPath): PlacedReading {
  return { reading: { ok: false, message: `names too many crossings; at most ${MOST_PLACEMENTS} are allowed` }, path };
}

/** The first list's lines in turn, each with every line of the second. An unknown line is told once. */
function everyCrossing(every: PlacementDocument["every"], lines: Lines): PlacedReading[] {
  if (every === undefined) return [];
  const [firsts, seconds] = every.map((side) => (typeof side === "string" ? [side] : side));
  if ((firsts?.length ?? 0) * (seconds?.length ?? 0) > MOST_PLACEMENTS) return [tooMany(["every"])];
  const unknown = [firsts, seconds].flatMap((side = [], index) =>
    side.flatMap((name, item): PlacedReading[] =>
      lines.has(name) ? [] : [{ reading: noLine(name, lines), path: ["every", index, item] }],
    ),
  );
  if (unknown.length > 0) return unknown;
  return (firsts ?? []).flatMap((a) =>
    (seconds ?? []).map((b): PlacedReading => ({ reading: { ok: true, lines: [a, b] }, path: ["every"] })),
  );
}

function placementOf(
  { document, placement }: WrittenPlacement,
  lines: readonly [string, string],
  path: DocumentPath,
  site: SiteDocument | null,
): Placement {
  return {
    place: placeOf(document, path),
    mark: placement.base,
    lines,
    offset: offsetOf(placement.offset),
    near:
      placement.near === undefined
        ? missing("placements.near", "no plan point is given")
        : given(offsetOf(placement.near), "job"),
    turn: placement.turn ?? 0,
    topOfConcrete: elevation("topOfConcrete", "no top of concrete is given", placement, site),
    bottomOfPlate: elevation("bottomOfPlate", "no bottom of the base plate is given", placement, site),
    delivery: placement.delivery ?? "",
  };
}

function elevation(
  key: "topOfConcrete" | "bottomOfPlate",
  why: string,
  placement: PlacementDocument,
  site: SiteDocument | null,
) {
  const [own, common]: readonly (Length | undefined)[] = [placement[key], site?.[key]];
  if (own !== undefined) return given(own, "job");
  return common === undefined ? missing(`placements.${key}`, why) : given(common, `job, site.${key}`);
}

/** The working point on the plan; null where the two lines do not name one. */
function standingAt(
  { lines: [a, b], near, offset }: Placement,
  lines: Lines,
  document: SourceDocument,
  path: DocumentPath,
  report: PlanReport,
): Point | null {
  const [first, second] = [lines.get(a), lines.get(b)];
  if (first === undefined || second === undefined) return null;
  const chosen = chooseCrossing(first, second, near);
  if (chosen.ok) {
    const { x, y } = pointAt(offset.x, offset.y);
    const at = { x: chosen.at.x + x, y: chosen.at.y + y };
    if (Math.hypot(at.x, at.y) > FARTHEST_POINT)
      report.fault(document, path, "too-far", `stands ${farWords(Math.hypot(at.x, at.y) * NM_PER_MM, "plan 0,0")}`);
    return at;
  }
  if (chosen.why !== "several") {
    const message = `lines ${a} and ${b} ${noCrossingWords(chosen.why)}; allowed are two lines that ${chosen.why === "far" ? "cross nearer" : "do"}`;
    report.fault(document, path, "no-crossing", message);
  } else {
    const points = chosen.crossings.map((at) => report.showPoint(at)).join(" and ");
    report.fault(
      document,
      path,
      "two-crossings",
      `lines ${a} and ${b} cross twice, at ${points}; say which by near: [x, y]`,
    );
  }
  return null;
}

/** Two bases closer than this stand on one spot, in millimetres. */
const ONE_SPOT = 0.01;

interface Stand {
  readonly placement: Placement;
  readonly at: Point;
}

/** The spots taken so far, in square cells of one millimetre. */
class Spots {
  private readonly cells = new Map<string, Stand[]>();

  constructor(private readonly report: PlanReport) {}

  take(placement: Placement, at: Point, document: SourceDocument, path: DocumentPath): void {
    const other = this.near(at).find((stand) => millimetresBetween(stand.at, at) < ONE_SPOT);
    if (other !== undefined) {
      const { mark, lines, place } = other.placement;
      const message = `${placement.mark} at ${placement.lines.join("-")} stands on one spot with ${mark} at ${lines.join("-")}, ${where(place)}; every base has its own`;
      this.report.fault(document, path, "one-spot", message);
    }
    const key = cellOf(at.x, at.y);
    this.cells.set(key, [...(this.cells.get(key) ?? []), { placement, at }]);
  }

  private near({ x, y }: Point): Stand[] {
    const steps = [-1, 0, 1];
    return steps.flatMap((dx) => steps.flatMap((dy) => this.cells.get(cellOf(x + dx, y + dy)) ?? []));
  }
}

function cellOf(x: number, y: number): string {
  return `${Math.floor(x)} ${Math.floor(y)}`;
}

function where(place: Place): string {
  const subject = subjectOf(place);
  return `${placeWords(place)}${subject === "" ? "" : ` ${subject}`}`;
}
