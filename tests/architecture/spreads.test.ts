/**
 * A list of any length is never handed over as arguments: `Math.max(...list)` and `items.push(...list)` overflow the stack at
 * some ten thousand. `leastOf` and `greatestOf` of src/units/extremes.ts, a loop, or a parameter that is a list do not.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { greatestOf, leastOf } from "../../src/units/extremes.js";

const source = fileURLToPath(new URL("../../src", import.meta.url));

/** What may be called with a spread, since each such list is short by its making. */
const FEW: Readonly<Record<string, string>> = {
  findNode: "keys of a path in a document",
  textOf: "keys of a path in a document",
  placeIn: "keys of a path in a document",
  base: "other names of one heading",
  text: "other names of one heading",
  refused: "words of a command line",
  "String.fromCharCode": "the first 4096 bytes of a file",
  "gaps.splice": "two parts of one gap",
  stroke: "parts of one shape; strokeOf takes lists",
  fill: "corners of one shape",
  line: "two ends",
  row: "fields of one row of a title block",
  write: "the arguments that were handed in",
  make: "the arguments that were handed in",
  phrases: "ways of writing one thing, a table of the program",
  readWays: "parsers of one form",
  return: "rest parameters of a function in place",
  put: "items of one detail; putAll takes lists",
};

interface Spread {
  readonly callee: string;
  readonly line: number;
}

/** At a place of code: a comment, a text between quotes, a pattern. */
const BLANK =
  /\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*'|(?<=(?:[(,=:!&|?{};[]|=>|return)\s*)\/(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n[])+\//y;
/** Inside a template: what stands up to its end or up to a value in it. */
const WORDS = /(?:[^`\\$]|\\[\s\S]|\$(?!\{))+/y;

/** Begins a value in a template. */
const VALUE = "${";

/** The length of what is no code at a place; 0: of none. */
function blankAt(text: string, at: number, isTemplate: boolean): number {
  const pattern = isTemplate ? WORDS : BLANK;
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0].length ?? 0;
}

/** The text with what is no code blanked, and with the braces of values in templates kept. */
function codeOf(text: string): string {
  const open: string[] = [];
  let code = "";
  while (code.length < text.length) {
    const isTemplate = open.at(-1) === "`";
    const length = blankAt(text, code.length, isTemplate);
    const sign = isTemplate && text.startsWith(VALUE, code.length) ? VALUE : text.charAt(code.length);
    if (length > 0) code += text.slice(code.length, code.length + length).replace(/[^\n]/g, " ");
    else {
      code += sign;
      if (sign === "`" && isTemplate) open.pop();
      else if (sign === "`" || sign.endsWith("{")) open.push(sign);
      else if (sign === "}") open.pop();
    }
  }
  return code;
}

/** Calls of a text with a spread among their arguments; rest parameters are none. */
function spreadsOf(text: string): readonly Spread[] {
  const code = codeOf(text);
  const open: { readonly sign: string; readonly at: number }[] = [];
  const found: Spread[] = [];
  for (let at = 0; at < code.length; at += 1) {
    const sign = code[at] ?? "";
    if ("([{".includes(sign)) open.push({ sign, at });
    else if (")]}".includes(sign)) open.pop();
    else if (code.startsWith("...", at)) {
      const around = open.at(-1);
      at += 2;
      if (around?.sign !== "(" || /^\.\.\w+\??:/.test(code.slice(at - 1, at + 80))) continue;
      const callee = /(\w[\w.]*)(?:<[^()]*>)?\s*$/.exec(code.slice(Math.max(0, around.at - 200), around.at))?.[1];
      if (callee !== undefined) found.push({ callee, line: code.slice(0, at).split("\n").length });
    }
  }
  return found;
}

describe("spreads of lists into arguments", () => {
  const files = readdirSync(source, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));
  const all = files.flatMap((file) =>
    spreadsOf(readFileSync(join(source, file), "utf8")).map((spread) => ({ file, ...spread })),
  );

  it("stand nowhere but where the list is short by its making", () => {
    const wrong = all.filter(({ callee }) => !Object.hasOwn(FEW, callee));
    expect(wrong.map(({ file, line, callee }) => `${file}:${line}: ${callee}(...)`)).toEqual([]);
  });

  it("are found where they are", () => {
    expect(all.length).toBeGreaterThan(20);
  });

  it.each([
    ["Math.max(...values)", ["Math.max"]],
    ["Math.max(0, ...values.map(({ x }) => x))", ["Math.max"]],
    ["a.push(\n  ...f(b),\n)", ["a.push"]],
    ["call<Kind>(...x)", ["call"]],
    ["Math.max(...[...a, ...b])", ["Math.max"]],
    ["const all = [...a, ...b]", []],
    ["const f = (...rest: readonly A[]) => rest", []],
    ["function f(...rest: A[]): B {}", []],
    ["f({ ...a }, [...b])", []],
    ["// Math.max(...x)", []],
    ['g("Math.max(...x)")', []],
    ["g(`Math.max(...x)`)", []],
    [`g(\`\${a}...\`)`, []],
    [`g(\`\${Math.max(...x)} of it's \${b}\`); push(...y)`, ["Math.max", "push"]],
    [`g([\`\${a} is none\`]); const b = { ...c, d: \`\${e}\` }`, []],
    [`f(\`\${g({ a: \`}\${b}\` })}\`, ...x)`, ["f"]],
    ['f(/[(`"/]/, ...x)', ["f"]],
  ])("%s", (text, callees) => {
    expect(spreadsOf(text).map(({ callee }) => callee)).toEqual(callees);
  });
});

describe("the least and the greatest", () => {
  const many = Array.from({ length: 1_000_000 }, (_, i) => (i * 7919) % 1_000_003);

  it("of a million", () => {
    expect([leastOf(many), greatestOf(many)]).toEqual([0, 1_000_002]);
  });

  it("are those of Math.min and Math.max, with floor and ceiling, of none too", () => {
    for (const values of [[], [3], [3, -4, 8], [-0, 0], [Number.NaN, 1]]) {
      expect(greatestOf(values)).toBe(Math.max(...values));
      expect(leastOf(values)).toBe(Math.min(...values));
      expect(greatestOf(values, 5)).toBe(Math.max(5, ...values));
      expect(leastOf(values, -5)).toBe(Math.min(-5, ...values));
    }
  });
});
