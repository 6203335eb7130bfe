import { describe, expect, it } from "vitest";
import { jobRules, rules } from "../../../src/checks/index.js";
import { drawSheet } from "../../../src/sheets/index.js";
import { textsOf } from "./scene-walk.js";
import { sheetCases } from "./sheet-cases.js";

/** Words that a shop would take for something else, or that say nothing to it. */
const FORBIDDEN = [/\bWANTS\b/, /\b[A-Z]+\d+ \+ \d/, /\bKEY:/i, /\bIssued\b/] as const;

const ids = new Set<string>([...rules, ...jobRules].map(({ id }) => id).filter((id) => id.includes("-")));

describe("words of a template's sheet", () => {
  for (const [name, make] of Object.entries(sheetCases)) {
    it(`are those of a shop: ${name}`, () => {
      const scene = drawSheet(make());
      const texts = textsOf(scene.items).map(({ text }) => text);
      for (const word of FORBIDDEN) expect(texts.filter((text) => word.test(text))).toEqual([]);
      expect(texts.filter((text) => ids.has(text.trim()))).toEqual([]);
    });
  }
});
