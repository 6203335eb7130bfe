/** Terms of a survey: option before job before default, and the limits of an option. */
import { describe, expect, it } from "vitest";
import { given, missing } from "../../../src/job/model/values.js";
import type { AskedTerms } from "../../../src/survey/index.js";
import { surveyTerms } from "../../../src/survey/index.js";
import type { Length } from "../../../src/units/length.js";
import { inches, millimetres, nanometres } from "../../../src/units/length.js";
import { jobFixture } from "../../fixture.js";

const nothing: AskedTerms = { accuracy: null, height: null, within: null };
const { survey } = jobFixture();

describe("terms of a survey", () => {
  it.each([
    ["in", inches(2)],
    ["mm", millimetres(50)],
  ] as const)("takes the default of %s where neither says how far a point may be off", (unit, within) => {
    const job = { unit, survey: { ...survey, within: missing("survey.within", "not given") } };
    expect(surveyTerms(job, nothing).terms.within).toBe(within);
  });

  it("takes the job's before the default, and what is asked for before the job's", () => {
    const own = { ...survey, accuracy: given(inches(1 / 16), "job"), within: given(inches(3), "job") };
    const job = { unit: "in", survey: own } as const;
    expect(surveyTerms(job, nothing)).toEqual({ terms: { ...own, within: inches(3) }, faults: [] });
    const asked = { accuracy: inches(1 / 8), height: { kind: "top" }, within: inches(4) } as const;
    const { terms } = surveyTerms(job, asked);
    expect(terms.within).toBe(inches(4));
    expect(terms.accuracy).toEqual(given(inches(1 / 8), "option"));
    expect(terms.height).toEqual(given({ kind: "top" }, "option"));
    expect([terms.line, terms.turn]).toEqual([own.line, own.turn]);
  });

  // Smallest lengths there are: 1 nm, nothing, and 1 nm below.
  it.each([
    ["within", 1, []],
    ["within", 0, ["within"]],
    ["accuracy", 0, []],
    ["accuracy", -1, ["accuracy"]],
  ] as const)("%s of %d nm: at fault %j", (term, length: number, faulty) => {
    const value: Length = nanometres(length);
    const { faults } = surveyTerms({ unit: "in", survey }, { ...nothing, [term]: value });
    expect(faults.map((fault) => fault.term)).toEqual(faulty);
  });
});
