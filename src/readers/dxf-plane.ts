/** How an entity stands to the plane of the plate: extrusion direction, height, visibility. */
import type { FindingList } from "./dxf-findings.js";

/**
 * The side that an extrusion direction faces; null, with a finding, where it is not along z. Facing down, the object's x axis
 * is the world's -x (DXF reference, arbitrary axis algorithm).
 */
export function facing(
  { x, y, z }: { readonly x: number; readonly y: number; readonly z: number },
  type: string,
  findings: FindingList,
): "up" | "down" | null {
  if (x !== 0 || y !== 0 || z === 0 || Number.isNaN(z)) {
    findings.add("extrusion", "stop", `${type} with an extrusion direction that is not along z is not read`);
    return null;
  }
  if (z > 0) return "up";
  const message = `${type} is drawn from below (extrusion 0,0,-1) and read mirrored, as it must be; some controls do not mirror it`;
  findings.add("mirrored-extrusion", "advise", message);
  return "down";
}

/** A cut file is flat: what stands off the plane, or is hidden, is told. False where the entity cannot be read then. */
export function reportPlane(code: number, number: number, type: string, findings: FindingList): boolean {
  if (number === 0) return true;
  switch (code) {
    case 67:
      findings.add("paper-space", "advise", `${type} in paper space is not read`);
      return false;
    case 60:
      findings.add("invisible", "advise", `${type} is marked invisible`);
      return true;
    case 30:
    case 31:
    case 38:
      findings.add("elevation", "advise", `${type} does not lie at height zero; it is read as if it did`);
      return true;
    case 39:
      findings.add("thickness", "advise", `${type} has a thickness; it is read as a line`);
      return true;
    default:
      return true;
  }
}
