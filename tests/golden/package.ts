/** A sample's package in memory, through the same loader and the same pipeline as the command line. */
import { join } from "node:path";
import { loadInputs } from "../../src/cli/load.js";
import { pdfMaker } from "../../src/cli/pdf-maker.js";
import { processShell, readVersion } from "../../src/cli/shell.js";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { OutputKind } from "../../src/outputs/index.js";
import { build } from "../../src/tasks/build.js";

type Package = ReadonlyMap<string, Buffer>;

const built = new Map<string, Promise<Package>>();

/** Path to bytes of every file that `make` writes for the job, or of these kinds, with no date of today in it. Each is built once. */
export function builtPackage(folder: string, job: string, outputs?: readonly OutputKind[]): Promise<Package> {
  const key = [join(folder, job), ...(outputs ?? [])].join(" ");
  const made = built.get(key) ?? buildPackage(folder, job, outputs);
  built.set(key, made);
  return made;
}

async function buildPackage(folder: string, job: string, outputs?: readonly OutputKind[]): Promise<Package> {
  const inputs = await loadInputs(job, { ...processShell(), currentFolder: folder });
  if (!inputs.ok) throw new Error(inputs.findings.map(({ message }) => message).join("; "));
  const made = build(inputs.value, {
    ...{ date: "1970-01-01", version: readVersion(), document: newLeanDocument(), pdf: pdfMaker },
    ...(outputs === undefined ? {} : { outputs }),
  });
  const files = new Map<string, Buffer>();
  for (const base of made.bases) for (const file of base.files) files.set(file.path, Buffer.from(file.bytes));
  for (const file of made.finish().files) files.set(file.path, Buffer.from(file.bytes));
  return files;
}
