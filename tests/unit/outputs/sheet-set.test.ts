/** The set of a package: what is in it, in which order, and how its pages stand on the paper of an office. */
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import type { PdfMaker } from "../../../src/formats/pdf-maker.js";
import { paperNamed } from "../../../src/outputs/paper-names.js";
import { placeOn } from "../../../src/outputs/paper-sizes.js";
import { missingLetters } from "../../../src/sheets/missing-letters.js";
import type { Scene } from "../../../src/sheets/scene.js";
import { build } from "../../../src/tasks/build.js";
import { makeInputs, withPlacements } from "../../bench/jobs.js";
import { textsOf } from "../sheets/scene-walk.js";

const pdf = PDFDocument as unknown as PdfMaker;
const inputs = withPlacements(makeInputs(3), 3, 12);
const options = { version: "0", date: "2026-11-24", document: newLeanDocument() };

function setOf(more: object): Uint8Array | undefined {
  const made = build(inputs, { ...options, pdf, ...more });
  return made.finish().files.find(({ kind }) => kind === "sheet-set-pdf")?.bytes;
}

const pagesOf = (bytes: Uint8Array | undefined): number =>
  [
    ...Buffer.from(bytes ?? [])
      .toString("latin1")
      .matchAll(/\/Type \/Page\b(?!s)/g),
  ].length;

describe("a set", () => {
  it("is made where pdfkit is handed in, listed with its hash, and the same whatever else is wanted", () => {
    const made = build(inputs, { ...options, pdf });
    const end = made.finish();
    const file = end.files.find(({ kind }) => kind === "sheet-set-pdf");
    expect(file?.path).toBe("26-001_rev-A_set.pdf");
    expect(end.summary.files.find(({ kind }) => kind === "sheet-set-pdf")).toEqual({
      ...{ kind: "sheet-set-pdf", path: file?.path, bytes: file?.bytes.length, sha256: file?.sha256 },
    });
    const plans = end.files.filter(({ kind }) => kind === "plan-svg").length;
    expect(pagesOf(file?.bytes)).toBeGreaterThan(1 + plans + 3);
    expect(Buffer.compare(Buffer.from(setOf({}) ?? []), Buffer.from(file?.bytes ?? []))).toBe(0);
    const walked = build(inputs, { ...options, pdf });
    expect([...walked.bases, ...walked.bases]).toHaveLength(6);
    const again = walked.finish().files.find(({ kind }) => kind === "sheet-set-pdf");
    expect(again?.sha256).toBe(file?.sha256);
  });

  it("is made alone where it alone is wanted", () => {
    const alone = build(inputs, { ...options, pdf, outputs: ["sheet-set-pdf"] });
    expect([...alone.bases].flatMap(({ files }) => files)).toEqual([]);
    const { files } = alone.finish();
    expect(files.map(({ kind }) => kind)).toEqual(["sheet-set-pdf"]);
    expect(pagesOf(files[0]?.bytes)).toBeGreaterThan(4);
  });

  it("is not made without pdfkit, and refused where it is asked for", () => {
    expect(
      build(inputs, options)
        .finish()
        .files.filter(({ kind }) => kind === "sheet-set-pdf"),
    ).toEqual([]);
    expect(() => build(inputs, { ...options, outputs: ["sheet-set-pdf"] })).toThrow(/pdfkit/);
    expect(() => build(inputs, { ...options, pdf, document: null, outputs: ["sheet-set-pdf"] })).toThrow(/document/);
  });

  it("has the same sizes of pages on one paper", () => {
    const boxes = [
      ...Buffer.from(setOf({ paper: "letter" }) ?? [])
        .toString("latin1")
        .matchAll(/\/MediaBox \[(.*?)\]/g),
    ];
    expect(boxes.length).toBeGreaterThan(4);
    expect(new Set(boxes.map(([, box]) => box))).toEqual(new Set(["0 0 792 612", "0 0 612 792"]));
  });
});

