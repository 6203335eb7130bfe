/** `read`: from a sheet as it was sent to a job and its package, by the program, as a user would. Invented data. */
import { chmodSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { sheetData, writeBook } from "../fuzz/workbooks.js";
import type { Ended, Outside } from "./program.js";
import { filesIn, givePackage, newFolder, packageFaults, runProgram } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string, outside: Outside = {}): Promise<Ended> => runProgram(folder, text.split(" "), outside);
const give = (make: string) => givePackage(folder, make.split(" "));
const write = (name: string, content: string | Uint8Array): void => writeFileSync(join(folder, name), content);
const text = (name: string): string => readFileSync(join(folder, name), "utf8");
const edit = (name: string, ...changes: readonly (readonly [string, string])[]): void => {
  const before = text(name);
  const after = changes.reduce((all, [from, to]) => all.replace(from, to), before);
  expect(after).not.toBe(before);
  write(name, after);
};

const HEADINGS = ["Mark", "Qty", "Rod dia", "Grade", "Pattern", "X", "Y", "Template thk"];
const ROWS = [
  HEADINGS,
  ["B1", "4", "1-1/4", "55", "rectangle", "12", "10", "1/4"],
  ["B2", "2", "3/4", "36", "rectangle", "8", "8", "1/4"],
];
const csv = (rows: readonly (readonly string[])[]): string => rows.map((row) => `${row.join(",")}\n`).join("");
const HEAD =
  'job: { number: "26-1", title: Depot, revision: A, status: released, date: 2026-11-24 }\nunits: in\nrules: us\nshop: plasma\n';

/** Every file of a package with its text. */
function packageOf(name: string): Record<string, string> {
  const at = join(folder, name);
  return Object.fromEntries(filesIn(at).map((path) => [path, readFileSync(join(at, path), "latin1")]));
}

describe("a sheet in the program's own headings", () => {
  it.each([
    ["bases.csv", csv(ROWS)],
    ["bases.txt", csv(ROWS).replaceAll(",", "\t")],
    ["bases.xlsx", writeBook([{ name: "Bases", xml: sheetData(ROWS) }])],
  ])(
    "%s is understood, and the job that is written makes the same package as one that names it",
    async (name, content) => {
      write(name, content);
      const read = await run(`read ${name} --out job.yaml`);
      expect([read.status, read.stderr]).toEqual([0, ""]);
      expect(read.stdout).toContain("2 bases; 0 questions open, 0 faults in the sheet.");
      edit("job.yaml", [/^ {2}number:.*$/m.exec(text("job.yaml"))?.[0] ?? "", '  number: "26-1"']);
      edit(
        "job.yaml",
        ["  title:", "  title: Depot"],
        ["  revision:", "  revision: A"],
        ["preliminary ", "released\n  date: 2026-11-24 "],
      );
      write("named.yaml", `${HEAD}schedule: ${name}\n`);
      expect((await run("make job.yaml --out own")).status).toBe(0);
      expect((await run("make named.yaml --out named")).status).toBe(0);
      expect(packageFaults(join(folder, "own"))).toEqual([]);
      expect(packageOf("own")).toEqual(packageOf("named"));
    },
  );

  it("is written as a job that keeps the head of the one that names it", async () => {
    write("bases.csv", csv(ROWS));
    write("named.yaml", `${HEAD}# the engineer's\nschedule: bases.csv # as sent\n`);
    expect((await run("read named.yaml --out job.yaml")).status).toBe(0);
    expect(text("job.yaml")).toContain(`${HEAD}# the engineer's\nreadFrom:\n  file: bases.csv # as sent\n#### `);
    await give("make job.yaml --out own");
    await give("make named.yaml --out named");
    expect(packageOf("own")).toEqual(packageOf("named"));
  });

  it("prints nothing but the machine form with --json", async () => {
    write("bases.csv", csv(ROWS));
    const read = await run("read bases.csv --json");
    const form = JSON.parse(read.stdout);
    expect([read.status, read.stderr]).toEqual([0, ""]);
    expect(form).toMatchObject({ schema: 1, file: "bases.csv", unit: "in", understood: true, questions: [] });
    expect(form.bases[0]).toMatchObject({ mark: "B1", rods: { diameter: "1-1/4", grade: "55" } });
    expect(readdirSync(folder)).toEqual(["bases.csv"]);
  });
});

