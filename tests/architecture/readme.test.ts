/**
 * The tables of `docs/reference.md` are held against the code: rules, outputs, headings of a schedule, editions. A mismatch writes
 * `reference.md.changed` beside it, with the tables as the code has them.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { jobRules, rules } from "../../src/checks/index.js";
import type { CheckContext } from "../../src/checks/model.js";
import type { Editions } from "../../src/job/model/job.js";
import { baseOutputs, budgetOutputs, growingOutputs, jobOutputs, surveyOutputs } from "../../src/outputs/index.js";
import { placeRods } from "../../src/rods/index.js";
import { HEADINGS, PLACEMENT_HEADINGS, SYNONYMS } from "../../src/schedule/index.js";
import { editionsOf } from "../../src/standards/index.js";
import { surveyRules } from "../../src/survey/index.js";
import { makePlate } from "../../src/template/index.js";
import { inches } from "../../src/units/length.js";
import { baseFixture, jobFixture } from "../fixture.js";

const root = fileURLToPath(new URL("../..", import.meta.url));
const TABLES = "docs/reference.md";
const read = (path: string): string => readFileSync(join(root, path), "utf8");

const METRIC: Editions = {
  set: "metric",
  templateHoles: "ISO 273",
  baseHoles: "d + 6 mm",
  placing: "EN 1090-2:2008",
  edges: "EN 1993-1-8:2005",
  concrete: "ACI 318M-19",
};

function contextFor(editions: Partial<Editions>): CheckContext {
  const base = baseFixture();
  const job = jobFixture({ bases: [base], editions: { ...jobFixture().editions, ...editions } });
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("the fixture has no layout");
  const plate = makePlate(job, base, rods.value);
  if (!plate.ok) throw new Error("the fixture has no plate");
  return { job, base, rods: rods.value, plate: plate.value };
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replace(/\|/g, "\\|")).join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...rows.map(line)].join("\n");
}

/** Severities with which a rule's rows can fail. */
const SEVERITIES: Readonly<Record<string, string>> = { "template-hole": "advise, stop" };

function ruleTable(): string {
  const [us, metric] = [contextFor({}), contextFor(METRIC)];
  const clauseOf = (rule: (typeof rules)[number], context: CheckContext): string => {
    const [clause, edition] = [rule.clause(context), rule.edition(context)];
    return clause.includes(edition) ? clause : `${edition}: ${clause}`;
  };
  const rows = rules.map((rule) => {
    const [inUs, inMetric] = [clauseOf(rule, us), clauseOf(rule, metric)];
    const clauses = inUs === inMetric ? inUs : `${inUs}; metric: ${inMetric}`;
    return [
      `\`${rule.id}\``,
      rule.plainName,
      SEVERITIES[rule.id] ?? rule.severity,
      rule.title,
      clauses.replace(/\b(shop )?test\b/g, "shop file"),
    ];
  });
  return table(["rule", "as sheets say it", "when it fails", "what is held against what", "clause or source"], rows);
}

function outputTable(): string {
  const named = [...baseOutputs, ...jobOutputs];
  const grown = growingOutputs.map((output) => ({ ...output, named: output.path }));
  const rows = [...named, ...grown].map(({ kind, title, named: name }) => [`\`${kind}\``, `\`${name}\``, title]);
  return table(["kind", "name", "what it is"], rows);
}

/** Files of the tasks that write into a folder of their own. */
function resultTable(): string {
  const rows = [...budgetOutputs, ...surveyOutputs].map(({ scope, named, title }) => [scope, `\`${named}\``, title]);
  return table(["of", "name", "what it is"], rows);
}

function jobRuleTable(): string {
  const { job } = contextFor({});
  const context = { job, plan: null, bases: [] };
  const rows = jobRules.map((rule) => [
    `\`${rule.id}\``,
    rule.plainName,
    rule.severity,
    rule.title,
    rule.clause(context),
  ]);
  return table(["rule", "as sheets say it", "when it fails", "what is held against what", "clause or source"], rows);
}

/** Rules of a survey with their clause in each placing edition, for a rod of 1 in. */
function surveyRuleTable(): string {
  const rows = surveyRules.map((rule) => {
    const clauses = editionsOf("placing").map((edition) => ({ edition, clause: rule.clause(edition, inches(1)) }));
    const held = clauses.flatMap(({ edition, clause }) => (clause === null ? [] : [{ edition, clause }]));
    const isAny = new Set(held.map(({ clause }) => clause)).size === 1 && held.length === clauses.length;
    const cited = held.map(({ edition, clause }) => (clause.startsWith(edition) ? clause : `${edition}, ${clause}`));
    return [`\`${rule.id}\``, rule.plainName, rule.title, isAny ? (held[0]?.clause ?? "") : cited.join("; ")];
  });
  return table(["rule", "as sheets say it", "what is held against what", "clause or source"], rows);
}

function headingTable(headings: readonly { name: string; also: readonly string[]; example: string }[]): string {
  return table(
    ["heading", "also read", "example"],
    headings.map(({ name, also, example }) => [name, also.join(", "), `\`${example}\``]),
  );
}

