/** A job file in two parts: the person's is kept byte for byte, and a change below the marker is seen. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { joinJob, splitJob } from "../../../../src/tasks/job-parts.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const text = (of: Uint8Array): string => new TextDecoder().decode(of);
const BELOW = "bases:\n  - mark: B1\n";

it("gives back what stands above, any bytes, and again the same file", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (own) => {
      const whole = joinJob(own, BELOW);
      const parts = splitJob(whole);
      expect(parts?.isUnchanged).toBe(true);
      const gap = own.length === 0 || own.at(-1) === 10 ? [] : [10];
      expect([...(parts?.own ?? [])]).toEqual([...own, ...gap]);
      expect(joinJob(parts?.own ?? own, BELOW)).toEqual(whole);
    }),
  );
});

it.each([
  ["a value", (whole: string) => whole.replace("mark: B1", "mark: B2"), false],
  ["a line more", (whole: string) => `${whole}  - mark: B2\n`, false],
  ["a comment", (whole: string) => whole.replace("bases:", "# mine\nbases:"), false],
  ["the line ends of another system", (whole: string) => whole.replaceAll("\n", "\r\n"), true],
  ["a blank line at the end, or none", (whole: string) => `${whole.trimEnd()}\n\n`, true],
  ["what stands above", (whole: string) => whole.replace("units: in", "units: mm # mine"), true],
])("%s: changed below or not", (_what, change, isUnchanged) => {
  const whole = text(joinJob(bytes("units: in\n"), BELOW));
  expect(change(whole)).not.toBe(whole);
  expect(splitJob(bytes(change(whole)))?.isUnchanged).toBe(isUnchanged);
});

it("is no such file without its marker", () => {
  expect(splitJob(bytes("job: { number: 1 }\nbases: []\n"))).toBeNull();
  expect(splitJob(bytes(""))).toBeNull();
  expect(splitJob(bytes("#### sha256 of something else\n"))).toBeNull();
});
