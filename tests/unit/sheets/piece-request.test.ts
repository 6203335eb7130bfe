/** Sheets of the pieces of templates: nothing over anything else, every hole located, what they are said to be. Invented jobs. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../src/checks/checked.js";
import { drawSheet, findCollisions, pieceRequest, type Scene, type SceneItem } from "../../../src/sheets/index.js";
import { openJob } from "../../../src/tasks/open.js";

const read = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
const SHOPS = ["templates/shops/plasma.yaml", "templates/shops/plasma-metric.yaml"];

function textsOf(items: readonly SceneItem[]): readonly string[] {
  return items.flatMap((item) =>
    item.kind === "group" ? textsOf(item.items) : item.kind === "text" ? [item.text] : [],
  );
}

/** What groups of this name hold. */
function groupsNamed(items: readonly SceneItem[], name: string): readonly (readonly SceneItem[])[] {
  return items.flatMap((item) =>
    item.kind !== "group" ? [] : item.name === name ? [item.items] : groupsNamed(item.items, name),
  );
}

const isSegment = /-S\d+$/;

function sheetsOf(
  job: string,
): readonly { readonly mark: string; readonly tags: readonly string[]; readonly scene: Scene }[] {
  const files = new Map([
    ["job.yaml", read(`tests/stress/jobs/${job}.yaml`)],
    ...SHOPS.map((path) => [path, read(path)] as const),
  ]);
  const opened = openJob({ job: "job.yaml", files }, { date: "2026-11-24" });
  if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("; "));
  const { value } = opened;
  return value.bases.flatMap((base) => {
    const checked = checkBase(value.job, base);
    return checked.pieces.flatMap((piece) => {
      const request = pieceRequest(checked, piece, { cutFiles: [], programVersion: "test" });
      if (request === null) return [];
      const tags = piece.plate.holes.filter(({ role }) => role !== "opening").map(({ tag }) => tag);
      return [{ mark: piece.plate.mark, tags, scene: drawSheet(request) }];
    });
  });
}

describe.each(["ring-in-segments", "lower-template"])("pieces of %s", (job) => {
  it.each(sheetsOf(job))("$mark: clear, and every hole on it named", ({ mark, tags, scene }) => {
    expect(findCollisions(scene)).toEqual([]);
    const texts = textsOf(scene.items);
    const corners = groupsNamed(scene.items, "corner").flatMap(textsOf);
    const listed = groupsNamed(scene.items, "corner-table").flatMap(textsOf);
    expect(corners.filter((number) => !listed.includes(number))).toEqual([]);
    expect(listed.length === 0).toBe(corners.length === 0);
    if (isSegment.test(mark)) expect(groupsNamed(scene.items, "joint-name").flatMap(textsOf)).not.toEqual([]);
    expect(texts).toContain(mark);
    if (texts.some((text) => text.startsWith("HOLE TABLE"))) {
      expect(tags.filter((tag) => !texts.includes(tag))).toEqual([]);
      const isPart = /-S(P\d*|\d+)$/.test(mark);
      expect(texts.some((text) => text.endsWith(isPart ? "FROM 0,0)" : "FROM W.P.)"))).toBe(true);
    }
  });
});
