// Renews the expected packages of all samples, and each workbook from its CSV twin where they differ. Review the result as a
// diff before it is committed.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import { readSheet } from "read-excel-file/node";
import writeWorkbook from "write-excel-file/node";

const root = fileURLToPath(new URL("../..", import.meta.url));
const samples = join(root, "samples");

/** A cell as a person types it: a plain number is a number. */
function typed(text) {
  if (text === "") return null;
  return /^-?\d+(\.\d+)?$/.test(text) && String(Number(text)) === text ? Number(text) : text;
}

async function renewWorkbook(csv, xlsx) {
  const rows = Papa.parse(readFileSync(csv, "utf8").trimEnd()).data.map((row) => row.map(typed));
  if (JSON.stringify(await readSheet(xlsx, "Bases")) === JSON.stringify(rows)) return;
  const cells = rows.map((row, r) =>
    row.map((value) => (value === null ? null : { value, ...(r === 0 ? { fontWeight: "bold" } : {}) })),
  );
  writeFileSync(xlsx, await writeWorkbook(cells, { sheet: "Bases" }).toBuffer());
  console.log(`${xlsx}: renewed from its CSV twin`);
}

for (const name of readdirSync(samples)) {
  const [csv, xlsx] = ["schedule.csv", "schedule.xlsx"].map((file) => join(samples, name, file));
  if (existsSync(csv)) await renewWorkbook(csv, xlsx);
  const expected = join(samples, name, "expected");
  rmSync(expected, { recursive: true, force: true });
  const made = spawnSync(
    process.execPath,
    [join(root, "dist/bin/rodplate.js"), "make", join(samples, name, "job.yaml"), "--out", expected],
    { stdio: ["ignore", "ignore", "inherit"] },
  );
  if (made.status !== 0 && made.status !== 1) process.exit(made.status ?? 3);
  console.log(`${name}: renewed, exit code ${made.status}`);
}
