/** What a file is, before it is opened: a job, what it is called, and which files it names. */
import { readJobFile } from "../../job/index.js";
import { findNode, type SourceNode } from "../../readers/source.js";
import type { TaskWork } from "./task-model.js";

/** Keys at the top of a job file; a shop file has none of them. */
const OF_A_JOB: readonly string[] = ["job", "bases", "schedule", "readFrom"];

/** Reads no more than the file's own values. */
export const glanceAtJob: TaskWork<"glance"> = async ({ name, text }) => {
  const { root, requests } = readJobFile(text, name);
  const value = root.ok ? root.value : null;
  const bases = findNode(value ?? undefined, "bases");
  return {
    isJob: value?.kind === "map" && value.entries.some(({ key }) => OF_A_JOB.includes(key)),
    title: titleOf(value),
    bases: bases?.kind === "list" ? bases.items.length : 0,
    names: [...new Set(requests.filter(({ relativeTo }) => relativeTo === "job").map((each) => each.name))],
  };
};

function titleOf(root: SourceNode | null): string {
  const [number, title, revision] = ["number", "title", "revision"].map((key) => {
    const node = findNode(root ?? undefined, "job", key);
    return node?.kind === "scalar" ? node.text : "";
  });
  const named = [number, title].filter((part) => part !== "").join("  ");
  return revision === "" ? named : `${named}, rev ${revision}`;
}
