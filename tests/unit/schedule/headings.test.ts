/** The heading table: each way of writing stands for one heading, and its examples can be read. */
import { describe, expect, it } from "vitest";
import { HEADINGS, meaningsOf } from "../../../src/schedule/index.js";
import { faultsOf } from "../job/files.js";

describe("headings", () => {
  it("are found by every way of writing them, whatever case, punctuation and spacing", () => {
    for (const heading of HEADINGS) {
      for (const name of [heading.name, ...heading.also]) {
        for (const written of [
          name,
          name.toUpperCase(),
          ` ${name.replaceAll(" ", "  ")}. `,
          `${name} (in)`,
          name.replaceAll(" ", "-"),
        ]) {
          expect([written, meaningsOf(written, "")[0]]).toEqual([written, heading.name]);
        }
      }
    }
  });

  it.each([
    ["Rod diameter", "Rod dia"],
    ["Rod Ø", "Rod dia"],
    ["Baseplate X", "Base plate X"],
    ["Template thickness", "Template thk"],
    ["Quantity", "Qty"],
    ["Plate thick.", "Base plate thk"],
  ])("%s", (written, name) => {
    expect(meaningsOf(written, "")[0]).toBe(name);
  });

  it("have examples that can be read", () => {
    const whole: Record<string, string> = { Mark: "B1", "Rod dia": "1", X: "12", Y: "10", "Template thk": "1/4" };
    const needs: Record<string, Record<string, string>> = {
      Pattern: {},
      "Bolt circle": { X: "", Y: "", Count: "8", Start: "0" },
      Count: { X: "", Y: "", "Bolt circle": "24", Start: "0" },
      Start: { X: "", Y: "", "Bolt circle": "24", Count: "8" },
      Points: { X: "", Y: "" },
      "Lines X": { X: "", Y: "", "Lines Y": "-6; 6" },
      "Lines Y": { X: "", Y: "", "Lines X": "-9; 9" },
      "Base plate X": { "Base plate Y": "16" },
      "Base plate Y": { "Base plate X": "18" },
      "Pier X": { "Pier Y": "24" },
      "Pier Y": { "Pier X": "24" },
      "Pier corner": { "Pier X": "24", "Pier Y": "24" },
    };
    const ofGrammar = [
      "Kind",
      "Rods",
      "Rod count",
      "Rod material",
      "Pattern size",
      "Pattern pitch",
      "Pitch X",
      "Pitch Y",
    ];
    ofGrammar.push("Base plate size", "Edge distance", "Edge X", "Edge Y", "Pier size", "T.O.C.", "B.O.P.");
    const lists = ["Lines X", "Lines Y", "Points", "Second source", "Nails", "Grout holes"];
    for (const { name, example } of HEADINGS.filter(({ name }) => !ofGrammar.includes(name))) {
      const cells = lists.includes(name) ? [example] : example.split("; ");
      for (const cell of cells) {
        const row = { ...whole, ...needs[name], [name]: cell };
        const text = (values: string[]) => values.map((value) => `"${value}"`).join(",");
        const csv = `${text(Object.keys(row))}\n${text(Object.values(row))}\n`;
        const kinds = name === "Kind" ? `kinds: { ${cell}: {} }\n` : "";
        const job = `job: { number: "1" }\nunits: in\n${kinds}schedule: s.csv\n`;
        expect([name, cell, faultsOf(job, { "s.csv": csv })]).toEqual([name, cell, []]);
      }
    }
  });
});
