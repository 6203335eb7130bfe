/** Lists of the rods: what is not known is said with its key, money is whole, remnants and spares are the shop's. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cellText, cellValue, type JobLists, type ListTable, makeLists } from "../../../src/lists/index.js";
import { drawDocument } from "../../../src/sheets/document-pages.js";
import { findCollisions, type Scene } from "../../../src/sheets/index.js";
import { listBlocks } from "../../../src/sheets/list-block.js";
import { jobFixture } from "../../fixture.js";
import { inputsOf, jobOf } from "../job/files.js";

const shopText = readFileSync("templates/shops/plasma.yaml", "utf8");
const RODS =
  "grade: 36, finish: plain, projection: 9, embedment: 24, threads: 6, bottom: nut, bottomThreads: 3, length: 36";

interface Case {
  readonly bases?: readonly string[];
  readonly rodShop?: string;
  readonly rates?: string;
  readonly head?: string;
  readonly openQuestions?: readonly string[];
  readonly held?: readonly string[];
  /** Further lines of the job. */
  readonly more?: readonly string[];
}

const base = (mark: string, quantity: number, rods: string, more = ""): string =>
  `  - { mark: ${mark}, quantity: ${quantity}, rods: { ${rods} }, pattern: { kind: rectangle, x: 12, y: 12 }, template: { thickness: 1/4 }${more} }`;

/** Lists of a job whose shop says of rods and rates what the case says. */
function listsOf({
  bases,
  rodShop = "",
  rates = "",
  head = "",
  openQuestions = [],
  held = [],
  more = [],
}: Case): JobLists {
  const shop =
    shopText.replace(/^rodShop:\n(?: {2}.*\n)+/m, "") +
    `${rodShop === "" ? "" : `rodShop: ${rodShop}\n`}${rates === "" ? "" : `rates: ${rates}\n`}`;
  const text = [
    `job: { number: "26-1"${head} }`,
    "units: in",
    "rules: us",
    "shop: ./own.yaml",
    ...more,
    "bases:",
    ...(bases ?? [base("B1", 6, `diameter: 1, ${RODS}`)]),
    "",
  ];
  const job = jobOf(text.join("\n"), { "own.yaml": shop, "./own.yaml": shop });
  return makeLists({ job, facts: [], held: new Set(held), openQuestions });
}

function tableOf({ tables }: JobLists, key: string): ListTable {
  const table = tables.find((each) => each.key === key);
  if (table === undefined) throw new Error(`no list ${key}`);
  return table;
}

/** Pages of tables. */
function pagesOf(tables: readonly ListTable[]): readonly Scene[] {
  const blocks = tables.flatMap(listBlocks).map((table) => ({ kind: "table" as const, table }));
  return drawDocument({ job: jobFixture(), version: "0", title: "LISTS", way: "landscape", blocks });
}

/** A column of a table, as values. */
function column(table: ListTable, heading: string): readonly (string | number | null)[] {
  const at = table.columns.findIndex((each) => each.heading.startsWith(heading));
  if (at < 0) throw new Error(`no column ${heading}`);
  return table.rows.map((row) => cellValue(row[at] ?? null));
}

describe("lots", () => {
  it("say where their embedment goes to: the bearing face of what anchors them, or their end", () => {
    const rods = (more: string) => `diameter: 1, ${RODS.replace(", length: 36", "")}${more}`;
    const { remarks } = tableOf(
      listsOf({
        bases: [base("B1", 1, rods("")), base("B2", 1, rods(", length: 33")), base("B3", 1, rods(", length: 35"))],
      }),
      "rods",
    );
    expect(remarks).toContain("Embedment of R1 R3: from the top of concrete to the top of the nut at the lower end.");
    expect(remarks).toContain("Embedment of R2: from the top of concrete to the lower end of the rod.");
  });

  it("hold rods that are made alike, whoever gave their values, and part those that differ in one", () => {
    const { lots } = listsOf({
      head: "",
      bases: [
        base("B1", 6, `diameter: 1, ${RODS}`),
        base("B2", 2, `diameter: 1, ${RODS}`),
        base("B3", 3, `diameter: 1, ${RODS.replace("36,", "55,")}`),
        base("B4", 1, `diameter: 1, ${RODS.replace("length: 36", "length: 35")}`),
      ],
    });
    expect(lots.map(({ mark, total, uses }) => [mark, total, uses.map(({ base: on }) => on)])).toEqual([
      ["R1", 32, ["B1", "B2"]],
      ["R2", 12, ["B3"]],
      ["R3", 4, ["B4"]],
    ]);
  });
});

