/** `rodplate sign` as a user runs it, and what proof, make and compare say of a signature afterwards. */
import { createHash } from "node:crypto";
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { filesIn, givePackage, newFolder, readSummary, runProgram, writeJob } from "./program.js";

let folder: string;
beforeEach(async () => {
  folder = newFolder();
  writeJob(folder, "job.yaml");
  await give("make job.yaml --out out");
});

const run = (line: string, outside = {}) => runProgram(folder, line.split(" "), outside);
const give = (make: string) => givePackage(folder, make.split(" "));
const sign = (name = "out", by = "J.Doe") => runProgram(folder, ["sign", name, "--by", by, "--note", "all sheets"]);
const SIGNED = "engineer/signed";
const records = (name = "out") => filesIn(join(folder, name)).filter((path) => path.startsWith(`${SIGNED}/`));
const readRecord = (name = "out") => JSON.parse(readFileSync(join(folder, name, records(name)[0] ?? ""), "utf8"));
const cutFile = (name = "out", base = 0) =>
  join(folder, name, readSummary(join(folder, name)).bases[base]?.files[0]?.path ?? "");

describe("rodplate sign", () => {
  it("0: records name, day, note and every hash, and writes nothing else", async () => {
    const before = filesIn(join(folder, "out"));
    const { status, stdout, stderr } = await sign();
    expect([status, stderr]).toEqual([0, ""]);
    expect(filesIn(join(folder, "out")).filter((path) => !before.includes(path))).toEqual(records());
    expect(records()).toHaveLength(1);
    const record = readRecord();
    expect(record).toMatchObject({ by: "J.Doe", date: "2026-11-24", note: "all sheets", held: [], open: [] });
    const whole = readFileSync(join(folder, "out", "summary.json"));
    const sha256 = createHash("sha256").update(whole).digest("hex");
    expect(record.summary).toEqual({ path: "summary.json", bytes: whole.length, sha256 });
    for (const { path, sha256: hash } of record.files)
      expect(
        createHash("sha256")
          .update(readFileSync(join(folder, "out", path)))
          .digest("hex"),
      ).toBe(hash);
    const paths = record.files.map(({ path }: { path: string }) => path);
    expect([...paths, "summary.json"].sort()).toEqual(before);
    expect(stdout).toContain(`SHA-256 of summary.json: ${sha256}`);
    expect(stdout).toMatch(/no proof of identity/);
    expect(stdout).toMatch(/licensed practice/);
  });

  it("prints the machine form and nothing else, and no colour where NO_COLOR is set", async () => {
    const { status, stdout, stderr } = await run("sign out --by J.Doe --json");
    expect([status, stderr]).toEqual([0, ""]);
    expect(JSON.parse(stdout)).toMatchObject({ by: "J.Doe", path: records()[0], held: [], bases: 2 });
    writeJob(folder, "held.yaml", { held: true });
    await give("make held.yaml --out held");
    const plain = await run("sign held --by J.Doe", { terminal: 100, environment: { NO_COLOR: "1" } });
    expect(plain.stdout).not.toContain("\u001b[");
    expect((await run("sign held --by A.Roe", { terminal: 100 })).stdout).toContain("\u001b[");
  });

  it("1: a held base and an open question are signed only as such, in the record and on the terminal", async () => {
    writeJob(folder, "held.yaml", { held: true, washer: "6", status: "for approval" });
    await give("make held.yaml --out held --include-held");
    const { status, stdout } = await sign("held");
    expect(status).toBe(1);
    expect(stdout).toContain("HELD, and signed as such: B1");
    expect(stdout).toContain("NOT RELEASED, and signed as such: status for approval");
    const record = readRecord("held");
    expect(record.held).toEqual(["B1"]);
    const asked = readSummary(join(folder, "held")).bases.flatMap((base) =>
      (base as unknown as { checks: { severity: string; status: string }[] }).checks.filter(
        (row) => row.severity === "ask" && row.status === "fail",
      ),
    );
    expect(asked.length).toBeGreaterThan(0);
    expect(record.open.reduce((sum: number, { rows }: { rows: number }) => sum + rows, 0)).toBe(asked.length);
    for (const { rule, numbers } of record.open) {
      expect(numbers.length).toBeGreaterThan(0);
      expect(stdout.replace(/\s+/g, " ")).toContain(`OPEN, and signed as such: ${numbers.join(", ")}, ${rule}`);
    }
    expect(record.accepted).toEqual([]);
  });

  it("2: damage is refused, every fault at once, and nothing is signed", async () => {
    appendFileSync(cutFile(), " ");
    rmSync(join(folder, "out", "engineer", "questions.csv"));
    writeFileSync(join(folder, "out", "cut", "mine.dxf"), "0\nEOF\n");
    const summary = join(folder, "out", "summary.json");
    writeFileSync(summary, readFileSync(summary, "utf8").replace('"note": "', '"note": "x'));
    writeFileSync(summary, readFileSync(summary, "utf8").replace("Invented", "Inwented"));
    const { status, stdout, stderr } = await sign();
    expect([status, stdout]).toEqual([2, ""]);
    for (const words of [
      "bytes, listed are",
      "questions.csv: is listed and is not there",
      "mine.dxf: is not listed",
      "its seal is broken",
    ])
      expect(stderr).toContain(words);
    expect(stderr).toContain("nothing was signed");
    expect(records()).toEqual([]);
    const { findings } = JSON.parse((await run("sign out --by J.Doe --json")).stdout);
    expect(findings.length).toBeGreaterThanOrEqual(4);
  });

  it.each([
    ["no name", "sign out", /needs --by NAME/],
    ["an empty name", "sign out --by  ", /--by/],
    ["no package", "sign job.yaml --by J.Doe", /cannot be signed: it is not a folder/],
    ["no such folder", "sign gone --by J.Doe", /there is no such folder/],
    ["two packages", "sign out out --by J.Doe", /is too much/],
    ["another option", "sign out --bye J.Doe", /did you mean --by\?/],
  ])("2: %s", async (_, line, words) => {
    const { status, stdout, stderr } = await run(line);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(words);
    expect(records()).toEqual([]);
  });

  it("2: a name that cannot be seen, or is too long", async () => {
    for (const by of ["J\u202eDoe", "   ", "x".repeat(101)])
      expect((await runProgram(folder, ["sign", "out", "--by", by])).status).toBe(2);
    expect(records()).toEqual([]);
  });

  it("takes the summary for its package, and a folder from within", async () => {
    expect((await sign(join("out", "summary.json"))).status).toBe(0);
    expect((await runProgram(join(folder, "out"), ["sign", ".", "--by", "A. Roe"])).status).toBe(0);
    expect(records()).toHaveLength(2);
  });

  it("2: waits for nobody who is writing the package", async () => {
    writeFileSync(
      join(folder, ".out.lock"),
      JSON.stringify({ host: "elsewhere", space: "", pid: 1, started: "", token: "x" }),
    );
    const { status, stderr } = await sign();
    expect([status, records()]).toEqual([2, []]);
    expect(stderr).toContain("is writing out");
  });
});

