/** `rodplate open JOB` and its page: saved by the page, changed from two sides, found again with its steps. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type PageServer, startPageServer } from "../../src/cli/serve-files.js";
import { serveJob } from "../../src/cli/serve-job.js";
import { pageFiles } from "../../src/cli/serve-page.js";
import { newFolder, writeJob } from "../cli/program.js";
import { hasNoBrowser } from "./browser.js";
import { browserPath } from "./installed-browser.js";
import { retype, step, titled } from "./keep-steps.js";

describe.skipIf(hasNoBrowser())("a job that the program serves", () => {
  let browser: Browser;
  let folder: string;
  let server: PageServer;
  let contexts: BrowserContext[];
  let complaints: string[];

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: browserPath ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    [contexts, complaints] = [[], []];
    folder = newFolder();
    writeJob(folder, "depot.yaml");
    server = await serve(0);
  });
  afterEach(async () => {
    for (const context of contexts) await context.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function serve(port: number): Promise<PageServer> {
    const job = serveJob("depot.yaml", folder);
    const pages = pageFiles(job.ok ? job.value.key : null);
    if (!job.ok || pages === null) throw new Error("nothing to serve; npm run build makes the page");
    return startPageServer({ pages, job: job.value, port });
  }

  /** A browser of its own, which keeps nothing that another one kept. */
  async function visit(title = "=Invented depot"): Promise<Page> {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    contexts.push(context);
    const page = await context.newPage();
    page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
    page.on("pageerror", (error) => complaints.push(error.message));
    await page.goto(server.address);
    await titled(page, title);
    await page.getByRole("img", { name: /^Template / }).waitFor();
    return page;
  }

  const onDisk = (): string => readFileSync(join(folder, "depot.yaml"), "utf8");
  const says = (page: Page, words: string): Promise<void> =>
    page.getByRole("status").filter({ hasText: words }).waitFor();

  it("is open at once, and saved by a key: comments and layout stay", async () => {
    const before = onDisk();
    const page = await visit();
    await says(page, "Saved in depot.yaml");
    await retype(page, "Title", "Retyped");
    await says(page, "Not yet in depot.yaml");
    expect(onDisk()).toBe(before);
    await page.keyboard.press("Control+s");
    await says(page, "Saved in depot.yaml");
    expect(onDisk()).toBe(before.replace('"=Invented depot"', '"Retyped"'));
    await page.keyboard.press("Control+z");
    await titled(page, "=Invented depot");
    await says(page, "Not yet in depot.yaml");
    expect(complaints).toEqual([]);
  });

  it("from two sides: the second is not written over the first, is told, and can take it as a step", async () => {
    const [one, other] = [await visit(), await visit()];
    await retype(one, "Title", "One");
    await one.getByRole("button", { name: "Save", exact: true }).click();
    await says(one, "Saved in depot.yaml");
    await retype(other, "Revision", "Q");
    await other.getByRole("button", { name: "Save", exact: true }).click();
    const asked = other.getByRole("region", { name: "Question" });
    await asked.getByText("depot.yaml was changed by somebody else since it was opened.").waitFor();
    expect(onDisk()).toContain('title: "One"');
    await other.getByRole("heading", { name: /Invented depot, rev Q/ }).waitFor();
    await asked.getByRole("button", { name: /^Take what is in the file/ }).click();
    await titled(other, "One");
    await says(other, "Saved in depot.yaml");
    await step(other, "Undo", "depot.yaml as it is on the disk").click();
    await other.getByRole("heading", { name: /Invented depot, rev Q/ }).waitFor();
    await other.keyboard.press("Control+s");
    await says(other, "Saved in depot.yaml");
    expect(onDisk()).toMatch(/=Invented depot".*Q/);
    expect(complaints.filter((words) => !/412/.test(words))).toEqual([]);
  });

  it("in two tabs of one browser is one job: each saves what both typed, and nobody is asked", async () => {
    const one = await visit();
    const other = (await contexts[0]?.newPage()) ?? one;
    await other.goto(server.address);
    await titled(other, "=Invented depot");
    await other.getByRole("img", { name: /^Template / }).waitFor();
    await retype(one, "Title", "One");
    await one.keyboard.press("Control+s");
    await says(one, "Saved in depot.yaml");
    await titled(other, "One");
    await retype(other, "Revision", "Q");
    await other.keyboard.press("Control+s");
    await says(other, "Saved in depot.yaml");
    await expect.poll(onDisk).toMatch(/title: "One", revision: "Q"/);
    await one.getByRole("heading", { name: /One, rev Q/ }).waitFor();
    await says(one, "Saved in depot.yaml");
    await one.getByRole("button", { name: "Undo Revision A to Q" }).click();
    await one.keyboard.press("Control+s");
    await says(one, "Saved in depot.yaml");
    await expect.poll(onDisk).toMatch(/title: "One", revision: "A"/);
    for (const page of [one, other]) expect(await page.getByRole("region", { name: "Question" }).count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it("changed by an editor meanwhile: taken as a step where nothing is unsaved", async () => {
    const page = await visit();
    await retype(page, "Title", "Mine");
    await page.keyboard.press("Control+s");
    await says(page, "Saved in depot.yaml");
    expect(onDisk()).toContain('title: "Mine"');
    writeFileSync(join(folder, "depot.yaml"), onDisk().replace('title: "Mine"', "title: Theirs"));
    await page.reload();
    await titled(page, "Theirs");
    await step(page, "Undo", "depot.yaml as it is on the disk").click();
    await titled(page, "Mine");
    await step(page, "Undo", "Title =Invented depot to Mine").waitFor();
  });

  it("is found again with its unsaved steps after the program was ended and started anew", async () => {
    const page = await visit();
    await retype(page, "Title", "Unsaved");
    const port = Number(new URL(server.address).port);
    await server.close();
    await page.close();
    server = await serve(port);
    const again = (await contexts[0]?.newPage()) ?? page;
    await again.goto(server.address);
    await titled(again, "Unsaved");
    await says(again, "Not yet in depot.yaml");
    await step(again, "Undo", "Title =Invented depot to Unsaved").click();
    await says(again, "Saved in depot.yaml");
  });

  it("without the program the save says so, and nothing is lost", async () => {
    const page = await visit();
    await retype(page, "Title", "Alone");
    await server.close();
    await page.keyboard.press("Control+s");
    await page
      .getByRole("log")
      .getByText(/Not saved: rodplate open is ended in its terminal/)
      .waitFor();
    await titled(page, "Alone");
  });

  it("with the files that it names; those elsewhere are told, and asked for", async () => {
    const job = (name: string): string =>
      `job: { number: "7", title: Rows, revision: A }\nunits: in\nrules: us\nschedule: ${name}\n`;
    writeFileSync(join(folder, "rows.csv"), ROWS);
    writeFileSync(join(folder, "depot.yaml"), job("rows.csv"));
    const page = await visit("Rows");
    expect(await page.getByRole("region", { name: "Files that the job names" }).count()).toBe(0);
    writeFileSync(join(folder, "depot.yaml"), job("../rows.csv"));
    const other = await contexts[0]?.newPage();
    if (other === undefined) throw new Error("no page");
    await other.goto(server.address);
    await other
      .getByRole("log")
      .getByText(/rows\.csv is not there, or lies outside of the job's folder/)
      .waitFor();
    await other.getByRole("button", { name: "Find ../rows.csv" }).waitFor();
  });
});

const ROWS = "Mark,Qty,Rod dia,Grade,Pattern,X,Y,Template thickness\nB1,2,3/4,36,rectangle,8,8,1/4\n";
