/** What may not collide on any sheet. */
import { type Collision, findCollisions, type Scene } from "../../../src/sheets/index.js";

/** Kinds that are not held on every sheet: lines of dimensions are drawn before leaders, which cross them where nothing else is left. */
const AVOIDED: ReadonlySet<Collision["kind"]> = new Set(["leader on line"]);

/** Collisions that no sheet has. */
export function collisionsOf(scene: Scene): readonly Collision[] {
  return findCollisions(scene).filter(({ kind }) => !AVOIDED.has(kind));
}