describe("bars", () => {
  it("are not planned without a stock, and the list says which key is missing", () => {
    const lists = listsOf({});
    const bars = tableOf(lists, "bars-to-cut");
    expect(bars.rows).toEqual([]);
    expect(bars.remarks.join("\n")).toContain("Bars for 1 F1554 36 are not planned");
    expect(bars.remarks.join("\n")).toContain("rodShop.stock of the shop file");
    expect(column(tableOf(lists, "not-given"), "key")).toContain("rodShop.stock of the shop file");
  });

  it("that are sawn wait for the kerf; those that are sheared do not", () => {
    const rodShop = "{ stock: [20'] }";
    expect(tableOf(listsOf({ rodShop }), "bars-to-cut").rows).toHaveLength(1);
    const sawn = listsOf({ rodShop, bases: [base("B1", 1, `diameter: 2, ${RODS}`)] });
    expect(tableOf(sawn, "bars-to-cut").rows).toEqual([]);
    expect(tableOf(sawn, "bars-to-cut").remarks.join("\n")).toContain("rodShop.kerf");
  });

  it("of a diameter come from its own lengths; a rest goes to the stock from the least length on", () => {
    const at = (leastRemnant: string) =>
      tableOf(
        listsOf({
          rodShop: `{ stock: [20'], stockOf: [{ diameter: 1, lengths: [12'] }], kerf: 1/8, leastRemnant: ${leastRemnant} }`,
          bases: [
            base(
              "B1",
              1,
              `diameter: 1, ${RODS.replace("36, finish", "36, finish").replace("length: 36", "length: 40")}`,
            ),
          ],
        }),
        "bars-to-cut",
      );
    expect(column(at("24"), "stock length")).toEqual([144, 144]);
    expect(column(at("24"), "rest of a bar")).toEqual([24, 104]);
    expect(column(at("24"), "rest goes to")).toEqual(["stock", "stock"]);
    expect(column(at("24-1/64"), "rest goes to")).toEqual(["scrap", "stock"]);
  });

  it("have their least beside them", () => {
    const totals = tableOf(listsOf({ rodShop: "{ stock: [12'], kerf: 1/8 }" }), "bars-by-size");
    expect(column(totals, "bars")).toEqual([6]);
    expect(column(totals, "least bars proven")).toEqual([6]);
    expect(column(totals, "proof")).toEqual(["proven least"]);
  });

  it("that are too short for a rod say so", () => {
    const bars = tableOf(listsOf({ rodShop: "{ stock: [30], kerf: 1/8 }" }), "bars-to-cut");
    expect(bars.remarks.join("\n")).toContain("Lot R1 (24 rods of 36 in) is longer than any bar in stock gives");
    const notes = tableOf(listsOf({ rodShop: "{ stock: [30], kerf: 1/8 }" }), "not-given");
    const at = column(notes, "what").indexOf("bar");
    expect([column(notes, "lot")[at], column(notes, "key that gives it")[at]]).toEqual(["R1", "rodShop.stock"]);
    expect(column(notes, "why")[at]).toBe("24 x 36 in, longer than any bar in stock gives: order bar for it");
  });
});

