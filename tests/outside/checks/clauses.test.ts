/**
 * Every row prints a clause of its own edition. Numbers are those of the publications: ACI 318-19 17.9.2, 20.5.1.3 and
 * Table 20.5.1.3.1 as printed (secondary copy); 318-14 17.7.1, 17.7.2, 20.6.1.3, 318-11 D.8.1, D.8.2, 7.7.1 and 318M-19 from memory;
 * ACI 117-10 2.3.4; AISC 303 7.5.1 as quoted in Design Guide 1; EN 1090-2:2008 D.2.20 (the 2018 edition numbers otherwise);
 * AISC 360 J3.4, J3.4M, J3.5, J3.5M; EN 1993-1-8:2005 Table 3.3; Design Guide 1, 2nd ed., s.2.6, s.2.9, Table 2.3.
 */
import { describe, expect, it } from "vitest";
import { type CheckRow, rules } from "../../../src/checks/index.js";
import { runRules } from "../../../src/checks/run.js";
import { type Editions, given } from "../../../src/job/model/job.js";
import { type EditionKind, editionsOf, findEdge, placingRows } from "../../../src/standards/index.js";
import { inches, type Length, millimetres } from "../../../src/units/index.js";
import { groupFixture, jobFixture } from "../../fixture.js";
import { contextOf } from "../../unit/checks/context.js";

type Clauses = Readonly<Record<string, RegExp>>;

const OVER_CAST = "setting plate over cast rods";
const PLAN_117 = /^2\.3\.4\.2$/;

/** Kind, edition, and for each rule that the edition governs the clauses that its rows may print. */
const PRINTED: { readonly [Kind in EditionKind]: Readonly<Record<string, Clauses>> } = {
  concrete: {
    "ACI 318-19": { "rod-spacing": /^17\.9\.2\(a\)$/, "rod-cover": /^(20\.5\.1\.3: cover|17\.9\.2\(a\): edge)/ },
    "ACI 318M-19": { "rod-spacing": /^17\.9\.2\(a\)$/, "rod-cover": /^(20\.5\.1\.3: cover|17\.9\.2\(a\): edge)/ },
    "ACI 318-14": {
      "rod-spacing": /^17\.7\.1 \/ 17\.7\.2$/,
      "rod-cover": /^(20\.6\.1\.3: cover|17\.7\.1 \/ 17\.7\.2: edge)/,
    },
    "ACI 318-11": { "rod-spacing": /^D\.8\.1 \/ D\.8\.2$/, "rod-cover": /^(7\.7\.1: cover|D\.8\.1 \/ D\.8\.2: edge)/ },
  },
  placing: {
    "ACI 117-10": { "rod-play": PLAN_117, "placing-clearance": PLAN_117 },
    "AISC 303-10": { "rod-play": /^7\.5\.1\(a\)$/, "placing-clearance": /^7\.5\.1\(a\)/ },
    "AISC 303-22": { "rod-play": /^7\.5\.1$/, "placing-clearance": /^7\.5\.1$/ },
    "EN 1090-2:2008": { "rod-play": /^D\.2\.20$/, "placing-clearance": /^D\.2\.20$/ },
  },
  edges: {
    "AISC 360-22": { "base-plate-edge": /^Table J3\.4( \+ C2 of Table J3\.5)?$/ },
    "AISC 360-22M": { "base-plate-edge": /^Table J3\.4M( \+ C2 of Table J3\.5M)?$/ },
    "AISC 360-05": { "base-plate-edge": /^(Table J3\.4, sheared edge|least edge distance)$/ },
    "EN 1993-1-8:2005": { "base-plate-edge": /^Table 3\.3$/ },
  },
  templateHoles: {
    "Design Guide 1, 2nd ed.": { "template-hole": /^s\.2\.9: (template hole for the rod|set over cast rods: h = H)$/ },
    "ISO 273": { "template-hole": /^medium series \(H13\); as template hole: common practice$/ },
  },
  baseHoles: {
    "AISC 360-22 C-J9.1": { "base-plate-hole": /^Commentary Table C-J9\.1: base-plate holes/ },
    "Design Guide 1, 2nd ed.": { "base-plate-hole": /^Table 2\.3: base-plate holes/ },
    "Design Guide 1, 3rd ed. examples": { "base-plate-hole": /^worked examples 4\.7-9 and others: base-plate holes/ },
    "AISC 360-22 C-J9.1M": { "base-plate-hole": /^Commentary Table C-J9\.1M: base-plate holes/ },
    "d + 6 mm": { "base-plate-hole": /^common practice: base-plate holes/ },
    "EN 1992-4 Table 6.1": { "base-plate-hole": /^Table 6\.1: base-plate holes/ },
  },
};

