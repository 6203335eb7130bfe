/** README's table of cells: every example gives what the table says, in inches. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { CellReading } from "../../../../src/schedule/model.js";
import { FORM_NAMES, given, read } from "../../../cell-reading.js";

interface Row {
  readonly name: string;
  readonly read: readonly string[];
  readonly gives: readonly string[];
  readonly words: string;
  readonly asked: readonly string[];
}

const codes = (cell: string): readonly string[] => [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? "");

function tableOf(readme: string): readonly Row[] {
  const [, after = ""] = readme.split("<!-- cells -->\n");
  const lines = after.split("\n\n")[0]?.split("\n").slice(2) ?? [];
  return lines.map((line) => {
    const [, name = "", read = "", gives = "", asked = ""] = line
      .split(" | ")
      .flatMap((cell, index) => (index === 0 ? ["", cell.replace(/^\| /, "")] : [cell.replace(/ ?\|$/, "")]));
    return { name, read: codes(read), gives: codes(gives), words: gives.trim(), asked: codes(asked) };
  });
}

const readme = readFileSync(new URL("../../../../README.md", import.meta.url), "utf8");
const rows = tableOf(readme);

const KINDS: Readonly<Record<string, string>> = {
  blank: "blank",
  "the cell above": "above",
  "the cell of that base": "base B3",
  "the note": "note 2",
};

const keysOf = (reading: CellReading): readonly string[] =>
  reading.kind === "value" ? reading.parts.map(({ key }) => key) : [];

describe("README's table of cells", () => {
  it("is found", () => {
    expect(rows.length).toBeGreaterThan(20);
    expect(rows.flatMap(({ read: texts }) => texts).length).toBeGreaterThan(100);
  });

  it.each(rows.filter(({ name }) => name.startsWith("any")))("$name", ({ read: texts, words, asked }) => {
    for (const text of texts)
      for (const form of ["length", "rods", "plate"] as const)
        expect([text, form, given(read(text, form))]).toEqual([text, form, KINDS[words]]);
    for (const text of asked)
      for (const form of ["length", "rods", "plate"] as const)
        expect([text, form, read(text, form).kind]).toEqual([text, form, "fault"]);
  });

  it.each(rows.filter(({ name }) => !name.startsWith("any")))("$name", ({ name, read: texts, gives, asked }) => {
    const form = FORM_NAMES.find((each) => each === codes(name)[0]);
    expect([name, form]).not.toEqual([name, undefined]);
    if (form === undefined) return;
    for (const text of texts)
      expect([text, given(read(text, form))]).toEqual([text, expect.not.stringMatching(/^(fault|choice|blank)/)]);
    expect([name, [...new Set(texts.flatMap((text) => keysOf(read(text, form))))].sort()]).toEqual([
      name,
      [...gives].sort(),
    ]);
    for (const text of asked)
      expect([text, read(text, form).kind]).toEqual([text, expect.stringMatching(/^(fault|choice)$/)]);
  });

  it("has a row for every form but those of texts, words and points", () => {
    const named = rows.flatMap(({ name }) => codes(name));
    const others = ["text", "note", "word", "yesNo", "finish", "lengths", "point", "points", "holes", "corner"];
    expect([...named, ...others].sort()).toEqual([...FORM_NAMES].sort());
  });
});
