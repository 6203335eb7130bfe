/** Words that every object answers to, in every text and under every key that a person can type: data as any other, never a lookup. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { formatFinding } from "../../src/diagnostics/finding.js";
import { readJob } from "../../src/job/index.js";
import type { InputFile } from "../../src/readers/inputs.js";
import { readPoints } from "../../src/readers/points.js";
import { makePackage } from "../../src/tasks/build.js";
import { openJob, vocabulary } from "../../src/tasks/open.js";
import { parseLength } from "../../src/units/index.js";
import { eachChanged, starterValue, type Value } from "../hostile.js";

/** What Object.prototype holds, and the names by which it is reached. */
const WORDS = [...Object.getOwnPropertyNames(Object.prototype), "prototype", "length", "name"];
const FEW = ["constructor", "__proto__", "toString", "hasOwnProperty"];

const templates = new URL("../../templates/", import.meta.url);
const shops = ["plasma", "plasma-metric"].map((name): [string, InputFile] => {
  const path = `templates/shops/${name}.yaml`;
  return [path, new Uint8Array(readFileSync(new URL(`shops/${name}.yaml`, templates)))];
});
const inputsOf = (job: string, files: Readonly<Record<string, string>> = {}) => ({
  job: "job.yaml",
  files: new Map<string, InputFile>([["job.yaml", job], ...shops, ...Object.entries(files)]),
});
const told = (job: string, files: Readonly<Record<string, string>> = {}): readonly string[] => {
  const findings = readJob(inputsOf(job, files), { date: "2026-01-01", vocabulary }).findings.map(formatFinding);
  expect(findings.join("\n")).not.toMatch(/\[native code\]|\[object |function |undefined|BigInt/);
  return findings;
};

describe("a length", () => {
  it.each(WORDS)("in the unit %s is refused", (word) => {
    for (const text of [`12 ${word}`, `12${word}`, `1-1/4 ${word}`, word]) {
      expect(parseLength(text, "in").ok).toBe(false);
      expect(parseLength(text.toLowerCase(), "mm").ok).toBe(false);
    }
  });
});

describe("a job", () => {
  it.each(["us", "layout"])("%s: every text and every key", { timeout: 240_000 }, (starter) => {
    let cases = 0;
    for (const word of FEW) {
      const changes = eachChanged(
        starterValue(starter),
        (text) => (cases % 2 === 0 ? word : `${text} ${word}`),
        () => word,
      );
      for (const changed of changes) {
        cases += 1;
        if (cases % 19 === 0) told(JSON.stringify(changed));
      }
    }
    expect(cases).toBeGreaterThan(500);
  });

  it.each(FEW)("that may be called %s is made", (word) => {
    const value = starterValue("us") as { readonly [key: string]: Value };
    const [first] = value.bases as readonly { readonly [key: string]: Value }[];
    const template = { ...(first?.template as { readonly [key: string]: Value }), mark: `${word}-T` };
    const shop = readFileSync(new URL("shops/plasma.yaml", templates), "utf8").replace(
      /outline: \w+/,
      `outline: ${word}`,
    );
    const job = JSON.stringify({
      ...value,
      shop: "./own.yaml",
      job: { number: word, title: word, revision: word.slice(0, 12), status: "released" },
      bases: [{ ...first, mark: word, template }],
    });
    const opened = openJob(inputsOf(job, { "./own.yaml": shop }), { date: "2026-01-01" });
    if (!opened.ok) throw new Error(opened.findings.map(formatFinding).join("\n"));
    const outputs = ["cut-joined", "cut-r12", "ledger", "questions", "summary"] as const;
    const made = makePackage(opened.value, { version: "0", document: null, outputs });
    const [base] = [...made.bases];
    expect(base?.summary.mark).toBe(word);
    expect(base?.files).toHaveLength(2);
    for (const { bytes } of base?.files ?? [])
      expect(
        new TextDecoder()
          .decode(bytes)
          .split("\r\n")
          .filter((line) => line === word).length,
      ).toBeGreaterThan(1);
    expect(made.finish().summary.job.number).toBe(word);
  });
});

describe("a spreadsheet", () => {
  const schedule = readFileSync(new URL("schedule.csv", templates), "utf8");
  const head =
    "job: { number: '1', title: t, revision: A, status: released, date: 2026-11-24 }\nunits: in\nschedule: s.csv\n";

  it.each(FEW)("with %s in every cell and heading", (word) => {
    const rows = schedule.trimEnd().split("\n");
    const cells = rows[0]?.split(",").length ?? 0;
    for (let column = 0; column < cells; column += 1) {
      for (const row of [0, 1]) {
        const changed = rows.map((line, index) => (index === row ? withCell(line, column, word) : line));
        told(head, { "s.csv": `${changed.join("\n")}\n` });
      }
    }
    const words = ["Finish", "Member", "Use", "Support", "Material", "Key", "Pattern", "Levelling"];
    for (const heading of words)
      expect(
        told(head, { "s.csv": `Mark,Rod dia,Spacing X,Spacing Y,Template thk,${heading}\nB1,3/4,8,8,1/4,${word}\n` }),
      ).not.toEqual([]);
  });

  it.each(WORDS)("of points named %s is read", (word) => {
    const options = { unit: "m", order: null, jobOrder: "PNEZD" } as const;
    expect(readPoints(`${word},1,2,3,${word}\n`, "p.csv", options)).toMatchObject({ ok: true });
    expect(readPoints(`point,${word},northing,easting\na,b,1,2\n`, "p.csv", options)).toMatchObject({ ok: true });
    expect(readPoints(`a,${word},2,3\n`, "p.csv", options)).toMatchObject({ ok: false });
  });
});

function withCell(line: string, column: number, text: string): string {
  const cells = line.match(/("([^"]|"")*"|[^,]*)(,|$)/g)?.map((cell) => cell.replace(/,$/, "")) ?? [];
  return cells.with(column, text).slice(0, -1).join(",");
}
