/** Rods of a group x standards -> the complete rod: every default with its origin, every lack with its key. */
import type { GradeRow } from "../../standards/index.js";
import { findGrade, heldGrades } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import { add, improperFraction, nanometres } from "../../units/index.js";
import type { DocumentPath } from "../document.js";
import type { Bottom, Input, Nut, Rod } from "../model/job.js";
import { given, missing, THREAD_CLASSES } from "../model/job.js";
import type { RodsDocument } from "../schema/job.js";
import type { BaseReport } from "./base-report.js";
import { findNut, isMetric, readThread, recommendedNut, ZINC_GROWTH } from "./lookups.js";

/** The rod, or null when its size or thread is not one that exists (told in the report). */
export function resolveRod(rods: RodsDocument, path: DocumentPath, report: BaseReport): Rod | null {
  const grade = resolveGrade(rods, path, report);
  judgeLengths(rods, path, report);
  judgeThreads(rods, path, report);
  const improper = improperFraction(rods.diameter);
  if (improper !== null) {
    report.fault([...path, "diameter"], "improper-fraction", `"${rods.diameter}" ${improper}`);
    return null;
  }
  const found = readThread(rods.diameter, rods.thread, report.unit);
  if (!found.ok) {
    report.fault([...path, found.key], "unknown-thread", found.message, found.hint);
    return null;
  }
  judgeClass(rods, found.thread.series, path, report);
  const from = (key: keyof RodsDocument) => report.from([...path, key]);
  const optional = <T>(value: T | undefined, key: keyof RodsDocument, why: string) =>
    report.optional(value, [...path, key], why, `rods.${key}`);
  const { size, diameter, series: thread } = found.thread;
  return {
    size,
    diameter,
    thread,
    grade: grade === null ? missing("rods.grade", "no grade is given") : given(grade.name, from("grade")),
    finish: optional(rods.finish, "finish", "no finish is given"),
    zincGrowth: resolveZinc(rods, from("zincGrowth")),
    nut: resolveNut(rods, { size, diameter, thread }, grade, from("nut")),
    torqued: optional(rods.torqued, "torqued", "whether the rods are torqued is not given"),
    welded: rods.welded ?? false,
    weldable: rods.weldable ?? false,
    projection: optional(rods.projection, "projection", "no projection is given"),
    embedment: optional(rods.embedment, "embedment", "no embedment is given"),
    // Overall length as given: a plain sum of projection and embedment would be a guess about the bottom end.
    length: optional(rods.length, "length", "no rod length is given"),
    ...resolveThreads(rods, from),
    threadClass: resolveClass(rods, { thread, grade }, from("threadClass")),
    threading: optional(rods.threading, "threading", "how the threads are made is not given"),
    zincProcess: optional(rods.zincProcess, "zincProcess", "no preference of a zinc process is given"),
    nutFinish: optional(rods.nutFinish, "nutFinish", "no other coating of the nuts is given"),
    protectors: rods.protectors ?? false,
    topNuts: rods.topNuts === undefined ? given(1, "default: one nut") : given(rods.topNuts, from("topNuts")),
    levellingNuts: optional(rods.levellingNuts, "levellingNuts", "no number of levelling nuts is given"),
    bottom: resolveBottom(rods, from("bottom")),
    stickOut:
      rods.stickOut === undefined
        ? given(nanometres(0), "default: nut fully engaged")
        : given(rods.stickOut, from("stickOut")),
    wrenchRoom: optional(rods.wrenchRoom, "wrenchRoom", "no wrench room is given"),
  };
}

interface ResolvedGrade {
  readonly name: string;
  /** What the shop names, the grade's own standard, or nothing. */
  readonly nut: Nut["kind"] | GradeRow | null;
}

