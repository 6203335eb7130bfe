/**
 * Plates to binary STL, against the usual way with JSCAD on the same plates: outline less holes by Boolean operations, the rest
 * drawn up, then its serializer. Both take the same chords, in turn in one process.
 */
import modeling from "@jscad/modeling";
import type { Geom2 } from "@jscad/modeling/src/geometries/types.js";
import serializer from "@jscad/stl-serializer";
import { checkAlone } from "../../src/checks/checked.js";
import { writeStl } from "../../src/formats/solid-stl.js";
import { flatRings } from "../../src/solids/flat-rings.js";
import { drawUp, PIECE_CHORD } from "../../src/solids/plate-solid.js";
import { openJob } from "../../src/tasks/open.js";
import type { Plate } from "../../src/template/model.js";
import { toMillimetres } from "../../src/units/length.js";
import { makeInputs } from "./jobs.js";
import { type Measure, timed } from "./measure.js";

const { booleans, extrusions, primitives } = modeling;

const PLATES = 25;
const ROUNDS = 3;

/** Ratio of the sums of some rounds, after one that only warms up; volumes of the two must agree. */
export function measureSolids(): readonly Measure[] {
  const plates = makePlates();
  const [own, other]: [number[], number[]] = [[], []];
  for (let round = 0; round <= ROUNDS; round += 1) {
    const ours = timed(() => plates.map(ownBytes));
    const theirs = timed(() => plates.map(booleanBytes));
    holdAgainst(ours.result, theirs.result);
    if (round === 0) continue;
    own.push(ours.milliseconds);
    other.push(theirs.milliseconds);
  }
  const [a, b] = [Math.min(...own), Math.min(...other)];
  const ratios = own.map((time, i) => (other[i] ?? Number.NaN) / time);
  const perSecond = (time: number) => `${((PLATES / time) * 1000).toFixed(1)} plates/s`;
  const spread = `${Math.min(...ratios).toFixed(1)} to ${Math.max(...ratios).toFixed(1)}`;
  return [
    {
      what: `plates to binary STL, ${PLATES} of five kinds, chords of ${PIECE_CHORD} mm`,
      value: perSecond(a),
      aim: "",
    },
    { what: "the same by subtract, extrude and serialize of JSCAD", value: perSecond(b), aim: "baseline" },
    {
      what: "times as many plates a second (least to most of the rounds)",
      value: `${(b / a).toFixed(1)} (${spread})`,
      aim: "at least 7",
    },
  ];
}

function makePlates(): readonly Plate[] {
  const opened = openJob(makeInputs(PLATES), { date: "2026-11-24" });
  if (!opened.ok) throw new Error("the job of the benchmark has faults");
  const { job, bases } = opened.value;
  return bases.map((base) => checkAlone(job, base).plate);
}

function ownBytes(plate: Plate): Uint8Array {
  const solid = drawUp(plate, PIECE_CHORD);
  if (solid === null) throw new Error(`${plate.mark} is no one thing`);
  return writeStl([solid], plate.mark);
}

function booleanBytes({ region, holes, thickness }: Plate): Uint8Array {
  const shape = (ring: readonly { readonly x: number; readonly y: number }[]): Geom2 =>
    primitives.polygon({ points: ring.map(({ x, y }): [number, number] => [x, y]) });
  const [outer = [], ...inner] = flatRings(
    region.outer,
    holes.map(({ contour }) => contour),
    PIECE_CHORD,
  );
  const flat = booleans.subtract(shape(outer), ...inner.map((ring) => shape(ring.toReversed())));
  const parts = serializer.serialize(
    { binary: true },
    extrusions.extrudeLinear({ height: toMillimetres(thickness) }, flat),
  );
  return Buffer.concat(parts.map((part: ArrayBuffer) => Buffer.from(part)));
}

function holdAgainst(ours: readonly Uint8Array[], theirs: readonly Uint8Array[]): void {
  ours.forEach((bytes, i) => {
    const [a, b] = [volumeOf(bytes), volumeOf(theirs[i] ?? bytes)];
    if (Math.abs(a - b) > 1e-3 * a) throw new Error(`volumes differ: ${a} and ${b} mm3`);
  });
}

/** By the divergence theorem, of triangles as they stand in the file. */
function volumeOf(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = (triangle: number, number: number) => view.getFloat32(96 + 50 * triangle + 4 * number, true);
  let six = 0;
  for (let t = 0; t < view.getUint32(80, true); t += 1) {
    const [x, y, z] = [0, 1, 2].map((axis) => [at(t, axis), at(t, 3 + axis), at(t, 6 + axis)] as const);
    if (x === undefined || y === undefined || z === undefined) continue;
    six += x[0] * (y[1] * z[2] - z[1] * y[2]) + y[0] * (z[1] * x[2] - x[1] * z[2]) + z[0] * (x[1] * y[2] - y[1] * x[2]);
  }
  return six / 6;
}
