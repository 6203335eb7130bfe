/** How a rod is made, by its ends. */
import type { Rod } from "../../job/model/job.js";
import type { Input } from "../../job/model/values.js";
import { given } from "../../job/model/values.js";
import type { RodKind } from "./model.js";

/** By what anchors it; a rod that is threaded in full is that, whatever holds its end, unless it is bent or swedged. */
export function kindOf({ bottom, bottomThread, fullThread }: Rod): Input<RodKind> {
  const end = bottom.kind === "given" ? bottom.value.kind : null;
  if (end === "hook") return given("hooked", "rods.bottom");
  if (end === "swedged") return given("swedged", "rods.bottom");
  if (fullThread) return given("full thread", "rods.threads");
  if (bottom.kind === "missing") return bottom;
  if (end === "nut") return given("headed with nut", "rods.bottom");
  if (end === "plate") return given("headed with plate", "rods.bottom");
  const threaded = bottomThread.kind === "given" && bottomThread.value > 0;
  return given(threaded ? "threaded both ends" : "threaded one end", "rods.bottom and rods.bottomThreads");
}
