/** One cause, one question: what is joined, what is not, and how it is numbered. */
import { describe, expect, it } from "vitest";
import { build } from "../../../src/tasks/build.js";
import { inputsOf } from "../job/files.js";

interface Written {
  readonly mark: string;
  readonly washer: string;
  readonly quantity?: number;
  readonly rod?: string;
  readonly hole?: string;
}

function questionsOf(bases: readonly Written[], head: readonly string[] = []) {
  const text = [
    'job: { number: "24-118", revision: B, status: released }',
    "units: in",
    ...head,
    "bases:",
    ...bases.map(
      ({ mark, washer, quantity = 1, rod = "1-1/4", hole = "2-1/16" }) =>
        `  - { mark: ${mark}, quantity: ${quantity}, rods: { diameter: ${rod} }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { x: 18, y: 16, thickness: 1, hole: ${hole}, washer: { shape: square, size: ${washer}, thickness: 1/2 } }, template: { thickness: 1/4 } }`,
    ),
    "",
  ];
  const options = { date: "2026-01-01", version: "1", document: null, outputs: ["questions"] } as const;
  const built = build(inputsOf(text.join("\n")), options);
  expect(built.findings).toEqual([]);
  const { questions, files } = built.finish();
  return { questions, csv: new TextDecoder().decode(files[0]?.bytes) };
}

const small = { washer: "2-1/2" };

