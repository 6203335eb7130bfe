/** The plan of a job: grid, placements, control points and north, read together and held against the bases. */
import type { Finding } from "../../diagnostics/finding.js";
import { hasErrors, placeWords } from "../../diagnostics/finding.js";
import { listed } from "../../diagnostics/listed.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { openTables, readPlacements } from "../../schedule/index.js";
import { type BearingForm, bearingFormOf } from "../../units/bearing.js";
import type { SurveyUnit, Unit } from "../../units/index.js";
import { add, parseCount, SURVEY_UNITS } from "../../units/index.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt, joinPath } from "../document.js";
import type { Base } from "../model/job.js";
import { given, optional } from "../model/job.js";
import type { ControlPoint, GridLine, PlanSpec } from "../model/plan.js";
import { heightOfBasePlate, originOfBasePlateBottom } from "../model/stack.js";
import { parseForgiving } from "../schema/forgiving.js";
import type { PlanSchemas, SettingOutDocument, SiteDocument } from "../schema/plan.js";
import { PLACEMENTS, PLAN_KEYS, planSchemas, tableChoice } from "../schema/plan.js";
import type { WrittenControl } from "./control.js";
import { resolveControl, resolveTransform } from "./control.js";
import { resolveGrid } from "./grid.js";
import type { JobSources } from "./job-sources.js";
import type { NamedTable } from "./named-table.js";
import { besideTable, namedTable } from "./named-table.js";
import type { WrittenPlacement } from "./placements.js";
import { resolvePlacements } from "./placements.js";

/** What the plan is read from. */
export interface PlanSources extends JobSources {
  /** Every base as written. */
  readonly bases: readonly SourceDocument[];
}

/** Reads the plan, null where the job has none or its faults leave none; every fault is told. */
export function readPlan(sources: PlanSources): WithFindings<PlanSpec | null> {
  const { document } = sources;
  const written = PLAN_KEYS.filter((key) => findNode(document.root, key) !== undefined);
  if (written.length === 0) return { value: null, findings: [] };
  const parts = parseParts(sources);
  const plan = assemble(parts, sources);
  const findings = [...wholeFaults(written, document), ...parts.findings, ...plan.findings];
  return { value: hasErrors(findings) ? null : plan.value, findings };
}

/** A plan needs its grid and its bases; the rest is for them. */
function wholeFaults(written: readonly string[], document: SourceDocument): readonly Finding[] {
  const lacks = ["grid", "placements"].filter((key) => !written.includes(key));
  const message = `is required beside ${written.join(", ")}; a layout has a grid and placements`;
  return lacks.map((key) => faultAt(document, [key], "required", message));
}

interface Parts {
  readonly grid: Parsed<PlanSchemas["grid"]["_output"]>;
  readonly placements: { readonly whole: boolean; readonly written: readonly WrittenPlacement[] };
  readonly control: { readonly whole: boolean; readonly written: readonly WrittenControl[] };
  readonly site: SiteDocument | null;
  readonly settingOut: SettingOutDocument | null;
  readonly findings: readonly Finding[];
}

interface Parsed<T> extends WithFindings<T | null> {
  /** False where a part was refused: what hangs on it is then not judged. */
  readonly whole: boolean;
}

