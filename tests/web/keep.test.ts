/** What is typed is kept: through a reload, beside another tab, where the browser refuses its storage, and in a link. */
import { readFileSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { HOSTILE_LINE } from "../hostile.js";
import { hasNoBrowser, startDriver } from "./browser.js";
import { kept, openSample, retype, step, titled } from "./keep-steps.js";

describe.skipIf(hasNoBrowser())("a job on the page is kept", () => {
  const driver = startDriver();

  it("through a reload: text, view, base, and every step back and forth", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      for (const title of ["One", "Two", "Three"]) await retype(page, "Title", title);
      await page.keyboard.press("Control+z");
      await titled(page, "Two");
      await page.getByRole("button", { name: "F3" }).click();
      await page.getByRole("navigation").getByRole("button", { name: "Schedule" }).click();
      await page.reload();
      await titled(page, "Two");
      await page.getByRole("button", { name: "Schedule", exact: true, pressed: false }).waitFor();
      expect(await page.getByRole("main").getAttribute("aria-label")).toBe("Schedule");
      await step(page, "Redo", "Title Two to Three").click();
      await titled(page, "Three");
      for (const title of ["Two", "One", "Machine hall with overhead crane"]) {
        await page.keyboard.press("Control+z");
        await titled(page, title);
      }
      expect(await page.getByRole("button", { name: /^Undo/ }).isDisabled()).toBe(true);
      for (const title of ["One", "Two", "Three"]) {
        await page.keyboard.press("Control+Shift+z");
        await titled(page, title);
      }
      await page.getByRole("navigation").getByRole("button", { name: "Template" }).click();
      await page.getByRole("img", { name: /^Template S3/ }).waitFor();
    });
  });

  it("with more than a thousand steps, each of which is taken back", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await retype(page, "Title", "T0000");
      await page.getByRole("status").filter({ hasText: "Kept in this browser" }).waitFor();
      await page.evaluate(MANY_STEPS);
      await page.reload();
      await titled(page, "T1200");
      for (let i = 0; i < 25; i += 1) await page.keyboard.press("Control+z");
      await titled(page, "T1175");
      await page.reload();
      await step(page, "Redo", "Title T1175 to T1176").click();
      await titled(page, "T1176");
      await step(page, "Undo", "Title T1175 to T1176").waitFor();
    });
  });

  it("what is typed before there is a job too: figures, cells, a sheet that is read with its answers, answers to questions", async () => {
    await driver.visit(async (page) => {
      await page.getByRole("button", { name: "Paste its cells" }).click();
      await page.getByLabel("Cells of the schedule").fill("MARK\tQTY\tROD DIA\tPATTERN\nF1\t2\t24\t300 x 240");
      // the browser needs a moment to put it down, less than a person does to load the page again
      await expect.poll(() => page.evaluate<string>(BEGUN)).toContain("300 x 240");
      await page.reload();
      expect(await page.getByLabel("Cells of the schedule").inputValue()).toContain("300 x 240");
      await page.getByRole("button", { name: "Read it" }).click();
      await page.locator(".asking .standing").waitFor();
      await page.getByRole("button", { name: "Millimetres" }).click();
      const answered = page.getByRole("button", { name: /^Take back/ });
      await answered.first().waitFor();
      await page.locator(".asking .standing", { hasNotText: /^Reading/ }).waitFor();
      const [count, standing] = [await answered.count(), await page.locator(".asking .standing").textContent()];
      await page.reload();
      await answered.first().waitFor();
      await page.locator(".asking .standing", { hasText: standing ?? "" }).waitFor();
      expect(await answered.count()).toBe(count);
      await page.locator(".rows tbody tr").first().waitFor();
      await page.getByRole("button", { name: "Put this sheet away" }).click();
      await page.getByRole("button", { name: "packing-hall" }).click();
      await page.getByRole("img", { name: /^Template / }).waitFor();
      await page.getByRole("navigation").getByRole("button", { name: "Questions" }).click();
      const question = page.getByRole("article", { name: /^Q-3/ });
      await question.getByText("Answer Q-3").click();
      await question.getByLabel("Answered by").fill("E. Ray");
      await page.reload();
      expect(await question.getByLabel("Answered by").inputValue()).toBe("E. Ray");
    });
  });

  it("leaves keys to the fields: undo there is the field's own", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await retype(page, "Title", "One");
      await page.getByRole("button", { name: /^Title:/ }).click();
      await page.getByRole("textbox", { name: "Title" }).fill("Two");
      await page.keyboard.press("Control+z");
      await page.keyboard.press("Escape");
      await titled(page, "One");
      await page.getByRole("button", { name: "Undo Title Machine hall with overhead crane to One" }).waitFor();
    });
  });

  it("in its list, from which it is opened again, or thrown away once that is agreed to", async () => {
    await driver.visit(async (page, context) => {
      await openSample(page);
      await retype(page, "Title", "Kept one");
      await chooseOfJob(page, "New or another job");
      await page.getByRole("heading", { name: "rodplate" }).waitFor();
      const other = await context.newPage();
      await other.goto(driver.address());
      await kept(other, /Kept one/).click();
      await titled(other, "Kept one");
      await other.getByRole("button", { name: "Undo Title Machine hall with overhead crane to Kept one" }).click();
      await titled(other, "Machine hall with overhead crane");
      await throwAway(page);
      await page.getByRole("log").getByText("This job is open, here or in another tab").waitFor();
      await other.close();
      await throwAway(page);
      await page.getByRole("heading", { name: "Kept in this browser" }).waitFor({ state: "detached" });
      await page.reload();
      await page.getByRole("heading", { name: /sample/ }).waitFor();
      expect(await page.getByRole("heading", { name: "Kept in this browser" }).count()).toBe(0);
    });
  });
});

