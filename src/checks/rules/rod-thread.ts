import type { RodGroup } from "../../job/model/job.js";
import { nutHeight, nutsAtBottom } from "../../job/model/stack.js";
import type { RodDetail } from "../../rods/index.js";
import { detailRod, rodBelowAnchor } from "../../rods/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own, Term } from "../results.js";
import { compareSums, fixed, inBestCase, minus, missingAmong, notApplicable, plus } from "../results.js";
import { nutIfAnchor } from "../rods.js";
import { NUT, THREADS } from "../takes.js";
import { wordsIn } from "../words.js";

const LOWER: Own = {
  clause: "thread at the lower end >= its nuts and what they clamp",
  measured: "the thread at the lower end",
};
const APART: Own = {
  clause: "threads at both ends <= overall length of the rod",
  measured: "the threads of both ends together",
};
const BEND: Own = {
  clause: "thread at the top ends above the bend",
  measured: "the thread at the top of the rod",
};
const SWEDGED: Own = {
  clause: "swedged part ends below the thread",
  measured: "the thread at the top with the swedged part",
};

/** The lower end has thread for its nuts, and the threads of a rod fit on it: clear of each other, of a bend and of a swedged part. */
export const rodThread: Rule<"rod-thread"> = {
  id: "rod-thread",
  plainName: "threads of rods",
  title:
    "thread at the lower end >= nuts, plate and rod below them; threads of both ends <= length of the rod, clear of a bend " +
    "and of a swedged part",
  severity: "ask",
  measured: "the thread of the rod",
  takes: ["rods.bottom", "rods.bottomThreads", "rods.thread", "rods.threading", ...THREADS, ...NUT],
  clause: () => "threads on the rod",
  edition: () => "geometry",
  check(context) {
    return context.base.groups.flatMap((group) => {
      const detail = detailRod(context.job, context.base, group);
      return [lowerEnd(context, group, detail), ...onTheRod(context, group, detail)];
    });
  },
};

function subjectOf({ letter }: RodGroup): string {
  return `group ${letter}`;
}

/** A nut takes its height; two with a plate between them take it twice, and the plate; all stand above what is left of the rod. */
function lowerEnd({ job }: CheckContext, group: RodGroup, detail: RodDetail): RuleResult {
  const { bottom, bottomThread } = group.rod;
  const subject = subjectOf(group);
  const nuts = bottom.kind === "missing" ? 1 : nutsAtBottom(bottom.value);
  if (nuts === 0) return notApplicable(subject, "no nut holds the lower end", LOWER);
  const clamped: readonly Term[] =
    nuts === 2 && bottom.kind === "given" && bottom.value.kind === "plate"
      ? [fixed("plate", bottom.value.thickness)]
      : [];
  const needed = [
    plus("nut", nutHeight(group.rod), 2 * nuts),
    ...clamped,
    plus("rod below", rodBelowAnchor(group.rod, detail)),
  ];
  const remark = (spare: number): string =>
    spare < 0 ? `; the nut stops ${wordsIn(job.unit).twice(-spare)} short of its place` : "";
  return compareSums(subject, [[plus("thread", bottomThread)], ">=", needed], wordsIn(job.unit), { ...LOWER, remark });
}

function onTheRod(context: CheckContext, group: RodGroup, detail: RodDetail): readonly RuleResult[] {
  const { fullThread, bottom } = group.rod;
  const kind = bottom.kind === "given" ? bottom.value.kind : null;
  if (kind === "hook") return [aboveBend(context, group, detail)];
  if (kind === "swedged") return [aboveSwedged(context, group, detail)];
  if (fullThread) return [notApplicable(subjectOf(group), "the rod is threaded in full", APART)];
  return [apart(context, group, detail)];
}

function overallTerm({ overall }: RodDetail, sign: typeof plus): Term {
  if (overall.kind === "missing") return sign("overall length", overall);
  return sign("overall length", { ...overall, value: overall.value.value });
}

function apart({ job }: CheckContext, group: RodGroup, detail: RodDetail): RuleResult {
  const { threadLength, bottomThread } = group.rod;
  const both = [plus("thread at the top", threadLength), plus("thread at the lower end", bottomThread)];
  const say = wordsIn(job.unit);
  const remark = (spare: number): string =>
    spare > 0 ? `; they meet: a rod that is threaded in full is ordered so (rods.threads: full)` : "";
  const row = compareSums(subjectOf(group), [both, "<=", [overallTerm(detail, plus)]], say, { ...APART, remark });
  return detail.overall.kind === "missing" ? inBestCase(row, missingAmong({ nut: nutIfAnchor(group.rod) })) : row;
}

/** From the top of the rod down to where the bend begins: overall length less the bar of the hook and its inside radius. */
function aboveBend({ job }: CheckContext, group: RodGroup, detail: RodDetail): RuleResult {
  const { hook, bar } = detail;
  const radius = hook === null || hook.kind === "missing" ? null : hook.value.insideRadius;
  const down = [
    overallTerm(detail, plus),
    minus("bar of the hook", bar),
    ...(radius === null ? [] : [fixed("inside radius", radius, -2)]),
  ];
  const thread = plus("thread", detail.topThread);
  return compareSums(subjectOf(group), [[thread], "<=", down], wordsIn(job.unit), BEND);
}

function aboveSwedged({ job }: CheckContext, group: RodGroup, detail: RodDetail): RuleResult {
  const { bottom } = group.rod;
  const swedged = bottom.kind === "given" && bottom.value.kind === "swedged" ? bottom.value.length : 0;
  const both = [plus("thread at the top", detail.topThread), fixed("swedged part", swedged)];
  return compareSums(subjectOf(group), [both, "<=", [overallTerm(detail, plus)]], wordsIn(job.unit), SWEDGED);
}
