/** The bases of the schedule that a job names, taken into the job file: there they can be edited. */
import { namedTable } from "../../job/index.js";
import { findNode } from "../../readers/source.js";
import type { Splice } from "../../readers/yaml-edit.js";
import { spliceBetween } from "../../readers/yaml-edit.js";
import { splitJob } from "../job-parts.js";
import { readSheetAsSent } from "../read.js";
import { namingReadFrom, writeJobAgain } from "../read-job.js";
import type { OpenText } from "./open-text.js";

/** One splice that makes the text what `rodplate read --out` writes; or why not, a sentence each. */
export type TakenBases =
  | { readonly ok: true; readonly splice: Splice }
  | { readonly ok: false; readonly why: readonly string[] };

const encoder = new TextEncoder();

/** The key `schedule` becomes `readFrom`, and the bases stand below a marker line at the end of the file. */
export function takeBases({ text, root, inputs, basesIn }: OpenText): TakenBases {
  const named = findNode(root ?? undefined, "schedule") ?? findNode(root ?? undefined, "readFrom");
  if (root === null || named === undefined || basesIn === "job")
    return refuse("The job names no schedule whose bases could be taken.");
  const { file: name } = namedTable(named);
  const file = inputs.files.get(name);
  if (file === undefined) return refuse(`The schedule ${name} is not there; add the file, then take its bases.`);
  const read = readSheetAsSent({ name, file, job: root, unit: null });
  if (!read.ok) return { ok: false, why: read.findings.map(({ message }) => `${name}: ${message}.`) };
  if (!read.value.isUnderstood) return refuse(openWords(name, read.value.form.questions.length));
  const own = ownPart(text);
  if (own === null)
    return refuse(
      "The key schedule does not stand at the start of a line of its own, so that it cannot be replaced; write schedule: FILE on one line.",
    );
  const bytes = writeJobAgain(encoder.encode(own), inputs.job, read.value);
  return { ok: true, splice: spliceBetween(text, new TextDecoder().decode(bytes)) };
}

function refuse(why: string): TakenBases {
  return { ok: false, why: [why] };
}

function openWords(name: string, questions: number): string {
  const what =
    questions === 0
      ? "something in it is at fault"
      : questions === 1
        ? "one question is open"
        : `${questions} questions are open`;
  return `The bases of ${name} cannot be taken yet: ${what}; the job says it once it is answered.`;
}

/** What a person wrote, with readFrom in the place of schedule; null where that cannot be done by lines. */
function ownPart(text: string): string | null {
  const parts = splitJob(encoder.encode(text));
  const own = parts === null ? text : new TextDecoder().decode(parts.own);
  return /^readFrom[ \t]*:/m.test(own) ? own : namingReadFrom(own);
}
