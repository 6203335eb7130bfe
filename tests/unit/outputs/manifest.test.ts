/** The first page of a package: every file once with its hash, by who opens it, and what is held or not released. Invented data. */
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import type { PdfMaker } from "../../../src/formats/pdf-maker.js";
import { build } from "../../../src/tasks/build.js";
import { inputsWith, PLYWOOD, STEEL, usBase } from "../../delivered.js";
import { sharedJob } from "../../shared-job.js";

const pdf = PDFDocument as unknown as PdfMaker;
const options = { date: "2026-11-24", version: "0", document: newLeanDocument(), pdf };

function pageOf(built: ReturnType<typeof build>) {
  const bases = [...built.bases].flatMap(({ files }) => files);
  const { files, summary } = built.finish();
  const page = files.find(({ kind }) => kind === "manifest");
  const text = new TextDecoder().decode(page?.bytes);
  return { page, text, summary, files: [...bases, ...files] };
}

/** Hash and path of each line that a program for SHA-256 sums reads. */
const sumsIn = (text: string): readonly string[] =>
  [...text.matchAll(/^([0-9a-f]{64}) {2}(\S.*)$/gm)].map(([, hash, path]) => `${hash} ${path}`);

describe("the first page of a package", () => {
  it("lists every file but itself and the summary, once, with the hash of its bytes; the summary lists it", () => {
    const job = inputsWith([usBase("S1", STEEL), usBase("P1", PLYWOOD), usBase("S2", STEEL, 40)]);
    const { page, text, files, summary } = pageOf(build(job, options));
    expect(page?.path).toBe("START-HERE.txt");
    const others = files.filter(({ kind }) => kind !== "manifest" && kind !== "summary");
    expect([...sumsIn(text)].sort()).toEqual(others.map(({ sha256, path }) => `${sha256} ${path}`).sort());
    expect(summary.files).toContainEqual({
      ...{ kind: "manifest", path: page?.path, bytes: page?.bytes.length, sha256: page?.sha256 },
    });
    for (const folder of ["cut/", "sheets/", "engineer/"]) expect(text).toMatch(new RegExp(`^${folder} {2}FOR: `, "m"));
    expect(text).toContain("Open first: cut/26-050_rev-A_cut-list.pdf");
    expect(text.split("\n").filter((line) => line.length > 96 && !/^(# |[0-9a-f]{64} )/.test(line))).toEqual([]);
  });

  it.each([
    ["steel", [usBase("S1", STEEL)], true, false],
    ["plywood", [usBase("P1", PLYWOOD)], false, true],
    ["both", [usBase("S1", STEEL), usBase("P1", PLYWOOD)], true, true],
  ] as const)("says of %s what is to be done with it, and nothing of what is not there", (_, bases, loads, drills) => {
    const text = pageOf(build(inputsWith(bases), options)).text.replace(/\s+/g, " ");
    expect(text.includes("Load every DXF file that lies in cut/ itself")).toBe(loads);
    expect(text.includes("cut/lines/: the same plates again")).toBe(loads);
    expect(text.includes("Plywood is drilled by its drill list")).toBe(drills);
  });

  it("lists the files of a template of several bases once", () => {
    const text = sharedJob([{ mark: "B3" }, { mark: "B9" }], ["merge: auto"]);
    const { job, files } = inputsWith([]);
    const built = build({ job, files: new Map([...files, ["job.yaml", text]]) }, options);
    const sums = sumsIn(pageOf(built).text);
    expect(new Set(sums).size).toBe(sums.length);
    expect(sums.filter((line) => line.endsWith(".dxf"))).toHaveLength(2);
  });

  it("says what is held and what is not released, before anything else", () => {
    const held = pageOf(build(inputsWith([usBase("S1", STEEL, 40)], { status: "preliminary" }), options)).text;
    const [head = ""] = held.split("FOR: ");
    expect(head).toContain("NOT RELEASED: nothing is cut, ordered, made or set by these files");
    expect(head).toContain("HELD, not to be cut: base S1. Each sheet says why.");
    const free = pageOf(build(inputsWith([usBase("S1", STEEL)]), options)).text;
    expect(free).not.toMatch(/NOT RELEASED|HELD/);
  });

  it("is the same whatever else was looked at, and made without a summary too", () => {
    const job = inputsWith([usBase("S1", STEEL)]);
    const only = build(job, { ...options, outputs: ["manifest", "ledger"] }).finish();
    expect(only.files.map(({ kind }) => kind)).toEqual(["ledger", "manifest"]);
    expect(sumsIn(new TextDecoder().decode(only.files[1]?.bytes))).toEqual([
      `${only.files[0]?.sha256} engineer/ledger.csv`,
    ]);
    expect(only.summary.files.map(({ kind }) => kind)).toEqual(["ledger", "manifest"]);
  });
});