describe("proof of a signed package", () => {
  it("0 as long as it stands; void by a byte of any file, with what and how much is untouched", async () => {
    await sign();
    const good = await run("proof out");
    expect(good.status).toBe(0);
    expect(good.stdout).toContain("signed by J.Doe on 2026-11-24 (all sheets): stands");
    expect(good.stdout).not.toContain("is not listed");
    appendFileSync(cutFile(), " ");
    const { status, stdout } = await run("proof out");
    expect(status).toBe(1);
    expect(stdout).toMatch(/signed by J\.Doe on 2026-11-24 \(all sheets\): VOID/);
    expect(stdout).toContain("to be looked at again: B1 (file ");
    expect(stdout).not.toMatch(/the job is another|made again/);
    expect(stdout).toContain("untouched: 1 of 2 bases that were signed");
    const [{ signatures }] = JSON.parse((await run("proof out --json")).stdout).packages;
    expect(signatures).toMatchObject([{ by: "J.Doe", state: "void", changes: { untouched: 1, signed: 2 } }]);
  });

  it("a summary sealed anew by somebody else's hand is told by the signature alone", async () => {
    await sign();
    const path = join(folder, "out", "summary.json");
    const text = readFileSync(path, "utf8").replace("Invented", "Inwented");
    const body = text.slice(0, text.lastIndexOf(',\n  "seal"'));
    writeFileSync(path, `${body},\n  "seal": "${createHash("sha256").update(body).digest("hex")}"\n}\n`);
    const { stdout, status } = await run("proof out");
    expect(status).toBe(1);
    expect(stdout).toMatch(/out {2}as checked/);
    expect(stdout).toContain("VOID");
    rmSync(join(folder, "out", SIGNED), { recursive: true });
    const unsigned = await run("proof out");
    expect(unsigned.status).toBe(0);
    expect(unsigned.stdout).toContain("not signed: that every file agrees with summary.json is known, not that nobody");
  });

  it("several may sign; each is void on its own, and one that is given anew stands", async () => {
    await sign();
    await sign("out", "A.Roe");
    const path = join(folder, "out", records()[0] ?? "");
    writeFileSync(path, readFileSync(path, "utf8").replace('"note": "all', '"note": "All'));
    const { stdout, status } = await run("proof out");
    expect(status).toBe(1);
    expect(stdout).toContain("signed by J.Doe on 2026-11-24 (all sheets): stands");
    expect(stdout).toMatch(/signed by A\.Roe on 2026-11-24 \(All sheets\): VOID\n {4}the record itself was changed/);
    const again = await sign("out", "A.Roe");
    expect(again.stdout).toContain("Signed before:");
    expect(records()).toHaveLength(3);
    expect((await run("proof out")).status).toBe(0);
  });
});