/** What the browser keeps of jobs that are begun, as text. Runs in the page. */
const BEGUN = `new Promise((resolve) => {
  const opening = indexedDB.open("rodplate");
  opening.onsuccess = () => {
    const all = opening.result.transaction("texts").objectStore("texts").getAll(IDBKeyRange.bound(["begun"], ["begun", []]));
    all.onsuccess = () => { opening.result.close(); resolve(JSON.stringify(all.result)); };
  };
})`;

/** Puts 1,200 more steps beside the one that is kept, as they are when somebody typed that often. Runs in the page. */
const MANY_STEPS = `new Promise((resolve, reject) => {
  const title = (count) => "T" + String(count).padStart(4, "0");
  const opening = indexedDB.open("rodplate");
  opening.onsuccess = () => {
    const made = opening.result.transaction(["heads", "steps"], "readwrite");
    const [heads, steps] = ["heads", "steps"].map((name) => made.objectStore(name));
    heads.getAll().onsuccess = ({ target: { result: [head] } }) => {
      steps.get([head.id, 0]).onsuccess = ({ target: { result: { splices: [{ at }] } } }) => {
        for (let i = 0; i < 1200; i += 1)
          steps.put({ name: "Title " + title(i) + " to " + title(i + 1), splices: [{ at, was: title(i), now: title(i + 1) }] }, [head.id, i + 1]);
        heads.put({ ...head, version: head.version + 1, steps: 1201, made: 1201 }, head.id);
      };
    };
    made.oncomplete = () => { opening.result.close(); resolve(); };
    made.onabort = () => reject(made.error);
  };
})`;

async function throwAway(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Throw away MH-031/ }).click();
  const asked = page.getByRole("region", { name: "Question" });
  await asked.getByText(/Throw away MH-031 .*It is in no file as it stands\. This cannot be undone\./).waitFor();
  await asked.getByRole("button", { name: "Throw it away" }).click();
}

