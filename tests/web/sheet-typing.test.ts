/** The drawing of a template is typed on: by mouse and by keyboard, in inches and millimetres, on a desk and on a telephone. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { hasNoBrowser, startDriver } from "./browser.js";
import { dropJob, jobInInches } from "./dropped-job.js";
import { openSample, settled } from "./states.js";

const RODS = "    rods: { diameter: 1, grade: 36, projection: 6, embedment: 20 }";
const PLATE = "    basePlate: { x: 16, y: 14, thickness: 1, hole: 1-13/16 }\n    concrete: { x: 24, y: 24 }";
const FOUR = jobInInches(`${RODS}
    pattern: { kind: rectangle, x: 12, y: 10, nx: 3 }
${PLATE}
    template: { thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18 } }`);

const figure = (page: Page, name: RegExp) => page.getByRole("button", { name });
/** The page's policy lets nothing be compiled from a text: it is asked again and again from outside. */
const until = (page: Page, isSo: string) => expect.poll(() => page.evaluate(isSo), { timeout: 20_000 }).toBe(true);
const drawing = (page: Page) => page.getByRole("img", { name: /^Template / });

describe.skipIf(hasNoBrowser())("figures typed on the drawing", () => {
  const driver = startDriver();

  it("takes 13-1/2 by mouse, as it is typed, and draws it", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      await figure(page, /^rods overall in y: 10$/).click();
      const field = page.getByRole("textbox", { name: "rods overall in y" });
      expect(await field.inputValue()).toBe("10");
      await field.fill("13-1/2");
      await page.getByRole("button", { name: "Take" }).click();
      await figure(page, /^rods overall in y: 13-1\/2$/).waitFor();
      expect(await drawing(page).getByText("13-1/2", { exact: true }).count()).toBe(1);
      await page.getByRole("button", { name: /^Undo/ }).click();
      await figure(page, /^rods overall in y: 10$/).waitFor();
    });
  });

  it("a press beside the field takes what is typed, another figure too; Ctrl+Z right after Enter takes it back", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      await figure(page, /^rods overall in y: 10$/).click();
      await page.keyboard.type("11");
      await page.locator(".foot-left").click({ position: { x: 60, y: 60 } });
      await figure(page, /^rods overall in y: 11$/).waitFor();
      await page.locator(".figure-field").waitFor({ state: "detached" });
      await figure(page, /^rods overall in y: 11$/).click();
      await page.keyboard.type("11-1/2");
      await figure(page, /^template in x: 20$/).click();
      await figure(page, /^rods overall in y: 11-1\/2$/).waitFor();
      await page.getByRole("form", { name: "template in x" }).waitFor();
      await page.keyboard.type("22");
      await page.keyboard.press("Enter");
      await figure(page, /^template in x: 22$/).waitFor();
      await until(page, "document.activeElement?.getAttribute('aria-label') === 'template in x: 22'");
      await page.keyboard.press("Control+z");
      await figure(page, /^template in x: 20$/).waitFor();
      await page.keyboard.press("Control+z");
      await figure(page, /^rods overall in y: 11$/).waitFor();
    });
  });

  it("by keyboard: F2 opens, typing replaces, Enter takes and comes back, Escape leaves, Tab goes on", async () => {
    await driver.visit(async (page) => {
      await openSample(page, "machine-hall");
      const rods = figure(page, /^rods overall in x: 300$/);
      await rods.focus();
      await page.keyboard.press("F2");
      await page.keyboard.type("13-1/2 in");
      await page.keyboard.press("Enter");
      const typed = figure(page, /^rods overall in x: 343 \(342\.9\)$/);
      await typed.waitFor();
      await until(page, "document.activeElement?.getAttribute('aria-label')?.startsWith('rods overall in x')");
      await page.keyboard.press("Enter");
      const field = page.getByRole("textbox", { name: "rods overall in x" });
      expect(await field.inputValue()).toBe("13-1/2 in");
      await page.keyboard.type("999");
      await page.keyboard.press("Escape");
      await field.waitFor({ state: "detached" });
      expect(await typed.count()).toBe(1);
      await page.keyboard.press("Enter");
      await field.waitFor();
      await page.keyboard.press("Tab");
      await page.getByRole("form", { name: "edge distance in x" }).waitFor();
      await until(page, "document.activeElement.form?.getAttribute('aria-label') === 'edge distance in x'");
    });
  });

  it("a refused value keeps what was typed, says the job file's own message, and the drawing stays", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      await figure(page, /^rods overall in y: 10$/).click();
      const field = page.getByRole("textbox", { name: "rods overall in y" });
      await field.fill("ten");
      await page.keyboard.press("Enter");
      await page.locator(".figure-field .fault").first().waitFor();
      expect(await page.locator(".figure-field .fault").first().textContent()).toContain(
        '"ten" is not a length: allowed are forms like 18',
      );
      expect(await field.inputValue()).toBe("ten");
      expect(await field.getAttribute("aria-invalid")).toBe("true");
      expect(await drawing(page).getByText("10", { exact: true }).count()).toBe(1);
      expect(await page.getByRole("status").filter({ hasText: "At fault" }).textContent()).toContain(
        "as they were last right",
      );
      await page.keyboard.press("Escape");
      await figure(page, /^rods overall in y: 10\. At fault: "ten" is not a length/).click();
      expect(await field.inputValue()).toBe("ten");
      await field.fill("11");
      await page.keyboard.press("Enter");
      await figure(page, /^rods overall in y: 11$/).waitFor();
      await page.getByRole("status").filter({ hasText: "At fault" }).waitFor({ state: "detached" });
    });
  });

  it("a pitch sets the overall, an edge distance says what it follows from, an automatic hole gets its own size", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      await figure(page, /^pitch of the rods in x: 6$/)
        .first()
        .click();
      await page.keyboard.type("6-1/2");
      await page.keyboard.press("Enter");
      await figure(page, /^pitch of the rods in x: 6-1\/2$/)
        .first()
        .waitFor();
      await figure(page, /^edge distance in x/)
        .first()
        .click();
      await page.getByText("It follows from the size of the template and where the rods stand.").waitFor();
      expect(await page.getByRole("textbox", { name: "rods overall in x" }).inputValue()).toBe("13");
      await page.getByRole("button", { name: "Cancel" }).click();
      await figure(page, /^hole: /).click();
      await page.keyboard.type("1-3/8");
      await page.keyboard.press("Enter");
      await figure(page, /^hole: 6 HOLES Ø1-3\/8/).waitFor();
    });
  });

  it("base plate and concrete are opened by their notes and by their lines", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      await page.getByRole("button", { name: /^concrete/ }).click();
      await page.getByRole("textbox", { name: "depth of the concrete" }).fill("30");
      await page.keyboard.press("Enter");
      await page.locator(".figure-field").waitFor({ state: "detached" });
      const line = page.locator(".outlines line").first();
      const box = await line.boundingBox();
      if (box === null) throw new Error("the outline is not on the screen");
      await page.mouse.click(box.x + box.width / 4, box.y + box.height / 4);
      await page.getByRole("textbox", { name: "base plate in x" }).fill("17");
      await page.keyboard.press("Enter");
      const note = page.getByRole("button", { name: /^base plate 17 × 14/ });
      await note.waitFor();
      for (const [name, role] of [
        ["base plate", "base-plate"],
        ["concrete", "concrete"],
        ["template", "outline"],
      ] as const) {
        const piece = page.getByRole("button", { name: new RegExp(`^${name} \\d`) }).locator("path");
        const drawn = page.locator(`.laid .stroke.${role}`).first();
        for (const of of ["stroke-dasharray", "stroke-width"])
          expect(await piece.getAttribute(of), `${name} ${of}`).toBe(await drawn.getAttribute(of));
      }
    });
  });

  it("on a telephone the same field opens within the screen", async () => {
    await driver.visit(
      async (page) => {
        await dropJob(page, FOUR);
        await figure(page, /^template in x: 20$/).click();
        const box = await page.locator(".figure-field").boundingBox();
        expect(box?.x).toBeGreaterThanOrEqual(0);
        expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(390);
        await page.keyboard.type("21");
        await page.keyboard.press("Enter");
        await figure(page, /^template in x: 21$/).waitFor();
        expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(390);
      },
      { width: 390, height: 844 },
    );
  });
});

