/** A view of a base on its way from the engine to the page: only what changed of it goes. What did not is the same object there. */
import type { LiveBaseView, LiveLine } from "../../tasks/live/model.js";

/** What changed since a view was last sent. */
export interface ViewChange {
  readonly parts: Partial<Omit<LiveBaseView, "lines">>;
  /** A number: the line that stood there before. */
  readonly lines: readonly (LiveLine | number)[];
}

/** Knows what was sent last, part by part as text. To be called for every message, in the order in which they are sent. */
export function startSendingView(): (view: LiveBaseView) => ViewChange | "same" {
  let sent: ReadonlyMap<string, string> = new Map();
  let sentLines: ReadonlyMap<string, number> = new Map();
  return ({ lines, ...parts }) => {
    const texts = new Map(Object.entries(parts).map(([name, part]) => [name, JSON.stringify(part)]));
    const lineTexts = lines.map((line) => JSON.stringify(line));
    const change = {
      parts: Object.fromEntries(Object.entries(parts).filter(([name]) => texts.get(name) !== sent.get(name))),
      lines: lines.map((line, index) => sentLines.get(lineTexts[index] ?? "") ?? line),
    };
    const isSame = Object.keys(change.parts).length === 0 && areKept(change.lines, sentLines.size);
    sent = texts;
    sentLines = new Map(lineTexts.map((text, index) => [text, index]));
    return isSame ? "same" : change;
  };
}

/** Knows what came last; the first change has every part. */
export function startReceivingView(): (change: ViewChange | "same") => LiveBaseView {
  let last: Partial<LiveBaseView> = {};
  return (change) => {
    const before = last.lines ?? [];
    const view = change === "same" ? last : { ...last, ...change.parts, lines: linesNow(change.lines, before) };
    last = view;
    return view as LiveBaseView;
  };
}

function linesNow(lines: ViewChange["lines"], before: readonly LiveLine[]): readonly LiveLine[] {
  if (areKept(lines, before.length)) return before;
  return lines.flatMap((line) => (typeof line === "number" ? (before[line] ?? []) : line));
}

function areKept(lines: ViewChange["lines"], count: number): boolean {
  return lines.length === count && lines.every((line, index) => line === index);
}
