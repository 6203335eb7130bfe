/** North arrows, each labelled as itself. */
import { formatBearing } from "../../units/bearing.js";
import { arrowHead, at, circle, group, line, stroke, text } from "../items.js";
import type { PaperPoint, SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, type Piece } from "../table.js";
import { textWidth, wrap } from "../text-metrics.js";
import type { PlanRequest } from "./request.js";

const RADIUS = 7;

/** Plan north and, where they are known, true north and the bearing on the site; words beside. */
export function northPiece(request: PlanRequest, width: number, lettering: Lettering): Piece {
  const { trueNorth } = request.plan.spec;
  const turns = [
    { word: "PLAN", turn: 0 },
    ...(trueNorth.kind === "given" ? [{ word: "TRUE", turn: trueNorth.value }] : []),
  ];
  const { small } = lettering;
  const each = Math.max(2 * RADIUS + 6, textWidth("NORTH", small, true) + 5);
  const words = northWords(request).flatMap((sentence) => wrap(sentence, width - turns.length * each - 2, small));
  const height = lettering.body * 2 + Math.max(2 * RADIUS + 2 * small + 9, words.length * small * 1.6 + 2);
  const draw = (x: number, top: number) => {
    const y = top - lettering.body * 2 - 3 - RADIUS;
    const arrows = turns.map(({ word, turn }, i) => northArrow(word, turn, at(x + (i + 0.5) * each, y), lettering));
    const left = x + turns.length * each + 2;
    const lines = words.map((line, i) =>
      text("note", line, at(left, top - lettering.body * 2 - (i + 1) * small * 1.6), small),
    );
    return group("north", [...headingItems("NORTH", x, top, width, lettering), ...arrows, ...lines]);
  };
  return { height, draw };
}

/** `turn`: degrees counter-clockwise from the top of the sheet. */
function northArrow(word: string, turn: number, center: PaperPoint, { small }: Lettering): SceneItem {
  const angle = ((90 + turn) * Math.PI) / 180;
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const tip = at(center.x + dx * RADIUS, center.y + dy * RADIUS);
  const tail = at(center.x - dx * RADIUS, center.y - dy * RADIUS);
  const under = center.y - RADIUS - 1.6 - small;
  return group(
    "north-arrow",
    [
      stroke("fine", circle(center, RADIUS * 0.62), line(tail, at(tip.x - dx * 4, tip.y - dy * 4))),
      arrowHead(tip, dx, dy, 5),
      text("label", word, at(center.x, under), small, { anchor: "middle", bold: true }),
      text("label", "NORTH", at(center.x, under - small * 1.45), small, { anchor: "middle", bold: true }),
    ],
    { word, turn },
  );
}

function northWords({ plan }: PlanRequest): readonly string[] {
  const { transform, spec } = plan;
  const bearing = (degrees: number) => formatBearing(degrees, spec.bearings);
  return [
    spec.trueNorth.kind === "given"
      ? `Plan north bears ${bearing(spec.trueNorth.value)} clockwise from true north.`
      : "True north is not given.",
    ...(transform === null
      ? ["No site coordinates are given."]
      : [
          `Plan north bears ${bearing(transform.bearing)} clockwise from site north (the grid of the coordinates).`,
          `Combined scale factor ${transform.scaleFactor}.`,
        ]),
  ];
}
