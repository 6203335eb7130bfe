/** One template for many bases as a user has it: make, look, prove, compare, make again. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import dxfParser, { type DxfParser } from "dxf-parser";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { SummaryBase } from "../../src/summary/model.js";
import type { SharedBase } from "../shared-job.js";
import { sharedJob, shedJob } from "../shared-job.js";
import { filesIn, givePackage, newFolder, packageFaults, runProgram } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string) => runProgram(folder, text.split(" "));
const give = (make: string) => givePackage(folder, make.split(" "));
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
const basesOf = (name: string): readonly SummaryBase[] =>
  JSON.parse(readFileSync(join(folder, name, "summary.json"), "utf8")).bases;

/** The package is CommonJS whose default is the class itself; its typings describe another build. */
const Parser = dxfParser as unknown as new () => DxfParser;

interface Circle {
  readonly type: string;
  readonly center: { readonly x: number; readonly y: number };
  readonly radius: number;
}

/** Circles of a file as an outside reader has them, sorted. */
function circlesIn(path: string): readonly (readonly [number, number, number])[] {
  const parsed = new Parser().parseSync(readFileSync(path, "utf8"));
  const circles = ((parsed?.entities ?? []) as unknown as readonly Circle[]).filter(({ type }) => type === "CIRCLE");
  return circles.map(({ center, radius }) => [center.x, center.y, 2 * radius] as const).sort(byPlace);
}

function byPlace(a: readonly number[], b: readonly number[]): number {
  return (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0);
}

describe("a shed of 35 marks and 11 plates", () => {
  it("is 11 templates, whose files are right for every base that they serve", async () => {
    write("job.yaml", shedJob(["merge: auto"]));
    const made = await run("make job.yaml --out out");
    expect([made.status, made.stderr]).toEqual([0, ""]);
    expect(made.stdout).toContain("35 bases, 11 templates, 0 held.");
    expect(made.stdout).not.toContain("could be set with one template");
    expect(packageFaults(join(folder, "out"))).toEqual([]);
    expect(filesIn(join(folder, "out")).filter((path) => path.endsWith(".dxf"))).toHaveLength(22);
    for (const { mark, template, files } of basesOf("out")) {
      const [x0, y0] = template.outline.extent;
      const holes = template.holes.map(({ x, y, diameter = 0 }) => [x - x0, y - y0, diameter]).sort(byPlace);
      for (const { path } of files.filter(({ kind }) => kind === "cut-joined" || kind === "cut-r12")) {
        const circles = circlesIn(join(folder, "out", path));
        expect(circles.length, `${mark} ${path}`).toBe(holes.length);
        for (const [at, circle] of circles.entries())
          for (const [i, value] of circle.entries()) expect(value).toBeCloseTo(holes[at]?.[i] ?? Number.NaN, 5);
      }
    }
    const proved = await run("proof out");
    expect(proved.status).toBe(0);
    expect(proved.stdout).toContain("is template T-B1 (bases B1, B12, B23, B34): not turned");
    const file = "out/cut/T-B2_8-off_PL1-4_steel_rev-A.dxf";
    const against = await run(`proof ${file} --against job.yaml --json`);
    expect(JSON.parse(against.stdout).files[0].match).toMatchObject({
      mark: "T-B2",
      base: "B2",
      bases: ["B2", "B13", "B24", "B35"],
    });
    expect(JSON.parse(against.stdout).files[0].findings).toEqual([]);
  });

  it("is advised of in one sentence a group, each with every mark, and no two groups in one line", async () => {
    write("job.yaml", shedJob());
    const { stdout } = await run("check job.yaml --all");
    const advice = stdout.split("\n").filter((line) => line.includes("templates <= 1"));
    expect(advice).toHaveLength(11);
    expect(advice[0]).toMatch(/FAIL advise {2}look-alike {2}B1, B12, B23, B34 +4 templates <= 1 +over by 3/);
    expect(stdout.replace(/\s+/g, " ")).toContain(
      "rods 3/4 in, 8 x 8: 4 bases could be set with one template; merge: auto makes one of them",
    );
    const named = advice.flatMap((line) => line.match(/B\d+/g) ?? []);
    expect(named.length).toBe(35);
    expect(new Set(named).size).toBe(35);
  });

  it("does not join groups that differ in something that the sentence does not say", async () => {
    const bases: readonly SharedBase[] = ["B3", "B9", "B13", "B14"].map((mark, at) => ({
      mark,
      template: at < 2 ? "" : ", opening: { diameter: 4 }",
    }));
    write("job.yaml", sharedJob(bases));
    const { stdout } = await run("check job.yaml --all");
    expect(stdout).toMatch(/look-alike {2}B3, B9 +2 templates <= 1/);
    expect(stdout).toMatch(/look-alike {2}B13, B14 +2 templates <= 1/);
  });

  it("is not advised of where the plates would not be one", async () => {
    const [pattern, turned] = ["kind: rectangle, x: 12, y: 10", "kind: rectangle, x: 10, y: 12"];
    write(
      "job.yaml",
      sharedJob([
        { mark: "B1", pattern },
        { mark: "B2", pattern: turned },
      ]),
    );
    const { stdout } = await run("check job.yaml --all");
    expect(stdout).not.toContain("could be set with one template");
    expect(stdout).toContain("B1 / B2");
  });
});

