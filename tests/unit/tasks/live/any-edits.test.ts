/** Jobs that are edited at random: once settled they say what the text says that is opened anew. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import type { KeyEdit } from "../../../../src/readers/yaml-edit.js";
import { inverse } from "../../../../src/readers/yaml-edit.js";
import type { LedgerAsk, LiveJob, Splice } from "../../../../src/tasks/live/model.js";
import { type Live, openLive } from "../../../../src/tasks/live/open-live.js";

const SHOPS = ["plasma", "plasma-metric", "laser"].map((name): [string, string] => {
  const path = `templates/shops/${name}.yaml`;
  return [path, readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8")];
});

function open(text: string): Live {
  return openLive({ job: "job.yaml", files: new Map([["job.yaml", text], ...SHOPS]) }, { date: "2026-11-24" });
}

const WATCH = { base: "bases[0]", room: { width: 180, height: 150 } };

/** What of a job is of its text alone; of one with faults that which is of the whole job stays as it was last right. */
function saidOf(live: Live) {
  while (live.work());
  const { turn: _turn, head, checks, layoutHeld, questions, hasPlan, ...said }: LiveJob = live.state();
  const isRight = !said.findings.some(({ severity }) => severity === "error");
  const { turn: _ofLedger, ...rows } = live.ledger(ALL_ROWS);
  const { turn: _ofQuestions, ...asked } = live.questions() ?? { turn: 0 };
  const ofWhole = isRight ? { head, checks, layoutHeld, questions, hasPlan, rows, asked } : null;
  return { said, view: live.look(WATCH), ofWhole };
}

const ALL_ROWS: LedgerAsk = { statuses: [], rule: null, mark: null, words: "", from: 0, count: 500 };

function asWritten({ said, ...others }: ReturnType<typeof saidOf>) {
  const bases = said.bases.map(({ path, mark, written, given }) => ({ path, mark, written, given }));
  return { ...others, said: { ...said, bases } };
}

interface Drawn {
  readonly unit: "in" | "mm";
  readonly count: number;
  readonly plan: boolean;
  readonly layers: boolean;
  readonly shared: boolean;
  readonly merge: boolean;
  readonly brackets: boolean;
  readonly eol: string;
  readonly tail: boolean;
}

function jobText({ unit, count, plan, layers, shared, merge, brackets, eol, tail }: Drawn): string {
  const [diameter, plate, hole, far, thick] =
    unit === "in" ? ["1-1/4", "18", "2-1/16", "12", "1/4"] : ["M30", "450", "40", "300", "6"];
  const base = (n: number): string => {
    const template = [...(layers ? [] : [`thickness: ${thick}`]), ...(shared && n < 2 ? ["mark: T9"] : [])].join(", ");
    const parts = [
      `mark: B${n + 1}`,
      ...(layers && n % 2 === 0 ? ["kind: heavy"] : []),
      `rods: { diameter: ${diameter}, grade: ${unit === "in" ? "55" : '"8.8"'} }`,
      `pattern: { kind: rectangle, x: ${far}, y: ${far} }`,
      `basePlate: { x: ${plate}, y: ${plate}, hole: ${hole} }`,
      ...(template === "" ? [] : [`template: { ${template} }`]),
    ];
    return brackets
      ? `  - { ${parts.join(", ")} } # base ${n}\n`
      : `  - ${parts.join("\n    ")} # of ${n}\n  # below ${n}\n`;
  };
  const bases = Array.from({ length: count }, (_, n) => base(n)).join("");
  const given = `defaults: { template: { thickness: ${thick} } }\nkinds:\n  heavy:\n    grout: ${unit === "in" ? "1-1/2" : "40"}\n`;
  const at = Array.from({ length: count }, (_, n) => `  - { base: B${n + 1}, at: [A, "${n + 1}"] }\n`).join("");
  const bay = unit === "in" ? "20'" : "6000";
  const names = Array.from({ length: count + 1 }, (_, n) => `"${n + 1}"`).join(", ");
  const grid = `grid:\n  x: { names: [${names}], spacing: ${bay} }\n  y: { names: [A, B], spacing: ${bay} }\nplacements:\n${at}`;
  const text = `job: { number: "24-118", title: Store, revision: A, status: released, date: 2026-11-24 }\n"units": ${unit}\n${merge ? "merge: auto\n" : ""}${layers ? given : ""}bases:\n${bases}${plan ? grid : ""}`;
  return (tail ? text : text.trimEnd()).replaceAll("\n", eol);
}