describe("make over a signed package", () => {
  it("of the same bytes leaves it standing", async () => {
    await sign();
    const before = readRecord();
    const { status, stdout } = await run("make job.yaml --out out");
    expect(status).toBe(0);
    expect(stdout).toContain("signed by J.Doe on 2026-11-24 (all sheets): stands");
    expect(readRecord()).toEqual(before);
    expect((await run("proof out")).status).toBe(0);
  });

  it("of the same revision with another row says VOID, and what is to be looked at again", async () => {
    await sign();
    writeJob(folder, "job.yaml", { washer: "2-1/2" });
    const { stdout, stderr } = await run("make job.yaml --out out");
    expect(stdout).toContain("signed by J.Doe on 2026-11-24 (all sheets): VOID");
    expect(stdout).toMatch(/to be looked at again: B1 \(rows [^)]*washer/);
    expect(stdout).toContain("untouched: 0 of 2 bases");
    expect(stdout).toContain("The records stay in engineer/signed");
    expect(stderr).not.toContain("engineer/signed");
    expect(records()).toHaveLength(1);
    expect((await run("proof out")).status).toBe(1);
    await sign();
    expect((await run("proof out")).status).toBe(0);
    const { earlier } = JSON.parse((await run("make job.yaml --out out --json")).stdout);
    expect(earlier.signatures.map(({ state }: { state: string }) => state).sort()).toEqual(["valid", "void"]);
  });

  it("of another revision lets the record go with what was signed, where it still stands", async () => {
    await sign();
    writeJob(folder, "job.yaml", { revision: "B" });
    const { stdout } = await run("make job.yaml --out out");
    expect(stdout).toContain("it is of revision A, and this is B");
    expect(stdout).toContain("This package is not signed");
    expect(existsSync(join(folder, "out", SIGNED))).toBe(false);
    const kept = join("out", "superseded", "rev-A");
    expect(records(kept)).toHaveLength(1);
    expect((await run(`proof ${kept}`)).stdout).toContain("stands");
    expect((await run("proof out")).stdout).toContain("not signed");
  });

  it("that replaces another revision keeps the record beside, void", async () => {
    await sign();
    writeJob(folder, "job.yaml", { revision: "B" });
    await run("make job.yaml --out out --replace");
    expect(records()).toHaveLength(1);
    expect((await run("proof out")).stdout).toMatch(/VOID\n {4}it is of revision A, and this is B/);
  });

  it("loses no file that somebody laid beside a record", async () => {
    await sign();
    mkdirSync(join(folder, "out", SIGNED), { recursive: true });
    writeFileSync(join(folder, "out", SIGNED, "scan.pdf"), "scan");
    await run("make job.yaml --out out");
    expect(readFileSync(join(folder, "out", SIGNED, "scan.pdf"), "utf8")).toBe("scan");
    expect(records()).toHaveLength(2);
  });
});