describe("a sheet on paper", () => {
  /** With a border that leaves twice as much at its left. */
  const sheet = (width: number, height: number, border = 10): Scene => {
    const corners = [
      [2 * border, border],
      [width - border, border],
      [width - border, height - border],
      [2 * border, height - border],
    ] as const;
    const at = (i: number) => ({ x: corners[i % 4]?.[0] ?? 0, y: corners[i % 4]?.[1] ?? 0 });
    const parts = [0, 1, 2, 3].map((i) => ({ kind: "line", from: at(i), to: at(i + 1) }) as const);
    const frame = {
      kind: "group",
      name: "frame",
      data: {},
      items: [{ kind: "stroke", role: "frame", parts }],
    } as const;
    return { size: "", width, height, title: "", description: "", items: [frame] };
  };

  it.each([
    ["B on 11 x 17: the same paper", "tabloid", sheet(431.8, 279.4), 100],
    ["A4 on letter: its border fits", "letter", sheet(297, 210, 15), 100],
    ["letter on A4: its border fits", "a4", sheet(279.4, 215.9), 100],
    ["border that just fits beside what printers leave white", "a3", sheet(440, 307), 100],
    ["border a tenth of a millimetre wider", "a3", sheet(440.1, 307), 98],
    ["D on 11 x 17: half", "tabloid", sheet(863.6, 558.8), 50],
    ["A1 on A3: half", "a3", sheet(841, 594), 50],
    ["D on A3", "a3", sheet(863.6, 558.8), 48],
    ["C on 11 x 17", "tabloid", sheet(558.8, 431.8), 65],
    ["nearly half is half", "tabloid", sheet(800, 530), 50],
    ["upright sheet on upright paper", "a4", sheet(210, 297), 100],
  ] as const)("%s", (_, paper, scene, percent) => {
    const placed = placeOn(paper, scene);
    expect(placed.percent).toBe(percent);
    const { placement } = placed;
    const border = scene.height === 210 && paper === "letter" ? 15 : 10;
    const at = (x: number, start: number) => start + x * placement.factor;
    const [x0, x1] = [at(2 * border, placement.x), at(scene.width - border, placement.x)];
    const [y0, y1] = [at(border, placement.y), at(scene.height - border, placement.y)];
    const white = [x0, y0, placement.width - x1, placement.height - y1];
    expect(Math.min(...white)).toBeGreaterThanOrEqual(5 - 1e-9);
    const said = textsOf(placement.over);
    const words =
      percent === 50
        ? "HALF SIZE: SCALES ARE HALF OF THOSE STATED"
        : `REDUCED TO ${percent} %: NOT AT THE SCALES STATED`;
    expect(said.map(({ text }) => text)).toEqual(percent === 100 ? [] : [words]);
    for (const { at: place, height, turn } of said) {
      expect(turn).toBe(90);
      expect(place.x - height).toBeGreaterThanOrEqual(5);
      expect(place.x).toBeLessThan(x0);
      expect(place.y + 100).toBeLessThan((y0 + y1) / 2);
    }
  });

  it("is named as printers name it", () => {
    expect(["letter", "Letter", "11x17", '11" x 17"', "ledger", "tabloid", "A4", "a3"].map(paperNamed)).toEqual([
      ...["letter", "letter", "tabloid", "tabloid", "tabloid", "tabloid", "a4", "a3"],
    ]);
    expect(["", "a5", "legal", "a44"].map(paperNamed)).toEqual([null, null, null, null]);
  });
});

describe("letters that the sheet font lacks", () => {
  it("are named once each; Latin, Greek, Cyrillic and the signs of drawings are not among them", () => {
    expect(missingLetters("⌀ Ø ± ° ½ ⅞ ≤ Łódź Διάμετρος Лист e\u0301 …")).toEqual([]);
    expect(missingLetters("漢字漢 A😀")).toEqual(["漢", "字", "😀"]);
  });

  it("are told where they stand, and nothing is refused", () => {
    const text = String(inputs.files.get("job.yaml")).replace("title: Benchmark", "title: 漢字");
    const made = build(
      { ...inputs, files: new Map([...inputs.files, ["job.yaml", text]]) },
      { ...options, outputs: [] },
    );
    const told = made.findings.filter(({ code }) => code === "letters-not-in-font");
    expect(told.map(({ severity, message }) => [severity, message.slice(0, 17)])).toEqual([
      ["warning", "job.title has 漢 字"],
    ]);
    expect(made.job).not.toBeNull();
  });
});
