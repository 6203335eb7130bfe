/** Whatever names and values hold, no command writes a sign on the screen that is not its own: a foreign file cannot forge a verdict. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { box, circle, extents, fileOf, header, layer, line } from "../dxf-by-hand.js";
import { eachChanged, HOSTILE, HOSTILE_LINE, starterValue, unseenIn } from "../hostile.js";
import { type Ended, newFolder, runProgram, writeJob } from "./program.js";

let folder: string;
beforeAll(async () => {
  folder = newFolder();
  writeJob(folder, "job.yaml");
  await runProgram(folder, ["make", "job.yaml", "--out", "out"]);
  await runProgram(folder, ["start", "layout", "--out", "layout.yaml"]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs plainly, as JSON where the command has it, and in colour; gives back the plain run. */
async function runEveryWay(args: readonly string[], json = true): Promise<Ended> {
  const plain = await runProgram(folder, args);
  const painted = await runProgram(folder, args, { terminal: 100 });
  const machine = json ? await runProgram(folder, [...args, "--json"]) : null;
  expect(unseenIn(plain.stdout + plain.stderr), args.join(" ")).toEqual([]);
  expect(unseenIn(painted.stdout + painted.stderr, true), args.join(" ")).toEqual([]);
  expect(unseenIn((machine?.stdout ?? "") + (machine?.stderr ?? "")), args.join(" ")).toEqual([]);
  expect([plain.status, painted.status]).not.toContain(3);
  return plain;
}

const write = (name: string, content: string | Uint8Array): void => writeFileSync(join(folder, name), content);

