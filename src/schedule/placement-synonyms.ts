/** What prints write over the columns of a list of placements, as data: the trade's general usage, from memory (common practice). */
import type { Synonym } from "./heading-synonyms.js";
import { NOTE, one, several } from "./heading-synonyms.js";

/** Every way of writing a heading of placements but the registry's own names. */
export const PLACEMENT_SYNONYMS: readonly Synonym[] = [
  one("", "Mark", "mark no.", "base no.", "base id", "base plate mark", "base plate"),
  several("", "which mark", ["Mark", NOTE], "type", "base type", "type mark", "detail"),
  several("column", "form", ["Grid", "Mark", NOTE], "", "location", "grid"),
  several("column", "which mark", ["Mark", NOTE], "mark", "no.", "type", "id"),
  one(
    "",
    "Grid",
    "grid lines",
    "grid ref",
    "grid reference",
    "grid intersection",
    "grid coordinates",
    "column location",
  ),
  one("", "Grid", "at grid", "grid mark", "base location"),
  several("", "only asked", ["Grid", "Line 1", "Line 2"], "grid line", "line"),
  one("", "Line 1", "line x", "x line", "x grid", "grid letter"),
  one("", "Line 2", "line y", "y line", "y grid", "grid number"),
  one("", "Offset X", "x offset", "offset in x", "eccentricity x", "e offset", "east offset"),
  one("", "Offset Y", "y offset", "offset in y", "eccentricity y", "n offset", "north offset"),
  several("", "only asked", ["Offset X", "Offset Y", NOTE], "offset", "eccentricity", "ecc"),
  several("", "only asked", ["Offset X", "Near X", NOTE], "x", "x coordinate", "x coord"),
  several("", "only asked", ["Offset Y", "Near Y", NOTE], "y", "y coordinate", "y coord"),
  one("", "Turn", "rotation angle", "base rotation", "turn angle", "orient", "angle of rotation"),
  one("", "T.O.C.", "toc", "toc el", "el toc", "toc level", "level toc"),
  one("el", "T.O.C.", "toc", "pier", "top of pier"),
  one("pier", "T.O.C.", "el", "top el", "el top", "toc el"),
  one("", "B.O.P.", "bop", "bop el", "el bop", "bop level", "level bop"),
  one("el", "B.O.P.", "bop"),
  one("", "Delivery", "delivery no.", "truck no.", "pour no."),
  several("", "only asked", ["T.O.C.", "B.O.P.", NOTE], "el", "level", "top", "top el", "el top"),
  several("", "only asked", ["B.O.P.", "T.O.C.", NOTE], "bottom", "bottom el", "el bottom", "underside"),
  several("el", "only asked", ["T.O.C.", NOTE], "top"),
  several("el", "only asked", ["B.O.P.", NOTE], "bottom", "plate"),
  several("plate", "only asked", ["B.O.P.", NOTE], "el", "level"),
  several("pier", "only asked", ["T.O.C.", NOTE], "top"),
];
