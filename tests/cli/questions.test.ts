/** Questions over revisions as a user meets them: packages made one over the other in one folder. */
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { jobText, type Revision } from "../questions-case.js";
import { newFolder, runProgram } from "./program.js";

let folder = "";
beforeEach(() => {
  folder = newFolder();
});

async function make(revision: Revision, out = "out") {
  writeFileSync(join(folder, "job.yaml"), jobText(revision));
  return runProgram(folder, ["make", "job.yaml", "--out", out]);
}

function questionsIn(out = "out"): readonly string[] {
  const { questions } = JSON.parse(readFileSync(join(folder, out, "summary.json"), "utf8"));
  return questions.map(
    ({ number, status, bases }: { number: string; status: string; bases: string[] }) =>
      `${number} ${status} ${bases.join(" ")}`,
  );
}

const bases = [{ mark: "B1" }, { mark: "B2", washer: "2-3/4" }];

describe("make over an earlier package", () => {
  it("goes on with its numbers and says so, whatever was asked before and after", async () => {
    const first = await make({ revision: "A", bases });
    expect([first.status, first.stderr]).toEqual([0, expect.not.stringContaining("numbers of questions")]);
    const second = await make({ revision: "B", bases: [{ mark: "B0" }, ...bases.slice(1)] });
    expect(second.stderr).toContain("numbers of questions go on from revision A in out, which has 2 questions");
    expect(questionsIn()).toEqual(["Q-1 closed B1", "Q-2 open B2", "Q-3 open B0"]);
    expect(second.stdout).toContain("Questions to the engineer of record: 2 open, 1 closed");
  });

  it("takes the newest superseded one where the package itself has no register", async () => {
    await make({ revision: "A", bases });
    await make({ revision: "B", bases: [...bases, { mark: "B3", washer: "2-5/8" }] });
    await make({ revision: "C", bases });
    const summary = join(folder, "out", "summary.json");
    const { questions: _, ...without } = JSON.parse(readFileSync(summary, "utf8"));
    writeFileSync(summary, JSON.stringify(without));
    const last = await make({ revision: "D", bases: [{ mark: "B9", washer: "2-7/16" }, ...bases] });
    expect(last.stderr).toMatch(/go on from revision B in out\/superseded\/\S+, which has 3 questions/);
    expect(questionsIn()).toEqual(["Q-1 open B1", "Q-2 open B2", "Q-3 closed B3", "Q-4 open B9"]);
  });

  it("reads the form back, releases what was answered, and keeps exit code 0", async () => {
    await make({ revision: "A", bases });
    const form = readdirSync(join(folder, "out/engineer")).find((name) => name.endsWith("_answers.yaml")) ?? "";
    copyFileSync(join(folder, "out/engineer", form), join(folder, "form.yaml"));
    const filled = readFileSync(join(folder, "form.yaml"), "utf8").replace(
      "answer:\n    by:\n    date:",
      "answer: as drawn\n    by: J. Doe\n    date: 2026-11-23",
    );
    writeFileSync(join(folder, "form.yaml"), filled);
    const made = await make({ revision: "B", bases, head: ["answersFrom: form.yaml"] });
    expect(made.status).toBe(0);
    expect(questionsIn()).toEqual(["Q-1 answered B1", "Q-2 open B2"]);
    const cut = readdirSync(join(folder, "out/cut"), { recursive: true })
      .map(String)
      .filter((name) => name.endsWith(".dxf"));
    expect(cut.filter((name) => name.includes("T-B1_") && name.includes("NOT-RELEASED"))).toEqual([]);
    expect(cut.filter((name) => name.includes("T-B2_") && !name.includes("NOT-RELEASED"))).toEqual([]);
    expect(cut.length).toBeGreaterThanOrEqual(4);
    expect(made.stdout).toContain("NOT RELEASED though the job is: 1 template is stopped by open questions: T-B2.");
  });

  it("an earlier package elsewhere is named by the job, for check as well", async () => {
    await make({ revision: "A", bases }, "old");
    mkdirSync(join(folder, "jobs"));
    writeFileSync(
      join(folder, "jobs", "b.yaml"),
      jobText({ revision: "B", bases: bases.slice(1), head: ["questions: ../old/summary.json"] }),
    );
    const { stdout } = await runProgram(folder, ["check", "jobs/b.yaml"]);
    expect(stdout).toContain("\n  Q-2  B2");
    expect(stdout).not.toContain("\n  - Q-1  Base");
  });

  it("answers by numbers of a package are read by its register where a job is compared with it, on either side", async () => {
    await make({ revision: "A", bases });
    const form =
      "answers:\n  - { question: Q-9, value: 2.5, unit: in, answer: as drawn, by: J. Doe, date: 24 Nov 2026 }\n";
    writeFileSync(join(folder, "form.yaml"), form);
    writeFileSync(join(folder, "job.yaml"), jobText({ revision: "A", bases, head: ["answersFrom: form.yaml"] }));
    for (const sides of [
      ["job.yaml", "out"],
      ["out", "job.yaml"],
    ]) {
      const { status, stderr } = await runProgram(folder, ["compare", ...sides]);
      expect([status, stderr]).toEqual([
        2,
        expect.stringContaining("Q-9 was never asked: the register of revision A goes to Q-2"),
      ]);
    }
  });

  it("check of a package says what else may be wanted of it", async () => {
    await make({ revision: "A", bases });
    for (const name of ["out", "out/summary.json"]) {
      const { status, stderr } = await runProgram(folder, ["check", name]);
      expect([status, stderr]).toEqual([2, expect.stringContaining("is a package, and no job")]);
      expect(stderr).toContain("rodplate proof out;");
    }
  });

  it("an answer by rule that names no value says in the ledger how far it goes", async () => {
    const head = ["answers: [{ mark: B1, rule: washer-cover, by: J. Doe, date: 2026-11-23, text: as drawn }]"];
    await make({ revision: "A", bases, head });
    expect(readFileSync(join(folder, "out/engineer/ledger.csv"), "utf8")).toContain(
      "holds for every failing row of this rule of B1, whatever its value becomes",
    );
  });
});