function resolveGrade(rods: RodsDocument, path: DocumentPath, report: BaseReport): ResolvedGrade | null {
  if (rods.grade === undefined) return null;
  const written = rods.grade.trim().toLowerCase();
  const own = report.grades.find(({ name }) => name.trim().toLowerCase() === written);
  if (own !== undefined) return { name: own.name, nut: own.nut };
  const standard = findGrade(rods.grade);
  if (standard.found) return { name: standard.row.grade, nut: standard.row };
  const declared = report.grades.map(({ name }) => name).join(", ");
  const allowed = `allowed are ${[...heldGrades, ...(declared === "" ? [] : [declared])].join("; ")}`;
  report.fault(
    [...path, "grade"],
    "unknown-grade",
    `"${rods.grade}" is not a known grade; ${allowed}`,
    /\bS1$/i.test(written) ? "supplement S1 is ordered by rods.weldable: yes" : "the shop file may declare others",
  );
  return null;
}

/** The rod is at least as long as what stands above and below the concrete, and its thread no longer than the rod. */
function judgeLengths(rods: RodsDocument, path: DocumentPath, report: BaseReport): void {
  const { length, projection, embedment } = rods;
  const threads = rods.threads === "full" ? undefined : rods.threads;
  if (length === undefined) return;
  if (projection !== undefined && embedment !== undefined && length < projection + embedment) {
    const message = `${report.show(length)} is shorter than projection and embedment together; allowed is ${report.show(add(projection, embedment))} or more`;
    report.fault([...path, "length"], "rod-too-short", message);
  }
  if (threads !== undefined && threads > length) {
    report.fault(
      [...path, "threads"],
      "thread-too-long",
      `${report.show(threads)} is longer than the rod; allowed is ${report.show(length)} or less`,
    );
  }
}

/** A thread at the lower end says nothing beside a rod that is threaded in full, but for one that a layer below gives. */
function judgeThreads(rods: RodsDocument, path: DocumentPath, report: BaseReport): void {
  const { threads, bottomThreads, bottom } = rods;
  const at = [...path, "bottomThreads"];
  if (bottomThreads === undefined) return;
  const kind = typeof bottom === "object" ? bottom.kind : bottom;
  if (bottomThreads > 0 && (kind === "hook" || kind === "swedged")) {
    const end = kind === "hook" ? "is bent to a hook" : "is swedged";
    report.fault(
      at,
      "thread-on-end",
      `${report.show(bottomThreads)} is given at a lower end that ${end}; allowed is 0`,
    );
  }
  const [full, lower] = (["threads", "bottomThreads"] as const).map((key) => report.from([...path, key]));
  if (threads !== "full" || (lower !== full && lower !== "job")) return;
  const message = `${report.show(bottomThreads)} is given beside threads: full, which threads the whole rod; allowed is one of them`;
  report.fault(at, "two-threads", message);
}

/** Classes of inch and of metric threads are no one another's. */
function judgeClass(
  { threadClass, diameter }: RodsDocument,
  series: Rod["thread"],
  path: DocumentPath,
  report: BaseReport,
): void {
  if (threadClass === undefined) return;
  const allowed: readonly string[] = THREAD_CLASSES[series === "metric coarse" ? "metric" : "inch"];
  if (allowed.includes(threadClass)) return;
  const message = `${threadClass} is no class of a ${series} thread, as that of ${diameter}; allowed are ${allowed.join(", ")}`;
  report.fault([...path, "threadClass"], "other-thread-class", message);
}

function resolveZinc(rods: RodsDocument, from: string): Input<Length> {
  if (rods.zincGrowth !== undefined) return given(rods.zincGrowth, from);
  if (rods.finish === "plain") return given(nanometres(0), "plain rod");
  if (rods.finish === "galvanized") return ZINC_GROWTH;
  return missing("rods.finish", "no finish is given, so the growth by zinc is not known");
}