describe("compare", () => {
  const two: readonly SharedBase[] = [
    { mark: "B3", quantity: 2 },
    { mark: "B9", quantity: 4 },
    { mark: "B20", pattern: "kind: rectangle, x: 18, y: 10" },
  ];
  const make = async (name: string, bases: readonly SharedBase[], head: readonly string[] = []) => {
    write(`${name}.yaml`, sharedJob(bases, head));
    expect((await give(`make ${name}.yaml --out ${name}`)).status).toBe(0);
  };

  it("tells merging and splitting without another plate as marks only, with the bases", async () => {
    await make("apart", two);
    await make("one", two, ["merge: auto"]);
    for (const [from, to] of [
      ["apart", "one"],
      ["apart.yaml", "one.yaml"],
      ["apart", "one.yaml"],
    ]) {
      const merged = await run(`compare ${from} ${to}`);
      expect(merged.status).toBe(0);
      expect(merged.stdout).toContain("MARKS ONLY");
      expect(merged.stdout).toMatch(/T-B3 {2}bases B3, B9, 6 off {2}one template now: it was B3, B9, the same plate/);
      expect(merged.stdout).not.toMatch(/quantity|GONE|NEW {2}not/);
      expect(merged.stdout).toContain("2 templates: 1 marks only, 1 unchanged.");
    }
    const split = await run("compare one apart");
    expect(split.status).toBe(0);
    expect(split.stdout.replace(/\s+/g, " ")).toContain(
      "B9 base B9, 4 off a template of its own now: it was T-B3, which served others too",
    );
    expect(split.stdout).toContain("3 templates: 2 marks only, 1 unchanged.");
    const json = JSON.parse((await run("compare apart one --json")).stdout);
    expect(json.templates[0].changes[0]).toEqual({
      what: "merged",
      recut: false,
      from: ["B3", "B9"],
      bases: ["B3", "B9"],
    });
  });

  it("recuts a shared template once, not once a base", async () => {
    const wider = two.map((base) => ({ ...base, template: ", hole: 1-3/16" }));
    await make("one", two, ["merge: auto"]);
    await make("wider", wider, ["merge: auto"]);
    const compared = await run("compare one wider --json");
    expect(compared.status).toBe(1);
    expect(JSON.parse(compared.stdout).recut).toBe(2);
    await make("apart", two);
    const fromApart = JSON.parse((await run("compare apart wider --json")).stdout);
    expect(fromApart.templates.filter(({ verdict }: { verdict: string }) => verdict === "recut")).toHaveLength(2);
  });

  it("does not keep quiet about a base that needs another plate than the one that it shared", async () => {
    const [first, second, third] = two;
    if (first === undefined || second === undefined || third === undefined) throw new Error("three bases");
    const named = [{ ...first, template: ", mark: T4" }, { ...second, template: ", mark: T4" }, third];
    await make("one", named);
    const apart = [{ ...first, template: ", mark: T4" }, { ...second, template: ", mark: T9, hole: 1-1/8" }, third];
    await make("apart", apart);
    const split = await run("compare one apart");
    expect(split.status).toBe(1);
    expect(split.stdout).toMatch(/RECUT .*\n {2}T9 {2}base B9/);
    const joined = await run("compare apart one");
    expect(joined.status).toBe(1);
    expect(joined.stdout).toContain("RECUT");
  });

  it("follows a template that serves one base more", async () => {
    await make("one", two, ["merge: auto"]);
    await make("more", [...two, { mark: "B31", quantity: 3 }], ["merge: auto"]);
    const compared = await run("compare one more");
    expect(compared.status).toBe(0);
    expect(compared.stdout.replace(/\s+/g, " ")).toContain("quantity 6 -> 9: 3 more to cut");
    expect(compared.stdout).toContain("serves B3, B9, B31; served B3, B9");
  });

  it("is shown by make over the package before", async () => {
    await make("apart", two);
    write("apart.yaml", sharedJob(two, ["merge: auto"]).replace("revision: A", "revision: B"));
    const made = await run("make apart.yaml --out apart");
    expect(made.status).toBe(0);
    expect(made.stdout.replace(/\s+/g, " ")).toContain("same plate, other mark: B3, B9 are T-B3 now, for B3, B9");
  });

  it("is counted on as the template that serves most of its bases, where the one that it is named after leaves", async () => {
    const bases = [1, 2, 3, 4].map((at) => ({ mark: `B${at}`, quantity: at }));
    write("a.yaml", sharedJob(bases, ["merge: auto"]));
    const [first, ...others] = bases;
    const moved = { ...first, mark: "B1", pattern: "kind: rectangle, x: 11, y: 10" };
    write("b.yaml", sharedJob([moved, ...others], ["merge: auto"]));
    const { stdout } = await run("compare a.yaml b.yaml");
    const said = stdout.replace(/\s+/g, " ");
    expect(said).toMatch(/RECUT .* B1 base B1, 1 off .*template mark T-B1 -> B1 MARKS ONLY/);
    expect(said).toMatch(/T-B2 bases B2, B3, B4, 9 off .*template mark T-B1 -> T-B2 .*quantity 10 -> 9: 1 too many/);
    expect(said).toContain("To cut again: 1 plate.");
  });
});

