// Renews the expected packages of all samples, and each workbook from its CSV twins where they differ. Review the result as a
// diff before it is committed.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import readWorkbook from "read-excel-file/node";
import writeWorkbook from "write-excel-file/node";

const root = fileURLToPath(new URL("../..", import.meta.url));
const samples = join(root, "samples");

/** A cell as a person types it: a plain number is a number. */
function typed(text) {
  if (text === "") return null;
  return /^-?\d+(\.\d+)?$/.test(text) && String(Number(text)) === text ? Number(text) : text;
}

/** The sheets of a sample's workbook, by the CSV files that they are twins of. */
const SHEETS = { Bases: "schedule.csv", Placements: "placements.csv" };

async function renewWorkbook(folder) {
  const xlsx = join(folder, "schedule.xlsx");
  const sheets = Object.entries(SHEETS).filter(([, csv]) => existsSync(join(folder, csv)));
  const wanted = sheets.map(([sheet, csv]) => {
    const { data } = Papa.parse(readFileSync(join(folder, csv), "utf8").trimEnd());
    return { sheet, data: data.map((row) => row.map(typed)) };
  });
  const held = existsSync(xlsx) ? (await readWorkbook(xlsx)).map(({ sheet, data }) => ({ sheet, data })) : [];
  if (JSON.stringify(held) === JSON.stringify(wanted)) return;
  const bold = (value, row) => (value === null ? null : row === 0 ? { value, fontWeight: "bold" } : { value });
  const written = wanted.map(({ sheet, data }) => ({
    sheet,
    data: data.map((row, r) => row.map((value) => bold(value, r))),
  }));
  writeFileSync(xlsx, await writeWorkbook(written).toBuffer());
  console.log(`${xlsx}: renewed from its CSV twins`);
}

for (const name of readdirSync(samples)) {
  await renewWorkbook(join(samples, name));
  const expected = join(samples, name, "expected");
  rmSync(expected, { recursive: true, force: true });
  const made = spawnSync(
    process.execPath,
    [join(root, "dist/bin/rodplate.js"), "make", join(samples, name, "job.yaml"), "--out", expected],
    { stdio: ["ignore", "ignore", "inherit"] },
  );
  if (made.status !== 0 && made.status !== 1) process.exit(made.status ?? 3);
  // Files that are no text are not kept, but for the set: summary.json has the hash of each.
  for (const path of readdirSync(expected, { recursive: true, encoding: "utf8" }))
    if (/\.\w+$/.test(path) && !/_set\.pdf$|\.(svg|csv|dxf|json|txt|yaml)$/.test(path)) rmSync(join(expected, path));
  console.log(`${name}: renewed, exit code ${made.status}`);
}

// The sheets of the jobs that ask much of a drawing, without their embedded font.
const stress = join(root, "tests/stress");
for (const file of readdirSync(join(stress, "jobs"))) {
  const name = file.replace(/\.yaml$/, "");
  const folder = mkdtempSync(join(tmpdir(), "rodplate-stress-"));
  const job = join(stress, "jobs", file);
  const made = spawnSync(
    process.execPath,
    [join(root, "dist/bin/rodplate.js"), "make", job, "--out", join(folder, "out")],
    { stdio: ["ignore", "ignore", "inherit"] },
  );
  if (made.status !== 0 && made.status !== 1) process.exit(made.status ?? 3);
  const expected = join(stress, "expected", name);
  rmSync(expected, { recursive: true, force: true });
  mkdirSync(expected, { recursive: true });
  for (const path of readdirSync(join(folder, "out"), { recursive: true, encoding: "utf8" }))
    if (path.endsWith(".svg")) {
      const svg = readFileSync(join(folder, "out", path), "utf8").replace(/base64,[A-Za-z0-9+/=]+/g, "base64,");
      writeFileSync(join(expected, basename(path)), svg);
    }
  rmSync(folder, { recursive: true, force: true });
  console.log(`${name}: renewed`);
}