describe.skipIf(hasNoBrowser())("two tabs on one job", () => {
  const driver = startDriver();

  async function second(context: BrowserContext, title: RegExp): Promise<Page> {
    const page = await context.newPage();
    await page.goto(driver.address());
    await kept(page, title).click();
    await page.getByRole("img", { name: /^Template / }).waitFor();
    return page;
  }

  it("show each other's steps at once, and have one history", async () => {
    await driver.visit(async (page, context) => {
      await openSample(page);
      await retype(page, "Title", "From the first");
      const other = await second(context, /From the first/);
      await retype(other, "Title", "From the second");
      await titled(page, "From the second");
      await retype(page, "Revision", "Q");
      await other.getByRole("heading", { name: /rev Q/ }).waitFor();
      await other.getByRole("button", { name: "Undo Revision C to Q" }).click();
      await page.getByRole("heading", { name: /From the second, rev C/ }).waitFor();
      await page.reload();
      await page.getByRole("button", { name: "Redo Revision C to Q" }).click();
      await other.getByRole("heading", { name: /From the second, rev Q/ }).waitFor();
    });
  });

  it("that change different places at once lose nothing", async () => {
    await driver.visit(async (page, context) => {
      await openSample(page);
      await retype(page, "Title", "At once");
      const other = await second(context, /At once/);
      await mute(page);
      await mute(other);
      await retype(page, "Title", "Above");
      await retype(other, "Quantity of templates", "9");
      await titled(other, "Above");
      await other.getByRole("button", { name: "Quantity of templates: 9" }).waitFor();
      await retype(page, "Revision", "Z");
      await page.getByRole("button", { name: "Quantity of templates: 9" }).waitFor();
      await page.getByRole("heading", { name: /Above, rev Z/ }).waitFor();
      expect(await page.getByRole("log").textContent()).toBe("");
      expect(await other.getByRole("log").textContent()).toBe("");
    });
  });

  it("in which two people type at the same time have everything, and the same", async () => {
    await driver.visit(async (page, context) => {
      await openSample(page);
      await retype(page, "Title", "Both");
      const other = await second(context, /Both/);
      const typeAll = async (tab: Page, label: string, texts: readonly string[]): Promise<void> => {
        for (const text of texts) await retype(tab, label, text);
      };
      await Promise.all([
        typeAll(page, "Title", ["One", "Two", "Three"]),
        typeAll(other, "Quantity of templates", ["7", "8", "9"]),
      ]);
      for (const tab of [page, other]) {
        await titled(tab, "Three");
        await tab.getByRole("button", { name: "Quantity of templates: 9" }).waitFor();
        expect(await tab.getByRole("log").textContent()).toBe("");
      }
      await page.reload();
      for (let left = 7; left > 0; left -= 1) {
        await page.getByRole("button", { name: /^Undo ./ }).click();
        await page.getByRole("button", { name: /^Redo ./ }).waitFor();
      }
      await titled(page, "Machine hall with overhead crane");
      await titled(other, "Machine hall with overhead crane");
    });
  });

  it("that change the same place at once: the first stands, the second is told", async () => {
    await driver.visit(async (page, context) => {
      await openSample(page);
      await retype(page, "Title", "At once");
      const other = await second(context, /At once/);
      await mute(page);
      await mute(other);
      await retype(page, "Title", "Mine");
      await other.getByRole("button", { name: /^Title:/ }).click();
      await other.getByRole("textbox", { name: "Title" }).fill("Theirs");
      await other.keyboard.press("Enter");
      await titled(other, "Mine");
      await other
        .getByRole("log")
        .getByText("Not made: Title At once to Theirs. Another tab changed the same place first")
        .waitFor();
      await other.reload();
      await titled(other, "Mine");
    });
  });
});

/** This tab tells the others nothing: as when both press a key in the same moment. */
async function mute(page: Page): Promise<void> {
  await page.evaluate("BroadcastChannel.prototype.postMessage = () => {};");
}