/** A rule of Design Guide 1, s.2.6 or s.2.9, is of that edition whatever table of holes the job chooses. */
const ALWAYS = "Design Guide 1, 2nd ed.";

interface Sized {
  readonly size: string;
  readonly diameter: Length;
  readonly hole: Length;
}

const INCH: Sized = { size: "1", diameter: inches(1), hole: inches(1.8125) };
const METRIC: Sized = { size: "M24", diameter: millimetres(24), hole: millimetres(30) };

/** Rows of two bases, as rods are held by a template and as a plate is set over them. */
function rowsBy(editions: Partial<Editions>, { size, diameter, hole }: Sized): readonly CheckRow[] {
  const job = jobFixture({ editions: { ...jobFixture().editions, ...editions } });
  const held = given(hole, "table");
  const group = groupFixture({ baseHole: held, tableBaseHole: held }, { size, diameter, torqued: given(true, "job") });
  return (["template", OVER_CAST] as const).flatMap((use) => {
    const changes = { job, base: { groups: [group] } };
    const context = contextOf(changes);
    const base = { ...context.base, template: { ...context.base.template, use } };
    return runRules(rules, { ...context, base });
  });
}

function sizeOf(edition: string): Sized {
  return /M-19$|22M$|C-J9\.1M$|^EN |^ISO |mm$/.test(edition) ? METRIC : INCH;
}

/** AISC 303 is of steel: where the job places by it, the top of concrete is that of ACI 117-10, 3.3. */
function isOfConcrete({ rule, edition }: CheckRow): boolean {
  return rule === "grout-gap" && edition === "ACI 117-10";
}

const KINDS = Object.keys(PRINTED) as readonly EditionKind[];
const CASES = KINDS.flatMap((kind) =>
  Object.entries(PRINTED[kind]).map(([edition, clauses]) => ({ kind, edition, clauses })),
);

describe("rows print the clauses of their own edition", () => {
  it("every edition that is held is in the table", () => {
    for (const kind of KINDS) expect(Object.keys(PRINTED[kind]).sort()).toEqual([...editionsOf(kind)].sort());
  });

  it.each(CASES)("$edition ($kind)", ({ kind, edition, clauses }) => {
    const own = rowsBy({ [kind]: edition }, sizeOf(edition)).filter((row) => row.edition === edition);
    for (const [rule, clause] of Object.entries(clauses)) {
      const found = own.filter((row) => row.rule === rule && row.status !== "not-applicable");
      expect(found.length, `${rule} under ${edition}`).toBeGreaterThan(0);
      for (const row of found) expect(row.clause, rule).toMatch(clause);
    }
  });

  it.each(CASES)("$edition ($kind): no row names an edition that the job does not choose", ({ kind, edition }) => {
    const chosen: readonly string[] = [...Object.values({ ...jobFixture().editions, [kind]: edition }), ALWAYS];
    const held: readonly string[] = KINDS.flatMap((each): readonly string[] => editionsOf(each));
    const strange = rowsBy({ [kind]: edition }, sizeOf(edition)).filter((row) => {
      return held.includes(row.edition) && !chosen.includes(row.edition) && !isOfConcrete(row);
    });
    expect(strange.map((row) => `${row.rule}: ${row.edition}`)).toEqual([]);
  });

  it.each(CASES.filter(({ kind }) => kind === "concrete"))(
    "$edition: no clause of another ACI 318",
    ({ edition, clauses }) => {
      const rows = rowsBy({ concrete: editionsOf("concrete").find((name) => name === edition) ?? "ACI 318-19" }, INCH);
      const foreign = /17\.9\.2|17\.7\.[12]|D\.8\.[12]|20\.5\.1\.3|20\.6\.1\.3|\b7\.7\.1/g;
      for (const { rule, clause, edition: of } of rows) {
        const numbers = clause.match(foreign);
        if (numbers === null) continue;
        expect(of).toBe(edition);
        // Cover of a lower template goes by the clause that the cover of the rods goes by.
        if (rule === "lower-template-cover")
          expect(clauses["rod-cover"]?.source).toContain(clause.replaceAll(".", "\\."));
        else expect(clause).toMatch(clauses[rule] ?? /never/);
      }
    },
  );
});

