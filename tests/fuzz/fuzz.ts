/**
 * `npm run fuzz [-- CLASS...] [--share 1/4] [--seed N] [--only INDEX]`: hostile inputs of every class, and a table of what became
 * of them. Ends with 1 where the program failed, and keeps the input. `npm run fuzz -- heavy`: inputs that ask for time and memory.
 */
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { allClasses } from "./classes.js";
import type { Program } from "./command-class.js";
import { runHeavy } from "./heavy.js";
import { type Count, keepCase, runClass } from "./run-class.js";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seed: { type: "string" }, share: { type: "string" }, only: { type: "string" } },
});
const seed = Number(values.seed ?? 20261124);
const share = Number(values.share ?? 1);

/** From the built program, whose folder holds its templates. */
const built = pathToFileURL("dist/cli/run.js").href;

function rowOf({ name, cases, ends, faults, slow, slowest, heap }: Count): string {
  const counts = [cases, ends.ok, ends.held, ends.fault, faults.length, slow.length];
  return `| ${name} | ${counts.join(" | ")} | ${slowest.toFixed(1)} | ${Math.round(heap)} |\n`;
}

async function runClasses(): Promise<boolean> {
  const { runProgram } = (await import(built)) as { runProgram: Program };
  const classes = await allClasses(runProgram);
  const wanted = classes.filter(
    ({ name }) => positionals.length === 0 || positionals.some((word) => name.includes(word)),
  );
  process.stdout.write(
    `seed ${seed}\n\n| class | cases | ok | held | input fault | program fault | over 10 s | slowest, s | heap, MB |\n`,
  );
  process.stdout.write("|---|---|---|---|---|---|---|---|---|\n");
  let isClean = true;
  for (const fuzz of wanted) {
    const [first, count] = values.only === undefined ? [0, Math.ceil(fuzz.cases * share)] : [Number(values.only), 1];
    const result = await runClass(fuzz, seed, first, count);
    process.stdout.write(rowOf(result));
    for (const fault of result.faults.slice(0, 5)) {
      const kept = keepCase(join(tmpdir(), "rodplate-fuzz"), fuzz.name, fault);
      process.stderr.write(
        `${fuzz.name}, case ${fault.index}, seed ${seed}: ${fault.error.slice(0, 1500)}\n  kept in ${kept}\n`,
      );
    }
    for (const index of result.slow) process.stderr.write(`${fuzz.name}, case ${index}, seed ${seed}: over 10 s\n`);
    isClean &&= result.faults.length === 0 && result.slow.length === 0;
  }
  return isClean;
}

const isClean = positionals[0] === "heavy" ? runHeavy(positionals.slice(1)) : await runClasses();
process.exitCode = isClean ? 0 : 1;