describe.skipIf(hasNoBrowser())("where the browser refuses its storage", () => {
  const driver = startDriver();

  it.each([
    ["a full disk", "full", /Not kept: the browser's storage is full/],
    ["a private window", "none", /Not kept: the browser refuses its storage/],
    ["a storage that throws", "throws", /Not kept: the browser refuses its storage/],
  ] as const)("%s: it says so, loses nothing, and offers the file", async (_, how, words) => {
    await driver.visit(async (page) => {
      await page.addInitScript({ content: REFUSALS[how] });
      await page.reload();
      await openSample(page);
      await page.getByRole("status").filter({ hasText: words }).waitFor();
      for (const title of ["One", "Two"]) await retype(page, "Title", title);
      await page.keyboard.press("Control+z");
      await titled(page, "One");
      const asked = new Promise<string>((resolve) =>
        page.once("dialog", (dialog) => {
          resolve(dialog.type());
          void dialog.dismiss();
        }),
      );
      await page.close({ runBeforeUnload: true });
      expect(await asked).toBe("beforeunload");
      const coming = page.waitForEvent("download");
      await page.getByRole("button", { name: "Download the job" }).click();
      const file = await (await coming).path();
      expect(readFileSync(file, "utf8")).toContain("title: One");
      await page.getByRole("status").filter({ hasText: "Downloaded as job.yaml" }).waitFor();
    });
  });

  it("keeps everything once there is room again", async () => {
    await driver.visit(async (page) => {
      await openSample(page);
      await page.evaluate(REFUSALS.full);
      for (const title of ["One", "Two"]) await retype(page, "Title", title);
      await page.getByRole("status").filter({ hasText: "storage is full" }).waitFor();
      await page.evaluate(`dispatchEvent(new Event("room again"))`);
      await page.getByRole("button", { name: "Try again" }).click();
      await page.getByRole("status").filter({ hasText: "Kept in this browser" }).waitFor();
      await page.reload();
      await titled(page, "Two");
      await step(page, "Undo", "Title One to Two").click();
      await titled(page, "One");
    });
  });
});

/** Runs in the page: IndexedDB as browsers refuse it (W3C, "Indexed Database API": QuotaExceededError, SecurityError). */
const REFUSALS = {
  none: `Object.defineProperty(globalThis, "indexedDB", { value: undefined, configurable: true });`,
  throws: `IDBFactory.prototype.open = () => { throw new DOMException("denied", "SecurityError"); };`,
  full: `{
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };
    addEventListener("room again", () => { IDBObjectStore.prototype.put = put; });
  }`,
} as const;

describe.skipIf(hasNoBrowser())("a job as a link", () => {
  const driver = startDriver();

  it("goes there and back, opens nothing by itself, and is never asked of a server", async () => {
    let link = "";
    await driver.visit(async (page) => {
      await openSample(page);
      await retype(page, "Title", HOSTILE_TITLE);
      await chooseOfJob(page, "Share as a link");
      link = await page.getByRole("textbox", { name: "Link" }).inputValue();
    });
    const fragment = new URL(link).hash;
    expect(fragment.length).toBeLessThan(5000);
    await driver.visit(
      async (page) => {
        const asked = page.getByRole("region", { name: "Question" });
        await asked
          .getByText(/The link holds a job: MH-031 {2}<img src=x onerror=alert\(1\)>, rev C \(job\.yaml\), 5 bases/)
          .waitFor();
        expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("rodplate");
        expect(page.url()).not.toContain("#");
        await asked.getByRole("button", { name: "Open the job of the link" }).click();
        await titled(page, HOSTILE_TITLE);
        expect(await page.locator("img").count()).toBe(0);
        await page.reload();
        await titled(page, HOSTILE_TITLE);
      },
      { fragment },
    );
    await driver.visit(
      async (page) => {
        await page.getByRole("button", { name: "Leave it" }).click();
        await page.getByRole("region", { name: "Question" }).waitFor({ state: "detached" });
        await page.reload();
        expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("rodplate");
      },
      { fragment },
    );
  });

  it.each(["#job=", "#job=1.aaaaaa.bbbb", "#job=9.x", "#job=1.<script>alert(1)</script>"])(
    "that is broken (%s) says so",
    async (fragment) => {
      await driver.visit(
        async (page) => {
          await page
            .getByRole("region", { name: "Question" })
            .getByText(/This link is (broken|of another version)/)
            .waitFor();
          await page.getByRole("button", { name: "Put away" }).click();
          expect(await page.getByRole("region", { name: "Question" }).count()).toBe(0);
        },
        { fragment },
      );
    },
  );

  it("that would be too long offers the file", async () => {
    await driver.visit(async (page) => {
      const noise = Array.from({ length: 9000 }, (_, at) =>
        Math.sin(at + 1)
          .toString(36)
          .slice(2),
      ).join("\n# ");
      await give(page, [["big.yaml", `job: { number: "1", title: Big, revision: A }\n# ${noise}\nbases: []\n`]]);
      await chooseOfJob(page, "Share as a link");
      await page.getByText(/As a link this job would have \d{5,} characters/).waitFor();
      const coming = page.waitForEvent("download");
      await page.getByRole("button", { name: "Download the job" }).click();
      expect((await coming).suggestedFilename()).toBe("big.yaml");
    });
  });
});

const HOSTILE_TITLE = "<img src=x onerror=alert(1)>";

describe.skipIf(hasNoBrowser())("files that are handed over", () => {
  const driver = startDriver();
  const starter = readFileSync(new URL("../../samples/machine-hall/job.yaml", import.meta.url), "utf8");
  const ROWS = "Mark,Qty,Rod dia,Grade,Pattern,X,Y,Template thickness\nB1,2,3/4,36,rectangle,8,8,1/4\n";
  const naming = (rows: string) =>
    `job: { number: "7", title: Rows, revision: A }\nunits: in\nrules: us\nschedule: ${JSON.stringify(rows)}\n`;

  it("are a job with what it names; what is missing is asked for by its name, and what is not named is left out", async () => {
    await driver.visit(async (page) => {
      await give(page, [
        ["hall.yaml", naming("lists/rows.csv")],
        ["notes.csv", "a\n"],
      ]);
      const asked = page.getByRole("region", { name: "Files that the job names" });
      await asked.getByRole("button", { name: "Find lists/rows.csv" }).waitFor();
      await page
        .getByRole("log")
        .getByText("notes.csv is left out: the job does not name it. In the view Begin it is read")
        .waitFor();
      await give(page, [["rows.csv", ROWS]]);
      await asked.waitFor({ state: "detached" });
      await page.getByRole("img", { name: /^Template / }).waitFor();
      await page.reload();
      await page.getByRole("img", { name: /^Template / }).waitFor();
    });
  });

  it.each([
    ["nothing that is a job", [["shop.yaml", "name: x\n"]], /None of these files is a job: shop\.yaml/],
    [
      "two jobs",
      [
        ["a.yaml", starter],
        ["b.yaml", starter],
      ],
      /Each of these is a job: a\.yaml, b\.yaml/,
    ],
    [
      "a job that is no text",
      [["a.yaml", new Uint8Array([0x61, 0xff, 0xfe, 0x80])]],
      /a\.yaml: a byte that is not UTF-8/,
    ],
    ["a workbook by the name of a job", [["a.yaml", "PK\u0003\u0004"]], /a\.yaml:/],
    ["50 MB", [["huge.yaml", 50 * 1024 * 1024]], /huge\.yaml has 50 MB; at most 16 MB are read/],
  ] as const)("%s is told", async (_, files, words) => {
    await driver.visit(async (page) => {
      await give(page, files);
      await page.getByRole("log").getByText(words).waitFor();
      expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("rodplate");
    });
  });

  it("hostile names are texts, and safe where they are saved", async () => {
    await driver.visit(async (page) => {
      const name = `<b>${HOSTILE_LINE}</b>\u202E.yaml`.replaceAll("/", "_");
      await give(page, [[name, starter]]);
      await page.getByRole("img", { name: /^Template / }).waitFor();
      const coming = page.waitForEvent("download");
      await chooseOfJob(page, "Download");
      const saved = await coming;
      expect(saved.suggestedFilename()).toMatch(/^_b_[^\p{C}<>:"/\\|?*]*\.yaml$/u);
      expect(readFileSync(await saved.path(), "utf8")).toBe(starter);
      expect(await page.locator("header b").count()).toBe(0);
    });
  });
});

type Given = readonly (readonly [string, string | Uint8Array | number])[];

/** Drops files on the page; a number stands for so many bytes. */
async function give(page: Page, files: Given): Promise<void> {
  const parts = files.map(([name, content]) => [name, content instanceof Uint8Array ? [...content] : content]);
  await page.evaluate(`{
    const data = new DataTransfer();
    for (const [name, content] of ${JSON.stringify(parts)})
      data.items.add(new File([typeof content === "string" ? content : new Uint8Array(content)], name));
    document.body.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
  }`);
}

async function chooseOfJob(page: Page, name: string): Promise<void> {
  await page.locator("summary", { hasText: "Job" }).click();
  await page.getByRole("button", { name, exact: true }).click();
}
