/** Whatever is wrong with a file, it is said in the program's own words: none of the libraries that read it. */
import fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { readSummary } from "../../src/compare/index.js";
import type { Finding } from "../../src/diagnostics/finding.js";
import { readJob } from "../../src/job/index.js";
import { readCsv } from "../../src/readers/csv.js";
import { openWorkbook } from "../../src/readers/workbook.js";
import { readYaml } from "../../src/readers/yaml.js";
import { vocabulary } from "../../src/tasks/open.js";
import { eachChanged, starterValue } from "../hostile.js";

/** Words of zod, yaml, papaparse, fflate, read-excel-file and of the engine itself. */
const FOREIGN =
  /Invalid (input|option|discriminator|string)|expected .* received|Too (small|big)|Unrecognized|Implicit (keys|map)|flow (map|sequence|seq)|compact mapping|block (map|seq|collection)|Nested mappings|plain scalar|Unresolved|Unexpected (scalar|token|end)|collection|UndetectableDelimiter|Quoted field|Trailing quote|invalid (zip|distance|block|length)|unexpected EOF|Cannot read propert|is not (a function|iterable|defined)|call stack|undefined|NaN|\[object |is not valid JSON|JSON at position|RangeError|TypeError/i;

const wordsOf = (findings: readonly Finding[]): string =>
  findings.map(({ message, hint = "" }) => `${message} ${hint}`).join("\n");
const expectOwn = (findings: readonly Finding[]): void => {
  expect(wordsOf(findings)).not.toMatch(FOREIGN);
};

const cut = (text: string, changes: readonly (readonly [number, number, string])[]): string =>
  changes.reduce((now, [at, length, put]) => now.slice(0, at) + put + now.slice(at + length), text);
const changesOf = (length: number) =>
  fc.array(
    fc.tuple(
      fc.nat(length),
      fc.nat(6),
      fc.constantFrom(
        "",
        '"',
        "'",
        "[",
        "}",
        ": ",
        "- ",
        "&a ",
        "*a",
        "!t ",
        "@",
        "%",
        "|",
        "?",
        "\t",
        "\n",
        "\\q",
        ",",
        "x",
      ),
    ),
    { minLength: 1, maxLength: 4 },
  );

describe("the words of a fault", () => {
  it("of YAML in any state are the program's own", () => {
    const text =
      'job: { number: "1", title: a }\nlist:\n  - a: 1\n    b: [1, 2, "x"]\n  - |\n    text\nlast: &n { k: *n }\n';
    fc.assert(
      fc.property(changesOf(text.length), (changes) => expectOwn(readYaml(cut(text, changes), "j").findings)),
      { numRuns: 400 },
    );
  });

  it("of a job whose values are of other kinds are the program's own", { timeout: 120_000 }, () => {
    const kinds = ["__list__", "__map__", "__empty__"];
    let index = 0;
    for (const changed of eachChanged(starterValue("layout"), () => kinds[index++ % 3] ?? "", null)) {
      const job = JSON.stringify(changed)
        .replace('"__list__"', "[1, [2]]")
        .replace('"__map__"', "{ kind: [1] }")
        .replace('"__empty__"', "[]");
      expectOwn(readJob({ job: "j", files: new Map([["j", job]]) }, { date: "2026-01-01", vocabulary }).findings);
    }
    for (const whole of [
      "bases: x",
      "bases: [1]",
      "bases: [[1]]",
      "bases: { a: 1 }",
      "grid: 1",
      "answers: [1]",
      "job: []",
      "severities: []",
      "control: {}",
    ])
      expectOwn(
        readJob({ job: "j", files: new Map([["j", `${whole}\n`]]) }, { date: "2026-01-01", vocabulary }).findings,
      );
    expect(index).toBeGreaterThan(100);
  });

  it("of CSV in any state are the program's own", () => {
    const text = 'Mark,"Rod ""dia",x\nB1,"3/4\n",1\n';
    fc.assert(
      fc.property(changesOf(text.length), (changes) => expectOwn(readCsv(cut(text, changes), "s.csv").findings)),
      { numRuns: 150 },
    );
  });

  it("of a summary of another shape are the program's own", () => {
    const good = {
      schema: 1,
      job: { number: "1", title: "", revision: "", status: "", unit: "in", editions: {} },
      bases: [
        {
          mark: "B1",
          quantity: 1,
          held: false,
          template: {
            mark: "T1",
            quantity: 1,
            outline: { kind: "path", extent: [0, 0, 1, 1], area: 1, perimeter: 4 },
            thickness: 1,
            netArea: 1,
            weight: { value: 1, unit: "lb" },
            cutLength: 1,
            pierces: 1,
            holes: [{ tag: "A1", role: "rod", x: 0, y: 0, diameter: 1, made: "cut" }],
          },
          checks: [],
          files: [{ kind: "k", path: "p", bytes: 1, sha256: "0".repeat(64) }],
        },
      ],
      checks: [],
      files: [],
    };
    let count = 0;
    for (const changed of eachChanged(
      good,
      () => "\u0000",
      (key) => `${key}x`,
    )) {
      for (const value of ['"x"', "null", "[]", "{}", "-1", "1.5"]) {
        const json = JSON.stringify(changed).replace('"\\u0000"', value);
        expectOwn(readSummary([new TextEncoder().encode(json)], "summary.json").findings);
        count += 1;
      }
    }
    for (const json of ["", "{", "[]", "null", '{"bases":[{', '{"bases":1}', "x"])
      expectOwn(readSummary([new TextEncoder().encode(json)], "summary.json").findings);
    expect(count).toBeGreaterThan(200);
  });

  it("of a workbook in any state are the program's own, also where its sheet is named", {
    timeout: 120_000,
  }, async () => {
    const rows = [
      [{ value: "Mark" }, { value: "Rod dia" }],
      [{ value: "B1" }, { value: 0.75 }],
    ];
    const bytes = new Uint8Array(await writeWorkbook(rows as never, { sheet: "Bases" }).toBuffer());
    const files = unzipSync(bytes);
    const [names, puts] = [Object.keys(files), ["", "<", "/>", '"', "rId9", "&", "x", "</sheet>", "worksheets/"]];
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...names),
        fc.array(fc.tuple(fc.nat(4000), fc.nat(60), fc.constantFrom(...puts)), { minLength: 1, maxLength: 3 }),
        fc.constantFrom(undefined, "Bases", "bases", "__proto__"),
        async (name, changes, sheet) => {
          const content = cut(strFromU8(files[name] ?? new Uint8Array()), changes);
          const damaged = zipSync({ ...files, [name]: strToU8(content) });
          expectOwn((await openWorkbook(damaged, "s.xlsx", sheet)).findings);
        },
      ),
      { numRuns: 150 },
    );
    for (const gone of names) {
      const { [gone]: _, ...rest } = files;
      for (const sheet of [undefined, "Bases", "Other"])
        expectOwn((await openWorkbook(zipSync(rest), "s.xlsx", sheet)).findings);
    }
  });
});