describe("no command writes what a foreign text holds", () => {
  it("proof: layers, blocks, sections, types of entities, versions and units of a cut file", async () => {
    const text = fileOf(
      [
        circle(50, 25, 5, HOSTILE_LINE),
        line(0, 0, 9, 9, HOSTILE_LINE),
        [[0, HOSTILE_LINE]],
        box,
        [
          [0, "INSERT"],
          [2, HOSTILE_LINE],
          [10, 0],
          [20, 0],
        ],
      ],
      {
        head: [
          ...header.map(([code, value]) => [code, code === 1 ? HOSTILE_LINE : value] as const),
          ...extents(0, 0, 100, 50),
        ],
        layers: [layer(HOSTILE_LINE), layer("CUT")],
        blocks: [
          [0, "BLOCK"],
          [2, HOSTILE_LINE],
          [8, HOSTILE_LINE],
          [0, "ENDBLK"],
        ],
      },
    );
    write("foreign.dxf", text);
    write("section.dxf", text.replaceAll("ENTITIES", HOSTILE_LINE));
    for (const name of ["foreign.dxf", "section.dxf"]) {
      const { status, stdout } = await runEveryWay(["proof", name]);
      expect(status).toBe(1);
      expect(stdout.includes("\\u001b[2J")).toBe(name === "foreign.dxf");
      await runEveryWay(["proof", name, "--against", "job.yaml"]);
    }
  });

  it("check: any key and any value of a job", async () => {
    const changes = [
      ...eachChanged(
        starterValue("layout"),
        (text) => text + HOSTILE,
        (key) => key + HOSTILE,
      ),
    ];
    expect(changes.length).toBeGreaterThan(200);
    // one in six is enough: all of them go the same way
    for (const changed of changes.filter((_, index) => index % 6 === 0)) {
      write("hostile.yaml", JSON.stringify(changed));
      const { status, stdout, stderr } = await runProgram(folder, ["check", "hostile.yaml"]);
      expect(unseenIn(stdout + stderr)).toEqual([]);
      expect(status).not.toBe(3);
    }
  });

  it("check, make, budget, compare, survey: texts that a job may hold", async () => {
    const quoted = JSON.stringify("depot\u200b\u00ad\u2060");
    const job = readFileSync(join(folder, "layout.yaml"), "utf8").replace("New job with a layout", quoted);
    write("seen.yaml", job);
    write("points_PNEZD_m.csv", "1,1500,600,30,x\n");
    const checked = await runEveryWay(["check", "seen.yaml", "--all"]);
    expect(checked.stdout).toContain("depot\\u200b\\u00ad\\u2060");
    await runEveryWay(["make", "seen.yaml", "--out", "seen"]);
    await runEveryWay(["budget", "seen.yaml"], false);
    await runEveryWay(["compare", "seen.yaml", "job.yaml"]);
    await runEveryWay(["survey", "seen.yaml", "points_PNEZD_m.csv"]);
    await runEveryWay(["proof", "seen"]);
  });

  it("check: headings and cells of schedules and placements, keys and values of a shop file", async () => {
    const quoted = `"${HOSTILE}"`;
    const head = "job: { number: '1', title: t, revision: A, status: released, date: 2026-11-24 }\nunits: in\n";
    write("s.yaml", `${head}schedule: s.csv\n`);
    write(
      "p.yaml",
      readFileSync(join(folder, "layout.yaml"), "utf8").replace(/placements:\n( {2}- .*\n)+/, "placements: p.csv\n"),
    );
    write("shop.yaml", `name: ${JSON.stringify(HOSTILE)}\n${JSON.stringify(HOSTILE)}: 1\n`);
    write("w.yaml", `${head}shop: ./shop.yaml\nbases: []\n`);
    const schedule = "Mark,Rod dia,Spacing X,Spacing Y,Template thk\nB1,3/4,8,8,1/4\n";
    for (const [from, to] of [
      ["Mark", `Mark${HOSTILE}`],
      ["B1", `B1${HOSTILE}`],
      ["3/4", `3/4${HOSTILE}`],
      ["1/4", HOSTILE],
    ] as const) {
      write("s.csv", schedule.replace(from, `"${to}"`));
      expect((await runEveryWay(["check", "s.yaml"])).status).toBe(2);
    }
    for (const rows of [
      `Mark,Line 1,Line 2,${quoted}\nB1,A,1,x\n`,
      `Mark,Line 1,Line 2\nB1,${quoted},1\n${quoted},A,1\n`,
    ]) {
      write("p.csv", rows);
      expect((await runEveryWay(["check", "p.yaml"])).status).toBe(2);
    }
    expect((await runEveryWay(["check", "w.yaml"])).status).toBe(2);
  });

  it("survey: names, descriptions and headings of points, and options", async () => {
    const good = "A-1_A1,5000.3,2000.3,100";
    for (const points of [
      `${HOSTILE_LINE},5000,2000,100,${HOSTILE_LINE}\n${good},ROD\n`,
      `point,northing,easting,${HOSTILE_LINE}\n${good},${HOSTILE_LINE}\n`,
      `${HOSTILE_LINE}\n`,
      `a,${HOSTILE_LINE},1,1\n`,
    ]) {
      write("points_PNEZD_ft.csv", points);
      await runEveryWay(["survey", "layout.yaml", "points_PNEZD_ft.csv", "--unit", "ft", "--all"]);
    }
    for (const option of ["--unit", "--order", "--accuracy", "--height", "--within"])
      expect((await runEveryWay(["survey", "layout.yaml", "points_PNEZD_ft.csv", option, HOSTILE])).status).toBe(2);
  });

  it("compare: marks, titles, tags and paths of a foreign summary", async () => {
    const summary = JSON.parse(readFileSync(join(folder, "out", "summary.json"), "utf8"));
    const named = {
      ...summary,
      job: { ...summary.job, number: HOSTILE, title: HOSTILE, revision: HOSTILE, status: HOSTILE },
      files: [],
    };
    const bases = summary.bases.map((base: (typeof summary.bases)[number]) => ({
      ...base,
      mark: base.mark + HOSTILE,
      files: [],
      template: {
        ...base.template,
        mark: HOSTILE + base.template.mark,
        quantity: 9,
        holes: base.template.holes.map((hole: object) => ({ ...hole, tag: HOSTILE })),
      },
    }));
    mkdirSync(join(folder, "foreign"), { recursive: true });
    write("foreign/summary.json", JSON.stringify({ ...named, bases }));
    expect((await runEveryWay(["compare", "foreign", "out"])).status).not.toBe(2);
    await runEveryWay(["compare", "out", "foreign"]);
    await runEveryWay(["proof", "foreign"]);
    const path = `${HOSTILE_LINE}.dxf`;
    const file = { kind: "cut-joined", path, bytes: 1, sha256: "0".repeat(64) };
    write("foreign/summary.json", JSON.stringify({ ...named, bases, files: [file], [HOSTILE]: HOSTILE }));
    write(`foreign/${HOSTILE_LINE}.txt`, "");
    expect((await runEveryWay(["proof", "foreign"])).status).toBe(1);
    const { status, stderr } = await runEveryWay(["compare", "foreign", "out"]);
    expect([status, stderr.includes("is not of the package")]).toEqual([0, true]);
    write("foreign/summary.json", JSON.stringify({ ...named, schema: HOSTILE, bases: [{ [HOSTILE]: 1 }] }));
    expect((await runEveryWay(["compare", "foreign", "out"])).status).toBe(2);
  });

  it("names of files and folders, commands and options", async () => {
    const [job, dir] = [`${HOSTILE_LINE}.yaml`, `d${HOSTILE_LINE}`];
    write(job, readFileSync(join(folder, "job.yaml")));
    write(`${HOSTILE_LINE}.dxf`, fileOf([circle(50, 25, 5), box]));
    expect((await runEveryWay(["check", job])).status).toBe(0);
    expect((await runEveryWay(["make", job, "--out", dir])).status).toBe(0);
    await runEveryWay(["budget", job, "--out", `b${HOSTILE_LINE}`]);
    await runEveryWay(["proof", dir, `${HOSTILE_LINE}.dxf`, "--against", job]);
    await runEveryWay(["compare", dir, job]);
    await runEveryWay(["start", "us", "--out", `s${HOSTILE_LINE}.yaml`], false);
    for (const args of [
      [HOSTILE],
      ["start", HOSTILE, "--out", "x"],
      ["check", HOSTILE],
      ["proof", HOSTILE],
      ["make", "job.yaml", "--out", `${HOSTILE_LINE}/../job.yaml/x`],
      ["check", "job.yaml", HOSTILE],
      ["check", "job.yaml", `--${HOSTILE}`],
      ["help", HOSTILE],
    ])
      await runEveryWay(args, false);
  });
});