function resolveNut(
  rods: RodsDocument,
  rod: Pick<Rod, "size" | "diameter" | "thread">,
  grade: ResolvedGrade | null,
  from: string,
): Input<Nut> {
  if (rods.nut !== undefined) return findNut(rod, rods.nut, `${from}; `);
  if (isMetric(rod)) return findNut(rod, "hex", "");
  if (grade === null && rods.finish === undefined)
    return missing(
      "rods.grade or rods.nut, rods.finish or rods.nut",
      "no grade and no finish is given, so no nut is recommended",
    );
  if (grade === null) return missing("rods.grade or rods.nut", "no grade is given, so no nut is recommended");
  if (grade.nut === null) return missing("rods.nut", `no nut is named for grade ${grade.name}`);
  if (typeof grade.nut === "string") return findNut(rod, grade.nut, `shop; `);
  return recommendedNut(rod, grade.nut, rods.finish);
}

type From = (key: keyof RodsDocument) => string;

function resolveThreads(rods: RodsDocument, from: From): Pick<Rod, "threadLength" | "fullThread" | "bottomThread"> {
  if (rods.threads === "full") {
    const whole = fullLength(rods, from);
    return { fullThread: true, threadLength: whole, bottomThread: whole };
  }
  const { threads } = rods;
  const threadLength: Input<Length> =
    threads === undefined ? missing("rods.threads", "no thread length is given") : given(threads, from("threads"));
  return { fullThread: false, threadLength, bottomThread: resolveBottomThread(rods, from) };
}

/** A rod that is threaded in full has thread as long as itself: at least what projects and is embedded. */
function fullLength({ length, projection, embedment }: RodsDocument, from: From): Input<Length> {
  if (length !== undefined) return given(length, from("length"));
  if (projection !== undefined && embedment !== undefined)
    return given(add(projection, embedment), "threads: full, over projection and embedment");
  return missing("rods.length", "the rods are threaded in full, and their length is not given");
}

/** A lower end without a nut has no thread where the job names none. */
function resolveBottomThread({ bottom, bottomThreads }: RodsDocument, from: From): Input<Length> {
  if (bottomThreads !== undefined) return given(bottomThreads, from("bottomThreads"));
  if (bottom === undefined)
    return missing("rods.bottom, rods.bottomThreads", "neither the lower end of the rods nor its thread is given");
  if (bottom === "nut" || needsThread(bottom))
    return missing("rods.bottomThreads", "no thread length at the lower end is given");
  return given(nanometres(0), "no thread at the lower end");
}

function needsThread(bottom: Exclude<RodsDocument["bottom"], undefined>): boolean {
  if (typeof bottom === "string") return bottom === "nut";
  return bottom.kind === "nut" || (bottom.kind === "plate" && bottom.nuts !== 0);
}

/** ASTM F1554 asks for class 1A or 2A where the order says nothing: 2A is what is made. ISO 965 has 6g for general use (from memory). */
function resolveClass(
  { threadClass }: RodsDocument,
  { thread, grade }: { readonly thread: Rod["thread"]; readonly grade: ResolvedGrade | null },
  from: string,
): Input<string> {
  if (threadClass !== undefined) return given(threadClass, from);
  if (thread === "metric coarse") return given("6g", "ISO 965-1 (from memory)");
  if (grade?.nut !== null && typeof grade?.nut === "object") return given("2A", "ASTM F1554");
  return given("2A", "common practice");
}

function resolveBottom(rods: RodsDocument, from: string): Input<Bottom> {
  const { bottom } = rods;
  if (bottom === undefined) return missing("rods.bottom", "the lower end of the rods is not given");
  return given(bottomOf(bottom), from);
}

function bottomOf(bottom: Exclude<RodsDocument["bottom"], undefined>): Bottom {
  if (bottom === "straight") return { kind: "straight" };
  if (bottom === "nut") return { kind: "nut", washer: null, tackWelded: false };
  switch (bottom.kind) {
    case "nut":
      return { kind: "nut", washer: bottom.washer ?? null, tackWelded: bottom.tackWelded ?? false };
    case "plate":
      return { ...bottom, nuts: bottom.nuts ?? 2, tackWelded: bottom.tackWelded ?? false };
    case "hook":
      return { kind: "hook", reach: bottom.reach, radius: bottom.radius ?? null };
    case "straight":
    case "swedged":
      return bottom;
  }
}
