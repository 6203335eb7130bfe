/** The plan of a job: grid, placements, control points and north, read together and held against the bases. */
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { openTable, readPlacements } from "../../schedule/index.js";
import type { Length, SurveyUnit } from "../../units/index.js";
import { parseCount, SURVEY_UNITS } from "../../units/index.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt, joinPath } from "../document.js";
import type { Base } from "../model/job.js";
import { given, optional } from "../model/job.js";
import type { ControlPoint, GridLine, PlanSpec } from "../model/plan.js";
import { parseForgiving } from "../schema/forgiving.js";
import type { PlanSchemas, SettingOutDocument, SiteDocument } from "../schema/plan.js";
import { PLACEMENTS, PLAN_KEYS, planSchemas } from "../schema/plan.js";
import type { WrittenControl } from "./control.js";
import { resolveControl, resolveTransform } from "./control.js";
import { resolveGrid } from "./grid.js";
import type { JobSources } from "./job-sources.js";
import type { WrittenPlacement } from "./placements.js";
import { resolvePlacements } from "./placements.js";
import { PlanReport } from "./plan-report.js";

/** What the plan is read from. */
export interface PlanSources extends JobSources {
  /** Every base as written. */
  readonly bases: readonly SourceDocument[];
}

/** Reads the plan, null where the job has none or its faults leave none; every fault is told. */
export function readPlan(sources: PlanSources): WithFindings<PlanSpec | null> {
  const { document, unit } = sources;
  const written = PLAN_KEYS.filter((key) => findNode(document.root, key) !== undefined);
  if (written.length === 0) return { value: null, findings: [] };
  const report = new PlanReport(unit);
  judgeWhole(written, document, report);
  const parts = parseParts(sources, report);
  const plan = assemble(parts, sources, report);
  return { value: report.findings.length > 0 ? null : plan, findings: report.findings };
}

/** A plan needs its grid and its bases; the rest is for them. */
function judgeWhole(written: readonly string[], document: SourceDocument, report: PlanReport): void {
  for (const key of ["grid", "placements"]) {
    if (written.includes(key)) continue;
    const message = `is required beside ${written.join(", ")}; a layout has a grid and placements`;
    report.fault(document, [key], "required", message);
  }
}

interface Parts {
  readonly grid: Parsed<PlanSchemas["grid"]["_output"]>;
  readonly placements: { readonly whole: boolean; readonly written: readonly WrittenPlacement[] };
  readonly control: { readonly whole: boolean; readonly written: readonly WrittenControl[] };
  readonly site: SiteDocument | null;
  readonly settingOut: SettingOutDocument | null;
}

interface Parsed<T> {
  readonly value: T | null;
  /** False where a part was refused: what hangs on it is then not judged. */
  readonly whole: boolean;
}

function parseParts(sources: PlanSources, report: PlanReport): Parts {
  const { document, unit } = sources;
  const surveyUnit = surveyUnitOf(document.root);
  const schemas = planSchemas(unit, surveyUnit);
  const part = (key: (typeof PLAN_KEYS)[number]) => partOf(document, key);
  const settingOut = parsePart(schemas.settingOut, part("settingOut"), {}, report);
  const control = parseItems(schemas.control, itemsOf(document, "control", "a list of control points", report), report);
  const site = parsePart(schemas.site, part("site"), {}, report);
  const list = placementDocuments(sources, report);
  const placements = parseItems(schemas.placement, list.documents, report);
  return {
    grid: parsePart(schemas.grid, part("grid"), {}, report),
    placements: {
      whole: placements.whole && list.whole,
      written: placements.items.map(({ document: at, value }) => ({ document: at, placement: value })),
    },
    control: {
      whole: control.whole,
      written: control.items.map(({ document: at, value }) => ({ document: at, control: value })),
    },
    site: site.value,
    settingOut: settingOut.value,
  };
}

/** The unit of bare site coordinates; null until the job names one. */
function surveyUnitOf(root: SourceNode): SurveyUnit | null {
  const node = findNode(root, "settingOut", "unit");
  return SURVEY_UNITS.find((unit) => node?.kind === "scalar" && node.text === unit) ?? null;
}

function partOf(document: SourceDocument, key: string): SourceDocument | null {
  const root = findNode(document.root, key);
  return root === undefined ? null : { root, path: key, nameOf: () => null };
}

function parsePart<Schema extends Parameters<typeof parseForgiving>[0]>(
  schema: Schema,
  document: SourceDocument | null,
  standIns: Parameters<typeof parseForgiving>[2],
  report: PlanReport,
): Parsed<Schema["_output"]> {
  if (document === null) return { value: null, whole: true };
  const { data, pruned, findings } = parseForgiving(schema, document, standIns);
  report.findings.push(...findings);
  return { value: data, whole: !pruned };
}

interface Item<T> {
  readonly document: SourceDocument;
  readonly value: T;
}

