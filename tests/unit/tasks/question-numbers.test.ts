/** Numbers of questions over revisions: a cause keeps its number, and no number is given twice. Common practice of requests for information. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type AskedBase, numbersOf, packageOf, type Revision, tryPackage } from "../../questions-case.js";

const washers = (washer: string, ...marks: readonly string[]): readonly AskedBase[] =>
  marks.map((mark) => ({ mark, washer }));
/** What is asked, without the files that say it. */
const askedBy = (revision: Revision) => packageOf({ ...revision, unwritten: true });
const FINE: AskedBase = { mark: "B9", washer: "3" };

describe("numbers of questions", () => {
  it("begin at Q-1, one a cause", () => {
    const a = askedBy({ revision: "A", bases: [...washers("2-1/2", "B1", "B2"), ...washers("2-3/4", "B3")] });
    expect(numbersOf(a)).toEqual(["Q-1 open 2.5 B1 B2", "Q-2 open 2.75 B3"]);
  });

  it("stay over three revisions in which figures change, bases come, go, and come back", () => {
    const a = askedBy({ revision: "A", bases: [...washers("2-1/2", "B1", "B2"), ...washers("2-3/4", "B3")] });
    const b = askedBy({
      revision: "B",
      before: a.json,
      bases: [...washers("2-1/2", "B0", "B1"), ...washers("2-5/8", "B2"), FINE],
    });
    expect(numbersOf(b)).toEqual(["Q-1 open 2.5 B1", "Q-1.2 open 2.625 B2", "Q-2 closed 2.75 B3", "Q-3 open 2.5 B0"]);
    expect(b.questions[1]?.text).toContain("Asked as Q-1 in revision A: then 2-1/2 in, now 2-5/8 in.");
    expect(b.questions[0]?.text).not.toContain("Asked as");
    const c = askedBy({
      revision: "C",
      before: b.json,
      bases: [...washers("2-1/2", "B1", "B2", "B0"), ...washers("2-3/4", "B3")],
    });
    expect(numbersOf(c)).toEqual([
      "Q-1 open 2.5 B1",
      "Q-1.2 open 2.5 B2",
      "Q-2 closed 2.75 B3",
      "Q-3 open 2.5 B0",
      "Q-4 open 2.75 B3",
    ]);
    expect(c.questions.at(-1)?.text).toContain("Asked before as Q-2, closed in revision B.");
    expect(c.summary.questions.find(({ number }) => number === "Q-1.2")?.asked.map(({ value }) => value)).toEqual([
      2.5, 2.625, 2.5,
    ]);
  });

  it("a question that was closed in this same revision comes back under its number", () => {
    const a = askedBy({ revision: "A", bases: washers("2-1/2", "B1", "B2") });
    const tried = askedBy({ revision: "B", before: a.json, bases: washers("3", "B1", "B2") });
    expect(numbersOf(tried)).toEqual(["Q-1 closed 2.5 B1 B2"]);
    const back = askedBy({ revision: "B", before: tried.json, bases: washers("2-1/2", "B1", "B2") });
    expect(numbersOf(back)).toEqual(["Q-1 open 2.5 B1 B2"]);
  });

  it("another rule of the same base is another question; the limit alone changes the figures of the same", () => {
    const a = askedBy({ revision: "A", bases: washers("2-1/2", "B1") });
    const b = askedBy({ revision: "B", before: a.json, bases: [{ mark: "B1", hole: "2" }] });
    expect(b.summary.questions.map(({ number, rule, limit }) => [number, rule, limit])).toEqual([
      ["Q-1", "washer-cover", 2.75],
      ["Q-2", "base-plate-hole", 2.0625],
    ]);
    expect(b.questions[0]?.text).toContain("the limit was then 2-7/8 in, now 2-3/4 in.");
  });

  it("stand on the sheets of the first package, and one made again from what it made has its bytes", () => {
    const revision = { revision: "A", bases: [...washers("2-1/2", "B1", "B2"), ...washers("2-3/4", "B3")] };
    const first = packageOf(revision);
    expect(first.text("T-B3_rev-A_NOT-RELEASED_sheet.svg")).toContain("QUESTION OPEN: Q-2");
    expect(hashesOf(packageOf({ ...revision, before: first.json }))).toEqual(hashesOf(first));
    expect(JSON.parse(first.text("_questions.json")).questions).toEqual(first.summary.questions);
  });

  it("stand in the rows that they are of, and on no other", () => {
    const { summary } = packageOf({
      revision: "A",
      bases: [...washers("2-1/2", "B1", "B2"), { mark: "B3", hole: "2" }],
    });
    const asked = summary.questions.flatMap(({ number, rule, places }) =>
      places.flatMap(({ mark, subjects }) => subjects.map((subject) => `${mark} ${rule} ${subject} ${number}`)),
    );
    const rows = summary.bases.flatMap(({ mark, checks }) =>
      checks.flatMap(({ rule, subject, question }) =>
        question === undefined ? [] : `${mark} ${rule} ${subject} ${question}`,
      ),
    );
    expect(rows.toSorted()).toEqual(asked.toSorted());
    expect(rows.length).toBeGreaterThan(8);
  });

  it("of bases that share a template stand on its sheet, each once", () => {
    const shared = ["B1", "B2"].map((mark) => ({ mark, template: "T1", washer: mark === "B1" ? "2-1/2" : "2-3/4" }));
    expect(packageOf({ revision: "A", bases: shared }).text("for-B1_NOT-RELEASED_sheet.svg")).toMatch(
      /QUESTION OPEN: Q-1,\s*Q-2/,
    );
  });

  it("one who says the same for each base by itself answers one question", () => {
    const said = ["B1", "B2"].map(
      (mark) => `{ mark: ${mark}, rule: washer-cover, by: J. Doe, date: 2026-11-20, text: as drawn }`,
    );
    const made = packageOf({ revision: "A", bases: washers("2-1/2", "B1", "B2", "B3"), head: [`answers: [${said}]`] });
    expect(numbersOf(made)).toEqual(["Q-1 answered 2.5 B1 B2", "Q-1.2 open 2.5 B3"]);
  });

  it("and all that is said of them are the same when any revision is made again", () => {
    const mark = fc.constantFrom("B1", "B2", "B3", "B4");
    const base = fc.record({
      mark,
      washer: fc.constantFrom("2-1/2", "2-5/8", "3"),
      hole: fc.constantFrom("2-1/16", "2"),
    });
    const said = fc.record({
      mark,
      number: fc.integer({ min: 1, max: 4 }),
      byNumber: fc.boolean(),
      isAnswer: fc.boolean(),
    });
    const revision = fc.record({
      bases: fc.uniqueArray(base, { minLength: 1, maxLength: 4, selector: (each) => each.mark }),
      said: fc.array(said, { maxLength: 2 }),
    });
    fc.assert(
      fc.property(fc.array(revision, { minLength: 2, maxLength: 4 }), (revisions) => {
        let before: string | undefined;
        for (const [i, { bases, said: all }] of revisions.entries()) {
          const head = ["answers", "accepted"].map((key) => {
            const lines = all.filter(
              ({ isAnswer, byNumber }) => isAnswer === (key === "answers") && (i > 0 || !byNumber),
            );
            return `${key}: [${lines.map(saidText)}]`;
          });
          const made = packageOf({ revision: "ABCD".charAt(i), bases, head, before, unwritten: true });
          const again = packageOf({ revision: "ABCD".charAt(i), bases, head, before: made.json, unwritten: true });
          if (!asksByNewNumber(all, made.summary.questions, before)) expect(again.summary).toEqual(made.summary);
          before = made.json;
        }
      }),
      { numRuns: 25 },
    );
  });

  it("do not hang on the order of the bases", () => {
    const bases = [...washers("2-1/2", "B1", "B2", "B10"), ...washers("2-3/4", "B3", "B4"), { mark: "B5", hole: "2" }];
    const known = askedBy({ revision: "A", bases: bases.slice(0, 4) });
    const asWritten = [undefined, known.json].map((before) => numbersOf(askedBy({ revision: "B", before, bases })));
    fc.assert(
      fc.property(fc.shuffledSubarray(bases, { minLength: bases.length }), (shuffled) => {
        const found = [undefined, known.json].map((before) =>
          numbersOf(askedBy({ revision: "B", before, bases: shuffled })),
        );
        expect(found).toEqual(asWritten);
      }),
      { numRuns: 8 },
    );
  });

  it("a register of another job, or none that can be read, is not gone on from", () => {
    const a = askedBy({ revision: "A", bases: washers("2-1/2", "B1") });
    const other = a.json.replaceAll("24-118", "99-001");
    const bases = washers("2-1/2", "B2");
    expect(numbersOf(askedBy({ revision: "B", before: other, bases }))).toEqual(["Q-1 open 2.5 B2"]);
    const broken = askedBy({ revision: "B", before: "{", bases });
    expect(broken.findings.map(({ severity, code }) => [severity, code])).toEqual([["warning", "question-register"]]);
    expect(numbersOf(broken)).toEqual(["Q-1 open 2.5 B2"]);
  });

  it.each([
    ["it is not there", {}, "there is no file before.json"],
    [
      "it is no register",
      { "before.json": '{ "job": { "number": "24-118", "revision": "A" } }' },
      "before they were numbered",
    ],
    ["a number stands in it twice", { "before.json": "TWICE" }, "has Q-1 twice"],
    ["it is of another job", { "before.json": "OTHER" }, "is the register of job 99-001, and this is job 24-118"],
  ])("a register that the job names is a fault where %s", (_, files: Record<string, string>, words) => {
    const { json, summary } = askedBy({ revision: "A", bases: washers("2-1/2", "B1") });
    const made: Record<string, string> = {
      TWICE: JSON.stringify({ job: summary.job, questions: [...summary.questions, ...summary.questions] }),
      OTHER: json.replaceAll("24-118", "99-001"),
    };
    const handed = Object.fromEntries(Object.entries(files).map(([name, text]) => [name, made[text] ?? text]));
    const run = () =>
      askedBy({ revision: "B", bases: washers("3", "B1"), head: ["questions: before.json"], files: handed });
    expect(run).toThrow("a job with errors has no files");
    expect(registerFaults(handed)).toEqual([expect.stringContaining(words)]);
  });
});

