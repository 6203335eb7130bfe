/** Joints of a template in segments: drawn on its plan with their splice plates, and where each runs in a table. */

import { toLattice } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { Joint, Mark, Parted, Plate } from "../template/model.js";
import { formatDegrees, formatLength, toMillimetres } from "../units/index.js";
import { circle, group, line, stroke, strokeOf, text } from "./items.js";
import { type Draft, hasRoom, put } from "./paper.js";
import { contourParts, onPaper, type View } from "./plan-shapes.js";
import { originName, type SheetRequest } from "./request.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import type { TableText } from "./table.js";
import { unitWord } from "./unit-word.js";

/** The lines of the joints, the splice plates over them and their bolts. */
export function jointItems(view: View, { parted }: Plate): readonly SceneItem[] {
  if (parted === null) return [];
  const radius = (toMillimetres(parted.bolt.value.hole.value) / 2) * view.scale;
  const splices = parted.joints.flatMap((joint) => joint.splices);
  const bolts = splices.flatMap((splice) => splice.bolts.map((bolt) => circle(onPaper(view, bolt), radius)));
  return [
    group("joints", [
      strokeOf(
        "outline",
        parted.joints.flatMap((joint) => linesOf(view, joint)),
      ),
      strokeOf(
        "fine",
        splices.flatMap(({ outline }) => contourParts(view, outline)),
      ),
      ...(bolts.length === 0 ? [] : [stroke("fine", ...bolts)]),
    ]),
  ];
}

/** A joint in its stretches of material: one a splice plate. */
function linesOf(view: View, { stretches }: Joint) {
  return stretches.map(({ from, to }) => line(onPaper(view, from), onPaper(view, to)));
}

/** How far a name stands off the end of its joint, paper millimetres. */
const OFF = [2, 3.5, 5, 7, 10] as const;

/** Names the joints beyond their ends, outside the plate or in its opening; one that finds no room stands in the table alone. Those of a segment stand where they are scribed. */
export function putJointNames(draft: Draft, view: View, { parted, marks }: Plate, letter: number): void {
  if (parted === null) {
    putScribedNames(draft, view, marks, letter);
    return;
  }
  for (const joint of parted.joints) {
    const item = nameOf(draft, view, joint, letter);
    if (item !== null) put(draft, group("joint-name", [item], { number: joint.number }));
  }
}

/** How far a name stands off where it is scribed, in letter heights. */
const SHIFTS = [0, 1, -1, 2, -2, 3, -3] as const;

function putScribedNames(draft: Draft, view: View, marks: readonly Mark[], letter: number): void {
  for (const { text: words, extent } of marks.filter(({ kind }) => kind === "joint")) {
    const middle = onPaper(view, { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 });
    const places = SHIFTS.flatMap((up) =>
      SHIFTS.map((aside) => ({ x: middle.x + aside * letter, y: middle.y + (up - 0.5) * letter })),
    );
    const item = places
      .map((place) => text("label", words, place, letter, { anchor: "middle", bold: true }))
      .find((each) => hasRoom(draft, each, 0.6));
    if (item !== undefined) put(draft, group("joint-name", [item]));
  }
}

function nameOf(draft: Draft, view: View, { number, from, to }: Joint, letter: number): SceneItem | null {
  const [start, end] = [onPaper(view, from), onPaper(view, to)];
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  const [dx, dy] = [(end.x - start.x) / length, (end.y - start.y) / length];
  for (const off of OFF)
    for (const [at, sign] of [
      [end, 1],
      [start, -1],
    ] as const) {
      for (const aside of [0, 1, -1]) {
        const item = nameAt(number, at, { x: sign * dx, y: sign * dy }, off, aside, letter);
        if (hasRoom(draft, item, 0.6)) return item;
      }
    }
  return null;
}

function nameAt(number: number, from: PaperPoint, way: Point, off: number, aside: number, letter: number) {
  const words = `J${number}`;
  const reach = off + letter * (0.5 + 0.5 * Math.abs(way.x));
  const x = from.x + way.x * reach - way.y * aside * letter * 1.4;
  const y = from.y + way.y * reach + way.x * aside * letter * 1.4;
  return text("label", words, { x, y: y - letter / 2 }, letter, { anchor: "middle", bold: true });
}

const NONE: ReadonlySet<number> = new Set();

/** Where each joint runs, what it joins and with which splice plates; null for a plate of one piece. */
export function jointTable({ plate: { parted }, job, piece }: SheetRequest): TableText | null {
  if (parted === null) return null;
  const isRadial = parted.joints.every(({ degrees }) => degrees !== null);
  const axis = isAlongX(parted) ? "X" : "Y";
  return {
    name: "joint-table",
    heading: `JOINTS (GAP 0${isRadial ? "" : `, ${unitWord(job.unit)} FROM ${originName(piece)}`})`,
    columns: [
      { title: "JOINT", share: 0.13, align: "start" },
      { title: isRadial ? "ANGLE" : axis, share: 0.17, align: "end" },
      { title: "BETWEEN", share: 0.38, align: "end" },
      { title: "SPLICES", share: 0.32, align: "end" },
    ],
    rows: parted.joints.map((joint) => [
      `J${joint.number}`,
      joint.degrees === null
        ? formatLength(toLattice(axis === "X" ? joint.from.x : joint.from.y), job.unit)
        : formatDegrees(joint.degrees),
      joint.between.join(", "),
      spliceWords(joint),
    ]),
    foot: isRadial ? ["ANGLES COUNTER-CLOCKWISE FROM +X"] : [],
    under: [],
    strong: NONE,
  };
}

function isAlongX({ joints }: Parted): boolean {
  return joints.every(({ from, to }) => from.x === to.x);
}

/** `T1-SP`, or `2 T1-SP`. */
function spliceWords({ splices }: Joint): string {
  const counts = new Map<string, number>();
  for (const { mark } of splices) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return [...counts].map(([mark, count]) => (count === 1 ? mark : `${count} ${mark}`)).join(", ");
}