/** Items that were refused are left out, and the list is then not whole. */
function parseItems<Schema extends Parameters<typeof parseForgiving>[0]>(
  schema: Schema,
  documents: readonly SourceDocument[] | null,
  report: PlanReport,
): { readonly whole: boolean; readonly items: readonly Item<Schema["_output"]>[] } {
  const parsed = (documents ?? []).map((document) => ({ document, ...parsePart(schema, document, {}, report) }));
  const items = parsed.flatMap(({ document, value, whole }) => (whole && value !== null ? [{ document, value }] : []));
  return { whole: documents !== null && items.length === parsed.length, items };
}

/** One document an item of a list; null where it is no list. */
function itemsOf(
  document: SourceDocument,
  key: string,
  allowed: string,
  report: PlanReport,
): readonly SourceDocument[] | null {
  const node = findNode(document.root, key);
  if (node === undefined) return [];
  if (node.kind === "list")
    return node.items.map((root, index) => ({ root, path: joinPath(key, [index]), nameOf: () => null }));
  report.fault(document, [key], "bad-value", `is no list; allowed is ${allowed}`);
  return null;
}

/** Documents of a list; null where it is none. Not whole: some of its cells were refused. */
interface Listed {
  readonly documents: readonly SourceDocument[] | null;
  readonly whole: boolean;
}

function placementDocuments(sources: PlanSources, report: PlanReport): Listed {
  const { document } = sources;
  const none: Listed = { documents: null, whole: false };
  const node = findNode(document.root, "placements");
  if (node === undefined || node.kind === "list")
    return { documents: itemsOf(document, "placements", PLACEMENTS, report), whole: true };
  const named = node.kind === "scalar" ? node : findNode(node, "file");
  const sheet = findNode(node, "sheet");
  const strange = node.kind === "map" && node.entries.some(({ key }) => key !== "file" && key !== "sheet");
  if (named?.kind !== "scalar" || strange || (sheet !== undefined && sheet.kind !== "scalar")) {
    report.fault(document, ["placements"], "bad-value", `cannot be read; allowed is ${PLACEMENTS}`);
    return none;
  }
  return listedPlacements(named.text, sheet?.text, sources, report);
}

/** Name under which the inputs hold a sheet: a workbook may hold bases and placements. */
export function tableName(file: string, sheet: string | undefined): string {
  return sheet === undefined ? file : `${file}#${sheet}`;
}

function listedPlacements(
  file: string,
  sheet: string | undefined,
  { document, inputs, unit }: PlanSources,
  report: PlanReport,
): Listed {
  const handedIn = inputs.files.get(tableName(file, sheet)) ?? inputs.files.get(file);
  if (handedIn === undefined) {
    const message = `there is no placement list ${file}; allowed is a CSV or XLSX file beside the job file`;
    report.fault(document, ["placements"], "missing-file", message);
    return { documents: null, whole: false };
  }
  const table = openTable(handedIn, file);
  report.findings.push(...table.findings);
  if (!table.ok) return { documents: null, whole: false };
  const { placements, headingOf, findings } = readPlacements(table.value, file, unit);
  report.findings.push(...findings);
  if (placements.length === 0 && findings.length === 0)
    report.fault(
      document,
      ["placements"],
      "empty-list",
      `${file} has no row under its headings; allowed is one or more`,
    );
  const documents = placements.map((root): SourceDocument => ({ root, path: "", nameOf: headingOf }));
  return { documents, whole: findings.length === 0 && placements.length > 0 };
}

function assemble(parts: Parts, sources: PlanSources, report: PlanReport): PlanSpec {
  const { document, unit } = sources;
  const { site, settingOut } = parts;
  const before = report.findings.length;
  const lines = gridLines(parts.grid, partOf(document, "grid"), report);
  const isWhole = parts.grid.whole && lines.length >= 2 && report.findings.length === before;
  const byName = isWhole ? new Map(lines.map((line) => [line.name, line])) : null;
  const placements = placeBases(parts, byName, sources, report);
  const control = resolveControl(parts.control.written, byName ?? new Map<string, GridLine>(), report);
  const transform = transformOf(parts, control, byName !== null, document, report);
  judgeSettingOut(parts, control, document, report);
  return {
    lines,
    placements,
    control,
    trueNorth: optional(site?.trueNorth, "site.trueNorth", "true north is not given"),
    transform,
    scaleFactor: site?.scaleFactor === undefined ? given(1, "default 1") : given(site.scaleFactor, "job"),
    controlTolerance: optional(site?.tolerance, "site.tolerance", "the job names no tolerance of the control points"),
    settingOut: { order: settingOut?.order ?? "PNEZD", unit: settingOut?.unit ?? (unit === "in" ? "ft" : "m") },
  };
}