describe("what is not given", () => {
  it("is said once for all lots that lack it", () => {
    const open = RODS.replace(", bottomThreads: 3", "");
    const lots = ["3/4", "1", "1-1/4"].map((size, i) => base(`B${i + 1}`, 1, `diameter: ${size}, ${open}`));
    const some = tableOf(listsOf({ bases: [...lots, base("B4", 1, `diameter: 2, ${RODS}`)] }), "not-given");
    const row = some.rows.findIndex((cells) => cells[2] === "thread at the lower end");
    expect(some.rows[row]?.slice(0, 2)).toEqual(["R1 R2 R3", "B1 B2 B3"]);
    expect(some.rows.filter((cells) => cells[2] === "thread at the lower end")).toHaveLength(1);
    const every = tableOf(listsOf({ bases: lots }), "not-given");
    expect(every.rows.find((cells) => cells[2] === "thread at the lower end")?.[0]).toBe("all");
  });
});

describe("bars that are not planned", () => {
  it("are told in one sentence for each thing that is missing", () => {
    const two = [base("B1", 1, `diameter: 1, ${RODS}`), base("B2", 1, `diameter: 3/4, ${RODS}`)];
    const { remarks } = tableOf(listsOf({ bases: two }), "bars-to-cut");
    expect(remarks.filter((words) => words.includes("are not planned"))).toEqual([
      "Bars for 1 F1554 36, 3/4 F1554 36 are not planned: the shop file gives no lengths of bar in stock (rodShop.stock of the shop file).",
    ]);
  });
});

describe("a page of a list", () => {
  const titles = (lists: JobLists) => listBlocks(tableOf(lists, "rods"))[1]?.columns.map(({ title }) => title);

  it("leaves out a column of words in which nothing stands, and keeps it where one row says something", () => {
    expect(titles(listsOf({}))).not.toContain("STATUS");
    expect(titles(listsOf({ held: ["B1"] }))).toContain("STATUS");
  });
});

describe("threads", () => {
  it("count no end of which nothing is given, and say so", () => {
    const open = listsOf({ bases: [base("B1", 1, "diameter: 1, threads: 6")] });
    expect(column(tableOf(open, "threads"), "ends")).toEqual([4]);
    expect(tableOf(open, "threads").remarks.join("\n")).toContain("lower ends of R1");
    const at = column(open.quote, "key").indexOf("rates.perThreadEnd");
    expect([column(open.quote, "quantity")[at], column(open.quote, "remark")[at]]).toEqual([
      4,
      "without 1 lot of which it is not known",
    ]);
    expect(column(tableOf(listsOf({}), "threads"), "ends")).toEqual([24, 24]);
  });

  it("are rolled before they are cut, large before small, long before short", () => {
    const bases = ["3/4", "2", "1", "1-3/4"].map((size, i) => base(`B${i}`, 1, `diameter: ${size}, ${RODS}`));
    const threads = tableOf(listsOf({ bases }), "threads");
    expect(column(threads, "by")).toEqual(["roll", "roll", "roll", "roll", "cut", "cut", "cut", "cut"]);
    expect(column(threads, "thread").map((text) => String(text).split("-")[0])).toEqual([
      "1",
      "1",
      "3/4",
      "3/4",
      "2",
      "2",
      "1",
      "1",
    ]);
    expect(column(threads, "thread length")).toEqual([6, 3, 6, 3, 6, 3, 6, 3]);
  });
});

describe("hardware", () => {
  it("has spare pieces where the shop file names them, rounded up, and none else", () => {
    expect(column(tableOf(listsOf({}), "hardware"), "spare")).not.toContain(1);
    const spare = tableOf(listsOf({ rodShop: "{ spareNuts: 2 }" }), "hardware");
    const nuts = spare.rows.filter((row) => row[1] === "nut");
    expect(nuts.length).toBeGreaterThan(0);
    for (const row of nuts) expect(row[4]).toBe(Math.ceil(Number(row[3]) * 0.02));
  });
});

