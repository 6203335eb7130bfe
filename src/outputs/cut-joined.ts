/** The cut file for readers of today: R2000. */
import { writeJoinedDxf } from "../formats/cut-dxf-joined.js";
import { cutOutput } from "./cut-flavour.js";

/** One closed LWPOLYLINE a contour. */
export const cutJoined = cutOutput({
  kind: "cut-joined",
  title: "Cut file: one closed LWPOLYLINE a contour, holes as CIRCLE",
  ending: "joined",
  draws: "whole",
  write: writeJoinedDxf,
});