/** The placements, held against the bases' quantities where nothing was refused that would falsify the count. */
function placeBases(
  parts: Parts,
  lines: ReadonlyMap<string, GridLine> | null,
  { document, bases }: PlanSources,
  report: PlanReport,
): PlanSpec["placements"] {
  const marks = marksOf(bases);
  const ground = { lines, marks: marks.map(({ mark }) => mark), site: parts.site };
  const before = report.findings.length;
  const placements = resolvePlacements(parts.placements.written, ground, report);
  const keepsCount = report.findings.slice(before).every(({ code }) => KEEPS_COUNT.has(code));
  const node = findNode(document.root, "placements");
  if (lines !== null && node !== undefined && parts.placements.whole && keepsCount)
    judgeCounts(marks, placements, node, report);
  return placements;
}

/** The way to the site is judged where no part of it was refused. */
function transformOf(
  { control, site }: Parts,
  points: readonly ControlPoint[],
  isGridWhole: boolean,
  document: SourceDocument,
  report: PlanReport,
): PlanSpec["transform"] {
  const places = { root: document, site: partOf(document, "site") ?? document };
  const isWhole = control.whole && (isGridWhole || site?.origin !== undefined);
  return isWhole ? resolveTransform(site, points, places, report) : { kind: "none" };
}

/** Which foot it is must be said where site coordinates are given. */
function judgeSettingOut(
  { settingOut, site }: Parts,
  control: readonly ControlPoint[],
  document: SourceDocument,
  report: PlanReport,
): void {
  if (settingOut?.unit !== undefined || (control.length === 0 && site?.origin === undefined)) return;
  const message = `is required beside ${site?.origin === undefined ? "control" : "site.origin"}; allowed is m, mm, ft (international) or ft-us (US survey): which foot it is makes 2 ft in a million`;
  report.fault(document, ["settingOut", "unit"], "required", message);
}

/** Of a grid that lost a part, only the faults that the part could not have made up. */
function gridLines(grid: Parts["grid"], document: SourceDocument | null, report: PlanReport): readonly GridLine[] {
  if (grid.value === null || document === null) return [];
  const own = new PlanReport(report.unit);
  const lines = resolveGrid(grid.value, document, own);
  report.findings.push(...own.findings.filter(({ code }) => grid.whole || code === "line-twice"));
  return lines;
}

/** Faults of a placement that is counted all the same. */
const KEEPS_COUNT = new Set(["one-spot", "opposite-hand", "no-crossing", "two-crossings"]);

interface WrittenMark {
  readonly mark: string;
  readonly document: SourceDocument;
  /** As written; null where the base names no quantity. */
  readonly quantity: number | null;
}

function marksOf(bases: readonly SourceDocument[]): readonly WrittenMark[] {
  return bases.flatMap((document): WrittenMark[] => {
    const [mark, quantity] = [findNode(document.root, "mark"), findNode(document.root, "quantity")];
    if (mark?.kind !== "scalar") return [];
    const count = quantity?.kind === "scalar" ? parseCount(quantity.text, 1, 100_000) : null;
    return [{ mark: mark.text, document, quantity: count?.ok ? count.value : null }];
  });
}

/** As many placements as columns: a base that names its quantity is held to it, one that names none takes the count. */
function judgeCounts(
  marks: readonly WrittenMark[],
  placements: PlanSpec["placements"],
  node: SourceNode,
  report: PlanReport,
): void {
  const counts = countPlacements(placements);
  const list = ` (placements at ${node.place.file}:${node.place.line}:${node.place.column})`;
  for (const { mark, document, quantity } of marks) {
    const count = counts.get(mark) ?? 0;
    if (count === 0) {
      const message = `"${mark}" is placed nowhere${list}; every base of a job with placements stands somewhere`;
      report.findings.push(faultAt(document, ["mark"], "not-placed", message));
    } else if (quantity !== null && quantity !== count) {
      const message = `is ${quantity}, but ${count} of ${mark} ${count === 1 ? "is" : "are"} placed${list}; allowed is as many as are placed`;
      report.findings.push(faultAt(document, ["quantity"], "count", message));
    }
  }
}

/** How often each mark is placed. */
export function countPlacements(placements: PlanSpec["placements"]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { mark } of placements) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return counts;
}

/** The plan with what its bases add: the bottom of a base plate is the top of concrete and the grout. */
export function withGrout(plan: PlanSpec, bases: readonly Base[]): PlanSpec {
  const grouts = new Map(bases.map(({ mark, grout }) => [mark, grout]));
  const placements = plan.placements.map((placement) => {
    const { topOfConcrete, bottomOfPlate, mark } = placement;
    const grout = grouts.get(mark);
    if (bottomOfPlate.kind === "given" || topOfConcrete.kind === "missing" || grout?.kind !== "given") return placement;
    const sum = (topOfConcrete.value + grout.value) as Length;
    return { ...placement, bottomOfPlate: given(sum, "top of concrete and grout") };
  });
  return { ...plan, placements };
}
