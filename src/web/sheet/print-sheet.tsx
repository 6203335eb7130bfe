/** The printed sheet itself: at true scale on its own size of paper, or kept as a file. */
import type { JSX } from "preact";
import { useRef, useState } from "preact/hooks";
import { useActions, useLook, usePart } from "../app/page.js";
import { Press } from "../app/press.js";
import { VERSION } from "../app/version.js";
import { messageOf, Refused } from "../engine/refused.js";
import type { PrintedSheet } from "../engine/task-model.js";
import { startTask } from "../engine/tasks.js";
import { filesNow } from "../state/model.js";

/** Prints the sheet of the base that is shown, or hands it out as SVG. */
export function PrintSheet(): JSX.Element {
  const { draw, said, cancel } = useSheets();
  const isHere = usePart((state) => state.sheet !== null);
  return (
    <div class="row print-sheet-line">
      <Press isOff={!isHere || said !== null} onPress={() => draw(printSheets)}>
        Print this sheet
      </Press>
      <Press isOff={!isHere || said !== null} onPress={() => draw(keepSheets)}>
        Download this sheet (SVG)
      </Press>
      <span role="status">{said}</span>
      {said !== null && (
        <button type="button" onClick={cancel}>
          Cancel
        </button>
      )}
    </div>
  );
}

/** Draws in a thread of its own; what is done then with the sheets is handed in. */
function useSheets() {
  const { say } = useActions();
  const look = useLook();
  const [said, setSaid] = useState<string | null>(null);
  const stop = useRef<() => void>(() => {});
  const draw = async (use: (sheets: readonly PrintedSheet[]) => Promise<void>): Promise<void> => {
    const { job, sheet, live } = look();
    if (job === null || sheet === null) return;
    const ask = { files: filesNow(job), date: live?.head?.date ?? "", version: VERSION, mark: sheet.mark };
    setSaid("Drawing the sheet");
    const running = startTask("print", ask, ({ what }) => setSaid(`Drawing the sheet: ${what}`));
    stop.current = running.cancel;
    try {
      await use((await running.answer).sheets);
    } catch (error) {
      const why = error instanceof Refused ? error.why.join(" ") : messageOf(error);
      say(`The sheet was not drawn: ${why}`, "fault");
    } finally {
      setSaid(null);
    }
  };
  const cancel = () => {
    stop.current();
    setSaid(null);
  };
  return { draw, said, cancel };
}

/** Nothing but the sheets is printed, each on a page of its own size. */
async function printSheets(sheets: readonly PrintedSheet[]): Promise<void> {
  const frame = document.createElement("div");
  frame.className = "printed";
  const addresses = sheets.map(({ svg }) => URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" })));
  const rules = new CSSStyleSheet();
  rules.replaceSync(
    sheets.map(({ width, height }, i) => `@page sheet-${i} { size: ${width}mm ${height}mm; margin: 0 }`).join("\n"),
  );
  const images = sheets.map((sheet, i) => imageOf(sheet, addresses[i] ?? ""));
  await Promise.all(images.map((image) => image.decode()));
  for (const [i, { width, height }] of sheets.entries()) {
    const paper = document.createElement("div");
    paper.style.width = `${width}mm`;
    paper.style.height = `${height}mm`;
    paper.style.setProperty("page", `sheet-${i}`);
    paper.append(...images.slice(i, i + 1));
    frame.append(paper);
  }
  document.body.append(frame);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  const end = () => {
    frame.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== rules);
    for (const address of addresses) URL.revokeObjectURL(address);
  };
  window.addEventListener("afterprint", end, { once: true });
  window.print();
}

/**
 * Browsers put a picture on whole dots, 96 to the inch, and would stretch it by as much: so it is as many whole dots large as
 * the paper needs, and looks as far over the paper's edge, by a view of its own (SVG 2, "SVG fragment identifiers").
 */
function imageOf({ name, width, height }: PrintedSheet, address: string): HTMLImageElement {
  const [across, down] = [width, height].map((mm) => Math.ceil((mm * 96) / 25.4 - 0.001)) as [number, number];
  const image = new Image(across, down);
  image.src = `${address}#svgView(viewBox(0,0,${(across * 25.4) / 96},${(down * 25.4) / 96}))`;
  image.alt = name;
  return image;
}

async function keepSheets(sheets: readonly PrintedSheet[]): Promise<void> {
  for (const { name, svg } of sheets) {
    const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
    const link = document.createElement("a");
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
  }
}
