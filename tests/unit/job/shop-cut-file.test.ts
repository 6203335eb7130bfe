/** `cutFile.name` and `cutFile.flavour` of a shop file: what they may be, and what is taken where they are left out. */
import { describe, expect, it } from "vitest";
import { faultsOf, inputsOf, jobOf, withBase } from "./files.js";

const plasma = String(inputsOf("").files.get("templates/shops/plasma.yaml"));
const job = withBase({}).replace("rules: us", "rules: us\nshop: ./my.yaml");
const withLine = (line: string) => ({
  "./my.yaml": plasma.replace(/^ {2}flavour: .*\n/m, "").replace(/^( {2}origin: lower left.*)$/m, `$1\n  ${line}`),
});

describe("names and flavour of cut files", () => {
  it("are all parts and polylines where a shop file says nothing, as before there were such keys", () => {
    expect(jobOf(job, { "./my.yaml": plasma }).shop.cutFile).toMatchObject({
      name: ["mark", "quantity", "thickness", "material", "revision"],
      flavour: "polyline",
    });
  });

  it("are as the shop wants them", () => {
    expect(jobOf(job, withLine("name: [thickness, mark]")).shop.cutFile.name).toEqual(["thickness", "mark"]);
    expect(jobOf(job, withLine("flavour: lines")).shop.cutFile.flavour).toBe("lines");
  });

  it.each([
    ["name: [quantity, thickness]", "mark is not in it"],
    ["name: [mark, quantity, quantity]", "quantity stands in it twice"],
    ["name: [mark, weight]", "one of mark, quantity, thickness, material, revision"],
    ["name: mark", "a list of mark, quantity, thickness, material, revision"],
    ["flavour: r12", "one of polyline, lines"],
  ])("%s is a fault that says what is allowed", (line, words) => {
    expect(faultsOf(job, withLine(line)).join("\n")).toContain(words);
  });
});
