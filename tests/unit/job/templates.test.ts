/** What comes with the program: starter jobs, the starting spreadsheet, shop files, JSON Schemas. */

import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { jobJsonSchema, requestedFiles, shopJsonSchema } from "../../../src/job/index.js";
import { SHOP_NAMES } from "../../../src/job/resolve/shop.js";
import { readCsv } from "../../../src/readers/csv.js";
import { meaningsOf } from "../../../src/schedule/index.js";
import { vocabulary } from "../../../src/tasks/open.js";
import { faultsOf, inputsOf, jobOf, TEMPLATES, withBase } from "./files.js";

const RULES = Object.keys(vocabulary.rules);

const read = (...path: string[]) => readFileSync(join(TEMPLATES, ...path), "utf8");
const schedule = { "schedule.csv": read("schedule.csv") };

describe("starter jobs", () => {
  it.each(readdirSync(join(TEMPLATES, "start")))("%s has no fault", (name) => {
    expect(faultsOf(read("start", name), schedule)).toEqual([]);
    expect(jobOf(read("start", name), schedule).status).toBe("preliminary");
  });
});

describe("the starting spreadsheet", () => {
  it("has headings as the heading table writes them", () => {
    const table = readCsv(schedule["schedule.csv"], "schedule.csv");
    const headings = table.ok ? (table.value.rows[0] ?? []).map(({ text }) => text) : [];
    expect(headings.length).toBeGreaterThan(20);
    expect(headings.map((text) => meaningsOf(text, "")[0])).toEqual(headings);
  });
});

describe("shop files", () => {
  it("are those that a message about an unknown one names", () => {
    const files = readdirSync(join(TEMPLATES, "shops")).map((name) => name.replace(".yaml", ""));
    expect([...SHOP_NAMES].sort()).toEqual(files.sort());
  });

  it.each(readdirSync(join(TEMPLATES, "shops")))("%s has no fault", (name) => {
    expect(faultsOf(withBase({}).replace("rules: us", `shop: ${name.replace(".yaml", "")}`))).toEqual([]);
  });
});

/** A mismatch writes `NAME.changed` beside the file: rename it to accept it. */
describe("JSON Schemas are those of the program", () => {
  it.each([
    ["job.schema.json", () => jobJsonSchema(RULES)],
    ["shop.schema.json", shopJsonSchema],
  ])("%s", (name, schema) => {
    if (read(name) !== schema()) writeFileSync(join(TEMPLATES, `${name}.changed`), schema());
    expect(read(name)).toBe(schema());
  });

  it("describe every key of the job", () => {
    const undescribed: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== "object" || node === null) return;
      const { properties } = node as { properties?: Record<string, { description?: string; const?: string }> };
      for (const [key, value] of Object.entries(properties ?? {})) {
        if (value.description === undefined && value.const === undefined) undescribed.push(`${path}.${key}`);
      }
      for (const [key, value] of Object.entries(node)) walk(value, `${path}.${key}`);
    };
    walk(JSON.parse(jobJsonSchema(RULES)), "");
    expect(undescribed).toEqual([]);
  });
});

describe("files that a job asks the shell for", () => {
  const shopAt = { file: "job.yaml", line: 1, column: 7, path: "shop" };
  it.each([
    ["shop: laser\n", [{ name: "templates/shops/laser.yaml", kind: "shop", relativeTo: "packaged", at: shopAt }]],
    ["shop: ../my-shop.yaml\n", [{ name: "../my-shop.yaml", kind: "shop", relativeTo: "job", at: shopAt }]],
    ["units: mm\n", [{ name: "templates/shops/plasma-metric.yaml", kind: "shop", relativeTo: "packaged" }]],
    [
      "schedule: { file: b.xlsx, sheet: Rods }\n",
      [
        { name: "templates/shops/plasma.yaml", kind: "shop", relativeTo: "packaged" },
        {
          ...{ name: "b.xlsx", kind: "schedule", relativeTo: "job", sheet: "Rods" },
          at: { file: "job.yaml", line: 1, column: 19, path: "schedule.file" },
          sheetAt: { file: "job.yaml", line: 1, column: 34, path: "schedule.sheet" },
        },
      ],
    ],
    ["a: [", []],
  ])("%s", (job, expected) => {
    expect(requestedFiles(inputsOf(job))).toEqual(expected);
  });
});