function parseParts(sources: PlanSources): Parts {
  const { document, unit } = sources;
  const surveyUnit = surveyUnitOf(document.root);
  const schemas = planSchemas(unit, surveyUnit);
  const part = (key: (typeof PLAN_KEYS)[number]) => partOf(document, key);
  const settingOut = parsePart(schemas.settingOut, part("settingOut"));
  const control = parseItems(schemas.control, itemsOf(document, "control", "a list of control points"));
  const site = parsePart(schemas.site, part("site"));
  const placements = parseItems(schemas.placement, placementDocuments(sources));
  const grid = parsePart(schemas.grid, part("grid"));
  return {
    grid,
    placements: {
      whole: placements.whole,
      written: placements.value.map(({ document: at, value }) => ({ document: at, placement: value })),
    },
    control: {
      whole: control.whole,
      written: control.value.map(({ document: at, value }) => ({ document: at, control: value })),
    },
    site: site.value,
    settingOut: settingOut.value,
    findings: [settingOut, control, site, placements, grid].flatMap(({ findings }) => findings),
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
): Parsed<Schema["_output"]> {
  if (document === null) return { value: null, whole: true, findings: [] };
  const { data, pruned, findings } = parseForgiving(schema, document, {});
  return { value: data, whole: !pruned, findings };
}

interface Item<T> {
  readonly document: SourceDocument;
  readonly value: T;
}

/** The documents of a list; not whole where there is no list, or some of its cells were refused. */
interface Listed extends WithFindings<readonly SourceDocument[]> {
  readonly whole: boolean;
}

/** Items that were refused are left out, and the list is then not whole. */
function parseItems<Schema extends Parameters<typeof parseForgiving>[0]>(
  schema: Schema,
  list: Listed,
): WithFindings<readonly Item<Schema["_output"]>[]> & { readonly whole: boolean } {
  const parsed = list.value.map((document) => ({ document, ...parsePart(schema, document) }));
  const items = parsed.flatMap(({ document, value, whole }) => (whole && value !== null ? [{ document, value }] : []));
  const findings = [...list.findings, ...parsed.flatMap((part) => part.findings)];
  return { value: items, whole: list.whole && items.length === parsed.length, findings };
}

function noList(findings: readonly Finding[]): Listed {
  return { value: [], whole: false, findings };
}

/** One document an item of a list. */
function itemsOf(document: SourceDocument, key: string, allowed: string): Listed {
  const node = findNode(document.root, key);
  if (node === undefined) return { value: [], whole: true, findings: [] };
  if (node.kind !== "list") return noList([faultAt(document, [key], "bad-value", `is no list; allowed is ${allowed}`)]);
  const value = node.items.map((root, index) => ({ root, path: joinPath(key, [index]), nameOf: () => null }));
  return { value, whole: true, findings: [] };
}

function placementDocuments(sources: PlanSources): Listed {
  const { document } = sources;
  const node = findNode(document.root, "placements");
  if (node === undefined || node.kind === "list") return itemsOf(document, "placements", PLACEMENTS);
  const part: SourceDocument = { root: node, path: "placements", nameOf: () => null };
  const { value, whole, findings } = parsePart(tableChoice(PLACEMENTS), part);
  return value === null || !whole ? noList(findings) : listedPlacements(namedTable(node), sources);
}

/** Name under which the inputs hold a sheet: a workbook may hold bases and placements. */
export function tableName(file: string, sheet: string | undefined): string {
  return sheet === undefined ? file : `${file}#${sheet}`;
}

function listedPlacements({ file: name, answers }: NamedTable, { document, inputs, unit }: PlanSources): Listed {
  const { sheet } = answers;
  const fault = (code: string, message: string) => faultAt(document, ["placements"], code, message);
  const file = inputs.files.get(tableName(name, sheet)) ?? inputs.files.get(name);
  if (file === undefined)
    return noList([
      fault("missing-file", `there is no placement list ${name}; allowed is a CSV or XLSX file beside the job file`),
    ]);
  const tables = openTables(file, name, sheet);
  if (!tables.ok) return noList(tables.findings);
  const { answersAt } = besideTable(document, "placements");
  const { placements, headingOf, findings } = readPlacements(tables.value, name, unit, answers, answersAt);
  const empty =
    placements.length === 0 && !hasErrors(findings)
      ? [fault("empty-list", `${name} has no row under its headings; allowed is one or more`)]
      : [];
  return {
    value: placements.map((root) => ({ root, path: "", nameOf: headingOf })),
    whole: !hasErrors(findings) && placements.length > 0,
    findings: [...tables.findings, ...findings, ...empty],
  };
}

function assemble(parts: Parts, sources: PlanSources): WithFindings<PlanSpec> {
  const { document, unit } = sources;
  const { site, settingOut } = parts;
  const grid = gridLines(parts.grid, partOf(document, "grid"), unit);
  const isWhole = parts.grid.whole && grid.value.length >= 2 && grid.findings.length === 0;
  const byName = isWhole ? new Map(grid.value.map((line) => [line.name, line])) : null;
  const placements = placeBases(parts, byName, sources);
  const control = resolveControl(
    parts.control.written,
    byName ?? new Map<string, GridLine>(),
    site?.origin ?? null,
    unit,
  );
  const transform = transformOf(parts, control.value, byName !== null, sources);
  const value: PlanSpec = {
    lines: grid.value,
    placements: placements.value,
    control: control.value,
    trueNorth: optional(site?.trueNorth, "site.trueNorth", "true north is not given"),
    bearings: bearingsOf(document.root),
    transform: transform.value,
    scaleFactor: site?.scaleFactor === undefined ? given(1, "default 1") : given(site.scaleFactor, "job"),
    controlTolerance: optional(site?.tolerance, "site.tolerance", "the job names no tolerance of the control points"),
    settingOut: { order: settingOut?.order ?? "PNEZD", unit: settingOut?.unit ?? (unit === "in" ? "ft" : "m") },
  };
  const told = [grid, placements, control, transform].flatMap(({ findings }) => findings);
  return { value, findings: [...told, ...settingOutFaults(parts, control.value, document)] };
}

/** Sexagesimal where any bearing of the job is written so. */
function bearingsOf(root: SourceNode): BearingForm {
  const nodes = [findNode(root, "site", "trueNorth"), findNode(root, "site", "origin", "bearing")];
  const isSexagesimal = nodes.some((node) => node?.kind === "scalar" && bearingFormOf(node.text) === "sexagesimal");
  return isSexagesimal ? "sexagesimal" : "decimal";
}

/** The placements, held against the bases' quantities where nothing was refused that would falsify the count. */
function placeBases(
  parts: Parts,
  lines: ReadonlyMap<string, GridLine> | null,
  { document, bases, unit }: PlanSources,
): WithFindings<PlanSpec["placements"]> {
  const marks = marksOf(bases);
  const ground = { lines, marks: marks.map(({ mark }) => mark), site: parts.site };
  const placed = resolvePlacements(parts.placements.written, ground, unit);
  const keepsCount = placed.findings.every(({ code }) => KEEPS_COUNT.has(code));
  const node = findNode(document.root, "placements");
  if (lines === null || node === undefined || !parts.placements.whole || !keepsCount) return placed;
  return { value: placed.value, findings: [...placed.findings, ...countFaults(marks, placed.value, node)] };
}

/** The way to the site is judged where no part of it was refused. */
function transformOf(
  { control, site }: Parts,
  points: readonly ControlPoint[],
  isGridWhole: boolean,
  { document, unit }: PlanSources,
): WithFindings<PlanSpec["transform"]> {
  const places = { root: document, site: partOf(document, "site") ?? document };
  const isWhole = control.whole && (isGridWhole || site?.origin !== undefined);
  return isWhole ? resolveTransform(site, points, places, unit) : { value: { kind: "none" }, findings: [] };
}

/** Which foot it is must be said where site coordinates are given. */
function settingOutFaults(
  { settingOut, site }: Parts,
  control: readonly ControlPoint[],
  document: SourceDocument,
): readonly Finding[] {
  if (settingOut?.unit !== undefined || (control.length === 0 && site?.origin === undefined)) return [];
  const message = `is required beside ${site?.origin === undefined ? "control" : "site.origin"}; allowed is m, mm, ft (international) or ft-us (US survey): which foot it is makes 2 ft in a million`;
  return [faultAt(document, ["settingOut", "unit"], "required", message)];
}

/** Of a grid that lost a part, only the faults that the part could not have made up. */
function gridLines(
  grid: Parts["grid"],
  document: SourceDocument | null,
  unit: Unit,
): WithFindings<readonly GridLine[]> {
  if (grid.value === null || document === null) return { value: [], findings: [] };
  const { value, findings } = resolveGrid(grid.value, document, unit);
  return { value, findings: findings.filter(({ code }) => grid.whole || code === "line-twice") };
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
function countFaults(
  marks: readonly WrittenMark[],
  placements: PlanSpec["placements"],
  { place }: SourceNode,
): readonly Finding[] {
  const counts = countPlacements(placements);
  const list = ` (placements at ${placeWords(place)})`;
  return marks.flatMap(({ mark, document, quantity }) => {
    const count = counts.get(mark) ?? 0;
    if (count === 0) {
      const message = `"${mark}" is placed nowhere${list}; every base of a job with placements stands somewhere`;
      return [faultAt(document, ["mark"], "not-placed", message)];
    }
    if (quantity === null || quantity === count) return [];
    const where = placesOf(placements.filter((placement) => placement.mark === mark));
    const message = `is ${quantity}, but ${count} of ${mark} ${count === 1 ? "is" : "are"} placed (${where}); allowed is as many as are placed`;
    return [faultAt(document, ["quantity"], "count", message)];
  });
}

/** The places of a few placements, each once: one item of a job file may place several. */
function placesOf(placements: PlanSpec["placements"]): string {
  return listed([...new Set(placements.map(({ place }) => placeWords(place)))], 4);
}

/** How often each mark is placed. */
export function countPlacements(placements: PlanSpec["placements"]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { mark } of placements) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return counts;
}

/** The plan with what its bases add: the bottom of a base plate stands on the concrete, the grout and a setting plate that stays. */
export function withPlateBottoms(plan: PlanSpec, bases: readonly Base[]): PlanSpec {
  const byMark = new Map(bases.map((base) => [base.mark, base]));
  const placements = plan.placements.map((placement) => {
    const { topOfConcrete, bottomOfPlate, mark } = placement;
    const base = byMark.get(mark);
    if (bottomOfPlate.kind === "given" || topOfConcrete.kind === "missing" || base === undefined) return placement;
    const height = heightOfBasePlate(base);
    if (height.kind === "missing") return placement;
    const bottom = given(add(topOfConcrete.value, height.value), originOfBasePlateBottom(base));
    return { ...placement, bottomOfPlate: bottom };
  });
  return { ...plan, placements };
}