const hashesOf = ({ files }: ReturnType<typeof packageOf>) => files.map(({ path, sha256 }) => `${sha256} ${path}`);

function saidText({ mark, number, byNumber }: { mark: string; number: number; byNumber: boolean }): string {
  const about = byNumber ? `question: Q-${number}` : `mark: ${mark}, rule: washer-cover`;
  return `{ ${about}, by: J. Doe, date: 2026-11-20, text: as drawn }`;
}

/** What is said to a number before it is given holds once it was. */
function asksByNewNumber(
  said: readonly { number: number; byNumber: boolean }[],
  questions: readonly { number: string }[],
  before: string | undefined,
): boolean {
  const known = before === undefined ? "" : before;
  const isNew = (number: string) => !known.includes(`"number":"${number}"`);
  return said.some(
    ({ number, byNumber }) =>
      byNumber && isNew(`Q-${number}`) && questions.some((each) => each.number === `Q-${number}`),
  );
}

function registerFaults(files: Readonly<Record<string, string>>): readonly string[] {
  return tryPackage({ revision: "B", bases: washers("3", "B1"), head: ["questions: before.json"], files }).findings.map(
    ({ message }) => message,
  );
}

describe("release", () => {
  const open = washers("2-1/2", "B1");
  const stems = ({ baseFiles }: ReturnType<typeof packageOf>) =>
    baseFiles.filter((path) => path.startsWith("cut/") || path.startsWith("sheets/"));

  it("is stopped by an open question, of its own template alone", () => {
    const made = packageOf({ revision: "A", bases: [...open, FINE] });
    const byMark = (mark: string) => stems(made).filter((path) => path.includes(`T-${mark}_`));
    expect(byMark("B1").length).toBeGreaterThan(2);
    expect(byMark("B1").filter((path) => !path.includes("NOT-RELEASED"))).toEqual([]);
    expect(byMark("B9").filter((path) => path.includes("NOT-RELEASED"))).toEqual([]);
    expect(made.summary.bases.map(({ template }) => template.released)).toEqual([false, true]);
    expect(made.summary.bases.map(({ held }) => held)).toEqual([false, false]);
  });

  it("is stopped for every base that a template serves, by the question of one of them", () => {
    const shared = [
      { mark: "B1", washer: "3", template: "T1" },
      { mark: "B2", washer: "2-1/2", template: "T1" },
    ];
    const made = packageOf({ revision: "A", bases: shared });
    expect(stems(made).filter((path) => !path.includes("NOT-RELEASED"))).toEqual([]);
    const sheet = made.text("for-B1_NOT-RELEASED_sheet.svg");
    expect(sheet).toContain("QUESTION OPEN");
    expect(sheet).toContain("NOT RELEASED");
  });

  it("goes on with an answer, or where somebody accepts, and the row keeps its fail", () => {
    const said = "mark: B1, rule: washer-cover, value: 2-1/2, by: J. Doe, date: 2026-11-20, text: as drawn";
    for (const key of ["answers", "accepted"]) {
      const made = packageOf({ revision: "A", bases: open, head: [`${key}: [{ ${said} }]`] });
      expect(stems(made).filter((path) => path.includes("NOT-RELEASED"))).toEqual([]);
      expect(numbersOf(made)).toEqual([`Q-1 ${key === "answers" ? "answered" : "accepted"} 2.5 B1`]);
      const rows = made.summary.bases[0]?.checks.filter(
        ({ rule, status }) => rule === "washer-cover" && status === "fail",
      );
      expect(rows).toHaveLength(4);
      expect(rows?.every(({ answer, accepted }) => (key === "answers" ? answer : accepted)?.by === "J. Doe")).toBe(
        true,
      );
      expect(made.text("_sheet.svg")).toContain(
        key === "answers" ? "ANSWERED BY J. Doe, 2026-11-20" : "RELEASE ACCEPTED BY J. Doe, 2026-11-20",
      );
      expect(made.text("ledger.csv")).toContain(
        key === "answers" ? "as drawn" : "RELEASE ACCEPTED WITH THE QUESTION OPEN: as drawn",
      );
    }
  });

  it("an acceptance of another value does not hold, and one that is still asked stays in the letter", () => {
    const accepted = (value: string) => [
      `accepted: [{ mark: B1, rule: washer-cover, value: ${value}, by: J. Doe, date: 2026-11-20, text: as drawn }]`,
    ];
    const other = packageOf({ revision: "A", bases: open, head: accepted("2-5/8") });
    expect(numbersOf(other)).toEqual(["Q-1 open 2.5 B1"]);
    expect(other.summary.answersNotUsed.map(({ kind, why }) => [kind, why])).toEqual([
      ["accepted", "washer-cover A1: answered for 2-5/8 in, now 2-1/2 in: the question is open again"],
    ]);
    expect(packageOf({ revision: "A", bases: open, head: accepted("2-1/2") }).text("letter.txt")).toMatch(
      /accepted by J\. Doe,\s+2026-11-20/,
    );
  });

  it("a preliminary job is as it was: its sheet without, its files to cut by with the words in the name", () => {
    const made = packageOf({ revision: "A", status: "preliminary", bases: [...open, FINE] });
    const [sheets, cut] = [/^sheets\//, /^cut\//].map((folder) => stems(made).filter((path) => folder.test(path)));
    expect(sheets?.filter((path) => path.includes("NOT-RELEASED"))).toEqual([]);
    expect(cut?.filter((path) => !path.includes("NOT-RELEASED"))).toEqual([]);
    expect(made.text("T-B1_rev-A_sheet.svg")).toContain("QUESTION OPEN: Q-1 (PRELIMINARY)");
  });

  it("a number that is known stands on the sheet", () => {
    const before = packageOf({ revision: "A", bases: open }).json;
    expect(packageOf({ revision: "B", before, bases: open }).text("_sheet.svg")).toContain(
      "NOT RELEASED, QUESTION OPEN: Q-1",
    );
  });
});

describe("an answer by number", () => {
  const open = [...washers("2-1/2", "B1", "B2"), ...washers("2-3/4", "B3")];
  const before = askedBy({ revision: "A", bases: open }).json;
  const answered = (words: string) => [`answers: [{ ${words}, by: J. Doe, date: 2026-11-20, text: as drawn }]`];

  it("is to that question alone, also without a value", () => {
    const made = askedBy({ revision: "B", before, bases: open, head: answered("question: Q-1") });
    expect(numbersOf(made)).toEqual(["Q-1 answered 2.5 B1 B2", "Q-2 open 2.75 B3"]);
    const valued = askedBy({ revision: "B", before, bases: open, head: answered("question: q2, value: 2-3/4") });
    expect(numbersOf(valued)).toEqual(["Q-1 open 2.5 B1 B2", "Q-2 answered 2.75 B3"]);
  });

  it("does not hold for a value that changed, and holds on where it did not", () => {
    const head = answered("question: Q-1, value: 2-1/2");
    const bases = [...washers("2-1/2", "B1"), ...washers("2-5/8", "B2")];
    expect(numbersOf(askedBy({ revision: "B", before, bases, head }))).toEqual([
      "Q-1 answered 2.5 B1",
      "Q-1.2 open 2.625 B2",
      "Q-2 closed 2.75 B3",
    ]);
  });

  it.each([
    ["question: Q-9", "no earlier package that is at hand asked Q-9"],
    ["question: Q-2, value: 2-5/8", "answered for 2-5/8 in, now 2-3/4 in: the question is open again"],
  ])("that fits nothing is told: %s", (words, why) => {
    const made = askedBy({ revision: "B", before, bases: open, head: answered(words) });
    expect(made.summary.answersNotUsed.map((each) => each.why)).toEqual([expect.stringContaining(why)]);
  });

  it("without a register is told, not guessed", () => {
    const made = askedBy({ revision: "B", bases: open, head: answered("question: Q-1") });
    expect(made.summary.answersNotUsed.map((each) => each.why)).toEqual([
      expect.stringContaining("name the one that did under questions"),
    ]);
    expect(numbersOf(made)).toEqual(["Q-1 open 2.5 B1 B2", "Q-2 open 2.75 B3"]);
  });

  it.each([
    ["question: Q-1, mark: B1", "is named beside mark"],
    ["mark: B1", "is required; allowed is the number of the question"],
    ["question: seven", "is not the number of a question, as Q-7"],
  ])("is a fault as %s", (words, message) => {
    const { findings } = tryPackage({ revision: "B", before, bases: open, head: answered(words) });
    expect(findings.map((each) => each.message)).toEqual([expect.stringContaining(message)]);
  });
});
