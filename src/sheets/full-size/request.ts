/** What a print at full size is drawn of. */
import type { Job } from "../../job/model/job.js";
import type { BoardFacts } from "../../summary/facts.js";
import type { OfficePaper } from "./tiling.js";

/** A board and the paper that it is printed on. */
export interface FullSizeRequest {
  readonly job: Pick<Job, "number" | "title" | "revision" | "status" | "date" | "unit">;
  readonly version: string;
  /** Drilled by what is glued on it. */
  readonly board: BoardFacts;
  /** Why it is held, a sentence each; empty where it is not. */
  readonly held: readonly string[];
  readonly released: boolean;
  readonly paper: OfficePaper;
}

/** In capitals, for every sheet: `HELD, NOT RELEASED`; "" where neither is. */
export function statusOf({ held, released }: Pick<FullSizeRequest, "held" | "released">): string {
  return [...(held.length > 0 ? ["HELD"] : []), ...(released ? [] : ["NOT RELEASED"])].join(", ");
}
