/** The columns of a placement list, as data: heading, other ways of writing it, key of a placement, form of the cells. */
import { ownValue } from "../diagnostics/own-value.js";
import { plainHeading } from "./headings.js";
import type { FormName } from "./model.js";

/** A column of a placement list. */
export interface PlacementHeading {
  readonly name: string;
  /** What its cells hold, for the written grammar. */
  readonly formName: FormName;
  /** What lists write for the words of its cells -> the word. */
  readonly words?: Readonly<Record<string, string>>;
  readonly also: readonly string[];
  /** Key of a placement in the job file; `line1` and `line2` make `at`, `offset.x` and `offset.y` make `offset`. */
  readonly key: PlacementKey;
  readonly example: string;
}

/** What a column of a placement list fills. */
export type PlacementKey =
  | "base"
  | "at"
  | "line1"
  | "line2"
  | "offset.x"
  | "offset.y"
  | "near.x"
  | "near.y"
  | "turn"
  | "topOfConcrete"
  | "bottomOfPlate"
  | "hand"
  | "delivery";

const hands = {
  l: "opposite",
  opp: "opposite",
  "as shown": "as drawn",
  "opposite hand": "opposite",
  mirrored: "opposite",
};

/** Every heading that is known, in the order of the starting spreadsheet. */
export const PLACEMENT_HEADINGS: readonly PlacementHeading[] = [
  text("Mark", "base", "B1", "Base", "Base mark", "Piece mark"),
  text("Grid", "at", "A-1", "At", "Location", "Grid location", "Crossing", "Grid point"),
  text("Line 1", "line1", "A", "Grid X", "Grid line 1", "First line", "Grid 1", "Column line"),
  text("Line 2", "line2", "1", "Grid Y", "Grid line 2", "Second line", "Grid 2", "Row line"),
  length("Offset X", "offset.x", "0", "Off X", "Offset E", "Offset east", "Ecc X"),
  length("Offset Y", "offset.y", "6", "Off Y", "Offset N", "Offset north", "Ecc Y"),
  text("Turn", "turn", "90", "Rotation", "Angle", "Orientation", "Rot", "Turned"),
  elevation("T.O.C.", "topOfConcrete", "99'-6\"", "Top of concrete", "T.O.C. elev", "T.O.C. elevation", "T.O.C. EL"),
  elevation(
    "B.O.P.",
    "bottomOfPlate",
    "99'-8\"",
    "Bottom of plate",
    "B.O.P. elev",
    "B.O.P. elevation",
    "B.O.P. EL",
    "Bottom of base plate",
  ),
  length("Near X", "near.x", "120'"),
  length("Near Y", "near.y", "40'"),
  { ...text("Hand", "hand", "as drawn"), formName: "word", words: hands },
  text("Delivery", "delivery", "pour 2", "Pour", "Truck"),
];

function text(name: string, key: PlacementKey, example: string, ...also: string[]): PlacementHeading {
  return { name, key, example, also, formName: "text" };
}

function length(name: string, key: PlacementKey, example: string, ...also: string[]): PlacementHeading {
  return { ...text(name, key, example, ...also), formName: "length" };
}

function elevation(name: string, key: PlacementKey, example: string, ...also: string[]): PlacementHeading {
  return { ...text(name, key, example, ...also), formName: "elevation" };
}

/** Every heading by its names, in plain spelling. */
export const OWN_PLACEMENT_NAMES: ReadonlyMap<string, PlacementHeading> = new Map(
  PLACEMENT_HEADINGS.flatMap((heading) =>
    [heading.name, ...heading.also].map((name) => [plainHeading(name), heading] as const),
  ),
);

const BY_NAME: ReadonlyMap<string, PlacementHeading> = new Map(
  PLACEMENT_HEADINGS.map((heading) => [heading.name, heading]),
);

/** The heading of that name; undefined for none of ours. */
export function placementHeadingNamed(name: string): PlacementHeading | undefined {
  return BY_NAME.get(name);
}

const FIRST_KEYS: Readonly<Record<string, PlacementKey>> = { at: "line1", offset: "offset.x", near: "near.x" };

/** The heading under which a key of a placement stands; null where no column has it. */
export function placementHeadingOf(path: readonly PropertyKey[]): string | null {
  const key = String(path[0] ?? "");
  return PLACEMENT_HEADINGS.find((heading) => heading.key === (ownValue(FIRST_KEYS, key) ?? key))?.name ?? null;
}