describe("a shared template in a package", () => {
  it("is damaged once, and proved against each base", async () => {
    write("job.yaml", sharedJob([{ mark: "B3" }, { mark: "B9" }], ["merge: auto"]));
    await give("make job.yaml --out out");
    const summary = join(folder, "out", "summary.json");
    const told = JSON.parse(readFileSync(summary, "utf8"));
    told.bases[1].template.holes[0].x += 0.25;
    writeFileSync(summary, JSON.stringify(told));
    const proved = await run("proof out");
    expect(proved.status).toBe(1);
    expect(proved.stdout).toContain("hole A1 is off by 1/4 in");
    writeFileSync(join(folder, "out/cut/T-B3_2-off_PL1-4_steel_rev-A.dxf"), "0\nEOF\n");
    const compared = await run("compare out job.yaml");
    expect(compared.status).toBe(2);
    expect(compared.stderr.match(/T-B3_2-off_PL1-4_steel_rev-A\.dxf has/g)).toHaveLength(1);
  });

  it("is held for all that it serves, with files to cut by only where they are asked for", async () => {
    const wide = ", outline: { kind: rectangle, x: 16, y: 14 }";
    const bases = [
      { mark: "B3", template: wide },
      { mark: "B9", template: `${wide}, support: form`, more: ", concrete: { x: 30, y: 30 }" },
    ];
    write("job.yaml", sharedJob(bases, ["merge: auto"]));
    const made = await run("make job.yaml --out out");
    expect(made.status).toBe(1);
    expect(made.stdout).toMatch(/HELD: 2 of 2 bases.*\n {2}B3 {2}template T-B3 also serves B9, which is held/);
    expect(made.stdout).toMatch(/\n {2}B9 {2}bearing or gap in form \(template-in-form\)/);
    expect(filesIn(join(folder, "out")).filter((path) => path.endsWith(".dxf"))).toEqual([]);
    await run("make job.yaml --out out --include-held");
    const cut = filesIn(join(folder, "out")).filter((path) => path.endsWith(".dxf"));
    expect(cut).toEqual([
      "cut/held/T-B3_2-off_PL1-4_steel_rev-A_HELD.dxf",
      "cut/held/lines/T-B3_2-off_PL1-4_steel_rev-A_HELD_lines.dxf",
    ]);
  });

  it("is shown once with the rows that its bases have in common, and apart where they have others", async () => {
    const wide = ", outline: { kind: rectangle, x: 16, y: 14 }";
    const bases = ["B1", "B2", "B3"].map((mark) => ({ mark, quantity: 2, template: wide }));
    const held = { mark: "B4", template: `${wide}, support: form`, more: ", concrete: { x: 30, y: 30 }" };
    write("job.yaml", sharedJob([...bases, held], ["merge: auto"]));
    const { stdout } = await run("check job.yaml --all");
    expect(stdout).toContain("\nB1, B2, B3  HELD by B4  6 bases, template T-B1 (also of B4), quantity 7\n");
    expect(stdout).toMatch(/\nB4 {2}HELD {2}1 base, template T-B1 \(also of B1, B2, B3\), quantity 7\n/);
    expect(stdout.match(/, template T-B1/g)).toHaveLength(2);
    expect(stdout).toContain("4 bases, 1 template, 4 held");
  });

  it("has one drill list in plywood, with the number of templates", async () => {
    const bases = ["B3", "B9"].map((mark) => ({ mark, quantity: 3, template: ", material: plywood" }));
    write("job.yaml", sharedJob(bases, ["merge: auto"]).replaceAll("thickness: 1/4", "thickness: 1/2"));
    expect((await run("make job.yaml --out out")).status).toBe(0);
    const list = readFileSync(join(folder, "out/cut/T-B3_6-off_PLY1-2_plywood_rev-A_drill-list.csv"), "utf8");
    expect(list.split("\n")[1]).toMatch(/^T-B3,A,6,BOARD/);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
  });
});
