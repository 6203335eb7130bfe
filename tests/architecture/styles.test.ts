/** Styles of one view reach no other view: all of them are in one file of the built page, whichever view is shown. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const WEB = fileURLToPath(new URL("../../src/web/", import.meta.url));

/** What several views are made of on purpose, in the style of the first that had it. */
const SHARED: Readonly<Record<string, readonly string[]>> = {
  answers: ["asked-for", "field", "verdict", "tick", "answer", "in-the-way", "part"],
  ledger: ["keys"],
};

const namesIn = (folder: string, ending: string): readonly string[] =>
  readdirSync(join(WEB, folder)).filter((name) => name.endsWith(ending));

const folders = readdirSync(WEB, { withFileTypes: true }).flatMap((each) => (each.isDirectory() ? [each.name] : []));

/** Classes that the elements of a folder are given. */
function givenIn(folder: string): ReadonlySet<string> {
  const text = namesIn(folder, ".tsx").map((name) => readFileSync(join(WEB, folder, name), "utf8"));
  const given = text.join("\n").matchAll(/class=(?:"([^"]*)"|\{([^}]*)\})/g);
  return new Set([...given].flatMap(([, plain, code]) => (plain ?? code ?? "").match(/[a-z][a-z-]+/g) ?? []));
}

/** Selectors of a style sheet, one by one. */
function selectorsOf(style: string): readonly string[] {
  const rules = style.replaceAll(/\/\*.*?\*\/|@[^{;]*[{;]/gs, "").matchAll(/([^{}]+)\{/g);
  return [...rules].flatMap(([, list]) => (list ?? "").split(/,(?![^(]*\))/)).map((selector) => selector.trim());
}

const given = new Map(folders.map((folder) => [folder, givenIn(folder)]));

/** Folders whose elements a selector may meet; the classes of one selector mostly stand in different elements. */
function reached(selector: string, own: string): readonly string[] {
  const classes = [...selector.matchAll(/\.([a-z][a-z-]*)/g)].flatMap(([, name]) => name ?? []);
  if (classes.length === 0) return folders.filter((folder) => folder !== own);
  if (classes.some((name) => SHARED[own]?.includes(name))) return [];
  return folders.filter((folder) => folder !== own && classes.every((name) => given.get(folder)?.has(name)));
}

describe("styles of the page", () => {
  const views = folders.filter(
    (folder) => folder !== "style" && folder !== "app" && namesIn(folder, ".css").length > 0,
  );

  it("are found", () => {
    expect(views).toContain("sheet");
    expect(reached(".verdict", "ledger")).toContain("answers");
  });

  it.each(views)("of %s stay there", (view) => {
    const styles = namesIn(view, ".css").map((name) => readFileSync(join(WEB, view, name), "utf8"));
    const leaks = styles
      .flatMap(selectorsOf)
      .flatMap((selector) => reached(selector, view).map((other) => `${selector} reaches ${other}`));
    expect(leaks).toEqual([]);
  });
});
