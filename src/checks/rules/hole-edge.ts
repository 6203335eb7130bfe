import { twiceEdgeWeb, twiceWeb } from "../../geometry/index.js";
import type { Hole, Plate, SizedPart } from "../../template/model.js";
import { isSized } from "../../template/model.js";
import { whyOff } from "../misfit.js";
import type { Rule } from "../model.js";
import { compare } from "../results.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Clear material from each hole to the plate's edge and to openings: true geometry, arcs included; for a ring both arcs. */
export const holeEdge: Rule<"hole-edge"> = {
  id: "hole-edge",
  plainName: "hole to edge of template",
  title: "clear material from a hole to the plate's edge or an opening >= the shop's least edge",
  severity: "stop",
  measured: "the clear material between a hole of the template and its edge",
  takes: PLATE,
  clause: ({ job }) => `least edge: ${job.shop.edge.from}`,
  edition: () => "shop",
  check(context) {
    const { job, plate } = context;
    const say = wordsIn(job.unit);
    return plate.holes.map((hole) => {
      const { part, to, twice } = nearestEdge(hole, plate);
      const why = hole.role === "rod" && twice < 0 ? whyOff(context, plate.region.outer, "template") : "";
      const note = `${say.full(twice)} clear from ${hole.tag} to ${to}; shop asks for ${say.length(job.shop.edge.value)}${why}`;
      return compare(hole.tag, twice, ">=", 2 * job.shop.edge.value, note, { chosen: isSized(plate, part) });
    });
  },
};

interface Edge {
  readonly part: SizedPart;
  readonly to: string;
  readonly twice: number;
}

function nearestEdge(hole: Hole, plate: Plate): Edge {
  const outer: Edge = {
    part: "outline",
    to: "the edge of the plate",
    twice: twiceEdgeWeb(hole.contour, plate.region.outer),
  };
  return plate.holes.reduce<Edge>((least, other) => {
    if (other.role !== "opening" || other === hole) return least;
    const twice = twiceWeb(hole.contour, other.contour);
    return twice < least.twice ? { part: "opening", to: `opening ${other.tag}`, twice } : least;
  }, outer);
}
