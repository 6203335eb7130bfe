/** A package in its folder -> one side of a comparison, and what people did to it. */
import { join } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { type PackageReading, packageSide } from "../tasks/package-side.js";
import { attemptReading } from "./file-system.js";
import { fileFault } from "./findings.js";
import { folderFiles } from "./folder-files.js";
import { inspectPackage, SUMMARY } from "./package-contents.js";

/** `name` is the package as the user named it, for findings. Not ok only where its summary cannot be read. */
export function readPackage(folder: string, name: string): Outcome<PackageReading> {
  const place = name.endsWith(SUMMARY) ? name : join(name, SUMMARY);
  const read = attemptReading(() => {
    const side = packageSide(folderFiles(folder), name, place);
    return side.ok ? withAdded(side, addedFindings(folder, name)) : side;
  }, name);
  return read.ok ? read.value : read;
}

function withAdded(
  { value, ...read }: Extract<Outcome<PackageReading>, { ok: true }>,
  added: readonly Finding[],
): Outcome<PackageReading> {
  return { ...read, value: { ...value, faults: [...value.faults, ...added] } };
}

function addedFindings(folder: string, name: string): readonly Finding[] {
  const found = inspectPackage(folder);
  const warn = (message: string): Finding => ({ ...fileFault(name, "added-file", message), severity: "warning" });
  if (found.kind === "foreign") return [warn(found.offence)];
  if (found.kind !== "package") return [];
  return found.contents.added.map((path) => warn(`${path} is not of the package: ${SUMMARY} does not list it`));
}
