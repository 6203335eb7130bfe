/** What the shop rolls and cuts. Its limits, 1-1/2 in and 4 in, are common practice; a shop file has its own. */
import { describe, expect, it } from "vitest";
import { rodThreading } from "../../../src/checks/rules/rod-threading.js";
import { given } from "../../../src/job/model/job.js";
import { groupFixture, shopFixture } from "../../fixture.js";
import { inch, onLine, plus, rowOf, testAtLimit } from "./context.js";

const ANY = () => true;
const { making } = shopFixture().rodShop;

/** A base with one rod of this size, whose hole is of no matter. */
function ofSize(diameter: ReturnType<typeof inch>, threading: "rolled" | "cut") {
  const rod = { diameter, threading: given(threading, "job") };
  return { base: { groups: [groupFixture({ pattern: onLine(0) }, rod)] } };
}

describe("rod-threading", () => {
  testAtLimit({
    name: "rolled up to 1-1/2 in",
    rule: rodThreading,
    at: (delta) => ({
      ...ofSize(inch(1.25), "rolled"),
      shop: {
        rodShop: {
          ...shopFixture().rodShop,
          making: { ...making, rolledUpTo: given(plus(inch(1.25), -delta), "shop test") },
        },
      },
    }),
    passes: -1,
    pick: ANY,
  });

  testAtLimit({
    name: "cut up to 4 in",
    rule: rodThreading,
    at: (delta) => ofSize(plus(inch(4), delta), "cut"),
    passes: -1,
    pick: ANY,
  });

  it.each([
    [1.5, "rolled", "pass"],
    [1.75, "rolled", "fail"],
    [1.75, "cut", "pass"],
    [4, "cut", "pass"],
  ] as const)("%d in %s: %s, of the shop and as advice", (size, threading, status) => {
    const row = rowOf(rodThreading, ofSize(inch(size), threading), ANY);
    expect(row).toMatchObject({ status, severity: "advise", edition: "shop", subject: "group A" });
    expect(row.note).toContain(`thread ${threading}, as the job asks; the shop goes to`);
    expect(row.note).toContain("(common practice)");
  });

  it("takes the shop's own way where the job names none", () => {
    expect(rowOf(rodThreading, {}, ANY).note).toBe("thread rolled; the shop goes to 1-1/2 (common practice)");
  });
});
