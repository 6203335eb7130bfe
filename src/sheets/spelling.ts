/** Words that American and British English spell differently, as sheets letter them. */
import type { Editions } from "../job/model/job.js";

/** Upper case, as in headings and callouts. */
export interface Spelling {
  readonly center: "CENTER" | "CENTRE";
  readonly gauge: "GAGE" | "GAUGE";
  readonly leveling: "LEVELING" | "LEVELLING";
}

const AMERICAN: Spelling = { center: "CENTER", gauge: "GAGE", leveling: "LEVELING" };
const BRITISH: Spelling = { center: "CENTRE", gauge: "GAUGE", leveling: "LEVELLING" };

/** American where rods are placed by ACI, else British: sheets speak the English of their own rules. */
export function spellingOf({ placing }: Pick<Editions, "placing">): Spelling {
  return placing.startsWith("ACI") ? AMERICAN : BRITISH;
}
