/** Certificates of cut files: figures against closed forms and another maker's reader, and planted faults that must fail. */
import { createHash } from "node:crypto";
import dxfParser, { type DxfParser } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../src/checks/checked.js";
import { writeCertificatesCsv } from "../../../src/formats/certificates-csv.js";
import { writeCertificatesJson } from "../../../src/formats/certificates-json.js";
import { certifyCutFile, readCertificates } from "../../../src/proof/index.js";
import { readDrawing } from "../../../src/readers/dxf-drawing.js";
import { drawCertificates } from "../../../src/sheets/certificate-pages.js";
import { findCollisions } from "../../../src/sheets/index.js";
import { openJob } from "../../../src/tasks/open.js";
import { buildDelivered, inputsWith, STEEL, usBase } from "../../delivered.js";

const MM =
  "{ mark: M1, rods: { diameter: M20 }, pattern: { kind: circle, diameter: 300, count: 6, start: straddle }, " +
  "template: { thickness: 6, support: bearers, outline: { kind: circle, diameter: 420 }, key: none } }";
const DRILLED =
  "{ mark: D1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 8, y: 8 }, " +
  "template: { thickness: 1, support: bearers, outline: { kind: rectangle, x: 22, y: 12 }, key: none } }";

const built = (bases: readonly string[], unit: "in" | "mm", includeHeld = false) => [
  ...buildDelivered(inputsWith(bases, { unit }), includeHeld).bases,
];

const Parser = dxfParser as unknown as new () => DxfParser;

describe("the certificate of a cut file", () => {
  it.each([
    // 23 x 12 with a 4 in opening and four holes of 13/16 in: pi d each
    ["in", usBase("B1", STEEL), 23 * 12, 2 * (23 + 12) + Math.PI * (4 + 4 * 0.8125), 6],
    // a disc of 420 mm with six holes for M20, whose diameter the summary tells
    ["mm", MM, Math.PI * 210 * 210, null, 7],
  ] as const)("has the figures of its plate, in %s", (unit, base, area, cutLength, contours) => {
    const [made] = built([base], unit);
    if (made === undefined) throw new Error("no base");
    const cut = made.files.filter(({ path }) => path.endsWith(".dxf"));
    expect(made.certificates.map(({ path }) => path)).toEqual(cut.map(({ path }) => path));
    expect(cut.length).toBeGreaterThan(1);
    const holes = made.summary.template.holes.filter(({ made: how }) => how === "cut");
    const length = cutLength ?? Math.PI * (420 + holes.reduce((sum, { diameter = 0 }) => sum + diameter, 0));
    for (const [i, certificate] of made.certificates.entries()) {
      const bytes = cut[i]?.bytes ?? new Uint8Array();
      expect(certificate).toMatchObject({
        ...{ plate: made.summary.template.mark, unit, contours, pierces: contours, holes: contours - 1, openings: 0 },
        ...{ result: "pass", stops: [], held: false, bytes: bytes.length },
        sha256: createHash("sha256").update(bytes).digest("hex"),
        match: { turn: 0, mirrored: false, scale: 1, positionError: 0, diameterError: 0, missing: 0, extra: 0 },
      });
      expect(certificate.area).toBeCloseTo(area, 4);
      expect(certificate.cutLength).toBeCloseTo(length, 4);
      expect(certificate.holes).toBe(holes.length);
    }
  });

  it("counts the contours that another maker's reader finds", () => {
    const [made] = built([usBase("B1", STEEL)], "in");
    const joined = made?.files.find(({ kind }) => kind === "cut-joined");
    const entities = new Parser().parseSync(new TextDecoder().decode(joined?.bytes))?.entities ?? [];
    const cutLayers = new Set(joined?.layers?.cut);
    const closed = entities.filter(({ layer }) => cutLayers.has(layer));
    expect(closed.length).toBe(6);
    expect(made?.certificates[0]?.contours).toBe(closed.length);
  });

  it("of a plate whose holes are all drilled goes by the outline, and passes", () => {
    const [made] = built([DRILLED], "in");
    expect(made?.summary.template.holes.map((hole) => hole.made)).toEqual(["drill", "drill", "drill", "drill"]);
    expect(made?.certificates.map(({ result, holes, pierces }) => [result, holes, pierces])).toEqual([
      ["pass", 0, 1],
      ["pass", 0, 1],
    ]);
  });

  it("of a held template says so, and hides no fault of the plate", () => {
    const [made] = built([usBase("B1", STEEL, 40)], "in", true);
    expect(made?.held).toBe(true);
    expect(made?.certificates.map(({ held }) => held)).toEqual([true, true]);
  });
});