describe("compare with a signed OLD", () => {
  it("says who signed, what is to be looked at again and how much is untouched; of a package and of a job alike", async () => {
    await sign();
    cpSync(join(folder, "out"), join(folder, "signed"), { recursive: true });
    const text = readFileSync(join(folder, "job.yaml"), "utf8").replace("x: 9, y: 8", "x: 9-1/2, y: 8");
    writeFileSync(join(folder, "next.yaml"), text);
    await give("make next.yaml --out next");
    for (const now of ["next.yaml", "next"]) {
      const { status, stdout } = await run(`compare signed ${now}`);
      expect(status).toBe(1);
      expect(stdout).toContain("Signatures of OLD, for NEW:\n  signed by J.Doe on 2026-11-24 (all sheets): VOID");
      expect(stdout).toMatch(/to be looked at again: B2 \(plate; rows/);
      expect(stdout).toContain("untouched: 1 of 2 bases that were signed");
      const { signatures } = JSON.parse((await run(`compare signed ${now} --json`)).stdout);
      expect(signatures[0].changes.again.map(({ mark }: { mark: string }) => mark)).toEqual(["B2"]);
    }
    const same = await run("compare signed job.yaml");
    expect([same.status, same.stdout.includes("stands")]).toEqual([0, true]);
    expect(JSON.parse((await run("compare job.yaml next.yaml --json")).stdout).signatures).toBeUndefined();
  });

  it("takes answers and acceptances by the numbers that OLD gave", async () => {
    writeJob(folder, "asking.yaml", { washer: "6" });
    await give("make asking.yaml --out asked");
    const { questions } = JSON.parse(readFileSync(join(folder, "asked", "summary.json"), "utf8"));
    const number = questions.find(({ status }: { status: string }) => status === "open").number;
    const said = `accepted:\n  - { question: ${number}, by: B. Owner, date: 2026-11-24, text: go on }\n`;
    appendFileSync(join(folder, "asking.yaml"), said);
    await run("make asking.yaml --out asked");
    const { stdout: signed } = await sign("asked");
    expect(signed.replace(/\s+/g, " ")).toContain(`ACCEPTED by name while it is open, and signed as such: ${number}, `);
    const { stdout } = await run("compare asked asking.yaml");
    expect(stdout).toContain("signed by J.Doe on 2026-11-24 (all sheets): stands");
  });

  it("says what was void in OLD already", async () => {
    await sign();
    rmSync(join(folder, "out", "engineer", "questions.csv"));
    const { stdout } = await run("compare out job.yaml");
    expect(stdout).toMatch(/VOID\n {4}engineer\/questions\.csv is listed and is not there/);
  });
});

describe("a changed byte anywhere in a package", () => {
  it("every sign of the summary's head and end is bound", async () => {
    const file = join(folder, "out", "summary.json");
    const bytes = readFileSync(file);
    const ends = [...Array(14).keys()].flatMap((at) => [3 * at, bytes.length - 1 - 5 * at]);
    for (const at of ends) {
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ 1;
      writeFileSync(file, flipped);
      expect([at, (await run("proof out")).status > 0]).toEqual([at, true]);
    }
  }, 120_000);

  it("is found at the very start of a signature too, which stays a record by its name", async () => {
    await sign();
    const file = join(folder, "out", records()[0] ?? "");
    const bytes = readFileSync(file);
    for (const at of [0, 5, 30]) {
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ 1;
      writeFileSync(file, flipped);
      const { status, stdout } = await run("proof out");
      expect([at, status, stdout.includes("VOID")]).toEqual([at, 1, true]);
    }
  });

  it("as is a summary that somebody took away, of the folder itself and of one in it", async () => {
    rmSync(join(folder, "out", "summary.json"));
    for (const name of ["out", "."]) {
      const { status, stderr } = await run(`proof ${name}`);
      expect([name, status]).toEqual([name, 2]);
      expect(stderr).toContain("out: is a package without its summary.json");
    }
    rmSync(join(folder, "out", "START-HERE.txt"));
    expect((await run("proof out")).status).toBe(0);
  });

  it("as are files removed, renamed, swapped and added", async () => {
    const [one, other] = [cutFile("out", 0), cutFile("out", 1)];
    renameSync(one, `${one}.aside`);
    expect((await run("proof out")).status).toBe(1);
    renameSync(other, one);
    renameSync(`${one}.aside`, other);
    const swapped = await run("proof out");
    expect(swapped.status).toBe(1);
    expect(swapped.stdout.match(/STOP {2}cut\/.*(another hash|bytes, listed are)/g)?.length).toBeGreaterThanOrEqual(2);
    renameSync(one, `${one}.aside`);
    renameSync(other, one);
    renameSync(`${one}.aside`, other);
    expect((await run("proof out")).status).toBe(0);
    renameSync(one, one.replace(/\.dxf$/, "-2.dxf"));
    const renamed = await run("proof out");
    expect(renamed.status).toBe(1);
    expect(renamed.stdout).toContain("is listed and is not there");
    expect(renamed.stdout).toContain("-2.dxf: is not listed in summary.json");
  });

  it("a file and its line of the summary changed together are told by the certificate", async () => {
    const file = cutFile();
    const bytes = readFileSync(file);
    const changed = Buffer.from(
      bytes
        .toString("latin1")
        .replace(
          /(\r\nCIRCLE\r\n[\s\S]*?\r\n40\r\n\d+\.)(\d)/,
          (_, a: string, b: string) => `${a}${(Number(b) + 1) % 10}`,
        ),
      "latin1",
    );
    expect(changed.length).toBe(bytes.length);
    writeFileSync(file, changed);
    const hash = (data: Buffer | string) => createHash("sha256").update(data).digest("hex");
    const path = join(folder, "out", "summary.json");
    const text = readFileSync(path, "utf8").replaceAll(hash(bytes), hash(changed));
    const body = text.slice(0, text.lastIndexOf(',\n  "seal"'));
    writeFileSync(path, `${body},\n  "seal": "${hash(body)}"\n}\n`);
    const { status, stdout } = await run("proof out");
    expect(status).toBe(1);
    expect(stdout).toContain("has another hash in its certificate than in summary.json");
    expect(stdout).toContain("certificate-differs");
    expect(stdout).toMatch(/hole-diameter|summary-differs/);
  });

  it("a package of a program that did not seal or certify is proved by what it has, and it is said", async () => {
    const path = join(folder, "out", "summary.json");
    const summary = JSON.parse(readFileSync(path, "utf8"));
    for (const key of ["sealed", "seal"]) delete summary[key];
    const isCertificate = ({ kind }: { kind: string }) => kind.startsWith("certificates");
    for (const each of summary.files.filter(isCertificate)) rmSync(join(folder, "out", each.path));
    summary.files = summary.files.filter((each: { kind: string }) => !isCertificate(each));
    writeFileSync(path, JSON.stringify(summary));
    const { status, stdout } = await run("proof out");
    expect(status).toBe(0);
    expect(stdout).toContain("LOOK  summary.json: has no seal");
  });
});
