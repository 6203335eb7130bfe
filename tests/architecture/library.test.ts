/** The library as other programs see it: its declarations, read from the build. */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import * as library from "../../src/index.js";

const dist = fileURLToPath(new URL("../../dist", import.meta.url));

interface Declared {
  readonly file: string;
  readonly name: string;
  readonly text: string;
}

/** A declaration file: what it declares, and what its names stand for in other files. */
interface Declarations {
  readonly own: ReadonlyMap<string, Declared>;
  /** Local name -> file and name; of imports and of what is passed on. */
  readonly imported: ReadonlyMap<string, readonly [string, string]>;
  readonly passedOn: ReadonlyMap<string, readonly [string, string]>;
  /** Files that are passed on whole. */
  readonly whole: readonly string[];
}

const known = new Map<string, Declarations>();

function read(file: string): Declarations {
  const found = known.get(file) ?? parse(file);
  known.set(file, found);
  return found;
}

function parse(file: string): Declarations {
  const text = readFileSync(join(dist, file), "utf8").replace(/\/\*[\s\S]*?\*\//g, "");
  const target = (specifier: string): string => join(dirname(file), specifier).replace(/\.js$/, ".d.ts");
  const names = (list: string, specifier: string) =>
    list.split(",").flatMap((each): (readonly [string, readonly [string, string]])[] => {
      const [name = "", local = name] = each
        .trim()
        .replace(/^type /, "")
        .split(" as ");
      return name === "" ? [] : [[local, [target(specifier), name]]];
    });
  const all = (pattern: RegExp) => [...text.matchAll(pattern)];
  const imports = all(/^import (?:type )?\{([^}]*)\} from "(\.[^"]+)";/gm);
  const exports = all(/^export (?:type )?\{([^}]*)\} from "(\.[^"]+)";/gm);
  const whole = all(/^export (?:type )?\* from "(\.[^"]+)";/gm);
  const statements = text.split(/^(?=(?:export |declare |interface |type ))/m);
  const own = statements.flatMap((each): Declared[] => {
    const head = /^(?:export )?(?:declare )?(?:abstract )?(?:interface|type|class|function|const) (\w+)/.exec(each);
    return head?.[1] === undefined ? [] : [{ file, name: head[1], text: each }];
  });
  return {
    own: new Map(own.map((each) => [each.name, each])),
    imported: new Map(imports.flatMap(([, list = "", from = ""]) => names(list, from))),
    passedOn: new Map(exports.flatMap(([, list = "", from = ""]) => names(list, from))),
    whole: whole.map(([, from = ""]) => target(from)),
  };
}

/** Where a name that a file exports is declared. */
function declarationOf(file: string, name: string): Declared | null {
  const { own, passedOn, whole } = read(file);
  const there = own.get(name);
  if (there !== undefined) return there;
  const next = passedOn.get(name);
  if (next !== undefined) return declarationOf(...next);
  for (const each of whole) {
    const found = declarationOf(each, name);
    if (found !== null) return found;
  }
  return null;
}

/** Every declaration that a file exports, its own and those that it passes on. */
function exportsOf(file: string): readonly Declared[] {
  const { own, passedOn, whole } = read(file);
  const declared = [...own.values()].filter(({ text }) => text.startsWith("export "));
  const given = [...passedOn.values()].map(([from, name]) => declarationOf(from, name)).filter((each) => each !== null);
  return [...declared, ...given, ...whole.flatMap(exportsOf)];
}

/** The types that a declaration names; of a function whose result it takes (`ReturnType<typeof f>`), those of the result. */
function namedBy({ file, name, text }: Declared): readonly Declared[] {
  const { own, imported } = read(file);
  const values = new Set(text.match(/(?<=typeof )\w+/g) ?? []);
  const words = new Set((text.match(/\b[A-Z]\w*\b/g) ?? []).filter((word) => !values.has(word)));
  const taken = [...values].flatMap((word) => {
    const there = declarationOf(...(imported.get(word) ?? ([file, word] as const)));
    const result = there?.text.split(/^[^{]*?\): /)[1];
    return there === null || result === undefined ? [] : namedBy({ ...there, text: result });
  });
  const inline = [...text.matchAll(/import\("(\.[^"]+)"\)\.(\w+)/g)].map(([, from = "", word = ""]) =>
    declarationOf(join(dirname(file), from).replace(/\.js$/, ".d.ts"), word),
  );
  const found = [...words].map((word) => {
    const from = imported.get(word);
    return from === undefined ? (word === name ? null : (own.get(word) ?? null)) : declarationOf(...from);
  });
  return [...taken, ...inline, ...found].filter((each) => each !== null);
}

const keyOf = ({ file, name }: Declared): string => `${file} ${name}`;

describe("the library", () => {
  const exported = exportsOf("index.d.ts");
  const names = new Set(exported.map(keyOf));

  it("exports what README's chapter names", () => {
    expect(Object.keys(library).sort()).toEqual([
      "ProgramFault",
      "SHOP_NAMES",
      "againstJob",
      "budgetJob",
      "build",
      "checkJob",
      "compareJobs",
      "fitPlate",
      "fitProbability",
      "formatFinding",
      "hasErrors",
      "makePackage",
      "newLeanDocument",
      "openJob",
      "openWorkbook",
      "proveFile",
      "readCutFile",
      "readJobFile",
      "readSheetAsSent",
      "requestedFiles",
      "splitJob",
      "surveyJob",
      "writeJobAgain",
      "writeNewJob",
    ]);
  });

  it("reaches no type that it does not export", () => {
    expect(exported.length).toBeGreaterThan(60);
    const hidden = exported.flatMap((from) =>
      namedBy(from).flatMap((to) => (names.has(keyOf(to)) ? [] : [`${from.name} names ${to.name} of ${to.file}`])),
    );
    expect([...new Set(hidden)]).toEqual([]);
  });
});
