/** The cut file for older readers: R12. */
import { writeR12Dxf } from "../formats/cut-dxf-r12.js";
import { cutOutput } from "./cut-flavour.js";

/** A LINE or an ARC for each segment of a contour. */
export const cutR12 = cutOutput({
  kind: "cut-r12",
  title: "Cut file for older readers: LINE, ARC and CIRCLE",
  ending: "r12",
  draws: "pieces",
  write: writeR12Dxf,
});
