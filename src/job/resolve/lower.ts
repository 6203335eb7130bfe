/** `template.lower` as written -> the lower template of the model. */
import type { Length } from "../../units/index.js";
import type { Input, LowerLevel, LowerSpec } from "../model/job.js";
import { given, missing } from "../model/job.js";
import type { BaseDocument, LowerDocument } from "../schema/job.js";
import type { BaseReport } from "./base-report.js";
import { judgeOpening, resolveOpening, resolveOutline } from "./template-shape.js";

type Written = Exclude<LowerDocument, "auto" | "none">;

const PATH = ["template", "lower"] as const;

/** The lower template, null where none is asked for; faults are in the report. */
export function resolveLower(document: BaseDocument, report: BaseReport): LowerSpec | null {
  const { lower } = document.template;
  if (lower === undefined || lower === "none") return null;
  judgeUse(document, report);
  const written: Written = lower === "auto" ? {} : lower;
  const outline = resolveOutline(written.outline, [...PATH, "outline"], report);
  const opening = resolveOpening(
    written.opening ?? (outline.kind === "ring" ? "none" : "auto"),
    [...PATH, "opening"],
    report,
  );
  judgeOpening(opening, outline, [...PATH, "opening"], report);
  return { thickness: thicknessOf(document, written, report), outline, opening, level: levelOf(written, report) };
}

/** Hooks do not go through its holes; a plate over cast rods has none to hold while the concrete is poured. */
function judgeUse(document: BaseDocument, report: BaseReport): void {
  if (document.template.use === "setting plate over cast rods") {
    report.fault(PATH, "lower-over-cast-rods", "is given for a plate over cast rods; allowed is none");
  }
  const rods = [document.rods, ...(document.groups ?? []).map((group) => group.rods)];
  const isHooked = rods.some((each) => typeof each?.bottom === "object" && each.bottom.kind === "hook");
  if (!isHooked) return;
  const message =
    "is given for hooked rods, whose hooks do not go through its holes and turn when its nuts are drawn tight; allowed is none";
  report.fault(PATH, "lower-with-hooks", message, "write lower: none, or rods with a nut or plate at the lower end");
}

function thicknessOf({ template }: BaseDocument, { thickness }: Written, report: BaseReport): Length {
  if (thickness === undefined && template.material === "plywood") {
    const message = "is required beside a template of plywood: a lower template stays in the concrete and is of steel";
    report.fault([...PATH, "thickness"], "required", message);
  }
  return thickness ?? template.thickness;
}

function levelOf({ above, below }: Written, report: BaseReport): Input<LowerLevel> {
  if (above !== undefined && below !== undefined)
    report.fault([...PATH, "below"], "level-twice", "is given beside above; allowed is one of them");
  if (above !== undefined) return given({ from: "lower ends", distance: above }, report.from([...PATH, "above"]));
  if (below !== undefined) return given({ from: "top of concrete", distance: below }, report.from([...PATH, "below"]));
  return missing("template.lower.above", "the height of the lower template is not given");
}