describe("a file that is not its plate fails", () => {
  const opened = openJob(inputsWith([usBase("B1", STEEL)]), { date: "2026-11-24" });
  if (!opened.ok || opened.value.bases[0] === undefined) throw new Error("the job has faults");
  const checked = checkBase(opened.value.job, opened.value.bases[0]);
  const [piece] = checked.pieces;
  if (piece === undefined) throw new Error("no piece");
  const { job, base } = checked;
  const [made] = built([usBase("B1", STEEL)], "in");
  const text = new TextDecoder().decode(made?.files.find(({ kind }) => kind === "cut-r12")?.bytes);
  const certify = (changed: string) =>
    certifyCutFile(readDrawing(new TextEncoder().encode(changed)), "B1.dxf", { job, base, ...piece });
  /** Every value of a group code in the entities, through `change`. */
  const mapped = (codes: readonly string[], change: (value: number) => number): string => {
    const lines = text.split(/\r?\n/);
    const start = lines.indexOf("ENTITIES");
    return lines
      .map((line, i) =>
        i > start && i % 2 === 1 && codes.includes(lines[i - 1]?.trim() ?? "") ? String(change(Number(line))) : line,
      )
      .join("\r\n");
  };
  const circles = [...text.matchAll(/\r?\nCIRCLE\r?\n/g)].length;

  it("passes as it was written", () => {
    expect(circles).toBe(5);
    expect(certify(text)).toMatchObject({ result: "pass", stops: [] });
  });

  it.each([
    [
      "a hole is moved by 1/16 in",
      text.replace(
        /(\r?\nCIRCLE\r?\n[\s\S]*?\r?\n *10\r?\n)([\d.]+)/,
        (_, a: string, x: string) => `${a}${Number(x) + 0.0625}`,
      ),
      /hole-position/,
    ],
    [
      "a hole is larger by 1/16 in",
      text.replace(
        /(\r?\nCIRCLE\r?\n[\s\S]*?\r?\n *40\r?\n)([\d.]+)/,
        (_, a: string, r: string) => `${a}${Number(r) + 0.03125}`,
      ),
      /hole-diameter|summary-differs/,
    ],
    ["a hole is missing", text.replace(/\r?\n *0\r?\nCIRCLE\r?\n[\s\S]*?(?=\r?\n *0\r?\n)/, ""), /hole-missing/],
    ["it is a tenth larger", mapped(["10", "20", "11", "21", "40"], (value) => value * 1.1), /scaled|no-match/],
    [
      "it is 25.4 times too large",
      mapped(["10", "20", "11", "21", "40"], (value) => value * 25.4),
      /scaled|unit|25\.4/,
    ],
    ["it is empty", "", /./],
    ["it is cut off", text.slice(0, text.length / 2), /truncated/],
  ])("where %s", (_, changed, words) => {
    expect(changed).not.toBe(text);
    const read = certify(changed);
    expect(read.result).toBe("fail");
    expect(read.stops.join("\n")).toMatch(words);
  });
});

describe("certificates as files", () => {
  const certificates = built([usBase("B1", STEEL), usBase("B2", STEEL)], "in").flatMap((base) => base.certificates);
  const job = { number: "26-050", title: "=Invented depot", revision: "A", status: "released" as const };

  it("machine form is read back the same; what is none is refused", () => {
    const read = readCertificates(writeCertificatesJson(job, certificates));
    expect([...(read?.values() ?? [])]).toEqual(certificates);
    expect(certificates).toHaveLength(4);
    for (const text of ["", "{", "[]", '{ "schema": 2, "certificates": [] }'])
      expect(readCertificates(text)).toBeNull();
  });

  it("the table has one row a file, with its whole hash", () => {
    const rows = writeCertificatesCsv(certificates).trimEnd().split("\r\n");
    expect(rows).toHaveLength(1 + certificates.length);
    for (const [i, { sha256, path }] of certificates.entries()) {
      expect(rows[i + 1]).toContain(sha256);
      expect(rows[i + 1]?.startsWith(`${path},`)).toBe(true);
    }
  });

  it.each([1, 60, 400])("pages for %i plates cover nothing; both files of a plate stand on one row", (count) => {
    const [one, two] = certificates;
    if (one === undefined || two === undefined) throw new Error("no certificates");
    const many = Array.from({ length: count }, (_, i) =>
      [one, two].map((each) => ({ ...each, plate: `T${i + 1}` })),
    ).flat();
    const pages = drawCertificates({ ...job, date: "2026-11-24", unit: "in" }, "0", many);
    for (const page of pages) expect(findCollisions(page)).toEqual([]);
    const texts = JSON.stringify(pages);
    for (const i of [1, count]) expect(texts.split(`"T${i}"`).length - 1).toBe(1);
  });

  it("no page where nothing is cut", () => {
    expect(drawCertificates({ ...job, date: "2026-11-24", unit: "mm" }, "0", [])).toEqual([]);
  });
});
