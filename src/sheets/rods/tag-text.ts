/** What a code on paper says, in a plain form of the project's own, its parts apart by ` / `. */
import { scannable } from "../qr.js";

/** A thing that a code names. `hashes`: of what it stands for, each after the word that says of what. */
export interface TagOf {
  readonly job: string;
  readonly mark: string;
  readonly revision: string;
  readonly sheet: string;
  readonly hashes: readonly (readonly [word: string, hash: string])[];
  /** `BASE B1`, `4 RODS`; empty where there is no more to say. */
  readonly more: readonly string[];
}

/** `JOB 24-118 / T1 / REV B / SHEET 24-118-T1 / SHA 1a2b3c4d5e6f`. */
export function tagText({ job, mark, revision, sheet, hashes, more }: TagOf): string {
  const parts = [
    `JOB ${job}`,
    mark,
    `REV ${revision}`,
    `SHEET ${sheet}`,
    ...hashes.map((each) => each.join(" ")),
    ...more,
  ];
  return parts.map(scannable).join(" / ");
}
