/** `table` and `thicknesses` of a shop file: what they may be, and what a shop that names neither leaves unchecked. */
import { describe, expect, it } from "vitest";
import { inches, millimetres } from "../../../src/units/index.js";
import { faultsOf, inputsOf, jobOf, withBase } from "./files.js";

const plasma = String(inputsOf("").files.get("templates/shops/plasma.yaml"));
const bare = plasma.replace(/^table:.*\n/m, "").replace(/^thicknesses:\n( .*\n)*/m, "");
const job = withBase({}).replace("rules: us", "rules: us\nshop: ./my.yaml");
const shopOf = (...lines: readonly string[]) => jobOf(job, { "./my.yaml": `${bare}\n${lines.join("\n")}\n` }).shop;
const faults = (...lines: readonly string[]) => faultsOf(job, { "./my.yaml": `${bare}\n${lines.join("\n")}\n` });

describe("table and thicknesses of a shop file", () => {
  it("are read, the thicknesses for every material or by material", () => {
    const shop = shopOf("table: { x: 60, y: 10' }", "thicknesses: [1/4, 6 mm]");
    expect(shop.table).toMatchObject({ value: { x: inches(60), y: inches(120) }, from: "shop my" });
    const list = [inches(0.25), millimetres(6)];
    expect(shop.thicknesses).toMatchObject({ steel: { value: list }, plywood: { value: list } });
    const own = shopOf("thicknesses: { plywood: [3/4] }").thicknesses;
    expect(own).toMatchObject({ steel: { kind: "missing" }, plywood: { value: [inches(0.75)] } });
  });

  it("may be left out: what hangs on them is then not checked, by its key", () => {
    expect(shopOf()).toMatchObject({
      table: { kind: "missing", key: "table of the shop file" },
      thicknesses: { steel: { kind: "missing", key: "thicknesses of the shop file" } },
    });
  });

  it.each([
    ["table: { x: 60 }", "y: is required"],
    ["table: { x: 60, y: 0 }", '"0" is not above zero'],
    ["thicknesses: []", "a list of one thickness or more"],
    ["thicknesses: [1/4, 11/8]", "1-1/8 or 1-3/8?"],
    ["thicknesses: 1/4", "a list of thicknesses, or a group of keys: steel, plywood"],
    ["thicknesses: { wood: [3/4] }", "wood"],
  ])("%s is a fault", (line, words) => {
    expect(faults(line).join("\n")).toContain(words);
  });

  it("are in every shop file that comes with the program", () => {
    for (const [name, text] of inputsOf("").files) {
      if (!name.startsWith("templates/shops/")) continue;
      expect([name, /^table:/m.test(String(text)), /^thicknesses:/m.test(String(text))]).toEqual([name, true, true]);
    }
  });
});
