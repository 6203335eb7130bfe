/**
 * A job from one thread to the other: of the bases, which are many, only the lines that changed go over; put together again at
 * the other end, a line that did not change is the same object as before.
 */
import type { LiveBase, LiveJob } from "../../tasks/live/model.js";

/** What changed since the job was last sent; absent lists are those of before. */
export interface JobChange {
  readonly job: Omit<LiveJob, "bases" | "checks" | "questions" | "findings">;
  readonly count: number;
  readonly bases: readonly (readonly [index: number, base: LiveBase])[];
  readonly checks?: LiveJob["checks"];
  readonly questions?: LiveJob["questions"];
  readonly findings?: LiveJob["findings"];
}

/** Knows what was sent last. To be called for every message, in the order in which they are sent. */
export function startSending(): (job: LiveJob) => JobChange {
  let last: LiveJob | null = null;
  return (now) => {
    const before = last;
    last = now;
    const { bases, checks, questions, findings, ...job } = now;
    return {
      job,
      count: bases.length,
      bases: bases.flatMap((base, index) => (before?.bases[index] === base ? [] : [[index, base] as const])),
      ...(before?.checks === checks ? {} : { checks }),
      ...(before?.questions === questions ? {} : { questions }),
      ...(before?.findings === findings ? {} : { findings }),
    };
  };
}

/** Knows what came last. */
export function startReceiving(): (change: JobChange) => LiveJob {
  let last: Pick<LiveJob, "bases" | "checks" | "questions" | "findings"> = {
    ...{ bases: [], checks: [], questions: [], findings: [] },
  };
  return ({ job, count, bases: changed, ...lists }) => {
    const bases = changed.length === 0 && count === last.bases.length ? last.bases : last.bases.slice(0, count);
    const now = { ...last, ...job, ...lists, bases: withChanged(bases, changed) };
    last = now;
    return now;
  };
}

function withChanged(bases: readonly LiveBase[], changed: JobChange["bases"]): readonly LiveBase[] {
  if (changed.length === 0) return bases;
  const made = [...bases];
  for (const [index, base] of changed) made[index] = base;
  return made;
}
