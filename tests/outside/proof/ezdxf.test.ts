/** Files by ezdxf (a program of the machine, not of this project): clean ones have no stop, every planted fault is found by its code. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { prove } from "../../proof-case.js";
import { hasEzdxf } from "../readers/installed-readers.js";

const isRequired = process.env.RODPLATE_REQUIRE_OUTSIDE === "1";
const isSkipped = !isRequired && !hasEzdxf();

describe.skipIf(isSkipped)("ezdxf", () => {
  const folder = mkdtempSync(join(tmpdir(), "proof-"));
  beforeAll(() => {
    execFileSync("/usr/bin/python3", [join(import.meta.dirname, "files_by_ezdxf.py"), folder], { stdio: "pipe" });
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  const proved = () =>
    readdirSync(folder)
      .sort()
      .map((name) => ({ name, file: prove(readFileSync(join(folder, name)), `T4 ${name}`) }));

  it("clean files have no stop, and are the plate they are", () => {
    const clean = proved().filter(({ name }) => name.startsWith("clean"));
    expect(clean.length).toBeGreaterThan(10);
    for (const { name, file } of clean) {
      const stops = file.findings.filter(({ severity }) => severity === "stop");
      expect([name, stops]).toEqual([name, []]);
      expect([name, file.match]).toMatchObject([name, { mark: "T4", turn: 0, mirrored: false, missing: 0, extra: 0 }]);
      expect(file.match?.positionError).toBeLessThan(1e-4);
    }
  });

  it("every planted fault is found by its code", () => {
    const faulty = proved().filter(({ name }) => !name.startsWith("clean"));
    expect(faulty.length).toBeGreaterThan(40);
    const missed = faulty.filter(({ name, file }) => {
      const [code] = name.replace(".dxf", "").split(" ");
      return !file.findings.some((finding) => finding.code === code);
    });
    expect(missed.map(({ name, file }) => [name, file.findings.map(({ code }) => code)])).toEqual([]);
  });
});
