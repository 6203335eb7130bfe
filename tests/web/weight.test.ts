/** What the page weighs, as a server packs what `index.html` and its engine load at once; and that it stands still. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { openSample, settled } from "./states.js";

const BUILT = fileURLToPath(new URL("../../dist/page/", import.meta.url));
const read = (path: string): string => readFileSync(`${BUILT}${path}`, "utf8");

/** Files that a file loads before it runs, itself first: `import` and `from` of texts, not of calls. */
function loadedAtOnce(path: string, known = new Set<string>()): ReadonlySet<string> {
  if (known.has(path)) return known;
  known.add(path);
  if (!path.endsWith(".js")) return known;
  for (const [, name] of read(path).matchAll(/(?:\bfrom|\bimport)\s*["'`]\.\/([\w-]+\.js)["'`]/g))
    if (name !== undefined) loadedAtOnce(`assets/${name}`, known);
  return known;
}

/** Of the page: what it names, and the engine's thread, which it starts at once. */
function firstFiles(): readonly string[] {
  const index = read("index.html");
  const lists = [...index.matchAll(/(?:src|href|data-page|data-needs)="([^"]+)"/g)].map(([, paths]) => paths ?? "");
  const named = lists.flatMap((paths) => paths.split(" ")).map((path) => path.replace("./", ""));
  const main = named.find((path) => path.includes("/index-") && path.endsWith(".js")) ?? "";
  const engine = /["'`](?:\.\/)?(?:assets\/)?(engine-worker-[\w-]+\.js)["'`]/.exec(read(main))?.[1] ?? "";
  return [...new Set(["index.html", ...[...named, `assets/${engine}`].flatMap((path) => [...loadedAtOnce(path)])])];
}

describe("the weight of the page", () => {
  it("is at most 600 kB compressed, without solids, PDF and workbooks, which load when asked for", () => {
    const files = firstFiles();
    expect(files.some((path) => path.includes("engine-worker"))).toBe(true);
    for (const later of ["stage-", "workbook-", "package-work-", "task-worker-", "from-disk"])
      expect(files.filter((path) => path.includes(later))).toEqual([]);
    const sizes = files.map((path) => ({ path, size: gzipSync(readFileSync(`${BUILT}${path}`), { level: 9 }).length }));
    const all = sizes.reduce((sum, { size }) => sum + size, 0);
    expect(all, JSON.stringify(sizes)).toBeLessThanOrEqual(600_000);
    // a sum over nothing would pass too
    expect(all).toBeGreaterThan(100_000);
  });
});

describe.skipIf(hasNoBrowser())("the parts of the page", () => {
  const driver = startDriver();

  it("do not jump about while a job opens, views change and a base is chosen", async () => {
    await driver.visit(async (page) => {
      await page.evaluate(
        "window.jumps = []; new PerformanceObserver((list) => { for (const each of list.getEntries()) if (!each.hadRecentInput) window.jumps.push({ value: each.value, of: each.sources.map(({ node }) => node?.outerHTML?.slice(0, 120)) }); }).observe({ type: 'layout-shift', buffered: true })",
      );
      await openSample(page, "packing-hall");
      for (const view of ["Ledger", "Questions", "Solid", "Template", "Schedule", "Plan", "Package"]) {
        await page.getByRole("button", { name: view, exact: true }).click();
        await page.getByRole("main", { name: view }).waitFor();
        await settled(page);
      }
      const jumps = await page.evaluate<readonly { readonly value: number }[]>("window.jumps");
      const sum = jumps.reduce((all, { value }) => all + value, 0);
      // "good" is under 0.1: Web Vitals, cumulative layout shift
      expect(sum, JSON.stringify(jumps)).toBeLessThan(0.1);
    });
  });
});
