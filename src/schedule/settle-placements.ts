/** Columns of a list of placements -> what each stands for. */
import { lookUpIn } from "./heading-meanings.js";
import type { HeadingName } from "./heading-synonyms.js";
import type { FoundTable, TableAnswers } from "./model.js";
import type { PlacementHeading } from "./placement-headings.js";
import { OWN_PLACEMENT_NAMES, placementHeadingNamed } from "./placement-headings.js";
import { PLACEMENT_SYNONYMS } from "./placement-synonyms.js";
import type { SettledHeadings } from "./settle-headings.js";
import { settleColumns } from "./settle-headings.js";
import type { SettleContext, Vocabulary } from "./settled-column.js";

const PLACEMENTS: Vocabulary<PlacementHeading> = {
  lookUp: lookUpIn(PLACEMENT_SYNONYMS, OWN_PLACEMENT_NAMES),
  named: placementHeadingNamed,
  own: OWN_PLACEMENT_NAMES,
  isOurs: () => true,
  unknown: "left out",
};

/** What the words of a list of placements may stand for below the group over them; empty where they are not known. */
export function placementMeaningsOf(words: string, group: string): readonly HeadingName[] {
  return PLACEMENTS.lookUp(words, group).names;
}

/** What every column of a list of placements stands for; one that is not known is left out. */
export function settlePlacements(
  table: FoundTable,
  answers: TableAnswers,
  context: SettleContext,
): SettledHeadings<PlacementHeading> {
  return settleColumns(table, answers, context, PLACEMENTS);
}