/** As an engineer would send it: titles, grouped headings, dittos, a range, a note, a column that nobody knows, footnotes. */
const UNTIDY = [
  ["COLUMN BASE SCHEDULE", "", "", "", "", "", "", "", "", ""],
  [],
  ["", "", "ANCHOR RODS", "", "", "", "", "BASE PLATE", "", "TEMPLATE"],
  ["MARK", "NO. REQ'D", "NO.", "SIZE", "GRADE", "EMBED", "ERECT SEQ", "SIZE", "GAGE", "THK"],
  ["B1", "4", "4", '1 1/4"Ø', "F1554 GR 55", "24", "1", "18x18 PL 1-1/2", "12x12", "1/4"],
  ["B2", "2", "4", "1¼ DIA", "DO", "DO", "2", "DO", "DO", "DO"],
  ["B4-B6", "1", "(4)", '3/4"', "GR 36", "15", "TYP", "14x14x1", "8x8", "1/4"],
  ["B7", "1", "4", "SAME AS B1", "SEE NOTE 2", "24", "=1+1", "18x18 PL 1-1/2", "12x12", "1/4"],
  [],
  ["NOTES:"],
  ["2. F1554 GR 105"],
];
const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
const untidyCsv = UNTIDY.map((row) => `${row.map(quoted).join(",")}\n`).join("");

