/** The job's files that grow as the bases go by: sizes and hashes are kept, never their bytes. */
import type { Job } from "../job/model/job.js";
import type { GrowingOutput, JobRest, MadeBase, OutputKind } from "../outputs/index.js";
import { aboutKind, growingOutputs, summaryPath } from "../outputs/index.js";
import type { SummaryFile } from "../summary/model.js";
import { summarizeJob } from "../summary/summarize.js";
import type { Hasher } from "./hash.js";
import { startOwnSha256 } from "./hash.js";

/** Bytes to be added to the end of the job file at `path`. */
export interface Part {
  readonly kind: OutputKind;
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Parts in the order in which they are to be written; a file that is not wanted has none. */
export interface GrowingFiles {
  head(job: Job): readonly Part[];
  base(made: MadeBase, isFirst: boolean): readonly Part[];
  /** A document that is written whole, for the list of files. */
  note(document: SummaryFile): void;
  /** Ends the files that list no others, for who names their hashes; `end` hands out what that adds to them. */
  close(rest: GrowingRest): readonly SummaryFile[];
  /** To be called once, last: hashes end here. */
  end(rest: GrowingRest): {
    readonly parts: readonly Part[];
    readonly files: readonly SummaryFile[];
  };
}

/** What files end with, but for the list of them. */
export type GrowingRest = Omit<JobRest, "files" | "about">;

interface Growing {
  readonly output: GrowingOutput<OutputKind>;
  readonly hash: Hasher;
  size: number;
}

/** Which files, and how they are hashed. */
export interface GrowingOptions {
  readonly outputs?: readonly OutputKind[];
  readonly startSha256?: () => Hasher;
}

/** Starts every growing file that is wanted. */
export function startGrowingFiles({ outputs: wanted, startSha256 = startOwnSha256 }: GrowingOptions): GrowingFiles {
  const growing = growingOutputs
    .filter(({ kind }) => wanted?.includes(kind) ?? true)
    .map((output): Growing => ({ output, hash: startSha256(), size: 0 }));
  const [lists, others] = [growing.filter(isList), growing.filter((each) => !isList(each))];
  const documents: SummaryFile[] = [];
  let closed: { readonly parts: readonly Part[]; readonly files: readonly SummaryFile[] } | null = null;
  const close = (rest: GrowingRest) => {
    closed ??= closeAll(others, rest);
    return closed;
  };
  return {
    head: (job) => growing.map((each) => grow(each, each.output.head(summarizeJob(job)))),
    base: (made, isFirst) => growing.map((each) => grow(each, each.output.base(made, isFirst))),
    note: (document) => void documents.push(document),
    close: (rest) => close(rest).files,
    end: (rest) => {
      const said = { ...rest, about: aboutKind };
      const own = close(rest);
      const parts = [...own.parts];
      const files = [...own.files, ...documents];
      for (const each of lists) {
        parts.push(grow(each, each.output.end({ ...said, files: [...files] })));
        for (const seal of sealPart(each)) parts.push(seal);
        if (each.output.path !== summaryPath) files.push(listed(each));
      }
      return { parts, files };
    },
  };
}

function closeAll(growing: readonly Growing[], rest: GrowingRest) {
  const parts = growing.map((each) => grow(each, each.output.end({ ...rest, about: aboutKind, files: [] })));
  return { parts, files: growing.map(listed) };
}

const isList = ({ output }: Growing): boolean => output.listsOthers;

function grow(growing: Growing, text: string): Part {
  const { kind, path } = growing.output;
  const bytes = new TextEncoder().encode(text);
  growing.size += bytes.length;
  growing.hash.update(bytes);
  return { kind, path, bytes };
}

/** The hash ends here: nothing lists a sealed file. */
function sealPart({ output: { kind, path, seal }, hash }: Growing): readonly Part[] {
  return seal === undefined ? [] : [{ kind, path, bytes: new TextEncoder().encode(seal(hash.hex())) }];
}

function listed({ output: { kind, path }, size, hash }: Growing): SummaryFile {
  return { kind, path, bytes: size, sha256: hash.hex() };
}
