/** What goes from the engine to the page is the job, whatever of it changed. Invented data. */
import { expect, it } from "vitest";
import type { LiveBase, LiveJob } from "../../../../src/tasks/live/model.js";
import { startReceiving, startSending } from "../../../../src/web/engine/job-change.js";

const base = (mark: string): LiveBase => ({
  ...{ path: `bases[0]`, mark, state: "waiting", held: [], open: 0, worst: null, written: {}, given: {} },
});

const FIRST: LiveJob = {
  ...{
    turn: 1,
    head: null,
    said: { "job.title": "Store" },
    isSettled: false,
    findings: [],
    checks: [],
    layoutHeld: [],
  },
  ...{ questions: [], hasPlan: false, basesIn: "job", unit: "in", files: [], bases: [base("B1"), base("B2")] },
};

it("is put together as it was sent, and keeps what did not change", () => {
  const [send, receive] = [startSending(), startReceiving()];
  const [first, second] = FIRST.bases;
  if (first === undefined || second === undefined) throw new Error("two bases");
  const states: readonly LiveJob[] = [
    FIRST,
    { ...FIRST, turn: 2, said: { "job.title": "Cold store" } },
    { ...FIRST, turn: 3, isSettled: true, bases: [first, base("C7")] },
    { ...FIRST, turn: 4, bases: [second] },
    { ...FIRST, turn: 5, bases: [second, first, base("D1")], layoutHeld: ["north is not given"] },
  ];
  const got = states.map((state) => receive(structuredClone(send(state))));
  expect(got).toEqual(states);
  expect(got[2]?.bases[0]).toBe(got[0]?.bases[0]);
});
