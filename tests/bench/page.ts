/** How soon the page stands and draws what is typed, in an installed browser: served by the built `rodplate open` on loopback. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import type { Inputs } from "../../src/index.js";
import { browserPath } from "../web/installed-browser.js";
import { makeInputs } from "./jobs.js";
import type { Measure } from "./measure.js";

const VISITS = 7;
const EDITS = 40;
const WARM_UP = 15;

/** One row says so where no browser is installed. */
export async function measurePage(): Promise<readonly Measure[]> {
  if (browserPath === undefined) return [{ what: "the page: no Chromium is installed", value: "", aim: "" }];
  const browser = await chromium.launch({ executablePath: browserPath, args: ["--no-sandbox"] });
  try {
    return [
      await served(makeInputs(1, 1), (address) => paints(browser, address)),
      await served(makeInputs(1, 1), (address) => edits(browser, address, "an eight-rod template alone in its job")),
      await served(makeInputs(500), (address) => edits(browser, address, "the same in a job of 500 bases")),
    ];
  } finally {
    await browser.close();
  }
}

/** Serves a job by the built command as long as it is measured. */
async function served<T>({ files }: Inputs, work: (address: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "rodplate-bench-"));
  for (const [name, content] of files) if (!name.includes("/")) writeFileSync(join(folder, name), String(content));
  const command = [resolve("dist/bin/rodplate.js"), "open", "job.yaml", "--no-browser", "--port", "0"];
  const server = spawn(process.execPath, command, { cwd: folder, stdio: ["ignore", "pipe", "ignore"] });
  try {
    return await work(await addressOf(server));
  } finally {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    server.on("exit", (status) => failed(new Error(`rodplate open ended with ${status}`)));
    server.stdout?.on("data", (data) => found(String(data).trim()));
  });
}

async function visit<T>(browser: Browser, address: string, work: (page: Page) => Promise<T>): Promise<T> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  try {
    const page = await context.newPage();
    await page.goto(address);
    await page.getByRole("img", { name: /^Template / }).waitFor();
    return await work(page);
  } finally {
    await context.close();
  }
}

async function paints(browser: Browser, address: string): Promise<Measure> {
  const times: number[] = [];
  for (let i = 0; i < VISITS; i += 1)
    times.push(...(await visit(browser, address, (page) => entries(page, "first-contentful-paint", "startTime"))));
  return {
    what: "the page, first paint from loopback: median, most",
    value: sharesOf(times, [0.5, 1]),
    aim: "1000 ms",
  };
}

/** Each edit from Enter to its drawing on the screen, by the page's own marks in the browser's record. */
async function edits(browser: Browser, address: string, what: string): Promise<Measure> {
  return visit(browser, address, async (page) => {
    await page.getByRole("button", { name: "B2", exact: true }).click();
    const figure = page.getByRole("button", { name: /^pitch of the rods in x/ }).first();
    for (let turn = 0; turn < WARM_UP + EDITS; turn += 1) {
      const figureText = `${8 + (turn % 2)}-1/2`;
      await figure.focus();
      await page.keyboard.press("F2");
      await page.keyboard.type(figureText);
      await page.keyboard.press("Enter");
      await page
        .getByRole("button", { name: `pitch of the rods in x: ${figureText}`, exact: true })
        .first()
        .waitFor();
    }
    const drawn = (await entries(page, "figure drawn", "duration")).slice(WARM_UP);
    const value = sharesOf(drawn, [0.5, 0.95]);
    return { what: `the page, from Enter to the drawing, ${what}: median, 95th percentile`, value, aim: "" };
  });
}

async function entries(page: Page, name: string, field: "startTime" | "duration"): Promise<readonly number[]> {
  return page.evaluate<number[]>(
    `performance.getEntriesByName(${JSON.stringify(name)}).map((entry) => entry.${field})`,
  );
}

function sharesOf(times: readonly number[], shares: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
  return `${shares.map((share) => at(share).toFixed(0)).join(", ")} ms`;
}
