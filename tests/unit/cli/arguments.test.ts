/** The command line as the contract has it. */
import { describe, expect, it } from "vitest";
import { parseCommand } from "../../../src/cli/arguments.js";

const words = (text: string): string[] => (text === "" ? [] : text.split(" "));

describe("commands", () => {
  it.each([
    ["", { kind: "help", about: null }],
    ["--help", { kind: "help", about: null }],
    ["help make", { kind: "help", about: "make" }],
    ["make --help", { kind: "help", about: "make" }],
    ["--version", { kind: "version" }],
    ["start --out a.yaml", { kind: "start", name: null, out: "a.yaml" }],
    ["start mast --out=a.yaml", { kind: "start", name: "mast", out: "a.yaml" }],
    ["check job.yaml", { kind: "check", marks: [], job: "job.yaml", faults: null, json: false, all: false }],
    ["check --json --all job.yaml", { kind: "check", marks: [], job: "job.yaml", faults: null, json: true, all: true }],
    ["check -- -job.yaml", { kind: "check", marks: [], job: "-job.yaml", faults: null, json: false, all: false }],
    [
      "make job.yaml --out out",
      {
        kind: "make",
        job: "job.yaml",
        out: "out",
        faults: null,
        json: false,
        all: false,
        includeHeld: false,
        replace: false,
        paper: null,
      },
    ],
    [
      "make --out out --include-held job.yaml",
      {
        kind: "make",
        job: "job.yaml",
        out: "out",
        faults: null,
        json: false,
        all: false,
        includeHeld: true,
        replace: false,
        paper: null,
      },
    ],
    ["compare old.yaml new", { kind: "compare", old: "old.yaml", fresh: "new", json: false }],
    ["budget job.yaml", { kind: "budget", job: "job.yaml", out: null, json: false }],
    ["budget --json job.yaml --out out", { kind: "budget", job: "job.yaml", out: "out", json: true }],
    ["compare --json a b", { kind: "compare", old: "a", fresh: "b", json: true }],
    ["proof a.dxf b.dxf", { kind: "proof", files: ["a.dxf", "b.dxf"], against: null, json: false }],
    ["proof --json a.dxf --against job.yaml", { kind: "proof", files: ["a.dxf"], against: "job.yaml", json: true }],
    ["compare --help", { kind: "help", about: "compare" }],
  ])("%s", (text, command) => {
    expect(parseCommand(words(text))).toEqual({ ok: true, command });
  });
});

describe("what is wrong is told, all of it, with the nearest known word", () => {
  it.each([
    ["mke job.yaml", ["did you mean make?"]],
    ["--json", ["a command comes before options"]],
    ["make job.yaml", ["make needs --out DIR"]],
    ["make --out", ["--out needs a value", "make needs the name of a job file"]],
    ["make job.yaml --out a --out b", ["--out is given twice"]],
    [
      "make job.yaml --outt a --includeheld",
      ["no option --outt", "did you mean --out?", "did you mean --include-held?"],
    ],
    ["make job.yaml out --out a", ['"out" is too much']],
    ["check job.yaml --out a", ["check has no option --out"]],
    ["check job.yaml --json=yes", ["--json takes no value"]],
    ["check", ["check needs the name of a job file"]],
    ["check job.yaml --constructor", ["check has no option --constructor"]],
    ["start", ["start needs --out FILE"]],
    ["compare a", ["compare needs OLD and NEW"]],
    ["compare a b c", ["compare takes two names", '"c" is too much']],
    ["proof --against job.yaml", ["proof needs the names of DXF files, or of the folder of a package"]],
    ["proof a.dxf --against", ["--against needs a value"]],
    ["compare a b --all", ["compare has no option --all"]],
  ])("%s", (text, parts) => {
    const parsed = parseCommand(words(text));
    expect(parsed.ok).toBe(false);
    const message = parsed.ok ? "" : parsed.messages.join("\n");
    for (const part of parts) expect(message).toContain(part);
  });
});
