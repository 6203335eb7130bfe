/** Headings that give the same: one by one, or several in one cell. */
import type { HeadingName } from "./heading-synonyms.js";
import { NOTE } from "./heading-synonyms.js";

/** Headings of several values in one cell -> those that give one of them. */
const HOLDS: Readonly<Record<HeadingName, readonly HeadingName[]>> = {
  Rods: ["Rod dia"],
  "Rod material": ["Grade"],
  Galvanized: ["Finish"],
  "Pattern size": ["X", "Y", "Pitch X", "Pitch Y", "Pattern pitch"],
  "Pattern pitch": ["X", "Y", "Pitch X", "Pitch Y"],
  X: ["Pitch X"],
  Y: ["Pitch Y"],
  "Base plate size": ["Base plate X", "Base plate Y"],
  "Pier size": ["Pier X", "Pier Y", "Pier dia"],
};

/** True where two headings give the same thing, so that a sheet needs but one of them. */
export function isSameThing(a: HeadingName, b: HeadingName): boolean {
  if (a === NOTE || b === NOTE) return false;
  return a === b || HOLDS[a]?.includes(b) === true || HOLDS[b]?.includes(a) === true;
}
