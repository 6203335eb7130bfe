/** A rule set stands for named editions; a job may choose each of them. */
import type { Finding } from "../../diagnostics/finding.js";
import { nearestWord } from "../../diagnostics/nearest.js";
import { type EditionKind, type EditionOf, editionsOf } from "../../standards/index.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt } from "../document.js";
import type { Editions, RuleSet } from "../model/job.js";
import type { HeadDocument } from "../schema/job.js";
import type { JobSources } from "./job-sources.js";

const DEFAULTS: Readonly<Record<RuleSet, Editions>> = {
  us: {
    set: "us",
    templateHoles: "Design Guide 1, 2nd ed.",
    baseHoles: "AISC 360-22 C-J9.1",
    placing: "ACI 117-10",
    edges: "AISC 360-22",
    concrete: "ACI 318-19",
  },
  metric: {
    set: "metric",
    templateHoles: "ISO 273",
    baseHoles: "d + 6 mm",
    placing: "EN 1090-2:2008",
    edges: "EN 1993-1-8:2005",
    concrete: "ACI 318M-19",
  },
};

/** The editions of a job; an unknown one is a finding that lists the known ones. */
export function resolveEditions(
  rules: HeadDocument["rules"],
  { unit, document }: Pick<JobSources, "unit" | "document">,
): WithFindings<Editions> {
  const findings: Finding[] = [];
  const chosen = rules === undefined || typeof rules === "string" ? undefined : rules;
  const bySet = typeof rules === "string" ? rules : chosen?.set;
  const defaults = DEFAULTS[bySet ?? (unit === "in" ? "us" : "metric")];
  const choose = <Kind extends EditionKind>(kind: Kind): EditionOf<Kind> => {
    const written = chosen?.[kind];
    if (written === undefined) return defaults[kind];
    const edition = editionNamed(editionsOf(kind), written);
    if (edition === undefined) findings.push(unknownEdition(kind, written, editionsOf(kind), document));
    return edition ?? defaults[kind];
  };
  const value: Editions = {
    set: defaults.set,
    templateHoles: choose("templateHoles"),
    baseHoles: choose("baseHoles"),
    placing: choose("placing"),
    edges: choose("edges"),
    concrete: choose("concrete"),
  };
  return { value, findings };
}

function unknownEdition(
  kind: EditionKind,
  written: string,
  known: readonly string[],
  document: SourceDocument,
): Finding {
  const near = nearestWord(written, known);
  const message = `"${written}" is not an edition that is known; allowed are ${known.join("; ")}`;
  return faultAt(
    document,
    ["rules", kind],
    "unknown-edition",
    message,
    near === undefined ? undefined : `did you mean ${near}?`,
  );
}

/** An edition by its name; a publication of which one year is held, without the year too: `EN 1090-2`. */
function editionNamed<Name extends string>(known: readonly Name[], written: string): Name | undefined {
  const undated = known.filter((name) => plain(name).replace(/:\d{4}$/, "") === plain(written));
  return known.find((name) => plain(name) === plain(written)) ?? (undated.length === 1 ? undated[0] : undefined);
}

function plain(name: string): string {
  return name.toLowerCase().replace(/\s+/g, " ").trim();
}
