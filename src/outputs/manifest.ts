/** The first page of a package: what lies where and for whom, what to open first, and every file with its hash. */
import { writeManifest } from "../formats/manifest-text.js";
import type { BaseFacts } from "../summary/facts.js";
import type { GrowingOutput } from "./model.js";
import { guidePackage } from "./package-guide.js";

/** Where it lies: at the top, by a name that says so. */
export const MANIFEST_PATH = "START-HERE.txt";

/** Lists every file but itself and the summary. */
export const manifest: GrowingOutput<"manifest"> = {
  scope: "job, base by base",
  kind: "manifest",
  role: "document",
  title: "What each file is and for whom, what to open first, and the hash of every file but this one and summary.json",
  drawn: false,
  opensFirst: true,
  path: MANIFEST_PATH,
  listsOthers: true,
  head: () => "",
  base: () => "",
  end: ({ job, facts, about, files, layoutHeld }) => {
    const all = new Map([...facts.flatMap((each) => each.files), ...files].map((file) => [file.path, file]));
    const listed = [...all.values()];
    return writeManifest({
      job,
      path: MANIFEST_PATH,
      held: [
        ...facts.filter(({ held }) => held).map(({ mark, template }) => ({ base: mark, template: template.mark })),
      ],
      stopped: job.status === "released" ? stoppedTemplates(facts) : [],
      layoutHeld: layoutHeld.length > 0,
      entries: guidePackage(listed, about).map(({ folder, who, how, first, files: own }) => ({
        ...{ folder, who, how, first },
        files: own.flatMap(({ path }) => all.get(path) ?? []),
      })),
      titleOf: (kind) => about(kind)?.title ?? kind,
    });
  },
};

function stoppedTemplates(facts: readonly BaseFacts[]): readonly string[] {
  return [...new Set(facts.flatMap(({ released, template }) => (released ? [] : [template.mark])))];
}
