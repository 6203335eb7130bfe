/** The package in machine form. */
import { sealEnd } from "../formats/seal.js";
import { writeSummaryBase, writeSummaryHead, writeSummaryTail } from "../formats/summary-json.js";
import type { GrowingOutput } from "./model.js";

/** Ends last: it lists every other file. */
export const summary: GrowingOutput<"summary"> = {
  scope: "job, base by base",
  kind: "summary",
  role: "document",
  title: "The package in machine form, with the size and hash of every other file",
  drawn: false,
  path: "summary.json",
  listsOthers: true,
  head: writeSummaryHead,
  base: (made, isFirst) => writeSummaryBase(made.summary, isFirst),
  end: (rest) => writeSummaryTail({ ...rest, questions: rest.everyQuestion }),
  seal: sealEnd,
};
