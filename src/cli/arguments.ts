/** The command line as a closed union of commands, or what is wrong with it. */
import { parseArgs } from "node:util";
import { nearestWord } from "../diagnostics/nearest.js";
import { PAPER_NAMES, type PaperName, paperNamed } from "../outputs/paper-names.js";
import { signerFaults as wrongSigner } from "../tasks/sign.js";

/** A command with its arguments as typed; null where an option is not given. Paths are not resolved yet. */
export type Command =
  | { readonly kind: "help"; readonly about: CommandName | null }
  | { readonly kind: "version" }
  | {
      readonly kind: "open";
      readonly job: string | null;
      /** null: the usual one, or any that is free. */
      readonly port: number | null;
      /** False: the address is printed, no browser is opened. */
      readonly opens: boolean;
    }
  | { readonly kind: "start"; readonly name: string | null; readonly out: string }
  | {
      readonly kind: "read";
      readonly file: string;
      readonly out: string | null;
      readonly table: string | null;
      readonly unit: string | null;
      readonly faults: string | null;
      readonly json: boolean;
    }
  | {
      readonly kind: "check";
      readonly job: string;
      /** Of bases or templates, as typed; none: the whole job. */
      readonly marks: readonly string[];
      readonly faults: string | null;
      readonly json: boolean;
      readonly all: boolean;
    }
  | {
      readonly kind: "make";
      readonly job: string;
      readonly out: string;
      readonly faults: string | null;
      readonly json: boolean;
      readonly all: boolean;
      readonly includeHeld: boolean;
      readonly replace: boolean;
      /** null: each page of the set has the size of its sheet. */
      readonly paper: PaperName | null;
    }
  | {
      readonly kind: "proof";
      readonly files: readonly string[];
      readonly against: string | null;
      readonly json: boolean;
    }
  | {
      readonly kind: "sign";
      readonly folder: string;
      readonly by: string;
      readonly note: string;
      readonly json: boolean;
    }
  | { readonly kind: "compare"; readonly old: string; readonly fresh: string; readonly json: boolean }
  | { readonly kind: "budget"; readonly job: string; readonly out: string | null; readonly json: boolean }
  | {
      readonly kind: "survey";
      readonly job: string;
      readonly points: string;
      readonly unit: string | null;
      readonly order: string | null;
      readonly accuracy: string | null;
      readonly height: string | null;
      readonly within: string | null;
      readonly out: string | null;
      readonly json: boolean;
      readonly all: boolean;
    };

/** The word after `rodplate`; help and version are none of them. */
export type CommandName =
  | "open"
  | "start"
  | "read"
  | "check"
  | "make"
  | "compare"
  | "proof"
  | "sign"
  | "budget"
  | "survey";
/** Every command, in the order of the help. */
const COMMANDS: readonly CommandName[] = [
  "open",
  "start",
  "read",
  "check",
  "make",
  "compare",
  "proof",
  "sign",
  "budget",
  "survey",
];

/** Options by command, beside --help and --version. */
const OPTIONS: Readonly<Record<CommandName, Readonly<Record<string, "string" | "boolean">>>> = {
  open: { port: "string", "no-browser": "boolean" },
  start: { out: "string" },
  read: { out: "string", table: "string", unit: "string", faults: "string", json: "boolean" },
  check: { faults: "string", json: "boolean", all: "boolean" },
  make: {
    out: "string",
    faults: "string",
    json: "boolean",
    all: "boolean",
    "include-held": "boolean",
    replace: "boolean",
    paper: "string",
  },
  compare: { json: "boolean" },
  proof: { against: "string", json: "boolean" },
  sign: { by: "string", note: "string", json: "boolean" },
  budget: { out: "string", json: "boolean" },
  survey: {
    unit: "string",
    order: "string",
    accuracy: "string",
    height: "string",
    within: "string",
    out: "string",
    json: "boolean",
    all: "boolean",
  },
};

/** The command; or what is wrong with the arguments, one line each. */
export type Parsed =
  | { readonly ok: true; readonly command: Command }
  | { readonly ok: false; readonly messages: readonly string[] };

const refused = (...messages: string[]): Parsed => ({ ok: false, messages });

