/** What follows from an output's role, whatever its kind is called. */

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../src/checks/checked.js";
import { startDigest } from "../../../src/checks/digest.js";
import { makeTemplateState } from "../../../src/compare/index.js";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import type { MadeFile, Output } from "../../../src/outputs/index.js";
import {
  baseOutputs,
  budgetOutputs,
  everyOutput,
  growingOutputs,
  jobOutputs,
  makingKinds,
  roleOf,
  surveyOutputs,
} from "../../../src/outputs/index.js";
import { summarizeBase } from "../../../src/summary/summarize.js";
import { openJob } from "../../../src/tasks/open.js";
import { writeDocument } from "../../../src/tasks/package.js";
import { makeInputs } from "../../bench/jobs.js";
import { jobFixture } from "../../fixture.js";

const SOURCE = new URL("../../../src/outputs/", import.meta.url);
const all = [...everyOutput, ...budgetOutputs, ...surveyOutputs];

function firstChecked() {
  const opened = openJob(makeInputs(1), { date: "2026-11-24" });
  const [base] = opened.ok ? opened.value.bases : [];
  if (!opened.ok || base === undefined) throw new Error("the job has faults");
  return checkBase(opened.value.job, base);
}

describe("the registry", () => {
  it("has every output that stands in its folder, each kind once", () => {
    const files = readdirSync(SOURCE).map((name) => readFileSync(new URL(name, SOURCE), "utf8"));
    const kinds = files.flatMap((text) => [...text.matchAll(/^ {2}kind: "([^"]+)",$/gm)].map(([, kind]) => kind));
    expect(kinds.length).toBeGreaterThan(10);
    const formats = new URL("../../../src/formats/", import.meta.url);
    const writers = readdirSync(formats)
      .filter((name) => name.endsWith(".ts"))
      .map((name) => readFileSync(new URL(name, formats), "utf8"));
    const flavours = writers.flatMap((text) => [...text.matchAll(/CutFlavour<"([^"]+)">/g)].map(([, kind]) => kind));
    expect(flavours.length).toBeGreaterThan(1);
    expect(all.map(({ kind }) => kind).sort()).toEqual([...kinds, ...flavours].sort());
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(all.length);
  });

  it("sorts every output by its scope, and tells roles by kind", () => {
    expect([...baseOutputs, ...jobOutputs, ...growingOutputs].map(({ kind }) => kind).sort()).toEqual(
      everyOutput.map(({ kind }) => kind).sort(),
    );
    expect(makingKinds).toEqual(["cut-joined", "cut-r12", "drill-list"]);
    expect(["cut-r12", "drill-list", "sheet-svg", "ledger", "summary", "of-another-program"].map(roleOf)).toEqual([
      "cut",
      "drill",
      "sheet",
      "table",
      "document",
      null,
    ]);
  });

  it("reads back whatever is cut by, and nothing else", () => {
    const readBack = baseOutputs.filter((output) => output.scope === "piece" && output.cut !== undefined);
    expect(readBack.length).toBeGreaterThan(1);
    expect(readBack).toEqual(baseOutputs.filter(({ role }: Output) => role === "cut"));
  });

  it("names on the sheet every file of the role cut, and the one of the role drill", () => {
    const sheet = baseOutputs.find((output) => output.scope === "base" && output.kind === "sheet-svg");
    if (sheet?.scope !== "base") throw new Error("there is no sheet");
    const made = (kind: string, role: MadeFile["role"], digit: string): MadeFile => {
      return { kind, role, path: `B1/${kind}.dxf`, sha256: digit.repeat(64) };
    };
    const files = [made("cut-of-tomorrow", "cut", "a"), made("table-of-tomorrow", "table", "b")];
    const around = { document: newLeanDocument(), version: "0", includeHeld: false, made: files, pages: null };
    const text = new TextDecoder().decode(sheet.write(firstChecked(), around));
    expect(text).toContain("cut-of-tomorrow.dxf");
    expect(text).toContain("a".repeat(12));
    expect(text).not.toContain("table-of-tomorrow");
  });
});

describe("a document", () => {
  const common = {
    scope: "job",
    kind: "notes",
    role: "document",
    title: "",
    drawn: false,
    named: "n",
  } as const;
  const write = () => [{ path: "n", bytes: new Uint8Array(1) }];
  const checked = {
    job: jobFixture(),
    plan: null,
    rows: [],
    held: new Map(),
    layoutOpen: [],
    layoutHeld: { reasons: [], siteOnly: true },
  };
  const around = {
    document: null,
    version: "0",
    includeHeld: false,
    made: [],
    set: null,
    pdf: null,
    paper: null,
    facts: [],
    questions: () => [],
    closedQuestions: () => [],
    digest: () => startDigest().digest(),
    closedFiles: () => [],
  };

  it("that needs a plan is not written without one; one that needs the job alone is", () => {
    expect([...writeDocument({ ...common, needs: "plan", write }, checked, around)]).toEqual([]);
    expect([...writeDocument({ ...common, needs: "job", write }, checked, around)]).toHaveLength(1);
  });
});

describe("a file of a package counts as cut", () => {
  const { checks: _, template, ...rest } = summarizeBase(firstChecked());
  const { material: _material, ...listed } = template;
  const summary = { ...rest, template: listed };
  const stateOf = (kind: string, layers: boolean) => {
    const file = { kind, path: "B1/file", bytes: 1, sha256: "0".repeat(64) };
    const files = [layers ? { ...file, layers: { cut: ["A"], mark: [] } } : file];
    const source = { unit: "in", delivered: true, roleOf, bytesOf: () => null } as const;
    return makeTemplateState({ ...summary, files }, source);
  };

  it.each([
    ["cut-r12", false, true],
    ["of a later version, with layers", true, true],
    ["of a later version, without", false, false],
    ["sheet-svg", false, false],
  ])("%s", (kind, layers, isCut) => {
    expect(stateOf(kind, layers)).toMatchObject({ delivered: isCut, material: isCut ? "steel" : null });
  });
});
