/** Contours that cross, touch or run over each other or themselves, found through a tree of boxes. */
import { BoxTree } from "./dxf-box-tree.js";
import type { CutContour, OpenStroke } from "./dxf-contours.js";
import type { FindingList } from "./dxf-findings.js";
import { type CutBox, type CutPoint, type CutSegment, circleBox, distance, segmentBox } from "./dxf-measures.js";
import { type Curve, curveOf, meetingsOf } from "./dxf-meetings.js";

/** Pairs of lines and arcs near each other that are looked at; beyond that the file says that not all were. */
const MOST_PAIRS = 5_000_000;
/** Pairs that are met, with those of marks among themselves, which are not compared. */
const MOST_MET = 4 * MOST_PAIRS;

/** Where two segments of one contour share an end, they may run beside each other for so many joint tolerances. */
const BESIDE_JOINT = 20;

interface Piece {
  readonly curve: Curve;
  readonly box: CutBox;
  /** Contours count up, strokes that are marks have -1. */
  readonly owner: number;
  readonly ends: readonly [CutPoint, CutPoint] | null;
}

/** What is cut, open strokes included, against itself and against the marks. `joint` in the file's unit. */
export function reportCrossings(
  cut: readonly CutContour[],
  leftOpen: readonly OpenStroke[],
  marks: readonly OpenStroke[],
  joint: number,
  findings: FindingList,
): void {
  const pieces: Piece[] = [];
  cut.forEach((contour, owner) => {
    if (contour.kind === "circle") pieces.push(circlePiece(contour, owner));
    else for (const segment of contour.segments) pieces.push(segmentPiece(segment, owner));
  });
  leftOpen.forEach(({ segments }, index) => {
    for (const segment of segments) pieces.push(segmentPiece(segment, cut.length + index));
  });
  for (const { segments } of marks) for (const segment of segments) pieces.push(segmentPiece(segment, -1));
  searchPairs(pieces, joint, findings);
}

function circlePiece({ x, y, diameter }: Extract<CutContour, { kind: "circle" }>, owner: number): Piece {
  const radius = diameter / 2;
  const curve: Curve = { kind: "round", center: { x, y }, radius, arc: null };
  return { curve, box: circleBox(x, y, radius), owner, ends: null };
}

function segmentPiece(segment: CutSegment, owner: number): Piece {
  return { curve: curveOf(segment), box: segmentBox(segment), owner, ends: [segment.from, segment.to] };
}

function searchPairs(pieces: readonly Piece[], joint: number, findings: FindingList): void {
  const tree = new BoxTree(pieces.map(({ box }) => box));
  let [pairs, met] = [0, 0];
  const goesOn = () => pairs <= MOST_PAIRS && met <= MOST_MET;
  for (let index = 0; index < pieces.length && goesOn(); index++) {
    const piece = pieces[index];
    if (piece === undefined) continue;
    tree.search(grown(piece.box, joint), (other) => {
      const against = pieces[other];
      met++;
      if (other <= index || against === undefined || (piece.owner === -1 && against.owner === -1)) return goesOn();
      judgePair(piece, against, joint, findings);
      pairs++;
      return goesOn();
    });
  }
  if (!goesOn()) {
    const message = "more lines and arcs lie near each other than are compared: not all crossings were looked for";
    findings.add("crossings-unsearched", "stop", message);
  }
}

function grown({ x0, y0, x1, y1 }: CutBox, by: number): CutBox {
  return { x0: x0 - by, y0: y0 - by, x1: x1 + by, y1: y1 + by };
}

function judgePair(a: Piece, b: Piece, joint: number, findings: FindingList): void {
  const isMark = a.owner === -1 || b.owner === -1;
  const shared = a.owner === b.owner ? sharedEnds(a, b, joint) : [];
  const meeting = meetingsOf(a.curve, b.curve, joint).find(
    ({ at, kind }) => kind === "overlap" || !shared.some((end) => distance(end, at) <= BESIDE_JOINT * joint),
  );
  if (meeting === undefined) return;
  const at = [meeting.at.x, meeting.at.y] as const;
  if (meeting.kind === "overlap") {
    findings.add("overlap", "stop", "lines or arcs run over each other: they would be cut twice", at);
  } else if (isMark) findings.add("mark-on-cut", "advise", "marks touch or cross what is cut", at);
  else if (a.owner === b.owner) findings.add("self-crossing", "stop", "contours cross or touch themselves", at);
  else findings.add("crossing", "stop", "contours cross or touch each other", at);
}

function sharedEnds(a: Piece, b: Piece, joint: number): readonly CutPoint[] {
  const [own, others] = [a.ends ?? [], b.ends ?? []];
  return own.filter((end) => others.some((other) => distance(end, other) <= joint));
}
