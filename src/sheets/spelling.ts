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

/** American where rods are placed by ACI or AISC, else British: sheets speak the English of their own rules. */
export function spellingOf({ placing }: Pick<Editions, "placing">): Spelling {
  return /^(ACI|AISC)/.test(placing) ? AMERICAN : BRITISH;
}

const AMERICAN_WORDS: readonly (readonly [british: RegExp, american: string])[] = [
  [/\b([Cc])entred\b/g, "$1entered"],
  [/\b([Cc])entre(s|lines?)?\b/g, "$1enter$2"],
  [/\b([Gg])auge/g, "$1age"],
  [/\b([Ll])evelling\b/g, "$1eveling"],
];

/** Most texts have none of them. */
const BRITISH_WORD = /entre|auge|evelling/;

/** A clause or a name as the sheets of these editions spell it; rules write the British way. */
export function respelled(words: string, editions: Pick<Editions, "placing">): string {
  if (!BRITISH_WORD.test(words) || spellingOf(editions) === BRITISH) return words;
  return AMERICAN_WORDS.reduce((text, [british, american]) => text.replace(british, american), words);
}
