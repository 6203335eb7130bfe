/** Points that a plan must show beside its bases: control points, and the centres of radial lines and arcs. Plan millimetres. */
import { type Point, pointAt, toLattice } from "../../geometry/index.js";
import type { GridLine, Offset } from "../../job/index.js";
import { siteToPlan } from "../../plan/index.js";
import { COORDINATE_PLACES, formatCoordinate } from "../../units/coordinate.js";
import { type Length, nanometres, type Unit } from "../../units/index.js";
import { spellingOf } from "../spelling.js";
import { distanceFrom, sideWord } from "./grid.js";
import { planLength } from "./lengths.js";
import type { PlanRequest } from "./request.js";
import type { Arrangement, Tile } from "./tiles.js";

/** A distance of a point from a line of the building's own axes. */
export interface PointDistance {
  readonly line: Extract<GridLine, { kind: "x" | "y" }>;
  readonly distance: Length;
}

/** A point, its name, its distances from two lines, and the words of both. */
export interface PlanPoint {
  readonly kind: "control" | "center";
  readonly name: string;
  readonly point: Point;
  readonly distances: readonly PointDistance[];
  readonly words: readonly string[];
  /** Lines that run from the point or around it. */
  readonly locates: readonly string[];
}

/** Each point on one sheet; `untied`: control points whose place on the plan is not known. */
export interface PointsOfTiles {
  of(tile: Tile): readonly PlanPoint[];
  readonly untied: readonly string[];
}

/** Every point goes to the part in which it lies, else to the nearest one. */
export function pointsOfTiles(request: PlanRequest, { tiles }: Arrangement): PointsOfTiles {
  const control = controlPoints(request);
  const byTile = new Map<Tile, PlanPoint[]>();
  for (const point of [...centers(request), ...control.points]) {
    const tile = nearestTile(tiles, point.point);
    if (tile === undefined) continue;
    const own = byTile.get(tile);
    if (own === undefined) byTile.set(tile, [point]);
    else own.push(point);
  }
  return { of: (tile) => byTile.get(tile) ?? [], untied: control.untied };
}

function nearestTile(tiles: readonly Tile[], { x, y }: Point): Tile | undefined {
  const away = ({ window: { x0, y0, x1, y1 } }: Tile) =>
    Math.hypot(Math.max(x0 - x, 0, x - x1), Math.max(y0 - y, 0, y - y1));
  return tiles.reduce<Tile | undefined>(
    (best, tile) => (best === undefined || away(tile) < away(best) ? tile : best),
    undefined,
  );
}

function controlPoints(request: PlanRequest): {
  readonly points: readonly PlanPoint[];
  readonly untied: readonly string[];
} {
  const { plan, job } = request;
  const { unit } = plan.spec.settingOut;
  const figure = (length: Length) => formatCoordinate(length, unit, COORDINATE_PLACES[unit]);
  const all = plan.control.map(({ name, plan: own, northing, easting }) => {
    const site = plan.transform === null ? null : siteToPlan(plan.transform, { northing, easting });
    const point = own.kind === "given" ? pointAt(own.value.x, own.value.y) : site;
    if (point === null) return { name, point: null };
    const distances = distancesOf(plan.spec.lines, point);
    const words =
      distances.length === 2
        ? distances.map((each) => distanceWords(each, job.unit))
        : [`N ${figure(northing)}`, `E ${figure(easting)}`];
    return { name, point: { kind: "control", name, point, distances, words, locates: [] } as const };
  });
  return {
    points: all.flatMap(({ point }) => (point === null ? [] : [point])),
    untied: all.filter(({ point }) => point === null).map(({ name }) => name),
  };
}

/** From the nearest x line and the nearest y line. */
function distancesOf(lines: readonly GridLine[], at: Point): readonly PointDistance[] {
  return (["x", "y"] as const).flatMap((kind) => {
    const own = lines
      .flatMap((line) => (line.kind === kind ? [line] : []))
      .map((line): PointDistance => ({ line, distance: nanometres(toLattice(distanceFrom(line, at))) }));
    return own.toSorted((a, b) => Math.abs(a.distance) - Math.abs(b.distance)).slice(0, 1);
  });
}

/** `12: 40'-0" E`; `ON LINE A`. */
function distanceWords({ line, distance }: PointDistance, unit: Unit): string {
  if (Math.abs(distance) <= NOISE) return `ON LINE ${line.name}`;
  return `${line.name}: ${planLength(Math.abs(distance), unit)} ${sideWord(line, distance)}`;
}

/** Sites are tied to a few nanometres. */
export const NOISE = 5;

/** One for each centre of radial lines or arcs. */
function centers({ plan, job }: PlanRequest): readonly PlanPoint[] {
  const { center: word } = spellingOf(job.editions);
  const families = new Map<string, { at: Offset; names: string[]; rays: string[]; arcs: string[] }>();
  for (const line of plan.spec.lines) {
    if (line.kind !== "radial" && line.kind !== "arc") continue;
    const key = `${line.center.x} ${line.center.y}`;
    const family = families.get(key) ?? { at: line.center, names: [], rays: [], arcs: [] };
    families.set(key, family);
    family.names.push(line.name);
    (line.kind === "radial" ? family.rays : family.arcs).push(line.name);
  }
  const first = [...families.values()][0];
  return [...families.values()].map((family) => {
    const point = pointAt(family.at.x, family.at.y);
    const distances = distancesOf(plan.spec.lines, point);
    const own = distances.map((each) => distanceWords(each, job.unit));
    const words =
      distances.length === 2 ? own : [...own, ...fromFirst(family.at, first?.at ?? family.at, job.unit, distances)];
    return {
      kind: "center",
      name: `${word} OF ${[family.rays, family.arcs]
        .map(namesWords)
        .filter((words) => words !== "")
        .join(", ")}`,
      point,
      distances,
      words,
      locates: family.names,
    };
  });
}

/** Without lines of both axes: from the first centre, itself where plan 0,0 is. */
function fromFirst(at: Offset, first: Offset, unit: Unit, known: readonly PointDistance[]): readonly string[] {
  const axes = (["x", "y"] as const).filter((axis) => known.every(({ line }) => line.kind !== axis));
  const isFirst = at === first;
  return axes.map((axis) => {
    const [from, value] = isFirst ? ["PLAN 0,0", at[axis]] : [`FIRST ${axis.toUpperCase()}`, at[axis] - first[axis]];
    const side = axis === "x" ? (value > 0 ? " E" : " W") : value > 0 ? " N" : " S";
    return `${axis.toUpperCase()} FROM ${from}: ${planLength(Math.abs(value), unit)}${value === 0 ? "" : side}`;
  });
}

/** `K1 TO K5`, `K1, K2`. */
function namesWords(names: readonly string[]): string {
  return names.length > 3 ? `${names[0]} TO ${names.at(-1)}` : names.join(", ");
}