describe.each([
  ["sent.csv", untidyCsv],
  [
    "sent.xlsx",
    writeBook([
      { name: "COVER", xml: sheetData([["S-301"]]) },
      { name: "Bases", xml: sheetData(UNTIDY) },
    ]),
  ],
])("an untidy sheet, %s", (name, content) => {
  beforeEach(() => write(name, content));

  it("is shown base by base, with what is asked and the line that answers it; the job has it to fill in", async () => {
    const read = await run(`read ${name} --out job.yaml --table t.csv --faults f.txt`);
    expect([read.status, read.stderr]).toEqual([1, ""]);
    for (const words of [
      /^ {2}ANCHOR RODS \/ NO\. +Rod count$/m,
      /^ {2}B5 +1 /m,
      /^ {2}\* Mark B4, B5, B6 <- "B4-B6"/m,
      /kept as a note of the base under .*ERECT SEQ: "1"/,
      /notes: \{ "?2"?: TEXT \}/,
      /^6 bases; 1 question open, 0 faults in the sheet\.$/m,
    ])
      expect(read.stdout).toMatch(words);
    expect(text("job.yaml")).toMatch(/\n {2}notes:\n(?: {4}# .*\n)+ {4}# "?2"?: TEXT/);
    expect(text("job.yaml")).not.toContain("- mark");
    expect(text("f.txt")).toMatch(/asked.*SEE NOTE 2/);
    const make = await run("make job.yaml --out out");
    expect(make.status).toBe(2);
    expect(make.stderr).toContain("SEE NOTE 2");
  });

  it("shows every cell that holds something in its read-as table", async () => {
    await run(`read ${name} --table t.csv`);
    const places = new Set(
      text("t.csv")
        .split("\r\n")
        .map((line) => (line.split(",")[1] === "" ? "" : /(?<=[,!])[A-Z]+\d+(?=,)/.exec(line)?.[0])),
    );
    const filled = UNTIDY.flatMap((row, at) =>
      row.flatMap((cell, column) => (cell === "" ? [] : [`${"ABCDEFGHIJ"[column]}${at + 1}`])),
    );
    expect(filled.filter((place) => !places.has(place))).toEqual([]);
    expect(text("t.csv")).toContain("'=1+1");
  });

  it("makes, answered, the package of the job that names it with the same answer", async () => {
    await run(`read ${name} --out job.yaml`);
    const note = /^ {4}# ("?2"?:) TEXT.*$/m.exec(text("job.yaml"));
    edit("job.yaml", [note?.[0] ?? "", `    ${note?.[1]} GR 105 # asked the engineer, 24 Nov`]);
    edit("job.yaml", [/^ {2}number:.*$/m.exec(text("job.yaml"))?.[0] ?? "", '  number: "26-1"']);
    edit(
      "job.yaml",
      ["  title:", "  title: Depot"],
      ["  revision:", "  revision: A"],
      ["preliminary ", "released\n  date: 2026-11-24 "],
    );
    const own = text("job.yaml").split("#### ")[0] ?? "";
    expect(await run("read job.yaml --out job.yaml")).toMatchObject({ status: 0, stderr: "" });
    expect(text("job.yaml").startsWith(`${own}#### `)).toBe(true);
    const sheet = name.endsWith("xlsx") ? "Bases" : "";
    write(
      "named.yaml",
      `${HEAD}schedule: { file: ${name}, ${sheet === "" ? "" : `sheet: ${sheet}, `}notes: { "2": GR 105 } }\n`,
    );
    const [ofJob, ofSheet] = [await run("make job.yaml --out own"), await run("make named.yaml --out named")];
    expect([ofJob.status, ofSheet.status]).not.toContain(2);
    expect(packageOf("own")).toEqual(packageOf("named"));
    expect(packageFaults(join(folder, "own"))).toEqual([]);
    expect(filesIn(join(folder, "own"))).toEqual(
      expect.arrayContaining(["engineer/read-as.csv", "engineer/read-as.xlsx"]),
    );
    expect(text("own/engineer/read-as.csv")).toMatch(/^B7,.*SEE NOTE 2,.*,note,/m);
  });
});

it("asks for what the sheet does not say once, and takes it under defaults", async () => {
  write("bases.csv", csv(ROWS.map((row) => row.slice(0, -1))));
  const read = await run("read bases.csv --out job.yaml");
  expect(read.status).toBe(1);
  expect(read.stdout.match(/no thickness of the templates/g)).toHaveLength(1);
  edit("job.yaml", ["# thickness:", "thickness: 1/4"]);
  expect((await run("read job.yaml --out job.yaml")).status).toBe(0);
  expect(text("job.yaml")).toContain("\n  - mark: B1\n");
});

describe("the unit of bare numbers", () => {
  it("is not asked of a file without a schedule, nor of a print", async () => {
    write("list.csv", "Typ;Ankerdurchmesser\nB1;24\n");
    const other = await run("read list.csv");
    expect([other.status, other.stdout, other.stderr]).toEqual([2, "", expect.stringContaining("no table was found")]);
    write("print.pdf", "%PDF-1.4\n");
    const print = await run("read print.pdf");
    expect([print.status, print.stderr]).toEqual([
      2,
      expect.stringContaining(
        "a print (.pdf), by its name or its first bytes; allowed is .xlsx or CSV: ask for the sheet",
      ),
    ]);
  });

  const bare = csv([HEADINGS, ["B1", "4", "1", "55", "rectangle", "12", "10", "1"]]);

  it("is asked where nothing proves it, and the job takes the answer", async () => {
    write("bases.csv", bare);
    const asked = await run("read bases.csv --out job.yaml");
    expect(asked.status).toBe(1);
    expect(asked.stdout).toContain("bare numbers are inches or millimetres? no cell says it");
    expect((await run("check job.yaml")).stderr).toContain("units: is required");
    edit("job.yaml", ["# units: in ", "units: in "]);
    expect((await run("read job.yaml --out job.yaml")).status).toBe(0);
    expect(text("job.yaml")).toContain("\n  - mark: B1\n");
    expect((await run("read bases.csv --unit in")).status).toBe(0);
    expect((await run("read bases.csv --unit cm")).status).toBe(2);
  });

  it.each([
    ["a fraction", ["1-1/4", "12", "10-1/2"], "in"],
    ["mm in a heading", ["M24", "300", "250"], "mm"],
  ])("is proved by %s", async (_what, [diameter, x, y], unit) => {
    write(
      "bases.csv",
      csv([
        ["Mark", "Rod dia", "X", unit === "mm" ? "Y (mm)" : "Y"],
        ["B1", diameter ?? "", x ?? "", y ?? ""],
      ]),
    );
    expect(JSON.parse((await run("read bases.csv --json")).stdout).unit).toBe(unit);
  });

  it("is not stated against the job", async () => {
    write("bases.csv", bare);
    write("named.yaml", `${HEAD}schedule: bases.csv\n`);
    const read = await run("read named.yaml --unit mm");
    expect(read.status).toBe(2);
    expect(read.stderr).toContain(
      "--unit: is mm, but the job says units: in; write units: mm there, or leave --unit out",
    );
  });
});

describe("reading again", () => {
  beforeEach(async () => {
    write("bases.csv", csv(ROWS));
    await run("read bases.csv --out job.yaml");
  });

  it("keeps the person's part byte for byte, and writes the bases anew", async () => {
    edit("job.yaml", ["  title:", "  title: Depot # mine\r"], ["readFrom:", "# my remark\nreadFrom:"]);
    const own = text("job.yaml").split("#### ")[0] ?? "";
    write("bases.csv", csv([...ROWS, ["B3", "1", "1", "36", "rectangle", "9", "9", "1/4"]]));
    for (const source of ["bases.csv", "job.yaml"]) {
      expect((await run(`read ${source} --out job.yaml`)).status).toBe(0);
      expect(text("job.yaml").startsWith(`${own}#### `)).toBe(true);
      expect(text("job.yaml")).toContain("\n  - mark: B3\n");
    }
  });

  it.each([
    [
      "a change below the line of signs",
      () => edit("job.yaml", ["x: 12", "x: 14"]),
      "read job.yaml --out job.yaml",
      "was changed below",
    ],
    [
      "a file of a person's",
      () => write("job.yaml", `${HEAD}bases: []\n`),
      "read bases.csv --out job.yaml",
      "was not written by rodplate read",
    ],
    ["a file that is no job", () => write("notes.txt", "x"), "read bases.csv --out notes.txt", "is no .yaml file"],
    ["another sheet", () => write("other.csv", csv(ROWS)), "read other.csv --out job.yaml", "was read from bases.csv"],
    [
      "another job's answers",
      () => write("n.yaml", `${HEAD}schedule: bases.csv\n`),
      "read n.yaml --out job.yaml",
      "with answers of its own",
    ],
    ["a table that is there", () => write("t.csv", "mine"), "read bases.csv --table t.csv", "is there already"],
    ["a table of another form", () => {}, "read bases.csv --table t.ods", "ends in .csv or .xlsx"],
  ])("never writes over %s", async (_what, prepare, command, words) => {
    prepare();
    const before = filesIn(folder).map((name) => [name, text(name)]);
    const read = await run(command);
    expect([read.status, read.stdout]).toEqual([2, ""]);
    expect(read.stderr).toContain(words);
    expect(filesIn(folder).map((name) => [name, text(name)])).toEqual(before);
  });
});

describe("a job beside its sheet", () => {
  beforeEach(async () => {
    write("bases.csv", csv(ROWS));
    await run("read bases.csv --out job.yaml");
    edit("job.yaml", [/^ {2}number:.*$/m.exec(text("job.yaml"))?.[0] ?? "", '  number: "26-1"']);
  });

  it("holds where the sheet was changed since, and says what differs", async () => {
    write("bases.csv", csv(ROWS).replace(",8,8,", ",8,9,"));
    const made = await run("make job.yaml --out out");
    expect(made.status).toBe(0);
    expect(made.stderr).toContain(
      "the bases differ from bases.csv in one place, and hold as they stand here: B2 pattern.y 8: the sheet has 9",
    );
    const table = text("out/engineer/read-as.csv");
    expect(table).toMatch(/^B2,G3,Y,9,Y,pattern\.y,8,.*the job,the sheet has 9,\r$/m);
    expect(existsSync(join(folder, "out/engineer/read-as.xlsx"))).toBe(true);
    expect(packageFaults(join(folder, "out"))).toEqual([]);
  });

  it("leaves no read-as table where the sheet is plain and says the same", async () => {
    expect((await run("make job.yaml --out out")).stderr).toBe("");
    expect(filesIn(join(folder, "out")).filter((name) => name.includes("read-as"))).toEqual([]);
  });

  it("says what to do where the sheet is gone", async () => {
    rmSync(join(folder, "bases.csv"));
    const made = await run("make job.yaml --out out");
    expect(made.status).toBe(2);
    expect(made.stderr).toContain("is not there any more; put it back beside the job file, or delete readFrom");
    expect((await run("read job.yaml")).status).toBe(2);
  });
});

it("cannot read what is no sheet, and a job that names none", async () => {
  write("own.yaml", `${HEAD}bases: [{ mark: B1 }]\n`);
  write("none.yaml", HEAD);
  write("broken.xlsx", "PK");
  for (const [name, words] of [
    ["own.yaml", "has its bases in itself"],
    ["none.yaml", "names no sheet"],
    ["broken.xlsx", "workbook"],
    ["absent.csv", "there is no such file"],
  ] as const) {
    const read = await run(`read ${name}`);
    expect([name, read.status, read.stdout]).toEqual([name, 2, ""]);
    expect(read.stderr).toContain(words);
  }
  expect((await run("check absent.xlsx")).status).toBe(2);
  write("s.xlsx", writeBook([{ name: "Bases", xml: sheetData(ROWS) }]));
  expect((await run("check s.xlsx")).stderr).toContain("rodplate read s.xlsx --out job.yaml");
});

it("shows no colour where NO_COLOR asks for none, and nothing that acts on the terminal", async () => {
  write("bases.csv", csv([...ROWS, ["B\u001b[2J3", "1", "1", "36", "rectangle", "9", "9", "1/4"]]));
  const plain = await run("read bases.csv", { terminal: 100, environment: { NO_COLOR: "1" } });
  expect(plain.stdout).not.toContain("\u001b");
  const colored = await run("read bases.csv", { terminal: 100 });
  expect(colored.stdout).toContain("\u001b[1m");
  expect(colored.stdout).not.toContain("\u001b[2J");
});

describe("README's sheet", () => {
  const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
  const chapter = readme.slice(readme.indexOf("## From the engineer's sheet"), readme.indexOf("## What goes in"));
  const [sheet = "", screen = "", answers = ""] = [...chapter.matchAll(/^```(?:yaml)?\n(.*?)^```$/gms)].map(
    ([, block]) => block ?? "",
  );

  it("is shown as README says, and has its questions answered as README says", async () => {
    write("schedule.csv", sheet);
    const shown = (await run("read schedule.csv --out job.yaml", { environment: { COLUMNS: "110" } })).stdout.split(
      "\n",
    );
    const lines = screen.split("\n").filter((line) => line.trim() !== "" && line.trim() !== "...");
    let from = 0;
    for (const line of lines) {
      const at = shown.indexOf(line, from);
      expect(at, line).toBeGreaterThanOrEqual(from);
      from = at + 1;
    }
    const job = text("job.yaml");
    const filled = [...answers.matchAll(/^ +(2: F1554 GR 105|thickness: 1\/4)$/gm)].map(([, line]) => line ?? "");
    expect(filled).toHaveLength(2);
    write(
      "job.yaml",
      filled.reduce((all, line) => all.replace(new RegExp(`# ${line.split(":")[0]}: ?[^#\n]*`), `${line}   `), job),
    );
    const again = await run("read job.yaml --out job.yaml");
    expect(again.stdout).toContain("6 bases; 0 questions open, 0 faults in the sheet.");
  });
});

describe("a job that is read again", () => {
  const modeOf = (name: string): number => statSync(join(folder, name)).mode & 0o777;
  it("keeps its permissions, and is left alone where it is write-protected", async () => {
    write("bases.csv", csv(ROWS));
    await run("read bases.csv --out job.yaml");
    chmodSync(join(folder, "job.yaml"), 0o640);
    expect((await run("read job.yaml --out job.yaml")).status).toBe(0);
    expect(modeOf("job.yaml")).toBe(0o640);
    chmodSync(join(folder, "job.yaml"), 0o440);
    const before = text("job.yaml");
    write("bases.csv", csv([...ROWS, ["B3", "2", "3/4", "36", "rectangle", "8", "8", "1/4"]]));
    const refused = await run("read job.yaml --out job.yaml");
    expect(refused.stderr).toContain("job.yaml: is write-protected, and was left as it is");
    expect([refused.status, text("job.yaml"), readdirSync(folder).sort()]).toEqual([
      2,
      before,
      ["bases.csv", "job.yaml"],
    ]);
  });
});