describe("the packing list", () => {
  it("is parted by delivery where bases name one, and its sums by delivery are the whole", () => {
    const bases = [
      base("B1", 6, `diameter: 1, ${RODS}`, ", delivery: truck 1"),
      base("B2", 2, `diameter: 1, ${RODS}`, ", delivery: truck 2"),
      base("B3", 2, `diameter: 1, ${RODS}`),
    ];
    const packing = tableOf(listsOf({ bases, held: ["B2"] }), "packing");
    const rods = packing.totals.filter((row) => row[3] === "rods").map((row) => [row[0], row[7]]);
    expect(rods).toEqual([
      ["truck 1", 24],
      ["truck 2", 8],
      ["not given", 8],
      ["TOTAL", 40],
    ]);
    const held = packing.rows.filter((row) => row[10] === "HELD");
    expect(new Set(held.map((row) => row[1]))).toEqual(new Set(["B2"]));
    expect(packing.remarks).toContain("Without a delivery (key delivery of base or placement), all or in part: B3.");
  });

  const PLACED = [
    "grid: { x: { names: [1, 2, 3, 4, 5, 6], spacing: 25' }, y: { names: [A, B], spacing: 30' } }",
    "placements:",
    "  - { base: B1, every: [A, [1, 2]], delivery: pour 10 }",
    "  - { base: B1, every: [A, [3, 4, 5]], delivery: pour 2 }",
    "  - { base: B1, at: A-6 }",
    "  - { base: B2, every: [B, [1, 2]], delivery: pour 2 }",
  ];

  it("is parted by the deliveries of placements, whose counts are those of the bases", () => {
    const bases = [base("B1", 6, `diameter: 1, ${RODS}`), base("B2", 2, `diameter: 1, ${RODS}`, ", delivery: unused")];
    const packing = tableOf(listsOf({ bases, more: PLACED }), "packing");
    const rods = packing.rows.filter((row) => row[3] === "rods").map((row) => [row[0], row[1], row[2], row[7]]);
    expect(rods).toEqual([
      ["pour 2", "B1", 3, 12],
      ["pour 2", "B2", 2, 8],
      ["pour 10", "B1", 2, 8],
      ["not given", "B1", 1, 4],
    ]);
  });

  it("takes the base's own delivery for placements that name none", () => {
    const bases = [base("B1", 6, `diameter: 1, ${RODS}`, ", delivery: pour 7"), base("B2", 2, `diameter: 1, ${RODS}`)];
    const packing = tableOf(listsOf({ bases, more: PLACED }), "packing");
    const rods = packing.rows.filter((row) => row[3] === "rods" && row[1] === "B1").map((row) => [row[0], row[2]]);
    expect(rods).toEqual([
      ["pour 2", 3],
      ["pour 7", 1],
      ["pour 10", 2],
    ]);
    expect(packing.remarks.filter((words) => words.startsWith("Without a delivery"))).toEqual([]);
  });

  it("has a part of its own on paper for each delivery, after a page of all of them, whose sums are those of the list", () => {
    const bases = [base("B1", 6, `diameter: 1, ${RODS}`), base("B2", 2, `diameter: 3/4, ${RODS}`)];
    const lists = listsOf({ bases, more: PLACED, held: ["B2"] });
    const { packing } = lists;
    expect(packing.map(({ name }) => name)).toEqual(["", "pour 2", "pour 10", "delivery not given"]);
    const [all, pour2] = packing.map(({ tables }) => tables);
    const list = tableOf(lists, "packing");
    const deliveries = all?.[0];
    expect(deliveries?.rows.map((row) => row.slice(0, 4))).toEqual([
      ["pour 2", 2, 5, 20],
      ["pour 10", 1, 2, 8],
      ["not given", 1, 1, 4],
    ]);
    expect(deliveries?.totals[0]?.slice(0, 4)).toEqual(["TOTAL", 2, 8, 32]);
    expect(cellValue(deliveries?.totals[0]?.at(-1) ?? null)).toBe(cellValue(list.totals.at(-1)?.[9] ?? null));
    const byBase = pour2?.[1];
    expect(byBase?.rows.map((row) => [row[0], row[1], row[4], row[5], row[6]])).toEqual([
      ["B1", "4 x R1", "", 3, 12],
      ["B2", "4 x R2", "HELD", 2, 8],
    ]);
    for (const { tables } of packing) for (const page of pagesOf(tables)) expect(findCollisions(page)).toEqual([]);
  });

  it("never shows a weight that lacks some of its parts as if it were whole", () => {
    const bases = [base("B1", 1, `diameter: 1, ${RODS}`), base("B2", 1, "diameter: 1, projection: 9, threads: 6")];
    const lists = listsOf({ bases });
    const rods = tableOf(lists, "rods").totals[0] ?? [];
    expect(rods.map(cellText).filter((words) => words.endsWith("*"))).toHaveLength(1);
    const [part] = lists.packing;
    expect(part?.tables[1]?.totals.flat().map(cellText).at(-1)).toMatch(/\*$/);
    expect(part?.tables[1]?.remarks).toContain("* without what has no weight.");
    const none = listsOf({ bases: [base("B2", 1, "diameter: 1, projection: 9, threads: 6")] });
    expect(tableOf(none, "rods").totals[0]?.filter((cell) => cell === "not given")).toHaveLength(1);
  });
});