/** Reads the arguments after the program's own name. */
export function parseCommand(args: readonly string[]): Parsed {
  const [first, ...rest] = args;
  if (first === undefined || first === "--help" || first === "-h")
    return { ok: true, command: { kind: "help", about: null } };
  if (first === "--version" || first === "-V") return { ok: true, command: { kind: "version" } };
  if (first === "help") return { ok: true, command: { kind: "help", about: commandNamed(rest[0]) } };
  const name = commandNamed(first);
  if (name !== null) return parseOptions(name, rest);
  const known = [...COMMANDS, "help"];
  const what = first.startsWith("-") ? "a command comes before options" : `unknown command ${JSON.stringify(first)}`;
  return refused(`${what}: the commands are ${known.join(", ")}${didYouMean(first, known)}`);
}

function commandNamed(word: string | undefined): CommandName | null {
  return COMMANDS.find((name) => name === word) ?? null;
}

function didYouMean(word: string, known: readonly string[]): string {
  const nearest = nearestWord(word, known);
  return nearest === undefined ? "" : `; did you mean ${nearest}?`;
}

interface Read {
  readonly texts: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
  readonly positionals: readonly string[];
  readonly faults: readonly string[];
}

function parseOptions(name: CommandName, args: readonly string[]): Parsed {
  const read = readTokens(name, args);
  if (read.flags.has("help")) return { ok: true, command: { kind: "help", about: name } };
  if (read.flags.has("version")) return { ok: true, command: { kind: "version" } };
  const faults = [
    ...read.faults,
    ...countPositionals(name, read.positionals),
    ...wantOut(name, read),
    ...paperFaults(read),
    ...portFaults(read),
    ...signerFaults(name, read),
  ];
  if (faults.length > 0) return refused(...faults);
  return { ok: true, command: commandOf(name, read) };
}

