/** Ways through a scene, for tests. */
import type { Scene, SceneGroup, SceneItem } from "../../../src/sheets/index.js";

export type SceneText = Extract<SceneItem, { kind: "text" }>;

export function groupsOf(items: readonly SceneItem[], name: string): readonly SceneGroup[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [];
    return [...(item.name === name ? [item] : []), ...groupsOf(item.items, name)];
  });
}

export function textsOf(items: readonly SceneItem[]): readonly SceneText[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return textsOf(item.items);
    return item.kind === "text" ? [item] : [];
  });
}

/** All words of a sheet, one text a line. */
export function wordsOf(scene: Scene): string {
  return textsOf(scene.items)
    .map(({ text }) => text)
    .join("\n");
}

/** The words of the first group of this name, joined by spaces, as a reader takes wrapped lines in. */
export function wordsIn(scene: Scene, name: string): string {
  const [group] = groupsOf(scene.items, name);
  return group === undefined
    ? ""
    : textsOf(group.items)
        .map(({ text }) => text)
        .join(" ");
}