/** Rates that a job of these lists asks for. */
const ratesIn = ({ quote }: JobLists) => column(quote, "key").map((key) => String(key).replace("rates.", ""));

describe("the quote", () => {
  const amounts = (lists: JobLists) => {
    const key = column(lists.quote, "key");
    return new Map(column(lists.quote, "amount").map((amount, i) => [String(key[i]).replace("rates.", ""), amount]));
  };

  it("names every rate that is not set, and sums nothing", () => {
    const lists = listsOf({});
    expect([...amounts(lists).values()].every((amount) => amount === null)).toBe(true);
    expect(new Set(column(lists.quote, "rate"))).toEqual(new Set(["NOT SET"]));
    expect(column(lists.quote, "key")).toContain("rates.perCut");
    expect(lists.quote.totals[0]?.map((cell) => cellText(cell))).toContain("NO RATE IS SET");
    expect(lists.quote.remarks.join(" ")).toContain("The currency is not set (rates.currency)");
  });

  it("multiplies in whole numbers, rounds each line half up, and adds the lines", () => {
    const lists = listsOf({ rates: "{ currency: USD, perCut: 1.005, perThreadEnd: 0.1, perNut: 0 }" });
    const own = amounts(lists);
    expect([own.get("perCut"), own.get("perThreadEnd"), own.get("perNut")]).toEqual([24.12, 4.8, 0]);
    expect(lists.quote.totals[0]?.map((cell) => cellText(cell))).toContain("28.92");
    expect(lists.quote.totals[0]?.at(-1)).toMatch(/^without \d+ rates$/);
    expect(lists.quote.totals[0]?.slice(0, 2)).toEqual(["PART", "sum of what is known, NOT THE TOTAL"]);
    const one = listsOf({ bases: [base("B1", 1, `diameter: 1, ${RODS}`)], rates: "{ currency: USD, perCut: 0.0013 }" });
    // 4 x 0.0013 = 0.0052, up to a cent; 4 x 0.0012 = 0.0048, down to nothing
    expect(amounts(one).get("perCut")).toBe(0.01);
    const less = listsOf({
      bases: [base("B1", 1, `diameter: 1, ${RODS}`)],
      rates: "{ currency: USD, perCut: 0.0012 }",
    });
    expect(amounts(less).get("perCut")).toBe(0);
  });

  it("is a total only where every line of it is known, and then the sum that another reckoning gives", () => {
    const names = [...ratesIn(listsOf({}))];
    const rates = `{ currency: USD, ${names.map((name, i) => `${name}: ${i + 1}.37`).join(", ")} }`;
    const { quote } = listsOf({ rates });
    const lines = quote.rows.map((row) => [cellValue(row[2] ?? null), cellValue(row[4] ?? null)].map(Number));
    const cents = lines.reduce((all, [quantity = 0, rate = 0]) => all + Math.floor(quantity * rate * 100 + 0.5), 0);
    expect(quote.totals[0]?.[0]).toBe("TOTAL");
    expect(Math.round(Number(cellValue(quote.totals[0]?.[5] ?? null)) * 100)).toBe(cents);
    const open = listsOf({ rates, bases: [base("B1", 1, "diameter: 1, threads: 6")] }).quote;
    expect([open.totals[0]?.[0], open.totals[0]?.at(-1)]).toEqual(["PART", expect.stringMatching(/without all of \d/)]);
  });

  it("has as many decimals as the currency", () => {
    const yen = listsOf({
      rates: "{ currency: JPY, decimals: 0, perCut: 12.5 }",
      bases: [base("B1", 1, `diameter: 1, ${RODS}`)],
    });
    expect(amounts(yen).get("perCut")).toBe(50);
    expect(yen.quote.totals[0]?.map((cell) => cellText(cell))).toContain("50");
  });

  it("says that the job is not released, which questions are open and what is held", () => {
    const said = listsOf({ openQuestions: ["Q1", "Q3"], held: ["B1"] }).quote.remarks.join("\n");
    expect(said).toContain("The job is preliminary");
    expect(said).toContain("2 questions to the engineer of record open: Q1, Q3");
    expect(said).toContain("Held, and counted here all the same: B1");
    const released = listsOf({ head: ", status: released" }).quote.remarks.join("\n");
    expect(released).not.toMatch(/preliminary|question|Held/);
  });

  it("refuses an amount that is none, in its place", () => {
    const shop = `${shopText}rates: { currency: USD, perCut: 1,50, perBend: -1, perWeld: 1.00001 }\n`;
    expect(() =>
      jobOf("job: { number: '1' }\nunits: in\nrules: us\nshop: ./own.yaml\nbases: []\n", {
        "./own.yaml": shop,
        "own.yaml": shop,
      }),
    ).toThrow(/perBend: "-1" is not an amount/);
  });
});

