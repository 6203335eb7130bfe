/**
 * Solids as binary STL, through the geometry of JSCAD and its serializer. STL has no unit: millimetres, single precision, and
 * the head of 80 bytes says so. The serializer's front door joins and turns corners that lie near each other, so that sizes
 * are not exact any more; what it writes bytes with takes triangles as they are.
 */
import geometries from "@jscad/modeling/src/geometries/index.js";
import stl from "@jscad/stl-serializer/CSGToStlb.js";
import type { Solid } from "../solids/model.js";

const HEAD = 80;

/** All shells in one file; `about` stands in its head, in ASCII, cut to what there is room for. */
export function writeStl(solids: readonly Solid[], about: string): Uint8Array {
  const [, ...parts] = stl.serializeBinary(solids.map(geometryOf), {});
  const bytes = new Uint8Array(parts.reduce((size, { byteLength }) => size + byteLength, HEAD));
  bytes.set(headOf(about));
  let at = HEAD;
  for (const part of parts) {
    bytes.set(new Uint8Array(part), at);
    at += part.byteLength;
  }
  return bytes;
}

/** Readers take a file that begins with `solid` for text. */
function headOf(about: string): Uint8Array {
  const words = `STL, millimetres; ${about}`.replace(/[^\x20-\x7E]/g, "?").padEnd(HEAD);
  return new TextEncoder().encode(words.slice(0, HEAD));
}

/** Corners are shared: the serializer only reads them. */
function geometryOf({ corners, triangles }: Solid) {
  const points = corners.map(([x, y, z]): [number, number, number] => [x, y, z]);
  const place = (corner: number): [number, number, number] => points[corner] ?? [0, 0, 0];
  return geometries.geom3.create(triangles.map(([a, b, c]) => geometries.poly3.create([place(a), place(b), place(c)])));
}
