/**
 * Job files by the File System Access API (WICG): true handles, of files in the browser's private file system (WHATWG, "File System"), handed
 * out by pickers of the test, since no dialog of the system can be driven. What a browser refuses it refuses by these DOMExceptions.
 */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { retype, step, titled } from "./keep-steps.js";

const JOB = readFileSync(new URL("../../samples/machine-hall/job.yaml", import.meta.url), "utf8");

/** Runs in the page before its own scripts. `files` is the disk; `refuse` makes the named call fail from then on, "" none. */
const PICKERS = `{
  const at = async (name) => (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
  globalThis.files = {
    read: async (name) => (await (await at(name)).getFile()).text(),
    write: async (name, text) => { const stream = await (await at(name)).createWritable(); await stream.write(text); await stream.close(); },
    remove: async (name) => (await navigator.storage.getDirectory()).removeEntry(name),
    picked: [],
  };
  const pick = async (name) => {
    const next = files.picked.shift();
    if (next === undefined) throw new DOMException("", "AbortError");
    return at(next);
  };
  globalThis.showOpenFilePicker = async () => [await pick()];
  globalThis.showSaveFilePicker = async ({ suggestedName }) => { files.suggested = suggestedName; return pick(); };
  globalThis.refuse = (call, name) => {
    const own = FileSystemFileHandle.prototype[call];
    FileSystemFileHandle.prototype[call] = () => Promise.reject(new DOMException("", name));
    return () => { FileSystemFileHandle.prototype[call] = own; };
  };
}`;

const says = (page: Page, words: string): Promise<void> =>
  page.getByRole("status").filter({ hasText: words }).waitFor();

const told = (page: Page, words: RegExp): Promise<void> => page.getByRole("log").getByText(words).waitFor();

async function onDisk(page: Page, name: string): Promise<string> {
  return page.evaluate<string>(`files.read(${JSON.stringify(name)})`);
}

/** The page with a file on its disk, opened by the picker. */
async function openPicked(page: Page, text = JOB): Promise<void> {
  await page.addInitScript({ content: PICKERS });
  await page.reload();
  await page.evaluate(`files.write("hall.yaml", ${JSON.stringify(text)})`);
  await page.evaluate(`files.picked.push("hall.yaml")`);
  await page.keyboard.press("Control+o");
  await page.getByRole("img", { name: /^Template / }).waitFor();
  await says(page, "Saved in hall.yaml");
}

async function saveAs(page: Page): Promise<void> {
  await page.locator("summary", { hasText: "Job" }).click();
  await page.getByRole("button", { name: "Save as", exact: true }).click();
}

