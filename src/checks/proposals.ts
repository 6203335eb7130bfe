/**
 * What is asked of the engineer of record beside the figures: ways that the trade would offer, for the engineer to choose
 * among or to turn down. Common practice. Nothing here says that a way would be acceptable.
 */

/** By rule; a rule that is not named is asked without a list of ways. Each is an infinitive clause, as said after "or give". */
const WAYS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    "base-plate-hole": [
      "the hole diameter that is required",
      "holes to the table",
      "plate washers for the hole as drawn",
    ],
    "base-plate-edge": [
      "a larger base plate",
      "rods farther from the edge",
      "the edge distance that is required, with its basis",
    ],
    "base-plate-web": [
      "rods farther apart",
      "smaller holes in the base plate",
      "the distance that is required, with its basis",
    ],
    "base-plate-grout-hole": ["size and place of a grout or air hole", "another way of grouting"],
    "washer-cover": [
      "a larger plate washer, with its size and thickness",
      "a smaller hole in the base plate",
      "washers welded to the base plate, with the weld",
    ],
    "washer-on-plate": ["a smaller or cut washer, with its size", "rods farther from the edge", "a larger base plate"],
    "washer-room": [
      "smaller washers, with their size",
      "one plate over several rods, with its size",
      "rods farther apart",
    ],
    "placing-clearance": [
      "a larger hole in the base plate, with its washer",
      "a closer placing tolerance, in writing to the field",
      "rods of the next size down",
    ],
    "rod-spacing": [
      "rods farther apart",
      "the spacing that is required, with its basis",
      "anchorage design that covers the spacing as drawn",
    ],
    "rod-cover": ["larger concrete", "rods farther in", "a smaller nut or plate at the bottom of the rods"],
    "rod-on-base-plate": ["the rod pattern that is required", "the size and place of the base plate that is required"],
    "rod-on-concrete": ["the rod pattern that is required", "the size and place of the concrete that is required"],
    projection: [
      "the projection that is required",
      "the thread length that is required",
      "the grout and plate thickness that hold",
    ],
    "grout-gap": ["the grout thickness that is required", "another way of levelling the base plate"],
    "rod-count": ["a base of four rods or more", "that the member is a post, by its weight and load"],
    "rod-length": ["the whole rod length that is required", "the embedment or projection that is required"],
    "rod-grade": ["the grade and supplement that are required", "another way of fixing than by welding"],
    "neighbour-rods": ["the places of the bases that are required", "the rod patterns that are required"],
    "neighbour-concrete": ["the concrete outlines that are required", "one footing for both bases"],
    "base-off-grid": ["the place of the base on the grid"],
    "base-turn": ["which way the base is turned"],
    "elevation-range": ["the elevation that is required"],
    "plate-elevation": ["the elevation of concrete and of the bottom of the base plate"],
  }),
);

/** What could be given instead, as noun phrases; none where the trade has no usual list. */
export function usualWays(rule: string): readonly string[] {
  return WAYS.get(rule) ?? [];
}

/** The request of a question, whole: never that something would be acceptable. */
export function requestWords(rule: string): string {
  const ways = usualWays(rule);
  const given = ways.length === 0 ? "what is required" : `what is required: ${ways.join("; or ")}; or other`;
  return `Please confirm that the detail stands as drawn, with its basis, or give ${given}.`;
}
