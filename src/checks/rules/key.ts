import { isSilent, LEAST_SEEN, matters } from "../../orientation/index.js";
import { keyWords } from "../../template/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compareCounts, notApplicable } from "../results.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Whether every wrong way round that would set rods wrong shows from the outline alone, and what was cut for that. */
export const key: Rule<"key"> = {
  id: "key",
  plainName: "orientation cut",
  title:
    "every wrong way round that sets rods wrong shows from the outline; `key: auto` cuts a corner or notch where it is needed",
  severity: "advise",
  measured: "the number of wrong ways round that the outline does not show",
  takes: PLATE,
  clause: () => "template.key; cuts of 1/2 in and more are seen: common practice",
  edition: () => "geometry",
  check: (context) => [context.base.template.key === "none" ? unasked(context) : keyed(context)],
};

function unasked({ base, plate }: CheckContext): RuleResult {
  const silent = plate.wrong.filter((placement) => isSilent(base, placement));
  const [first] = silent;
  if (first === undefined) return notApplicable("plate", "the job asks for no orientation cut, and none is needed");
  const ways = silent.map(({ way }) => way.words).join(", ");
  return notApplicable(
    "plate",
    `the job asks for no orientation cut: only the marks show a template that lies wrong (${ways})`,
  );
}

function keyed({ base, plate, job }: CheckContext): RuleResult {
  const silent = plate.wrong.filter((placement) => isSilent(base, placement)).length;
  const say = wordsIn(job.unit);
  return compareCounts("plate", silent, "<=", 0, noteOf());

  function noteOf(): string {
    if (plate.keyed !== null) return `${keyWords(plate.keyed, job.unit)}: every wrong way round shows from the outline`;
    if (!plate.wrong.some(matters)) return "no orientation cut needed: every way round sets the same rods";
    if (silent === 0) return "no orientation cut needed: nothing that would set rods wrong goes unseen";
    const least = say.length(LEAST_SEEN);
    return `no room for an orientation cut: no cut or notch of ${least} or more shows every wrong way round and leaves holes and seats their room`;
  }
}