/** Our headings with what prints write for them, each word once: what means nothing else, and what is proved or asked. */
function usualHeadingTable(): string {
  const rows = HEADINGS.map(({ name }) => {
    const of = SYNONYMS.filter(({ means }) => means.includes(name));
    return [name, waysOf(of, (means) => means === 1), waysOf(of, (means) => means > 1)];
  }).filter(([, alone, several]) => alone !== "" || several !== "");
  return table(["our heading", "written", "written, and proved by other columns or asked"], rows);
}

/** Words that stand alone first; then those that need their thing, by the thing. */
function waysOf(synonyms: readonly (typeof SYNONYMS)[number][], wants: (means: number) => boolean): string {
  const places = new Map<string, Set<string>>();
  for (const { of, words } of synonyms.filter((each) => wants(each.means.length)))
    for (const word of words) places.set(word, (places.get(word) ?? new Set()).add(of));
  const things = ["", ...new Set([...places.values()].flatMap((each) => [...each]).filter((of) => of !== ""))];
  const wordsOf = (thing: string) =>
    [...places]
      .filter(([, of]) => (thing === "" ? of.has("") : !of.has("") && of.has(thing)))
      .map(([word]) => word || "alone");
  return things
    .map((thing) => [thing, wordsOf(thing).join(", ")] as const)
    .filter(([, words]) => words !== "")
    .map(([thing, words]) => (thing === "" ? words : `${thing.toUpperCase()}: ${words}`))
    .join("; ");
}

function editionTable(): string {
  const kinds = ["templateHoles", "baseHoles", "placing", "edges", "concrete"] as const;
  const us = jobFixture().editions;
  const rows = kinds.map((kind) => [`\`${kind}\``, us[kind], METRIC[kind], editionsOf(kind).join("; ")]);
  return table(["key", "us", "metric", "all that are known"], rows);
}

function withTables(text: string): string {
  const tables = {
    rules: ruleTable(),
    "job-rules": jobRuleTable(),
    "survey-rules": surveyRuleTable(),
    outputs: outputTable(),
    results: resultTable(),
    headings: headingTable(HEADINGS),
    "usual-headings": usualHeadingTable(),
    "placement-headings": headingTable(PLACEMENT_HEADINGS),
    editions: editionTable(),
  };
  return Object.entries(tables).reduce((whole, [name, rows]) => {
    const block = new RegExp(`(<!-- ${name} -->)[\\s\\S]*?(<!-- /${name} -->)`);
    if (!block.test(whole)) throw new Error(`${TABLES} has no block <!-- ${name} -->`);
    return whole.replace(block, (_, open: string, close: string) => `${open}\n${rows}\n${close}`);
  }, text);
}

/** Links to files and to headings of this page or another, as they are written. */
const linksOf = (text: string): readonly string[] =>
  [...text.matchAll(/\]\(((?!https?:)[^)]+)\)/g)].map((match) => match[1] ?? "");

/** Headings as links name them. */
const anchorsOf = (text: string): readonly string[] =>
  [...text.matchAll(/^#+ (.+)$/gm)].map((match) =>
    (match[1] ?? "")
      .toLowerCase()
      .replace(/[^a-z0-9 -]/g, "")
      .replaceAll(" ", "-"),
  );

describe("the pages for users", () => {
  it("have the tables that the code has", () => {
    const [written, wanted] = [read(TABLES), withTables(read(TABLES))];
    if (written !== wanted) writeFileSync(join(root, `${TABLES}.changed`), wanted);
    expect(written === wanted, `${TABLES}.changed has the tables as they should be`).toBe(true);
  });

  it.each([
    "README.md",
    ...readdirSync(join(root, "docs"))
      .filter((name) => name.endsWith(".md"))
      .map((name) => `docs/${name}`),
  ])("%s links only to files and headings that there are", (page) => {
    const links = linksOf(read(page));
    const wrong = links.filter((link) => {
      const [path = "", anchor] = link.split("#");
      const target = path === "" ? page : join(dirname(page), path);
      if (!existsSync(join(root, target))) return true;
      return anchor !== undefined && !anchorsOf(read(target)).includes(anchor);
    });
    expect(wrong).toEqual([]);
    expect(page !== "README.md" || links.length > 10).toBe(true);
  });
});

describe("DEVELOPERS.md", () => {
  it("names only paths that exist", () => {
    const named = [...read("DEVELOPERS.md").matchAll(/`((?:src|tests|templates|samples|\.ci)\/[^`*{}<>]*)`/g)].map(
      (match) => match[1] ?? "",
    );
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  it("has a line for every dependency", () => {
    const { dependencies, devDependencies } = JSON.parse(read("package.json")) as Record<
      string,
      Record<string, string>
    >;
    const names = Object.keys({ ...dependencies, ...devDependencies });
    expect(names.filter((name) => !read("DEVELOPERS.md").includes(`\`${name}\``))).toEqual([]);
  });
});

describe("rules", () => {
  const filesIn = (folder: string, ending: string): string[] =>
    readdirSync(join(root, folder))
      .filter((name) => name.endsWith(ending))
      .map((name) => name.slice(0, -ending.length))
      .sort();

  it("have one file and one test each, named by their id", () => {
    const ids = rules.map(({ id }) => id).sort();
    expect(filesIn("src/checks/rules", ".ts")).toEqual(ids);
    expect(filesIn("tests/unit/checks", ".test.ts")).toEqual(expect.arrayContaining(ids));
  });
});