describe.skipIf(hasNoBrowser())("a job in a file of this machine", () => {
  const driver = startDriver();

  it("is saved over itself by a key, also after a reload; what somebody else wrote meanwhile is never written over", async () => {
    await driver.visit(async (page) => {
      await openPicked(page);
      await retype(page, "Title", "Mine");
      await says(page, "Not yet in hall.yaml");
      await page.keyboard.press("Control+s");
      await says(page, "Saved in hall.yaml");
      const mine = await onDisk(page, "hall.yaml");
      expect(mine).toBe(JOB.replace(/^( *title: *).*$/m, "$1Mine"));
      await page.evaluate(`files.write("hall.yaml", ${JSON.stringify(mine.replace("Mine", "Theirs"))})`);
      await retype(page, "Revision", "Q");
      await page.reload();
      await page.getByRole("heading", { name: /Mine, rev Q/ }).waitFor();
      await page.keyboard.press("Control+s");
      const asked = page.getByRole("region", { name: "Question" });
      await asked.getByText("hall.yaml was changed by somebody else since it was opened.").waitFor();
      expect(await onDisk(page, "hall.yaml")).toContain("Theirs");
      await page.evaluate(`files.picked.push("mine.yaml")`);
      await asked.getByRole("button", { name: "Save yours as another file" }).click();
      await says(page, "Saved in mine.yaml");
      expect(await onDisk(page, "mine.yaml")).toMatch(/Mine[\s\S]*revision: .?Q/);
      expect(await onDisk(page, "hall.yaml")).toContain("Theirs");
    });
  });

  it("that the browser asks for anew after a reload is read before it is written", async () => {
    await driver.visit(async (page) => {
      await openPicked(page);
      await retype(page, "Title", "Mine");
      await page.evaluate(`files.write("hall.yaml", ${JSON.stringify(JOB.replace(/title: .*/, "title: Theirs"))})`);
      await page.reload();
      await titled(page, "Mine");
      // as after a reload: reading is refused until the user was asked, which createWritable does by itself
      await page.evaluate(`{
        let state = "prompt";
        const end = refuse("getFile", "NotAllowedError");
        FileSystemFileHandle.prototype.queryPermission = async () => state;
        FileSystemFileHandle.prototype.requestPermission = async () => { state = "granted"; end(); return state; };
      }`);
      await page.getByRole("button", { name: "Save", exact: true }).click();
      await page.getByText("hall.yaml was changed by somebody else since it was opened.").waitFor();
      expect(await onDisk(page, "hall.yaml")).toContain("Theirs");
    });
  });

  it("that cannot be written is told, and the job stays; given up is given up", async () => {
    await driver.visit(async (page) => {
      await openPicked(page);
      await retype(page, "Title", "Mine");
      for (const [call, name, words] of [
        ["createWritable", "NotAllowedError", /hall\.yaml was not written: the browser was not allowed/],
        ["createWritable", "QuotaExceededError", /hall\.yaml was not written: the disk is full/],
        ["createWritable", "NoModificationAllowedError", /another program has it open/],
        ["getFile", "NotFoundError", /it is no longer there; save the job as another file/],
      ] as const) {
        await page.evaluate(`globalThis.end = refuse("${call}", "${name}")`);
        await page.keyboard.press("Control+s");
        await told(page, words);
        await page.evaluate("end()");
      }
      await page.evaluate(`files.write("hall.yaml", new Uint8Array([0x61, 0xff, 0x80]))`);
      await page.keyboard.press("Control+s");
      await told(page, /hall\.yaml is no text any more, and was left as it is/);
      expect((await onDisk(page, "hall.yaml")).length).toBe(3);
      await saveAs(page);
      await says(page, "Not yet in hall.yaml");
      expect(await page.evaluate("files.suggested")).toBe("hall.yaml");
      await page.evaluate(`files.picked.push("other.yaml")`);
      await saveAs(page);
      await says(page, "Saved in other.yaml");
      await titled(page, "Mine");
      await step(page, "Undo", "Title Machine hall with overhead crane to Mine").waitFor();
    });
  });
});

describe.skipIf(hasNoBrowser())("saving while a field is open", () => {
  const driver = startDriver();

  it("takes what stands in it first, wherever it is", async () => {
    await driver.visit(async (page) => {
      await openPicked(page);
      const saved = async (words: string): Promise<void> => {
        await page.keyboard.press("Control+s");
        await expect.poll(() => onDisk(page, "hall.yaml")).toContain(words);
        await says(page, "Saved in hall.yaml");
      };
      await page.getByRole("button", { name: /^Title:/ }).click();
      await page.getByRole("textbox", { name: "Title" }).fill("Title block");
      await saved("Title block");
      await page
        .locator(".drawing")
        .getByRole("button", { name: /^rods overall in x: 300$/ })
        .click();
      await page.getByRole("textbox", { name: "rods overall in x" }).fill("301.5");
      await saved("301.5");
      await page.locator("summary", { hasText: /^Concrete/ }).click();
      const field = page.getByRole("textbox", { name: "Depth" });
      await field.fill("777");
      await saved("depth: 777");
      expect(await field.inputValue()).toBe("777");
      await page.getByRole("navigation").getByRole("button", { name: "Schedule" }).click();
      await page.getByRole("gridcell", { name: /^F1: Projection,/ }).click();
      await page.keyboard.type("187.5");
      await saved("projection: 187.5");
    });
  });
});
