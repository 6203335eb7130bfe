/** The sheet of a template, as a page would ask for it: how long one takes in Node and in Chromium. */
import { resolve } from "node:path";
import { rolldown } from "rolldown";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { SheetRequest } from "../../src/sheets/index.js";
import { isSkipped, newFolder, startChromium } from "../outside/viewers.js";
import { makeInputs } from "./jobs.js";
import type { Measure } from "./measure.js";
import { requestsOf, type SheetTimes, type timeInPage, timeSheets } from "./sheet-times.js";

/** All five kinds of base; none has more than 12 rods. */
const BASES = 60;
/** What a sheet took before: 27 to 33 ms as the median of the samples, layout and SVG together, on one such machine: 31 a second. */
const BEFORE = { median: "27 to 33 ms before", rate: "31 before" } as const;
const AIM = "8 ms, 16 ms";

/** Requests for the sheets of the benchmark's bases. */
export function sheetRequests(count: number): readonly SheetRequest[] {
  return requestsOf(makeInputs(count));
}

function quantile(values: readonly number[], share: number): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length * share)] ?? Number.NaN;
}

const figures = (times: readonly number[]): string =>
  `${quantile(times, 0.5).toFixed(1)} ms, ${quantile(times, 0.95).toFixed(1)} ms`;

/** In Node, with the processor's time of all sheets together: what others do on the machine at the same time counts for less. */
function measureInNode(): readonly Measure[] {
  let start = process.cpuUsage();
  const { layout, whole } = timeSheets(sheetRequests(BASES), newLeanDocument(), () => {
    start = process.cpuUsage();
  });
  const { user, system } = process.cpuUsage(start);
  const perSecond = Math.round((1000 * whole.length) / whole.reduce((sum, time) => sum + time, 0));
  return [
    {
      what: `a sheet of up to 12 holes, layout and SVG, median and 95 % (${BEFORE.median})`,
      value: figures(whole),
      aim: AIM,
    },
    { what: "its layout alone, median and 95 %", value: figures(layout), aim: "" },
    { what: `sheets a second, one after the other (${BEFORE.rate})`, value: `${perSecond} /s`, aim: "" },
    {
      what: "processor time of a sheet, mean",
      value: `${((user + system) / 1000 / whole.length).toFixed(1)} ms`,
      aim: "",
    },
  ];
}

/** The same sheets of the same jobs, drawn in a page. */
async function measureInChromium(): Promise<readonly Measure[]> {
  if (isSkipped("chromium")) return [];
  const { lean, own } = await timesInChromium();
  const row = (where: string, { whole }: SheetTimes, aim: string): Measure => ({
    what: `the same in Chromium, written on ${where}`,
    value: figures(whole),
    aim,
  });
  return [row("the lean document, as in Node", lean, AIM), row("the page's own document", own, "")];
}

async function timesInChromium(): Promise<ReturnType<typeof timeInPage>> {
  const code = await bundled();
  const browser = await startChromium(newFolder());
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: code });
    const { job, files } = makeInputs(BASES);
    const texts = JSON.stringify([...files].map(([name, content]) => [name, String(content)]));
    return await page.evaluate(`sheetTimes.timeInPage(${JSON.stringify(job)}, ${texts}, document)`);
  } finally {
    await browser.close();
  }
}

/** The program as a page would load it, in one script. */
async function bundled(): Promise<string> {
  const input = resolve("tests/bench/dist/tests/bench/sheet-times.js");
  const bundle = await rolldown({ input, platform: "browser", logLevel: "silent" });
  const { output } = await bundle.generate({ format: "iife", name: "sheetTimes" });
  await bundle.close();
  return output[0].code;
}

/** Rows of the sheets. */
export async function measureSheets(): Promise<readonly Measure[]> {
  return [...measureInNode(), ...(await measureInChromium())];
}
