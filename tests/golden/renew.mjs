// Renews the expected packages of all samples. Review the result as a diff before it is committed.
import { spawnSync } from "node:child_process";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const samples = join(root, "samples");

for (const name of readdirSync(samples)) {
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
