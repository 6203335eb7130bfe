/** A base as written x standards -> the complete base. */
import type { Place } from "../../diagnostics/finding.js";
import { hasErrors, placeWords } from "../../diagnostics/finding.js";
import type { Pattern } from "../../patterns/index.js";
import { countRods, MOST_RODS, resolvePattern } from "../../patterns/index.js";
import type { Length } from "../../units/index.js";
import type { DocumentPath, SourceDocument, WithFindings } from "../document.js";
import { placeOf } from "../document.js";
import { baseHoleOf, isSetOverCastRods } from "../model/base-hole.js";
import type { Base, BasePlate, Concrete, Given, Input, Rod, RodGroup, SecondSourceHole, Washer } from "../model/job.js";
import { given, missing, optional } from "../model/job.js";
import type { BaseDocument, GroupDocument, WasherDocument } from "../schema/job.js";
import { markFault } from "../schema/marks.js";
import { readBasePlateFile } from "./base-plate-file.js";
import type { BaseSources } from "./base-report.js";
import { BaseReport } from "./base-report.js";
import { resolveColumn } from "./column.js";
import { findWasher, inchTemplateHole, tableBaseHole, tableTemplateHole } from "./lookups.js";
import { originsOf } from "./origins.js";
import { resolveRod } from "./rods.js";
import { offsetOf, resolvePlanShape } from "./shapes.js";
import { resolveHoles, resolveTemplate } from "./template.js";

/** The base, or null when its faults leave none; `source` is where it is written. */
export function resolveBase(
  document: BaseDocument,
  source: SourceDocument,
  beside: BaseSources,
): WithFindings<Base | null> {
  const report = new BaseReport(source, beside);
  return { value: wholeBase(document, report), findings: report.findings };
}

function wholeBase(document: BaseDocument, report: BaseReport): Base | null {
  judgeMarks(document, report);
  const groups = resolveGroups(document, report);
  const basePlate = resolveBasePlate(document, report);
  const concrete = resolveConcrete(document, report);
  const quantity = document.quantity ?? 1;
  const template = resolveTemplate(document, quantity, report);
  if (groups === null || hasErrors(report.findings)) return null;
  return {
    place: placeOf(report.document, []),
    mark: document.mark,
    kind: document.kind ?? "",
    quantity,
    member: document.member ?? "column",
    note: document.note ?? "",
    delivery: document.delivery ?? "",
    groups,
    basePlate,
    ...resolveColumn(document.column, report.from(["column"])),
    concrete,
    grout: report.optional(document.grout, ["grout"], "no grout gap is given"),
    levelling: report.optional(document.levelling, ["levelling"], "what levels the base plate is not given"),
    template,
    origins: originsOf(report.document.root),
  };
}

function judgeMarks(document: BaseDocument, report: BaseReport): void {
  const base = markFault(document.mark);
  if (base !== null) report.fault(["mark"], "unsafe-mark", base);
  const template = document.template.mark;
  const fault = template === undefined ? null : markFault(template);
  if (fault !== null) report.fault(["template", "mark"], "unsafe-mark", fault);
}

interface WrittenGroup {
  readonly group: GroupDocument;
  /** Paths of the group's own keys: those of a base without `groups` stand in other places. */
  readonly rods: DocumentPath;
  readonly pattern: DocumentPath;
  readonly hole: DocumentPath;
  readonly baseHole: DocumentPath;
  readonly washer: DocumentPath;
}

function resolveGroups(document: BaseDocument, report: BaseReport): RodGroup[] | null {
  const written = writtenGroups(document, report);
  if (written === null) return null;
  const patterns = written.map((group) => patternOf(group, report));
  judgeCount(written, patterns, report);
  const groups = written.map((group, index) =>
    resolveGroup(group, patterns[index] ?? null, letterOf(index), document, report),
  );
  const whole = groups.filter((group) => group !== null);
  return whole.length === groups.length ? whole : null;
}

function writtenGroups(document: BaseDocument, report: BaseReport): WrittenGroup[] | null {
  const { groups, rods, pattern, basePlate, template } = document;
  if (groups !== undefined) return severalGroups(document, groups, report);
  if (rods === undefined) report.fault(["rods"], "required", "is required; allowed is rods with a diameter, or groups");
  if (pattern === undefined) report.fault(["pattern"], "required", "is required; allowed is a pattern, or groups");
  if (rods !== undefined && pattern === undefined) resolveRod(rods, ["rods"], report);
  if (rods === undefined || pattern === undefined) return null;
  const group: GroupDocument = {
    rods,
    pattern,
    hole: template.hole,
    baseHole: basePlate?.hole,
    washer: basePlate?.washer,
  };
  return [
    {
      group,
      rods: ["rods"],
      pattern: ["pattern"],
      ...SHARED,
    },
  ];
}