const drawn = fc.record<Drawn>({
  unit: fc.constantFrom("in", "mm"),
  count: fc.integer({ min: 2, max: 3 }),
  ...{ plan: fc.boolean(), layers: fc.boolean(), shared: fc.boolean(), merge: fc.boolean(), brackets: fc.boolean() },
  eol: fc.constantFrom("\n", "\r\n"),
  tail: fc.boolean(),
});

const index = fc.nat({ max: 2 });
const edits = fc.oneof(
  fc
    .tuple(index, fc.constantFrom("11", "13", "320", "none", ""))
    .map(([i, text]): KeyEdit => ({ kind: "set", path: ["bases", i, "pattern", "y"], text })),
  fc
    .tuple(index, fc.constantFrom("C7", "B1", "B2", "a b"))
    .map(([i, text]): KeyEdit => ({ kind: "set", path: ["bases", i, "mark"], text })),
  fc
    .tuple(index, fc.constantFrom("2", "0"))
    .map(([i, text]): KeyEdit => ({ kind: "set", path: ["bases", i, "quantity"], text })),
  fc
    .tuple(index, fc.constantFrom("1", "2", "50"))
    .map(([i, text]): KeyEdit => ({ kind: "set", path: ["bases", i, "grout"], text })),
  fc
    .tuple(index, fc.constantFrom("24", "600", "40"))
    .map(([i, text]): KeyEdit => ({ kind: "set", path: ["bases", i, "concrete", "x"], text })),
  fc
    .constantFrom<[string, ...string[]]>(["job", "revision"], ["job", "title"], ["sheet"], ["shop"], ["units"])
    .chain((path) =>
      fc.constantFrom("B", "", "A", "laser", "mm").map((text): KeyEdit => ({ kind: "set", path, text })),
    ),
  fc
    .constantFrom("3/8", "10 mm", "x")
    .map((text): KeyEdit => ({ kind: "set", path: ["defaults", "template", "thickness"], text })),
  fc.constantFrom("2", "30", "x").map((text): KeyEdit => ({ kind: "set", path: ["kinds", "heavy", "grout"], text })),
  index.map((i): KeyEdit => ({ kind: "remove", path: ["bases", i] })),
  index.map((i): KeyEdit => ({ kind: "duplicate", path: ["bases", i], sets: [{ path: ["mark"], text: "D1" }] })),
  fc.constant<KeyEdit>({ kind: "move", path: ["bases"], from: 0, to: 1 }),
);
type Step = KeyEdit | "undo" | { readonly at: number; readonly now: string };
const step = fc.oneof<fc.Arbitrary<Step>[]>(
  { arbitrary: edits, weight: 6 } as never,
  { arbitrary: fc.constant<Step>("undo"), weight: 2 } as never,
  { arbitrary: fc.record({ at: fc.nat(), now: fc.constantFrom("\n", "# x\n", " ", "{", '"') }), weight: 1 } as never,
);
/** `slices`: of the work that is left, before the next step is made; null: all of it, and the job is looked at. */
const steps = fc.array(fc.record({ step, slices: fc.option(fc.nat({ max: 4 })) }), { minLength: 1, maxLength: 6 });

function make(live: Live, step: Step, made: Splice[]): void {
  if (step === "undo") {
    const last = made.pop();
    if (last !== undefined) live.splice([inverse(last)], WATCH);
  } else if ("kind" in step) made.push(...live.edit([step], WATCH).splices);
  else {
    const splice = { at: step.at % (live.text().length + 1), was: "", now: step.now };
    made.push(...live.splice([splice], WATCH).splices);
  }
}

function expectAsAnew(live: Live): void {
  const [now, anew] = [saidOf(live), saidOf(open(live.text()))];
  // with a fault of head, marks or the text itself nothing can be checked: bases stand as they were last right
  const isChecked = anew.said.bases.every(({ state }) => state !== "waiting");
  expect(isChecked ? now : asWritten(now)).toEqual(isChecked ? anew : asWritten(anew));
}

it("says what the text says that is opened anew", () => {
  fc.assert(
    fc.property(drawn, steps, (job, each) => {
      const live = open(jobText(job));
      while (live.work());
      const made: Splice[] = [];
      for (const { step, slices } of each) {
        make(live, step, made);
        if (slices === null) expectAsAnew(live);
        else for (let slice = 0; slice < slices; slice += 1) live.work();
      }
      expectAsAnew(live);
    }),
    { numRuns: 10 },
  );
}, 600_000);
