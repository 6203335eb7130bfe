/** Words in large letters over a sheet that must not be used: HELD with its reasons, NOT RELEASED with the status. */
import type { OpenQuestion } from "../checks/release.js";
import { isReleased, openQuestionWords } from "../checks/release.js";
import { at, fill, group, rectangle, stroke, text } from "./items.js";
import type { SheetRequest } from "./request.js";
import type { Lettering } from "./sheet-sizes.js";
import type { Piece } from "./table.js";
import { textWidth, wrap } from "./text-metrics.js";

/** The banners a sheet needs, topmost first. */
export function banners(
  request: Pick<SheetRequest, "held"> & {
    readonly job: Pick<SheetRequest["job"], "status">;
    /** Questions that stop the release; none where it is not about them. */
    readonly open?: readonly OpenQuestion[];
  },
  width: number,
  lettering: Lettering,
): readonly Piece[] {
  const { held, job, open = [] } = request;
  const why = job.status === "released" ? openQuestionWords(open) : `STATUS: ${job.status.toUpperCase()}`;
  return [
    ...(held.length > 0 ? [banner("HELD", "DO NOT CUT, DRILL OR SET.", held, width, lettering)] : []),
    ...(isReleased(job, open)
      ? []
      : [banner("NOT RELEASED", `${why}. NOT FOR CUTTING OR SETTING.`, [], width, lettering)]),
  ];
}

const MOST_LINES = 6;

/** A reason as a sentence: rules begin small within one. */
function capital(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

function banner(word: string, order: string, reasons: readonly string[], width: number, lettering: Lettering): Piece {
  const box = textWidth(word, lettering.title, true) + lettering.title * 1.2;
  const room = width - box - lettering.body * 1.6;
  const wrapped = reasons.map((reason) => wrap(capital(reason), room, lettering.body));
  const all = wrapped.flat();
  const shown = all.length <= MOST_LINES ? all : [...all.slice(0, MOST_LINES - 1), "More reasons in ledger.csv."];
  const lines = [
    ...wrap(order, room, lettering.body, true).map((words) => ({ words, bold: true })),
    ...shown.map((words) => ({ words, bold: false })),
  ];
  const row = lettering.body * 1.6;
  const height = Math.max(lettering.title * 1.9, lines.length * row + lettering.body);
  const draw = (x: number, top: number) => {
    const start = top - (height - lines.length * row) / 2;
    return group(word === "HELD" ? "held" : "not-released", [
      fill("held", at(x, top - height), at(x + box, top - height), at(x + box, top), at(x, top)),
      stroke("held", ...rectangle(x, top - height, x + width, top)),
      text("reversed", word, at(x + box / 2, top - height / 2 - lettering.title / 2), lettering.title, {
        anchor: "middle",
        bold: true,
      }),
      ...lines.map(({ words, bold }, i) =>
        text(
          "held",
          words,
          at(x + box + lettering.body * 0.8, start - i * row - (row + lettering.body) / 2),
          lettering.body,
          { bold },
        ),
      ),
    ]);
  };
  return { height: height + 3, draw };
}
