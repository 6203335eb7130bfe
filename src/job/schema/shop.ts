/** The shop file as a schema: how a shop cuts and what it asks for. */
import * as z from "zod";
import { keys, leaf, lengthLeaf, ratioLeaf, rows, textLeaf, wordLeaf } from "../../leaves/leaves.js";
import { steelDensities } from "../../standards/index.js";
import type { Unit } from "../../units/index.js";
import type { Density } from "../model/job.js";
import { CUT_FLAVOURS, CUT_NAME_PARTS } from "../model/job.js";
import { rodShopBlock } from "./rod-shop.js";
import { ratesBlock } from "./rod-stock.js";

/** The schema of a shop file whose bare numbers are in `unit`. */
export function shopSchema(unit: Unit) {
  return keys(
    {
      units: wordLeaf(["in", "mm"], "Unit of every number that carries none."),
      process: wordLeaf(
        ["plasma", "laser", "oxyfuel", "waterjet", "drill"],
        "How holes are made; drill: a drill list, no cut file.",
      ),
      cut: cutBlock(unit),
      smallest: smallestBlock(unit),
      distances: distancesBlock(unit),
      table: tableBlock(unit).optional(),
      thicknesses: thicknessesChoice(unit).optional(),
      templateWasher: washerBlock(unit).optional(),
      density: densityBlock().optional(),
      marking: markingBlock(unit),
      cutFile: cutFileBlock(),
      splice: spliceBlock().optional(),
      rodShop: rodShopBlock(unit).optional(),
      rates: ratesBlock().optional(),
      grades: z
        .array(gradeBlock(), { error: () => "a list of grades: name, nut" })
        .describe("Grades beside those of F1554 and ISO 898-1.")
        .optional(),
    },
    "A shop.",
  );
}

/** A shop file as written, once its schema has read it; what is resolved and defaulted comes later. */
export type ShopDocument = z.output<ReturnType<typeof shopSchema>>;

/** An ISO 9013 class or range by its number, or the shop's own length on the diameter. */
function accuracyLeaf<Numbers extends number>(
  word: "class" | "range",
  numbers: readonly Numbers[],
  unit: Unit,
  what: string,
) {
  const named = new RegExp(`^iso ?9013,? ${word} ?(\\d)$`, "i");
  const allowed = `ISO 9013 ${word} ${numbers.join(", ")}, or a length`;
  return z.union(
    [
      leaf<{ readonly kind: "iso9013"; readonly number: Numbers }>(allowed, what, (text) => {
        const number = numbers.find((one) => String(one) === named.exec(text.trim())?.[1]);
        return number === undefined
          ? { ok: false, message: `"${text}" is not ${allowed}` }
          : { ok: true, value: { kind: "iso9013", number } };
      }),
      lengthLeaf(unit, "zero or above", what),
    ],
    { error: () => allowed },
  );
}

function cutBlock(unit: Unit) {
  return keys(
    {
      deviation: accuracyLeaf("class", [1, 2] as const, unit, "How far a cut hole's diameter may be off.").describe(
        "How far a cut hole's diameter may be off: an ISO 9013 class, or the shop's own figure.",
      ),
      drilled: lengthLeaf(
        unit,
        "zero or above",
        "How far a drilled hole's diameter may be off; omitted: not known, or the deviation of a shop that drills.",
      ).optional(),
      taper: accuracyLeaf("range", [1, 2, 3, 4, 5] as const, unit, "Loss of diameter on the narrow side.").describe(
        "Loss of diameter on the narrow side: twice the perpendicularity of an ISO 9013 range, or the shop's own figure.",
      ),
    },
    "Accuracy of a cut hole.",
  );
}

function smallestBlock(unit: Unit) {
  const from = textLeaf("Where the figure comes from, in a few words.", 60);
  const least = lengthLeaf(unit, "zero or above", "In absolute terms.");
  const sized = (what: string) =>
    keys({ perThickness: ratioLeaf("As a multiple of the thickness."), least, from }, what);
  return keys(
    {
      hole: sized("Smallest hole that is cut; a smaller one is drilled."),
      web: sized("Smallest web that the process leaves."),
      corner: keys({ least, from }, "Smallest inside corner radius."),
    },
    "The smallest that the process can make.",
  );
}

function distancesBlock(unit: Unit) {
  const room = (what: string) => lengthLeaf(unit, "zero or above", what);
  return keys(
    {
      edge: room("Least steel between a hole's edge and the plate's edge or an opening."),
      web: room("Least steel between two holes."),
      nutGap: room("Gap between two neighbouring nuts."),
      bearing: room("Bearing of the template on the form, each side."),
      formGap: room("Gap inside the form when bearers carry the template."),
      increment: lengthLeaf(unit, "above zero", "Automatic outlines are rounded up to this."),
      finishingRoom: room("Room above the concrete to finish it, beside nut and washer."),
      groutRoom: room("Room between the concrete and the levelling nut; omitted: 0.").optional(),
      largestSide: lengthLeaf(
        unit,
        "above zero",
        "Largest side before a template tends to warp; omitted: Design Guide 1.",
      ).optional(),
    },
    "What the shop asks for; its own values, not a code's.",
  );
}

