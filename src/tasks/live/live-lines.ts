/** Rows of one base as lines: those that say the same of several holes are one. */
import type { Unchecked } from "../../checks/missing-keys.js";
import { startMissingKeys } from "../../checks/missing-keys.js";
import type { CheckRow } from "../../checks/model.js";
import { subjectWords } from "../../checks/words.js";
import { alikeRows } from "../../sheets/check-table.js";
import type { SummaryHole } from "../../summary/model.js";
import { groupBy } from "../../units/group-by.js";
import type { Unit } from "../../units/index.js";
import { once } from "../../units/once.js";
import { edgesOf } from "./lit-places.js";
import { liveCheck } from "./live-check.js";
import type { LiveLine } from "./model.js";

/** In the order of the rows, which are worst first. */
export function liveLines(rows: readonly CheckRow[], holes: readonly SummaryHole[], unit: Unit): readonly LiveLine[] {
  const tags = new Set(holes.map(({ tag }) => tag));
  const tagsOf = once((subject: string) => tagsIn(subject, tags));
  return alikeRows(rows, unit).map((own): LiveLine => {
    const subjects = own.map(({ subject }) => subject);
    return {
      ...{ subjects, check: liveCheck(own[0], unit), where: subjectWords(subjects), notes: notesOf(own) },
      edges: edgesOf(own[0].rule, subjects),
      tags: [...new Set(subjects.flatMap(tagsOf))],
    };
  });
}

/** Keys that this base alone lacks. */
export function uncheckedOf(rows: readonly CheckRow[]): Unchecked {
  const missing = startMissingKeys();
  missing.add(rows);
  return missing.list();
}

/** `A1` of `top of A1`, both of `A1-A2`, all of `group A`; a tag that is part of a longer word is none. */
function tagsIn(subject: string, tags: ReadonlySet<string>): readonly string[] {
  if (tags.has(subject)) return [subject];
  const letter = /^group (\p{L}+)$/u.exec(subject)?.[1];
  if (letter !== undefined) return [...tags].filter((tag) => /^\p{L}+/u.exec(tag)?.[0] === letter);
  return subject.split(/[\s,;:/()-]+/).filter((word) => tags.has(word));
}

function notesOf(rows: readonly CheckRow[]): LiveLine["notes"] {
  const byNote = [
    ...groupBy(
      rows.filter(({ note }) => note !== ""),
      ({ note }) => note,
    ),
  ];
  return byNote.map(([note, own]) => ({
    note,
    where: own.length === rows.length ? "" : subjectWords(own.map(({ subject }) => subject)),
  }));
}