describe("questions", () => {
  it("four rods of a base are one, with number, job, revision, and every rod", () => {
    const { questions, csv } = questionsOf([{ mark: "B1", quantity: 6, ...small }]);
    expect(
      questions.map(({ number, job, revision, mark, quantity }) => [number, job, revision, mark, quantity]),
    ).toEqual([["Q-1", "24-118", "B", "B1", 6]]);
    expect(questions[0]?.text).toBe(
      "Base B1 (quantity 6), A1 A2 A3 A4: the washer on the base plate is 2-1/2 in; Design Guide 1, 2nd ed., s.2.6: W >= 2 H - d, " +
        "asks for at least 2-7/8 in (square washer 2-1/2 against 2 x hole 2-1/16 - rod 1-1/4). What is required here?",
    );
    const [head, line, ...rest] = csv.split("\r\n");
    expect(head).toMatch(/^number,job,revision,base,quantity,subject,question,/);
    expect(line).toMatch(/^Q-1,24-118,B,B1,6,A1 A2 A3 A4,"Base B1/);
    expect(rest).toEqual([""]);
  });

  it("two bases that say the same are one, with both marks, their rods and how many they are", () => {
    const { questions } = questionsOf([
      { mark: "B3", quantity: 6, ...small },
      { mark: "B4", quantity: 2, ...small },
    ]);
    expect(questions).toHaveLength(1);
    expect(questions[0]).toMatchObject({ number: "Q-1", mark: "B3 B4", quantity: 8 });
    expect(questions[0]?.check.subject).toBe("B3 A1 A2 A3 A4; B4 A1 A2 A3 A4");
    expect(questions[0]?.text).toMatch(
      /^Bases B3 \(quantity 6\), B4 \(quantity 2\), each A1 A2 A3 A4: the washer on the base plate is 2-1\/2 in; /,
    );
  });

  it.each([
    ["another value", { washer: "2-9/16" }],
    ["a value that differs by 1 um", { washer: "2.50004" }],
    ["another limit", { washer: "2-1/2", hole: "2-1/8" }],
  ])("%s is another question", (_, other) => {
    const { questions } = questionsOf([
      { mark: "B3", ...small },
      { mark: "B4", ...other },
    ]);
    const washers = questions.filter(({ check }) => check.rule === "washer-cover");
    expect(washers.map(({ mark }) => mark)).toEqual(["B3", "B4"]);
    expect(new Set(washers.map(({ number }) => number)).size).toBe(2);
  });

  it("numbers follow the bases and go on without a gap; an answer changes none of them", () => {
    const bases = [
      { mark: "B3", ...small, hole: "2" },
      { mark: "B4", ...small },
      { mark: "B5", ...small, hole: "2" },
    ];
    const numbers = ({ questions }: ReturnType<typeof questionsOf>) =>
      questions.map(({ number, mark, check }) => [number, mark, check.rule]);
    const open = numbers(questionsOf(bases));
    expect(open.map(([number]) => number)).toEqual(open.map((_, i) => `Q-${i + 1}`));
    const answer = "{ mark: B4, rule: washer-cover, by: EOR, date: 2026-01-01, text: y }";
    expect(numbers(questionsOf(bases, [`answers: [${answer}]`]))).toEqual(open);
    const part = "{ mark: B3, rule: washer-cover, by: EOR, date: 2026-01-01, text: y }";
    const parted = numbers(questionsOf(bases, [`answers: [${part}]`]));
    expect(parted.filter(([number]) => !number?.includes("."))).toHaveLength(open.length);
    expect(parted.filter(([number]) => number?.includes("."))).toEqual([
      [expect.stringMatching(/^Q-\d\.2$/), "B5", "washer-cover"],
    ]);
  });

  it("rods of two sizes are two causes", () => {
    const groups =
      "groups: [{ rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 12, y: 10 }, baseHole: 2-1/16, washer: { shape: square, size: 2-1/2 } }, { rods: { diameter: 3/4 }, pattern: { kind: points, at: [[0, 0]] }, baseHole: 1-5/16, washer: { shape: round, size: 1-1/2 } }]";
    const text = `job: { number: "1" }\nunits: in\nbases:\n  - { mark: B1, ${groups}, template: { thickness: 1/4 } }\n`;
    const options = { date: "2026-01-01", version: "1", document: null, outputs: [] } as const;
    const built = build(inputsOf(text), options);
    expect(built.findings).toEqual([]);
    const { questions } = built.finish();
    const washers = questions.filter(({ check }) => check.rule === "washer-cover");
    expect(washers.map(({ check }) => check.subject).sort()).toEqual(["A1 A2 A3 A4", "B1"]);
  });

  it("every failing row that asks stands in exactly one question, by mark and subject", () => {
    const text = `job: { number: "1" }\nunits: in\nbases:\n${[
      "  - { mark: B1, quantity: 2, rods: { diameter: 1-1/2, projection: 4, threads: 2 }, pattern: { kind: rectangle, x: 2-3/4, y: 12 }, basePlate: { x: 10, y: 14, thickness: 2, hole: 2, washer: { shape: square, size: 3, thickness: 1/2 } }, grout: 2, concrete: { x: 12, y: 16 }, template: { thickness: 1/4 } }",
      "  - { mark: B2, quantity: 2, member: column, rods: { diameter: 1 }, pattern: { kind: circle, diameter: 5, count: 3, start: on-axis x }, template: { thickness: 1/4 } }",
    ].join("\n")}\n`;
    const built = build(inputsOf(text), { date: "2026-01-01", version: "1", document: null, outputs: [] });
    expect(built.findings).toEqual([]);
    const { questions, summary } = built.finish();
    const failing = summary.bases.flatMap(({ mark, checks }) =>
      checks
        .filter(({ status, severity }) => status === "fail" && severity === "ask")
        .map((check) => ({ mark, ...check })),
    );
    expect(failing.length).toBeGreaterThan(questions.length);
    for (const { mark, rule, subject, value, limit, clause } of failing) {
      const own = questions.filter(
        ({ mark: marks, check }) =>
          marks.split(" ").includes(mark) &&
          check.rule === rule &&
          check.value === value &&
          check.limit === limit &&
          check.clause === clause &&
          check.subject.split(" ").includes(subject),
      );
      expect(own, `${mark} ${rule} ${subject}`).toHaveLength(1);
    }
  });
});
