/** A place on a template in words: by the compass where it always lies alike, else by the base's own axes. */
import { extentOf } from "../../geometry/index.js";
import type { Point } from "../../geometry/vocabulary.js";
import type { Plate } from "../../template/model.js";
import type { Facing } from "./places.js";

const COMPASS = ["east", "north-east", "north", "north-west", "west", "south-west", "south", "south-east"] as const;
const AXES = [
  "+X side",
  "+X +Y corner",
  "+Y side",
  "-X +Y corner",
  "-X side",
  "-X -Y corner",
  "-Y side",
  "+X -Y corner",
];

/** `north-east`, or `+X +Y corner`: the eighth of the plate, seen from its middle, in which the point lies. */
export function sideOf(at: Point, { region }: Pick<Plate, "region">, facing: Facing): string {
  const { x0, y0, x1, y1 } = extentOf(region.outer);
  const own = (Math.atan2((at.y - (y0 + y1) / 2) / (y1 - y0), (at.x - (x0 + x1) / 2) / (x1 - x0)) * 180) / Math.PI;
  if (facing.kind !== "alike") return AXES[eighth(own)] ?? "";
  const plain = (Math.atan2(at.y - (y0 + y1) / 2, at.x - (x0 + x1) / 2) * 180) / Math.PI;
  return COMPASS[eighth((facing.turn % 90 === 0 ? own : plain) + facing.turn)] ?? "";
}

function eighth(degrees: number): number {
  return ((Math.round(degrees / 45) % 8) + 8) % 8;
}