function tableBlock(unit: Unit) {
  const side = (axis: string) => lengthLeaf(unit, "above zero", `Largest plate along ${axis}.`);
  return keys(
    { x: side("x"), y: side("y") },
    "Largest plate that the table takes and the stock gives; a template may lie either way round.",
  );
}

/** One list for all that the shop cuts, or one a material. */
function thicknessesChoice(unit: Unit) {
  const list = rows(lengthLeaf(unit, "above zero", "A thickness."), "a list of thicknesses").min(1, {
    error: () => "a list of one thickness or more",
  });
  const byMaterial = keys({ steel: list.optional(), plywood: list.optional() }, "Thicknesses by material.");
  return z
    .union([list, byMaterial], { error: () => "a list of thicknesses, or a group of keys: steel, plywood" })
    .describe("Thicknesses in stock; a template of another one is held.");
}

function washerBlock(unit: Unit) {
  return keys(
    {
      shape: wordLeaf(["round", "square"], "Shape."),
      size: lengthLeaf(unit, "above zero", "Diameter, or side of a square."),
      thickness: lengthLeaf(unit, "above zero", "Thickness.").optional(),
    },
    "Washer under each nut on the template.",
  );
}

/** Steel in the two units. */
const EXAMPLE = Object.values(steelDensities)
  .map(({ value, unit }) => `${value} ${unit}`)
  .join(" or ");

function densityBlock() {
  const density = (what: string) =>
    leaf<Density>(`a density, as ${EXAMPLE}`, what, (text) => {
      const parts = /^(\d{1,5}(?:\.\d{1,4})?) ?(lb\/ft3|kg\/m3)$/.exec(text.trim());
      const unit = parts?.[2] === "kg/m3" ? "kg/m3" : "lb/ft3";
      return parts === null || Number(parts[1]) === 0
        ? { ok: false, message: `"${text}" is not a density, as ${EXAMPLE}` }
        : { ok: true, value: { value: Number(parts[1]), unit } };
    });
  return keys(
    { steel: density(`Steel; omitted: ${EXAMPLE}.`).optional(), plywood: density("Plywood.").optional() },
    "Densities, for weights.",
  );
}

function spliceBlock() {
  return keys(
    { bolt: textLeaf("Size of the bolts: 1/2, M12.", 40) },
    "Splice plates that join the segments of a template; omitted: bolts 5/8 (in) or M16 (mm), common practice.",
  );
}

function markingBlock(unit: Unit) {
  const height = (what: string) => lengthLeaf(unit, "above zero", what);
  return keys(
    {
      how: wordLeaf(["scribe", "paint", "none"], "scribe: on the cut file's mark layer; paint: on the sheet only."),
      textHeight: height("Letter height."),
      leastTextHeight: height("Letter height below which a mark is left out."),
      clearance: lengthLeaf(unit, "zero or above", "Between any stroke and a cut edge or another mark."),
    },
    "Marks on the plate.",
  );
}

function cutFileBlock() {
  const layer = leaf("1 to 31 letters, digits, _ - or $", "Layer name.", (text) =>
    /^[A-Za-z0-9_$-]{1,31}$/.test(text)
      ? { ok: true, value: text }
      : { ok: false, message: `"${text}" is not a layer name; allowed are 1 to 31 letters, digits, _ - or $` },
  );
  const layers = keys(
    { outline: layer, holes: layer, openings: layer, marks: layer, drill: layer },
    "Layer names of the cut file.",
  );
  const origin = wordLeaf(["lower left", "working point"], "Where 0,0 is; omitted: lower left.");
  const part = wordLeaf(CUT_NAME_PARTS, "A part of the name.");
  const name = rows(part, `a list of ${CUT_NAME_PARTS.join(", ")}`).describe(
    "What stands in the names of files to cut or drill by, in this order, mark among it; omitted: all.",
  );
  const flavour = wordLeaf(
    CUT_FLAVOURS,
    "Which cut files the table loads, those lie flat in cut/: polyline: one closed polyline a contour; lines: lines, arcs and circles. Omitted: polyline.",
  );
  return keys(
    { layers, origin: origin.optional(), name: name.optional(), flavour: flavour.optional() },
    "The cut file.",
  );
}

function gradeBlock() {
  return keys(
    {
      name: textLeaf("Name of the grade, as written on the print.", 40),
      nut: wordLeaf(["hex", "heavy hex"], "Its nut.").optional(),
    },
    "A grade.",
  );
}
