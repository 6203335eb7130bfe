/** How the entities of a layer join, as findings: what is a fault in a cut contour may be none in a mark. */
import type { JoinFault } from "./dxf-contours.js";
import type { FindingList } from "./dxf-findings.js";

/** Marks branch and end where they like; what is drawn twice is scribed twice. */
export function reportJoinFaults(
  faults: readonly JoinFault[],
  isMark: (layer: string) => boolean,
  findings: FindingList,
): void {
  for (const fault of faults) reportOne(fault, isMark(fault.layer), findings);
}

function reportOne({ code, at: { x, y }, length }: JoinFault, isMark: boolean, findings: FindingList): void {
  const at = [x, y] as const;
  switch (code) {
    case "duplicate":
      if (isMark) findings.add("mark-twice", "advise", "marks drawn twice: they would be scribed twice", at);
      else findings.add(code, "stop", "drawn twice: it would be cut twice", at);
      return;
    case "branch":
      if (!isMark) findings.add(code, "stop", "more than two segments meet in a point", at);
      return;
    case "closed-flag":
      if (!isMark) findings.add(code, "advise", "a polyline's ends meet but its closed flag is off", at);
      return;
    case "joint-gap":
      if (!isMark) {
        const message = `ends of segments miss each other by up to ${short(length)}: taken for closed, within 0.01 mm; some controls do not`;
        findings.add(code, "advise", message, at);
      }
      return;
    case "tiny-segment":
      if (!isMark) findings.add(code, "advise", `segments shorter than ${short(length)}`, at);
      return;
    case "repeated-vertex":
      findings.add(
        code,
        "advise",
        "a polyline repeats a vertex, as the first to close it; some controls stop there",
        at,
      );
      return;
    case "zero-length":
      findings.add(code, isMark ? "advise" : "stop", "lines without length: a pierce that cuts nothing", at);
      return;
  }
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
