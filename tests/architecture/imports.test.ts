/** The folder list is the architecture diagram: these tests read the import lines and hold them against it. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const source = fileURLToPath(new URL("../../src", import.meta.url));

/** Stages in the order in which data flows; entries of one row are on one level and do not import each other. */
const STAGES: readonly (readonly string[])[] = [
  ["diagnostics"],
  ["units"],
  ["geometry", "standards"],
  ["readers", "leaves"],
  ["patterns"],
  ["schedule"],
  ["job"],
  ["fit"],
  ["rods"],
  ["plan"],
  ["orientation"],
  ["template"],
  ["checks"],
  ["solids"],
  ["summary"],
  ["signature"],
  ["lists"],
  ["proof"],
  ["budget"],
  ["survey"],
  ["sheets"],
  ["compare"],
  ["formats"],
  ["outputs"],
  ["tasks"],
  ["index.ts"],
  ["cli", "web"],
];

interface Import {
  readonly from: string;
  readonly specifier: string;
  readonly target: string | null;
}

function sourceFiles(): string[] {
  return readdirSync(source, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith(".d.ts"))
    .sort();
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(source, file), "utf8");
  const specifiers = [...text.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g)].map((match) => match[1] ?? "");
  return specifiers.map((specifier) => ({
    from: file,
    specifier,
    target: specifier.startsWith(".") ? relative(source, resolve(source, dirname(file), specifier)) : null,
  }));
}

const stageOf = (path: string): string => path.split("/")[0]?.replace(/\.js$/, ".ts") ?? "";
const levelOf = (path: string): number => STAGES.findIndex((row) => row.includes(stageOf(path)));
const imports = sourceFiles().flatMap(importsOf);

describe("imports follow the stages", () => {
  it("finds the sources", () => {
    expect(imports.length).toBeGreaterThan(50);
  });

  it("knows the stage of every file", () => {
    expect(sourceFiles().filter((file) => levelOf(file) < 0)).toEqual([]);
  });

  it("imports only from an earlier stage or from its own", () => {
    const wrong = imports.filter(
      ({ from, target }) => target !== null && stageOf(target) !== stageOf(from) && levelOf(target) >= levelOf(from),
    );
    expect(wrong.map(({ from, specifier }) => `${from} imports ${specifier}`)).toEqual([]);
  });

  it("has no writer that can re-derive engineering", () => {
    const wrong = imports.filter(
      ({ from, target }) =>
        stageOf(from) === "formats" && target !== null && ["job", "standards", "schedule"].includes(stageOf(target)),
    );
    expect(wrong.map(({ from, specifier }) => `${from} imports ${specifier}`)).toEqual([]);
  });

  it("writes cut files from the plate and never from a drawing", () => {
    const wrong = imports.filter(
      ({ from, target }) => from.startsWith("formats/cut-") && target !== null && stageOf(target) === "sheets",
    );
    expect(wrong).toEqual([]);
  });

  it("shares no code between the writers of cut files and their reader", () => {
    const wrong = imports.filter(
      ({ from, target, specifier }) =>
        (from.startsWith("readers/dxf") && (target?.startsWith("formats") || specifier.includes("dxf-writer"))) ||
        (from.startsWith("formats/cut-") && target?.startsWith("readers") === true),
    );
    expect(wrong).toEqual([]);
  });

  it("uses node modules only in the command line", () => {
    const wrong = imports.filter(({ from, specifier }) => specifier.startsWith("node:") && stageOf(from) !== "cli");
    expect(wrong.map(({ from, specifier }) => `${from} imports ${specifier}`)).toEqual([]);
  });

  it("has no import cycle", () => {
    const edges = new Map<string, string[]>();
    for (const { from, target } of imports) {
      if (target !== null) edges.set(from, [...(edges.get(from) ?? []), target.replace(/\.js$/, ".ts")]);
    }
    expect(findCycle(edges)).toBeNull();
  });
});

describe("below the shells", () => {
  const forbidden =
    /\b(Date\.now|new Date(?!\([^)])|Math\.random|process\.|toLocale\w+|localeCompare|Intl\.|performance\.now)/;

  it("reads no clock, random source, locale or environment", () => {
    const wrong = sourceFiles()
      .filter((file) => !["cli", "web"].includes(stageOf(file)))
      .filter((file) => forbidden.test(withoutComments(readFileSync(join(source, file), "utf8"))));
    expect(wrong).toEqual([]);
  });

  it("has no folder of leftovers", () => {
    const names = sourceFiles().flatMap((file) => file.replace(/\.ts$/, "").split("/"));
    expect(names.filter((name) => ["utils", "util", "helpers", "common", "services", "misc"].includes(name))).toEqual(
      [],
    );
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/\/\/.*$/gm, "");
}

/** The first cycle found by depth-first search, as a chain of file names, or null. */
function findCycle(edges: ReadonlyMap<string, readonly string[]>): readonly string[] | null {
  const done = new Set<string>();
  const visit = (node: string, path: readonly string[]): readonly string[] | null => {
    if (path.includes(node)) return [...path.slice(path.indexOf(node)), node];
    if (done.has(node)) return null;
    for (const next of edges.get(node) ?? []) {
      const cycle = visit(next, [...path, node]);
      if (cycle !== null) return cycle;
    }
    done.add(node);
    return null;
  };
  for (const node of edges.keys()) {
    const cycle = visit(node, []);
    if (cycle !== null) return cycle;
  }
  return null;
}