/** Where a base says for all its rods what a group may say for its own. */
const SHARED = {
  hole: ["template", "hole"],
  baseHole: ["basePlate", "hole"],
  washer: ["basePlate", "washer"],
} as const satisfies Partial<WrittenGroup>;

function besideGroups(key: "rods" | "pattern", report: BaseReport): string {
  const giver = report.from(["groups"]);
  const given = giver === "job" ? "is given beside groups" : `${key} beside groups, which ${giver} gives`;
  return `${given}; allowed is one of them`;
}

/** A group's own hole, base-plate hole and washer go before those of the whole base. */
function severalGroups(
  document: BaseDocument,
  groups: readonly GroupDocument[],
  report: BaseReport,
): WrittenGroup[] | null {
  for (const key of ["rods", "pattern"] as const) {
    if (document[key] !== undefined) report.fault([key], "groups-and-rods", besideGroups(key, report));
  }
  if (groups.length === 0) report.fault(["groups"], "required", "is an empty list; allowed is one group or more");
  if (groups.length > 26)
    report.fault(["groups"], "too-many-groups", `has ${groups.length} groups; at most 26 are allowed`);
  if (groups.length === 0 || groups.length > 26) return null;
  const { basePlate, template } = document;
  return groups.map((group, index) => {
    const own = (key: keyof GroupDocument): DocumentPath => ["groups", index, key];
    const whole: GroupDocument = {
      ...group,
      hole: group.hole ?? template.hole,
      baseHole: group.baseHole ?? basePlate?.hole,
      washer: group.washer ?? basePlate?.washer,
    };
    const place = (key: keyof GroupDocument, shared: DocumentPath): DocumentPath => {
      return group[key] === undefined && whole[key] !== undefined ? shared : own(key);
    };
    return {
      group: whole,
      rods: own("rods"),
      pattern: own("pattern"),
      hole: place("hole", SHARED.hole),
      baseHole: place("baseHole", SHARED.baseHole),
      washer: place("washer", SHARED.washer),
    };
  });
}

/** The pattern, or null where what is written gives none. */
function patternOf({ group, pattern: path }: WrittenGroup, report: BaseReport): Pattern | null {
  const { pattern, faults, doubts = [] } = resolvePattern(group.pattern);
  for (const { key, code, message } of faults) report.fault([...path, key], code, message);
  for (const { key, code, message, hint } of doubts) report.doubt([...path, key], code, message, hint);
  return pattern;
}

/** Counted before anything is laid out. */
function judgeCount(groups: readonly WrittenGroup[], patterns: readonly (Pattern | null)[], report: BaseReport): void {
  const count = patterns.reduce((sum, pattern) => sum + (pattern === null ? 0 : countRods(pattern)), 0);
  const path = groups.length === 1 ? (groups[0]?.pattern ?? []) : ["groups"];
  if (count > MOST_RODS)
    report.fault(path, "too-many-rods", `${count} rods; at most ${MOST_RODS} are allowed on one plate`);
}

function letterOf(index: number): string {
  return String.fromCharCode(65 + index);
}

function resolveGroup(
  written: WrittenGroup,
  pattern: Pattern | null,
  letter: string,
  document: BaseDocument,
  report: BaseReport,
): RodGroup | null {
  const { group } = written;
  judgeWrittenCount(written, pattern, report);
  const rod = resolveRod(group.rods, written.rods, report);
  const washer = resolveWasher(group.washer, written.washer, rod, report);
  if (rod === null || pattern === null) return null;
  const baseHole = report.optional(
    group.baseHole,
    written.baseHole,
    "the job gives no base-plate hole",
    "basePlate.hole",
  );
  const tableBase = tableBaseHole(rod, report.editions.baseHoles);
  const overCast = isSetOverCastRods(document.template);
  const tableHole = overCast
    ? holeOverCastRods(baseHole, tableBase)
    : tableTemplateHole(rod, report.editions.templateHoles);
  const known = overCast ? tableHole : inchTemplateHole(rod, tableHole);
  const hole = resolveHole(group.hole, known, written.hole, report);
  if (hole === null) return null;
  return { letter, pattern, rod, hole, tableHole, baseHole, tableBaseHole: tableBase, washer };
}

/** Where a pattern says how many rods it has: a count, else its first lines, else the whole of it. */
function patternPlace(document: SourceDocument, path: DocumentPath): Place {
  const whole = placeOf(document, path);
  const places = ["count", "nx", "ny", "at", "x"].map((key) => placeOf(document, [...path, key]));
  const isOwn = ({ line, column }: Place) => line !== whole.line || column !== whole.column;
  return places.find((place) => isOwn(place)) ?? whole;
}

