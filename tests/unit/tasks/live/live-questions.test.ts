/** Questions answered in a job that is edited: written as a person writes them, and taken back without a trace. Invented data. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkJob } from "../../../../src/tasks/check.js";
import type { AnswerDraft, AskedQuestion } from "../../../../src/tasks/live/model.js";
import { type Live, openLive } from "../../../../src/tasks/live/open-live.js";
import { openJob } from "../../../../src/tasks/open.js";
import { type AskedBase, jobText, packageOf } from "../../../questions-case.js";

const WATCH = { base: "bases[0]", room: { width: 180, height: 150 } };
const SHOP = readFileSync(new URL("../../../../templates/shops/plasma.yaml", import.meta.url), "utf8");

function settle(live: Live): Live {
  while (live.work());
  return live;
}

function open(bases: readonly AskedBase[], head: readonly string[] = []): Live {
  const files = new Map([
    ["job.yaml", jobText({ revision: "A", bases, head })],
    ["templates/shops/plasma.yaml", SHOP],
  ]);
  return settle(openLive({ job: "job.yaml", files }, { date: "2026-11-24" }));
}

function asked(live: Live): readonly AskedQuestion[] {
  return live.questions()?.asked ?? [];
}

function only(live: Live): AskedQuestion {
  const [question, ...others] = asked(live);
  if (question === undefined || others.length > 0) throw new Error("there is not one question");
  return question;
}

const stateOf = (live: Live, mark: string) => live.state().bases.find((base) => base.mark === mark)?.state;

const draftFor = (number: string): AnswerDraft => ({
  number,
  kind: "answered",
  by: "E. Ray, engineer of record",
  date: "2026-11-24",
  text: "As drawn: see detail 4 # S-3.",
});

describe("a question that is answered in place", () => {
  it("is written once for each mark, with the value that was asked, and releases its templates", () => {
    const live = open([{ mark: "B1" }, { mark: "B2" }]);
    const question = only(live);
    expect(stateOf(live, "B1")).toBe("asked");
    const { faults, refused } = live.answer([draftFor(question.number)], WATCH);
    settle(live);
    expect([faults, refused]).toEqual([{}, []]);
    // washer 2-1/2 in over the hole, as the base says
    const entry = (mark: string) =>
      `  - { mark: ${mark}, rule: washer-cover, value: 2.5, by: "E. Ray, engineer of record", date: 2026-11-24, text: "As drawn: see detail 4 # S-3." }`;
    expect(live.text()).toContain(`answers:\n${entry("B1")}\n${entry("B2")}\nbases:`);
    expect(only(live).status).toBe("answered");
    expect([stateOf(live, "B1"), stateOf(live, "B2")]).toEqual(["clear", "clear"]);
  });

  it("is taken back with all that was written of it", () => {
    const live = open([{ mark: "B1" }, { mark: "B2" }]);
    const before = live.text();
    live.answer([draftFor(only(live).number)], WATCH);
    live.edit(only(settle(live)).withdrawal, WATCH);
    expect(live.text()).toBe(before);
    expect(only(settle(live)).status).toBe("open");
  });

  it("is accepted by name and stays a question", () => {
    const live = open([{ mark: "B1" }]);
    live.answer([{ ...draftFor(only(live).number), kind: "accepted" }], WATCH);
    settle(live);
    expect(live.text()).toContain("accepted:\n  - { mark: B1,");
    expect([only(live).status, stateOf(live, "B1")]).toEqual(["accepted", "clear"]);
  });

  it.each([
    ["by", { by: "" }],
    ["date", { date: "24.11.2026" }],
    ["text", { text: "x".repeat(401) }],
    ["text", { text: "two\nlines" }],
  ] as const)("is not written where its %s cannot stand in a job", (field, change) => {
    const live = open([{ mark: "B1" }]);
    const before = live.text();
    const { faults } = live.answer([{ ...draftFor(only(live).number), ...change }], WATCH);
    expect(Object.keys(faults)).toEqual([field]);
    expect(live.text()).toBe(before);
  });

  it("is not taken for a value that is asked no more", () => {
    const live = open([{ mark: "B1" }]);
    const { refused } = live.answer([{ ...draftFor(only(live).number), value: 2.25 }, draftFor("Q-77")], WATCH);
    expect(refused).toEqual([
      expect.stringMatching(/^Q-1: the answer is to 2\.25 in, and 2\.5 is asked now$/),
      expect.stringMatching(/^Q-77: is not asked now/),
    ]);
    expect(only(settle(live)).status).toBe("open");
  });

  it("tells of an answer that answers nothing, and takes it out", () => {
    const stray = "  - { mark: B9, rule: washer-cover, by: E. Ray, date: 2026-11-20, text: fine }";
    const live = open([{ mark: "B1" }], ["answers:", stray]);
    const [unused] = live.questions()?.unused ?? [];
    expect(unused?.why).toContain("the job has no base");
    live.edit(unused?.withdrawal ?? [], WATCH);
    expect(live.text()).toBe(jobText({ revision: "A", bases: [{ mark: "B1" }] }));
  });
});

describe("a job that goes on with the register of the package before", () => {
  it("closes, answers and asks what the next package does", () => {
    const bases = [{ mark: "B1" }, { mark: "B2", washer: "2-3/4" }, { mark: "B3", washer: "2-5/8" }];
    const before = packageOf({ revision: "A", bases, unwritten: true }).json;
    const files = new Map([
      ["job.yaml", jobText({ revision: "B", bases, head: ["questions: before.json"] })],
      ["templates/shops/plasma.yaml", SHOP],
      ["before.json", before],
    ]);
    const live = settle(openLive({ job: "job.yaml", files }, { date: "2026-11-24" }));
    live.edit([{ kind: "set", path: ["bases", 0, "basePlate", "washer", "size"], text: "3" }], WATCH);
    live.edit([{ kind: "set", path: ["bases", 2, "basePlate", "washer", "size"], text: "2-1/4" }], WATCH);
    settle(live).answer([draftFor("Q-2")], WATCH);
    settle(live);
    const opened = openJob({ job: "job.yaml", files: files.set("job.yaml", live.text()) }, { date: "2026-11-24" });
    if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("\n"));
    const made = checkJob(opened.value).questions.map(({ number, status }) => `${number} ${status}`);
    const { asked: now = [], closed = [] } = live.questions() ?? {};
    const shown = [
      ...now.map(({ number, status }) => `${number} ${status}`),
      ...closed.map(({ number }) => `${number} closed`),
    ];
    expect(shown.toSorted()).toEqual(made.toSorted());
    expect(made).toEqual(expect.arrayContaining(["Q-1 closed", "Q-2 answered"]));
  });
});
