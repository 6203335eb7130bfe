/** Where on a drawing its rows are about: edges, the gap between a hole and an edge, what lies between two holes, names. */
import { nearestOnSegment } from "../../geometry/index.js";
import type { Edge, LiveFigures, LiveHole, LiveOutline, PaperBox } from "./figure-model.js";

/** A line on the paper of a drawing, millimetres, y up. */
export type PaperLine = LiveOutline["lines"][number];

/** What is lit of a drawing beside its holes. */
export interface LitPlaces {
  readonly edges: readonly LiveOutline[];
  readonly gaps: readonly PaperLine[];
  readonly names: readonly PaperBox[];
}

const EDGE_OF_RULE: Readonly<Record<string, Edge>> = {
  "hole-edge": "template",
  "base-plate-edge": "base plate",
  "washer-on-plate": "base plate",
  "rod-on-base-plate": "base plate",
  "rod-cover": "concrete",
  "rod-on-concrete": "concrete",
};

/** How an edge is named among what is pointed at. */
export function edgeSubject(edge: Edge): string {
  return `edge of the ${edge}`;
}

/** The edges that rows of one rule with these subjects are about. */
export function edgesOf(rule: string, subjects: readonly string[]): readonly string[] {
  const ofRule = EDGE_OF_RULE[rule];
  const edges = subjects.flatMap((subject) => ofRule ?? edgeOfSubject(subject) ?? []);
  return [...new Set(edges)].map(edgeSubject);
}

function edgeOfSubject(subject: string): Edge | null {
  if (subject === "base plate") return "base plate";
  return /^(plate|outline|template|(shorter|longer) side)(,|$)/.test(subject) ? "template" : null;
}

const NOTHING: LitPlaces = { edges: [], gaps: [], names: [] };

/** What is lit while these subjects are pointed at. */
export function litPlaces({ holes, outlines, names }: LiveFigures, subjects: readonly string[]): LitPlaces {
  if (subjects.length === 0) return NOTHING;
  const edges = outlines.filter(({ name }) => subjects.includes(edgeSubject(name)));
  const byTag = new Map(holes.map((hole) => [hole.tag, hole]));
  const own = subjects.flatMap((subject) => byTag.get(subject) ?? []);
  const toEdges = own.flatMap((hole) => edges.map(({ lines }) => gapToEdge(hole, lines)));
  const between = subjects.map((subject) => gapBetween(subject, byTag));
  const words = new Set(
    subjects.filter((subject) => !byTag.has(subject)).flatMap((subject) => subject.split(/[\s,]+/)),
  );
  return {
    edges,
    gaps: [...toEdges, ...between].filter((gap) => gap !== null),
    names: names.flatMap(({ words: name, box }) => (words.has(name) && !byTag.has(name) ? [box] : [])),
  };
}

/** From the rim of a hole to the nearest place of an edge. */
function gapToEdge({ box, isRound }: LiveHole, lines: readonly PaperLine[]): PaperLine | null {
  const center = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 };
  const [nearest] = lines
    .map(([x0, y0, x1, y1]) => nearestOnSegment(center, { from: { x: x0, y: y0 }, to: { x: x1, y: y1 }, bulge: 0 }))
    .sort((a, b) => a.distance - b.distance);
  const rim = isRound ? (box.x1 - box.x0) / 2 : 0;
  if (nearest === undefined || nearest.distance <= rim) return null;
  const { at, distance } = nearest;
  const [dx, dy] = [(at.x - center.x) / distance, (at.y - center.y) / distance];
  return [center.x + dx * rim, center.y + dy * rim, at.x, at.y];
}

/** Of `A1-A2`, also behind other words: from middle to middle. */
function gapBetween(subject: string, byTag: ReadonlyMap<string, LiveHole>): PaperLine | null {
  const [, first = "", second = ""] = /(?:^|\s)(\S+)-(\S+)$/.exec(subject) ?? [];
  const [a, b] = [byTag.get(first)?.box, byTag.get(second)?.box];
  if (a === undefined || b === undefined) return null;
  return [(a.x0 + a.x1) / 2, (a.y0 + a.y1) / 2, (b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
}
