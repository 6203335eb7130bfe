/** Spreadsheets: schedules and placements as CSV and XLSX, and the surveyor's points. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import Papa from "papaparse";
import { surveyJob } from "../../src/index.js";
import { answerJob, type Files, openCase, packageOf, refused } from "./answers.js";
import { changedBytes, changedText, oddText } from "./draw.js";
import type { Draw, Ending, FuzzCase, FuzzClass } from "./model.js";
import { layoutWithTable, STARTERS, TABLES } from "./starters.js";
import { workbookOf } from "./workbooks.js";

const rowsOf = (text: string): string[][] => Papa.parse<string[]>(text.trim()).data;

/** Cells replaced, moved, doubled; columns and rows left out or put in. */
function changedRows(rows: readonly (readonly string[])[], random: Draw): string[][] {
  const changed = rows.map((row) => [...row]);
  for (let left = random.below(4); left > 0; left--) {
    const row = random.pick(changed);
    const at = random.below(row.length);
    const other = random.pick(random.pick(changed)) ?? "";
    switch (random.below(6)) {
      case 0:
        row[at] = other;
        break;
      case 1:
        changed.splice(random.below(changed.length), random.below(2), [...row]);
        break;
      case 2:
        for (const each of changed) each.splice(at, 1);
        break;
      case 3:
        row.splice(at, 0, oddText(random));
        break;
      default:
        row[at] = oddText(random);
    }
    if (changed.some((each) => each.length === 0)) break;
  }
  return changed.filter((row) => row.length > 0);
}

function tableCase(files: Files, random: Draw): FuzzCase {
  const drawings = random.once(20);
  return { files, run: () => answerJob(files, drawings) };
}

/** Schedules and placements as CSV. */
export const csvTables: FuzzClass = {
  name: "schedule and placement CSV",
  cases: 8000,
  draw: (random) => {
    const name = random.pick(["schedule.csv", "placements.csv"]);
    const job = name === "schedule.csv" ? (STARTERS.get("schedule") ?? "") : layoutWithTable(name);
    const text = TABLES.get(name) ?? "";
    const table = random.once(3)
      ? changedText(text, random)
      : Papa.unparse(changedRows(rowsOf(text), random), { delimiter: random.pick([",", ";", "\t"]) });
    return tableCase(
      new Map([
        ["job.yaml", job],
        [name, random.once(9) ? changedBytes(strToU8(table), random) : table],
      ]),
      random,
    );
  },
};

/** Workbooks: cells, the XML of their parts, and the raw bytes. */
export const workbooks: FuzzClass = {
  name: "XLSX",
  cases: 6000,
  draw: (random) => {
    const job = (STARTERS.get("schedule") ?? "").replace("schedule: schedule.csv", "schedule: schedule.xlsx");
    const rows = rowsOf(TABLES.get("schedule.csv") ?? "");
    const whole = workbookOf(random.once(2) ? changedRows(rows, random) : rows, random.below(4096));
    const bytes = random.once(3) ? whole : changedBook(whole, random);
    return tableCase(
      new Map<string, string | Uint8Array>([
        ["job.yaml", job],
        ["schedule.xlsx", bytes],
      ]),
      random,
    );
  },
};

function changedBook(bytes: Uint8Array, random: Draw): Uint8Array {
  if (random.once(3)) return changedBytes(bytes, random);
  const parts = unzipSync(bytes);
  const name = random.pick(Object.keys(parts));
  const part = parts[name] ?? new Uint8Array();
  const changed = random.once(3) ? changedBytes(part, random) : strToU8(changedText(strFromU8(part), random));
  return zipSync({ ...parts, [name]: changed });
}

/** The layout's own setting-out file, as a surveyor gives it back, and changed. */
export function pointsClass(points: string): FuzzClass {
  const job = STARTERS.get("layout") ?? "";
  return {
    name: "survey points",
    cases: 6000,
    draw: (random) => {
      const rows = random.once(3) ? rowsOf(points) : changedRows(rowsOf(points), random);
      const text = rows.map((row) => row.map((cell) => slipped(cell, random)).join(",")).join("\n");
      const table = random.once(4) ? changedText(text, random) : text;
      const files: Files = new Map([
        ["job.yaml", job],
        ["points_PNEZD_ft.csv", table],
      ]);
      return { files, run: () => answerPoints(files) };
    },
  };
}

/** Now and then a decimal point that is lost or moved, or a rod that stands elsewhere. */
function slipped(cell: string, random: Draw): string {
  if (!/^-?\d+\.\d+$/.test(cell) || !random.once(60)) return cell;
  return random.pick([
    cell.replace(".", ""),
    `${cell}e3`,
    String(Number(cell) + random.below(100) / 100),
    cell.slice(1),
  ]);
}

async function answerPoints(files: Files): Promise<Ending> {
  const opened = await openCase(files);
  const bytes = strToU8(String(files.get("points_PNEZD_ft.csv")));
  if (opened === null) return "fault";
  const survey = surveyJob(opened, { name: "points_PNEZD_ft.csv", bytes, unit: "ft", order: "PNEZD" });
  if (!survey.ok) return refused(survey.findings) ?? "fault";
  return survey.value.groups.some(({ verdict }) => verdict === "does not fit") ? "held" : "ok";
}

/** The setting-out file of the layout starter. */
export async function settingOutPoints(): Promise<string> {
  const opened = await openCase(new Map([["job.yaml", STARTERS.get("layout") ?? ""]]));
  if (opened === null) throw new Error("the layout starter is no job");
  const { files } = packageOf(opened, false);
  const name = [...files.keys()].find((path) => /^field\/.*_local_.*(?<!_bare)\.csv$/.test(path));
  return strFromU8(files.get(name ?? "") ?? new Uint8Array());
}
