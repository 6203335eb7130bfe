/** Plane geometry with true arcs: points on the 1 nm lattice, segments, contours, regions; measures and distances. */
export * from "./contour.js";
export type { CornerFault, CornerTreatment } from "./corner.js";
export { cornerFaults, treatCorner } from "./corner.js";
export { crossings } from "./crossing.js";
export * from "./distance.js";
export * from "./extent.js";
export * from "./flatten.js";
export * from "./measure.js";
export * from "./move.js";
export * from "./partition.js";
export * from "./point.js";
export * from "./section.js";
export * from "./segment.js";
export * from "./stroke.js";
export * from "./turn.js";
export * from "./validity.js";
export type * from "./vocabulary.js";
