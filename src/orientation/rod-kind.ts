/** What makes two rods interchangeable: everything that is ordered and set, not only the diameter. */
import type { Input, RodGroup } from "../job/model/job.js";

/** Kept by group: every wrong placement compares rods pair by pair; a group never changes, and its entry goes with it. */
const kinds = new WeakMap<RodGroup, string>();

/** One text for rods of one kind: size, grade, finish, lengths and bottom. */
export function rodKind(group: RodGroup): string {
  const known = kinds.get(group);
  if (known !== undefined) return known;
  const { size, thread, fullThread, grade, finish, projection, embedment, length, threadLength, bottom } = group.rod;
  const { bottomThread, threadClass, zincProcess, weldable } = group.rod;
  const lengths = [projection, embedment, length, threadLength, bottomThread];
  const parts = [grade, finish, ...lengths, bottom, threadClass, zincProcess].map(said);
  const kind = [size, thread, String(fullThread), String(weldable), ...parts].join("|");
  kinds.set(group, kind);
  return kind;
}

function said(input: Input<unknown>): string {
  return input.kind === "missing" ? "" : JSON.stringify(input.value);
}
