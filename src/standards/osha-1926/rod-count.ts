/** 29 CFR 1926.755(a)(1): anchor rods of a column; 1926.751: what a post is. */
import type { StandardValue } from "../model.js";

/** Least number of anchor rods of a column. */
export const leastRods: StandardValue<number> = {
  edition: "29 CFR 1926",
  clause: "1926.755(a)(1)",
  value: 4,
  source: "29 CFR 1926.755 (secondary copy)",
  confidence: "high",
  note: "",
};

/** Which members are posts, in the project's own words; any other upright member is held as a column. */
export const postDefinition: StandardValue<string> = {
  edition: "29 CFR 1926",
  clause: "1926.751",
  value: "300 lb or less and axially loaded, or not axially loaded and held sideways by the member above",
  source: "OSHA interpretation letter, 17 September 2007, which quotes 1926.751",
  confidence: "high",
  note: "neither height nor load makes a post of a column",
};

/** What the rods of a column and their foundation resist; the program does not check it. */
export const columnAnchorage: StandardValue<string> = {
  edition: "29 CFR 1926",
  clause: "1926.755(a)(2)",
  value: "300 lb at 18 in from the column's outer face in each direction at its top",
  source: "29 CFR 1926.755 (secondary copy)",
  confidence: "high",
  note: "",
};