describe("placing editions", () => {
  it.each([
    ["ACI 117-10", /^(2\.3\.[1-4](\.[12])?|3\.3\.[12])$/],
    ["AISC 303-10", /^7\.5\.(1\([a-e]\)|2)$/],
    ["AISC 303-22", /^7\.5\.1$/],
    ["EN 1090-2:2008", /^D\.2\.20$/],
  ] as const)("%s numbers its rows as it prints them", (edition, clause) => {
    const rows = placingRows(edition);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row.clause).toMatch(clause);
  });
});

describe("nothing stands under ISO 273 that it does not say", () => {
  // ISO 273:1979 has clearance holes of bolts: no template, no d + 3 mm, no plate over cast rods.
  const rowsOf = (diameter: number, size: string) =>
    rowsBy({ set: "metric", templateHoles: "ISO 273" }, { ...METRIC, size, diameter: millimetres(diameter) });

  it.each([
    [39, "M39", "ISO 273"],
    [42, "M42", "common practice"],
    [48, "M48", "common practice"],
  ])("M%d: the table's row is of %s", (diameter, size, edition) => {
    const table = rowsOf(diameter, size).filter(({ clause }) => clause.includes("template hole"));
    expect(table.length).toBeGreaterThan(0);
    for (const row of table) expect(row.edition).toBe(edition);
    if (edition === "common practice") expect(table[0]?.clause).toBe("template hole d + 3 mm above M39");
  });

  it("a plate over cast rods takes the base plate's hole by common practice, or by Design Guide 1", () => {
    const edition = (templateHoles: Editions["templateHoles"]) =>
      new Set(
        rowsBy({ templateHoles }, METRIC)
          .filter(({ clause }) => clause.includes("set over cast rods"))
          .map((row) => row.edition),
      );
    expect([...edition("ISO 273")]).toEqual(["common practice"]);
    expect([...edition("Design Guide 1, 2nd ed.")]).toEqual(["Design Guide 1, 2nd ed."]);
  });
});

describe("editions name their year", () => {
  /** Editions of which there is one, or that are no publication. */
  const UNDATED = [
    "d + 6 mm",
    "ISO 273",
    "EN 1992-4 Table 6.1",
    "Design Guide 1, 2nd ed.",
    "Design Guide 1, 3rd ed. examples",
  ];
  it.each(KINDS)("%s", (kind) => {
    const undated = editionsOf(kind).filter((name) => !/[-:](\d{2}|\d{4})M?( |$)/.test(name));
    expect(undated.filter((name) => !UNDATED.includes(name))).toEqual([]);
  });
});

describe("least edge distance", () => {
  it("of AISC 360-05 holds no C2 of another edition", () => {
    const edge = findEdge("AISC 360-05", inches(1), inches(1.8125));
    expect(edge.found && edge.row.by === "rod" ? edge.row.increment : null).toEqual({ kind: "not held" });
  });
});