function readTokens(name: CommandName, args: readonly string[]): Read {
  const own = OPTIONS[name];
  const kinds: Readonly<Record<string, "string" | "boolean">> = { ...own, help: "boolean", version: "boolean" };
  const options = Object.fromEntries(Object.entries(kinds).map(([option, type]) => [option, { type }]));
  const settings = { help: { type: "boolean", short: "h" }, version: { type: "boolean", short: "V" } } as const;
  const { tokens } = parseArgs({
    args: [...args],
    options: { ...options, ...settings },
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const texts = new Map<string, string>();
  const flags = new Set<string>();
  const positionals: string[] = [];
  const faults: string[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") positionals.push(token.value);
    if (token.kind !== "option") continue;
    const fault = optionFault(name, kinds, token);
    if (fault !== null) faults.push(fault);
    else if (token.value === undefined) flags.add(token.name);
    else if (texts.has(token.name)) faults.push(`--${token.name} is given twice`);
    else texts.set(token.name, token.value);
  }
  return { texts, flags, positionals, faults };
}

function optionFault(
  command: CommandName,
  kinds: Readonly<Record<string, "string" | "boolean">>,
  { name, rawName, value }: { readonly name: string; readonly rawName: string; readonly value?: string | undefined },
): string | null {
  const kind = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
  if (kind === undefined) {
    const known = Object.keys(kinds).map((option) => `--${option}`);
    return `${command} has no option ${rawName}: it has ${known.join(", ")}${didYouMean(rawName, known)}`;
  }
  if (kind === "boolean" && value !== undefined) return `${rawName} takes no value`;
  if (kind === "string" && (value === undefined || value === "")) return `${rawName} needs a value`;
  return null;
}

interface Positionals {
  readonly least: number;
  readonly most: number;
  readonly wants: string;
}

const POSITIONALS: Readonly<Record<CommandName, Positionals>> = {
  open: { least: 0, most: 1, wants: "" },
  start: { least: 0, most: 1, wants: "" },
  read: { least: 1, most: 1, wants: "the name of a spreadsheet (XLSX, CSV, pasted text), or of a job that names one" },
  check: { least: 1, most: Number.POSITIVE_INFINITY, wants: "the name of a job file" },
  make: { least: 1, most: 1, wants: "the name of a job file" },
  compare: { least: 2, most: 2, wants: "OLD and NEW, each a job file or the folder of a package" },
  proof: { least: 1, most: Number.POSITIVE_INFINITY, wants: "the names of DXF files, or of the folder of a package" },
  sign: { least: 1, most: 1, wants: "the folder of a package" },
  budget: { least: 1, most: 1, wants: "the name of a job file" },
  survey: { least: 2, most: 2, wants: "the names of a job file and of a file of points" },
};

function countPositionals(name: CommandName, positionals: readonly string[]): string[] {
  const { least, most, wants } = POSITIONALS[name];
  if (positionals.length < least) return [`${name} needs ${wants}`];
  const extra = positionals.slice(most);
  if (extra.length === 0) return [];
  const takes = most === 1 ? "one name" : "two names";
  return [`${name} takes ${takes}; ${extra.map((word) => JSON.stringify(word)).join(", ")} is too much`];
}

function paperFaults({ texts }: Read): string[] {
  const paper = texts.get("paper");
  if (paper === undefined || paperNamed(paper) !== null) return [];
  const known = [...PAPER_NAMES, "11x17"];
  return [`--paper ${JSON.stringify(paper)}: the papers are ${known.join(", ")}${didYouMean(paper, known)}`];
}

function portFaults({ texts }: Read): string[] {
  const port = texts.get("port");
  if (port === undefined || (/^\d{1,5}$/.test(port) && Number(port) <= 65_535)) return [];
  return [`--port ${JSON.stringify(port)}: allowed is a whole number from 0 (any that is free) to 65535`];
}

function signerFaults(name: CommandName, { texts, faults }: Read): string[] {
  if (name !== "sign") return [];
  const [by, note] = [texts.get("by"), texts.get("note") ?? ""];
  if (by === undefined)
    return faults.some((fault) => fault.startsWith("--by"))
      ? []
      : ["sign needs --by NAME, who has checked the package"];
  return wrongSigner(by, note, "--").map(({ message }) => message);
}

function wantOut(name: CommandName, { texts, faults }: Read): string[] {
  if (
    OPTIONS[name].out === undefined ||
    name === "budget" ||
    name === "read" ||
    name === "survey" ||
    texts.has("out") ||
    faults.some((fault) => fault.startsWith("--out"))
  )
    return [];
  return [
    name === "make"
      ? "make needs --out DIR, the folder for the package"
      : "start needs --out FILE, the job file to write",
  ];
}

function commandOf(name: CommandName, { texts, flags, positionals }: Read): Command {
  const out = texts.get("out") ?? "";
  const job = positionals[0] ?? "";
  const faults = texts.get("faults") ?? null;
  const shown = { json: flags.has("json"), all: flags.has("all") };
  switch (name) {
    case "open": {
      const port = texts.get("port");
      const opens = !flags.has("no-browser");
      return { kind: "open", job: positionals[0] ?? null, port: port === undefined ? null : Number(port), opens };
    }
    case "start":
      return { kind: "start", name: positionals[0] ?? null, out };
    case "read":
      return { kind: "read", file: job, ...readOptions(texts), json: flags.has("json") };
    case "check":
      return { kind: "check", job, marks: positionals.slice(1), faults, ...shown };
    case "make":
      return {
        kind: "make",
        job,
        out,
        faults,
        ...shown,
        includeHeld: flags.has("include-held"),
        replace: flags.has("replace"),
        paper: paperNamed(texts.get("paper") ?? ""),
      };
    case "sign": {
      const [by, note] = [(texts.get("by") ?? "").trim(), (texts.get("note") ?? "").trim()];
      return { kind: "sign", folder: job, by, note, json: flags.has("json") };
    }
    case "compare":
      return { kind: "compare", old: job, fresh: positionals[1] ?? "", json: flags.has("json") };
    case "proof":
      return { kind: "proof", files: positionals, against: texts.get("against") ?? null, json: flags.has("json") };
    case "budget":
      return { kind: "budget", job, out: texts.get("out") ?? null, json: flags.has("json") };
    case "survey":
      return { kind: "survey", job, points: positionals[1] ?? "", ...surveyOptions(texts), ...shown };
  }
}

function readOptions(texts: ReadonlyMap<string, string>) {
  const option = (name: string): string | null => texts.get(name) ?? null;
  return { out: option("out"), table: option("table"), unit: option("unit"), faults: option("faults") };
}

function surveyOptions(texts: ReadonlyMap<string, string>) {
  const option = (name: string): string | null => texts.get(name) ?? null;
  return {
    unit: option("unit"),
    order: option("order"),
    accuracy: option("accuracy"),
    height: option("height"),
    within: option("within"),
    out: option("out"),
  };
}