/** The number of rods as the print says it against that of the pattern: one of the two is wrong, and neither is taken for the other. */
function judgeWrittenCount(
  { group, rods, pattern: path }: WrittenGroup,
  pattern: Pattern | null,
  report: BaseReport,
): void {
  const { count } = group.rods;
  const counted = pattern === null ? count : countRods(pattern);
  if (count === undefined || count === counted) return;
  const there = placeWords(patternPlace(report.document, path));
  const message = `${count} ${count === 1 ? "rod is" : "rods are"} written, but the pattern has ${counted} (${there}); allowed is the number that the pattern has`;
  report.fault([...rods, "count"], "rod-count-differs", message);
}

/** A plate set over cast rods takes the base-plate hole: the job's, else the one of the named edition. */
function holeOverCastRods(baseHole: Input<Length>, table: Input<Length>): Input<Length> {
  const known = baseHoleOf({ baseHole, tableBaseHole: table }, { orTable: true });
  if (known.kind === "missing")
    return missing("basePlate.hole", `a plate over cast rods takes the base-plate hole: ${known.why}`);
  return given(known.value, known === baseHole ? "base-plate hole of the job" : known.from);
}

function resolveHole(
  own: Length | undefined,
  table: Input<Length>,
  path: DocumentPath,
  report: BaseReport,
): Given<Length> | null {
  if (own !== undefined) return given(own, report.from(path));
  if (table.kind === "given") return table;
  report.fault(path, "hole-unknown", `is required here: ${table.why}`);
  return null;
}

function resolveWasher(
  washer: WasherDocument | undefined,
  path: DocumentPath,
  rod: Rod | null,
  report: BaseReport,
): Input<Washer> {
  const key = "basePlate.washer";
  if (washer === undefined) return missing(key, "no washer on the base plate is given");
  if (typeof washer !== "string") {
    const [why, from] = ["no washer thickness is given", report.from(path)];
    const thickness = optional(washer.thickness, `${key}.thickness`, why, from);
    return given({ shape: washer.shape, size: washer.size, thickness }, from);
  }
  const found = findWasher(washer, rod, key);
  if (found.ok) return found.washer;
  report.fault(path, "unknown-washer", found.message, found.hint);
  return missing(key, found.message);
}

function resolveBasePlate({ basePlate }: BaseDocument, report: BaseReport): BasePlate {
  const shape = resolvePlanShape(basePlate, ["basePlate"], "no size of the base plate is given", report);
  return {
    shape,
    at: offsetOf(basePlate?.at),
    thickness: report.optional(
      basePlate?.thickness,
      ["basePlate", "thickness"],
      "no thickness of the base plate is given",
    ),
    ...resolveSource(basePlate, report),
    groutHoles: resolveHoles(basePlate?.groutHoles, ["basePlate", "groutHoles"], report),
  };
}

/** The pattern's second source: listed in the job, or a DXF file of the base plate. */
function resolveSource(
  basePlate: BaseDocument["basePlate"],
  report: BaseReport,
): Pick<BasePlate, "pattern" | "patternOrigin"> {
  if (basePlate?.from === undefined) {
    return { pattern: resolveSecondSource(basePlate?.pattern, report), patternOrigin: "as listed" };
  }
  if (basePlate.pattern !== undefined) {
    report.fault(["basePlate", "from"], "two-sources", "is given beside pattern; allowed is one of them");
  }
  return readBasePlateFile(basePlate.from, report);
}

type SecondSource = NonNullable<BaseDocument["basePlate"]>["pattern"];

function resolveSecondSource(pattern: SecondSource, report: BaseReport): Input<readonly SecondSourceHole[]> {
  const [key, from] = ["basePlate.pattern", report.from(["basePlate", "pattern"])];
  if (pattern === undefined) return missing(key, "no second source for the pattern");
  const lists = Array.isArray(pattern) ? pattern : [pattern];
  const holes = lists.flatMap(({ at, hole }) => {
    const diameter = optional(hole, `${key}.hole`, "the second source gives no hole diameter", from);
    return at.map((point): SecondSourceHole => ({ at: offsetOf(point), diameter }));
  });
  if (holes.length === 0 || holes.length > MOST_RODS) {
    report.fault(["basePlate", "pattern"], "bad-value", `lists ${holes.length} holes; allowed are 1 to ${MOST_RODS}`);
  }
  return given(holes, from);
}

function resolveConcrete({ concrete }: BaseDocument, report: BaseReport): Concrete {
  return {
    shape: resolvePlanShape(concrete, ["concrete"], "no size of the concrete is given", report),
    at: offsetOf(concrete?.at),
    depth: report.optional(concrete?.depth, ["concrete", "depth"], "no depth of the concrete is given"),
    exposure: report.optional(
      concrete?.exposure,
      ["concrete", "exposure"],
      "the exposure of the concrete is not given",
    ),
  };
}