describe("pages of lists", () => {
  it("have nothing over anything else, and every row", () => {
    const bases = Array.from({ length: 30 }, (_, i) =>
      base(
        `BASE-${i + 1}`,
        3 + i,
        `diameter: ${["3/4", "1", "1-1/2"][i % 3]}, ${RODS.replace("length: 36", `length: ${36 + (i % 7)}`)}`,
      ),
    );
    const lists = listsOf({ bases, rodShop: "{ stock: [12', 20'], kerf: 1/8, leastRemnant: 24 }" });
    const job = jobOf(["job: { number: '1' }", "units: in", "rules: us", "bases:", ...bases, ""].join("\n"));
    const blocks = lists.tables.flatMap((table) =>
      listBlocks(table).map((each) => ({ kind: "table" as const, table: each })),
    );
    const pages = drawDocument({ job, version: "0", title: "LISTS", way: "landscape", blocks });
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) expect(findCollisions(page)).toEqual([]);
    for (const table of lists.tables)
      for (const view of table.views)
        for (const [heading] of view.columns) expect(table.columns.map((each) => each.heading)).toContain(heading);
  });
});

describe("a shop file", () => {
  it("is told of a stock that is none, in its place", () => {
    const faults = (rodShop: string) => () => listsOf({ rodShop });
    expect(faults("{ stock: [] }")).toThrow(/rodShop.stock: .*a list of one length of bar or more/);
    expect(faults("{ stock: [0] }")).toThrow(/rodShop.stock\[0\]: "0" is not above zero/);
    expect(faults("{ kerf: -1/8 }")).toThrow(/rodShop.kerf: "-1\/8" is below zero/);
    expect(faults("{ spareNuts: 200 }")).toThrow(/rodShop.spareNuts/);
  });

  it.each(["plasma", "plasma-metric", "laser", "waterjet", "oxyfuel", "plywood"])("%s of ours plans bars", (name) => {
    const inputs = inputsOf("");
    const text = inputs.files.get(`templates/shops/${name}.yaml`);
    expect(String(text)).toMatch(/^rodShop:\n {2}stock: \[/m);
  });
});