describe.skipIf(hasNoBrowser())("the rest of the sheet", () => {
  const driver = startDriver();

  it("words of the title block are typed over where they stand; nobody checks here", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      const block = page.getByRole("region", { name: "Title block" });
      await block.getByRole("button", { name: "Title: Store" }).focus();
      await page.keyboard.press("F2");
      await page.keyboard.type("Cold store");
      await page.keyboard.press("Enter");
      await block.getByRole("button", { name: "Title: Cold store" }).waitFor();
      await block.getByRole("button", { name: "Drawn by: not given" }).click();
      await page.keyboard.type("M. O.");
      await page.keyboard.press("Enter");
      await block.getByRole("button", { name: "Drawn by: M. O." }).waitFor();
      await block.getByRole("button", { name: "Status: preliminary" }).click();
      await block.getByRole("combobox", { name: "Status" }).selectOption("for approval");
      await page.keyboard.press("Enter");
      await block.getByRole("button", { name: "Status: for approval" }).waitFor();
      await block.getByRole("button", { name: "Date: " }).click();
      await page.keyboard.type("yesterday");
      await page.keyboard.press("Enter");
      await block.getByText('"yesterday" is not a day written year-month-day', { exact: false }).first().waitFor();
      expect(await block.getByText("only a person who checked it signs").count()).toBe(1);
      await page.keyboard.press("Escape");
      await page.getByRole("button", { name: "Date: yesterday" }).waitFor();
    });
  });

  it("what is not on the drawing is typed beside it, with the words that the schema has", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      await page.locator("summary", { hasText: /^Rods/ }).click();
      const finish = page.getByRole("combobox", { name: "Finish" });
      await finish.waitFor();
      expect(await finish.locator("option").allTextContents()).toEqual(["not given", "plain", "galvanized"]);
      await finish.selectOption("galvanized");
      await page.getByRole("button", { name: "Undo", exact: false }).first().waitFor();
      await page.locator("summary", { hasText: /^Concrete/ }).click();
      await page.getByRole("textbox", { name: "Depth" }).fill("deep");
      await page.keyboard.press("Enter");
      await page.locator(".panel-field .fault").first().waitFor();
      expect(await page.locator(".panel-field .fault").first().textContent()).toContain('"deep" is not a length');
      expect(await page.getByRole("textbox", { name: "Depth" }).inputValue()).toBe("deep");
    });
  });

  it("holes are reached by arrows, say what they are, and light up with their rows", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      const hole = (tag: string) => page.getByRole("button", { name: new RegExp(`^${tag}, rod hole`) });
      await hole("A1").focus();
      expect(await hole("A1").getAttribute("aria-label")).toMatch(
        /^A1, rod hole, diameter \S+ for rod 1, at X -6, Y 5\. Its worst row: /,
      );
      await page.keyboard.press("ArrowRight");
      await until(page, "document.activeElement.getAttribute('aria-label').startsWith('A2,')");
      await page.keyboard.press("ArrowDown");
      const tag = await page.evaluate("document.activeElement.getAttribute('aria-label').split(',')[0]");
      expect(tag).toBe("A5");
      expect(await page.locator(".hole.lit").count()).toBe(1);
      expect(await page.locator(".holes button[tabindex='0']").count()).toBe(1);
      await page.keyboard.press("F2");
      await page.getByRole("textbox", { name: "rods", exact: true }).waitFor();
      await page.keyboard.press("Escape");
      await page.locator("summary", { hasText: /^Passed/ }).click();
      await page.mouse.move(5, 5);
      await page.locator(".check button:visible", { hasText: "Rods inside base plate" }).focus();
      await expect.poll(() => page.locator(".lit-places line.gap").count(), { timeout: 20_000 }).toBe(6);
      expect(await page.locator(".lit-places line:not(.gap)").count()).toBe(4);
      expect(await page.locator(".hole.lit").count()).toBe(6);
    });
  });

  it("zooms by keys and buttons, moves by arrows, and comes back whole", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      const laid = () => page.evaluate<string>("document.querySelector('.laid').style.transform");
      const isZoomed = "document.querySelector('.laid').classList.contains('moves')";
      await page.locator(".drawing").focus();
      await page.keyboard.press("+");
      await page.keyboard.press("+");
      await page.getByRole("group", { name: "Zoom" }).getByRole("button", { name: "Whole", disabled: false }).waitFor();
      const before = await laid();
      await page.keyboard.press("ArrowRight");
      await until(page, `document.querySelector('.laid').style.transform !== ${JSON.stringify(before)}`);
      await page.getByRole("button", { name: "Whole", exact: true }).click();
      await until(page, `!${isZoomed}`);
      expect(await laid()).toMatch(/^translate\(0px, 0px\)/);
      await page.mouse.move(600, 300);
      await page.mouse.wheel(0, -300);
      await until(page, isZoomed);
    });
  });

  it("no letter is under 11 dots", async () => {
    for (const width of [1280, 390])
      await driver.visit(
        async (page) => {
          await openSample(page, "packing-hall");
          for (const mark of ["B7", "B11", "B16"]) {
            await page.getByRole("list", { name: "Bases" }).getByRole("button", { name: mark }).click();
            await settled(page);
            const least = await page.evaluate<number>(
              "Math.min(...[...document.querySelectorAll('.laid text')].map((each) => { const { a, b } = each.getScreenCTM(); return parseFloat(each.getAttribute('font-size')) * Math.hypot(a, b); }))",
            );
            expect(least, `${mark} at ${width}`).toBeGreaterThanOrEqual(11);
          }
        },
        { width, height: 844 },
      );
  });

  it("a held base says so with its reasons", async () => {
    await driver.visit(async (page) => {
      await openSample(page, "packing-hall");
      await page.getByRole("list", { name: "Bases" }).getByRole("button", { name: /^B20/ }).click();
      const standing = page.getByRole("status").filter({ hasText: "Not to be cut" });
      await standing.waitFor();
      await standing.locator("summary").click();
      expect(await standing.getByRole("listitem").count()).toBeGreaterThan(0);
      expect(await page.getByRole("region", { name: "Title block" }).getByText("HELD", { exact: true }).count()).toBe(
        1,
      );
    });
  });

  it("hostile marks and titles are texts", async () => {
    const title = "<img src=x onerror=alert(1)> \u0645\u062e\u0632\u0646 & 'store'";
    await driver.visit(async (page) => {
      const mark = "<img src=x onerror=alert(2)>";
      const hostile = FOUR.replace('title: "Store"', `title: ${JSON.stringify(title)}`);
      await dropJob(page, hostile.replace("mark: B1", `mark: ${JSON.stringify(mark)}`), false);
      await page.getByRole("button", { name: `Title: ${title}` }).waitFor();
      expect(await page.locator("main img").count()).toBe(0);
      expect(await page.getByRole("list", { name: "Bases" }).getByText(mark).count()).toBe(1);
      expect(await page.getByText(`"${mark}" holds "<"`).count()).toBeGreaterThan(0);
      await page.locator("summary", { hasText: /^Base\s*$/ }).click();
      await page.getByRole("textbox", { name: "Mark", exact: true }).fill("B1");
      await page.keyboard.press("Enter");
      await drawing(page).waitFor();
    });
  });

  it("the printed sheet comes at true scale on a page of its own size, and as a file", async () => {
    await driver.visit(async (page) => {
      await dropJob(page, FOUR);
      const download = page.waitForEvent("download");
      await page.getByRole("button", { name: "Download this sheet (SVG)" }).click();
      const file = await download;
      expect(file.suggestedFilename()).toMatch(/^B1_rev-A.*_sheet\.svg$/);
      const svg = readFileSync(await file.path(), "utf8");
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
      await page.evaluate("window.print = () => { window.isPrinting = true; }");
      await page.getByRole("button", { name: "Print this sheet" }).click();
      await until(page, "window.isPrinting === true");
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
      const [, w, h] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
      const [, ...more] = pdf.matchAll(/\/MediaBox/g);
      expect(more).toEqual([]);
      // points of a PDF are 1/72 in (ISO 32000-1, 8.3.2.3)
      expect(Math.abs((Number(w) / 72) * 25.4 - Number(width))).toBeLessThan(0.5);
      expect(Math.abs((Number(h) / 72) * 25.4 - Number(height))).toBeLessThan(0.5);
    });
  });
});
